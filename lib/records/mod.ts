/**
 * What did we weigh and measure? The part folder and the materials catalogue; CSV in and out, each
 * bad cell named by file, line and column.
 *
 * Start with {@link readPart} for everything recorded of a part and {@link readCatalogue} for the
 * materials, {@link readTable} for a table of your own, and {@link tableText} to write one.
 *
 * @example A spreadsheet's table, with decimal commas and its unit in the heading
 * ```ts
 * import { numberColumn, readTable, textColumn } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const columns = { part: textColumn(), mass: numberColumn("mass", { above: 0 }) };
 * const { rows } = readTable("part;mass_g\nhatch;412,5\n", { columns });
 * assertEquals(rows, [{ part: "hatch", mass: 0.4125 }]);
 * ```
 *
 * @module
 */
export * from "./column.ts";
export * from "./decode.ts";
export * from "./delimiter.ts";
export * from "./left_out.ts";
export { type DecimalSign, type NumberCell, readNumberCell } from "./number_cell.ts";
export * from "./table.ts";
export * from "./column_table.ts";
export { type TableContent, tableText, type TableTextOptions } from "./table_text.ts";
export * from "./catalogue.ts";
export * from "./catalogue_text.ts";
export type { CoreLayer, LayerRecord, LayupRecord, ReinforcementLayer } from "./layups.ts";
export type { WeighingRecord } from "./weighings.ts";
export type { Branch, Loading, LoadTestRecord } from "./load_tests.ts";
export type { CouponRecord, CouponTest } from "./coupons.ts";
export type { PuttyRecord } from "./putty.ts";
export type { FilletRecord } from "./fillets.ts";
export { type WorkshopInWords, workshopInWords, type WorkshopRecord } from "./workshop.ts";
export type { MountRecord } from "./mounts.ts";
export { readSettings, type SettingRecord, settingsFile } from "./settings.ts";
export * from "./part.ts";
export * from "./files.ts";
export * from "./replace_file.ts";
