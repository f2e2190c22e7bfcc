import { checksFor } from "../check/mod.ts";
import { checkInPlane, checkResult, type InPlaneConstants } from "./_checks.ts";
import { reducedComplianceOf, reducedStiffnessOf } from "./_lamina.ts";

const check = checksFor("compute the invariants of the lamina");

/** What of a lamina's stiffness is left when the angle is taken out. */
export interface StiffnessInvariants {
  /** Mean normal stiffness over all angles [Pa]. */
  readonly U1: number;
  /** Part that turns with cos 2θ [Pa]. */
  readonly U2: number;
  /** Part that turns with cos 4θ [Pa]. */
  readonly U3: number;
  /** Mean of Q̄12 over all angles [Pa]. */
  readonly U4: number;
  /** Mean of Q̄66 over all angles, (U1 − U4)/2 [Pa]. */
  readonly U5: number;
}

/** What of a lamina's compliance is left when the angle is taken out. */
export interface ComplianceInvariants {
  /** Mean normal compliance over all angles [1/Pa]. */
  readonly V1: number;
  /** Part that turns with cos 2θ [1/Pa]. */
  readonly V2: number;
  /** Part that turns with cos 4θ [1/Pa]. */
  readonly V3: number;
  /** Mean of S̄12 over all angles [1/Pa]. */
  readonly V4: number;
  /** Mean of S̄66 over all angles, 2(V1 − V4) [1/Pa]. */
  readonly V5: number;
}

/**
 * Invariants of a lamina's stiffness: the quasi-isotropic laminate made of it has
 * A11 = U1 h, A12 = U4 h, A66 = U5 h.
 *
 * Formula: U1 = (3Q11 + 3Q22 + 2Q12 + 4Q66)/8, U2 = (Q11 − Q22)/2,
 * U3 = (Q11 + Q22 − 2Q12 − 4Q66)/8, U4 = (Q11 + Q22 + 6Q12 − 4Q66)/8, U5 = (U1 − U4)/2
 *
 * Range: as for `reducedStiffness`.
 *
 * Source: S. W. Tsai and H. T. Hahn, Introduction to Composite Materials, 1980, chapter 3, from
 * memory.
 *
 * @param lamina Moduli and Poisson ratio of the lamina [Pa], [1].
 * @returns Invariants [Pa].
 * @throws {InputError} If a modulus is not above 0, or the Poisson ratio is one that no elastic
 * material can have.
 *
 * @example An isotropic sheet does not turn
 * ```ts
 * import { stiffnessInvariants } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { U2, U3 } = stiffnessInvariants({ E1: 70e9, E2: 70e9, G12: 28e9, nu12: 0.25 });
 * assertAlmostEquals(U2, 0, 1e-4);
 * assertAlmostEquals(U3, 0, 1e-4);
 * ```
 */
export function stiffnessInvariants(lamina: InPlaneConstants): StiffnessInvariants {
  checkInPlane(check, lamina);
  const { Q11, Q12, Q22, Q66 } = reducedStiffnessOf(lamina);
  return checkResult(check, {
    U1: (3 * Q11 + 3 * Q22 + 2 * Q12 + 4 * Q66) / 8,
    U2: (Q11 - Q22) / 2,
    U3: (Q11 + Q22 - 2 * Q12 - 4 * Q66) / 8,
    U4: (Q11 + Q22 + 6 * Q12 - 4 * Q66) / 8,
    U5: (Q11 + Q22 - 2 * Q12 + 4 * Q66) / 8,
  });
}

/**
 * Invariants of a lamina's compliance.
 *
 * Formula: V1 = (3S11 + 3S22 + 2S12 + S66)/8, V2 = (S11 − S22)/2,
 * V3 = (S11 + S22 − 2S12 − S66)/8, V4 = (S11 + S22 + 6S12 − S66)/8, V5 = 2(V1 − V4)
 *
 * Range: as for `reducedStiffness`.
 *
 * Source: S. W. Tsai and H. T. Hahn, Introduction to Composite Materials, 1980, chapter 3, from
 * memory.
 *
 * @param lamina Moduli and Poisson ratio of the lamina [Pa], [1].
 * @returns Invariants [1/Pa].
 * @throws {InputError} If a modulus is not above 0, or the Poisson ratio is one that no elastic
 * material can have.
 *
 * @example
 * ```ts
 * import { complianceInvariants } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { V1 } = complianceInvariants({ E1: 70e9, E2: 70e9, G12: 28e9, nu12: 0.25 });
 * assertAlmostEquals(V1, 1 / 70e9, 1e-24);
 * ```
 */
export function complianceInvariants(lamina: InPlaneConstants): ComplianceInvariants {
  checkInPlane(check, lamina);
  const { S11, S12, S22, S66 } = reducedComplianceOf(lamina);
  return checkResult(check, {
    V1: (3 * S11 + 3 * S22 + 2 * S12 + S66) / 8,
    V2: (S11 - S22) / 2,
    V3: (S11 + S22 - 2 * S12 - S66) / 8,
    V4: (S11 + S22 + 6 * S12 - S66) / 8,
    V5: (S11 + S22 - 2 * S12 + S66) / 2,
  });
}
