/**
 * Show me: figures on Observable Plot, one function a figure, each returning an SVG element that
 * stands alone, reads in light and dark and without colour, and carries its text alternative.
 *
 * Start with {@link barsFigure}, {@link linesFigure} and {@link intervalsFigure} for any figures of
 * yours; the others each draw one thing of the trade, such as {@link loadTestFigure} or
 * {@link polarFigure}. Figures take values in SI and are told the unit in which to show them.
 *
 * @example Two cores beside a limit
 * ```ts
 * import { barsFigure } from "@laminate/notebooks/charts";
 * import { assertEquals } from "@std/assert";
 *
 * const svg = barsFigure({
 *   bars: [{ label: "core 10 mm", value: 0.009 }, { label: "core 15 mm", value: 0.004 }],
 *   x: { name: "deflection", unit: { symbol: "mm", perSI: 1000 } },
 *   limit: { value: 0.005, label: "allowed" },
 * }, { title: "Only the core of 15 mm is stiff enough", description: "9 mm and 4 mm, allowed 5 mm." });
 * assertEquals(svg.tagName, "svg");
 * assertEquals(svg.outerHTML.includes("core 15 mm"), true);
 * ```
 *
 * @module
 */
export type { Axis, AxisUnit, Finding } from "./_figure.ts";
export * from "./bars_figure.ts";
export * from "./choice_map_figure.ts";
export * from "./control_chart_figure.ts";
export * from "./crossing_strips_figure.ts";
export * from "./envelope_figure.ts";
export * from "./front_figure.ts";
export * from "./intervals_figure.ts";
export * from "./lines_figure.ts";
export * from "./load_test_figure.ts";
export * from "./mode_map_figure.ts";
export * from "./nesting_figure.ts";
export * from "./polar_figure.ts";
export * from "./residuals_figure.ts";
export * from "./sheets_figure.ts";
export * from "./timeline_figure.ts";
