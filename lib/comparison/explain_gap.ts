import { checksFor, InputError } from "../check/mod.ts";

const check = checksFor("explain the gap");

/** An input of the prediction that could be wrong. */
export interface SuspectInput {
  /** The value the prediction used [SI]. */
  readonly value: number;
  /** Its standard uncertainty; 0 takes it out of the list [SI]. */
  readonly u: number;
  /** The reading that would tell, such as "measure the core with callipers". */
  readonly reading: string;
}

/** What was measured, in the order in which the prediction returns its values. */
export interface MeasuredValue {
  /** The value, above 0 [SI]. */
  readonly value: number;
  /** Its standard uncertainty, above 0 [SI]. */
  readonly u: number;
}

/** A gap between measurements and their prediction. */
export interface Gap {
  /** The measured values. */
  readonly measured: readonly MeasuredValue[];
  /** The inputs by name. */
  readonly inputs: Readonly<Record<string, SuspectInput>>;
  /** The prediction of every measured value from the inputs, as a pure function. */
  readonly predict: (inputs: Readonly<Record<string, number>>) => readonly number[];
}

/** How well one input, alone in error, would explain the gap. */
export interface Explanation {
  /** Name of the input. */
  readonly input: string;
  /** The value it would have to have [SI]. */
  readonly needed: number;
  /** That value over the value used [1]. */
  readonly ratio: number;
  /** How far that is from the value used, in standard uncertainties [1]. */
  readonly shift: number;
  /** Misfit that stays: Σ ((measured − predicted)/u)² [1]. */
  readonly misfit: number;
  /** Misfit and squared shift together: the less, the better the explanation [1]. */
  readonly cost: number;
  /** "likely" within 2 standard uncertainties, "possible" within 4, else "far-fetched"; or
   * "not enough" where the measurements still disagree with it. */
  readonly verdict: "likely" | "possible" | "far-fetched" | "not enough";
  /** The reading that would tell. */
  readonly reading: string;
}

/** The explanations, and the gap before any of them. */
export interface GapExplained {
  /** Misfit of the prediction as it stands [1]. */
  readonly misfit: number;
  /** Each input with an uncertainty, best explanation first. */
  readonly explanations: readonly Explanation[];
}

/** Largest shift that is looked at, in standard uncertainties. */
const FARTHEST = 8;
/** Steps of the search that brackets the best shift. */
const STEPS = 64;
/** Of the golden section; 48 steps bring a bracket of 1/4 to 1e-11. */
const SHRINK = (Math.sqrt(5) - 1) / 2;

/**
 * Which input, if it alone were wrong, would bring prediction and measurement together?
 *
 * Every input with an uncertainty is moved by itself, against its own uncertainty, until the
 * measurements are met best. What the list cannot see is an error in two inputs at once: then no
 * single one comes near.
 *
 * Formula: minimise over δ: Σ ((m − p(x + δ u))/u_m)² + δ²
 *
 * Range: δ up to 8 standard uncertainties either way, the input staying above 0.
 *
 * Source: maximum a posteriori estimate of one parameter with a normal prior; Gelman et al.,
 * Bayesian Data Analysis, 3rd ed. (2013), chapter 2, from memory.
 *
 * @param gap Measured values with uncertainties, inputs and the prediction [SI].
 * @returns The misfit and the explanations, the best first.
 * @throws {InputError} If there is no measured value, a measured uncertainty is not above 0, no
 * input has an uncertainty, or the prediction returns another number of values.
 *
 * @example A short and a long span both point at the core
 * ```ts
 * import { explainGap } from "@laminate/notebooks/comparison";
 * import { assertEquals } from "@std/assert";
 *
 * const { explanations } = explainGap({
 *   measured: [{ value: 0.9, u: 0.02 }, { value: 1.9, u: 0.02 }],
 *   inputs: {
 *     "face modulus": { value: 2, u: 0.1, reading: "a test at a long span" },
 *     "core shear modulus": { value: 1, u: 0.3, reading: "a test at a short span" },
 *   },
 *   predict: ({ "face modulus": E, "core shear modulus": G }) =>
 *     [0.1 / E! + 0.4 / G!, 2 / E! + 0.4 / G!],
 * });
 * assertEquals(explanations[0]?.input, "core shear modulus");
 * ```
 */
