/** What plies would do on their own when warmed or wetted, and the forces that this makes. */
import type { Lamina, Stack } from "../materials/mod.ts";
import { rotatedExpansionOf, rotatedStiffnessOf } from "./lamina_private.ts";
import { plyHeightsOf, sumOverPlies } from "./stack_private.ts";

/** Change against the state without stress. */
export interface EnvironmentChange {
  /** [K] */
  readonly temperature: number;
  /** Moisture content by mass [1] */
  readonly moisture: number;
}

/** Free strain of a lamina in its own axes; an unknown swelling counts as 0. */
export function freeStrainOf(
  { alpha1, alpha2, beta1 = 0, beta2 = 0 }: Lamina,
  { temperature, moisture }: EnvironmentChange,
): { readonly alpha1: number; readonly alpha2: number } {
  return {
    alpha1: alpha1 * temperature + beta1 * moisture,
    alpha2: alpha2 * temperature + beta2 * moisture,
  };
}

/** Forces and moments that would hold a changed laminate at no strain, sign reversed: N_T and M_T. */
export function freeForcesOf(stack: Stack, change: EnvironmentChange): Float64Array {
  const heights = plyHeightsOf(stack);
  return sumOverPlies(stack.length, 6, (k) => {
    const { lamina, thickness, angleDeg } = stack[k]!;
    const { Q11, Q12, Q16, Q22, Q26, Q66 } = rotatedStiffnessOf(lamina, angleDeg);
    const { alphaX, alphaY, alphaXY } = rotatedExpansionOf(freeStrainOf(lamina, change), angleDeg);
    const force = [
      (Q11 * alphaX + Q12 * alphaY + Q16 * alphaXY) * thickness,
      (Q12 * alphaX + Q22 * alphaY + Q26 * alphaXY) * thickness,
      (Q16 * alphaX + Q26 * alphaY + Q66 * alphaXY) * thickness,
    ];
    return [...force, ...force.map((entry) => entry * heights[k]!.middle)];
  });
}
