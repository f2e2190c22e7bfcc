import { checksFor } from "../check/mod.ts";
import { leastSquares } from "../numeric/mod.ts";
import { checkReadings, checkSeries, explained, fitParameter, weighing } from "./_fit.ts";
import type { FitParameter, FitWeights, Readings } from "./line_fit.ts";

const check = checksFor("fit the regression");

/** What may be said of a regression. */
export interface RegressionOptions extends FitWeights {
  /** Whether a constant term is fitted; it is unless said. */
  readonly intercept?: boolean;
}

/** A fit of several coefficients. */
export interface Regression {
  /** Each coefficient with standard error and 95 % interval; the constant term first. */
  readonly coefficients: readonly FitParameter[];
  /** Covariance of the coefficients, row after row [product of their units]. */
  readonly covariance: Float64Array;
  /** √(χ²/ν): a reading's scatter about the fit [unit of y; 1 where u(y) is known]. */
  readonly residualSd: number;
  /** Readings less coefficients [1]. */
  readonly dof: number;
  /** Readings less fit, in the order given [unit of y]. */
  readonly residuals: readonly number[];
  /** Share of the sum of squares explained: about the mean, or about 0 without constant [1]. */
  readonly rSquared: number;
  /** Sum of the squared residuals, weighted [unit of y squared; 1 where u(y) is known]. */
  readonly chiSquared: number;
}

/**
 * Multiple linear regression: y on any number of columns.
 *
 * Formula: min Σ w (y − b0 − Σ bj xj)², by Householder's QR
 *
 * Range: more readings than coefficients (as many where u(y) is known), columns not dependent.
 *
 * Source: as `leastSquares` of numeric; checked on NIST StRD, Longley.
 *
 * @param columns The xj, each as long as y.
 * @param y The readings [unit of y].
 * @param options Constant term or not; known u(y) or relative weights.
 * @returns Coefficients with standard errors and 95 % intervals, their covariance, residuals, r².
 * @throws {InputError} If lengths differ, an entry is not a finite number, readings are too few, or
 * a column repeats what others say.
 *
 * @example
 * ```ts
 * import { regress } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * // y = 1 + 2 x1 − x2, with one reading 0.1 off
 * const fit = regress([[0, 1, 2, 3, 4], [1, 0, 2, 0, 1]], [0, 3, 3, 7.1, 8]);
 * assertAlmostEquals(fit.coefficients[1]!.value, 2, 0.05);
 * ```
 */
export function regress(
  columns: readonly ArrayLike<number>[],
  y: ArrayLike<number>,
  options: RegressionOptions = {},
): Regression {
  check.list("columns", columns, 0);
  check.object("options", options);
  checkSeries(check, "y", y);
  columns.forEach((column, j) => {
    checkSeries(check, `column ${j}`, column);
    if (column.length !== y.length) {
      check.refuse(`length of column ${j}`, column.length, `must be ${y.length}, as y is`);
    }
  });
  const constant = options.intercept ?? true;
  const terms = constant ? [new Float64Array(y.length).fill(1), ...columns] : columns;
  check.list("columns with the constant term", terms, 1);
  return fitTerms(terms, y, { ...options, intercept: constant });
}

/**
 * Polynomial of any degree through readings.
 *
 * Formula: y = b0 + b1 x + … + bn xⁿ, least squares by Householder's QR
 *
 * Range: more readings than coefficients; high degrees lose digits (a tenth degree over a range of
 * x away from 0 keeps 7).
 *
 * Source: as `leastSquares` of numeric; checked on NIST StRD, Pontius, Wampler and Filip.
 *
 * @param readings x and y, of one length.
 * @param degree n, a whole number, 0 or above.
 * @param options Constant term or not; known u(y) or relative weights.
 * @returns Coefficients from b0 up (b1 up without constant), as from `regress`.
 * @throws {InputError} As `regress`, or if the degree is not a whole number.
 *
 * @example
 * ```ts
 * import { fitPolynomial } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const fit = fitPolynomial({ x: [0, 1, 2, 3], y: [1, 2, 5, 10] }, 2);
 * assertAlmostEquals(fit.coefficients[2]!.value, 1, 1e-13);
 * ```
 */
export function fitPolynomial(
  readings: Readings,
  degree: number,
  options: RegressionOptions = {},
): Regression {
  const count = checkReadings(check, readings);
  check.count("degree", degree, 0);
  check.within("degree", degree, { min: 0, max: count });
  const columns = Array.from(
    { length: degree },
    (_, k) => Float64Array.from({ length: count }, (_, i) => readings.x[i]! ** (k + 1)),
  );
  return regress(columns, readings.y, options);
}

function fitTerms(
  terms: readonly ArrayLike<number>[],
  y: ArrayLike<number>,
  options: RegressionOptions,
): Regression {
  const count = y.length;
  const weights = weighing(check, options, count);
  const dof = count - terms.length;
  const fewest = terms.length + (weights.known ? 0 : 1);
  if (count < fewest) {
    check.refuse("number of readings", count, `must be ${fewest} or more, to tell the scatter`);
  }
  const matrix = new Float64Array(count * terms.length);
  const target = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const root = Math.sqrt(weights.at(i));
    target[i] = root * y[i]!;
    terms.forEach((term, j) => matrix[i * terms.length + j] = root * term[i]!);
  }
  const { solution, residuals, cofactors } = leastSquares(matrix, target);
  const chiSquared = residuals.reduce((sum, r) => sum + r * r, 0);
  const variance = weights.known ? 1 : chiSquared / dof;
  const covariance = cofactors.map((value) => value * variance);
  return {
    coefficients: Array.from(solution, (value, j) =>
      fitParameter(
        value,
        check.result("standard error", Math.sqrt(covariance[j * terms.length + j]!)),
        weights.known ? undefined : dof,
      )),
    covariance,
    residualSd: dof > 0 ? Math.sqrt(chiSquared / dof) : 0,
    dof,
    residuals: Array.from(residuals, (r, i) => r / Math.sqrt(weights.at(i))),
    rSquared: explained(chiSquared, totalSquares(y, weights.at, options.intercept ?? true)),
    chiSquared,
  };
}

/** Weighted sum of squares of y about its mean, or about 0. */
function totalSquares(
  y: ArrayLike<number>,
  weight: (i: number) => number,
  aboutMean: boolean,
): number {
  let [sum, weights, mean] = [0, 0, 0];
  if (aboutMean) {
    for (let i = 0; i < y.length; i++) {
      sum += weight(i) * y[i]!;
      weights += weight(i);
    }
    mean = sum / weights;
  }
  let squares = 0;
  for (let i = 0; i < y.length; i++) squares += weight(i) * (y[i]! - mean) ** 2;
  return squares;
}
