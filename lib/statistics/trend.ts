import { checksFor } from "../check/mod.ts";
import { checkSeries } from "./_fit.ts";
import { fitLine, type FitParameter } from "./line_fit.ts";
import { studentTProbability } from "./student_t.ts";
import { summarise } from "./summary.ts";

const check = checksFor("tell the trend");

/** Whether values drift. */
export interface Trend {
  /** Change per step of the order, or per unit of the places given. */
  readonly slope: FitParameter;
  /** Whether values rise, fall, or neither can be told. */
  readonly verdict: "rising" | "falling" | "cannot be told";
  /** Probability of so steep a slope, up or down, without a drift [1]. */
  readonly chance: number;
  /** What a reader should know; empty where there is nothing to say. */
  readonly notes: readonly string[];
}

/**
 * Whether a row of values drifts: is the crew getting better?
 *
 * Formula: slope of a straight line over the order; told where its 95 % interval leaves out 0
 *
 * Range: four values or more; a drift that bends or turns is not seen. Where each value hangs on the
 * one before, the chance is too small: a note says so.
 *
 * Source: JCGM 100:2008 (GUM), H.3, for the slope; Student's t.
 *
 * @param values The values in the order made [any unit].
 * @param places Where each stands, a date or a number of the part; 0, 1, 2 … unless said.
 * @returns Slope with its interval, verdict, chance and notes.
 * @throws {InputError} If there are fewer than four values, the lists differ in length, or an entry
 * is not a finite number.
 *
 * @example
 * ```ts
 * import { trend } from "@laminate/notebooks/statistics";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(trend([0.62, 0.6, 0.57, 0.56, 0.52, 0.51]).verdict, "falling");
 * ```
 */
export function trend(values: ArrayLike<number>, places?: ArrayLike<number>): Trend {
  checkSeries(check, "value", values);
  check.count("number of values", values.length, 4);
  const x = places ?? Float64Array.from({ length: values.length }, (_, i) => i);
  const { slope, residuals, dof } = fitLine({ x, y: values });
  const steepness = slope.u > 0 ? Math.abs(slope.value) / slope.u : undefined;
  const chance = steepness === undefined
    ? (slope.value === 0 ? 1 : 0)
    : 2 * studentTProbability(-check.result("t", steepness), dof);
  const told = chance < 0.05;
  // Lag 1 of independent residuals varies by about 1/√n.
  const tied = slope.u > 0 && summarise(residuals).lag1 > 2 / Math.sqrt(values.length);
  return {
    slope,
    verdict: !told ? "cannot be told" : slope.value > 0 ? "rising" : "falling",
    chance,
    notes: tied ? ["Each value hangs on the one before: the chance is larger than it says."] : [],
  };
}
