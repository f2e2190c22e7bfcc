import { checksFor } from "../check/mod.ts";
import {
  activationEnergy,
  type CureRate,
  cureRateFactor,
  equivalentTime,
  type TemperatureLog,
} from "./arrhenius.ts";

const check = checksFor("compute the cure");

/** Working and curing times that a resin's sheet gives at one temperature. */
export interface CureSheet {
  /** Temperature for which the sheet gives its times [K]. */
  readonly temperature: number;
  /** Time until the part can be handled, demoulded or sanded [s]. */
  readonly handlingTime: number;
  /** Time until full strength [s]. */
  readonly fullCureTime: number;
  /** Activation energy from the sheet or two of its times; a rule of thumb if left out [J/mol]. */
  readonly activationEnergy?: number;
  /** Highest temperature that the sheet asks of a post-cure, if it asks for one [K]. */
  readonly postCureTemperature?: number;
}

/** When a part can be handled. */
export interface CurePlan {
  /** Time until it can be handled at the temperature planned: the earliest demoulding [s]. */
  readonly handlingTime: number;
  /** Time until full strength at that temperature [s]. */
  readonly fullCureTime: number;
  /** Whether it may stop short of full cure there, however long it stands. */
  readonly mayStopShort: boolean;
  /** From where on the resin may soften, cured no warmer than planned: an estimate [K]. */
  readonly softensFrom: number;
  /** Whether a rule of thumb stands in for the sheet's own data. */
  readonly byRuleOfThumb: boolean;
  /** What to know about it. */
  readonly notes: readonly string[];
}

/**
 * Activation energy that doubles the rate for ten degrees, from 298 to 308 K [J/mol].
 *
 * Common practice, no source: "ten degrees warmer, half the time".
 */
export const RULE_OF_TEN_DEGREES: number = activationEnergy({
  cooler: 298,
  warmer: 308,
  ratio: 2,
});

/** Further from the sheet's temperature than this, times are guesses [K]. */
const FAR = 15;
/** Further below the sheet's temperature than this, a cure may end before it is full [K]. */
const COLD = 5;
/** How far above its cure a resin reaches its glass transition; common practice, no source [K]. */
const GLASS_ABOVE_CURE = 15;

/**
 * Times to handling and to full strength at the temperature of the workshop.
 *
 * Formula: t(T) = t_sheet exp[(Ea/R)(1/T − 1/T_sheet)]; softens from T + 15 K
 *
 * Range: within 15 K of the sheet's temperature, else noted; more than 5 K below it the times are
 * a lower limit, for many epoxies stop short of full cure in the cold however long they stand
 * (noted). Above the sheet's temperature thick parts heat themselves. A resin turns to glass as its glass
 * transition passes the temperature of the cure by some 10 to 20 K; the sheet's own figure counts.
 *
 * Source: Arrhenius equation; glass transition over cure: common practice, no source; without the
 * sheet's data the rate doubles for ten degrees (common practice, no source). Parts stay under
 * vacuum overnight at room temperature: common practice, no source.
 *
 * @param sheet Times and temperature from the resin's sheet.
 * @param temperature Temperature of the part while it cures [K].
 * @returns Handling time (earliest demoulding) and full cure [s], and what limits them.
 * @throws {InputError} If an input is not above 0 or full cure comes before handling.
 *
 * @example Ten degrees cooler, twice the time
 * ```ts
 * import { curePlan } from "@laminate/notebooks/shop";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const sheet = { temperature: 308, handlingTime: 6 * 3600, fullCureTime: 5 * 86400 };
 * assertAlmostEquals(curePlan(sheet, 298).handlingTime, 12 * 3600, 1e-6);
 * ```
 */
export function curePlan(sheet: CureSheet, temperature: number): CurePlan {
  const rate = checkSheet(sheet);
  const factor = cureRateFactor(check.positive("temperature", temperature, "K"), rate);
  const byRuleOfThumb = sheet.activationEnergy === undefined && temperature !== sheet.temperature;
  const notes: string[] = [];
  if (byRuleOfThumb) {
    notes.push("By the rule of thumb: ten degrees Celsius (18 Fahrenheit) cooler, twice the time.");
  }
  const below = sheet.temperature - temperature;
  const mayStopShort = below > COLD;
  if (mayStopShort) {
    const [here, sheets] = [temperature, sheet.temperature].map((kelvin) =>
      `${(kelvin - 273.15).toFixed(0)} °C`
    );
    notes.push(
      `At ${here}, below the sheet's ${sheets}, an epoxy may stop short of full cure however long ` +
        `it stands: warm the part to ${sheets} in the end.`,
    );
  }
  if (Math.abs(below) > FAR) {
    notes.push(
      `More than ${FAR} K from the sheet's temperature: try it on a sample first` +
        (below < 0 ? "; a thick wet part heats itself, and warm foam is weak." : "."),
    );
  }
  if (sheet.postCureTemperature !== undefined) {
    notes.push(
      "The sheet asks for a post-cure: until then the part softens in the sun. Warm it slowly and " +
        "supported, as the sheet says.",
    );
  }
  return {
    handlingTime: check.result("handling time", sheet.handlingTime / factor, "s"),
    fullCureTime: check.result("time to full cure", sheet.fullCureTime / factor, "s"),
    mayStopShort,
    softensFrom: temperature + GLASS_ABOVE_CURE,
    byRuleOfThumb,
    notes,
  };
}

