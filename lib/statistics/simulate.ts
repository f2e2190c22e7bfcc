import { checksFor } from "../check/mod.ts";
import { quantiles, type RandomGenerator, randomGenerator } from "../numeric/mod.ts";
import { checkSeries } from "./_fit.ts";
import { checkFunction } from "./_function_check.ts";
import { summarise } from "./summary.ts";

export type { RandomGenerator };

const check = checksFor("simulate");

/** How often, and from which seed. */
export interface SimulationOptions {
  /** Number of simulated campaigns; a thousand unless said [1]. */
  readonly trials?: number;
  /** Seed: the same one gives the same result; 1 unless said [1]. */
  readonly seed?: number;
}

/** How often something held. */
export interface Rate {
  /** Share of the campaigns in which it held [1]. */
  readonly rate: number;
  /** Standard uncertainty of the share, from the number of campaigns [1]. */
  readonly u: number;
  /** Number of campaigns [1]. */
  readonly trials: number;
}

/**
 * How often an interval holds the truth, in campaigns simulated with a known truth.
 *
 * Formula: rate = held/trials, u = √(rate (1 − rate)/trials)
 *
 * Range: a thousand campaigns tell a rate of 95 % to ± 0.7 %.
 *
 * Source: binomial distribution.
 *
 * @param campaign Simulates one campaign with the generator given; says whether the interval held.
 * @param options Number of campaigns and seed.
 * @returns Rate with its u.
 * @throws {InputError} If the number of campaigns is not a whole number above 0.
 *
 * @example
 * ```ts
 * import { coverage, fromReadings, holdRate } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { rate } = holdRate((random) => {
 *   const { low, high } = coverage(fromReadings([5, 5, 5].map((x) => x + random.normal())));
 *   return low < 5 && 5 < high;
 * });
 * assertAlmostEquals(rate, 0.95, 0.02);
 * ```
 */
export function holdRate(
  campaign: (random: RandomGenerator) => boolean,
  options: SimulationOptions = {},
): Rate {
  const { trials, random } = started(campaign, options);
  let held = 0;
  for (let i = 0; i < trials; i++) if (campaign(random)) held++;
  const rate = held / trials;
  return { rate, u: Math.sqrt((rate * (1 - rate)) / trials), trials };
}

/** One figure of the data beside what the model would give again. */
export interface PredictiveFigure {
  /** Which figure: mean, sd, smallest, largest, or lag 1. */
  readonly name: "mean" | "sd" | "smallest" | "largest" | "lag 1";
  /** The figure of the data [its own unit]. */
  readonly observed: number;
  /** Lower end of 95 % of the replicas [unit of the figure]. */
  readonly low: number;
  /** The middle replica [unit of the figure]. */
  readonly median: number;
  /** Upper end of 95 % of the replicas [unit of the figure]. */
  readonly high: number;
  /** Share of replicas as far out or farther, on either side [1]. */
  readonly chance: number;
}

/** Whether data look like what the model makes. */
export interface PredictiveCheck {
  /** Each figure of the data beside the replicas. */
  readonly figures: readonly PredictiveFigure[];
  /** What a reader should know; empty where there is nothing to say. */
  readonly notes: readonly string[];
}

/**
 * Posterior predictive check: would the model, as learned, make data like these?
 *
 * Formula: for each figure T of the data, share of replicas with T as far out; 2 min(P, 1 − P)
 *
 * Range: any model that can make replicas; a good fit does not prove a model, a bad one disproves it.
 *
 * Source: Gelman and others, Bayesian Data Analysis, 6.3, from memory.
 *
 * @param replicate Makes one replica of the data with the generator given, parameters drawn anew.
 * @param observed The data, two values or more.
 * @param options Number of replicas and seed.
 * @returns Figures of data and replicas, and notes on those that do not fit.
 * @throws {InputError} If data or a replica are fewer than two values or not finite numbers.
 *
 * @example
 * ```ts
 * import { predictiveCheck } from "@laminate/notebooks/statistics";
 * import { assertEquals } from "@std/assert";
 *
 * const { notes } = predictiveCheck(
 *   (random) => [0, 0, 0, 0].map(() => random.normal()),
 *   [0.3, -1.1, 0.4, 6],
 * );
 * assertEquals(notes.length, 3); // mean, sd and largest are all too high
 * ```
 */
export function predictiveCheck(
  replicate: (random: RandomGenerator) => ArrayLike<number>,
  observed: ArrayLike<number>,
  options: SimulationOptions = {},
): PredictiveCheck {
  const { trials, random } = started(replicate, options);
  const own = figuresOf(observed);
  const replicas = Array.from({ length: trials }, () => figuresOf(replicate(random)));
  const figures = own.map(({ name, value }, k): PredictiveFigure => {
    const values = replicas.map((replica) => replica[k]!.value);
    const [low, median, high] = quantiles(values, [0.025, 0.5, 0.975]) as [
      ...[number, number, number],
    ];
    const below = values.filter((other) => other <= value).length / trials;
    const above = values.filter((other) => other >= value).length / trials;
    return {
      ...{ name, observed: value, low, median, high },
      chance: Math.min(1, 2 * Math.min(below, above)),
    };
  });
  return {
    figures,
    notes: figures.filter(({ chance }) => chance < 0.02).map(({ name, observed, low, high }) =>
      `The ${name} of the data, ${short(observed)}, lies outside what the model makes: ` +
      `${short(low)} to ${short(high)}.`
    ),
  };
}

/** More would run for days. */
const MOST_CAMPAIGNS = 1e7;

function started(f: unknown, options: SimulationOptions): {
  trials: number;
  random: RandomGenerator;
} {
  checkFunction(check, "function that simulates", f);
  const { trials = 1000, seed = 1 } = check.object("options", options);
  check.count("number of campaigns", trials, 1);
  check.within("number of campaigns", trials, { min: 1, max: MOST_CAMPAIGNS });
  return { trials, random: randomGenerator(seed) };
}

function figuresOf(
  values: ArrayLike<number>,
): readonly { name: PredictiveFigure["name"]; value: number }[] {
  checkSeries(check, "value", values);
  const { mean, sd, lag1 } = summarise(values);
  const list = Array.from(values);
  return [
    { name: "mean", value: mean },
    { name: "sd", value: sd },
    { name: "smallest", value: list.reduce((least, x) => Math.min(least, x)) },
    { name: "largest", value: list.reduce((most, x) => Math.max(most, x)) },
    { name: "lag 1", value: lag1 },
  ];
}

function short(value: number): string {
  return String(Number(value.toPrecision(3)));
}
