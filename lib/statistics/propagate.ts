import { checksFor } from "../check/mod.ts";
import { contributionsOf, gather, type Gathered, inUnitsOfLargest } from "./_budget.ts";
import { correlated, correlationMatrix } from "./_correlation.ts";
import { derivativesBy, type VectorFunction } from "./_derivative.ts";
import { checkFunction } from "./_function_check.ts";
import type { UncertainInput } from "./uncertain.ts";
import { checkInputs } from "./_uncertain.ts";

const check = checksFor("propagate the uncertainty");

/** Two inputs whose errors go together: one scale, one batch. */
export interface Correlation<K extends string = string> {
  /** Names of the two inputs. */
  readonly between: readonly [K, K];
  /** Correlation coefficient, −1 to 1 [1]. */
  readonly coefficient: number;
}

/** What may be said beside the inputs. */
export interface PropagateOptions<K extends string = string> {
  /** Pairs of inputs that are correlated; all others count as independent. */
  readonly correlations?: readonly Correlation<K>[];
}

/** What one input does to the result. */
export interface BudgetLine<K extends string = string> {
  /** Name of the input. */
  readonly name: K;
  /** Its value [unit of the input]. */
  readonly value: number;
  /** Its standard uncertainty [unit of the input]. */
  readonly u: number;
  /** Change of the result for a unit change of the input [unit of result per unit of input]. */
  readonly sensitivity: number;
  /** Sensitivity times u: what the input alone would do to the result [unit of the result]. */
  readonly contribution: number;
  /** Part of the result's variance; the parts add up to 1, correlated ones may be negative [1]. */
  readonly share: number;
}

/** A result with its uncertainty and where that comes from. */
export interface Propagated<K extends string = string> extends UncertainInput {
  /** Expanded uncertainty with coverage factor 2 [unit of the result]. */
  readonly U: number;
  /** Change of the result for a unit change of each input [unit of result per unit of input]. */
  readonly sensitivity: Readonly<Record<K, number>>;
  /** One line for each input, the largest contribution first. */
  readonly budget: readonly BudgetLine<K>[];
  /** What a reader should know before trusting u; empty where there is nothing to say. */
  readonly notes: readonly string[];
}

/** Several results of the same inputs, with how their errors go together. */
export interface PropagatedTogether<K extends string, R extends string> {
  /** Each result with its uncertainty. */
  readonly results: Readonly<Record<R, Propagated<K>>>;
  /** Correlation of each pair of results, fit to be given to the next `propagate`. */
  readonly correlations: readonly Correlation<R>[];
}

/** A name for each input, and its number. */
export type NamedNumbers<K extends string> = Readonly<Record<K, number>>;

/**
 * Carries the uncertainties of inputs through any formula, to first order.
 *
 * Formula: u² = Σi Σj ci cj r(xi, xj) u(xi) u(xj) with ci = ∂f/∂xi, by central differences of
 * order 8 with steps of 0.5 %; ν by Welch–Satterthwaite
 *
 * Range: f smooth over a few per cent of its inputs; notes say where first order is blind or the
 * curve matters, and `monteCarlo` does not mind.
 *
 * Source: JCGM 100:2008 (GUM), 5.1, 5.2 and G.4.1.
 *
 * @param f The formula: named numbers in, a number out.
 * @param inputs A value with standard uncertainty for each name, and dof where u has few.
 * @param options Correlations between inputs.
 * @returns Value, u, U (k = 2), sensitivities, budget, effective degrees of freedom and notes.
 * @throws {InputError} If an input is no value with uncertainty, f refuses the values themselves or
 * returns no finite number, or the correlations contradict each other.
 *
 * @example A plate's mass by area and areal weight
 * ```ts
 * import { propagate } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const mass = propagate(({ area, weight }) => area * weight, {
 *   area: { value: 2, u: 0.02 },
 *   weight: { value: 0.3, u: 0.004 },
 * });
 * assertAlmostEquals(mass.value, 0.6, 1e-15);
 * assertAlmostEquals(mass.u, 0.01, 1e-12);
 * assertAlmostEquals(mass.budget[0]!.share, 0.64, 1e-12);
 * ```
 */
