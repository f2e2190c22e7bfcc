import { checksFor } from "../check/mod.ts";
import { positiveQuantile } from "./_quantile.ts";
import { checkDof, checkInside } from "./_probability.ts";
import { incompleteBeta, type Tails } from "./_special.ts";

const check = checksFor("use the F distribution");

/** Degrees of freedom of a ratio of two variances. */
export interface FDof {
  /** Of the variance above the line [1]. */
  readonly numerator: number;
  /** Of the variance below the line [1]. */
  readonly denominator: number;
}

/**
 * Probability that the ratio of two variances is at most F.
 *
 * Formula: I(ν₁F/(ν₁F + ν₂); ν₁/2, ν₂/2), the regularised incomplete beta function
 *
 * Range: F 0 or above, both ν 0.001 to 1e9; relative error about 1e-13.
 *
 * Source: Abramowitz and Stegun, 26.6.2, from memory.
 *
 * @param ratio F [1].
 * @param dof Degrees of freedom above and below the line [1].
 * @returns Probability [1].
 * @throws {InputError} If F is negative or a ν is not 0.001 to 1e9.
 *
 * @example
 * ```ts
 * import { fProbability } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(fProbability(1, { numerator: 3, denominator: 3 }), 0.5, 1e-14);
 * ```
 */
export function fProbability(ratio: number, dof: FDof): number {
  check.nonNegative("F", ratio);
  return tails(ratio, checked(dof)).lower;
}

/**
 * Ratio of two variances below which a share p falls: the limit of a test of lack of fit.
 *
 * Formula: I(ν₁F/(ν₁F + ν₂); ν₁/2, ν₂/2) = p
 *
 * Range: p above 0 and below 1, both ν 0.001 to 1e9; relative error about 1e-13.
 *
 * Source: Abramowitz and Stegun, 26.6, from memory.
 *
 * @param probability p [1].
 * @param dof Degrees of freedom above and below the line [1].
 * @returns F [1].
 * @throws {InputError} If p is not above 0 and below 1 or a ν is not 0.001 to 1e9.
 *
 * @example
 * ```ts
 * import { fQuantile } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const limit = fQuantile(0.95, { numerator: 2, denominator: 5 });
 * assertAlmostEquals(limit, 5.786135043349964, 1e-12);
 * ```
 */
export function fQuantile(probability: number, dof: FDof): number {
  checkInside(check, probability);
  checked(dof);
  const ratio = positiveQuantile(
    (ratio) => tails(ratio, dof),
    { lower: probability, upper: 1 - probability },
  );
  return check.result("F", ratio);
}

function checked(dof: FDof): FDof {
  check.object("degrees of freedom", dof);
  checkDof(check, "degrees of freedom of the numerator", dof.numerator);
  checkDof(check, "degrees of freedom of the denominator", dof.denominator);
  return dof;
}

function tails(ratio: number, { numerator, denominator }: FDof): Tails {
  const odds = (ratio * numerator) / denominator;
  const x = odds > 1 ? 1 / (1 + 1 / odds) : odds / (1 + odds);
  const y = odds > 1 ? 1 / odds / (1 + 1 / odds) : 1 / (1 + odds);
  return incompleteBeta({ a: numerator / 2, b: denominator / 2, x, y });
}
