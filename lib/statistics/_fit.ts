import type { Checks } from "../check/mod.ts";
import type { FitParameter, FitWeights, Readings } from "./line_fit.ts";
import { studentTQuantile } from "./student_t.ts";
import { normalQuantile } from "./normal.ts";

/** Share of intervals that hold the truth, for every interval a fit reports by itself. */
export const LEVEL = 0.95;

/** Checks a list of numbers of a length, and returns it. */
export function checkSeries(
  check: Checks,
  argument: string,
  values: ArrayLike<number>,
): ArrayLike<number> {
  const isList = Array.isArray(values) || (ArrayBuffer.isView(values) && "length" in values);
  if (!isList) check.refuse(argument, values, "must be a list of numbers");
  for (let i = 0; i < values.length; i++) {
    if (!Number.isFinite(values[i])) check.finite(`${argument} ${i}`, values[i]!);
  }
  return values;
}

/** Checks that x and y are lists of numbers of one length, and returns that length. */
export function checkReadings(check: Checks, readings: Readings): number {
  const { x, y } = check.object("readings", readings);
  checkSeries(check, "x", x);
  checkSeries(check, "y", y);
  if (x.length !== y.length) {
    check.refuse("number of y readings", y.length, `must be the number of x readings, ${x.length}`);
  }
  return x.length;
}

/** How much each reading counts, and whether its uncertainty is known. */
export interface Weighing {
  /** Weight of reading i. */
  readonly at: (i: number) => number;
  /** Whether weights are 1/u² of known uncertainties, so that the scatter is not asked. */
  readonly known: boolean;
}

/** Reads the weights from the options of a fit of n readings. */
export function weighing(check: Checks, options: FitWeights, count: number): Weighing {
  const { uY, weights } = check.object("options", options);
  if (uY !== undefined && weights !== undefined) {
    check.refuse("weights", weights, "must be left out where the uncertainty of y is given");
  }
  if (typeof uY === "number") {
    const weight = 1 / check.positive("uncertainty of y", uY) ** 2;
    return { at: () => weight, known: true };
  }
  const list = uY ?? weights;
  if (list === undefined) return { at: () => 1, known: false };
  const name = uY === undefined ? "weight" : "uncertainty of y";
  checkSeries(check, name, list);
  if (list.length !== count) {
    check.refuse(
      `number of entries of the ${name}`,
      list.length,
      `must be ${count}, one a reading`,
    );
  }
  for (let i = 0; i < count; i++) check.positive(`${name} ${i}`, list[i]!);
  return {
    at: uY === undefined ? (i): number => list[i]! : (i): number => 1 / list[i]! ** 2,
    known: uY !== undefined,
  };
}

/** A fitted number with its interval; without dof its u counts as known. */
export function fitParameter(value: number, u: number, dof: number | undefined): FitParameter {
  const factor = dof === undefined
    ? normalQuantile(0.5 + LEVEL / 2)
    : studentTQuantile(0.5 + LEVEL / 2, dof);
  const U = factor * u;
  return { value, u, ...(dof === undefined ? {} : { dof }), low: value - U, high: value + U };
}

/** Share of the sum of squares that a fit explains; 0 where there is none to explain. */
export function explained(missed: number, total: number): number {
  return total > 0 ? 1 - missed / total : 0;
}
