import { checksFor } from "../check/mod.ts";
import { checkFunction } from "./_function_check.ts";
import { settle, type Settled } from "./_gauss_newton.ts";
import { chanceOfMore, CONFLICT } from "./_probability.ts";
import type { Correlation, NamedNumbers, PropagateOptions } from "./propagate.ts";
import type { Uncertain } from "./uncertain.ts";
import { checkInputs } from "./_uncertain.ts";

const check = checksFor("update the parameters");

/** A parameter after evidence. */
export interface UpdatedParameter extends Uncertain {
  /** Share of the prior's variance that the evidence took away: 0 nothing learned, 1 all [1]. */
  readonly learned: number;
}

/** How one observation agrees. */
export interface ObservationFit {
  /** What was observed [unit of the observation]. */
  readonly observed: number;
  /** What the prior parameters predict [unit of the observation]. */
  readonly before: number;
  /** What the updated parameters predict [unit of the observation]. */
  readonly after: number;
  /** Observed less updated prediction, in units of the observation's u [1]. */
  readonly z: number;
}

/** Parameters after evidence, with how they go together. */
export interface UpdatedParameters<K extends string, R extends string> {
  /** Each parameter with its u. */
  readonly parameters: Readonly<Record<K, UpdatedParameter>>;
  /** Correlation of each pair of parameters, fit to be given to `propagate` or `monteCarlo`. */
  readonly correlations: readonly Correlation<K>[];
  /** Each observation beside its prediction before and after. */
  readonly observations: Readonly<Record<R, ObservationFit>>;
  /** Weighted squares by which prior and observations differ from the updated parameters [1]. */
  readonly chiSquared: number;
  /** Probability of so large a difference by chance [1]. */
  readonly chance: number;
  /** What a reader should know; empty where there is nothing to say. */
  readonly notes: readonly string[];
}

/** What is observed, and how parameters would predict it. */
export interface Evidence<K extends string, R extends string> {
  /** The formula: parameters in, one prediction for each observation out. */
  readonly predict: (parameters: NamedNumbers<K>) => Readonly<Record<R, number>>;
  /** Each observation with its standard uncertainty, independent of the others. */
  readonly observed: Readonly<Record<R, Uncertain>>;
}

/**
 * Several parameters from what was believed of them and what was observed of things they predict.
 *
 * Formula: the θ that makes Σ((θ − θ0)/u0)² + Σ((y − f(θ))/u)² least (correlations of the prior
 * included), by Gauss–Newton; covariance from the curvature there (Laplace)
 *
 * Range: priors and errors near normal, f smooth. Exact where f is linear; a note says where the
 * curvature is not that of a normal distribution. Chosen over random walks because these problems
 * are small and smooth, and a figure that goes into the next design must come out the same each time.
 *
 * Source: Gelman and others, Bayesian Data Analysis, 4.1 and 13.3; Tarantola, Inverse Problem
 * Theory, 3.2; both from memory.
 *
 * @param prior What was believed of each parameter, u above 0.
 * @param evidence Observations and the formula that predicts them.
 * @param options Correlations of the prior.
 * @returns Parameters with u and correlations, observations beside predictions, and notes.
 * @throws {InputError} If an entry is no value with uncertainty above 0, predictions and
 * observations differ in names, the formula refuses the prior, or no best fit is found.
 *
 * @example Two springs in series are observed together and one alone
 * ```ts
 * import { updateParameters } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { parameters } = updateParameters(
 *   { a: { value: 5, u: 10 }, b: { value: 5, u: 10 } },
 *   {
 *     predict: ({ a, b }) => ({ both: a + b, one: a }),
 *     observed: { both: { value: 12, u: 0.01 }, one: { value: 4, u: 0.01 } },
 *   },
 * );
 * assertAlmostEquals(parameters.b.value, 8, 1e-4);
 * assertAlmostEquals(parameters.b.u, 0.01 * Math.SQRT2, 1e-4);
 * ```
 */
export function updateParameters<K extends string, R extends string>(
  prior: Readonly<Record<K, Uncertain>>,
  evidence: Evidence<NoInfer<K>, R>,
  options: PropagateOptions<NoInfer<K>> = {},
): UpdatedParameters<K, R> {
  const names = checkPositive("prior", prior);
  const { observed, predict } = check.object("evidence", evidence);
  checkFunction(check, "formula that predicts", predict);
  const { correlations = [] } = check.object("options", options);
  const outputs = checkPositive("observed", observed);
  const settled = settle(check, {
    ...{ names, prior, outputs, observed },
    predict: predict as (parameters: NamedNumbers<K>) => NamedNumbers<R>,
    correlations,
  });
  const chance = chanceOfMore(settled.misfit, outputs.length);
  return check.results({
    parameters: parametersOf(names, prior, settled),
    correlations: correlationsOf(names, settled),
    observations: Object.fromEntries(outputs.map((output, r): [R, ObservationFit] => [output, {
      observed: observed[output].value,
      before: settled.before[r]!,
      after: settled.after[r]!,
      z: (observed[output].value - settled.after[r]!) / observed[output].u,
    }])) as Record<R, ObservationFit>,
    chiSquared: settled.misfit,
    chance,
    notes: [
      ...(chance < CONFLICT
        ? ["Prior and observations contradict each other: one is wrong, or its u is too small."]
        : []),
      ...settled.bent.map((k) =>
        `What is known of ${names[k]} is not spread normally: its u is rough.`
      ),
    ],
  });
}

function checkPositive<T extends string>(
  argument: string,
  record: Readonly<Record<T, Uncertain>>,
): readonly T[] {
  check.object(argument, record);
  const names = checkInputs(check, record);
  for (const name of names) check.positive(`uncertainty of ${name}`, record[name].u);
  return names;
}

function parametersOf<K extends string>(
  names: readonly K[],
  prior: Readonly<Record<K, Uncertain>>,
  { values, scaledCovariance }: Settled,
): Readonly<Record<K, UpdatedParameter>> {
  return Object.fromEntries(names.map((name, k): [K, UpdatedParameter] => {
    const share = scaledCovariance[k * names.length + k]!;
    return [name, {
      value: check.result(name, values[k]!),
      u: prior[name].u * Math.sqrt(share),
      learned: Math.max(0, 1 - share),
    }];
  })) as Record<K, UpdatedParameter>;
}

function correlationsOf<K extends string>(
  names: readonly K[],
  { scaledCovariance }: Settled,
): readonly Correlation<K>[] {
  const width = names.length;
  const at = (i: number, j: number): number => scaledCovariance[i * width + j]!;
  return names.flatMap((first, i) =>
    names.slice(i + 1).map((second, gap): Correlation<K> => {
      const j = i + 1 + gap;
      const coefficient = at(i, j) / Math.sqrt(at(i, i) * at(j, j));
      return { between: [first, second], coefficient: Math.max(-1, Math.min(1, coefficient)) };
    })
  );
}
