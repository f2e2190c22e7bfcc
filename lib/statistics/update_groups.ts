import { checksFor } from "../check/mod.ts";
import { checkFunction } from "./_function_check.ts";
import { conclude, type GroupsConcluded } from "./_groups_conclude.ts";
import { linearise, linearSystem } from "./_groups_linear.ts";
import { meanSpreads, pointsOf } from "./_groups_points.ts";
import type { GroupSpread, PooledValue } from "./pool_groups.ts";
import { chanceOfMore, CONFLICT } from "./_probability.ts";
import type { Correlation, NamedNumbers } from "./propagate.ts";
import type { RandomGenerator } from "./simulate.ts";
import type { Uncertain } from "./uncertain.ts";
import { checkUncertain } from "./_uncertain.ts";

const check = checksFor("update the groups");

/** What was believed of a parameter that differs from group to group about a mean. */
export interface PooledPrior extends Uncertain {
  /**
   * How much groups are thought to differ: the scale of a half-normal distribution of their standard
   * deviation, two thirds of which lie below it. 0 for what is the same in all [unit of the value].
   */
  readonly spread: number;
}

/** What was observed of one group, and how parameters would predict it. */
export interface GroupEvidence {
  /** Name of the group: a part, a batch. */
  readonly name: string;
  /** What is believed of parameters that are this group's alone, u above 0. */
  readonly own: Readonly<Record<string, Uncertain>>;
  /** Each observation with its standard uncertainty, independent of the others. */
  readonly observed: Readonly<Record<string, Uncertain>>;
  /** The formula: pooled, common and own parameters in, one prediction an observation out. */
  readonly predict: (parameters: NamedNumbers<string>) => NamedNumbers<string>;
}

/** Several groups with what they share. */
export interface GroupedEvidence {
  /** Parameters that differ from group to group about a mean; one to four. */
  readonly pooled: Readonly<Record<string, PooledPrior>>;
  /** Parameters that are the same in all groups and known with u: one roll, one gauge. */
  readonly common?: Readonly<Record<string, Uncertain>>;
  /** The groups. */
  readonly groups: readonly GroupEvidence[];
}

/** One group after the evidence of all. */
export interface UpdatedGroup {
  /** Its name. */
  readonly name: string;
  /** Its pooled and its own parameters. */
  readonly parameters: Readonly<Record<string, PooledValue>>;
}

/** Groups after their evidence, and what to expect of the next one. */
export interface GroupsUpdated {
  /** Mean over groups of each pooled parameter. */
  readonly means: Readonly<Record<string, PooledValue>>;
  /** Standard deviation from group to group of each pooled parameter. */
  readonly spreads: Readonly<Record<string, GroupSpread>>;
  /** Each pooled parameter of a group not yet observed. */
  readonly next: Readonly<Record<string, PooledValue>>;
  /** Correlations of the next group's parameters and the common ones, fit for `propagate`. */
  readonly nextCorrelations: readonly Correlation[];
  /** Each common parameter. */
  readonly common: Readonly<Record<string, PooledValue>>;
  /** Each group, in the order given. */
  readonly groups: readonly UpdatedGroup[];
  /** Weighted squares by which observations and prior differ, and how probable so many are [1]. */
  readonly chiSquared: number;
  /** Probability of so large a difference by chance [1]. */
  readonly chance: number;
  /**
   * Each observation less what a new group would give, in standard deviations of that: what
   * `predictiveCheck` is to be given as the data [1].
   */
  readonly departures: readonly number[];
  /** A replica of the departures: as many new groups, drawn from what was learned [1]. */
  replicate(random: RandomGenerator): readonly number[];
  /** What a reader should know; empty where there is nothing to say. */
  readonly notes: readonly string[];
}

