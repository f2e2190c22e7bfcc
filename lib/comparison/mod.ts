/**
 * Did it do what we predicted, and what should we change?
 *
 * @module
 */
export * from "./explain_gap.ts";
export * from "./rigidities.ts";
