/**
 * What if? Loads to design for, sweeps over choices, the trade-off front, the lightest that will
 * do, and which input matters.
 *
 * @module
 */
export type { LinearLoad, PatchLoad, UniformLoad } from "../sandwich/mod.ts";
export * from "./loads.ts";
export * from "./low_discrepancy.ts";
export * from "./sweep.ts";
export * from "./front.ts";
export * from "./lightest.ts";
export * from "./one_at_a_time.ts";
export * from "./variance_shares.ts";
export * from "./panel_design.ts";
export * from "./rank_cures.ts";
export * from "./beam_sweep.ts";
export * from "./in_workers.ts";
export * from "./panel_costs.ts";
