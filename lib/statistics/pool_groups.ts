import { checksFor } from "../check/mod.ts";
import { type Mixture, mixtureOf, mixtureSpread, spreadPosterior } from "./_pooling.ts";
import { checkUncertain } from "./_uncertain.ts";
import type { Uncertain } from "./uncertain.ts";

const check = checksFor("pool the groups");

/** One group's own estimate. */
export interface NamedEstimate extends Uncertain {
  /** Name of the group: a part, a batch, a crew. */
  readonly name: string;
}

/** A value with its 95 % interval; u is half of the middle 68.3 %. */
export interface PooledValue extends Uncertain {
  /** Lower end of the 95 % interval [unit of the value]. */
  readonly low: number;
  /** Upper end of the 95 % interval [unit of the value]. */
  readonly high: number;
}

/** One group's estimate after it has learned from the others. */
export interface PooledGroup extends PooledValue {
  /** Name of the group. */
  readonly name: string;
  /** How far it was drawn towards the common mean: 0 not at all, 1 wholly [1]. */
  readonly drawn: number;
}

/** How much groups differ: a standard deviation, known from few. */
export interface GroupSpread {
  /** As likely too large as too small [unit of the values]. */
  readonly median: number;
  /** Lower end of the 95 % interval [unit of the values]. */
  readonly low: number;
  /** Upper end of the 95 % interval [unit of the values]. */
  readonly high: number;
}

/** What several groups say together. */
export interface Pooled {
  /** Mean of the population that the groups come from. */
  readonly mean: PooledValue;
  /** Standard deviation from group to group. */
  readonly spread: GroupSpread;
  /** Each group with what it learned, in the order given. */
  readonly groups: readonly PooledGroup[];
  /** The next group, not yet measured. */
  readonly next: PooledValue;
  /** What a reader should know; empty where there is nothing to say. */
  readonly notes: readonly string[];
}

/**
 * Partial pooling: estimates of several groups drawn towards their common mean, the more so the less
 * each is known and the less groups differ; and what to expect of the next group.
 *
 * Formula: yi ~ N(θi, ui²), θi ~ N(μ, τ²), flat in μ and τ; θ and μ integrated exactly given τ, τ
 * numerically over its whole range
 *
 * Range: three groups or more with known u above 0. With three or four the tails are long, since so
 * few can hardly tell τ; a note says so.
 *
 * Source: Gelman and others, Bayesian Data Analysis, 5.4, from memory.
 *
 * @param groups Each group's own estimate with u.
 * @returns Mean, spread from group to group, each group, and the next.
 * @throws {InputError} If there are fewer than three groups or one has no u above 0.
 *
 * @example Three parts that agree are nearly one
 * ```ts
 * import { poolGroups } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { mean } = poolGroups([
 *   { name: "1", value: 9.9, u: 0.3 },
 *   { name: "2", value: 10, u: 0.3 },
 *   { name: "3", value: 10.1, u: 0.3 },
 * ]);
 * assertAlmostEquals(mean.value, 10, 1e-9);
 * ```
 */
export function poolGroups(groups: readonly NamedEstimate[]): Pooled {
  check.list("groups", groups, 3);
  groups.forEach((group, i) => {
    checkUncertain(check, `group ${i}`, group);
    check.positive(`uncertainty of group ${i}`, group.u);
  });
  const posterior = spreadPosterior(groups);
  const { nodes, weights, centres, centreVariances } = posterior;
  check.result("spread of the groups", posterior.spread.median);
  centreVariances.forEach((variance) => check.result("variance of the mean", variance));
  const over = (
    mean: (k: number) => number,
    variance: (k: number) => number,
  ): Mixture => mixtureOf(weights, mean, variance);
  const own = groups.map(({ name, value, u }): PooledGroup => {
    const pull = (k: number): number => u * u / (u * u + nodes[k]! ** 2);
    const mixture = over(
      (k) => pull(k) * centres[k]! + (1 - pull(k)) * value,
      (k) => (1 - pull(k)) * u * u + pull(k) ** 2 * centreVariances[k]!,
    );
    const drawn = weights.reduce((sum, w, k) => sum + w * pull(k), 0);
    return { name, ...mixtureSpread(mixture), drawn };
  });
  return {
    mean: mixtureSpread(over((k) => centres[k]!, (k) => centreVariances[k]!)),
    spread: posterior.spread,
    groups: own,
    next: mixtureSpread(over((k) => centres[k]!, (k) => centreVariances[k]! + nodes[k]! ** 2)),
    notes: groups.length < 5
      ? [`${groups.length} groups hardly tell how much groups differ: the intervals are wide.`]
      : [],
  };
}
