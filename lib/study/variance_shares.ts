import { checksFor } from "../check/mod.ts";
import { normalQuantile } from "../statistics/mod.ts";
import { evenPoints } from "./low_discrepancy.ts";
import { checkWatching } from "./_watching.ts";

const check = checksFor("share out the variance");

/** How an input scatters. */
export type InputSpread =
  | {
    /** Any value between the ends is as likely. */
    readonly kind: "even";
    /** Lower end [unit of the input]. */
    readonly low: number;
    /** Upper end [unit of the input]. */
    readonly high: number;
  }
  | {
    /** A bell curve. */
    readonly kind: "normal";
    /** Mean [unit of the input]. */
    readonly mean: number;
    /** Standard deviation [unit of the input]. */
    readonly sd: number;
  };

/** What share of the result's variance an input has. */
export interface VarianceShare {
  /** Name of the input. */
  readonly name: string;
  /** Share by itself: what knowing it exactly would take away [1]. */
  readonly alone: number;
  /** Standard uncertainty of that share, from the repeats [1]. */
  readonly aloneUncertainty: number;
  /** Share in all, together with others: 0 if it does not matter at all [1]. */
  readonly inAll: number;
  /** Standard uncertainty of that share, from the repeats [1]. */
  readonly inAllUncertainty: number;
}

/** Options of `varianceShares`. */
export interface VarianceOptions {
  /** Points of one repeat; 1024 if not given. */
  readonly points?: number;
  /** Repeats with shuffled points, for the uncertainty; 8 if not given. */
  readonly repeats?: number;
  /** Seed; 1 if not given. */
  readonly seed?: number;
  /** Called after each repeat with how many are done, of how many. */
  readonly progress?: (done: number, total: number) => void;
  /** Stops after the running repeat when aborted. */
  readonly signal?: AbortSignal;
}

/**
 * Which input matters, by its share of the result's variance when all scatter together.
 *
 * Formula: with samples A, B and A with column i of B: alone = mean fB (fABi − fA)/V (Saltelli),
 * in all = mean (fA − fABi)²/2V (Jansen); points by `evenPoints`
 *
 * Range: independent inputs, up to 20. Costs points × repeats × (inputs + 2) runs.
 *
 * Source: A. Saltelli et al., Comput. Phys. Commun. 181 (2010) 259, from memory.
 *
 * @param spreads How each input scatters.
 * @param model Result of the inputs' values.
 * @param options Points, repeats, seed, progress, stop.
 * @returns Mean and standard deviation of the result, and shares, the largest in all first.
 * @throws {InputError} If a spread cannot be meant, there are over 20 inputs, or a result is no
 * finite number.
 *
 * @example
 * ```ts
 * import { varianceShares } from "@laminate/notebooks/study";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const even = { kind: "even", low: 0, high: 1 } as const;
 * const { shares } = varianceShares({ a: even, b: even }, ({ a, b }) => 2 * a + b);
 * assertAlmostEquals(shares[0]!.alone, 0.8, 0.01);
 * ```
 */
