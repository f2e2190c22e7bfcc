import { checksFor } from "../check/mod.ts";
import { checkSeries } from "./_fit.ts";

const check = checksFor("draw the control chart");

/** Why a point stands out. */
export type SignalRule = "beyond limit" | "two of three" | "run of eight" | "jump";

/** A point that stands out, and why. */
export interface Signal {
  /** Place in the list, from 0: the point, or the last of the points that show it [1]. */
  readonly index: number;
  /** Which rule it breaks. */
  readonly rule: SignalRule;
}

/** What may be said of a control chart. */
export interface ControlChartOptions {
  /** How many of the first values set the limits; all unless said [1]. */
  readonly baseline?: number;
}

/** Limits within which values vary by chance, and the points that do not. */
export interface ControlChart {
  /** Mean of the baseline [unit of the values]. */
  readonly centre: number;
  /** Standard deviation by the mean moving range [unit of the values]. */
  readonly sigma: number;
  /** Centre less three sigma [unit of the values]. */
  readonly lower: number;
  /** Centre plus three sigma [unit of the values]. */
  readonly upper: number;
  /** Size of each step from one value to the next [unit of the values]. */
  readonly movingRanges: readonly number[];
  /** Largest step that chance explains [unit of the values]. */
  readonly rangeLimit: number;
  /** Points that stand out, in order. */
  readonly signals: readonly Signal[];
  /** What a reader should know; empty where there is nothing to say. */
  readonly notes: readonly string[];
}

/** Mean range of two normal numbers in standard deviations, 2/√π; tables print 1.128. */
const D2 = 2 / Math.sqrt(Math.PI);
/** Upper limit of a range of two over its mean, 1 + 3 √(1 − 2/π)/√(2/π); tables print 3.267. */
const D4 = 1 + 3 * Math.sqrt(Math.PI / 2 - 1);

/**
 * Control chart of single values and their moving range: does a part differ from the others by more
 * than chance?
 *
 * Formula: σ = mean |xi − xi−1|/1.128; limits x̄ ± 3σ; largest step 3.267 times the mean step
 *
 * Range: four values or more in the order made; below about twenty the limits are rough.
 *
 * Source: ISO 7870-2; NIST/SEMATECH e-Handbook, 6.3.2.2; run rules: Western Electric; all from
 * memory.
 *
 * @param values One value a part, in the order made [any unit].
 * @param options How many of the first values set the limits.
 * @returns Centre, limits, moving ranges, and the points that stand out.
 * @throws {InputError} If there are fewer than four values, one is not a finite number, or the
 * baseline is not 4 to all of them.
 *
 * @example
 * ```ts
 * import { controlChart } from "@laminate/notebooks/statistics";
 * import { assertEquals } from "@std/assert";
 *
 * const { signals } = controlChart([1, 1.1, 0.9, 1, 1.1, 1, 0.9, 1, 2], { baseline: 8 });
 * assertEquals(signals.map(({ index, rule }) => [index, rule]), [
 *   [8, "beyond limit"],
 *   [8, "jump"],
 * ]);
 * ```
 */
export function controlChart(
  values: ArrayLike<number>,
  options: ControlChartOptions = {},
): ControlChart {
  checkSeries(check, "value", values);
  const count = check.count("number of values", values.length, 4);
  const { baseline = count } = check.object("options", options);
  check.count("baseline", baseline, 4);
  check.within("baseline", baseline, { min: 4, max: count });
  const movingRanges = Array.from(
    { length: count - 1 },
    (_, i) => Math.abs(values[i + 1]! - values[i]!),
  );
  const mean = (list: readonly number[]): number => list.reduce((s, x) => s + x, 0) / list.length;
  const centre = mean(Array.from(values).slice(0, baseline));
  const meanRange = mean(movingRanges.slice(0, baseline - 1));
  const sigma = meanRange / D2;
  const rangeLimit = D4 * meanRange;
  const notes: string[] = [];
  if (baseline < 20) notes.push(`Limits from ${baseline} values are rough.`);
  if (sigma === 0) {
    notes.push("All values of the baseline are equal: there is no scatter to judge by.");
  }
  return check.results({
    ...{ centre, sigma, movingRanges, rangeLimit, notes },
    lower: centre - 3 * sigma,
    upper: centre + 3 * sigma,
    signals: sigma > 0 ? signalsOf(values, { centre, sigma, movingRanges, rangeLimit }) : [],
  });
}

function signalsOf(
  values: ArrayLike<number>,
  chart: Pick<ControlChart, "centre" | "sigma" | "movingRanges" | "rangeLimit">,
): Signal[] {
  const z = Array.from(values, (value) => (value - chart.centre) / chart.sigma);
  return z.flatMap((deviation, index): Signal[] => {
    const rules: SignalRule[] = [];
    if (Math.abs(deviation) > 3) rules.push("beyond limit");
    const side = Math.sign(deviation);
    const lastThree = z.slice(Math.max(0, index - 2), index + 1);
    const far = lastThree.filter((d) => side * d > 2).length;
    if (side * deviation > 2 && far >= 2) rules.push("two of three");
    const lastEight = z.slice(Math.max(0, index - 7), index + 1);
    if (lastEight.length === 8 && lastEight.every((d) => side * d > 0)) rules.push("run of eight");
    if (index > 0 && chart.movingRanges[index - 1]! > chart.rangeLimit) rules.push("jump");
    return rules.map((rule) => ({ index, rule }));
  });
}
