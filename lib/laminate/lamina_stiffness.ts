import { checksFor } from "../check/mod.ts";
import { checkInPlane, checkResult, type InPlaneConstants } from "./_checks.ts";
import { reducedComplianceOf, reducedStiffnessOf } from "./_lamina.ts";

export type { InPlaneConstants } from "./_checks.ts";

const check = checksFor("compute the stiffness of the lamina");

/** Stiffness of a lamina in plane stress, in its own axes: σ = Q ε. */
export interface ReducedStiffness {
  /** σ1 for ε1 [Pa]. */
  readonly Q11: number;
  /** σ1 for ε2, and σ2 for ε1 [Pa]. */
  readonly Q12: number;
  /** σ2 for ε2 [Pa]. */
  readonly Q22: number;
  /** τ12 for γ12 [Pa]. */
  readonly Q66: number;
}

/** Compliance of a lamina in plane stress, in its own axes: ε = S σ. */
export interface ReducedCompliance {
  /** ε1 for σ1 [1/Pa]. */
  readonly S11: number;
  /** ε1 for σ2, and ε2 for σ1 [1/Pa]. */
  readonly S12: number;
  /** ε2 for σ2 [1/Pa]. */
  readonly S22: number;
  /** γ12 for τ12 [1/Pa]. */
  readonly S66: number;
}

/**
 * Stiffness of a lamina in plane stress, in its own axes (1 along the fibres, 2 across).
 *
 * Formula: Q11 = E1/(1 − ν12 ν21), Q12 = ν12 E2/(1 − ν12 ν21), Q22 = E2/(1 − ν12 ν21),
 * Q66 = G12, with ν21 = ν12 E2/E1
 *
 * Range: |ν12| below √(E1/E2), all moduli above 0; a core with next to no stiffness in the plane
 * is a lamina like any other.
 *
 * Source: R. M. Jones, Mechanics of Composite Materials, 2nd ed. 1999, section 2.5, from memory.
 *
 * @param lamina Moduli and Poisson ratio of the lamina [Pa], [1].
 * @returns Reduced stiffness [Pa].
 * @throws {InputError} If a modulus is not above 0, or the Poisson ratio is one that no elastic
 * material can have.
 *
 * @example
 * ```ts
 * import { reducedStiffness } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { Q11 } = reducedStiffness({ E1: 40e9, E2: 10e9, G12: 4e9, nu12: 0.2 });
 * assertAlmostEquals(Q11, 40e9 / 0.99, 1e-3);
 * ```
 */
export function reducedStiffness(lamina: InPlaneConstants): ReducedStiffness {
  checkInPlane(check, lamina);
  return checkResult(check, reducedStiffnessOf(lamina));
}

/**
 * Compliance of a lamina in plane stress, in its own axes.
 *
 * Formula: S11 = 1/E1, S12 = −ν12/E1, S22 = 1/E2, S66 = 1/G12
 *
 * Range: as for `reducedStiffness`.
 *
 * Source: R. M. Jones, Mechanics of Composite Materials, 2nd ed. 1999, section 2.4, from memory.
 *
 * @param lamina Moduli and Poisson ratio of the lamina [Pa], [1].
 * @returns Compliance [1/Pa].
 * @throws {InputError} If a modulus is not above 0, or the Poisson ratio is one that no elastic
 * material can have.
 *
 * @example
 * ```ts
 * import { reducedCompliance } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { S12 } = reducedCompliance({ E1: 40e9, E2: 10e9, G12: 4e9, nu12: 0.2 });
 * assertAlmostEquals(S12, -5e-12, 1e-24);
 * ```
 */
export function reducedCompliance(lamina: InPlaneConstants): ReducedCompliance {
  checkInPlane(check, lamina);
  return checkResult(check, reducedComplianceOf(lamina));
}

/**
 * Minor Poisson ratio of a lamina: contraction along 1 for a pull along 2.
 *
 * Formula: ν21 = ν12 E2/E1
 *
 * Range: as for `reducedStiffness`.
 *
 * Source: symmetry of the compliance.
 *
 * @param lamina Moduli and Poisson ratio of the lamina [Pa], [1].
 * @returns Minor Poisson ratio [1].
 * @throws {InputError} If a modulus is not above 0, or the Poisson ratio is one that no elastic
 * material can have.
 *
 * @example
 * ```ts
 * import { minorPoissonRatio } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const nu21 = minorPoissonRatio({ E1: 40e9, E2: 10e9, G12: 4e9, nu12: 0.2 });
 * assertAlmostEquals(nu21, 0.05, 1e-15);
 * ```
 */
export function minorPoissonRatio(lamina: InPlaneConstants): number {
  checkInPlane(check, lamina);
  return lamina.nu12 * lamina.E2 / lamina.E1;
}
