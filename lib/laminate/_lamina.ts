/** The formulas of a lamina without their checks, for callers that have made them. */
import type { Lamina } from "../materials/mod.ts";
import type { InPlaneConstants } from "./_checks.ts";
import { sineCosineDeg } from "./_degrees.ts";
import type { ReducedCompliance, ReducedStiffness } from "./lamina_stiffness.ts";
import type { Expansion, RotatedStiffness } from "./rotated_lamina.ts";

/** See `reducedStiffness`. */
export function reducedStiffnessOf({ E1, E2, G12, nu12 }: InPlaneConstants): ReducedStiffness {
  const determinant = 1 - nu12 * nu12 * E2 / E1;
  return {
    Q11: E1 / determinant,
    Q12: nu12 * E2 / determinant,
    Q22: E2 / determinant,
    Q66: G12,
  };
}

/** See `reducedCompliance`. */
export function reducedComplianceOf({ E1, E2, G12, nu12 }: InPlaneConstants): ReducedCompliance {
  return { S11: 1 / E1, S12: -nu12 / E1, S22: 1 / E2, S66: 1 / G12 };
}

/** See `rotatedStiffness`. */
export function rotatedStiffnessOf(lamina: InPlaneConstants, angleDeg: number): RotatedStiffness {
  const { Q11, Q12, Q22, Q66 } = reducedStiffnessOf(lamina);
  const { sine, cosine } = sineCosineDeg(angleDeg);
  const [c2, s2, sc] = [cosine * cosine, sine * sine, sine * cosine];
  const [c4, s4, mixed] = [c2 * c2, s2 * s2, c2 * s2];
  const along = Q11 - Q12 - 2 * Q66;
  const across = Q12 - Q22 + 2 * Q66;
  return {
    Q11: Q11 * c4 + 2 * (Q12 + 2 * Q66) * mixed + Q22 * s4,
    Q12: (Q11 + Q22 - 4 * Q66) * mixed + Q12 * (c4 + s4),
    Q16: sc * (along * c2 + across * s2),
    Q22: Q11 * s4 + 2 * (Q12 + 2 * Q66) * mixed + Q22 * c4,
    Q26: sc * (along * s2 + across * c2),
    Q66: (Q11 + Q22 - 2 * Q12 - 2 * Q66) * mixed + Q66 * (c4 + s4),
  };
}

/** See `rotatedExpansion`. */
export function rotatedExpansionOf(
  { alpha1, alpha2 }: Pick<Lamina, "alpha1" | "alpha2">,
  angleDeg: number,
): Expansion {
  const { sine, cosine } = sineCosineDeg(angleDeg);
  const [c2, s2] = [cosine * cosine, sine * sine];
  return {
    alphaX: alpha1 * c2 + alpha2 * s2,
    alphaY: alpha1 * s2 + alpha2 * c2,
    alphaXY: 2 * (alpha1 - alpha2) * sine * cosine,
  };
}
