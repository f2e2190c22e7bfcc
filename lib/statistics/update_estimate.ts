import { checksFor } from "../check/mod.ts";
import { chanceOfMore, CONFLICT } from "./_probability.ts";
import type { Uncertain } from "./uncertain.ts";
import { checkUncertain } from "./_uncertain.ts";

const check = checksFor("update the estimate");

/** An estimate after evidence. */
export interface UpdatedEstimate extends Uncertain {
  /** Share of the prior in the new value [1]. */
  readonly priorShare: number;
  /** Share of each piece of evidence in the new value, in the order given [1]. */
  readonly shares: readonly number[];
  /** Weighted squares by which prior and evidence differ [1]. */
  readonly chiSquared: number;
  /** Probability of so large a difference by chance [1]. */
  readonly chance: number;
  /** What a reader should know; empty where there is nothing to say. */
  readonly notes: readonly string[];
}

/**
 * One value from what was believed before and what was measured since.
 *
 * Formula: 1/u² = 1/u0² + Σ 1/ui²; value = u² (value0/u0² + Σ valuei/ui²)
 *
 * Range: independent, normally distributed, u above 0. A note says where they contradict each other:
 * then the small u is not to be believed.
 *
 * Source: conjugate normal model, Gelman and others, Bayesian Data Analysis, 2.5, from memory.
 *
 * @param prior What was believed before [any unit].
 * @param evidence What was measured, each with its u [unit of the prior].
 * @returns Value and u after, shares, and the test of conflict.
 * @throws {InputError} If an entry is no value with uncertainty or its u is not above 0.
 *
 * @example
 * ```ts
 * import { updateEstimate } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const modulus = updateEstimate({ value: 20, u: 2 }, [{ value: 23, u: 1 }]);
 * assertAlmostEquals(modulus.value, 22.4, 1e-13);
 * assertAlmostEquals(modulus.u, Math.sqrt(0.8), 1e-13);
 * ```
 */
export function updateEstimate(prior: Uncertain, evidence: readonly Uncertain[]): UpdatedEstimate {
  check.list("evidence", evidence, 1);
  const parts = [prior, ...evidence];
  parts.forEach((part, i) => {
    const name = i === 0 ? "prior" : `evidence ${i - 1}`;
    checkUncertain(check, name, part);
    check.positive(`uncertainty of ${name}`, part.u);
  });
  // In units of the smallest u, so that no square overflows.
  const unit = Math.min(...parts.map(({ u }) => u));
  const weights = parts.map(({ u }) => (unit / u) ** 2);
  const total = weights.reduce((sum, w) => sum + w, 0);
  const shares = weights.map((w) => w / total);
  const value = parts.reduce((sum, part, i) => sum + shares[i]! * part.value, 0);
  const chiSquared = parts.reduce((sum, part) => sum + ((part.value - value) / part.u) ** 2, 0);
  const chance = chanceOfMore(check.result("chi-squared", chiSquared), evidence.length);
  return {
    value: check.result("value", value),
    u: unit / Math.sqrt(total),
    priorShare: shares[0]!,
    shares: shares.slice(1),
    ...{ chiSquared, chance },
    notes: chance < CONFLICT
      ? ["Prior and evidence contradict each other: one is wrong, or its u is too small."]
      : [],
  };
}
