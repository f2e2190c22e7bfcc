import { checksFor } from "../check/mod.ts";
import { halfTurn, tangentExcess } from "./_corner.ts";

const check = checksFor("compute the fillet");

/** Measures across a fillet, its arc hollow and tangent to both panels. */
export interface FilletSection {
  /** Radius of the arc [m]. */
  readonly radius: number;
  /** Angle between the panels on the filled side [deg]. */
  readonly cornerDeg: number;
  /** Area of the filling across the corner [m²]. */
  readonly area: number;
  /** From the corner to where the arc meets a panel [m]. */
  readonly tangentLength: number;
  /** From the corner to the arc, the thickness of the filling in the middle [m]. */
  readonly throat: number;
  /** Length of the arc [m]. */
  readonly arcLength: number;
  /** Straight across, from one end of the arc to the other [m]. */
  readonly chord: number;
}

/**
 * Section of a fillet of a given radius in a corner of any angle.
 *
 * Formula: area r²[cot(θ/2) − (π − θ)/2]; tangent length r cot(θ/2); throat r(1/sin(θ/2) − 1);
 * arc r(π − θ); chord 2r cos(θ/2)
 *
 * Range: θ, the angle of the corner on the filled side, above 0 and up to 180° (flat: nothing to
 * fill).
 *
 * Source: plane geometry; Machinery's Handbook gives 0.215 r² at 90°, from memory.
 *
 * @param radius Radius of the arc [m].
 * @param cornerDeg Angle between the panels on the filled side [deg].
 * @returns Area and lengths of the section.
 * @throws {InputError} If the radius is below 0 or the angle outside its range.
 *
 * @example A quarter of a circle cut from a square
 * ```ts
 * import { filletSection } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { area, tangentLength } = filletSection(0.02, 90);
 * assertAlmostEquals(area, 0.02 ** 2 * (1 - Math.PI / 4), 1e-15);
 * assertAlmostEquals(tangentLength, 0.02, 1e-15);
 * ```
 */
export function filletSection(radius: number, cornerDeg: number): FilletSection {
  check.nonNegative("radius", radius, "m");
  const half = halfTurn(check, cornerDeg);
  return {
    radius,
    cornerDeg,
    area: check.result("area", radius ** 2 * tangentExcess(half), "m²"),
    tangentLength: check.result("tangent length", radius * Math.tan(half), "m"),
    // 1/cos x − 1, written so that a nearly flat corner keeps its digits.
    throat: check.result("throat", radius * 2 * Math.sin(half / 2) ** 2 / Math.cos(half), "m"),
    arcLength: 2 * radius * half,
    chord: 2 * radius * Math.sin(half),
  };
}

/** Fillets to be filled. */
export interface FilletRun {
  /** Radius of the arc [m]. */
  readonly radius: number;
  /** Angle between the panels on the filled side [deg]. */
  readonly cornerDeg: number;
  /** Length of one fillet [m]. */
  readonly length: number;
  /** How many fillets of this kind [1]. */
  readonly count: number;
  /** Density of the putty [kg/m³]. */
  readonly density: number;
}

/** Putty in one run of fillets. */
export interface FilletQuantity {
  /** Section of one fillet. */
  readonly section: FilletSection;
  /** Putty for one metre of one fillet [m²]. */
  readonly volumePerMetre: number;
  /** Mass of one metre of one fillet [kg/m]. */
  readonly massPerMetre: number;
  /** Putty for all of them [m³]. */
  readonly volume: number;
  /** Mass of all of them [kg]. */
  readonly mass: number;
}

/**
 * Putty for a number of equal fillets.
 *
 * Formula: volume = area × count × length, mass = volume × density
 *
 * Range: as `filletSection`; what is scraped off and left in the cup comes on top.
 *
 * Source: plane geometry.
 *
 * @param run Radius and length [m], angle [deg], count [1], density [kg/m³].
 * @returns Volume and mass for one metre and in all.
 * @throws {InputError} If an input is outside its range.
 *
 * @example
 * ```ts
 * import { filletQuantity } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { mass } = filletQuantity({
 *   radius: 0.02, cornerDeg: 90, length: 1.5, count: 2, density: 600,
 * });
 * assertAlmostEquals(mass, 0.02 ** 2 * (1 - Math.PI / 4) * 3 * 600, 1e-12);
 * ```
 */
export function filletQuantity(run: FilletRun): FilletQuantity {
  const { radius, cornerDeg, length, count, density } = check.object("run", run);
  check.nonNegative("length", length, "m");
  check.count("count", count);
  check.positive("putty density", density, "kg/m³");
  const section = filletSection(radius, cornerDeg);
  const volume = check.result("volume", section.area * length * count, "m³");
  return {
    section,
    volumePerMetre: section.area,
    massPerMetre: check.result("mass per metre", section.area * density, "kg/m"),
    volume,
    mass: check.result("mass", volume * density, "kg"),
  };
}
