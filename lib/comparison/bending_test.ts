import { checksFor } from "../check/mod.ts";
import { fitLine, type LineFit, studentTQuantile } from "../statistics/mod.ts";
import { checkReadings, type LoadReadings } from "./_readings.ts";
import { type Hysteresis, hysteresis } from "./hysteresis.ts";

const check = checksFor("read the bending test");

/** A bending test as it was read. */
export interface BendingTest extends LoadReadings {
  /** Branch of each reading; all loading before all unloading. */
  readonly branch: readonly ("loading" | "unloading")[];
  /** Smallest step of the gauge, 0 if left out: scatter is never taken for less [m]. */
  readonly resolution?: number;
}

/** A reading that does not fit the others. */
export interface DoubtfulReading {
  /** Its place among all readings, from 0 [1]. */
  readonly index: number;
  /** How far it lies from the line through the others [m]. */
  readonly offset: number;
}

/** What a bending test says. */
export interface BendingTestRead {
  /** Deflection on load over the loading readings without the doubtful ones. */
  readonly fit: LineFit;
  /** The same with every loading reading. */
  readonly fitOfAll: LineFit;
  /** Loading readings that do not fit, the worst first. They are shown and counted, not dropped. */
  readonly doubtful: readonly DoubtfulReading[];
  /** Every reading less the fitted line, unloading too, in order [m]. */
  readonly residuals: readonly number[];
  /** Energies and what stayed bent; null if nothing was read while unloading. */
  readonly hysteresis: Hysteresis | null;
  /** Remarks on the test, empty where there is nothing to say. */
  readonly notes: readonly string[];
}

/** Chance of calling a good set of readings doubtful [1]. */
const FALSE_ALARM = 0.01;
/** At most this share of the loading readings may be called doubtful [1]. */
const MOST_DOUBTFUL = 0.25;

/**
 * Reads a bending test: slope of deflection on load, doubtful readings, hysteresis.
 *
 * A reading is doubtful if its distance from the line through all others is more than scatter
 * explains; the worst is set aside and the rest are looked at again. The slope is given with and
 * without them. A seating toe shifts the line but not its slope.
 *
 * Formula: δ = a + C P; ti = ri/(s(i) √(1 − hi)) against t(1 − 0.01/2n, n − 3), s(i) the scatter of
 * the others
 *
 * Range: five loading readings or more; several slips of one sign can hide each other.
 *
 * Source: Cook and Weisberg, Residuals and Influence in Regression (1982), 2.2 (outlier test with
 * Bonferroni's bound), from memory; ASTM D7250 (slope of the linear part), from memory.
 *
 * @param test Load [N], deflection [m] and branch of each reading, in order.
 * @returns Fits, doubtful readings, residuals [m], hysteresis and remarks.
 * @throws {InputError} If there are under five loading readings, lists differ in length, the load
 * never changes, or a loading reading follows an unloading one.
 *
 * @example A gauge that slipped at the fourth step
 * ```ts
 * import { readBendingTest } from "@laminate/notebooks/comparison";
 * import { assertEquals } from "@std/assert";
 *
 * const load = [0, 10, 20, 30, 40, 50, 60];
 * const deflection = [0, 0.99e-3, 2.01e-3, 3.4e-3, 4.01e-3, 4.99e-3, 6e-3];
 * const { doubtful } = readBendingTest({ load, deflection, branch: load.map(() => "loading") });
 * assertEquals(doubtful.map(({ index }) => index), [3]);
 * ```
 */
export function readBendingTest(test: BendingTest): BendingTestRead {
  const count = checkReadings(check, test);
  const { load, deflection, branch, resolution = 0 } = test;
  check.nonNegative("resolution", resolution, "m");
  if (check.list("branch", branch).length !== count) {
    check.refuse("number of branches", branch.length, `must be that of loads, ${count}`);
  }
  const turn = branch.lastIndexOf("loading");
  const early = branch.indexOf("unloading");
  if (early >= 0 && early < turn) {
    check.refuse(`branch of reading ${turn + 1}`, "loading", "must not follow an unloading one");
  }
  if (turn < 4) check.refuse("number of loading readings", turn + 1, "must be five or more");
  const fitThrough = (indices: readonly number[]): LineFit =>
    fitLine({ x: indices.map((i) => load[i]!), y: indices.map((i) => deflection[i]!) });
  const all = Array.from({ length: turn + 1 }, (_, i) => i);
  const { kept, doubtful } = setAside(all, { test, resolution, fitThrough });
  const fit = fitThrough(kept);
  const residuals = Array.from(
    { length: count },
    (_, i) => deflection[i]! - fit.intercept.value - fit.slope.value * load[i]!,
  );
  const fitOfAll = fitThrough(all);
  return {
    fit,
    fitOfAll,
    doubtful,
    residuals,
    hysteresis: turn < count - 1 ? hysteresis(test, turn) : null,
    notes: [
      ...doubtful.map(({ index, offset }) =>
        `Reading ${index + 1}, at ${format(load[index]!)} N, lies ${format(1000 * offset)} mm ` +
        "off the line through the others: it is left out of the slope. Read the gauge again."
      ),
      ...(fit.slope.value > 0 ? [] : ["The deflection does not grow with the load."]),
    ],
  };
}

/** Takes the worst reading out as long as it is worse than chance, and looks again. */
function setAside(
  all: readonly number[],
  { test, resolution, fitThrough }: {
    readonly test: LoadReadings;
    readonly resolution: number;
    readonly fitThrough: (indices: readonly number[]) => LineFit;
  },
): { readonly kept: readonly number[]; readonly doubtful: readonly DoubtfulReading[] } {
  const most = Math.floor(MOST_DOUBTFUL * all.length);
  const doubtful: DoubtfulReading[] = [];
  let kept = all;
  while (doubtful.length < most && kept.length > 4) {
    const limit = studentTQuantile(1 - FALSE_ALARM / (2 * kept.length), kept.length - 3);
    const worst = kept
      .map((index) => distance(index, { kept, test, resolution, fitThrough }))
      .reduce((a, b) => b.t > a.t ? b : a);
    if (!(worst.t > limit)) break;
    doubtful.push({ index: worst.index, offset: worst.offset });
    kept = kept.filter((index) => index !== worst.index);
  }
  return { kept, doubtful };
}

/** A reading's distance from the line through the others, in standard deviations of that. */
function distance(
  index: number,
  { kept, test, resolution, fitThrough }: {
    readonly kept: readonly number[];
    readonly test: LoadReadings;
    readonly resolution: number;
    readonly fitThrough: (indices: readonly number[]) => LineFit;
  },
): DoubtfulReading & { readonly t: number } {
  const others = kept.filter((other) => other !== index);
  const { slope, intercept, residualSd } = fitThrough(others);
  const x = test.load[index]!;
  const offset = test.deflection[index]! - intercept.value - slope.value * x;
  // A gauge cannot scatter less than its own steps (rectangular, JCGM 100:2008, F.2.2.1).
  const scatter = Math.max(residualSd, resolution / Math.sqrt(12));
  const mean = others.reduce((sum, i) => sum + test.load[i]!, 0) / others.length;
  const spread = others.reduce((sum, i) => sum + (test.load[i]! - mean) ** 2, 0);
  const sd = scatter * Math.sqrt(1 + 1 / others.length + (x - mean) ** 2 / spread);
  return { index, offset, t: sd > 0 ? Math.abs(offset) / sd : 0 };
}

function format(value: number): string {
  return Number(value.toPrecision(3)).toString();
}
