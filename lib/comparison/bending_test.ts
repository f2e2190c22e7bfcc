import { checksFor } from "../check/mod.ts";
import { findSlips, fitLine, type LineFit, regress, type Slip } from "../statistics/mod.ts";
import { type DoubtfulReading, findDoubtful, pick } from "./_doubtful.ts";
import { checkReadings, type LoadReadings } from "./_readings.ts";
import { bendingRemarks } from "./_bending_remarks.ts";
import { type Hysteresis, hysteresis } from "./hysteresis.ts";
import { type Straightness, straightness } from "./straightness.ts";

export type { DoubtfulReading };

const check = checksFor("read the bending test");

/** A bending test as it was read. */
export interface BendingTest extends LoadReadings {
  /** Branch of each reading; all loading before all unloading. */
  readonly branch: readonly ("loading" | "unloading")[];
  /** Smallest step of the gauge, 0 if left out: scatter is never taken for less [m]. */
  readonly resolution?: number;
}

/** What a bending test says. */
export interface BendingTestRead {
  /** Deflection on load over the straight part, without the doubtful readings. */
  readonly fit: LineFit;
  /** The same with every loading reading as it was read. */
  readonly fitOfAll: LineFit;
  /** Places of the readings behind `fit`, from 0. */
  readonly used: readonly number[];
  /** Loading readings that do not fit, the worst first. They are shown and counted, not dropped. */
  readonly doubtful: readonly DoubtfulReading[];
  /** A gauge that slipped and stayed off: `fit` counts from its new zero there; null if not. */
  readonly slip: Slip | null;
  /** Seating toe and departure from the line; null with under eight readings or a falling load. */
  readonly straightness: Straightness | null;
  /** Every reading less the fitted line, unloading too, in order [m]. */
  readonly residuals: readonly number[];
  /** Energies and what stayed bent; null if nothing was read while unloading. */
  readonly hysteresis: Hysteresis | null;
  /** Remarks on the test, empty where there is nothing to say. */
  readonly notes: readonly string[];
}

/**
 * Reads a bending test: slope of deflection on load, doubtful readings, a slipped gauge, seating
 * toe, departure from the line, hysteresis.
 *
 * A reading is doubtful if its distance from the line through the others is more than scatter
 * explains. The search starts from a robust line and lets readings in, since slips that are taken
 * out one by one from the worst can hide each other: in simulated tests of nine readings two slips
 * of 0.2 mm were never found that way, and always this way. Nothing is dropped unseen: the slope is
 * given with and without, and each reading left out has a remark.
 *
 * Formula: δ = a + C P; ti = ri/(s √(1 + 1/k + (Pi − P̄)²/Σ(P − P̄)²)) against t(1 − 0.003/n, k − 2),
 * s and k of the readings inside; a gauge that slips and a bend as `findSlips` and `straightness`
 *
 * Range: five loading readings or more, at most a quarter of them wrong; bends from eight readings.
 *
 * Source: outlier test with Bonferroni's bound, Cook and Weisberg, Residuals and Influence in
 * Regression (1982), 2.2; search from inside, Hadi and Simonoff, J. Am. Stat. Assoc. 88 (1993); ASTM
 * D7250 (slope of the linear part); all from memory.
 *
 * @param test Load [N], deflection [m] and branch of each reading, in order.
 * @returns Fits, doubtful readings, bends, residuals [m], hysteresis and remarks.
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
  const turn = checkTest(test);
  const all = Array.from({ length: turn + 1 }, (_, i) => i);
  const fitOfAll = fitLine(pick(test, all));
  const found = look(test, all);
  const fit = fitOf(test, found);
  const count = test.load.length;
  const residuals = Array.from({ length: count }, (_, i) => {
    const zero = found.slip !== null && i >= found.slip.index ? found.slip.size : 0;
    return test.deflection[i]! - zero - fit.intercept.value - fit.slope.value * test.load[i]!;
  });
  return {
    ...{ fit, fitOfAll, ...found, residuals },
    hysteresis: turn < count - 1 ? hysteresis(test, turn) : null,
    notes: bendingRemarks({ test, fit, ...found }),
  };
}

/** Refuses what cannot be read, and returns the place of the last loading reading. */
function checkTest(test: BendingTest): number {
  const count = checkReadings(check, test);
  const { branch, resolution = 0 } = test;
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
  return turn;
}

type Found = Pick<BendingTestRead, "used" | "doubtful" | "slip" | "straightness">;