/**
 * Parameters that differ from group to group, learned from observations that they predict together:
 * partial pooling through a formula. Each group is drawn towards the mean, the more so the less it
 * tells by itself; a group that tells only one of two parameters still tells it.
 *
 * Formula: y = f(θj, c, oj) + e; θj ~ N(μ, τ²), μ ~ N(m, u²), τ half-normal; f made linear at the
 * most probable values, then all exact given τ, and τ integrated on quantiles of its prior
 *
 * Range: one to four pooled parameters; priors and errors near normal, f smooth and not much bent
 * within them (use the logarithm of what is above 0). One group is enough: the prior then says what
 * is known of τ. Groups that differ by more than three times the spread thought of are told too
 * little apart; a note says so.
 *
 * Source: Gelman and others, Bayesian Data Analysis, 5.4 and 13.3, half-normal prior of the spread
 * 5.7; from memory.
 *
 * @param evidence Pooled, common and own priors, observations and formulas.
 * @returns Means, spreads, the next group, each group, and what `predictiveCheck` needs.
 * @throws {InputError} If an entry is no value with uncertainty above 0, a spread is negative, names
 * are missing or given twice, or a formula refuses the priors.
 *
 * @example Three parts, each observed by the sum of its own value and a common one
 * ```ts
 * import { updateGroups } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { means, groups } = updateGroups({
 *   pooled: { x: { value: 0, u: 100, spread: 1 } },
 *   groups: [9.9, 10, 10.1].map((value, i) => ({
 *     name: `part ${i + 1}`,
 *     own: {},
 *     observed: { sum: { value, u: 0.1 } },
 *     predict: ({ x }) => ({ sum: x! }),
 *   })),
 * });
 * assertAlmostEquals(means.x!.value, 10, 1e-3);
 * assertAlmostEquals(groups[2]!.parameters.x!.value, 10.05, 0.05);
 * ```
 */
export function updateGroups(evidence: GroupedEvidence): GroupsUpdated {
  checkEvidence(evidence);
  const system = linearSystem(check, evidence);
  // Made linear where the spreads are as thought, then where the observations put them.
  const first = linearise(system, system.spreads.map((scale) => 0.6745 * scale));
  const spreads = meanSpreads(pointsOf(system, first));
  const found = conclude(system, linearise(system, spreads, first.place));
  const chance = chanceOfMore(found.chiSquared, system.observed.length);
  return check.results({
    ...shown(found),
    chiSquared: found.chiSquared,
    chance,
    departures: found.departures,
    replicate: found.replicate,
    notes: [
      ...(chance < CONFLICT
        ? ["Prior and observations contradict each other: one is wrong, or its u is too small."]
        : []),
      ...system.pooledNames.flatMap((name, k) =>
        found.spreads[k]!.median > 2 * system.spreads[k]! && system.spreads[k]! > 0
          ? [`Groups differ in ${name} by far more than was thought.`]
          : []
      ),
    ],
  });
}

function shown(
  found: GroupsConcluded,
): Pick<
  GroupsUpdated,
  "means" | "spreads" | "next" | "nextCorrelations" | "common" | "groups"
> {
  const named = <T>(names: readonly string[], values: readonly T[]): Record<string, T> =>
    Object.fromEntries(names.map((name, i) => [name, values[i]!]));
  const { pooledNames, commonNames } = found;
  return {
    means: named(pooledNames, found.means),
    spreads: named(pooledNames, found.spreads),
    next: named(pooledNames, found.next),
    nextCorrelations: found.nextCorrelations,
    common: named(commonNames, found.common),
    groups: found.groups.map(({ name, names, values }) => ({
      name,
      parameters: named(names, values),
    })),
  };
}

function checkEvidence(evidence: GroupedEvidence): void {
  const { pooled, common = {}, groups } = check.object("evidence", evidence);
  const positive = (where: string, record: Readonly<Record<string, Uncertain>>): void => {
    for (const [name, entry] of Object.entries(check.object(where, record))) {
      checkUncertain(check, name, entry);
      check.positive(`uncertainty of ${name}`, entry.u);
    }
  };
  positive("pooled", pooled);
  positive("common", common);
  const names = Object.keys(pooled);
  check.within("number of pooled parameters", names.length, { min: 1, max: 4 });
  for (const name of names) check.nonNegative(`spread of ${name}`, pooled[name]!.spread);
  const shared = new Set([...names, ...Object.keys(common)]);
  if (shared.size < names.length + Object.keys(common).length) {
    check.refuse("common", common, "must have other names than the pooled parameters");
  }
  const known = new Set<string>();
  check.list("groups", groups).forEach((group, i) => {
    const { name, own, observed, predict } = check.object(`group ${i}`, group);
    if (known.has(name)) check.refuse("name of a group", name, "must be given once");
    known.add(name);
    positive(`own parameters of ${name}`, own);
    positive(`observations of ${name}`, observed);
    check.list(`observations of ${name}`, Object.keys(observed));
    checkFunction(check, `formula of ${name}`, predict);
    const twice = Object.keys(own).find((parameter) => shared.has(parameter));
    if (twice !== undefined) {
      check.refuse(`own parameter of ${name}`, twice, "must not be pooled or common too");
    }
  });
}
