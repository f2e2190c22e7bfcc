/**
 * Show it in a notebook: values that display as HTML and print as text.
 *
 * Start with {@link answer} for the one sentence that counts, {@link table}, {@link figure} and
 * {@link working} for what it rests on, {@link caution} where work can hurt someone, and
 * {@link exercise} for a lesson. The headless runner and the page export live in this room too, behind
 * the tasks in deno.json; a library user needs neither, so they are not exported here.
 *
 * @example The last value of a cell; in a terminal it prints as text
 * ```ts
 * import { consoleDisplay, table } from "@laminate/notebooks/notebook";
 * import { assertEquals } from "@std/assert";
 *
 * const shown = table([{ part: "hatch", mass: 1.25 }, { part: "sole", mass: 3.1 }], {
 *   caption: "Parts weighed",
 *   columns: [{ key: "part", heading: "Part" }, { key: "mass", heading: "Mass", unit: "kg" }],
 * });
 * assertEquals(
 *   shown[consoleDisplay](),
 *   "Parts weighed\nPart   Mass [kg]\nhatch       1.25\nsole         3.1",
 * );
 * ```
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
export { type LearnerPrediction, prediction, verdicts } from "./prediction.ts";
export * from "./folded.ts";
export * from "./working.ts";
export { leaveOutUnless } from "./left_out.ts";
