import { checksFor } from "../check/mod.ts";
import {
  fitLine,
  type FitParameter,
  fitPolynomial,
  newReadingAt,
  type Uncertain,
} from "../statistics/mod.ts";

const check = checksFor("read the creep");

/** Readings at a load that was left on. */
export interface HeldReadings {
  /** Time since the load was on, above 0 [s]. */
  readonly time: ArrayLike<number>;
  /** Deflection [m]. */
  readonly deflection: ArrayLike<number>;
}

/** How the deflection goes on growing under a load that stays. */
export interface Creep {
  /** Growth for each tenfold time [m]. */
  readonly perDecade: FitParameter;
  /** Deflection at a time of one second, as the fitted line has it [m]. */
  readonly atOneSecond: FitParameter;
  /** Growth for each tenfold time over the deflection at the first reading [1]. */
  readonly shareOfFirst: number;
  /** Whether it creeps, creeps ever faster, or neither can be told. */
  readonly verdict: "steady" | "speeding up" | "cannot be told";
  /** Deflection to be expected at a later time, with the interval of a new reading [m]. */
  at(time: number): Uncertain & { readonly low: number; readonly high: number };
  /** Remarks, empty where there is nothing to say. */
  readonly notes: readonly string[];
}

/** How far beyond the last reading a forecast may go: one decade, common practice, no source. */
const FARTHEST = 10;
/** Creep for each tenfold time above which the set-up or the core is looked at: common practice. */
const MUCH = 0.05;

/**
 * Creep at held load: how much more does the part bend for each tenfold time?
 *
 * Formula: δ(t) = a + k lg t by least squares; "speeding up" where a term in (lg t)² is above 0
 * beyond its 95 % interval
 *
 * Range: five readings or more over a decade of time or more, at one temperature. Foam cores and
 * resin that is not fully cured creep most; warmth speeds it up many times. A forecast reaches ten
 * times the longest hold, no farther.
 *
 * Source: logarithmic creep law, Findley, Lai and Onaran, Creep and Relaxation of Nonlinear
 * Viscoelastic Materials (1976), from memory.
 *
 * @param held Times since loading [s] and deflections [m].
 * @returns Growth for each tenfold time [m], verdict, a forecast, and remarks.
 * @throws {InputError} If there are under five readings, a time is not above 0 or does not rise, or
 * the times span less than a decade.
 *
 * @example
 * ```ts
 * import { creepAtHold } from "@laminate/notebooks/comparison";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const time = [30, 60, 120, 300, 600, 1800];
 * const held = { time, deflection: time.map((t) => 5e-3 + 1e-4 * Math.log10(t)) };
 * const creep = creepAtHold(held);
 * assertAlmostEquals(creep.perDecade.value, 1e-4, 1e-15);
 * assertAlmostEquals(creep.at(1e4).value, 5.4e-3, 1e-12);
 * ```
 */
export function creepAtHold(held: HeldReadings): Creep {
  check.object("held readings", held);
  const { decades, deflection } = checkHeld(held);
  const fit = fitLine({ x: decades, y: deflection });
  const { slope: perDecade, intercept: atOneSecond } = fit;
  const [, , curve] = fitPolynomial({ x: decades, y: deflection }, 2).coefficients;
  const grows = perDecade.low > 0;
  // Rounding alone bends an exact line by so little that no hold is judged by it.
  const bends = curve!.low > 1e-9 * Math.abs(deflection[0]!);
  const verdict = bends ? "speeding up" : grows ? "steady" : "cannot be told";
  const first = check.positive("deflection at the first reading", deflection[0]!, "m");
  const shareOfFirst = check.result("share of the first reading", perDecade.value / first);
  const last = decades.at(-1)!;
  return {
    ...{ perDecade, atOneSecond, shareOfFirst, verdict },
    at: (time): ReturnType<Creep["at"]> => {
      const decade = Math.log10(check.positive("time", time, "s"));
      if (!(decade <= last + Math.log10(FARTHEST) + 1e-9)) {
        check.refuse("time", `${time} s`, `must be ${10 ** last * FARTHEST} s or less`);
      }
      const { value, u, low, high } = newReadingAt(fit, decade);
      return { value, u, low, high };
    },
    notes: [
      ...(verdict === "speeding up"
        ? ["It creeps faster and faster: take the load off; the core or a bond may be giving way."]
        : []),
      ...(grows && shareOfFirst > MUCH
        ? [
          `${(100 * shareOfFirst).toFixed(0)} % more for each tenfold time is much: is the resin ` +
          "cured, and is it cool?",
        ]
        : []),
    ],
  };
}

function checkHeld({ time, deflection }: HeldReadings): {
  readonly decades: readonly number[];
  readonly deflection: readonly number[];
} {
  const lists = [["time", time], ["deflection", deflection]] as const;
  for (const [name, list] of lists) {
    if (!(Array.isArray(list) || ArrayBuffer.isView(list))) {
      check.refuse(name, list, "must be a list of numbers");
    }
  }
  if (time.length !== deflection.length) {
    check.refuse(
      "number of deflections",
      deflection.length,
      `must be that of times, ${time.length}`,
    );
  }
  if (!(time.length >= 5)) check.refuse("number of readings", time.length, "must be five or more");
  for (let i = 0; i < time.length; i++) {
    check.positive(`time of reading ${i + 1}`, time[i]!, "s");
    check.finite(`deflection of reading ${i + 1}`, deflection[i]!, "m");
    if (i > 0 && !(time[i]! > time[i - 1]!)) {
      check.refuse(`time of reading ${i + 1}`, time[i], "must be later than the one before");
    }
  }
  const decades = Array.from(time, Math.log10);
  if (!(decades.at(-1)! - decades[0]! >= 1 - 1e-9)) {
    check.refuse("last time", time[time.length - 1], "must be ten times the first or more");
  }
  return { decades, deflection: Array.from(deflection) };
}
