import { checksFor } from "../check/mod.ts";
import { intoSI, meantUnit, outOfSI } from "./_lookup.ts";
import type { Dimension } from "./dimension.ts";

const check = checksFor("read the unit of a column");

/**
 * The unit of a column of figures, as its heading names it. Its conversions are made for a
 * million rows: they do not check, and what is not finite stays so for the caller to refuse.
 */
export interface ColumnUnit {
  /** The unit, in its plain spelling. */
  readonly unit: string;
  /** The kind of quantity: the one asked for, or the commonest that has this unit. */
  readonly dimension: Dimension;
  /** The SI unit in which the figures are held. */
  readonly si: string;
  /** A figure of the column in SI (degrees for an angle). */
  toSI(value: number): number;
  /** An SI figure in the unit of the column. */
  fromSI(value: number): number;
}

/**
 * The unit that a column heading ends with, and its way to SI and back.
 *
 * Any spelling of a unit will do: `g/m2`, `g/m^2`, `g/m²` and `gsm` are one unit. Where a kind
 * of quantity is asked for, a unit of another kind is refused; a column of temperature
 * differences in °C or °F has to ask, since its zero is another.
 *
 * Formula: value × multiply / divide, and (value + offset) × multiply / divide for °C and °F
 *
 * Range: the units of `units`; angles stay in degrees
 *
 * Source: exact definitions (see `units`)
 *
 * @param suffix The unit as the heading writes it, such as `mm` of `span_mm`.
 * @param dimension The kind of quantity that the column must hold; any if left out.
 * @returns The unit with its conversions.
 * @throws {InputError} If the unit is unknown, or not one of the kind asked for.
 *
 * @example
 * ```ts
 * import { columnUnit } from "@laminate/notebooks/quantity";
 * import { assertEquals } from "@std/assert";
 *
 * const mass = columnUnit("g", "mass");
 * assertEquals(mass.toSI(412), 0.412);
 * assertEquals(columnUnit("1e-6/K").dimension, "thermal expansion");
 * ```
 */
export function columnUnit(suffix: string, dimension?: Dimension): ColumnUnit {
  const meant = meantUnit(suffix, dimension);
  if ("wanted" in meant) return check.refuse("the unit", suffix, meant.wanted);
  const { unit } = meant;
  return {
    unit: unit.symbol,
    dimension: meant.dimension,
    si: unit.si,
    toSI: (value): number => intoSI(value, unit),
    fromSI: (value): number => outOfSI(value, unit),
  };
}

/** The heading of a column, taken apart. */
export interface Heading {
  /** What the column holds: `part_mass` of `part_mass_g`. */
  readonly name: string;
  /** Its unit as written, if the heading ends with one. */
  readonly unit?: string;
}

/**
 * Takes a column heading apart at its last underscore, if a unit stands behind it.
 *
 * Formula: none; `part_mass_g` is `part_mass` in `g`, `part_id` is all name
 *
 * Range: a heading whose last word happens to be a unit reads as one: `d_in` is `d` in inches; a number (`layer_1`) belongs to the name
 *
 * Source: the project's own form for records
 *
 * @param heading The heading as it stands in the file.
 * @returns The name, and the unit where there is one.
 * @throws {InputError} If the heading is not text.
 *
 * @example
 * ```ts
 * import { splitHeading } from "@laminate/notebooks/quantity";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(splitHeading("part_mass_g"), { name: "part_mass", unit: "g" });
 * assertEquals(splitHeading("density_kg/m3"), { name: "density", unit: "kg/m3" });
 * assertEquals(splitHeading("part_id"), { name: "part_id" });
 * ```
 */
export function splitHeading(heading: string): Heading {
  if (typeof heading !== "string") {
    return check.refuse("the heading", heading, "must be text");
  }
  const text = heading.trim();
  const cut = text.lastIndexOf("_");
  const unit = text.slice(cut + 1);
  // A 1 at the end numbers the column: a plain number has no unit to name.
  return cut > 0 && unit !== "1" && "unit" in meantUnit(unit)
    ? { name: text.slice(0, cut), unit }
    : { name: text };
}
