import { checksFor, InputError } from "../check/mod.ts";
import { solve } from "../numeric/mod.ts";
import { chiSquaredQuantile, propagateTogether, type Uncertain } from "../statistics/mod.ts";
import { checkGap } from "./_gap_checks.ts";

const check = checksFor("explain the gap");

/** An input of the prediction that could be wrong. */
export interface SuspectInput extends Uncertain {
  /** The reading that would tell, such as "measure the core with callipers". */
  readonly reading: string;
}

/** A gap between measurements and their prediction. */
export interface Gap {
  /** The measured values, in the order in which the prediction returns them [SI]. */
  readonly measured: readonly Uncertain[];
  /** The inputs by name [SI]. */
  readonly inputs: Readonly<Record<string, SuspectInput>>;
  /** The prediction of every measured value from the inputs, as a pure function. */
  readonly predict: (inputs: Readonly<Record<string, number>>) => readonly number[];
}

/** How well one input would explain the gap, if it were free to be wrong. */
export interface Explanation {
  /** Name of the input. */
  readonly input: string;
  /** The value that the measurements ask for [SI]. */
  readonly needed: Uncertain;
  /** That value over the value used [1]. */
  readonly ratio: number;
  /** How far it is from the value used, in the input's standard uncertainties [1]. */
  readonly shift: number;
  /** Strength of the evidence against the value used, in standard deviations [1]. */
  readonly evidence: number;
  /** χ² that stays when this input is freed [1]. */
  readonly misfit: number;
  /**
   * "likely" within 2 of its standard uncertainties, "possible" within 4, "far-fetched" beyond;
   * "not enough" where the measurements still disagree with it freed.
   */
  readonly verdict: "likely" | "possible" | "far-fetched" | "not enough";
  /** The reading that would tell. */
  readonly reading: string;
}

/** A gap, judged as a whole and explained input by input. */
export interface GapExplained {
  /** χ² of measured against predicted, all uncertainties counted, correlations included [1]. */
  readonly misfit: number;
  /** χ² that 95 of 100 good predictions stay below [1]. */
  readonly usualMisfit: number;
  /** Whether the gap is larger than the uncertainties explain. */
  readonly significant: boolean;
  /** Each input with an uncertainty, strongest evidence first. */
  readonly explanations: readonly Explanation[];
}

/** Evidence that differs by less than this counts as equal, and the smaller shift goes first. */
const SAME_EVIDENCE = 0.05;

/**
 * Is there a gap between measured and predicted, and which input would explain it?
 *
 * The measurements are compared with the prediction under every uncertainty at once, those that
 * several measurements share included. Then each input in turn is freed from its own uncertainty,
 * while all others keep theirs: the input that takes away most of the misfit has the strongest
 * evidence against it. Inputs that act alike cannot be told apart by these tests and come with
 * equal evidence, the least far-fetched first.
 *
 * Formula: r = m − p; V = diag(um²) + Σ sj sjᵀ uj²; χ² = rᵀV⁻¹r; for input j with V of all others
 * x ← x + sᵀV⁻¹r/(sᵀV⁻¹s) until it stands, evidence w = √(χ² − χ²j)
 *
 * Range: measured values independent of each other; all inputs to first order, the one that is
 * freed by Gauss–Newton steps.
 *
 * Source: least squares with prior values; w-test for one outlier: Baarda, A Testing Procedure for
 * Use in Geodetic Networks (1968), from memory.
 *
 * @param gap Measured values with uncertainties, inputs and the prediction [SI].
 * @returns χ² and its usual limit, and the explanations, strongest first.
 * @throws {InputError} If there is no measured value, a measured uncertainty is not above 0, no
 * input has an uncertainty, or the prediction returns another number of values.
 *
 * @example A short and a long span point at the core
 * ```ts
 * import { explainGap } from "@laminate/notebooks/comparison";
 * import { assertEquals } from "@std/assert";
 *
 * const { significant, explanations } = explainGap({
 *   measured: [{ value: 0.65, u: 0.01 }, { value: 1.65, u: 0.01 }],
 *   inputs: {
 *     "face modulus": { value: 2, u: 0.05, reading: "a test at a long span" },
 *     "core shear modulus": { value: 1, u: 0.1, reading: "a test at a short span" },
 *   },
 *   predict: ({ "face modulus": E, "core shear modulus": G }) =>
 *     [0.1 / E! + 0.4 / G!, 2.1 / E! + 0.4 / G!],
 * });
 * assertEquals(significant, true);
 * assertEquals(explanations[0]?.input, "core shear modulus");
 * ```
 */
