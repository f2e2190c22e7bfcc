import { checksFor } from "../check/mod.ts";
import { noncentralTQuantile } from "./noncentral_t.ts";
import { normalQuantile } from "./normal.ts";
import { checkInside } from "./_probability.ts";
import { summarise } from "./summary.ts";

const check = checksFor("find the tolerance limit");

/** What a tolerance limit promises. */
export interface TolerancePromise {
  /** Share of all parts on the good side of the limit; 0.9 unless said [1]. */
  readonly content?: number;
  /** Share of such limits that keep the promise; 0.95 unless said [1]. */
  readonly confidence?: number;
}

/** A limit that most parts keep, told from few. */
export interface ToleranceLimit extends Required<TolerancePromise> {
  /** Mean of the readings [unit of the readings]. */
  readonly mean: number;
  /** Standard deviation of the readings [unit of the readings]. */
  readonly sd: number;
  /** How many standard deviations the limit lies from the mean [1]. */
  readonly factor: number;
  /** Mean less factor times sd: what the content exceeds [unit of the readings]. */
  readonly lower: number;
  /** Mean plus factor times sd: what the content stays below [unit of the readings]. */
  readonly upper: number;
  /** What a reader should know; empty where there is nothing to say. */
  readonly notes: readonly string[];
}

/**
 * One-sided normal tolerance factor: how many standard deviations below the mean of few coupons a
 * strength may be promised for most parts.
 *
 * Formula: k = t′(confidence; ν = n − 1, δ = z(content) √n)/√n, with t′ the noncentral t quantile
 *
 * Range: n 2 or above, readings normally distributed, of one batch. Content 0.9 and 0.99 at
 * confidence 0.95 are the trade's B-basis and A-basis.
 *
 * Source: NIST/SEMATECH e-Handbook, 7.2.6.3; MIL-HDBK-17; both from memory.
 *
 * @param count Number of readings n [1].
 * @param promise Content and confidence.
 * @returns Factor k [1].
 * @throws {InputError} If n is not a whole number from 2 up, or content or confidence is not inside 0
 * to 1.
 *
 * @example Five coupons, 90 % content, 95 % confidence
 * ```ts
 * import { toleranceFactor } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(toleranceFactor(5), 3.407, 0.0005);
 * ```
 */
export function toleranceFactor(count: number, promise: TolerancePromise = {}): number {
  check.count("number of readings", count, 2);
  const { content = 0.9, confidence = 0.95 } = check.object("promise", promise);
  checkInside(check, content, "content");
  checkInside(check, confidence, "confidence");
  const root = Math.sqrt(count);
  const shift = normalQuantile(content) * root;
  return noncentralTQuantile(confidence, { dof: count - 1, shift }) / root;
}

/**
 * Limits that most parts keep, from a few readings of one batch.
 *
 * Formula: mean ∓ k s
 *
 * Range: as `toleranceFactor`. Both limits are one-sided: use one of them.
 *
 * Source: as `toleranceFactor`.
 *
 * @param readings The readings [any unit].
 * @param promise Content and confidence.
 * @returns Mean, sd, factor, the limit below and the limit above, and notes.
 * @throws {InputError} If there are fewer than 2 readings, one is not a finite number, or content or
 * confidence is not inside 0 to 1.
 *
 * @example
 * ```ts
 * import { toleranceLimit } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { lower } = toleranceLimit([410, 396, 402, 415, 387]);
 * assertAlmostEquals(lower, 402 - 3.4066 * Math.sqrt(123.5), 0.01);
 * ```
 */
export function toleranceLimit(
  readings: ArrayLike<number>,
  promise: TolerancePromise = {},
): ToleranceLimit {
  const { mean, sd, count } = summarise(readings);
  const { content = 0.9, confidence = 0.95 } = check.object("promise", promise);
  const factor = toleranceFactor(count, { content, confidence });
  const [lower, upper] = [mean - factor * sd, mean + factor * sd];
  const notes: string[] = [];
  if (count < 10) {
    notes.push(`${count} readings cannot show whether they are normal: treat the limit as rough.`);
  }
  if (mean > 0 && lower < 0) {
    notes.push(
      "The lower limit is below 0: with so few or so scattered readings nothing is promised.",
    );
  }
  return { mean, sd, factor, lower, upper, content, confidence, notes };
}
