import { checksFor } from "../check/mod.ts";
import { checkReadings, explained, fitParameter, type Weighing, weighing } from "./_fit.ts";
import type { UncertainInput } from "./uncertain.ts";

const check = checksFor("fit a straight line");

/** Readings of y, each at an x. */
export interface Readings {
  /** What was set, taken as exact [unit of x]. */
  readonly x: ArrayLike<number>;
  /** What was read, with scatter [unit of y]. */
  readonly y: ArrayLike<number>;
}

/** How much each reading counts; by default all count alike and scatter is taken from the fit. */
export interface FitWeights {
  /**
   * Known standard uncertainty of y, one for all or one each: then the fit's own scatter does not
   * change the uncertainties [unit of y].
   */
  readonly uY?: number | ArrayLike<number>;
  /** Relative weights, 1/variance up to a factor, which is taken from the scatter [1]. */
  readonly weights?: ArrayLike<number>;
}

/** What may be said of a straight line. */
export interface LineOptions extends FitWeights {
  /** Whether the line has to go through x = 0, y = 0; it need not unless said. */
  readonly throughOrigin?: boolean;
}

/** A fitted number with its standard error and 95 % interval. */
export interface FitParameter extends UncertainInput {
  /** Lower end of the 95 % interval [unit of the value]. */
  readonly low: number;
  /** Upper end of the 95 % interval [unit of the value]. */
  readonly high: number;
}

/** A straight line through readings. */
export interface LineFit {
  /** Slope [unit of y per unit of x]. */
  readonly slope: FitParameter;
  /** y at x = 0; exactly 0 for a line through the origin [unit of y]. */
  readonly intercept: FitParameter;
  /** Correlation of slope and intercept; 0 for a line through the origin [1]. */
  readonly correlation: number;
  /** √(χ²/ν): a reading's scatter about the line [unit of y; 1 where u(y) is known]. */
  readonly residualSd: number;
  /** Readings less fitted numbers [1]. */
  readonly dof: number;
  /** Readings less line, in the order given [unit of y]. */
  readonly residuals: readonly number[];
  /** Share of the sum of squares explained: about the mean, or about 0 without intercept [1]. */
  readonly rSquared: number;
  /** Sum of the squared residuals, weighted [unit of y squared; 1 where u(y) is known]. */
  readonly chiSquared: number;
  /** Number of readings [1]. */
  readonly count: number;
  /** Whether the line was made to go through the origin. */
  readonly throughOrigin: boolean;
  /** Whether the uncertainty of y was given. */
  readonly knownU: boolean;
  /** What a reader should know; empty where there is nothing to say. */
  readonly notes: readonly string[];
}

/**
 * Straight line of y on x by least squares, with or without intercept, weighted or not.
 *
 * Formula: b = Σw(x − x̄)(y − ȳ)/Σw(x − x̄)², a = ȳ − b x̄; b = Σwxy/Σwx² through the origin;
 * s² = Σw r²/ν; 95 % = ± t(0.975, ν) u
 *
 * Range: errors in y only. Three readings or more (two through the origin) unless u(y) is known.
 * With known u(y) the uncertainties are not rescaled by χ²/ν; with relative weights they are.
 *
 * Source: JCGM 100:2008 (GUM), H.3; ISO/TS 28037:2010, clause 6; for r² without intercept, NIST
 * StRD, NoInt1.
 *
 * @param readings x and y, of one length.
 * @param options Through the origin; known u(y) or relative weights.
 * @returns Slope and intercept with standard errors and 95 % intervals, residuals, r² and notes.
 * @throws {InputError} If the lists differ in length or hold what is no number, if there are too few
 * readings, all at one x, or a weight is not above 0.
 *
 * @example
 * ```ts
 * import { fitLine } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const fit = fitLine({ x: [0, 1, 2, 3], y: [1, 3, 5, 8] });
 * assertAlmostEquals(fit.slope.value, 2.3, 1e-14);
 * assertAlmostEquals(fit.intercept.value, 0.8, 1e-14);
 * assertAlmostEquals(fit.slope.u, Math.sqrt(0.03), 1e-14);
 * ```
 */
