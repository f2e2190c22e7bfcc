import { checksFor } from "../check/mod.ts";
import {
  fitLine,
  type FitParameter,
  fProbability,
  lineAt,
  regress,
  studentTQuantile,
} from "../statistics/mod.ts";
import { leastScatter } from "./_doubtful.ts";
import { checkReadings, type LoadReadings } from "./_readings.ts";

const check = checksFor("look where the curve leaves the line");

/** Where a curve bends, and how its slope changes there. */
export interface Bend {
  /** Load of the bend, with its 95 % interval [N]. */
  readonly load: { readonly value: number; readonly low: number; readonly high: number };
  /** Deflection there [m]. */
  readonly deflection: number;
  /** Slope of deflection on load below the bend [m/N]. */
  readonly slopeBefore: FitParameter;
  /** Slope above it less slope below: above 0 where the specimen softens [m/N]. */
  readonly slopeChange: FitParameter;
  /** Probability of so strong a bend by scatter alone, at most [1]. */
  readonly chance: number;
}

/** Whether a load test runs straight. */
export interface Straightness {
  /** Where the specimen has seated itself: it is stiffer from there on; null without a toe. */
  readonly toe: Bend | null;
  /** Where the curve leaves the line because the specimen softens; null if it stays on it. */
  readonly departure: Bend | null;
  /** Places of the readings of the straight part, from 0. */
  readonly straight: readonly number[];
}

/** What may be said of the search. */
export interface StraightnessOptions {
  /** Smallest step of the gauge; 0 if left out: scatter is never taken for less [m]. */
  readonly resolution?: number;
  /** Largest chance at which a bend is told; 0.01 unless said [1]. */
  readonly chance?: number;
}

/** Fewest readings in which a bend can be told from scatter. */
const FEWEST = 8;
/** At most this share of the loads can be a toe; a bend above it is no seating [1]. */
const LONGEST_TOE = 0.5;

/**
 * Where does the curve leave the straight line? Two straight lines that meet are held against one;
 * the place where they meet best is the bend.
 *
 * A bend to a stiffer line in the lower half is a seating toe and is set aside before the search
 * goes on; a bend to a softer one is where something gives: the core yields or a face buckles.
 *
 * Formula: δ = a + C P + ΔC max(0, P − Pb); Pb of the least squares; F = Δ/(SSE/(n − 3)) with the
 * number of places tried (Bonferroni); u(Pb) = u(gap of both lines)/ΔC, interval with t(0.975, n − 4)
 *
 * Range: eight readings or more under rising load, the bend not at the outer two of either end. A curve that
 * bends gently has no one place; then the place is where two lines do best.
 *
 * Source: Draper and Smith, Applied Regression Analysis (segmented lines), from memory. In 1000
 * simulated straight tests of 8, 9, 12 and 20 readings each a bend was told in 0.2 to 1.3 %.
 *
 * @param readings Load [N] and deflection [m] while the load rises.
 * @param options Resolution of the gauge, and the chance allowed.
 * @returns Toe, departure, and the places of the readings between them.
 * @throws {InputError} If there are under eight readings, lists differ in length or the load falls.
 *
 * @example A core that yields at 60 N
 * ```ts
 * import { straightness } from "@laminate/notebooks/comparison";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const load = [0, 10, 20, 30, 40, 50, 60, 70, 80, 90, 100];
 * const deflection = load.map((P) => 1e-4 * P + 0.5e-4 * Math.max(0, P - 60));
 * const { departure } = straightness({ load, deflection });
 * assertAlmostEquals(departure!.load.value, 60, 1e-6);
 * assertAlmostEquals(departure!.slopeChange.value, 0.5e-4, 1e-12);
 * ```
 */
