import { cholesky, type RandomGenerator } from "../numeric/mod.ts";
import type { Linearised, LinearSystem } from "./_groups_linear.ts";
import type { Covariance, Point } from "./_groups_points.ts";

/** Observations beside new groups. */
export interface NewGroups {
  /** Each observation less what a new group would give, in standard deviations of that. */
  readonly departures: readonly number[];
  /** The same of groups drawn anew. */
  readonly replicate: (random: RandomGenerator) => readonly number[];
}

/** The observations beside what as many new groups would give, and replicas of those. */
export function newGroups(
  system: LinearSystem,
  { slopes, residuals }: Linearised,
  given: {
    readonly points: readonly Point[];
    readonly covariance: Covariance;
    readonly shared: number;
  },
): NewGroups {
  const { unknowns, observed } = system;
  const { points, covariance, shared } = given;
  const width = unknowns.length;
  const slope = (a: number, i: number): number => slopes[a * width + i]!;
  const ofShared = (a: number, values: ArrayLike<number>): number => {
    let sum = 0;
    for (let i = 0; i < shared; i++) sum += slope(a, i) * (values[i]! - unknowns[i]!.value);
    return sum;
  };
  const expected = observed.map((_, a) => {
    const means = points.map(({ values }) => ofShared(a, values));
    const mean = points.reduce((sum, { weight }, p) => sum + weight * means[p]!, 0);
    const variance = points.reduce((sum, point, p) => {
      let own = 1 + (means[p]! - mean) ** 2;
      for (let i = 0; i < width; i++) {
        if (i >= shared) own += slope(a, i) ** 2 * point.variances[i]!;
        else {for (let j = 0; j < shared; j++) {
            own += slope(a, i) * slope(a, j) * covariance(point, i, j);
          }}
      }
      return sum + point.weight * own;
    }, 0);
    return { mean, sd: Math.sqrt(variance) };
  });
  const roots = points.map((point) => rootOf(point, { covariance, shared }));
  return {
    departures: observed.map((_, a) => (residuals[a]! - expected[a]!.mean) / expected[a]!.sd),
    replicate: (random): readonly number[] => {
      const p = drawPoint(points, random.uniform());
      const { values, variances } = points[p]!;
      const drawn = Float64Array.from(
        unknowns,
        ({ value }, i) =>
          i < shared ? values[i]! : value + Math.sqrt(variances[i]!) * random.normal(),
      );
      const normals = Array.from({ length: shared }, () => random.normal());
      for (let i = 0; i < shared; i++) {
        for (let j = 0; j <= i; j++) drawn[i]! += roots[p]![i * shared + j]! * normals[j]!;
      }
      return observed.map((_, a) => {
        let sum = random.normal();
        for (let i = 0; i < width; i++) sum += slope(a, i) * (drawn[i]! - unknowns[i]!.value);
        return (sum - expected[a]!.mean) / expected[a]!.sd;
      });
    },
  };
}

function drawPoint(points: readonly Point[], uniform: number): number {
  let below = 0;
  for (let p = 0; p < points.length; p++) {
    below += points[p]!.weight;
    if (uniform < below) return p;
  }
  return points.length - 1;
}

/** Cholesky factor of the covariance of what groups share. */
function rootOf(
  point: Point,
  { covariance, shared }: { readonly covariance: Covariance; readonly shared: number },
): Float64Array {
  // In units of each unknown's own prior, so that no factor is lost to rounding.
  const units = Array.from({ length: shared }, (_, i) => Math.sqrt(point.variances[i]!));
  const matrix = new Float64Array(shared * shared);
  for (let i = 0; i < shared; i++) {
    for (let j = 0; j < shared; j++) {
      matrix[i * shared + j] = covariance(point, i, j) / (units[i]! * units[j]!) +
        (i === j ? 1e-13 : 0);
    }
  }
  const L = cholesky(matrix);
  return L.map((entry, at) => entry * units[Math.floor(at / shared)]!);
}
