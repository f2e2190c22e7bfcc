import { checksFor } from "../check/mod.ts";
import type { Uncertain } from "../statistics/mod.ts";
import { checkReadings, type LoadReadings } from "./_readings.ts";
import { toeCompensation } from "./toe.ts";

const check = checksFor("take the chord of the curve");

/** Where a chord begins and ends, and how well the readings are known. */
export interface ChordLimits {
  /** Lower deflection [m]. */
  readonly from: number;
  /** Upper deflection [m]. */
  readonly to: number;
  /**
   * Deflections between which the curve is straight: the chord's limits then count from where that
   * line crosses zero load. From the first zero of the gauge if left out.
   */
  readonly straight?: { readonly from: number; readonly to: number };
  /** Standard uncertainty of one load; 0 if left out [N]. */
  readonly uLoad?: number;
  /** Standard uncertainty of one deflection; 0 if left out [m]. */
  readonly uDeflection?: number;
}

/** A chord of a load–deflection curve. */
export interface Chord {
  /** Load on deflection between the two limits [N/m]. */
  readonly slope: Uncertain;
  /** Load at the lower limit, between readings on a straight line [N]. */
  readonly loadFrom: number;
  /** Load at the upper limit [N]. */
  readonly loadTo: number;
  /** Deflection that was taken off as a toe; 0 without compensation [m]. */
  readonly toeDeflection: number;
  /** Chord over the slope of the straight part; null where none was given [1]. */
  readonly ratioToStraight: number | null;
  /** Remarks: a limit inside the toe, a curve that is not straight; empty otherwise. */
  readonly notes: readonly string[];
}

/** A chord that differs by more from the straight part is remarked [1]. */
const WORTH_SAYING = 0.002;

/**
 * Slope of the chord between two deflections, as a chord modulus asks for, with or without the toe
 * taken out.
 *
 * A chord's slope rests on two points of the curve, a fitted slope on all: prefer the fit where the
 * choice is free. A limit that lies inside the toe is remarked, since the chord then measures the
 * seating too.
 *
 * Formula: (P2 − P1)/(δ2 − δ1), P by straight lines between the readings; δ counted from the toe
 *
 * Range: rising deflections; both limits inside the readings. Strain limits become deflections by
 * `couponBending`.
 *
 * Source: ISO 178 and ISO 14125 (chord between strains of 0.0005 and 0.0025), ASTM D790 (toe
 * compensation, chord modulus), from memory.
 *
 * @param readings Load [N] and deflection [m] while the load rises.
 * @param limits Deflections of the chord [m], window of the straight part, uncertainties.
 * @returns Slope with uncertainty [N/m], loads at the limits [N], toe [m], and remarks.
 * @throws {InputError} If the limits are the wrong way round or outside the readings, or the
 * deflections do not rise.
 *
 * @example
 * ```ts
 * import { chordSlope } from "@laminate/notebooks/comparison";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const readings = { load: [0, 10, 30, 50], deflection: [0, 1e-3, 2e-3, 3e-3] };
 * const { slope } = chordSlope(readings, { from: 1e-3, to: 2.5e-3 });
 * assertAlmostEquals(slope.value, 30 / 1.5e-3, 1e-8);
 * ```
 */
export function chordSlope(readings: LoadReadings, limits: ChordLimits): Chord {
  const count = checkReadings(check, readings);
  const { from, to, straight, uLoad = 0, uDeflection = 0 } = check.object("limits", limits);
  check.finite("lower limit", from, "m");
  check.finite("upper limit", to, "m");
  if (!(to > from)) check.refuse("upper limit", to, "must be above the lower limit");
  check.nonNegative("uncertainty of the load", uLoad, "N");
  check.nonNegative("uncertainty of the deflection", uDeflection, "m");
  if (count < 2) check.refuse("number of readings", count, "must be two or more");

  const compensated = straight === undefined ? undefined : toeCompensation(readings, straight);
  const toeDeflection = compensated?.toeDeflection ?? 0;
  const curve = {
    load: Array.from(readings.load),
    deflection: compensated?.deflection ?? Array.from(readings.deflection),
  };
  const loadFrom = loadAt(curve, from, "lower limit");
  const loadTo = loadAt(curve, to, "upper limit");
  const value = check.result("slope of the chord", (loadTo - loadFrom) / (to - from), "N/m");
  const u = Math.SQRT2 * Math.hypot(uLoad, value * uDeflection) / (to - from);
  const ratioToStraight = compensated === undefined ? null : value / compensated.fit.slope.value;
  return {
    slope: { value, u: check.result("uncertainty of the slope", u) },
    ...{ loadFrom, loadTo, toeDeflection, ratioToStraight },
    notes: remarks(limits, toeDeflection, ratioToStraight),
  };
}

/** Load of the curve at a deflection, between two readings on a straight line. */
function loadAt(
  { load, deflection }: {
    readonly load: readonly number[];
    readonly deflection: readonly number[];
  },
  at: number,
  limit: string,
): number {
  for (let i = 1; i < deflection.length; i++) {
    if (!(deflection[i]! > deflection[i - 1]!)) {
      check.refuse(`deflection of reading ${i + 1}`, deflection[i], "must rise");
    }
  }
  // An end that only rounding puts outside is inside.
  const slack = 1e-9 * (deflection.at(-1)! - deflection[0]!);
  check.within(limit, at, {
    min: deflection[0]! - slack,
    max: deflection.at(-1)! + slack,
    unit: "m",
  });
  const above = deflection.findIndex((value) => value >= at);
  const i = Math.max(1, above === -1 ? deflection.length - 1 : above);
  const share = (at - deflection[i - 1]!) / (deflection[i]! - deflection[i - 1]!);
  return load[i - 1]! + share * (load[i]! - load[i - 1]!);
}

function remarks(
  { straight, from }: ChordLimits,
  toe: number,
  ratio: number | null,
): readonly string[] {
  if (straight === undefined || ratio === null) return [];
  const notes: string[] = [];
  // Counted from the toe, the straight part is known to begin here.
  const begins = straight.from - toe;
  if (from < begins * (1 - 1e-9)) {
    notes.push(
      `The lower limit lies ${short(1000 * (begins - from))} mm below the straight part, perhaps ` +
        "inside the toe: then the chord measures the seating too.",
    );
  }
  if (Math.abs(ratio - 1) > WORTH_SAYING) {
    notes.push(
      `The chord is ${short(Math.abs(100 * (ratio - 1)))} % ${ratio < 1 ? "softer" : "stiffer"} ` +
        "than the straight part.",
    );
  }
  return notes;
}

function short(value: number): string {
  return Number(value.toPrecision(3)).toString();
}
