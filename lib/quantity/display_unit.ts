import { checksFor } from "../check/mod.ts";
import { fromSI } from "./convert.ts";
import type { Dimension } from "./dimension.ts";
import { ladders, printed, rung } from "./_display.ts";
import { kinds } from "./_hints.ts";

const check = checksFor("choose a unit to show");

/** A unit for a whole axis or column: every value is multiplied by one factor. */
export interface DisplayUnit {
  /** The unit as it is printed, such as `mm`. */
  readonly symbol: string;
  /** Shown value for one SI unit, such as 1000 for mm [1]. */
  readonly perSI: number;
}

/** What decides on the unit of an axis or column. */
export interface DisplayChoice {
  /** Metric or US units; metric if left out. */
  readonly system?: "metric" | "US";
  /** The largest value to be shown, in SI; picks m over mm, GPa over MPa [1]. */
  readonly largest?: number;
}

/**
 * One unit for all values of an axis or a column, as the trade shows that kind of quantity.
 *
 * Temperatures with a zero of their own have no such factor: show them one by one.
 *
 * @param dimension What kind of quantity it is.
 * @param choice Metric or US units, and the largest value in SI.
 * @returns The unit's symbol and its factor.
 * @throws {InputError} If the kind or system is unknown, the largest value is not finite, or the
 * kind is temperature.
 *
 * @example
 * ```ts
 * import { displayUnit } from "@laminate/notebooks/quantity";
 * import { assertAlmostEquals, assertEquals } from "@std/assert";
 *
 * assertEquals(displayUnit("thickness"), { symbol: "mm", perSI: 1000 });
 * assertAlmostEquals(displayUnit("thickness", { system: "US" }).perSI, 1 / 0.0254, 1e-12);
 * ```
 */
export function displayUnit(dimension: Dimension, choice: DisplayChoice = {}): DisplayUnit {
  const { system = "metric", largest = 0 } = check.object("the choice", choice);
  check.oneOf("the kind of quantity", dimension, kinds);
  check.oneOf("the system", system, ["metric", "US"]);
  check.finite("the largest value", largest);
  if (dimension === "temperature") {
    check.refuse("the kind of quantity", dimension, "must have no zero of its own");
  }
  const unit = rung(ladders[dimension][system], Math.abs(largest));
  return { symbol: unit === "1" ? "" : printed(unit), perSI: fromSI(1, unit, dimension) };
}
