import { checksFor } from "../check/mod.ts";
import { cureRateFactor } from "./arrhenius.ts";
import { RULE_OF_TEN_DEGREES } from "./cure.ts";

const check = checksFor("compute the pot life");

/** Pot life as a resin's sheet gives it. */
export interface PotLifeSheet {
  /** Pot life of the mass below at the temperature below, from the start of mixing [s]. */
  readonly potLife: number;
  /** Mass for which it holds; sheets usually say 0.1 or 0.15 kg [kg]. */
  readonly mass: number;
  /** Temperature for which it holds [K]. */
  readonly temperature: number;
  /**
   * Time in a thin layer, if the sheet gives it: no pot lasts longer. Without it none lasts longer
   * than the sheet's own mass [s].
   */
  readonly thinLayerTime?: number;
  /** Activation energy; the rate doubles for ten degrees if left out [J/mol]. */
  readonly activationEnergy?: number;
  /** How pot life falls with mass; `ESTIMATED_MASS_EXPONENT` if left out [1]. */
  readonly massExponent?: number;
}

/** A pot as it is mixed. */
export interface Pot {
  /** Mixed resin in it [kg]. */
  readonly mass: number;
  /** Temperature of resin and workshop [K]. */
  readonly temperature: number;
}

/**
 * How pot life falls with mass: eight times the mass, about half of the time.
 *
 * An estimate, common practice, no source; take `massExponent` of two figures of the sheet.
 */
export const ESTIMATED_MASS_EXPONENT = 1 / 3;

/**
 * Pot life of a pot of any mass at any temperature.
 *
 * Formula: t = t_sheet exp[(Ea/R)(1/T − 1/T_sheet)] (m/m_sheet)^(−n), at most the time in a thin
 * layer, or without that figure t_sheet exp[…], as if the mass were the sheet's
 *
 * Range: an estimate within a few times the sheet's mass and 10 K of its temperature. A pot that
 * warms in the hand is spent: spread it out on a tray.
 *
 * Source: Arrhenius equation for the temperature (without the sheet's data the rate doubles for
 * ten degrees: common practice, no source); power of the mass: common practice, no source.
 *
 * @param sheet What the resin's sheet says.
 * @param pot Mass [kg] and temperature [K].
 * @returns Pot life from the start of mixing [s].
 * @throws {InputError} If an input is not above 0 or the exponent below 0.
 *
 * @example
 * ```ts
 * import { potLife } from "@laminate/notebooks/shop";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const sheet = { potLife: 1800, mass: 0.1, temperature: 298 };
 * assertAlmostEquals(potLife(sheet, { mass: 0.1, temperature: 308 }), 900, 1e-9);
 * assertAlmostEquals(potLife(sheet, { mass: 0.8, temperature: 298 }), 900, 1e-9);
 * ```
 */
export function potLife(sheet: PotLifeSheet, pot: Pot): number {
  check.object("sheet", sheet);
  const { mass, temperature } = check.object("pot", pot);
  check.positive("pot life", sheet.potLife, "s");
  check.positive("mass of the sheet", sheet.mass, "kg");
  check.positive("mass in the pot", mass, "kg");
  const exponent = check.nonNegative(
    "mass exponent",
    sheet.massExponent ?? ESTIMATED_MASS_EXPONENT,
  );
  const factor = cureRateFactor(temperature, {
    activationEnergy: sheet.activationEnergy ?? RULE_OF_TEN_DEGREES,
    referenceTemperature: check.positive("temperature of the sheet", sheet.temperature, "K"),
  });
  const time = sheet.potLife / factor * (mass / sheet.mass) ** -exponent;
  const thin = sheet.thinLayerTime === undefined
    ? sheet.potLife
    : check.positive("time in a thin layer", sheet.thinLayerTime, "s");
  return check.result("pot life", Math.min(time, thin / factor), "s");
}

/** Pot life of one mass. */
export interface PotLifePoint {
  /** Mass in the pot [kg]. */
  readonly mass: number;
  /** Its pot life [s]. */
  readonly potLife: number;
}

