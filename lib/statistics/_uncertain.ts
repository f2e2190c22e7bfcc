import type { Checks } from "../check/mod.ts";
import type { LimitShape, UncertainInput } from "./uncertain.ts";

/** Half-width over standard deviation of each shape between two limits. */
export const LIMIT_DIVISOR: Readonly<Record<LimitShape, number>> = {
  rectangular: Math.sqrt(3),
  triangular: Math.sqrt(6),
  arcsine: Math.SQRT2,
};

/** Checks a value with uncertainty, and returns it. */
export function checkUncertain(
  check: Checks,
  argument: string,
  uncertain: UncertainInput,
): UncertainInput {
  check.object(argument, uncertain);
  check.finite(argument, uncertain.value);
  check.nonNegative(`uncertainty of ${argument}`, uncertain.u);
  if (uncertain.dof !== undefined) {
    check.positive(`degrees of freedom of ${argument}`, uncertain.dof);
  }
  if (uncertain.shape !== undefined) {
    check.oneOf(`shape of ${argument}`, uncertain.shape, [
      "normal",
      "rectangular",
      "triangular",
      "arcsine",
    ]);
  }
  return uncertain;
}

/**
 * Degrees of freedom of a combined uncertainty by Welch–Satterthwaite: none where no part has any.
 */
export function effectiveDof(
  u: number,
  parts: readonly { readonly share: number; readonly dof: number | undefined }[],
): number | undefined {
  let sum = 0;
  for (const { share, dof } of parts) if (dof !== undefined) sum += (share / u) ** 4 / dof;
  // A share too small to count leaves the sum at 0, or so small that its reciprocal overflows.
  const result = 1 / sum;
  return u > 0 && Number.isFinite(result) ? result : undefined;
}

/** Checks a record of values with uncertainty, and returns its names. */
export function checkInputs<K extends string>(
  check: Checks,
  inputs: Readonly<Record<K, UncertainInput>>,
): readonly K[] {
  const names = Object.keys(check.object("inputs", inputs)) as K[];
  check.list("names of the inputs", names, 1);
  for (const name of names) checkUncertain(check, name, inputs[name]);
  return names;
}
