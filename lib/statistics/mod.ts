/**
 * What does that scatter say? Fits with intervals, uncertainty carried through formulas, tolerance
 * factors and updated estimates, without a word of the trade.
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
