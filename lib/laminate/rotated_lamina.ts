import { checksFor } from "../check/mod.ts";
import type { Lamina } from "../materials/mod.ts";
import { checkAngle, checkInPlane, checkResult, type InPlaneConstants } from "./_checks.ts";
import { sineCosineDeg } from "./_degrees.ts";
import { reducedComplianceOf, rotatedExpansionOf, rotatedStiffnessOf } from "./_lamina.ts";

const check = checksFor("turn the lamina");

/** Stiffness of a turned lamina in the axes of the laminate: σ = Q̄ ε, engineering shear. */
export interface RotatedStiffness {
  /** σx for εx [Pa]. */
  readonly Q11: number;
  /** σx for εy [Pa]. */
  readonly Q12: number;
  /** σx for γxy [Pa]. */
  readonly Q16: number;
  /** σy for εy [Pa]. */
  readonly Q22: number;
  /** σy for γxy [Pa]. */
  readonly Q26: number;
  /** τxy for γxy [Pa]. */
  readonly Q66: number;
}

/** Compliance of a turned lamina in the axes of the laminate: ε = S̄ σ, engineering shear. */
export interface RotatedCompliance {
  /** εx for σx [1/Pa]. */
  readonly S11: number;
  /** εx for σy [1/Pa]. */
  readonly S12: number;
  /** εx for τxy, and γxy for σx [1/Pa]. */
  readonly S16: number;
  /** εy for σy [1/Pa]. */
  readonly S22: number;
  /** εy for τxy, and γxy for σy [1/Pa]. */
  readonly S26: number;
  /** γxy for τxy [1/Pa]. */
  readonly S66: number;
}

/** Free expansion in the axes of the laminate. */
export interface Expansion {
  /** Along x [1/K]; for moisture, per moisture content by mass of 1 [1]. */
  readonly alphaX: number;
  /** Along y [1/K]; for moisture, per moisture content by mass of 1 [1]. */
  readonly alphaY: number;
  /** Engineering shear [1/K]; for moisture, per moisture content by mass of 1 [1]. */
  readonly alphaXY: number;
}

/**
 * Stiffness of a lamina turned by an angle, in the axes of the laminate.
 *
 * Formula: Q̄11 = Q11 c⁴ + 2(Q12 + 2Q66) c²s² + Q22 s⁴,
 * Q̄12 = (Q11 + Q22 − 4Q66) c²s² + Q12 (c⁴ + s⁴),
 * Q̄22 = Q11 s⁴ + 2(Q12 + 2Q66) c²s² + Q22 c⁴,
 * Q̄16 = (Q11 − Q12 − 2Q66) c³s + (Q12 − Q22 + 2Q66) c s³,
 * Q̄26 = (Q11 − Q12 − 2Q66) c s³ + (Q12 − Q22 + 2Q66) c³s,
 * Q̄66 = (Q11 + Q22 − 2Q12 − 2Q66) c²s² + Q66 (c⁴ + s⁴)
 *
 * Range: as for `reducedStiffness`; angle from −360° to 360°, exact at multiples of 45°.
 *
 * Source: R. M. Jones, Mechanics of Composite Materials, 2nd ed. 1999, section 2.6, from memory.
 *
 * @param lamina Moduli and Poisson ratio of the lamina [Pa], [1].
 * @param angleDeg From x to the 1 direction, positive towards y [deg].
 * @returns Stiffness in the axes of the laminate [Pa].
 * @throws {InputError} If the lamina is not possible or the angle is not a number within a turn.
 *
 * @example
 * ```ts
 * import { reducedStiffness, rotatedStiffness } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const lamina = { E1: 40e9, E2: 10e9, G12: 4e9, nu12: 0.2 };
 * assertAlmostEquals(rotatedStiffness(lamina, 90).Q22, reducedStiffness(lamina).Q11, 1e-3);
 * ```
 */
export function rotatedStiffness(lamina: InPlaneConstants, angleDeg: number): RotatedStiffness {
  checkInPlane(check, lamina);
  checkAngle(check, angleDeg);
  return checkResult(check, rotatedStiffnessOf(lamina, angleDeg));
}

