import { checksFor } from "../check/mod.ts";
import type { LineFit } from "./line_fit.ts";
import { type Coverage, coverage, type Uncertain, type UncertainInput } from "./uncertain.ts";
import { checkUncertain } from "./_uncertain.ts";

const check = checksFor("read from the straight line");

/** A value read from a fitted line, with its interval. */
export interface Prediction extends UncertainInput, Coverage {}

/** What may be said of a prediction. */
export interface PredictionOptions {
  /** Share of such intervals that hold the truth; 0.95 unless said [1]. */
  readonly level?: number;
  /** Standard uncertainty of one new reading; the fit's scatter unless said [unit of y]. */
  readonly u?: number;
}

/**
 * Where the line itself stands at x, and how well that is known: the band of the line.
 *
 * Formula: y = a + b x; u² = u(a)² + x² u(b)² + 2 x r u(a) u(b)
 *
 * Range: inside the readings' range of x; beyond, the line is only supposed to go on.
 *
 * Source: JCGM 100:2008 (GUM), H.3.4.
 *
 * @param fit The line, from `fitLine`.
 * @param x Where to read [unit of x].
 * @param options Level of the interval.
 * @returns y of the line with u and interval [unit of y].
 * @throws {InputError} If x is not a finite number or the level not inside 0 to 1.
 *
 * @example
 * ```ts
 * import { fitLine, lineAt } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const fit = fitLine({ x: [0, 1, 2, 3], y: [1, 3, 5, 8] });
 * const middle = lineAt(fit, 1.5);
 * assertAlmostEquals(middle.value, 4.25, 1e-14);
 * assertAlmostEquals(middle.u, fit.residualSd / 2, 1e-14);
 * ```
 */
export function lineAt(fit: LineFit, x: number, options: PredictionOptions = {}): Prediction {
  check.object("options", options);
  const { slope, intercept, correlation } = checkFit(fit);
  check.finite("x", x);
  const value = check.result("y of the line", intercept.value + slope.value * x);
  // The sum of squares about the point where slope and height of the line are independent.
  const along = x * slope.u + correlation * intercept.u;
  const across = intercept.u * Math.sqrt(Math.max(0, 1 - correlation * correlation));
  return predicted({ value, u: Math.hypot(along, across), dof: slope.dof }, options.level);
}

/**
 * Where one more reading at x would fall: the band of the line widened by a reading's own scatter.
 *
 * Formula: y = a + b x; u² = u(line)² + u(reading)²
 *
 * Range: as `lineAt`. Where u(y) was given to the fit, or its weights differ, say the new reading's
 * own u.
 *
 * Source: JCGM 100:2008 (GUM), H.3.4, with the reading's own variance added.
 *
 * @param fit The line, from `fitLine`.
 * @param x Where to read [unit of x].
 * @param options Level of the interval, and u of the new reading.
 * @returns y of the reading with u and interval [unit of y].
 * @throws {InputError} If x is not a finite number, or u is missing where u(y) was given to the fit.
 *
 * @example
 * ```ts
 * import { fitLine, newReadingAt } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const fit = fitLine({ x: [0, 1, 2, 3], y: [1, 3, 5, 8] });
 * assertAlmostEquals(newReadingAt(fit, 1.5).u, fit.residualSd * Math.sqrt(1.25), 1e-14);
 * ```
 */
export function newReadingAt(
  fit: LineFit,
  x: number,
  options: PredictionOptions = {},
): Prediction {
  const line = lineAt(fit, x, options);
  const u = Math.hypot(line.u, readingU(fit, options.u));
  return predicted({ value: line.value, u, dof: fit.slope.dof }, options.level);
}

/** An x read back from the line, with what a reader should know. */
export interface InverseReading extends UncertainInput {
  /** What a reader should know; empty where there is nothing to say. */
  readonly notes: readonly string[];
}

/**
 * The x at which a reading of y belongs: the load behind a deflection.
 *
 * Formula: x = (y − a)/b; u² = [u(y)² + u(a)² + x² u(b)² + 2 x r u(a) u(b)]/b²
 *
 * Range: slope well away from zero: a note says where its interval is not.
 *
 * Source: ISO/TS 28037:2010, clause 11 (inverse evaluation).
 *
 * @param fit The line, from `fitLine`.
 * @param reading y with its standard uncertainty [unit of y].
 * @returns x with u, and notes [unit of x].
 * @throws {InputError} If the reading is no value with uncertainty or the slope is zero.
 *
 * @example
 * ```ts
 * import { fitLine, inverseReading } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const fit = fitLine({ x: [0, 1, 2, 3], y: [1, 3, 5, 8] });
 * assertAlmostEquals(inverseReading(fit, { value: 4.25, u: 0.1 }).value, 1.5, 1e-14);
 * ```
 */
export function inverseReading(fit: LineFit, reading: Uncertain): InverseReading {
  const { slope, intercept, correlation } = checkFit(fit);
  checkUncertain(check, "reading", reading);
  if (slope.value === 0) check.refuse("slope", 0, "must not be 0: every x gives the same y");
  const value = check.result("x", (reading.value - intercept.value) / slope.value);
  const along = value * slope.u + correlation * intercept.u;
  const across = intercept.u * Math.sqrt(Math.max(0, 1 - correlation * correlation));
  const u = Math.hypot(reading.u, along, across) / Math.abs(slope.value);
  const flat = slope.low <= 0 && slope.high >= 0;
  return {
    value,
    u: check.result("uncertainty of x", u),
    ...(slope.dof === undefined ? {} : { dof: slope.dof }),
    notes: flat
      ? ["The slope cannot be told from 0: no x can be read back from this line."]
      : Math.abs(slope.u / slope.value) > 0.1
      ? ["The slope is known to no better than a tenth: the interval of x is lopsided, u is rough."]
      : [],
  };
}

function checkFit(fit: LineFit): LineFit {
  check.object("fit", fit);
  checkUncertain(check, "slope of the fit", fit.slope);
  checkUncertain(check, "intercept of the fit", fit.intercept);
  check.within("correlation of the fit", fit.correlation, { min: -1, max: 1 });
  return fit;
}

/** Uncertainty of one new reading: as said, or the fit's scatter where that is in units of y. */
function readingU(fit: LineFit, u: number | undefined): number {
  if (u !== undefined) return check.nonNegative("uncertainty of the new reading", u);
  return fit.knownU
    ? check.refuse("uncertainty of the new reading", u, "must be given, as it was to the fit")
    : check.nonNegative("residual sd of the fit", fit.residualSd);
}

function predicted(
  estimate: { readonly value: number; readonly u: number; readonly dof: number | undefined },
  level: number | undefined,
): Prediction {
  const { value, u, dof } = estimate;
  const uncertain = { value, u, ...(dof === undefined ? {} : { dof }) };
  return check.results({ ...uncertain, ...coverage(uncertain, level) });
}
