/**
 * What is 6 oz/yd², 1/4 in, 25 inHg in SI, and back? The edge of the house: units exist here and
 * nowhere further in.
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
export * from "./display_unit.ts";
