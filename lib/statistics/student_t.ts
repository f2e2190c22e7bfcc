import { checksFor } from "../check/mod.ts";
import { positiveQuantile } from "./_quantile.ts";
import { checkDof, checkInside } from "./_probability.ts";
import { incompleteBeta, incompleteGamma, type Tails } from "./_special.ts";

const check = checksFor("use Student's t distribution");

/**
 * Probability that Student's t is at most t.
 *
 * Formula: ½ I(ν/(ν + t²); ν/2, ½) below 0, with I the regularised incomplete beta function
 *
 * Range: ν 0.001 or above, whole or not; relative error about 1e-13.
 *
 * Source: Abramowitz and Stegun, 26.7.1, from memory.
 *
 * @param t Value of t [1].
 * @param dof Degrees of freedom ν [1].
 * @returns Probability [1].
 * @throws {InputError} If t is not a finite number or ν is below 0.001.
 *
 * @example One degree of freedom is the Cauchy distribution
 * ```ts
 * import { studentTProbability } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(studentTProbability(1, 1), 0.75, 1e-14);
 * ```
 */
export function studentTProbability(t: number, dof: number): number {
  check.finite("t", t);
  checkDof(check, "degrees of freedom", dof, Number.MAX_VALUE);
  const outside = squareTails(t * t, dof).upper / 2;
  return t < 0 ? outside : 1 - outside;
}

/**
 * Student's t below which a share p of readings falls: the factor of an interval whose standard
 * deviation is itself estimated.
 *
 * Formula: P(T ≤ t) = p with ν degrees of freedom
 *
 * Range: p above 0 and below 1; ν 0.001 or above, whole or not; relative error about 1e-13.
 *
 * Source: Abramowitz and Stegun, 26.7, from memory.
 *
 * @param probability p: 0.975 for a two-sided interval of 95 % [1].
 * @param dof Degrees of freedom ν [1].
 * @returns t [1].
 * @throws {InputError} If p is not above 0 and below 1 or ν is below 0.001.
 *
 * @example
 * ```ts
 * import { studentTQuantile } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(studentTQuantile(0.975, 9), 2.2621571627409915, 1e-9);
 * ```
 */
export function studentTQuantile(probability: number, dof: number): number {
  checkInside(check, probability);
  checkDof(check, "degrees of freedom", dof, Number.MAX_VALUE);
  const tail = Math.min(probability, 1 - probability);
  if (tail === 0.5) return 0;
  const square = positiveQuantile(
    (x) => squareTails(x, dof),
    { lower: 1 - 2 * tail, upper: 2 * tail },
  );
  const t = check.result("t", Math.sqrt(square));
  return probability < 0.5 ? -t : t;
}

/** From here on t is normal to the last digit. */
const NORMAL_FROM = 1e18;

/** Probability that t² is below and above a value. */
function squareTails(square: number, dof: number): Tails {
  if (dof >= NORMAL_FROM) return incompleteGamma(0.5, square / 2);
  // Written with 1/t² where t² could overflow the sum.
  const y = square > dof ? 1 / (1 + dof / square) : square / dof / (1 + square / dof);
  const x = square > dof ? dof / square / (1 + dof / square) : 1 / (1 + square / dof);
  return incompleteBeta({ a: 0.5, b: dof / 2, x: y, y: x });
}
