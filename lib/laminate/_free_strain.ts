/** What plies would do on their own when warmed or wetted, and the forces that this makes. */
import type { Checks } from "../check/mod.ts";
import type { Lamina, Stack } from "../materials/mod.ts";
import { rotatedExpansionOf, rotatedStiffnessOf } from "./_lamina.ts";
import { plyHeightsOf, sumOverPlies } from "./_stack.ts";

/** Change against the state without stress. */
export interface EnvironmentChange {
  /** [K] */
  readonly temperature: number;
  /** Moisture content by mass [1] */
  readonly moisture: number;
}

/** Checks the expansions that a change makes use of, and no others. */
export function checkExpansion(
  check: Checks,
  { temperature, moisture }: EnvironmentChange,
): (lamina: Lamina, where: string) => void {
  return (lamina, where) => {
    if (temperature !== 0) {
      check.finite(`${where}alpha1`, lamina.alpha1, "1/K");
      check.finite(`${where}alpha2`, lamina.alpha2, "1/K");
    }
    if (moisture !== 0) {
      // The types allow a lamina without swelling; a change of moisture does not.
      check.finite(`${where}beta1`, lamina.beta1 as number);
      check.finite(`${where}beta2`, lamina.beta2 as number);
    }
  };
}

/** Free strain of a lamina in its own axes. */
export function freeStrainOf(
  { alpha1, alpha2, beta1, beta2 }: Lamina,
  { temperature, moisture }: EnvironmentChange,
): { readonly alpha1: number; readonly alpha2: number } {
  // Expansions that are not asked for may be missing: nothing is multiplied by them.
  const free = (alpha: number, beta: number | undefined): number =>
    (temperature === 0 ? 0 : alpha * temperature) + (moisture === 0 ? 0 : beta! * moisture);
  return { alpha1: free(alpha1, beta1), alpha2: free(alpha2, beta2) };
}

/** N_T and M_T: the forces and moments that would give the free strain at one temperature. */
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
