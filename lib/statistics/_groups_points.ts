import { checksFor } from "../check/mod.ts";
import { cholesky, gaussLegendre } from "../numeric/mod.ts";
import {
  dataCovariance,
  type Linearised,
  type LinearSystem,
  variancesAt,
} from "./_groups_linear.ts";
import { normalQuantile } from "./normal.ts";

const check = checksFor("update the groups");

/** Points over each spread, by the number of pooled parameters: their product is summed over. */
const POINTS = [24, 10, 7, 5];
/** Points with less of the probability are left out. */
const NEGLIGIBLE = 1e-6;

/** What is known where the spreads are as at one point. */
export interface Point {
  readonly spreads: readonly number[];
  /** Probability of the point; all add up to 1. */
  readonly weight: number;
  /** Value of each unknown. */
  readonly values: Float64Array;
  readonly variances: Float64Array;
  /** L⁻¹ of each unknown's covariance with the observations, row after row. */
  readonly pulls: Float64Array;
  readonly chiSquared: number;
}

/** Covariance of two unknowns at a point. */
export type Covariance = (point: Point, i: number, j: number) => number;

/** Points over the spreads, each half-normal beforehand, with what the observations say there. */
export function pointsOf(system: LinearSystem, linear: Linearised): readonly Point[] {
  const { spreads } = system;
  const rule = gaussLegendre(POINTS[spreads.length - 1]!);
  const axes = spreads.map((scale) =>
    scale === 0 ? [{ spread: 0, weight: 1 }] : Array.from(rule.nodes, (x, i) => ({
      // Quantiles of the half-normal prior, so that each carries its weight of the rule.
      spread: scale * normalQuantile(0.5 + (1 + x) / 4),
      weight: rule.weights[i]! / 2,
    }))
  );
  let grid: readonly { readonly spreads: readonly number[]; readonly weight: number }[] = [
    { spreads: [], weight: 1 },
  ];
  for (const axis of axes) {
    grid = grid.flatMap((point) =>
      axis.map(({ spread, weight }) => ({
        spreads: [...point.spreads, spread],
        weight: point.weight * weight,
      }))
    );
  }
  const found = grid.map(({ spreads, weight }) => ({
    weight,
    ...pointAt(system, linear, spreads),
  }));
  const most = Math.max(...found.map(({ logEvidence }) => logEvidence));
  const raw = found.map(({ weight, logEvidence }) => weight * Math.exp(logEvidence - most));
  const total = raw.reduce((sum, w) => sum + w, 0);
  const kept = found.flatMap((point, i) =>
    raw[i]! > NEGLIGIBLE * total ? [{ ...point, weight: raw[i]! }] : []
  );
  if (kept.length === 0) {
    check.refuse("observations", "too far apart", "must lie within a range that numbers hold");
  }
  const left = kept.reduce((sum, { weight }) => sum + weight, 0);
  return kept.map((point) => ({ ...point, weight: point.weight / left }));
}

function pointAt(
  system: LinearSystem,
  { slopes, residuals }: Linearised,
  spreads: readonly number[],
): Omit<Point, "weight"> & { readonly logEvidence: number } {
  const variances = variancesAt(system, spreads);
  const [n, width] = [residuals.length, variances.length];
  const L = cholesky(dataCovariance(system, slopes, variances));
  const whitened = lowerSolve(L, residuals);
  let [chiSquared, logRoot] = [0, 0];
  for (let a = 0; a < n; a++) {
    chiSquared += whitened[a]! ** 2;
    logRoot += Math.log(L[a * n + a]!);
  }
  const pulls = new Float64Array(width * n);
  const values = new Float64Array(width);
  const column = new Float64Array(n);
  for (let i = 0; i < width; i++) {
    for (let a = 0; a < n; a++) column[a] = variances[i]! * slopes[a * width + i]!;
    const pull = lowerSolve(L, column);
    pulls.set(pull, i * n);
    let moved = 0;
    for (let a = 0; a < n; a++) moved += pull[a]! * whitened[a]!;
    values[i] = system.unknowns[i]!.value + moved;
  }
  return { spreads, values, variances, pulls, chiSquared, logEvidence: -chiSquared / 2 - logRoot };
}

/** L⁻¹ b for a lower triangular L. */
function lowerSolve(L: Float64Array, b: Float64Array): Float64Array {
  const n = b.length;
  const x = new Float64Array(n);
  for (let a = 0; a < n; a++) {
    let sum = b[a]!;
    for (let k = 0; k < a; k++) sum -= L[a * n + k]! * x[k]!;
    x[a] = sum / L[a * n + a]!;
  }
  return x;
}

/** Mean of each spread over the points. */
export function meanSpreads(points: readonly Point[]): readonly number[] {
  return points[0]!.spreads.map((_, k) =>
    points.reduce((sum, { weight, spreads }) => sum + weight * spreads[k]!, 0)
  );
}
