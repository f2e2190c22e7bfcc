/**
 * Did it do what we predicted, and what should we change?
 *
 * @module
 */
export * from "./bending_test.ts";
export * from "./coupon_verdict.ts";
export * from "./explain_gap.ts";
export * from "./layup_code.ts";
export * from "./layup_design.ts";
export * from "./layup_inputs.ts";
export * from "./layup_orders.ts";
export * from "./hysteresis.ts";
export * from "./predicted_bending.ts";
export * from "./rigidities.ts";
export * from "./toe.ts";
export * from "./varied_layup.ts";
export * from "./weighed_parts.ts";
export type { LoadReadings } from "./_readings.ts";
