import type { Dimension } from "./dimension.ts";

/** Units of one system in which a kind is shown, each from the given SI size upward. */
export type Ladder = readonly (readonly [symbol: string, from: number])[];

/** Metric and US units in which each kind of quantity is shown. */
export interface Ladders {
  readonly metric: Ladder;
  readonly US: Ladder;
}

const time: Ladder = [["s", 0], ["min", 120], ["h", 7200]];
const energy: Ladder = [["mJ", 0], ["J", 1]];
const share: Ladder = [["%", 0]];

/** Common practice, no source: the units in which builders and data sheets give each kind. */
export const ladders: Readonly<Record<Dimension, Ladders>> = {
  "length": { metric: [["mm", 0], ["m", 1]], US: [["in", 0], ["ft", 3.048]] },
  "thickness": { metric: [["mm", 0]], US: [["in", 0]] },
  "area": { metric: [["cm2", 0], ["m2", 0.1]], US: [["in2", 0], ["ft2", 0.09290304]] },
  "volume": {
    metric: [["mL", 0], ["L", 1e-3], ["m3", 1]],
    US: [["floz", 0], ["gal", 3.785411784e-3]],
  },
  "mass": { metric: [["g", 0], ["kg", 1]], US: [["oz", 0], ["lb", 0.45359237]] },
  "areal weight": {
    metric: [["g/m2", 0], ["kg/m2", 2]],
    US: [["oz/yd2", 0], ["lb/ft2", 4.882427636383051]],
  },
  "density": { metric: [["kg/m3", 0]], US: [["lb/ft3", 0]] },
  "linear density": { metric: [["g/m", 0], ["kg/m", 1]], US: [["oz/ft", 0], ["lb/ft", 1.4881639]] },
  "time": { metric: time, US: time },
  "speed": { metric: [["mm/min", 0], ["m/s", 0.1]], US: [["in/min", 0]] },
  "force": { metric: [["N", 0], ["kN", 1e4]], US: [["lbf", 0]] },
  "force per length": { metric: [["N/mm", 0]], US: [["lbf/in", 0]] },
  "moment": { metric: [["N*m", 0]], US: [["lbf*in", 0]] },
  "energy": { metric: energy, US: energy },
  "bending stiffness": { metric: [["N*m2", 0]], US: [["lbf*in2", 0]] },
  "bending compliance": { metric: [["mm/kN", 0], ["mm/N", 1e-3]], US: [["in/lbf", 0]] },
  "curvature": { metric: [["1/m", 0]], US: [["1/in", 0]] },
  "pressure": {
    metric: [["Pa", 0], ["kPa", 100], ["MPa", 1e6]],
    US: [["inHg", 0], ["psi", 120e3]],
  },
  "stress": { metric: [["kPa", 0], ["MPa", 1e5]], US: [["psi", 0], ["ksi", 6894757.3]] },
  "modulus": {
    metric: [["MPa", 0], ["GPa", 1e9]],
    US: [["ksi", 0], ["Msi", 6894757293]],
  },
  "viscosity": { metric: [["mPa*s", 0], ["Pa*s", 10]], US: [["cP", 0]] },
  "temperature": { metric: [["degC", 0]], US: [["degF", 0]] },
  "temperature difference": { metric: [["K", 0]], US: [["degF", 0]] },
  "thermal expansion": { metric: [["1e-6/K", 0]], US: [["1e-6/degF", 0]] },
  "angle": { metric: [["deg", 0]], US: [["deg", 0]] },
  "ratio": { metric: share, US: share },
  "strain": { metric: share, US: share },
  "count": { metric: [["1", 0]], US: [["1", 0]] },
};

/** The rung for a size: the largest unit that begins at or below it. */
export function rung(ladder: Ladder, size: number): string {
  let symbol = ladder[0]![0];
  for (const [unit, from] of ladder) if (size >= from * (1 - 1e-12)) symbol = unit;
  return symbol;
}

/** Units whose printed form is not made from the plain one by raising its powers. */
const printedAs: Readonly<Record<string, string>> = {
  "1e-6/K": "µm/m/K",
  "1e-6/degF": "µin/in/°F",
  "degC": "°C",
  "degF": "°F",
  "deg": "°",
  "um": "µm",
  "floz": "fl oz",
};

/** A unit as it is printed: `g/m²`, `N m`, `µm/m/K`, `°C`. */
export function printed(symbol: string): string {
  return printedAs[symbol] ??
    symbol.replace(/2$/, "²").replace(/3$/, "³").replaceAll("*", " ");
}
