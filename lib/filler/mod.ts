/**
 * How light is this putty, how much fills this corner?
 *
 * Mixing ratios of resin and hardener stand here too, since each putty begins with a mix.
 *
 * @module
 */
export type { FillerProperties, Range, ResinProperties } from "../materials/mod.ts";
export type {
  BudgetLine,
  LimitShape,
  Propagated,
  Uncertain,
  UncertainInput,
} from "../statistics/mod.ts";
export * from "./packing.ts";
export * from "./mix_ratio.ts";
export * from "./putty_density.ts";
export * from "./putty_recipe.ts";
export * from "./putty_batch.ts";
export * from "./stiffness_bounds.ts";
export * from "./putty_stiffness.ts";
export * from "./fillet.ts";
export * from "./fillet_schedule.ts";
export * from "./radius_rule.ts";
export * from "./gauge_check.ts";
export * from "./stiffened_corner.ts";
export * from "./skim.ts";
export * from "./viscosity.ts";
