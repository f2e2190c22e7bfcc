/**
 * What is 6 oz/yd², 1/4 in, 25 inHg in SI, and back? The edge of the house: units exist here and
 * nowhere further in.
 *
 * Start with {@link readQuantity} for what people write, {@link showQuantity} for what they read, and
 * {@link toSI} and {@link fromSI} for plain numbers. This room is slow to load, as the only one.
 *
 * @example In trade units, through SI, and back
 * ```ts
 * import { readQuantity, showQuantity } from "@laminate/notebooks/quantity";
 * import { assertEquals } from "@std/assert";
 *
 * const thickness = readQuantity('1/4"', "length");
 * assertEquals(thickness, 0.00635);
 * assertEquals(showQuantity(thickness, "length"), "6.35 mm");
 * ```
 *
 * @module
 */
export * from "./dimension.ts";
export * from "./unit_table.ts";
export * from "./column_unit.ts";
export * from "./number_text.ts";
export * from "./quantity_text.ts";
export * from "./convert.ts";
export * from "./show.ts";
export * from "./sentence_units.ts";
export * from "./display_unit.ts";
