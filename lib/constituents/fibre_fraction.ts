import { checksFor } from "../check/mod.ts";

const check = checksFor("compute the fibre fraction");

/** Densities of the two constituents. */
export interface ConstituentDensities {
  /** Density of the fibre [kg/m³]. */
  readonly fibreDensity: number;
  /** Density of the cured resin [kg/m³]. */
  readonly resinDensity: number;
}

/**
 * Fibre volume fraction of a laminate without voids, from its fibre mass fraction.
 *
 * Formula: Vf = (W/ρf) / (W/ρf + (1 − W)/ρm)
 *
 * Range: W 0 to 1; voids make the true fraction smaller (see `voidFraction`).
 *
 * Source: ASTM D3171 (form of the calculation), from memory; mass balance.
 *
 * @param fibreMassFraction Fibre mass over laminate mass, W [1].
 * @param densities Densities of fibre and resin [kg/m³].
 * @returns Fibre volume fraction, void-free [1].
 * @throws {InputError} If the fraction is outside 0 to 1 or a density is not above 0.
 *
 * @example Half glass by mass is a third by volume
 * ```ts
 * import { fibreVolumeFraction } from "@laminate/notebooks/constituents";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const Vf = fibreVolumeFraction(0.5, { fibreDensity: 2560, resinDensity: 1200 });
 * assertAlmostEquals(Vf, 0.3191489361702128, 1e-12);
 * ```
 */
export function fibreVolumeFraction(
  fibreMassFraction: number,
  { fibreDensity, resinDensity }: ConstituentDensities,
): number {
  check.fraction("fibre mass fraction", fibreMassFraction);
  check.positive("fibre density", fibreDensity, "kg/m³");
  check.positive("resin density", resinDensity, "kg/m³");
  const fibre = fibreMassFraction / fibreDensity;
  const resin = (1 - fibreMassFraction) / resinDensity;
  return check.result("fibre volume fraction", fibre / (fibre + resin));
}
