import { checksFor } from "../check/mod.ts";
import { inverse3 } from "../numeric/mod.ts";
import { checkInPlane, checkResult, type InPlaneConstants } from "./_checks.ts";

const check = checksFor("compute the stiffness of the solid");

/** Constants of a lamina as a solid: in its plane and through its thickness (3). */
export interface SolidConstants extends InPlaneConstants {
  /** Modulus through the thickness [Pa]. */
  readonly E3: number;
  /** Contraction along 3 for a pull along 1 [1]. */
  readonly nu13: number;
  /** Contraction along 3 for a pull along 2 [1]. */
  readonly nu23: number;
  /** Shear modulus in the 2-3 plane [Pa]. */
  readonly G23: number;
  /** Shear modulus in the 1-3 plane [Pa]. */
  readonly G13: number;
}

/** Stiffness of an orthotropic solid in its own axes: σ = C ε, engineering shear. */
export interface SolidStiffness {
  /** σ1 for ε1 [Pa]. */
  readonly C11: number;
  /** σ1 for ε2 [Pa]. */
  readonly C12: number;
  /** σ1 for ε3 [Pa]. */
  readonly C13: number;
  /** σ2 for ε2 [Pa]. */
  readonly C22: number;
  /** σ2 for ε3 [Pa]. */
  readonly C23: number;
  /** σ3 for ε3 [Pa]. */
  readonly C33: number;
  /** τ23 for γ23 [Pa]. */
  readonly C44: number;
  /** τ13 for γ13 [Pa]. */
  readonly C55: number;
  /** τ12 for γ12 [Pa]. */
  readonly C66: number;
}

/** Compliance of an orthotropic solid in its own axes: ε = S σ, engineering shear. */
export interface SolidCompliance {
  /** ε1 for σ1 [1/Pa]. */
  readonly S11: number;
  /** ε1 for σ2 [1/Pa]. */
  readonly S12: number;
  /** ε1 for σ3, the thinning of a pulled sheet [1/Pa]. */
  readonly S13: number;
  /** ε2 for σ2 [1/Pa]. */
  readonly S22: number;
  /** ε2 for σ3 [1/Pa]. */
  readonly S23: number;
  /** ε3 for σ3 [1/Pa]. */
  readonly S33: number;
  /** γ23 for τ23 [1/Pa]. */
  readonly S44: number;
  /** γ13 for τ13 [1/Pa]. */
  readonly S55: number;
  /** γ12 for τ12 [1/Pa]. */
  readonly S66: number;
}

/**
 * Compliance of a lamina as an orthotropic solid; 44 is the 2-3 plane, 55 the 1-3 plane.
 *
 * Formula: S11 = 1/E1, S12 = −ν12/E1, S13 = −ν13/E1, S22 = 1/E2, S23 = −ν23/E2, S33 = 1/E3,
 * S44 = 1/G23, S55 = 1/G13, S66 = 1/G12
 *
 * Range: constants for which every strain stores energy (the matrix is positive definite).
 *
 * Source: R. M. Jones, Mechanics of Composite Materials, 2nd ed. 1999, section 2.3, from memory.
 *
 * @param solid Constants of the solid [Pa], [1].
 * @returns Compliance [1/Pa].
 * @throws {InputError} If a modulus is not above 0 or the Poisson ratios are not possible together.
 *
 * @example
 * ```ts
 * import { solidCompliance } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { S13 } = solidCompliance({
 *   E1: 40e9, E2: 10e9, E3: 10e9, nu12: 0.25, nu13: 0.25, nu23: 0.4,
 *   G12: 4e9, G13: 4e9, G23: 3.5e9,
 * });
 * assertAlmostEquals(S13, -6.25e-12, 1e-24);
 * ```
 */
export function solidCompliance(solid: SolidConstants): SolidCompliance {
  checkInPlane(check, solid);
  const { E1, E2, E3, G12, G13, G23, nu12, nu13, nu23 } = solid;
  check.positive("E3", E3, "Pa");
  check.positive("G13", G13, "Pa");
  check.positive("G23", G23, "Pa");
  check.finite("nu13", nu13);
  check.finite("nu23", nu23);
  const determinant = 1 - nu12 * nu12 * E2 / E1 - nu13 * nu13 * E3 / E1 - nu23 * nu23 * E3 / E2 -
    2 * nu12 * nu13 * nu23 * E3 / E1;
  // With |ν12| below √(E1/E2), Sylvester's criterion leaves only the determinant to look at.
  if (!(determinant > 0)) {
    check.refuse(
      "set of Poisson ratios nu12, nu13, nu23",
      `${nu12}, ${nu13}, ${nu23}`,
      "must be smaller: together they would give energy away under some load",
    );
  }
  return checkResult(check, {
    S11: 1 / E1,
    S12: -nu12 / E1,
    S13: -nu13 / E1,
    S22: 1 / E2,
    S23: -nu23 / E2,
    S33: 1 / E3,
    S44: 1 / G23,
    S55: 1 / G13,
    S66: 1 / G12,
  });
}

/**
 * Stiffness of a lamina as an orthotropic solid; 44 is the 2-3 plane, 55 the 1-3 plane.
 *
 * Formula: C = S⁻¹
 *
 * Range: as for `solidCompliance`.
 *
 * Source: R. M. Jones, Mechanics of Composite Materials, 2nd ed. 1999, section 2.3, from memory.
 *
 * @param solid Constants of the solid [Pa], [1].
 * @returns Stiffness [Pa].
 * @throws {InputError} If a modulus is not above 0 or the Poisson ratios are not possible together.
 *
 * @example
 * ```ts
 * import { solidStiffness } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const isotropic = { E1: 5e9, E2: 5e9, E3: 5e9, nu12: 0.25, nu13: 0.25, nu23: 0.25 };
 * const { C11, C12 } = solidStiffness({ ...isotropic, G12: 2e9, G13: 2e9, G23: 2e9 });
 * assertAlmostEquals(C11, 6e9, 1e-3);
 * assertAlmostEquals(C12, 2e9, 1e-3);
 * ```
 */
export function solidStiffness(solid: SolidConstants): SolidStiffness {
  const { S11, S12, S13, S22, S23, S33, S44, S55, S66 } = solidCompliance(solid);
  const normal = inverse3([S11, S12, S13, S12, S22, S23, S13, S23, S33]);
  return checkResult(check, {
    C11: normal[0]!,
    C12: normal[1]!,
    C13: normal[2]!,
    C22: normal[4]!,
    C23: normal[5]!,
    C33: normal[8]!,
    C44: 1 / S44,
    C55: 1 / S55,
    C66: 1 / S66,
  });
}