/**
 * How pot life falls with mass, from two figures at one temperature.
 *
 * Formula: n = ln(t1/t2)/ln(m2/m1)
 *
 * Range: two different masses; a larger mass must not last longer.
 *
 * Source: power law through two points.
 *
 * @param small Pot life of the smaller mass.
 * @param large Pot life of the larger mass.
 * @returns Exponent n [1].
 * @throws {InputError} If an input is not above 0, the masses are not in order or the larger lasts
 * longer.
 *
 * @example
 * ```ts
 * import { massExponent } from "@laminate/notebooks/shop";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const n = massExponent({ mass: 0.1, potLife: 1800 }, { mass: 0.4, potLife: 900 });
 * assertAlmostEquals(n, 0.5, 1e-12);
 * ```
 */
export function massExponent(small: PotLifePoint, large: PotLifePoint): number {
  for (const point of [small, large]) {
    check.object("point", point);
    check.positive("mass", point.mass, "kg");
    check.positive("pot life", point.potLife, "s");
  }
  if (!(large.mass > small.mass)) {
    check.refuse("larger mass", large.mass, `must be above ${small.mass} kg`);
  }
  if (!(large.potLife <= small.potLife)) {
    check.refuse(
      "pot life of the larger mass",
      large.potLife,
      `must not be above ${small.potLife} s`,
    );
  }
  const exponent = Math.log(small.potLife / large.potLife) / Math.log(large.mass / small.mass);
  return check.result("mass exponent", exponent);
}

/** A pot that stands. */
export interface StandingPot extends Pot {
  /** Time from the start of mixing until it is empty [s]. */
  readonly emptyAfter: number;
  /** Largest mass that the sheet allows in one pot; `USUAL_POT_LIMIT` if left out [kg]. */
  readonly massLimit?: number;
}

/** Whether a pot is likely to heat itself. */
export interface ExothermCheck {
  /** Low: small and soon empty. High: too large or not empty in time. Watch: close to either. */
  readonly risk: "low" | "watch" | "high";
  /** Pot life of that mass at that temperature [s]. */
  readonly potLife: number;
  /** Why, and what to do. */
  readonly notes: readonly string[];
}

/** Mass in one pot beyond which self-heating is likely; common practice, no source [kg]. */
export const USUAL_POT_LIMIT = 0.5;

/** From this share of a limit on a pot is watched. */
const WATCH_SHARE = 0.75;

/**
 * Whether the mass in a pot makes an exotherm likely: smoke, boiling over, fire.
 *
 * Formula: high where m > limit or emptied after its pot life; watch from ¾ of either
 *
 * Range: a compact pot. Filler insulates: putty heats more.
 *
 * Source: limit from the resin's sheet, else 0.5 kg: common practice, no source.
 *
 * @param sheet What the resin's sheet says of pot life.
 * @param pot Mass [kg], temperature [K] and when it is empty [s].
 * @returns Risk, pot life [s] and what to do.
 * @throws {InputError} If an input is not above 0.
 *
 * @example
 * ```ts
 * import { exothermCheck } from "@laminate/notebooks/shop";
 * import { assertEquals } from "@std/assert";
 *
 * const sheet = { potLife: 1800, mass: 0.1, temperature: 298 };
 * const { risk } = exothermCheck(sheet, { mass: 0.9, temperature: 298, emptyAfter: 300 });
 * assertEquals(risk, "high");
 * ```
 */
export function exothermCheck(sheet: PotLifeSheet, pot: StandingPot): ExothermCheck {
  const life = potLife(sheet, pot);
  const { mass, emptyAfter, massLimit = USUAL_POT_LIMIT } = pot;
  check.nonNegative("time until empty", emptyAfter, "s");
  check.positive("limit of mass", massLimit, "kg");
  const load = Math.max(mass / massLimit, emptyAfter / life);
  const risk = load > 1 ? "high" : load > WATCH_SHARE ? "watch" : "low";
  const notes: string[] = [];
  if (mass > WATCH_SHARE * massLimit) {
    notes.push("Much resin in one pot heats itself: mix less at a time, or pour it into a tray.");
  }
  if (emptyAfter > WATCH_SHARE * life) {
    notes.push("The pot is hardly empty before its pot life ends: mix less at a time.");
  }
  if (risk !== "low") {
    notes.push("A pot that smokes goes outdoors onto bare ground; do not breathe its fumes.");
  }
  return { risk, potLife: life, notes };
}
