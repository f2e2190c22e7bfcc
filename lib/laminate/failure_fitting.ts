import { checksFor } from "../check/mod.ts";
import type { Lamina, Stack } from "../materials/mod.ts";
import { checkStack } from "./_checks.ts";
import { failureCriteria, type FailureCriterion } from "./failure_criterion.ts";
import { CLOTH_RATIO } from "./_failure_criterion.ts";
import { glassPuckSlopes, type PuckSlopes } from "./failure_puck.ts";

const check = checksFor("choose the failure criteria");

/** Whether a criterion is made for the plies of a stack. */
export interface CriterionFit {
  /** The criterion. */
  readonly criterion: FailureCriterion;
  /** Why it is not; null where it is. */
  readonly misfit: string | null;
}

/**
 * Which failure criteria are made for the plies of a stack, for setting them side by side.
 *
 * Formula: Hashin and Puck where no ply with strengths has E2/E1 above 0.4, which is a cloth or a
 * mat; Puck also where p⁺ ≤ S/Yt
 *
 * Range: plies with strengths; the others are not judged
 *
 * Source: the papers named at `hashin` and `puck`, for unidirectional plies; the ratio by which a
 * cloth is told: common practice, no source
 *
 * @param stack Plies, mould side first.
 * @param slopes Puck's slopes; those of glass if left out [1].
 * @returns Every criterion, with the reason where it does not fit.
 * @throws {InputError} If the stack is empty or a ply is not possible.
 *
 * @example
 * ```ts
 * import { fittingCriteria } from "@laminate/notebooks/laminate";
 * import { assertEquals } from "@std/assert";
 *
 * const cloth = {
 *   name: "cloth", E1: 20e9, E2: 20e9, G12: 4e9, nu12: 0.1, G13: 3e9, G23: 3e9,
 *   density: 1800, alpha1: 15e-6, alpha2: 15e-6,
 *   strengths: { Xt: 300e6, Xc: 200e6, Yt: 300e6, Yc: 200e6, S: 45e6 },
 * };
 * const fits = fittingCriteria([{ lamina: cloth, thickness: 1e-3, angleDeg: 0 }]);
 * assertEquals(
 *   fits.filter(({ misfit }) => misfit !== null).map(({ criterion }) => criterion),
 *   ["Hashin", "Puck"],
 * );
 * ```
 */
export function fittingCriteria(
  stack: Stack,
  slopes: PuckSlopes = glassPuckSlopes,
): readonly CriterionFit[] {
  checkStack(check, stack);
  check.object("set of slopes", slopes);
  check.nonNegative("slope in tension", slopes.tension);
  const judged = [...new Set(stack.map(({ lamina }) => lamina))]
    .filter(({ strengths }) => strengths !== undefined);
  return failureCriteria.map((criterion) => ({
    criterion,
    misfit: criterion === "Hashin"
      ? clothIn(judged)
      : criterion === "Puck"
      ? clothIn(judged) ?? steepFor(judged, slopes)
      : null,
  }));
}

function clothIn(judged: readonly Lamina[]): string | null {
  const names = judged.filter(({ E1, E2 }) => E2 / E1 > CLOTH_RATIO).map(({ name }) => name);
  return names.length === 0
    ? null
    : `made for plies of one direction, which these are not: ${[...new Set(names)].join("; ")}`;
}

function steepFor(judged: readonly Lamina[], { tension }: PuckSlopes): string | null {
  const names = judged.filter(({ strengths }) => !(tension * strengths!.Yt <= strengths!.S))
    .map(({ name }) => name);
  return names.length === 0
    ? null
    : `its slope in tension is above S/Yt of: ${[...new Set(names)].join("; ")}`;
}
