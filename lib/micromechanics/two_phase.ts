import { checksFor } from "../check/mod.ts";
import type { FibreProperties, ResinProperties } from "../materials/mod.ts";
import { checkResin, shearModulus } from "./_two_phase.ts";

const check = checksFor("compute the shear modulus");

/** The elastic figures of a fibre: 1 along it, 2 and 3 across. */
export type FibreElastic = Pick<FibreProperties, "E1" | "E2" | "G12" | "nu12" | "G23">;

/** The elastic figures of a cured resin, isotropic. */
export type ResinElastic = Pick<ResinProperties, "E" | "nu">;

/** Parallel fibres in resin, without voids. */
export interface TwoPhase {
  /** The fibre. */
  readonly fibre: FibreElastic;
  /** The resin. */
  readonly resin: ResinElastic;
  /** Fibre volume over volume, Vf; the resin fills the rest [1]. */
  readonly fibreVolumeFraction: number;
}

/**
 * Shear modulus of an isotropic solid.
 *
 * Formula: G = E/(2 (1 + ν))
 *
 * Range: E above 0, ν above −1 and below 0.5.
 *
 * Source: elasticity.
 *
 * @param solid Young's modulus [Pa] and Poisson ratio [1].
 * @returns Shear modulus [Pa].
 * @throws {InputError} If a figure is outside its range.
 *
 * @example
 * ```ts
 * import { isotropicShearModulus } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(isotropicShearModulus({ E: 3.4e9, nu: 0.3 }), 3.4e9 / 2.6, 1e-3);
 * ```
 */
export function isotropicShearModulus(solid: ResinElastic): number {
  checkResin(check, solid);
  return check.result("shear modulus", shearModulus(solid), "Pa");
}

/**
 * The elastic figures of a fibre that is the same in all directions, as glass and basalt are.
 *
 * Formula: E1 = E2 = E; G12 = G23 = E/(2 (1 + ν))
 *
 * Range: E above 0, ν above −1 and below 0.5.
 *
 * Source: elasticity.
 *
 * @param solid Young's modulus [Pa] and Poisson ratio [1].
 * @returns Moduli [Pa] and Poisson ratio [1] of the fibre.
 * @throws {InputError} If a figure is outside its range.
 *
 * @example
 * ```ts
 * import { isotropicFibre } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(isotropicFibre({ E: 85e9, nu: 0.2 }).G23, 85e9 / 2.4, 1e-3);
 * ```
 */
export function isotropicFibre(solid: ResinElastic): FibreElastic {
  const G = isotropicShearModulus(solid);
  return { E1: solid.E, E2: solid.E, G12: G, nu12: solid.nu, G23: G };
}
