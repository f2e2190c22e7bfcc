import { findRoot, gaussLegendre } from "../numeric/mod.ts";
import { normalProbability } from "./normal.ts";
import type { Uncertain } from "./uncertain.ts";

/** Points over the spread: enough for eight digits of a probability on smooth posteriors. */
const RULE = gaussLegendre(128);
/** Share of the draws one standard deviation below the mean, and above, and the 95 % ends. */
const ONE_BELOW = 0.15865525393145707;
const ENDS = 0.025;

/** What is known of the spread from group to group, and of the mean for each spread. */
export interface SpreadPosterior {
  /** Spreads τ, rising. */
  readonly nodes: readonly number[];
  /** Their probabilities, adding up to 1. */
  readonly weights: readonly number[];
  /** Mean of the population for each τ, and its variance. */
  readonly centres: readonly number[];
  readonly centreVariances: readonly number[];
  readonly spread: { readonly median: number; readonly low: number; readonly high: number };
}

/** Posterior of τ, flat beforehand, on points that reach from 0 to infinity. */
export function spreadPosterior(groups: readonly Uncertain[]): SpreadPosterior {
  const scale = scaleOf(groups);
  // τ = scale v/(1 − v) carries 0 … ∞ to 0 … 1.
  const places = Array.from(RULE.nodes, (x) => (1 + x) / 2);
  const nodes = places.map((v) => (scale * v) / (1 - v));
  const given = nodes.map((tau) => atSpread(groups, tau));
  const most = Math.max(...given.map(({ logDensity }) => logDensity));
  const raw = given.map(({ logDensity }, k) =>
    (RULE.weights[k]! * Math.exp(logDensity - most)) / (1 - places[k]!) ** 2
  );
  const total = raw.reduce((sum, w) => sum + w, 0);
  const weights = raw.map((w) => w / total);
  const quantile = quantileOver(nodes, weights);
  return {
    ...{ nodes, weights },
    centres: given.map(({ centre }) => centre),
    centreVariances: given.map(({ variance }) => variance),
    spread: { median: quantile(0.5), low: quantile(ENDS), high: quantile(1 - ENDS) },
  };
}

function scaleOf(groups: readonly Uncertain[]): number {
  const mean = groups.reduce((sum, { value }) => sum + value, 0) / groups.length;
  const squares = groups.reduce((sum, { value, u }) => sum + (value - mean) ** 2 + u * u, 0);
  return Math.sqrt(squares / groups.length);
}

/** Mean, its variance and the density of τ (up to a factor) where the spread is τ. */
function atSpread(
  groups: readonly Uncertain[],
  tau: number,
): { centre: number; variance: number; logDensity: number } {
  const variances = groups.map(({ u }) => u * u + tau * tau);
  const precision = variances.reduce((sum, v) => sum + 1 / v, 0);
  const centre = groups.reduce((sum, { value }, i) => sum + value / variances[i]!, 0) / precision;
  const logDensity = groups.reduce(
    (sum, { value }, i) =>
      sum - 0.5 * Math.log(variances[i]!) - (value - centre) ** 2 / (2 * variances[i]!),
    -0.5 * Math.log(precision),
  );
  return { centre, variance: 1 / precision, logDensity };
}

/** Quantiles of a distribution on points: straight between the middles of their probabilities. */
function quantileOver(nodes: readonly number[], weights: readonly number[]): (p: number) => number {
  return (p) => {
    let below = 0;
    let [lastNode, lastShare] = [0, 0];
    for (let k = 0; k < nodes.length; k++) {
      const share = below + weights[k]! / 2;
      if (share >= p) {
        return lastNode + ((p - lastShare) / (share - lastShare)) * (nodes[k]! - lastNode);
      }
      below += weights[k]!;
      [lastNode, lastShare] = [nodes[k]!, share];
    }
    return lastNode;
  };
}

/** A mixture of normal distributions. */
export interface Mixture {
  readonly weights: readonly number[];
  readonly means: readonly number[];
  readonly deviations: readonly number[];
}

/** Gathers a mixture from mean and variance of each part; parts without weight are left out. */
export function mixtureOf(
  weights: readonly number[],
  mean: (k: number) => number,
  variance: (k: number) => number,
): Mixture {
  const kept = weights.flatMap((w, k) => (w > 1e-14 ? [k] : []));
  return {
    weights: kept.map((k) => weights[k]!),
    means: kept.map(mean),
    deviations: kept.map((k) => Math.sqrt(variance(k))),
  };
}

/** Median, half of the middle 68.3 %, and 95 % interval of a mixture. */
export function mixtureSpread(
  mixture: Mixture,
): { value: number; u: number; low: number; high: number } {
  const at = (p: number): number => mixtureQuantile(mixture, p);
  const value = at(0.5);
  const u = (at(1 - ONE_BELOW) - at(ONE_BELOW)) / 2;
  return { value, u, low: at(ENDS), high: at(1 - ENDS) };
}

function mixtureQuantile({ weights, means, deviations }: Mixture, p: number): number {
  const gap = (x: number): number =>
    weights.reduce(
      (sum, w, k) => sum + w * normalProbability((x - means[k]!) / deviations[k]!),
      0,
    ) -
    p;
  const average = (list: readonly number[]): number =>
    weights.reduce((sum, w, k) => sum + w * list[k]!, 0);
  const middle = average(means);
  // No finer than a double tells places apart.
  const unit = Math.max(average(deviations), Number.EPSILON * Math.abs(middle));
  if (!(unit > 0)) return middle;
  let [from, to] = [middle, middle];
  for (let reach = unit; gap(from) > 0 && reach < Infinity; reach *= 2) from = middle - reach;
  for (let reach = unit; gap(to) < 0 && reach < Infinity; reach *= 2) to = middle + reach;
  return findRoot(gap, { from, to }, 1e-10 * unit);
}
