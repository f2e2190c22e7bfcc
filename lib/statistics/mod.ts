/**
 * What does that scatter say? Fits with intervals, uncertainty carried through formulas, tolerance
 * factors and updated estimates, without a word of the trade.
 *
 * Start with {@link fromHalfWidth} or {@link fromReadings} for one uncertain value, {@link propagate}
 * to carry it through any formula, {@link fitLine} for readings that should lie on a line, and
 * {@link updateEstimate} where something was believed before.
 *
 * @example A quotient of two uncertain values, and which of them matters
 * ```ts
 * import { fromHalfWidth, propagate } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals, assertEquals } from "@std/assert";
 *
 * const ratio = propagate(({ a, b }) => a / b, {
 *   a: fromHalfWidth(100, 1), // anywhere within 1 on both sides
 *   b: { value: 4, u: 0.05 },
 * });
 * assertAlmostEquals(ratio.value, 25, 1e-12);
 * // Relative: 0.01/√3 for a, 0.0125 for b.
 * assertAlmostEquals(ratio.u, 25 * Math.hypot(0.01 / Math.sqrt(3), 0.0125), 1e-8);
 * assertEquals(ratio.budget[0]?.name, "b");
 * ```
 *
 * @module
 */
export * from "./normal.ts";
export * from "./student_t.ts";
export * from "./chi_squared.ts";
export * from "./fisher_f.ts";
export * from "./uncertain.ts";
export * from "./propagate.ts";
export * from "./summary.ts";
export * from "./line_fit.ts";
export * from "./line_prediction.ts";
export * from "./regression.ts";
export * from "./group_fit.ts";
export * from "./monte_carlo.ts";
export * from "./noncentral_t.ts";
export * from "./tolerance.ts";
export * from "./robust_line.ts";
export * from "./slips.ts";
export * from "./line_both.ts";
export * from "./update_estimate.ts";
export * from "./update_parameters.ts";
export * from "./pool_groups.ts";
export * from "./update_groups.ts";
export * from "./control_chart.ts";
export * from "./trend.ts";
export * from "./simulate.ts";
