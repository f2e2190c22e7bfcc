/**
 * What kind of quantity a number is. Several kinds share an SI unit (a stress and a modulus are
 * both in pascals) and differ only in the unit in which they are shown.
 *
 * A temperature and a temperature difference are two kinds: 68 °F is 293.15 K, but a difference
 * of 68 °F is 37.8 K.
 */
export type Dimension =
  | "length"
  | "thickness"
  | "area"
  | "volume"
  | "mass"
  | "areal weight"
  | "density"
  | "linear density"
  | "time"
  | "speed"
  | "force"
  | "force per length"
  | "moment"
  | "energy"
  | "bending stiffness"
  | "bending compliance"
  | "curvature"
  | "pressure"
  | "stress"
  | "modulus"
  | "viscosity"
  | "temperature"
  | "temperature difference"
  | "thermal expansion"
  | "angle"
  | "ratio"
  | "strain"
  | "count";

/** The SI unit in which each kind of quantity is held; degrees for an angle. */
export const siUnits: Readonly<Record<Dimension, string>> = Object.freeze({
  "length": "m",
  "thickness": "m",
  "area": "m²",
  "volume": "m³",
  "mass": "kg",
  "areal weight": "kg/m²",
  "density": "kg/m³",
  "linear density": "kg/m",
  "time": "s",
  "speed": "m/s",
  "force": "N",
  "force per length": "N/m",
  "moment": "N m",
  "energy": "J",
  "bending stiffness": "N m²",
  "bending compliance": "m/N",
  "curvature": "1/m",
  "pressure": "Pa",
  "stress": "Pa",
  "modulus": "Pa",
  "viscosity": "Pa s",
  "temperature": "K",
  "temperature difference": "K",
  "thermal expansion": "1/K",
  "angle": "deg",
  "ratio": "1",
  "strain": "1",
  "count": "1",
});
