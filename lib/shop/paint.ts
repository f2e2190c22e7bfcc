import { checksFor } from "../check/mod.ts";

const check = checksFor("compute the paint");

/** Coats of paint, primer or varnish. */
export interface PaintJob {
  /** Area to be painted [m²]. */
  readonly area: number;
  /** Coats [1]. */
  readonly coats: number;
  /** Thickness of one wet coat [m]. */
  readonly wetThickness: number;
  /** What is left of the wet volume when it is dry, from the paint's sheet [1]. */
  readonly solidsByVolume: number;
  /** Density of the dry paint [kg/m³]. */
  readonly dryDensity: number;
  /** Left in tray, roller and air, over paint bought [1]. */
  readonly lossFraction: number;
}

/** Paint to buy, and what the part keeps of it. */
export interface Paint {
  /** Paint to buy [m³]. */
  readonly volume: number;
  /** Thickness of all coats, dry [m]. */
  readonly dryThickness: number;
  /** Mass that the part keeps [kg]. */
  readonly mass: number;
}

/**
 * Paint to buy and the mass that the part keeps.
 *
 * Formula: volume A n t/(1 − loss); dry thickness n t s; mass A n t s ρ
 *
 * Range: solids above 0 to 1; loss 0 to below 1.
 *
 * Source: mass balance.
 *
 * @param job Area [m²], coats, wet thickness [m], solids, dry density [kg/m³] and loss.
 * @returns Volume [m³], dry thickness [m] and mass [kg].
 * @throws {InputError} If an input is outside its range.
 *
 * @example
 * ```ts
 * import { paintMass } from "@laminate/notebooks/shop";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const paint = paintMass({
 *   area: 4, coats: 2, wetThickness: 100e-6, solidsByVolume: 0.5, dryDensity: 1500,
 *   lossFraction: 0.2,
 * });
 * assertAlmostEquals(paint.mass, 0.6, 1e-12);
 * assertAlmostEquals(paint.volume, 1e-3, 1e-15);
 * ```
 */
export function paintMass(job: PaintJob): Paint {
  const { area, coats, wetThickness, solidsByVolume, dryDensity, lossFraction } = check.object(
    "job",
    job,
  );
  check.positive("area", area, "m²");
  check.count("coats", coats, 1);
  check.positive("wet thickness", wetThickness, "m");
  check.positive("solids", check.fraction("solids", solidsByVolume));
  check.positive("dry density", dryDensity, "kg/m³");
  check.fraction("loss", lossFraction);
  if (!(lossFraction < 1)) check.refuse("loss", lossFraction, "must be below 1");
  const dryThickness = coats * wetThickness * solidsByVolume;
  return {
    volume: check.result("volume", area * coats * wetThickness / (1 - lossFraction), "m³"),
    dryThickness,
    mass: check.result("mass", area * dryThickness * dryDensity, "kg"),
  };
}
