/**
 * Show it in a notebook: values that display as HTML and print as text. The headless runner and
 * the page export live in this room too, behind the tasks in deno.json; a library user needs
 * neither, so they are not exported here.
 *
 * @module
 */
export * from "./display.ts";
export * from "./progress.ts";
export * from "./prose.ts";
export * from "./printed_sheet.ts";
export * from "./table.ts";
export * from "./inputs.ts";
export * from "./figure.ts";
export * from "./live_figure.ts";
export * from "./judge_answer.ts";
export type { Dimension } from "../quantity/mod.ts";
export * from "./exercise.ts";
export * from "./working.ts";
