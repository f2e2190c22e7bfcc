/**
 * Show me: figures on Observable Plot, one function a figure, each returning an SVG element that
 * stands alone, reads in light and dark and without colour, and carries its text alternative.
 *
 * Figures take values in SI and are told the unit in which to show them.
 *
 * @module
 */
export type { AxisUnit, Finding } from "./_figure.ts";
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
