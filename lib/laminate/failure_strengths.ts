import { checksFor } from "../check/mod.ts";
import type { LaminaStrengths } from "../materials/mod.ts";
import { checkInPlane, checkResult, type InPlaneConstants } from "./_checks.ts";
import { checkFactor, checkStrengths } from "./_failure_checks.ts";

const checkKnockDown = checksFor("knock down the strengths");
const checkAllowables = checksFor("compute the strain allowables");

/** Strains at which a ply fails, all as positive magnitudes, mechanical strain. */
export interface StrainAllowables {
  /** Tension along 1 [1]. */
  readonly e1t: number;
  /** Compression along 1 [1]. */
  readonly e1c: number;
  /** Tension along 2 [1]. */
  readonly e2t: number;
  /** Compression along 2 [1]. */
  readonly e2c: number;
  /** Engineering shear strain in the plane [1]. */
  readonly g12: number;
}

/**
 * Strengths reduced for design: each times a factor of its own, or all times one.
 *
 * Coupons scatter, and parts laid by hand scatter more; damage, water, heat and holes take their
 * share as well. The factor is the builder's judgement: this function only applies it.
 *
 * Formula: strength × factor
 *
 * Range: factors above 0, up to 1
 *
 * Source: definition
 *
 * @param strengths Strengths as measured or published [Pa].
 * @param factor One factor for all, or factors by name; 1 where none is given [1].
 * @returns Strengths for design [Pa].
 * @throws {InputError} If a strength is not above 0, a factor not above 0 and up to 1, or no
 * strength has the name of a factor.
 *
 * @example
 * ```ts
 * import { knockDownStrengths } from "@laminate/notebooks/laminate";
 * import { assertEquals } from "@std/assert";
 *
 * const measured = { Xt: 800e6, Xc: 600e6, Yt: 40e6, Yc: 120e6, S: 60e6 };
 * assertEquals(knockDownStrengths(measured, 0.5).Xt, 400e6);
 * assertEquals(knockDownStrengths(measured, { Xc: 0.5 }),
 *   { Xt: 800e6, Xc: 300e6, Yt: 40e6, Yc: 120e6, S: 60e6 });
 * ```
 */
export function knockDownStrengths(
  strengths: LaminaStrengths,
  factor: number | Partial<LaminaStrengths>,
): LaminaStrengths {
  checkStrengths(checkKnockDown, strengths);
  const { Xt, Xc, Yt, Yc, S } = strengths;
  const names = ["Xt", "Xc", "Yt", "Yc", "S"] as const;
  if (typeof factor === "object" && factor !== null) {
    for (const name of Object.keys(factor)) checkKnockDown.oneOf("factor", name, names);
  }
  const of = (name: typeof names[number]): number =>
    checkFactor(
      checkKnockDown,
      typeof factor === "object" && factor !== null ? factor[name] ?? 1 : factor,
      `factor of ${name}`,
    );
  return {
    Xt: Xt * of("Xt"),
    Xc: Xc * of("Xc"),
    Yt: Yt * of("Yt"),
    Yc: Yc * of("Yc"),
    S: S * of("S"),
  };
}

/**
 * Strain allowables of a ply that is linear up to its strengths. A real ply is not: measured
 * allowables go first, above all in shear.
 *
 * Formula: e1t = Xt/E1, e1c = Xc/E1, e2t = Yt/E2, e2c = Yc/E2, g12 = S/G12
 *
 * Range: estimate; shear of a real ply is far from linear, so that g12 comes out low
 *
 * Source: A. K. Kaw, Mechanics of Composite Materials, 2nd ed. 2006, section 2.8, from memory
 *
 * @param lamina Moduli and Poisson ratio of the ply [Pa], [1].
 * @param strengths Strengths of the ply [Pa].
 * @returns Strain allowables, positive [1].
 * @throws {InputError} If a modulus or a strength is not above 0, or the Poisson ratio is one that
 * no elastic material can have.
 *
 * @example
 * ```ts
 * import { linearStrainAllowables } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { e1t } = linearStrainAllowables(
 *   { E1: 40e9, E2: 10e9, G12: 4e9, nu12: 0.28 },
 *   { Xt: 800e6, Xc: 600e6, Yt: 40e6, Yc: 120e6, S: 60e6 },
 * );
 * assertAlmostEquals(e1t, 0.02, 1e-15);
 * ```
 */
export function linearStrainAllowables(
  lamina: InPlaneConstants,
  strengths: LaminaStrengths,
): StrainAllowables {
  checkInPlane(checkAllowables, lamina);
  checkStrengths(checkAllowables, strengths);
  const { E1, E2, G12 } = lamina;
  const { Xt, Xc, Yt, Yc, S } = strengths;
  return checkResult(checkAllowables, {
    e1t: Xt / E1,
    e1c: Xc / E1,
    e2t: Yt / E2,
    e2c: Yc / E2,
    g12: S / G12,
  });
}