export function explainGap(gap: Gap): GapExplained {
  check.object("gap", gap);
  const { measured, inputs, predict } = gap;
  checkGap(check, gap);
  const suspects = Object.entries(inputs).filter(([, { u }]) => u > 0);
  if (suspects.length === 0) check.refuse("inputs", inputs, "must have an uncertainty in one");

  const values = Object.fromEntries(
    Object.entries(inputs).map(([name, { value }]) => [name, value]),
  );
  const middle = slopesAt({ measured, predict }, values, suspects.map(([name]) => name));
  const residual = subtract(measured, middle.predicted);
  const full = covariance(
    measured,
    suspects.map(([name, { u }]) => scaled(middle.slopes[name]!, u)),
  );
  const misfit = check.result("misfit", dot(residual, solve(full, residual)));
  const limit = measured.length > 1 ? chiSquaredQuantile(0.95, measured.length - 1) : Infinity;
  const explanations = suspects.map(([input, suspect]): Explanation => {
    const others = covariance(
      measured,
      suspects.filter(([name]) => name !== input)
        .map(([name, { u }]) => scaled(middle.slopes[name]!, u)),
    );
    const freed = free({ gap: { measured, predict }, input, values, others });
    const shift = check.result(
      `shift of ${input}`,
      (freed.needed.value - suspect.value) / suspect.u,
    );
    const left = freed.known ? Math.min(misfit, freed.misfit) : misfit;
    return {
      ...{ input, needed: freed.needed, shift, misfit: left, reading: suspect.reading },
      ratio: suspect.value === 0
        ? 1
        : check.result(`ratio of ${input}`, freed.needed.value / suspect.value),
      evidence: Math.sqrt(misfit - left),
      verdict: left > limit || !freed.known ? "not enough" : byShift(shift),
    };
  });
  const usualMisfit = chiSquaredQuantile(0.95, measured.length);
  return {
    misfit,
    usualMisfit,
    significant: misfit > usualMisfit,
    explanations: explanations.toSorted((a, b) =>
      Math.abs(a.evidence - b.evidence) > SAME_EVIDENCE
        ? b.evidence - a.evidence
        : Math.abs(a.shift) - Math.abs(b.shift)
    ),
  };
}

type Values = Readonly<Record<string, number>>;
type Model = Pick<Gap, "measured" | "predict">;

/** Every predicted value, and its slopes by each of some inputs. */
function slopesAt(
  { measured, predict }: Model,
  values: Values,
  names: readonly string[],
): {
  readonly predicted: readonly number[];
  readonly slopes: Readonly<Record<string, readonly number[]>>;
} {
  const { results } = propagateTogether(
    (changed: Values) => {
      const predicted = predict({ ...values, ...changed });
      if (predicted.length !== measured.length) {
        check.refuse("prediction", predicted, `must return ${measured.length} values`);
      }
      return Object.fromEntries(predicted.map((value, i) => [String(i), value]));
    },
    Object.fromEntries(names.map((name) => [name, { value: values[name]!, u: 0 }])),
  );
  const inOrder = measured.map((_, i) => results[String(i)]!);
  return {
    predicted: inOrder.map(({ value }) => value),
    slopes: Object.fromEntries(
      names.map((name) => [name, inOrder.map(({ sensitivity }) => sensitivity[name]!)]),
    ),
  };
}

/** diag(um²) + Σ s sᵀ of the inputs' effects, row by row. */
function covariance(
  measured: readonly Uncertain[],
  effects: readonly (readonly number[])[],
): Float64Array {
  const n = measured.length;
  const matrix = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < n; k++) {
      matrix[i * n + k] = effects.reduce(
        (sum, effect) => sum + effect[i]! * effect[k]!,
        i === k ? measured[i]!.u ** 2 : 0,
      );
    }
  }
  return matrix;
}

interface Freed {
  readonly needed: Uncertain;
  readonly misfit: number;
  /** False where the measurements do not depend on the input. */
  readonly known: boolean;
}

/** Steps of Gauss and Newton: a compliance is as curved as 1/x, and three bring 1e-4. */
const STEPS = 6;

/** The value of one input that meets the measurements best, all others within their ranges. */
function free({ gap, input, values, others }: {
  readonly gap: Model;
  readonly input: string;
  readonly values: Values;
  readonly others: Float64Array;
}): Freed {
  let best: Freed = { needed: { value: values[input]!, u: 0 }, misfit: Infinity, known: false };
  let value = values[input]!;
  for (let step = 0; step <= STEPS; step++) {
    const at = tryAt(gap, { ...values, [input]: value }, input);
    // A value that the prediction refuses, such as a fibre fraction above 1, ends the search.
    if (at === undefined) break;
    const residual = subtract(gap.measured, at.predicted);
    const weighed = solve(others, at.slope);
    const power = dot(at.slope, weighed);
    if (!(power > 0)) break;
    const misfit = dot(residual, solve(others, residual));
    if (misfit <= best.misfit) {
      best = { needed: { value, u: 1 / Math.sqrt(power) }, misfit, known: true };
    }
    value += dot(residual, weighed) / power;
  }
  return best;
}

function tryAt(
  gap: Model,
  values: Values,
  input: string,
): { readonly predicted: readonly number[]; readonly slope: readonly number[] } | undefined {
  try {
    const { predicted, slopes } = slopesAt(gap, values, [input]);
    return { predicted, slope: slopes[input]! };
  } catch (error) {
    if (error instanceof InputError) return undefined;
    throw error;
  }
}

function subtract(measured: readonly Uncertain[], predicted: readonly number[]): readonly number[] {
  return measured.map(({ value }, i) =>
    check.finite(`measured value ${i + 1}`, value) - predicted[i]!
  );
}

function scaled(vector: readonly number[], factor: number): readonly number[] {
  return vector.map((entry) => entry * factor);
}

function dot(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

function byShift(shift: number): Explanation["verdict"] {
  if (Math.abs(shift) <= 2) return "likely";
  return Math.abs(shift) <= 4 ? "possible" : "far-fetched";
}
