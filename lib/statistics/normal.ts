import { checksFor } from "../check/mod.ts";
import { checkInside } from "./_probability.ts";
import { positiveQuantile } from "./_quantile.ts";
import { incompleteGamma } from "./_special.ts";

const check = checksFor("use the normal distribution");

/**
 * Probability that a standard normal number is at most z.
 *
 * Formula: Φ(z) = ½ Q(½, z²/2) below 0, with Q the regularised upper incomplete gamma function
 *
 * Range: any z; relative error about 1e-14, in the lower tail too.
 *
 * Source: NIST Digital Library of Mathematical Functions, 7.11 and 8.4, from memory.
 *
 * @param z Number of standard deviations from the mean [1].
 * @returns Probability [1].
 * @throws {InputError} If z is not a finite number.
 *
 * @example
 * ```ts
 * import { normalProbability } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(normalProbability(1), 0.8413447460685429, 1e-14);
 * ```
 */
export function normalProbability(z: number): number {
  check.finite("z", z);
  const upper = incompleteGamma(0.5, (z * z) / 2).upper / 2;
  return z < 0 ? upper : 1 - upper;
}

/**
 * Number of standard deviations below which a standard normal number falls with probability p.
 *
 * Formula: Φ(z) = p
 *
 * Range: p above 0 and below 1; relative error about 1e-14.
 *
 * Source: as `normalProbability`.
 *
 * @param probability p [1].
 * @returns z [1].
 * @throws {InputError} If p is not above 0 and below 1.
 *
 * @example
 * ```ts
 * import { normalQuantile } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(normalQuantile(0.975), 1.9599639845400545, 1e-13);
 * ```
 */
export function normalQuantile(probability: number): number {
  checkInside(check, probability);
  const tail = Math.min(probability, 1 - probability);
  if (tail === 0.5) return 0;
  const halfSquare = positiveQuantile(
    (x) => incompleteGamma(0.5, x),
    { lower: 1 - 2 * tail, upper: 2 * tail },
  );
  const z = Math.sqrt(2 * halfSquare);
  return probability < 0.5 ? -z : z;
}