/** Fewest readings in which a bend or a slipped gauge can be told from scatter. */
const FEWEST_FOR_BENDS = 8;
/** A bend halves the readings behind a slope, so it has to be plain: those that matter are [1]. */
const BEND_CHANCE = 0.001;
/** Change of the slope below which a bend is left in the straight part [1]. */
const LEAST_BEND = 0.03;
/** With fewer on it, a straight part is no better than the line through all that is sound. */
const FEWEST_IN_FIT = 4;
/** A gauge that slipped by less than so many of its steps is not told from scatter [1]. */
const LEAST_SLIP = 3;

/** Looks for single readings first, then whether what is left runs in one straight line. */
function look(test: BendingTest, all: readonly number[]): Found {
  const { resolution = 0 } = test;
  const { kept, doubtful } = findDoubtful({ test, indices: all, resolution });
  // Readings off at either end may be the toe or the end of the straight part: look with them.
  const ends = endsAmong(doubtful, all.length);
  const looked = [...kept, ...ends].toSorted((a, b) => a - b);
  const rising = looked.every((i, k) => k === 0 || test.load[i]! >= test.load[looked[k - 1]!]!);
  const plain = { used: kept, doubtful, slip: null, straightness: null };
  if (looked.length < FEWEST_FOR_BENDS || !rising) return plain;
  const { x: load, y: deflection } = pick(test, looked);
  const bends = plainBends({ load, deflection }, resolution);
  const bend = bends.departure ?? bends.toe;
  const slip = slipAmong(test, kept);
  if (slip !== null && !(bend !== null && bend.chance <= slip.chance)) {
    return { ...plain, slip, straightness: { toe: null, departure: null, straight: all } };
  }
  const straight = bends.straight.map((i) => looked[i]!);
  const mapped = { ...bends, straight };
  const used = straight.filter((index) => kept.includes(index));
  if (bend === null || used.length < FEWEST_IN_FIT) {
    return { ...plain, straightness: { toe: null, departure: null, straight: kept } };
  }
  return {
    used,
    doubtful: doubtful.filter(({ index }) => !looked.includes(index) || straight.includes(index)),
    slip: null,
    straightness: mapped,
  };
}

/** Toe and departure where they are worth the readings that they cost. */
function plainBends(readings: LoadReadings, resolution: number): Straightness {
  const bends = straightness(readings, { resolution, chance: BEND_CHANCE });
  const slight = [bends.toe, bends.departure].some((bend) =>
    bend !== null && Math.abs(bend.slopeChange.value) < LEAST_BEND * bend.slopeBefore.value
  );
  const straight = Array.from(readings.load, (_, i) => i);
  return slight ? { toe: null, departure: null, straight } : bends;
}

/**
 * Doubtful readings that look like a bend, two or more in one row: at the beginning below the line,
 * as a toe is, or at the end above it, as where something gives. One alone may as well be a slip.
 */
function endsAmong(doubtful: readonly DoubtfulReading[], count: number): readonly number[] {
  const run = (from: number, step: number, sign: number): readonly number[] => {
    const among = new Set(
      doubtful.filter(({ offset }) => sign * offset > 0).map(({ index }) => index),
    );
    const row: number[] = [];
    for (let i = from; among.has(i); i += step) row.push(i);
    return row.length > 1 ? row : [];
  };
  return [...run(0, 1, -1), ...run(count - 1, -1, 1)];
}

/** The gauge that slipped and stayed off, among sound readings, with its place among all. */
function slipAmong(test: BendingTest, kept: readonly number[]): Slip | null {
  if (kept.length < FEWEST_FOR_BENDS) return null;
  const [first] = findSlips(pick(test, kept), { most: 1, chance: BEND_CHANCE });
  const least = LEAST_SLIP * (test.resolution ?? 0);
  return first?.kind === "step" && Math.abs(first.size) >= least
    ? { ...first, index: kept[first.index]! }
    : null;
}

/** Line through the readings used; where the gauge slipped, one slope and two zeros. */
function fitOf(test: BendingTest, { used, slip }: Found): LineFit {
  const { x, y } = pick(test, used);
  if (slip === null) return fitLine({ x, y });
  const beyond = used.map((i) => i >= slip.index ? 1 : 0);
  const { coefficients: [intercept, slope] } = regress([x, beyond], y);
  const corrected = fitLine({ x, y: y.map((value, i) => value - slip.size * beyond[i]!) });
  return { ...corrected, intercept: intercept!, slope: slope! };
}
