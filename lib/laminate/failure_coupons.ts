import { checksFor } from "../check/mod.ts";
import { toleranceLimit, type TolerancePromise } from "../statistics/mod.ts";

export type { TolerancePromise } from "../statistics/mod.ts";

const check = checksFor("estimate a strength from coupons");

/** A strength for design, told from a builder's own coupons. */
export interface CouponStrength {
  /** The strength that most coupons exceed; to be used in place of the mean [Pa]. */
  readonly strength: number;
  /** Mean of the coupons [Pa]. */
  readonly mean: number;
  /** Standard deviation of the coupons [Pa]. */
  readonly sd: number;
  /** How many standard deviations the strength lies below the mean [1]. */
  readonly factor: number;
  /** strength/mean: the knock-down that scatter alone asks for [1]. */
  readonly knockDown: number;
  /** What limits the answer. */
  readonly notes: readonly string[];
}

/**
 * Strength that most parts exceed, in the manner of a B-basis, from the strengths of a builder's
 * own coupons.
 *
 * Formula: mean − k s, k the one-sided normal tolerance factor; 90 % of parts with 95 % confidence
 * unless said otherwise
 *
 * Range: coupons of one batch, laid and cured like the part, broken in the same mode, scattering
 * normally. It is no certified allowable: those need several batches and tests of the scatter.
 *
 * Source: MIL-HDBK-17-1F, chapter 8, from memory; see `toleranceFactor` of statistics
 *
 * @param coupons Strength of each coupon, 3 or more [Pa].
 * @param promise Share of parts and confidence [1].
 * @returns The strength and what it rests on [Pa], [1].
 * @throws {InputError} If there are fewer than 3 coupons, one is not above 0, or they scatter so
 * much that nothing can be promised.
 *
 * @example
 * ```ts
 * import { strengthFromCoupons } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { strength } = strengthFromCoupons([410e6, 396e6, 402e6, 415e6, 387e6]);
 * assertAlmostEquals(strength / 1e6, 402 - 3.4066 * Math.sqrt(123.5), 0.01);
 * ```
 */
export function strengthFromCoupons(
  coupons: readonly number[],
  promise: TolerancePromise = {},
): CouponStrength {
  check.list("list of coupons", coupons, FEWEST);
  coupons.forEach((strength, index) => check.positive(`coupon ${index + 1}`, strength, "Pa"));
  const { mean, sd, factor, lower, notes } = toleranceLimit(coupons, promise);
  if (!(lower > 0)) {
    check.refuse(
      "strength that most parts exceed",
      `${lower} Pa`,
      "must be above 0: test more coupons, or find out why they scatter so much",
    );
  }
  return {
    strength: lower,
    mean,
    sd,
    factor,
    knockDown: lower / mean,
    notes: [
      ...notes,
      "Coupons of one batch say nothing of the next: hand-laid parts scatter more than coupons, " +
      "and water, heat, holes and dents take their own share.",
    ],
  };
}

/** Two coupons have a factor of 20 and promise nothing. */
const FEWEST = 3;