export function varianceShares<K extends string>(
  spreads: Readonly<Record<K, InputSpread>>,
  model: (values: Readonly<Record<K, number>>) => number,
  options: VarianceOptions = {},
): {
  /** Mean of the result [unit of the result]. */
  readonly mean: number;
  /** Standard deviation of the result [unit of the result]. */
  readonly sd: number;
  /** Share of each input, the largest in all first. */
  readonly shares: readonly VarianceShare[];
  /** Whether it was stopped before its end. */
  readonly stopped: boolean;
} {
  check.object("spreads", spreads);
  if (typeof model !== "function") check.refuse("model", model, "must be a function of the inputs");
  const names = Object.keys(spreads) as K[];
  check.list("spreads", names);
  check.within("number of inputs", names.length, { min: 1, max: 20 });
  for (const name of names) checkSpread(name, spreads[name]);
  const { points = 1024, repeats = 8, seed = 1, progress, signal } = check.object(
    "options",
    options,
  );
  check.count("points", points, 16);
  check.within("points", points, { min: 16, max: 1e7 });
  check.count("repeats", repeats, 2);
  check.within("repeats", repeats, { min: 2, max: 1000 });
  check.count("seed", seed);
  checkWatching(check, { progress, signal });
  const setup: Setup<K> = { names, spreads, model, points };
  const done: Repeat[] = [];
  for (let r = 0; r < repeats && !(signal?.aborted === true && r >= 2); r++) {
    done.push(oneRepeat(setup, seed + r));
    progress?.(r + 1, repeats);
  }
  const over = (pick: (repeat: Repeat) => number): { mean: number; u: number } => {
    const mean = done.reduce((sum, repeat) => sum + pick(repeat), 0) / done.length;
    const square = done.reduce((sum, repeat) => sum + (pick(repeat) - mean) ** 2, 0);
    return { mean, u: Math.sqrt(square / (done.length - 1) / done.length) };
  };
  const shares = names.map((name, i): VarianceShare => {
    const alone = over(({ alone }) => alone[i] ?? 0);
    const inAll = over(({ inAll }) => inAll[i] ?? 0);
    return {
      name,
      alone: alone.mean,
      aloneUncertainty: alone.u,
      inAll: inAll.mean,
      inAllUncertainty: inAll.u,
    };
  });
  return Object.freeze({
    mean: over(({ mean }) => mean).mean,
    sd: check.result("standard deviation", Math.sqrt(over(({ variance }) => variance).mean)),
    shares: shares.sort((a, b) => b.inAll - a.inAll),
    stopped: done.length < repeats,
  });
}

interface Setup<K extends string> {
  readonly names: readonly K[];
  readonly spreads: Readonly<Record<K, InputSpread>>;
  readonly model: (values: Readonly<Record<K, number>>) => number;
  readonly points: number;
}

interface Repeat {
  readonly mean: number;
  readonly variance: number;
  readonly alone: readonly number[];
  readonly inAll: readonly number[];
}

function oneRepeat<K extends string>(
  { names, spreads, model, points }: Setup<K>,
  seed: number,
): Repeat {
  const k = names.length;
  const cube = evenPoints(points, 2 * k, seed);
  const values = {} as Record<K, number>;
  const run = (row: number, from: (i: number) => 0 | 1): number => {
    names.forEach((name, i) => {
      values[name] = valueOf(spreads[name], cube[row * 2 * k + from(i) * k + i] as number);
    });
    return check.result("result", model(values));
  };
  const A = Float64Array.from({ length: points }, (_, row) => run(row, () => 0));
  const B = Float64Array.from({ length: points }, (_, row) => run(row, () => 1));
  const mean = (A.reduce((s, f) => s + f, 0) + B.reduce((s, f) => s + f, 0)) / (2 * points);
  const square = (s: number, f: number): number => s + (f - mean) ** 2;
  const variance = (A.reduce(square, 0) + B.reduce(square, 0)) / (2 * points);
  const alone: number[] = [];
  const inAll: number[] = [];
  names.forEach((_, i) => {
    let [first, total] = [0, 0];
    for (let row = 0; row < points; row++) {
      const mixed = run(row, (j) => j === i ? 1 : 0);
      // Centred, which changes no mean but takes most of the scatter away.
      first += (B[row]! - mean) * (mixed - A[row]!);
      total += (A[row]! - mixed) ** 2 / 2;
    }
    alone.push(variance === 0 ? 0 : first / points / variance);
    inAll.push(variance === 0 ? 0 : total / points / variance);
  });
  return { mean, variance, alone, inAll };
}

function valueOf(spread: InputSpread, share: number): number {
  return spread.kind === "even"
    ? spread.low + share * (spread.high - spread.low)
    : spread.mean + spread.sd * normalQuantile(share);
}

function checkSpread(name: string, spread: InputSpread): void {
  check.object(name, spread);
  check.oneOf(`kind of ${name}`, spread.kind, ["even", "normal"]);
  if (spread.kind === "normal") {
    check.finite(`mean of ${name}`, spread.mean);
    check.nonNegative(`standard deviation of ${name}`, spread.sd);
    return;
  }
  check.finite(`low of ${name}`, spread.low);
  check.finite(`high of ${name}`, spread.high);
  if (!(spread.low <= spread.high)) {
    check.refuse(`low of ${name}`, spread.low, `must not be above ${spread.high}`);
  }
}
