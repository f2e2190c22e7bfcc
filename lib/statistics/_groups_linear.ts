import { type Checks, InputError } from "../check/mod.ts";
import { solve } from "../numeric/mod.ts";
import type { GroupedEvidence } from "./update_groups.ts";

/** One unknown: a mean, a group's deviation from it, a common or an own parameter. */
export interface Unknown {
  readonly kind: "mean" | "deviation" | "common" | "own";
  readonly name: string;
  /** Which pooled parameter; −1 for common and own ones. */
  readonly pooled: number;
  /** Which group; −1 for what groups share. */
  readonly group: number;
  /** Value and u beforehand; a deviation has 0 and 1, to be scaled by the spread. */
  readonly value: number;
  readonly u: number;
}

/** All unknowns and observations of the groups in one list each. */
export interface LinearSystem {
  readonly pooledNames: readonly string[];
  readonly commonNames: readonly string[];
  readonly groupNames: readonly string[];
  readonly unknowns: readonly Unknown[];
  /** Scale of the spread of each pooled parameter. */
  readonly spreads: readonly number[];
  readonly observed: readonly {
    readonly group: number;
    readonly value: number;
    readonly u: number;
  }[];
  /** Predictions at values of the unknowns. */
  readonly predict: (values: ArrayLike<number>) => Float64Array;
  /** Slope of each prediction by each unknown, row after row. */
  readonly slopes: (values: ArrayLike<number>) => Float64Array;
}

/**
 * The observations as a linear function of the unknowns about a place, each in units of its u: so
 * that compliances and masses weigh alike in the sums.
 */
export interface Linearised {
  readonly place: Float64Array;
  /** Observations by unknowns, row after row. */
  readonly slopes: Float64Array;
  /** What is observed beyond what the priors' middles predict, by the slopes. */
  readonly residuals: Float64Array;
}

/** The groups as one system. */
export function linearSystem(check: Checks, evidence: GroupedEvidence): LinearSystem {
  const { pooled, common = {}, groups } = evidence;
  const pooledNames = Object.keys(pooled);
  const commonNames = Object.keys(common);
  const unknowns: Unknown[] = [
    ...pooledNames.map((name, k): Unknown => ({
      ...{ kind: "mean", name, pooled: k, group: -1 },
      ...{ value: pooled[name]!.value, u: pooled[name]!.u },
    })),
    ...commonNames.map((name): Unknown => ({
      ...{ kind: "common", name, pooled: -1, group: -1 },
      ...common[name]!,
    })),
  ];
  const shared = unknowns.length;
  const starts = groups.map(({ own }, group) => {
    const start = unknowns.length;
    unknowns.push(
      ...pooledNames.map((name, k): Unknown => ({
        ...{ kind: "deviation", name, pooled: k, group, value: 0, u: 1 },
      })),
      ...Object.entries(own).map(([name, entry]): Unknown => ({
        ...{ kind: "own", name, pooled: -1, group, value: entry.value, u: entry.u },
      })),
    );
    return start;
  });
  const outputs = groups.map(({ observed }) => Object.keys(observed));
  const observed = groups.flatMap((group, j) =>
    outputs[j]!.map((name) => ({ group: j, ...group.observed[name]! }))
  );
  const width = unknowns.length;

  /** Predictions of one group for its parameters in the order: pooled, common, own. */
  const ofGroup = (j: number, values: ArrayLike<number>): readonly number[] => {
    const start = starts[j]!;
    const parameters: Record<string, number> = {};
    pooledNames.forEach((name, k) => parameters[name] = values[k]! + values[start + k]!);
    commonNames.forEach((name, c) => parameters[name] = values[pooledNames.length + c]!);
    Object.keys(groups[j]!.own).forEach((name, o) =>
      parameters[name] = values[start + pooledNames.length + o]!
    );
    const record = check.object("prediction", groups[j]!.predict(parameters));
    return outputs[j]!.map((name) =>
      check.finite(`prediction of ${name} of ${groups[j]!.name}`, record[name]!)
    );
  };
  const columnsOf = (j: number): readonly number[] => [
    ...Array.from({ length: shared }, (_, i) => i),
    ...unknowns.flatMap(({ kind, group }, i) => kind === "own" && group === j ? [i] : []),
  ];
  return {
    ...{ pooledNames, commonNames, unknowns, observed },
    groupNames: groups.map(({ name }) => name),
    spreads: pooledNames.map((name) => pooled[name]!.spread),
    predict: (values): Float64Array =>
      Float64Array.from(groups.flatMap((_, j) => ofGroup(j, values))),
    slopes: (values): Float64Array => {
      const matrix = new Float64Array(observed.length * width);
      let row = 0;
      groups.forEach((_, j) => {
        for (const column of columnsOf(j)) {
          const step = STEP * Math.max(Math.abs(values[column]!), unknowns[column]!.u);
          slopesBy((moved) => ofGroup(j, moved), values, { column, step }).forEach((slope, i) => {
            matrix[(row + i) * width + column] = slope;
            // A deviation from the mean acts as the mean does.
            const { kind, pooled: k } = unknowns[column]!;
            if (kind === "mean") matrix[(row + i) * width + starts[j]! + k] = slope;
          });
        }
        row += outputs[j]!.length;
      });
      return matrix;
    },
  };
}

