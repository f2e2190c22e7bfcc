import { type Checks, InputError } from "../check/mod.ts";
import { cholesky, leastSquares, solve } from "../numeric/mod.ts";
import { correlationMatrix } from "./_correlation.ts";
import { derivativesBy } from "./_derivative.ts";
import type { Correlation, NamedNumbers } from "./propagate.ts";
import type { Uncertain } from "./uncertain.ts";

/** A prior, observations and the formula between them. */
export interface Problem<K extends string, R extends string> {
  readonly names: readonly K[];
  readonly prior: Readonly<Record<K, Uncertain>>;
  readonly outputs: readonly R[];
  readonly observed: Readonly<Record<R, Uncertain>>;
  readonly predict: (parameters: NamedNumbers<K>) => NamedNumbers<R>;
  readonly correlations: readonly Correlation<K>[];
}

/** Where the squares are least, and how they curve there. */
export interface Settled {
  readonly values: readonly number[];
  /** Covariance of the parameters in units of their priors' u, row after row. */
  readonly scaledCovariance: Float64Array;
  readonly before: readonly number[];
  readonly after: readonly number[];
  /** Least sum of squares. */
  readonly misfit: number;
  /** Parameters along which the curvature is not that of a normal distribution. */
  readonly bent: readonly number[];
}

/** How far the sum of squares one deviation away may be from 1 more. */
const BENT = 0.3;

/** Gauss–Newton with halved steps, in units of the priors' u. */
export function settle<K extends string, R extends string>(
  check: Checks,
  problem: Problem<K, R>,
): Settled {
  const system = systemOf(check, problem);
  let place: readonly number[] = problem.names.map(() => 0);
  let residuals = system.residualsAt(place);
  const before = system.predictionsAt(place);
  for (let round = 0;; round++) {
    const { solution } = leastSquares(system.jacobianAt(place), residuals.map((r) => -r));
    const found = stepDown(system, { place, residuals, step: Array.from(solution) });
    const moved = Math.max(...found.place.map((p, k) => Math.abs(p - place[k]!)));
    ({ place, residuals } = found);
    if (moved < 1e-9) break;
    if (round === 100) {
      check.refuse("parameters", moved, "must come to rest: they still move after 100 rounds");
    }
  }
  const { cofactors } = leastSquares(system.jacobianAt(place), residuals);
  return {
    values: system.valuesAt(place),
    scaledCovariance: cofactors,
    before,
    after: system.predictionsAt(place),
    misfit: squares(residuals),
    bent: bentAlong(system, { place, residuals, cofactors }),
  };
}

/** The problem as a list of residuals of unit variance. */
interface System {
  readonly valuesAt: (place: readonly number[]) => readonly number[];
  readonly predictionsAt: (place: readonly number[]) => readonly number[];
  readonly residualsAt: (place: readonly number[]) => readonly number[];
  readonly jacobianAt: (place: readonly number[]) => Float64Array;
}

function systemOf<K extends string, R extends string>(
  check: Checks,
  problem: Problem<K, R>,
): System {
  const { names, prior, outputs, observed, correlations } = problem;
  const width = names.length;
  const whiten = whitening(correlationMatrix(check, names, correlations), width);
  const predictions = predictionsOf(check, problem);
  const valuesAt = (place: readonly number[]): readonly number[] =>
    names.map((name, k) => prior[name].value + prior[name].u * place[k]!);
  return {
    valuesAt,
    predictionsAt: (place) => predictions(valuesAt(place)),
    residualsAt: (place) => [
      ...names.map((_, row) => place.reduce((sum, p, k) => sum + whiten[row * width + k]! * p, 0)),
      ...predictions(valuesAt(place)).map((p, r) => {
        const { value, u } = observed[outputs[r]!];
        return (p - value) / u;
      }),
    ],
    jacobianAt: (place): Float64Array => {
      const values = valuesAt(place);
      const matrix = new Float64Array((width + outputs.length) * width);
      matrix.set(whiten);
      names.forEach((name, k) => {
        const { u } = prior[name];
        derivativesBy(predictions, { values, index: k, name, u }).first.forEach((slope, r) => {
          matrix[(width + r) * width + k] = (slope * u) / observed[outputs[r]!].u;
        });
      });
      return matrix;
    },
  };
}

/** W with WᵀW = R⁻¹: it turns correlated deviations into independent ones. */
function whitening(correlation: Float64Array | undefined, order: number): Float64Array {
  const identity = Float64Array.from(
    { length: order * order },
    (_, i) => Number(i % (order + 1) === 0),
  );
  return correlation === undefined ? identity : solve(cholesky(correlation), identity);
}

/** The formula as a function of plain lists. */
function predictionsOf<K extends string, R extends string>(
  check: Checks,
  { names, outputs, predict }: Problem<K, R>,
): (values: readonly number[]) => readonly number[] {
  return (values) => {
    const record = predict(
      Object.fromEntries(names.map((name, k) => [name, values[k]])) as Record<K, number>,
    );
    check.object("prediction", record);
    return outputs.map((output) => check.finite(`prediction of ${output}`, record[output]));
  };
}

function squares(list: readonly number[]): number {
  return list.reduce((sum, entry) => sum + entry * entry, 0);
}

/** Takes the step, or half of it, and half again, until the squares fall and the formula agrees. */
function stepDown(
  system: System,
  from: {
    readonly place: readonly number[];
    readonly residuals: readonly number[];
    readonly step: readonly number[];
  },
): { place: readonly number[]; residuals: readonly number[] } {
  const least = squares(from.residuals);
  for (let share = 1; share > 1e-6; share /= 2) {
    const place = from.place.map((p, k) => p + share * from.step[k]!);
    const residuals = tryResiduals(system, place);
    if (residuals !== undefined && squares(residuals) <= least) return { place, residuals };
  }
  return from;
}

function tryResiduals(system: System, place: readonly number[]): readonly number[] | undefined {
  try {
    return system.residualsAt(place);
  } catch (error) {
    if (error instanceof InputError) return undefined;
    throw error;
  }
}

/** Parameters along whose deviation, up or down, the squares do not rise by 1. */
function bentAlong(
  system: System,
  at: {
    readonly place: readonly number[];
    readonly residuals: readonly number[];
    readonly cofactors: Float64Array;
  },
): readonly number[] {
  const { place, residuals, cofactors } = at;
  const width = place.length;
  const least = squares(residuals);
  return place.flatMap((_, k) => {
    const deviation = Math.sqrt(cofactors[k * width + k]!);
    const bent = [1, -1].some((sign) => {
      const moved = place.map((p, i) => p + (sign * cofactors[i * width + k]!) / deviation);
      const there = tryResiduals(system, moved);
      return there === undefined || !(Math.abs(squares(there) - least - 1) < BENT);
    });
    return bent ? [k] : [];
  });
}