export function straightness(
  readings: LoadReadings,
  options: StraightnessOptions = {},
): Straightness {
  const count = checkReadings(check, readings);
  const { resolution = 0, chance = 0.01 } = check.object("options", options);
  check.nonNegative("resolution", resolution, "m");
  check.fraction("chance", chance);
  if (count < FEWEST) check.refuse("number of readings", count, `must be ${FEWEST} or more`);
  const x = Array.from(readings.load);
  const y = Array.from(readings.deflection);
  const fall = x.findIndex((load, i) => i > 0 && load < x[i - 1]!);
  if (fall >= 0) check.refuse(`load of reading ${fall + 1}`, x[fall], "must not fall");

  const all = x.map((_, i) => i);
  const search = { x, y, floor: leastScatter(y, resolution), chance };
  const middle = x[0]! + LONGEST_TOE * (x[count - 1]! - x[0]!);
  // A bend at a reading belongs to it, whatever rounding says.
  const slack = 1e-9 * (x[count - 1]! - x[0]!);
  const seating = (bend: Bend | null): Bend | null =>
    bend !== null && bend.slopeChange.value < 0 && bend.load.value <= middle ? bend : null;
  const among = (indices: readonly number[]): Bend | null =>
    indices.length < FEWEST ? null : findBend(indices, search);
  const from = (bend: Bend | null): readonly number[] =>
    bend === null ? all : all.filter((i) => x[i]! >= bend.load.value - slack);
  const upTo = (bend: Bend | null): readonly number[] =>
    bend === null ? all : all.filter((i) => x[i]! <= bend.load.value + slack);

  // One bend pulls at the place of the other, so each is placed among readings without the other's.
  const first = among(all);
  const toe = seating(first) ?? (first === null ? null : seating(among(upTo(softening(first)))));
  const departure = softening(toe === null ? first : among(from(toe)));
  const placed = departure === null ? toe : seating(among(upTo(departure))) ?? toe;
  const seated = new Set(from(placed));
  return { toe: placed, departure, straight: upTo(departure).filter((i) => seated.has(i)) };
}

/** A bend that stiffens beyond the toe's place is no departure: only what softens is told. */
function softening(bend: Bend | null): Bend | null {
  return bend !== null && bend.slopeChange.value > 0 ? bend : null;
}

interface Search {
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly floor: number;
  readonly chance: number;
}

/** The bend that lowers the squares most, or null if chance explains it. */
function findBend(indices: readonly number[], { x, y, floor, chance }: Search): Bend | null {
  const readings = { x: indices.map((i) => x[i]!), y: indices.map((i) => y[i]!) };
  const count = indices.length;
  const places = placesOf(readings);
  if (places.length === 0) return null;
  const best = places.reduce((a, b) => b.squares < a.squares ? b : a);
  // A gauge cannot scatter less than its steps, so neither can what it read.
  const variance = Math.max(best.squares / (count - 3), floor ** 2);
  const F = Math.max(0, fitLine(readings).chiSquared - best.squares) / variance;
  const alone = F > 0 ? fProbability(1 / F, { numerator: count - 3, denominator: 1 }) : 1;
  const told = Math.min(1, places.length * alone);
  if (!(told <= chance)) return null;
  const hinge = regress(
    [readings.x, readings.x.map((load) => Math.max(0, load - best.load))],
    readings.y,
  );
  const [start, slopeBefore, slopeChange] = hinge.coefficients;
  const u = Math.sqrt(variance) * best.reach / Math.abs(slopeChange!.value);
  const U = studentTQuantile(0.975, count - 4) * u;
  return {
    load: { value: best.load, low: best.load - U, high: best.load + U },
    deflection: start!.value + slopeBefore!.value * best.load,
    slopeBefore: slopeBefore!,
    slopeChange: slopeChange!,
    chance: told,
  };
}

interface Points {
  readonly x: readonly number[];
  readonly y: readonly number[];
}

interface Place {
  readonly load: number;
  readonly squares: number;
  /** Uncertainty of the gap between both lines there, for a scatter of 1 [1]. */
  readonly reach: number;
}

/** The best place in each gap between two loads, and at each load, outer two at both ends not. */
function placesOf({ x, y }: Points): readonly Place[] {
  const loads = [...new Set(x)].slice(2, -2);
  return loads.flatMap((load, i) => {
    const upTo = x.lastIndexOf(load) + 1;
    const from = x.indexOf(load);
    const left = fitLine({ x: x.slice(0, upTo), y: y.slice(0, upTo) }, KNOWN);
    const right = fitLine({ x: x.slice(upTo), y: y.slice(upTo) }, KNOWN);
    const meeting = (left.intercept.value - right.intercept.value) /
      (right.slope.value - left.slope.value);
    const inGap = meeting >= load && meeting <= (loads[i + 1] ?? load);
    const hinge = regress([x, x.map((value) => Math.max(0, value - load))], y);
    const whole = fitLine({ x: x.slice(from), y: y.slice(from) }, KNOWN);
    const at: Place = {
      load,
      squares: hinge.chiSquared,
      reach: Math.hypot(lineAt(left, load).u, lineAt(whole, load).u),
    };
    return inGap
      ? [at, {
        load: meeting,
        squares: left.chiSquared + right.chiSquared,
        reach: Math.hypot(lineAt(left, meeting).u, lineAt(right, meeting).u),
      }]
      : [at];
  });
}

/** A scatter of 1, so that u of a line is what the places of its readings make of it. */
const KNOWN = { uY: 1 };
