import { checksFor } from "../check/mod.ts";
import { checkReadings, checkSeries, fitParameter } from "./_fit.ts";
import { fitLine, type FitParameter, type Readings } from "./line_fit.ts";

const check = checksFor("fit a line to readings uncertain in x and y");

/** Standard uncertainties of both readings. */
export interface BothUncertain {
  /** Standard uncertainty of x, one for all or one each [unit of x]. */
  readonly uX: number | ArrayLike<number>;
  /** Standard uncertainty of y, one for all or one each [unit of y]. */
  readonly uY: number | ArrayLike<number>;
}

/** A line through readings that are uncertain in x and y. */
export interface LineBoth {
  /** Slope [unit of y per unit of x]. */
  readonly slope: FitParameter;
  /** y at x = 0 [unit of y]. */
  readonly intercept: FitParameter;
  /** Correlation of slope and intercept [1]. */
  readonly correlation: number;
  /** Weighted sum of squared distances; about n − 2 if line and uncertainties are right [1]. */
  readonly chiSquared: number;
  /** Readings less two [1]. */
  readonly dof: number;
}

/**
 * Straight line where x is uncertain as well as y: a load set by weights that are not exact.
 *
 * Formula: min Σ [(x − ξ)²/u(x)² + (y − a − b ξ)²/u(y)²] over a, b and the true ξ
 *
 * Range: two readings or more with known, independent uncertainties above 0.
 *
 * Source: ISO/TS 28037:2010, clause 7; York and others, American Journal of Physics 72 (2004), from
 * memory.
 *
 * @param readings x and y, of one length.
 * @param uncertainties Standard uncertainties of x and y.
 * @returns Slope and intercept with u, their correlation, and chi-squared.
 * @throws {InputError} If there are fewer than two readings, all at one x, an uncertainty is not
 * above 0, or the line does not come to rest.
 *
 * @example
 * ```ts
 * import { fitLineBoth } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const fit = fitLineBoth({ x: [0, 1, 2], y: [1, 3, 5] }, { uX: 0.1, uY: 0.2 });
 * assertAlmostEquals(fit.slope.value, 2, 1e-12);
 * assertAlmostEquals(fit.slope.u, Math.hypot(0.2, 2 * 0.1) / Math.SQRT2, 1e-12);
 * ```
 */
export function fitLineBoth(readings: Readings, uncertainties: BothUncertain): LineBoth {
  const count = checkReadings(check, readings);
  if (count < 2) check.refuse("number of readings", count, "must be 2 or more");
  const { uX, uY } = check.object("uncertainties", uncertainties);
  const variances = {
    x: squares("uncertainty of x", uX, count),
    y: squares("uncertainty of y", uY, count),
  };
  let slope = fitLine(readings, { uY: Array.from(variances.y, Math.sqrt) }).slope.value;
  for (let round = 0; round < 500; round++) {
    const state = york(readings, variances, slope);
    const moved = Math.abs(state.slope - slope);
    slope = state.slope;
    if (moved <= 4e-16 * Math.abs(slope)) break;
    if (round === 499 && moved > 1e-9 * Math.abs(slope)) {
      check.refuse("slope", slope, "must come to rest: it still moves after 500 rounds");
    }
  }
  return finished(readings, york(readings, variances, slope));
}

function squares(
  argument: string,
  u: number | ArrayLike<number>,
  count: number,
): readonly number[] {
  const list = typeof u === "number" ? new Array<number>(count).fill(u) : u;
  checkSeries(check, argument, list);
  if (list.length !== count) {
    check.refuse(`number of entries of ${argument}`, list.length, `must be ${count}`);
  }
  return Array.from(list, (value, i) => check.positive(`${argument} ${i}`, value) ** 2);
}

/** One round of York's equations. */
interface York {
  readonly slope: number;
  readonly weights: readonly number[];
  /** Weighted centre of the readings. */
  readonly x: number;
  readonly y: number;
  /** Places of the true x along the line, from the centre. */
  readonly along: readonly number[];
}

function york(
  { x, y }: Readings,
  variances: { readonly x: readonly number[]; readonly y: readonly number[] },
  slope: number,
): York {
  const weights = variances.x.map((vx, i) => 1 / (variances.y[i]! + slope * slope * vx));
  const total = weights.reduce((sum, w) => sum + w, 0);
  const centre = (list: ArrayLike<number>): number =>
    weights.reduce((sum, w, i) => sum + w * list[i]!, 0) / total;
  const [x0, y0] = [centre(x), centre(y)];
  const along = weights.map((w, i) =>
    w * (variances.y[i]! * (x[i]! - x0) + slope * variances.x[i]! * (y[i]! - y0))
  );
  let [top, bottom] = [0, 0];
  weights.forEach((w, i) => {
    top += w * along[i]! * (y[i]! - y0);
    bottom += w * along[i]! * (x[i]! - x0);
  });
  return { slope: top / bottom, weights, x: x0, y: y0, along };
}

function finished({ x, y }: Readings, { slope, weights, x: x0, y: y0, along }: York): LineBoth {
  const total = weights.reduce((sum, w) => sum + w, 0);
  const shift = weights.reduce((sum, w, i) => sum + w * along[i]!, 0) / total;
  const spread = weights.reduce((sum, w, i) => sum + w * (along[i]! - shift) ** 2, 0);
  const uSlope = check.result("standard error of the slope", 1 / Math.sqrt(spread));
  const reach = x0 + shift;
  const uIntercept = Math.hypot(1 / Math.sqrt(total), reach * uSlope);
  const intercept = y0 - slope * x0;
  const chiSquared = weights.reduce(
    (sum, w, i) => sum + w * (y[i]! - intercept - slope * x[i]!) ** 2,
    0,
  );
  return {
    slope: fitParameter(slope, uSlope, undefined),
    intercept: fitParameter(intercept, uIntercept, undefined),
    correlation: (-reach * uSlope) / uIntercept,
    chiSquared,
    dof: weights.length - 2,
  };
}
