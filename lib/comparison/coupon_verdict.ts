import { checksFor, InputError } from "../check/mod.ts";
import {
  type CouponStrength,
  laminateThickness,
  progressiveFailure,
  strengthFromCoupons,
} from "../laminate/mod.ts";
import type { CouponRecord, CouponTest, LayupRecord } from "../records/mod.ts";
import { checkFigures, checkLayup } from "./_layup_checks.ts";
import { layupStack } from "./layup_inputs.ts";

const check = checksFor("judge the coupons");

/** What a set of like coupons says beside the catalogue's estimate. */
export interface CouponVerdict {
  /** The lay-up schedule they were cut from. */
  readonly layup: LayupRecord;
  /** How they were broken. */
  readonly test: CouponTest;
  /** The coupons. */
  readonly coupons: readonly CouponRecord[];
  /** Fibre volume fraction of the first ply, from the mean thickness [1]. */
  readonly fibreFraction: number;
  /** Strength by the catalogue at that fibre fraction: breaking force over section [Pa]. */
  readonly estimated: number;
  /** Mean, scatter and the strength that most coupons exceed; null where nothing can be told. */
  readonly measured: CouponStrength | null;
  /** The strength that most exceed, over the estimate; null where nothing can be told [1]. */
  readonly ratio: number | null;
  /** What limits the answer. */
  readonly notes: readonly string[];
}

/**
 * What a crew's own coupons say of the catalogue's strengths: the strength that most of them
 * exceed beside the estimate for the same lay-up.
 *
 * Formula: breaking load over width times thickness; mean − k s as `strengthFromCoupons`; the
 * estimate the largest force of `progressiveFailure` by maximum stress over the thickness, the
 * fibre fraction such that the schedule comes out as thick as the coupons
 *
 * Range: solid coupons, loaded along x, all of a group laid and cured alike. A ratio in tension
 * says nothing of compression or shear.
 *
 * Source: as `strengthFromCoupons` and `progressiveFailure`.
 *
 * @param coupons Coupons that were broken [SI].
 * @returns One verdict for each lay-up and kind of test, in the order of the coupons.
 * @throws {InputError} If there is no coupon, a figure is not above 0, or a lay-up has a core.
 *
 * @example
 * ```ts
 * import { couponVerdicts } from "@laminate/notebooks/comparison";
 * import { readPart } from "@laminate/notebooks/records";
 * import { assert, assertEquals } from "@std/assert";
 *
 * const { coupons } = await readPart("data/sole-panels");
 * const [tension] = couponVerdicts(coupons!);
 * assertEquals(tension!.test, "tension");
 * assert(tension!.measured!.strength < tension!.measured!.mean);
 * ```
 */
export function couponVerdicts(coupons: readonly CouponRecord[]): readonly CouponVerdict[] {
  check.list("coupons", coupons);
  for (const coupon of coupons) {
    check.object("coupon", coupon);
    checkFigures(check, coupon, "coupon");
    checkLayup(check, coupon.layup, "lay-up of the coupon");
    check.oneOf(`test of ${coupon.coupon}`, coupon.test, ["tension", "compression"]);
    check.positive(`width of ${coupon.coupon}`, coupon.width, "m");
    check.positive(`thickness of ${coupon.coupon}`, coupon.thickness, "m");
    check.positive(`breaking load of ${coupon.coupon}`, coupon.breakingLoad, "N");
  }
  const groups = Map.groupBy(coupons, ({ layup, test }) => JSON.stringify([layup.name, test]));
  return Object.freeze([...groups.values()].map(verdictOf));
}

function verdictOf(coupons: readonly CouponRecord[]): CouponVerdict {
  const { layup, test } = coupons[0]!;
  const thickness = coupons.reduce((sum, coupon) => sum + coupon.thickness, 0) / coupons.length;
  const { fibreFraction, estimated } = estimateOf(layup, test, thickness);
  const strengths = coupons.map(({ breakingLoad, width, thickness }) =>
    breakingLoad / (width * thickness)
  );
  const { measured, notes } = told(strengths);
  return Object.freeze({
    layup,
    test,
    coupons,
    fibreFraction,
    estimated,
    measured,
    ratio: measured === null ? null : check.result("ratio", measured.strength / estimated),
    notes,
  });
}

/** What the catalogue expects of a coupon as thick as these. */
function estimateOf(
  layup: LayupRecord,
  test: CouponTest,
  thickness: number,
): { readonly fibreFraction: number; readonly estimated: number } {
  const first = layup.layers.find((layer) => layer.kind === "reinforcement");
  if (first === undefined || layup.layers.some(({ kind }) => kind === "core")) {
    return check.refuse(`lay-up of the coupons`, layup.name, "must have plies and no core");
  }
  // The same cloth in a thinner coupon: more fibre by volume.
  const value = first.fibreFraction * laminateThickness(layupStack(layup)) / thickness;
  const stack = layupStack(layup, { fibreFraction: { value, u: 0 } });
  const sign = test === "tension" ? 1 : -1;
  const { lastRatio } = progressiveFailure(stack, { Nx: sign }, { criterion: "maximum stress" });
  const estimated = check.result("estimated strength", lastRatio! / thickness, "Pa");
  return { fibreFraction: value, estimated };
}

function told(
  strengths: readonly number[],
): { readonly measured: CouponStrength | null; readonly notes: readonly string[] } {
  try {
    const measured = strengthFromCoupons(strengths);
    return { measured, notes: measured.notes };
  } catch (error) {
    // Too few coupons, or too much scatter: that is an answer too, and the notebook goes on.
    if (!(error instanceof InputError)) throw error;
    return { measured: null, notes: [error.message] };
  }
}
