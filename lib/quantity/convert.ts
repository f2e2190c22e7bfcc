import { checksFor } from "../check/mod.ts";
import { checkedSI, meantUnit, outOfSI } from "./_lookup.ts";
import { parseNumber } from "./_number.ts";
import type { Dimension } from "./dimension.ts";

const check = checksFor("convert a quantity");

/**
 * A value in a unit, in SI.
 *
 * Formula: value × multiply / divide, and (value + offset) × multiply / divide for °C and °F
 *
 * Range: the units of `units` and products of them; an angle stays in degrees
 *
 * Source: exact definitions (see `units`)
 *
 * @param value The value, in the unit [1].
 * @param unit The unit, in any of its spellings.
 * @param dimension The kind of quantity; it decides an ounce of cloth and a temperature
 * difference, and refuses a unit of another kind.
 * @returns The value in SI [1].
 * @throws {InputError} If the value is not finite, the unit is unknown or of another kind, or the
 * temperature is below absolute zero.
 *
 * @example
 * ```ts
 * import { toSI } from "@laminate/notebooks/quantity";
 * import { assertAlmostEquals, assertEquals } from "@std/assert";
 *
 * assertEquals(toSI(1, "in"), 0.0254);
 * assertAlmostEquals(toSI(68, "degF"), 293.15, 1e-12);
 * assertAlmostEquals(toSI(9, "degF", "temperature difference"), 5, 1e-14);
 * ```
 */
export function toSI(value: number, unit: string, dimension?: Dimension): number {
  check.finite("the value", value);
  const meant = meantUnit(unit, dimension);
  if ("wanted" in meant) return check.refuse("the unit", unit, meant.wanted);
  return checkedSI(check, value, meant.unit);
}

/**
 * An SI value in a unit.
 *
 * Formula: value × divide / multiply, less the offset for °C and °F
 *
 * Range: the units of `units` and products of them; an angle is in degrees
 *
 * Source: exact definitions (see `units`)
 *
 * @param value The value in SI [1].
 * @param unit The unit, in any of its spellings.
 * @param dimension The kind of quantity, as for `toSI`.
 * @returns The value in the unit [1].
 * @throws {InputError} If the value is not finite, or the unit is unknown or of another kind.
 *
 * @example
 * ```ts
 * import { fromSI } from "@laminate/notebooks/quantity";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(fromSI(0.2, "oz/yd2"), 5.8987, 5e-5);
 * ```
 */
export function fromSI(value: number, unit: string, dimension?: Dimension): number {
  check.finite("the value", value);
  const meant = meantUnit(unit, dimension);
  if ("wanted" in meant) return check.refuse("the unit", unit, meant.wanted);
  return check.result("the value", outOfSI(value, meant.unit), meant.unit.symbol);
}

/**
 * A number as text that stands in a known unit, in SI: the cell of a column, say.
 *
 * Formula: as `readNumber`, then `toSI`
 *
 * Range: as `readNumber` and `toSI`
 *
 * Source: exact definitions (see `units`)
 *
 * @param text The number, with no unit behind it.
 * @param unit The unit it stands in.
 * @param dimension The kind of quantity, as for `toSI`.
 * @returns The value in SI [1].
 * @throws {InputError} If the text is no number, could be two numbers, or the unit will not do.
 *
 * @example
 * ```ts
 * import { readNumberIn } from "@laminate/notebooks/quantity";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(readNumberIn("1 1/2", "in"), 0.0381);
 * ```
 */
export function readNumberIn(text: string, unit: string, dimension?: Dimension): number {
  const number = typeof text === "string" ? parseNumber(text) : { wanted: "must be text" };
  if ("wanted" in number) return check.refuse("the number", text, number.wanted);
  return toSI(number.value, unit, dimension);
}