/**
 * Compliance of a lamina turned by an angle, in the axes of the laminate.
 *
 * Formula: S̄11 = S11 c⁴ + (2S12 + S66) c²s² + S22 s⁴,
 * S̄12 = S12 (c⁴ + s⁴) + (S11 + S22 − S66) c²s²,
 * S̄22 = S11 s⁴ + (2S12 + S66) c²s² + S22 c⁴,
 * S̄16 = (2S11 − 2S12 − S66) c³s − (2S22 − 2S12 − S66) c s³,
 * S̄26 = (2S11 − 2S12 − S66) c s³ − (2S22 − 2S12 − S66) c³s,
 * S̄66 = 2(2S11 + 2S22 − 4S12 − S66) c²s² + S66 (c⁴ + s⁴)
 *
 * Range: as for `reducedStiffness`; angle from −360° to 360°.
 *
 * Source: R. M. Jones, Mechanics of Composite Materials, 2nd ed. 1999, section 2.6, from memory.
 *
 * @param lamina Moduli and Poisson ratio of the lamina [Pa], [1].
 * @param angleDeg From x to the 1 direction, positive towards y [deg].
 * @returns Compliance in the axes of the laminate [1/Pa].
 * @throws {InputError} If the lamina is not possible or the angle is not a number within a turn.
 *
 * @example
 * ```ts
 * import { rotatedCompliance } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { S11 } = rotatedCompliance({ E1: 40e9, E2: 10e9, G12: 4e9, nu12: 0.2 }, 90);
 * assertAlmostEquals(S11, 1e-10, 1e-24);
 * ```
 */
export function rotatedCompliance(lamina: InPlaneConstants, angleDeg: number): RotatedCompliance {
  checkInPlane(check, lamina);
  checkAngle(check, angleDeg);
  const { S11, S12, S22, S66 } = reducedComplianceOf(lamina);
  const { sine, cosine } = sineCosineDeg(angleDeg);
  const [c2, s2, sc] = [cosine * cosine, sine * sine, sine * cosine];
  const [c4, s4, mixed] = [c2 * c2, s2 * s2, c2 * s2];
  const along = 2 * S11 - 2 * S12 - S66;
  const across = 2 * S22 - 2 * S12 - S66;
  return checkResult(check, {
    S11: S11 * c4 + (2 * S12 + S66) * mixed + S22 * s4,
    S12: S12 * (c4 + s4) + (S11 + S22 - S66) * mixed,
    S16: sc * (along * c2 - across * s2),
    S22: S11 * s4 + (2 * S12 + S66) * mixed + S22 * c4,
    S26: sc * (along * s2 - across * c2),
    S66: 2 * (2 * S11 + 2 * S22 - 4 * S12 - S66) * mixed + S66 * (c4 + s4),
  });
}

/**
 * Free expansion of a lamina turned by an angle, in the axes of the laminate. Swelling by moisture
 * turns the same way: give `beta1` and `beta2` as `alpha1` and `alpha2`.
 *
 * Formula: ᾱx = α1 c² + α2 s², ᾱy = α1 s² + α2 c², ᾱxy = 2(α1 − α2) sc
 *
 * Range: any expansion; angle from −360° to 360°.
 *
 * Source: expansion is a strain; R. M. Jones, Mechanics of Composite Materials, 2nd ed. 1999,
 * section 4.7, from memory.
 *
 * @param expansion Expansion along and across the fibres [1/K].
 * @param angleDeg From x to the 1 direction, positive towards y [deg].
 * @returns Expansion in the axes of the laminate, engineering shear [1/K].
 * @throws {InputError} If an expansion or the angle is not a number, or the angle is beyond a turn.
 *
 * @example
 * ```ts
 * import { rotatedExpansion } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { alphaX } = rotatedExpansion({ alpha1: 6e-6, alpha2: 30e-6 }, 45);
 * assertAlmostEquals(alphaX, 18e-6, 1e-18);
 * ```
 */
export function rotatedExpansion(
  expansion: Pick<Lamina, "alpha1" | "alpha2">,
  angleDeg: number,
): Expansion {
  check.object("expansion", expansion);
  check.finite("alpha1", expansion.alpha1, "1/K");
  check.finite("alpha2", expansion.alpha2, "1/K");
  checkAngle(check, angleDeg);
  return checkResult(check, rotatedExpansionOf(expansion, angleDeg));
}
