import { checksFor } from "../check/mod.ts";
import { positiveQuantile } from "./_quantile.ts";
import { checkDof, checkInside } from "./_probability.ts";
import { incompleteGamma } from "./_special.ts";

const check = checksFor("use the chi-squared distribution");

/**
 * Probability that chi-squared is at most x.
 *
 * Formula: P(ν/2, x/2), the regularised lower incomplete gamma function
 *
 * Range: x 0 or above, ν 0.001 to 1e9; relative error about 1e-13.
 *
 * Source: Abramowitz and Stegun, 26.4.19, from memory.
 *
 * @param x Sum of squares over the variance [1].
 * @param dof Degrees of freedom ν [1].
 * @returns Probability [1].
 * @throws {InputError} If x is negative or ν is not 0.001 to 1e9.
 *
 * @example Two degrees of freedom are an exponential
 * ```ts
 * import { chiSquaredProbability } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(chiSquaredProbability(2, 2), 1 - Math.exp(-1), 1e-14);
 * ```
 */
export function chiSquaredProbability(x: number, dof: number): number {
  check.nonNegative("chi-squared", x);
  checkDof(check, "degrees of freedom", dof);
  return incompleteGamma(dof / 2, x / 2).lower;
}

/**
 * Chi-squared below which a share p falls: the limit of a test of scatter.
 *
 * Formula: P(ν/2, x/2) = p
 *
 * Range: p above 0 and below 1, ν 0.001 to 1e9; relative error about 1e-13.
 *
 * Source: Abramowitz and Stegun, 26.4, from memory.
 *
 * @param probability p [1].
 * @param dof Degrees of freedom ν [1].
 * @returns Chi-squared [1].
 * @throws {InputError} If p is not above 0 and below 1 or ν is not 0.001 to 1e9.
 *
 * @example
 * ```ts
 * import { chiSquaredQuantile } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(chiSquaredQuantile(0.95, 4), 9.487729036781154, 1e-12);
 * ```
 */
export function chiSquaredQuantile(probability: number, dof: number): number {
  checkInside(check, probability);
  checkDof(check, "degrees of freedom", dof);
  return 2 * positiveQuantile(
    (half) => incompleteGamma(dof / 2, half),
    { lower: probability, upper: 1 - probability },
  );
}