/** Share of a value that a difference steps by: rounding and bend both below 1e-7. */
const STEP = 1e-4;

/** Central differences; one-sided where the formula refuses one side. */
function slopesBy(
  f: (values: ArrayLike<number>) => readonly number[],
  values: ArrayLike<number>,
  { column, step }: { readonly column: number; readonly step: number },
): readonly number[] {
  const at = (offset: number): readonly number[] | undefined => {
    const moved = Float64Array.from(values);
    moved[column]! += offset;
    return unlessRefused(() => f(moved));
  };
  const [below, above] = [at(-step), at(step)];
  const middle = below === undefined || above === undefined ? f(values) : undefined;
  const [from, to] = [below ?? middle!, above ?? middle!];
  const apart = middle === undefined ? 2 * step : step;
  return from.map((value, i) => (to[i]! - value) / apart);
}

function unlessRefused<T>(f: () => T): T | undefined {
  try {
    return f();
  } catch (error) {
    if (error instanceof InputError) return undefined;
    throw error;
  }
}

/** Rounds of making the formula linear: a compliance is as bent as 1/x, and four bring 1e-8. */
const ROUNDS = 12;

/** The formula made linear at the most probable values for given spreads. */
export function linearise(
  system: LinearSystem,
  spreads: readonly number[],
  from?: Float64Array,
): Linearised {
  let place = from ?? Float64Array.from(system.unknowns, ({ value }) => value);
  let here = about(system, place);
  for (let round = 0; round < ROUNDS; round++) {
    const wanted = mostProbable(system, here, spreads);
    const next = reach(system, place, wanted);
    const moved = system.unknowns.reduce((most, { kind, u, pooled }, i) => {
      const unit = kind === "deviation" ? spreads[pooled]! || 1 : u;
      return Math.max(most, Math.abs(next[i]! - place[i]!) / unit);
    }, 0);
    place = next;
    here = about(system, place);
    if (moved < 1e-6) break;
  }
  return here;
}

/** As far towards the place wanted as the formula accepts. */
function reach(system: LinearSystem, from: Float64Array, to: Float64Array): Float64Array {
  for (let share = 1; share > 1e-3; share /= 2) {
    const place = from.map((value, i) => value + share * (to[i]! - value));
    if (unlessRefused(() => system.predict(place)) !== undefined) return place;
  }
  return from;
}

function about(system: LinearSystem, place: Float64Array): Linearised {
  const { unknowns, observed } = system;
  const width = unknowns.length;
  const slopes = system.slopes(place).map((slope, i) => slope / observed[Math.floor(i / width)]!.u);
  const predicted = system.predict(place);
  const residuals = Float64Array.from(observed, ({ value, u }, a) => {
    let back = 0;
    for (let i = 0; i < width; i++) {
      back += slopes[a * width + i]! * (place[i]! - unknowns[i]!.value);
    }
    return (value - predicted[a]!) / u + back;
  });
  return { place, slopes, residuals };
}

/** Variance of each unknown beforehand, for given spreads. */
export function variancesAt(system: LinearSystem, spreads: readonly number[]): Float64Array {
  return Float64Array.from(
    system.unknowns,
    ({ kind, pooled, u }) => (kind === "deviation" ? spreads[pooled]! : u) ** 2,
  );
}

/** Covariance of the observations for given spreads: H P Hᵀ + 1. */
export function dataCovariance(
  system: LinearSystem,
  slopes: Float64Array,
  variances: Float64Array,
): Float64Array {
  const { observed, unknowns } = system;
  const [n, width] = [observed.length, unknowns.length];
  const V = new Float64Array(n * n);
  for (let a = 0; a < n; a++) {
    for (let b = 0; b <= a; b++) {
      let sum = a === b ? 1 : 0;
      for (let i = 0; i < width; i++) {
        sum += slopes[a * width + i]! * slopes[b * width + i]! * variances[i]!;
      }
      V[a * n + b] = V[b * n + a] = sum;
    }
  }
  return V;
}

function mostProbable(
  system: LinearSystem,
  { slopes, residuals }: Linearised,
  spreads: readonly number[],
): Float64Array {
  const variances = variancesAt(system, spreads);
  const width = variances.length;
  const pull = solve(dataCovariance(system, slopes, variances), residuals);
  return Float64Array.from(system.unknowns, ({ value }, i) => {
    let sum = 0;
    for (let a = 0; a < pull.length; a++) sum += slopes[a * width + i]! * pull[a]!;
    return value + variances[i]! * sum;
  });
}