export function explainGap({ measured, inputs, predict }: Gap): GapExplained {
  check.list("measured", measured);
  check.object("inputs", inputs);
  measured.forEach(({ value, u }, i) => {
    check.positive(`measured value ${i + 1}`, value);
    check.positive(`uncertainty of measured value ${i + 1}`, u);
  });
  for (const [name, { value, u }] of Object.entries(inputs)) {
    check.finite(name, value);
    check.nonNegative(`uncertainty of ${name}`, u);
  }
  const suspects = Object.entries(inputs).filter(([, { u }]) => u > 0);
  if (suspects.length === 0) {
    check.refuse("inputs", inputs, "must have an uncertainty in one input");
  }
  const values = Object.fromEntries(
    Object.entries(inputs).map(([name, { value }]) => [name, value]),
  );
  const misfitOf = (changed: Readonly<Record<string, number>>): number => {
    const predicted = predict({ ...values, ...changed });
    if (predicted.length !== measured.length) {
      check.refuse("prediction", predicted, `must return ${measured.length} values`);
    }
    return measured.reduce((sum, { value, u }, i) => sum + ((value - predicted[i]!) / u) ** 2, 0);
  };

  const explanations = suspects
    .map(([name, suspect]) => explain(name, suspect, misfitOf))
    .map((found): Explanation => ({ ...found, verdict: judge(found, measured.length) }))
    .toSorted((a, b) => a.cost - b.cost);
  return { misfit: check.result("misfit", misfitOf({})), explanations };
}

function explain(
  input: string,
  { value, u, reading }: SuspectInput,
  misfitOf: (changed: Readonly<Record<string, number>>) => number,
): Omit<Explanation, "verdict"> {
  // An input that is positive by nature stays so: below a twentieth it means nothing.
  const lowest = value > 0 ? Math.max(-FARTHEST, -0.95 * value / u) : -FARTHEST;
  const cost = (shift: number): number => {
    try {
      return misfitOf({ [input]: value + shift * u }) + shift * shift;
    } catch (error) {
      // A shift that the prediction refuses, such as a fibre fraction above 1, explains nothing.
      if (error instanceof InputError && shift !== 0) return Number.MAX_VALUE;
      throw error;
    }
  };
  const shift = minimise(cost, lowest, FARTHEST);
  const needed = value + shift * u;
  const misfit = check.result("misfit", misfitOf({ [input]: needed }));
  return {
    input,
    needed,
    ratio: value === 0 ? 1 : needed / value,
    shift,
    misfit,
    cost: misfit + shift * shift,
    reading,
  };
}

/** The lowest point of a function with one or more dips: a scan, then the golden section. */
function minimise(f: (x: number) => number, low: number, high: number): number {
  const step = (high - low) / STEPS;
  let best = 0;
  for (let i = 0; i <= STEPS; i++) {
    if (f(low + i * step) < f(low + best * step)) best = i;
  }
  let [a, b] = [Math.max(low, low + (best - 1) * step), Math.min(high, low + (best + 1) * step)];
  for (let i = 0; i < 48; i++) {
    const [c, d] = [b - SHRINK * (b - a), a + SHRINK * (b - a)];
    if (f(c) < f(d)) b = d;
    else a = c;
  }
  return (a + b) / 2;
}

/** Misfit per measured value above which the measurements still disagree (some 3 u each). */
const MISFIT_LIMIT = 9;

function judge(
  { misfit, shift }: Omit<Explanation, "verdict">,
  count: number,
): Explanation["verdict"] {
  if (misfit > MISFIT_LIMIT * count) return "not enough";
  if (Math.abs(shift) <= 2) return "likely";
  return Math.abs(shift) <= 4 ? "possible" : "far-fetched";
}
