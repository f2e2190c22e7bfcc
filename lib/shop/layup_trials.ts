import { checksFor } from "../check/mod.ts";
import { randomGenerator } from "../numeric/mod.ts";
import type { BatchPlan } from "./batches.ts";
import { type LayupPace, runLayup } from "./layup_run.ts";

const check = checksFor("try the lay-up");

/** Many lay-ups, and what went wrong in the worst. */
export interface LayupTrials {
  /** Lay-ups run [1]. */
  readonly runs: number;
  /** Of these, how many ran dry, threw a pot away or missed resin [1]. */
  readonly failed: number;
  /** Longest time without resin [s]. */
  readonly worstDryTime: number;
  /** Most resin thrown away [kg]. */
  readonly worstDiscarded: number;
  /** When the slowest had laid the last of its resin [s]. */
  readonly latestFinish: number;
  /** Smallest time by which a pot was ready before it was needed [s]. */
  readonly tightest: number;
  /** Holds: none failed. */
  readonly verdict: "holds" | "fails";
}

/** What to try. */
export interface TrialOptions {
  /** How far the pace strays: 0.3 is ±30 % [1]. */
  readonly spread: number;
  /** What mixing follows. */
  readonly mixBy: LayupPace["mixBy"];
  /** How many lay-ups with a pace that changes at random, beside those at the extremes [1]. */
  readonly randomRuns: number;
  /** Seed of the random numbers [1]. */
  readonly seed: number;
}

/** A dry time below this share of the lay-up is rounding. */
const ROUNDING = 1e-12;
/** How long a random pace lasts before it changes [s]. */
const PACE_LASTS = 300;
/** Pace changes in a random lay-up before they repeat [1]. */
const PACE_CHANGES = 24;

/**
 * Whether a timetable keeps wet resin at hand for crews faster and slower than expected: at both
 * extremes, changing from one to the other, and at random in between.
 *
 * Formula: `runLayup` with factors 1 − s, 1, 1 + s, both alternations, and random ones
 *
 * Range: spread 0 to below 1.
 *
 * Source: simulation with a seeded generator.
 *
 * @param plan From `planBatches`.
 * @param options Spread, what mixing follows, number of random lay-ups and seed.
 * @returns How many failed, and the worst of each figure.
 * @throws {InputError} If an option is outside its range.
 *
 * @example
 * ```ts
 * import { planBatches, tryLayups } from "@laminate/notebooks/shop";
 * import { assertEquals } from "@std/assert";
 *
 * const plan = planBatches({
 *   totalMass: 1.8, resinPerArea: 0.25, layingRate: 0.12 / 60, rateSpread: 0.3, mixingTime: 240,
 *   sheet: { potLife: 2400, mass: 0.1, temperature: 293 }, temperature: 293, usableShare: 0.8,
 * });
 * const trials = tryLayups(plan, { spread: 0.3, mixBy: "mark", randomRuns: 50, seed: 1 });
 * assertEquals(trials.verdict, "holds");
 * ```
 */
export function tryLayups(plan: BatchPlan, options: TrialOptions): LayupTrials {
  const { spread, mixBy, randomRuns, seed } = check.object("options", options);
  check.fraction("spread", spread);
  if (!(spread < 1)) check.refuse("spread", spread, "must be below 1");
  check.count("number of random lay-ups", randomRuns);
  check.within("number of random lay-ups", randomRuns, { min: 0, max: 10_000 });
  const random = randomGenerator(seed);
  const [slow, fast] = [1 - spread, 1 + spread];
  const paces = [
    [slow],
    [1],
    [fast],
    [slow, fast],
    [fast, slow],
    ...Array.from(
      { length: randomRuns },
      () => Array.from({ length: PACE_CHANGES }, () => slow + (fast - slow) * random.uniform()),
    ),
  ];
  const runs = paces.map((factors) => runLayup(plan, { factors, interval: PACE_LASTS, mixBy }));
  const wrong = runs.filter((run) =>
    run.dryTime > ROUNDING * run.finishAt || run.discarded > 0 || run.missing > 0
  );
  return {
    runs: runs.length,
    failed: wrong.length,
    worstDryTime: Math.max(...runs.map(({ dryTime }) => dryTime)),
    worstDiscarded: Math.max(...runs.map(({ discarded }) => discarded)),
    latestFinish: Math.max(...runs.map(({ finishAt }) => finishAt)),
    tightest: Math.min(...runs.map(({ tightest }) => tightest)),
    verdict: wrong.length === 0 ? "holds" : "fails",
  };
}
