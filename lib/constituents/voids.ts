import { checksFor } from "../check/mod.ts";

const check = checksFor("compute the void fraction");

/**
 * Void fraction from the measured density and the density without voids.
 *
 * A negative value is returned as it comes: it says that a density, a mass or the resin's
 * declared figure is off, and clipping would hide that.
 *
 * Formula: Vv = 1 − ρ/ρ0
 *
 * Range: below 1; negative values mean a measuring error.
 *
 * Source: ASTM D2734, V = 100 (Td − Md)/Td, from memory.
 *
 * @param measuredDensity Density of the laminate as measured, ρ [kg/m³].
 * @param densityWithoutVoids Density it would have without voids, ρ0 [kg/m³].
 * @returns Void volume over laminate volume, may be negative [1].
 * @throws {InputError} If a density is not above 0.
 *
 * @example
 * ```ts
 * import { voidFraction } from "@laminate/notebooks/constituents";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(voidFraction(1764, 1800), 0.02, 1e-12);
 * ```
 */
export function voidFraction(measuredDensity: number, densityWithoutVoids: number): number {
  check.positive("measured density", measuredDensity, "kg/m³");
  check.positive("void-free density", densityWithoutVoids, "kg/m³");
  return check.result("void fraction", 1 - measuredDensity / densityWithoutVoids);
}

/** What stands on one square metre of laminate, and how thick it came out. */
export interface ThicknessAndContents {
  /** Measured thickness of the laminate [m]. */
  readonly thickness: number;
  /** Fibre mass per area, all layers together [kg/m²]. */
  readonly fibrePerArea: number;
  /** Resin mass per area [kg/m²]. */
  readonly resinPerArea: number;
  /** Density of the fibre [kg/m³]. */
  readonly fibreDensity: number;
  /** Density of the cured resin [kg/m³]. */
  readonly resinDensity: number;
}

/**
 * Void fraction from the measured thickness: what is left when fibre and resin have taken
 * theirs. May be negative, and is then a measuring error.
 *
 * Formula: Vv = 1 − (wf/ρf + wm/ρm)/t
 *
 * Range: below 1. A rough surface reads thick on a caliper and so shows as voids.
 *
 * Source: ASTM D3171, test method by thickness (form of the calculation), from memory.
 *
 * @param laminate Thickness [m], fibre and resin per area [kg/m²], densities [kg/m³].
 * @returns Void volume over laminate volume, may be negative [1].
 * @throws {InputError} If the thickness or a density is not above 0, or a mass is below 0.
 *
 * @example
 * ```ts
 * import { voidFractionFromThickness } from "@laminate/notebooks/constituents";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const voids = voidFractionFromThickness({
 *   thickness: 1e-3,
 *   fibrePerArea: 1.0,
 *   resinPerArea: 0.7,
 *   fibreDensity: 2500,
 *   resinDensity: 1250,
 * });
 * assertAlmostEquals(voids, 0.04, 1e-12);
 * ```
 */
export function voidFractionFromThickness(laminate: ThicknessAndContents): number {
  check.object("laminate", laminate);
  const { thickness, fibrePerArea, resinPerArea, fibreDensity, resinDensity } = laminate;
  check.positive("thickness", thickness, "m");
  check.nonNegative("fibre per area", fibrePerArea, "kg/m²");
  check.nonNegative("resin per area", resinPerArea, "kg/m²");
  check.positive("fibre density", fibreDensity, "kg/m³");
  check.positive("resin density", resinDensity, "kg/m³");
  const solid = fibrePerArea / fibreDensity + resinPerArea / resinDensity;
  return check.result("void fraction", 1 - solid / thickness);
}
