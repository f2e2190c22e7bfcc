/**
 * What if? Loads to design for, sweeps over choices, the trade-off front, the lightest that will
 * do, and which input matters.
 *
 * Start with {@link sweep} over any function of yours, {@link lightest} and {@link tradeOffFront} to
 * choose from what it gives, {@link makePanel} and {@link judgePanel} for panels, and
 * {@link oneAtATime} or {@link varianceShares} for what matters.
 *
 * @example The lightest core that is stiff enough, stiffness growing with its thickness squared
 * ```ts
 * import { lightest, sweep } from "@laminate/notebooks/study";
 * import { assertEquals } from "@std/assert";
 *
 * const { points } = await sweep({ core: [5, 10, 15, 20] }, ({ core }) => ({
 *   mass: 800 + 80 * core,
 *   bend: 900 / core ** 2,
 * }));
 * const aim = { least: "mass", limits: [{ figure: "bend", max: 5 }] };
 * // 900/10² is 9, 900/15² is 4.
 * assertEquals(lightest(points, ({ result }) => result, aim).chosen?.result.mass, 2000);
 * ```
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
export * from "./rank_remedies.ts";
export * from "./beam_sweep.ts";
export * from "./in_workers.ts";
export * from "./panel_costs.ts";
