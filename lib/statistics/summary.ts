import { checksFor } from "../check/mod.ts";
import { checkSeries } from "./_fit.ts";
import type { UncertainInput } from "./uncertain.ts";

const check = checksFor("summarise the readings");

/** What repeated readings of one thing say. */
export interface Summary {
  /** Mean [unit of the readings]. */
  readonly mean: number;
  /** Standard deviation of one reading, with n − 1 [unit of the readings]. */
  readonly sd: number;
  /** Number of readings [1]. */
  readonly count: number;
  /** Correlation of each reading with the one before: near 0 where order does not matter [1]. */
  readonly lag1: number;
}

/**
 * Mean, standard deviation and serial correlation of repeated readings.
 *
 * Formula: s² = Σ(x − x̄)²/(n − 1); r1 = Σ(xi − x̄)(xi+1 − x̄)/Σ(x − x̄)²
 *
 * Range: two readings or more; r1 is 0 where all are equal.
 *
 * Source: definitions as certified by NIST StRD, univariate sets.
 *
 * @param readings The readings in the order taken [any unit].
 * @returns Mean, standard deviation, count and serial correlation.
 * @throws {InputError} If there are fewer than two or one is not a finite number.
 *
 * @example
 * ```ts
 * import { summarise } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { mean, sd } = summarise([9.8, 10, 10.2]);
 * assertAlmostEquals(mean, 10, 1e-14);
 * assertAlmostEquals(sd, 0.2, 1e-14);
 * ```
 */
export function summarise(readings: ArrayLike<number>): Summary {
  checkSeries(check, "reading", readings);
  const count = readings.length;
  if (count < 2) check.refuse("number of readings", count, "must be 2 or more");
  let mean = 0;
  // The second round takes out what rounding left of the first.
  for (let round = 0; round < 2; round++) {
    let sum = 0;
    for (let i = 0; i < count; i++) sum += readings[i]! - mean;
    mean += sum / count;
  }
  let squares = 0;
  let products = 0;
  for (let i = 0; i < count; i++) {
    const gap = readings[i]! - mean;
    squares += gap * gap;
    if (i > 0) products += gap * (readings[i - 1]! - mean);
  }
  const sd = Math.sqrt(squares / (count - 1));
  return {
    mean: check.result("mean", mean),
    sd: check.result("standard deviation", sd),
    count,
    lag1: squares > 0 ? products / squares : 0,
  };
}

/**
 * Mean of repeated readings with the standard uncertainty of the mean.
 *
 * Formula: u = s/√n, ν = n − 1
 *
 * Range: two readings or more, independent of each other.
 *
 * Source: JCGM 100:2008 (GUM), 4.2.3.
 *
 * @param readings The readings [any unit].
 * @returns Mean with u and degrees of freedom.
 * @throws {InputError} As `summarise`.
 *
 * @example
 * ```ts
 * import { fromReadings } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(fromReadings([9.8, 10, 10.2]).u, 0.2 / Math.sqrt(3), 1e-14);
 * ```
 */
export function fromReadings(readings: ArrayLike<number>): UncertainInput {
  const { mean, sd, count } = summarise(readings);
  return { value: mean, u: sd / Math.sqrt(count), dof: count - 1 };
}

/**
 * Correlation of two things read together, and of their means.
 *
 * Formula: r = Σ(a − ā)(b − b̄)/√(Σ(a − ā)² Σ(b − b̄)²)
 *
 * Range: two pairs or more; 0 where one of the two does not vary.
 *
 * Source: JCGM 100:2008 (GUM), 5.2.3 and H.2.2.
 *
 * @param first Readings of the one [any unit].
 * @param second Readings of the other, taken together with the first [any unit].
 * @returns Correlation coefficient, −1 to 1 [1].
 * @throws {InputError} If the lists differ in length, are shorter than two, or hold what is no number.
 *
 * @example
 * ```ts
 * import { correlationOf } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(correlationOf([1, 2, 3], [2, 4, 6]), 1, 1e-14);
 * ```
 */
export function correlationOf(first: ArrayLike<number>, second: ArrayLike<number>): number {
  const [a, b] = [summarise(first), summarise(second)];
  if (a.count !== b.count) {
    check.refuse("number of second readings", b.count, `must be that of the first, ${a.count}`);
  }
  if (a.sd === 0 || b.sd === 0) return 0;
  let sum = 0;
  for (let i = 0; i < a.count; i++) {
    sum += ((first[i]! - a.mean) / a.sd) * ((second[i]! - b.mean) / b.sd);
  }
  return Math.max(-1, Math.min(1, sum / (a.count - 1)));
}
