import { checksFor } from "../check/mod.ts";
import { ladders, printed, rung } from "./_display.ts";
import { kinds } from "./_hints.ts";
import { meantUnit, outOfSI } from "./_lookup.ts";
import type { Dimension } from "./dimension.ts";

const check = checksFor("show a quantity");

/** How a number is to be written. */
export interface NumberStyle {
  /** Its standard uncertainty, in the same unit; sets the digits of both if above 0 [1]. */
  readonly u?: number;
  /** Significant digits where no uncertainty sets them; 3 if left out [1]. */
  readonly digits?: number;
}

/** How a quantity is to be written. */
export interface QuantityStyle {
  /** Metric or US units; metric if left out. */
  readonly system?: "metric" | "US";
  /** One certain unit, for columns that must not change it from row to row. */
  readonly unit?: string;
  /** Its standard uncertainty, in SI; sets the digits of both if above 0 [1]. */
  readonly u?: number;
  /** Significant digits where no uncertainty sets them; 3 if left out [1]. */
  readonly digits?: number;
}

/**
 * A number with the digits that it deserves.
 *
 * The uncertainty has two significant digits if its first is 1 or 2, else one, and the number
 * ends at the same place. Without an uncertainty the number has three significant digits (or as
 * many as asked for) but is never rounded above the unit place, and zeros at the end of its
 * decimals are left out unless digits were asked for.
 *
 * Formula: none
 *
 * Range: any finite number; far from 1 it is written as 1.2e-9
 *
 * Source: JCGM 100 (GUM) 7.2.6 for one or two digits of an uncertainty, from memory; the rule
 * by its first digit: common practice, no source
 *
 * @param value The number [1].
 * @param style Its uncertainty and digits.
 * @returns The number as text.
 * @throws {InputError} If the number is not finite, the uncertainty negative, or the digits not
 * 1 to 15.
 *
 * @example
 * ```ts
 * import { showNumber } from "@laminate/notebooks/quantity";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(showNumber(203.43, { u: 4.1 }), "203 ± 4");
 * assertEquals(showNumber(0.51234, { u: 0.0123 }), "0.512 ± 0.012");
 * assertEquals(showNumber(1234.56), "1235");
 * ```
 */
export function showNumber(value: number, style: NumberStyle = {}): string {
  check.finite("the number", value);
  check.object("the style", style);
  const { u = 0, digits } = style;
  check.nonNegative("the uncertainty", u);
  check.within("digits", digits ?? 3, { min: 1, max: 15 });
  check.count("digits", digits ?? 3, 1);
  if (u > 0) {
    const first = Number(u.toExponential(DIGITS)[0]);
    const place = exponentOf(u) - (first < 3 ? 1 : 0);
    return `${rounded(value, place)} ± ${rounded(u, place)}`;
  }
  const place = Math.min(0, exponentOf(value) - (digits ?? 3) + 1);
  const text = rounded(value, place);
  return digits === undefined ? withoutTail(text) : text;
}

/**
 * A quantity as a builder writes it, in a unit that suits its kind and size.
 *
 * Formula: as `fromSI`, then as `showNumber`
 *
 * Range: any finite SI value; a temperature with its own zero in °C or °F
 *
 * Source: units by kind: common practice, no source
 *
 * @param si The quantity in SI, degrees for an angle [1].
 * @param dimension What kind it is.
 * @param style System or unit, uncertainty (in SI) and digits.
 * @returns The quantity as text; `readQuantity` reads it again if it carries no uncertainty.
 * @throws {InputError} If a number is not finite, the uncertainty negative, or the kind, system
 * or unit unknown.
 *
 * @example
 * ```ts
 * import { showQuantity } from "@laminate/notebooks/quantity";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(showQuantity(0.2, "areal weight", { u: 0.004 }), "200 ± 4 g/m²");
 * assertEquals(showQuantity(0.2, "areal weight", { system: "US" }), "5.9 oz/yd²");
 * assertEquals(showQuantity(72.4e9, "modulus"), "72.4 GPa");
 * assertEquals(showQuantity(293.15, "temperature", { system: "US" }), "68 °F");
 * ```
 */
export function showQuantity(
  si: number,
  dimension: Dimension,
  style: QuantityStyle = {},
): string {
  check.oneOf("the kind of quantity", dimension, kinds);
  check.finite(`the ${dimension}`, si);
  check.object("the style", style);
  const { system = "metric", u = 0, digits } = style;
  check.oneOf("the system", system, ["metric", "US"]);
  check.nonNegative("the uncertainty", u);
  const name = style.unit ?? rung(ladders[dimension][system], Math.abs(si));
  const meant = meantUnit(name, dimension);
  if ("wanted" in meant) return check.refuse("the unit", name, meant.wanted);
  const { unit } = meant;
  const number = showNumber(check.result("the quantity", outOfSI(si, unit), unit.symbol), {
    u: u * unit.divide / unit.multiply,
    ...(digits === undefined ? {} : { digits }),
  });
  // A bracket, since "g" behind "200 ± 4" belongs to both numbers, but "%" and "°" to the last.
  const text = u > 0 && /^[%°]$/.test(printed(unit.symbol)) ? `(${number})` : number;
  return unit.symbol === "1"
    ? text
    : `${text}${unit.symbol === "deg" ? "" : " "}${printed(unit.symbol)}`;
}

/** Digits by which sizes are judged: 2.9999999999999996 is a 3 that was converted. */
const DIGITS = 12;

/** Power of ten of the first digit; 0 for zero. */
function exponentOf(value: number): number {
  return value === 0 ? 0 : Number(value.toExponential(DIGITS).split("e")[1]);
}

/** Largest number of decimals before a number is written with an exponent. */
const MOST_DECIMALS = 9;

/** The number rounded to a power of ten, 0 for units and -2 for hundredths. */
function rounded(value: number, place: number): string {
  const exponent = exponentOf(value);
  if (exponent > 15 || place < -MOST_DECIMALS) {
    return minus(value.toExponential(Math.min(100, Math.max(0, exponent - place))));
  }
  if (place <= 0) return minus(value.toFixed(-place));
  const step = 10 ** place;
  return minus((Math.round(value / step) * step).toFixed(0));
}

/** The true minus sign, and none before a zero. */
function minus(text: string): string {
  return /^-[0.]*$/.test(text) ? text.slice(1) : text.replace(/^-/, "−");
}

/** Without the zeros at the end of decimals. */
function withoutTail(text: string): string {
  return text.includes("e") || !text.includes(".") ? text : text.replace(/\.?0+$/, "");
}
