/**
 * What do I cut, mix, bag, wait for, pay?
 *
 * @module
 */
export type {
  FilletLine,
  FilletPlace,
  FilletPlan,
  FilletQuantity,
  FilletRun,
  FilletSchedule,
  FilletSection,
  MeasuredMix,
  Misreading,
  Mix,
  MixDensities,
  Skim,
} from "../filler/mod.ts";
export * from "./atmosphere.ts";
export * from "./vacuum.ts";
export * from "./leak.ts";
export * from "./pump.ts";
export * from "./infusion.ts";
export * from "./arrhenius.ts";
export * from "./cure.ts";
export * from "./nights.ts";
export * from "./resin_plan.ts";
export * from "./pot_life.ts";
export * from "./batches.ts";
export * from "./layup_run.ts";
export * from "./layup_trials.ts";
export * from "./cloth_piece.ts";
export * from "./cut_list.ts";
export * from "./core_sheets.ts";
export * from "./bagging.ts";
export * from "./cost_plan.ts";
export * from "./paint.ts";
export * from "./cautions.ts";
export * from "./clock.ts";
export * from "./day_task.ts";
export * from "./day_plan.ts";
export * from "./day_costs.ts";
