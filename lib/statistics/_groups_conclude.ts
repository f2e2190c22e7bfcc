import type { RandomGenerator } from "../numeric/mod.ts";
import type { Linearised, LinearSystem } from "./_groups_linear.ts";
import { type Covariance, type Point, pointsOf } from "./_groups_points.ts";
import { newGroups } from "./_groups_replicas.ts";
import type { GroupSpread, PooledValue } from "./pool_groups.ts";
import { type Part, spreadOfParts } from "./_groups_mixture.ts";
import type { Correlation } from "./propagate.ts";

/** What the groups say, in lists. */
export interface GroupsConcluded {
  readonly pooledNames: readonly string[];
  readonly commonNames: readonly string[];
  readonly means: readonly PooledValue[];
  readonly next: readonly PooledValue[];
  readonly nextCorrelations: readonly Correlation[];
  readonly common: readonly PooledValue[];
  readonly spreads: readonly GroupSpread[];
  readonly groups: readonly {
    readonly name: string;
    readonly names: readonly string[];
    readonly values: readonly PooledValue[];
  }[];
  readonly chiSquared: number;
  readonly departures: readonly number[];
  readonly replicate: (random: RandomGenerator) => readonly number[];
}

/** Sums up over the spreads, each half-normal beforehand. */
export function conclude(system: LinearSystem, linear: Linearised): GroupsConcluded {
  const { pooledNames, commonNames, groupNames, unknowns } = system;
  const points = pointsOf(system, linear);
  const count = system.observed.length;
  const overlap = ({ pulls }: Point, i: number, j: number): number => {
    let sum = 0;
    for (let a = 0; a < count; a++) sum += pulls[i * count + a]! * pulls[j * count + a]!;
    return sum;
  };
  const covariance = (point: Point, i: number, j: number): number =>
    (i === j ? point.variances[i]! : 0) - overlap(point, i, j);
  /** A sum of unknowns, with a variance of its own. */
  const valueOf = (
    indices: readonly number[],
    extra: (point: Point) => number = () => 0,
  ): PooledValue =>
    spreadOfParts(points.map((point): Part => ({
      weight: point.weight,
      mean: indices.reduce((sum, i) => sum + point.values[i]!, 0),
      variance: indices.reduce(
        (sum, i) => indices.reduce((row, j) => row + covariance(point, i, j), sum),
        extra(point),
      ),
    })));
  const shared = pooledNames.length + commonNames.length;
  const groups = groupNames.map((name, j) => {
    const mine = unknowns.flatMap(({ group }, i) => group === j ? [i] : []);
    return {
      name,
      names: mine.map((i) => unknowns[i]!.name),
      values: mine.map((i) => {
        const { kind, pooled } = unknowns[i]!;
        return valueOf(kind === "deviation" ? [pooled, i] : [i]);
      }),
    };
  });
  return {
    ...{ pooledNames, commonNames, groups },
    means: pooledNames.map((_, k) => valueOf([k])),
    next: pooledNames.map((_, k) => valueOf([k], ({ spreads }) => spreads[k]! ** 2)),
    nextCorrelations: correlationsOf(system, points, covariance),
    common: commonNames.map((_, c) => valueOf([pooledNames.length + c])),
    spreads: pooledNames.map((_, k) => spreadSummary(points, k)),
    chiSquared: points.reduce((sum, { weight, chiSquared }) => sum + weight * chiSquared, 0),
    ...newGroups(system, linear, { points, covariance, shared }),
  };
}

/** Median and 95 % interval of one spread, straight between its points. */
function spreadSummary(points: readonly Point[], k: number): GroupSpread {
  const weights = new Map<number, number>();
  for (const { spreads, weight } of points) {
    weights.set(spreads[k]!, (weights.get(spreads[k]!) ?? 0) + weight);
  }
  const rising = [...weights].toSorted(([a], [b]) => a - b);
  const at = (p: number): number => {
    let [below, last, lastShare] = [0, 0, 0];
    for (const [spread, weight] of rising) {
      const share = below + weight / 2;
      if (share >= p) return last + (p - lastShare) / (share - lastShare) * (spread - last);
      below += weight;
      [last, lastShare] = [spread, share];
    }
    return last;
  };
  return { median: at(0.5), low: at(0.025), high: at(0.975) };
}

/** Correlations of the next group's parameters and the common ones, over all points together. */
function correlationsOf(
  { pooledNames, commonNames }: LinearSystem,
  points: readonly Point[],
  covariance: Covariance,
): readonly Correlation[] {
  const names = [...pooledNames, ...commonNames];
  const middles = names.map((_, i) =>
    points.reduce((sum, { weight, values }) => sum + weight * values[i]!, 0)
  );
  const whole = (i: number, j: number): number =>
    points.reduce((sum, point) => {
      const { weight, values, spreads } = point;
      const between = (values[i]! - middles[i]!) * (values[j]! - middles[j]!);
      const own = i === j ? (spreads[i] ?? 0) ** 2 : 0;
      return sum + weight * (covariance(point, i, j) + between + own);
    }, 0);
  return names.flatMap((first, i) =>
    names.slice(i + 1).map((second, gap): Correlation => {
      const j = i + 1 + gap;
      const size = Math.sqrt(whole(i, i) * whole(j, j));
      const coefficient = size > 0 ? Math.max(-1, Math.min(1, whole(i, j) / size)) : 0;
      return { between: [first, second], coefficient };
    })
  );
}
