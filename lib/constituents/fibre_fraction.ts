import { checksFor } from "../check/mod.ts";
import { checkDensities, type ConstituentDensities } from "./_densities.ts";

export type { ConstituentDensities };

const check = checksFor("compute the fibre fraction");
const checkRatio = checksFor("compute the resin ratio");

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
  densities: ConstituentDensities,
): number {
  check.fraction("fibre mass fraction", fibreMassFraction);
  checkDensities(check, densities);
  const fibre = fibreMassFraction / densities.fibreDensity;
  const resin = (1 - fibreMassFraction) / densities.resinDensity;
  return check.result("fibre volume fraction", fibre / (fibre + resin));
}

/**
 * Fibre mass fraction of a laminate from its fibre volume fraction; air weighs nothing.
 *
 * Formula: W = ρf Vf / (ρf Vf + ρm Vm), Vm = 1 − Vf − Vv
 *
 * Range: Vf and Vv 0 to 1, together not above 1 and not both the whole (Vv below 1).
 *
 * Source: Kaw, Mechanics of Composite Materials, 2nd ed. (2006), section 3.2, from memory.
 *
 * @param volumeFraction Fibre volume over laminate volume, Vf [1].
 * @param densities Densities of fibre and resin [kg/m³].
 * @param voidFraction Void volume over laminate volume, Vv [1].
 * @returns Fibre mass over laminate mass [1].
 * @throws {InputError} If a fraction is outside its range or a density is not above 0.
 *
 * @example
 * ```ts
 * import { fibreMassFraction } from "@laminate/notebooks/constituents";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const W = fibreMassFraction(0.7, { fibreDensity: 2500, resinDensity: 1200 });
 * assertAlmostEquals(W, 1750 / 2110, 1e-12);
 * ```
 */
export function fibreMassFraction(
  volumeFraction: number,
  densities: ConstituentDensities,
  voidFraction = 0,
): number {
  check.fraction("fibre volume fraction", volumeFraction);
  checkDensities(check, densities);
  const matrix = matrixVolumeFraction(volumeFraction, voidFraction);
  const fibreMass = densities.fibreDensity * volumeFraction;
  const mass = fibreMass + densities.resinDensity * matrix;
  check.positive("laminate density", mass, "kg/m³");
  return check.result("fibre mass fraction", fibreMass / mass);
}

/**
 * Resin volume fraction: what fibre and voids leave.
 *
 * Formula: Vm = 1 − Vf − Vv
 *
 * Range: all three 0 to 1.
 *
 * Source: definition.
 *
 * @param volumeFraction Fibre volume fraction, Vf [1].
 * @param voidFraction Void volume fraction, Vv [1].
 * @returns Resin volume fraction [1].
 * @throws {InputError} If a fraction is outside 0 to 1 or both together exceed 1.
 *
 * @example
 * ```ts
 * import { matrixVolumeFraction } from "@laminate/notebooks/constituents";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(matrixVolumeFraction(0.4, 0.02), 0.58, 1e-12);
 * ```
 */
export function matrixVolumeFraction(volumeFraction: number, voidFraction = 0): number {
  check.fraction("fibre volume fraction", volumeFraction);
  check.fraction("void fraction", voidFraction);
  const rest = 1 - volumeFraction - voidFraction;
  // 0.7 + 0.3 in binary may pass 1 by a rounding; that is a full house, not a mistake.
  if (rest < 0 && rest > -1e-12) return 0;
  return check.within("resin volume fraction", rest, { min: 0, max: 1 });
}

/**
 * Resin-to-fibre ratio by mass, from the fibre mass fraction: the figure a crew talks about
 * ("one to one").
 *
 * Formula: r = (1 − W)/W
 *
 * Range: W above 0, up to 1.
 *
 * Source: definition.
 *
 * @param massFraction Fibre mass over laminate mass, W [1].
 * @returns Resin mass over fibre mass [1].
 * @throws {InputError} If the fraction is not above 0 and up to 1.
 *
 * @example
 * ```ts
 * import { resinRatio } from "@laminate/notebooks/constituents";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(resinRatio(0.4), 1.5, 1e-12);
 * ```
 */
export function resinRatio(massFraction: number): number {
  checkRatio.fraction("fibre mass fraction", massFraction);
  checkRatio.positive("fibre mass fraction", massFraction);
  return checkRatio.result("resin ratio", (1 - massFraction) / massFraction);
}

/**
 * Fibre mass fraction from the resin-to-fibre ratio by mass.
 *
 * Formula: W = 1/(1 + r)
 *
 * Range: r 0 or above.
 *
 * Source: definition.
 *
 * @param ratio Resin mass over fibre mass, r [1].
 * @returns Fibre mass over laminate mass [1].
 * @throws {InputError} If the ratio is below 0.
 *
 * @example One to one is half fibre by mass
 * ```ts
 * import { fibreMassFractionFromRatio } from "@laminate/notebooks/constituents";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(fibreMassFractionFromRatio(1), 0.5, 1e-12);
 * ```
 */
export function fibreMassFractionFromRatio(ratio: number): number {
  check.nonNegative("resin ratio", ratio);
  return 1 / (1 + ratio);
}