export function propagate<K extends string>(
  f: (values: NamedNumbers<K>) => number,
  inputs: Readonly<Record<K, UncertainInput>>,
  options: PropagateOptions<NoInfer<K>> = {},
): Propagated<K> {
  checkFunction(check, "formula", f);
  const wrapped = (values: NamedNumbers<K>): { result: number } => ({ result: f(values) });
  return propagateTogether(wrapped, inputs, options).results.result;
}

/**
 * Carries the uncertainties of inputs through a formula with several results, and tells how the
 * results' errors go together.
 *
 * Formula: as `propagate`; covariance of results a and b is Σi Σj cai cbj r(xi, xj) u(xi) u(xj)
 *
 * Range: as `propagate`.
 *
 * Source: JCGM 100:2008 (GUM), 5.2 and H.2.3.
 *
 * @param f The formula: named numbers in, named numbers out.
 * @param inputs A value with standard uncertainty for each name, and dof where u has few.
 * @param options Correlations between inputs.
 * @returns Each result as from `propagate`, and the correlations between results.
 * @throws {InputError} As `propagate`.
 *
 * @example The sum and the difference of two readings of one scale
 * ```ts
 * import { propagateTogether } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { results, correlations } = propagateTogether(
 *   ({ a, b }) => ({ sum: a + b, difference: a - b }),
 *   { a: { value: 3, u: 0.1 }, b: { value: 2, u: 0.2 } },
 * );
 * assertAlmostEquals(results.sum.u, Math.sqrt(0.05), 1e-12);
 * assertAlmostEquals(correlations[0]!.coefficient, -0.6, 1e-12);
 * ```
 */
export function propagateTogether<K extends string, R extends string>(
  f: (values: NamedNumbers<K>) => Readonly<Record<R, number>>,
  inputs: Readonly<Record<K, UncertainInput>>,
  options: PropagateOptions<NoInfer<K>> = {},
): PropagatedTogether<K, R> {
  checkFunction(check, "formula", f);
  const names = checkInputs(check, inputs);
  const { correlations = [] } = check.object("options", options);
  const correlation = correlationMatrix(check, names, correlations);
  const values = names.map((name) => inputs[name].value);
  const { outputs, at } = asVector(f, names, values);
  const middle = at(values);
  const derivatives = names.map((name, index) =>
    derivativesBy(at, { values, index, name, u: inputs[name].u })
  );
  const gathered = outputs.map((_, result): Gathered<K> => ({
    ...{ names, inputs, derivatives, correlation, result },
    value: middle[result]!,
  }));
  const results = gathered.map((one) => gather(check, one));
  return check.results({
    results: Object.fromEntries(outputs.map((output, r) => [output, results[r]!])) as Record<
      R,
      Propagated<K>
    >,
    correlations: outputs.flatMap((first, a) =>
      outputs.slice(a + 1).map((second, gap): Correlation<R> => ({
        between: [first, second],
        coefficient: correlationOf(gathered[a]!, gathered[a + 1 + gap]!),
      }))
    ),
  });
}

/** The formula as a function of plain lists, and the names of its results. */
function asVector<K extends string, R extends string>(
  f: (values: NamedNumbers<K>) => Readonly<Record<R, number>>,
  names: readonly K[],
  values: readonly number[],
): { outputs: readonly R[]; at: VectorFunction } {
  const results = (at: readonly number[]): Readonly<Record<R, number>> =>
    f(Object.fromEntries(names.map((name, i) => [name, at[i]])) as Record<K, number>);
  const outputs = Object.keys(check.object("result of the formula", results(values))) as R[];
  return {
    outputs,
    at: (list): number[] => {
      const record = results(list);
      return outputs.map((output) => check.result(output, record[output]));
    },
  };
}

/** Correlation of two results of the same inputs; 0 where one has no uncertainty. */
function correlationOf<K extends string>(first: Gathered<K>, second: Gathered<K>): number {
  const { scaled: a } = inUnitsOfLargest(contributionsOf(first));
  const { scaled: b } = inUnitsOfLargest(contributionsOf(second));
  const covariance = (left: readonly number[], right: readonly number[]): number =>
    left.reduce((sum, c, i) => sum + c * correlated(first.correlation, right, i), 0);
  const product = Math.sqrt(covariance(a, a) * covariance(b, b));
  return product > 0 ? Math.max(-1, Math.min(1, covariance(a, b) / product)) : 0;
}
