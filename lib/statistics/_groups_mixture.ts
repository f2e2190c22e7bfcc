import { normalProbability } from "./normal.ts";
import type { PooledValue } from "./pool_groups.ts";

/** One normal distribution of a mixture. */
export interface Part {
  /** Its probability; all add up to 1. */
  readonly weight: number;
  readonly mean: number;
  readonly variance: number;
}

/** Parts whose deviations and means differ by less than this share are taken as one [1]. */
const ALIKE = 0.05;
/** Share of the draws one standard deviation below the mean. */
const ONE_BELOW = 0.15865525393145707;

/** Median, half of the middle 68.3 %, and 95 % interval of a mixture. */
export function spreadOfParts(parts: readonly Part[]): PooledValue {
  const mean = parts.reduce((sum, part) => sum + part.weight * part.mean, 0);
  const square = parts.reduce(
    (sum, part) => sum + part.weight * (part.variance + (part.mean - mean) ** 2),
    0,
  );
  // Rounding may leave a variance a little below 0 where the observations tell nearly all.
  const unit = Math.sqrt(Math.max(0, square));
  if (!(unit > Number.EPSILON * Math.abs(mean))) {
    return { value: mean, u: 0, low: mean, high: mean };
  }
  const scaled = merged(parts.map((part) => ({
    weight: part.weight,
    mean: (part.mean - mean) / unit,
    variance: Math.max(1e-12, part.variance / unit ** 2),
  })));
  const at = (p: number): number => mean + unit * quantileOf(scaled, p);
  const u = (at(1 - ONE_BELOW) - at(ONE_BELOW)) / 2;
  return { value: at(0.5), u, low: at(0.025), high: at(0.975) };
}

/** Nearly equal parts as one of the same mean and variance: a few are left to sum over. */
function merged(parts: readonly Part[]): readonly Part[] {
  const least = Math.sqrt(Math.min(...parts.map(({ variance }) => variance)));
  const groups = Map.groupBy(parts, ({ mean, variance }) => {
    const size = Math.round(Math.log(variance) / (2 * ALIKE));
    return `${size} ${Math.round(mean / (ALIKE * least))}`;
  });
  return [...groups.values()].map((group): Part => {
    const weight = group.reduce((sum, part) => sum + part.weight, 0);
    const mean = group.reduce((sum, part) => sum + part.weight * part.mean, 0) / weight;
    const square = group.reduce(
      (sum, part) => sum + part.weight * (part.variance + (part.mean - mean) ** 2),
      0,
    );
    return { weight, mean, variance: square / weight };
  });
}

/** Widths in which a mixture of mean 0 and variance 1 surely ends (Chebyshev, at 2.5 %). */
const REACH = 7;

/** Newton's steps on the probability, halved where they would leave what is known to enclose it. */
function quantileOf(parts: readonly Part[], p: number): number {
  const roots = parts.map(({ variance }) => Math.sqrt(variance));
  let [from, to] = [-REACH, REACH];
  let x = p === 0.5 ? 0 : p < 0.5 ? -1 : 1;
  for (let round = 0; round < 80; round++) {
    let [below, density] = [-p, 0];
    parts.forEach(({ weight, mean }, k) => {
      const z = (x - mean) / roots[k]!;
      below += weight * normalProbability(z);
      density += weight * Math.exp(-z * z / 2) / (roots[k]! * Math.sqrt(2 * Math.PI));
    });
    if (below < 0) from = x;
    else to = x;
    const next = x - below / density;
    const inside = next > from && next < to ? next : (from + to) / 2;
    if (Math.abs(inside - x) < 1e-8) return inside;
    x = inside;
  }
  return x;
}
