import type { Checks } from "../check/mod.ts";
import { quantiles, type RandomGenerator } from "../numeric/mod.ts";
import type { MonteCarloResult } from "./monte_carlo.ts";
import type { Sampler } from "./_sampling.ts";

/** Draws made at once: their columns fit in a processor's second cache. */
const CHUNK = 2000;

/** All that a run needs. */
export interface Run {
  readonly fill: (columns: readonly Float64Array[], target: Float64Array) => void;
  /** Number of inputs. */
  readonly width: number;
  readonly sampler: Sampler;
  readonly random: RandomGenerator;
  readonly level: number;
  readonly digits: number;
  /** Whether to stop as soon as the digits stand still. */
  readonly adaptive: boolean;
  /** Most draws. */
  readonly most: number;
}

/** Mean, standard deviation and interval of some draws. */
interface Figures {
  readonly value: number;
  readonly u: number;
  readonly low: number;
  readonly median: number;
  readonly high: number;
}

/** Draws until the digits stand still, or as often as asked. */
export function runTrials(check: Checks, run: Run): MonteCarloResult {
  const { level, digits, adaptive, most } = run;
  const samples = new Float64Array(most);
  // JCGM 101, 7.9.4: at least 100 draws outside the interval, and ten thousand.
  const block = adaptive ? Math.max(10_000, Math.ceil(100 / (1 - level))) : most;
  const blocks: Figures[] = [];
  let drawn = 0;
  let kept = 0;
  let settled = false;
  while (drawn < most && !settled) {
    const from = kept;
    const until = Math.min(most, drawn + block);
    while (drawn < until) {
      const size = Math.min(CHUNK, until - drawn);
      kept = drawChunk(run, samples, { from: kept, size });
      drawn += size;
    }
    if (kept < drawn / 2) {
      check.refuse(
        "number of draws that gave a result",
        kept,
        `must be half of the ${drawn} drawn or more: the formula refuses the rest`,
      );
    }
    if (adaptive) {
      blocks.push(figuresOf(samples.subarray(from, kept), level));
      settled = blocks.length > 1 && standStill(blocks, digits);
    }
  }
  const results = samples.subarray(0, kept);
  const figures = figuresOf(results, level);
  check.result("mean of the draws", figures.value);
  check.result("standard deviation of the draws", figures.u);
  const refused = drawn - kept;
  return {
    ...figures,
    level,
    ...{ trials: kept, refused, settled: settled || !adaptive, samples: results },
    notes: notesOn({ refused, drawn, unsettled: adaptive && !settled }),
  };
}

/** Draws one chunk and keeps the results that are numbers; returns where the next one goes. */
function drawChunk(
  { fill, width, sampler, random }: Run,
  samples: Float64Array,
  { from, size }: { readonly from: number; readonly size: number },
): number {
  const columns = Array.from({ length: width }, () => new Float64Array(size));
  sampler(random, columns);
  const target = samples.subarray(from, from + size);
  fill(columns, target);
  let kept = 0;
  for (let i = 0; i < size; i++) {
    const result = target[i]!;
    if (Number.isFinite(result)) target[kept++] = result;
  }
  return from + kept;
}

function figuresOf(results: Float64Array, level: number): Figures {
  let sum = 0;
  for (let i = 0; i < results.length; i++) sum += results[i]!;
  const value = sum / results.length;
  let squares = 0;
  for (let i = 0; i < results.length; i++) squares += (results[i]! - value) ** 2;
  const [low, median, high] = quantiles(results, [(1 - level) / 2, 0.5, (1 + level) / 2]) as [
    ...[number, number, number],
  ];
  return { value, u: Math.sqrt(squares / (results.length - 1)), low, median, high };
}

/** Whether mean, u and both ends vary less from block to block than half a last digit of u. */
function standStill(blocks: readonly Figures[], digits: number): boolean {
  const mean = (of: (figures: Figures) => number): number =>
    blocks.reduce((sum, figures) => sum + of(figures), 0) / blocks.length;
  const u = mean((figures) => figures.u);
  if (!(u > 0)) return true;
  const tolerance = 0.5 * 10 ** (Math.floor(Math.log10(u)) - digits + 1);
  return (["value", "u", "low", "high"] as const).every((name) => {
    const middle = mean((figures) => figures[name]);
    const variance = mean((figures) => (figures[name] - middle) ** 2) / (blocks.length - 1);
    return 2 * Math.sqrt(variance) < tolerance;
  });
}

function notesOn(
  { refused, drawn, unsettled }: {
    readonly refused: number;
    readonly drawn: number;
    readonly unsettled: boolean;
  },
): string[] {
  const notes: string[] = [];
  if (refused > 0) {
    notes.push(
      `The formula refused ${refused} of ${drawn} draws: the result speaks for the others only.`,
    );
  }
  if (unsettled) {
    notes.push(
      `The digits asked for did not stand still in ${drawn} draws: a heavy tail, or too many digits.`,
    );
  }
  return notes;
}