export function fitLine(readings: Readings, options: LineOptions = {}): LineFit {
  const count = checkReadings(check, readings);
  const weights = weighing(check, options, count);
  const throughOrigin = options.throughOrigin ?? false;
  const unknowns = throughOrigin ? 1 : 2;
  const dof = count - unknowns;
  if (dof < (weights.known ? 0 : 1)) {
    check.refuse(
      "number of readings",
      count,
      `must be ${weights.known ? unknowns : unknowns + 1} or more, to tell the scatter`,
    );
  }
  const sums = sumUp(readings, weights, throughOrigin);
  if (!(sums.xx > 0)) {
    check.refuse("spread of x", sums.xx, "must be above 0: all readings stand at one x");
  }
  const slope = check.result("slope", sums.xy / sums.xx);
  const residuals = residualsOf(readings, sums, slope);
  let chiSquared = 0;
  for (let i = 0; i < count; i++) chiSquared += weights.at(i) * residuals[i]! ** 2;
  return {
    ...parametersOf(sums, slope, { variance: weights.known ? 1 : chiSquared / dof, weights, dof }),
    residualSd: dof > 0 ? check.result("residual sd", Math.sqrt(chiSquared / dof)) : 0,
    ...{ dof, residuals, chiSquared, count, throughOrigin },
    rSquared: explained(chiSquared, sums.yy),
    knownU: weights.known,
    notes: sums.yy > 0 ? [] : ["All y are equal: there is nothing for a slope to explain."],
  };
}

/** Weighted sums about the centre: the means, or 0 for a line through the origin. */
interface Sums {
  readonly throughOrigin: boolean;
  readonly weight: number;
  /** Centre. */
  readonly x: number;
  readonly y: number;
  /** Sums of products about the centre. */
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

/** Two passes: means first, so that no large sums cancel. */
function sumUp({ x, y }: Readings, { at }: Weighing, throughOrigin: boolean): Sums {
  const count = x.length;
  let weight = 0;
  let [middleX, middleY] = [0, 0];
  for (let i = 0; i < count; i++) weight += at(i);
  // The second round takes out what rounding left of the first.
  for (let round = 0; round < 2 && !throughOrigin; round++) {
    let [sumX, sumY] = [0, 0];
    for (let i = 0; i < count; i++) {
      sumX += at(i) * (x[i]! - middleX);
      sumY += at(i) * (y[i]! - middleY);
    }
    middleX += sumX / weight;
    middleY += sumY / weight;
  }
  let [xx, xy, yy] = [0, 0, 0];
  for (let i = 0; i < count; i++) {
    const dx = x[i]! - middleX;
    const dy = y[i]! - middleY;
    xx += at(i) * dx * dx;
    xy += at(i) * dx * dy;
    yy += at(i) * dy * dy;
  }
  return { throughOrigin, weight, x: middleX, y: middleY, xx, xy, yy };
}

function residualsOf({ x, y }: Readings, centre: Sums, slope: number): number[] {
  const residuals = new Array<number>(x.length);
  for (let i = 0; i < x.length; i++) {
    residuals[i] = y[i]! - centre.y - slope * (x[i]! - centre.x);
  }
  return residuals;
}

/** Slope and intercept with their errors and how these go together. */
function parametersOf(
  sums: Sums,
  slope: number,
  given: { readonly variance: number; readonly weights: Weighing; readonly dof: number },
): Pick<LineFit, "slope" | "intercept" | "correlation"> {
  const dof = given.weights.known ? undefined : given.dof;
  const uSlope = check.result("standard error of the slope", Math.sqrt(given.variance / sums.xx));
  if (sums.throughOrigin) {
    const intercept = { value: 0, u: 0, low: 0, high: 0 };
    return { slope: fitParameter(slope, uSlope, dof), intercept, correlation: 0 };
  }
  const uIntercept = Math.hypot(Math.sqrt(given.variance / sums.weight), sums.x * uSlope);
  const intercept = check.result("intercept", sums.y - slope * sums.x);
  return {
    slope: fitParameter(slope, uSlope, dof),
    intercept: fitParameter(intercept, check.result("standard error", uIntercept), dof),
    correlation: uIntercept > 0 ? (-sums.x * uSlope) / uIntercept : 0,
  };
}