/** How far a part has cured, judged from a log of its temperature. */
export interface CureProgress {
  /** Time at the sheet's temperature that would have cured as far [s]. */
  readonly equivalentTime: number;
  /** That time over the sheet's handling time [1]. */
  readonly shareOfHandling: number;
  /** That time over the sheet's time to full strength [1]. */
  readonly shareOfFullCure: number;
  /** Holds: it can be handled. Fails: not yet. */
  readonly verdict: "holds" | "fails";
}

/**
 * Whether a part can be handled, from a log of its temperature.
 *
 * Formula: equivalent time at the sheet's temperature over the sheet's times
 *
 * Range: log on or in the part, not in the air of the workshop.
 *
 * Source: `equivalentTime`.
 *
 * @param sheet Times and temperature from the resin's sheet.
 * @param log Times [s] and temperatures [K].
 * @returns Equivalent time [s], shares [1] and verdict.
 * @throws {InputError} If the sheet or the log cannot be meant.
 *
 * @example
 * ```ts
 * import { cureProgress } from "@laminate/notebooks/shop";
 * import { assertEquals } from "@std/assert";
 *
 * const sheet = { temperature: 298, handlingTime: 12 * 3600, fullCureTime: 7 * 86400 };
 * const night = { times: [0, 14 * 3600], temperatures: [299, 291] };
 * assertEquals(cureProgress(sheet, night).verdict, "fails");
 * ```
 */
export function cureProgress(sheet: CureSheet, log: TemperatureLog): CureProgress {
  const { exact } = equivalentTime(log, checkSheet(sheet));
  const shareOfHandling = exact / sheet.handlingTime;
  return check.results({
    equivalentTime: exact,
    shareOfHandling,
    shareOfFullCure: exact / sheet.fullCureTime,
    verdict: shareOfHandling >= 1 ? "holds" : "fails",
  });
}

/** One point of a resin's sheet: a degree of cure reached after a time. */
export interface CurePoint {
  /** Time at the reference temperature [s]. */
  readonly time: number;
  /** Degree of cure reached then [1]. */
  readonly degree: number;
}

/**
 * Degree of cure after an equivalent time, from one point of the sheet.
 *
 * Formula: α = 1 − (1 − α₁)^(t/t₁), first order
 *
 * Range: an estimate between and near known points; vitrification stops a cold cure short of it.
 *
 * Source: first-order kinetics, any text on thermosets.
 *
 * @param time Equivalent time at the reference temperature [s].
 * @param point Time [s] and degree [1] from the sheet.
 * @returns Degree of cure [1].
 * @throws {InputError} If a time is below 0 or the degree not between 0 and 1.
 *
 * @example
 * ```ts
 * import { degreeOfCure } from "@laminate/notebooks/shop";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(degreeOfCure(7200, { time: 3600, degree: 0.5 }), 0.75, 1e-12);
 * ```
 */
export function degreeOfCure(time: number, point: CurePoint): number {
  check.nonNegative("equivalent time", time, "s");
  const { time: known, degree } = check.object("point", point);
  check.positive("time of the point", known, "s");
  check.positive("degree of cure", check.fraction("degree of cure", degree));
  if (!(degree < 1)) check.refuse("degree of cure", degree, "must be below 1");
  return -Math.expm1(time / known * Math.log1p(-degree));
}

function checkSheet(sheet: CureSheet): CureRate {
  check.object("sheet", sheet);
  const { temperature, handlingTime, fullCureTime } = sheet;
  check.positive("temperature of the sheet", temperature, "K");
  check.positive("handling time", handlingTime, "s");
  check.positive("time to full cure", fullCureTime, "s");
  if (!(fullCureTime >= handlingTime)) {
    check.refuse("time to full cure", fullCureTime, `must not be below ${handlingTime} s`);
  }
  if (sheet.postCureTemperature !== undefined) {
    check.positive("temperature of the post-cure", sheet.postCureTemperature, "K");
  }
  const energy = sheet.activationEnergy ?? RULE_OF_TEN_DEGREES;
  return {
    activationEnergy: check.positive("activation energy", energy, "J/mol"),
    referenceTemperature: temperature,
  };
}
