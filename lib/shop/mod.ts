/**
 * What do I cut, mix, bag, wait for, pay?
 *
 * Start with {@link planDay}, the whole plan of a lay-up day from plain inputs, and {@link dayCosts}
 * for what it takes. The parts of it stand by themselves: {@link cutFromRoll}, {@link planResin},
 * {@link planBatches}, {@link potLife}, {@link planBag}, {@link bagPressure}, {@link curePlan} and
 * {@link cautionsFor}. The products' safety sheets come first.
 *
 * @example Resin for 4 m² of a 200 g cloth at half and half by mass, a fifth of it lost
 * ```ts
 * import { planResin } from "@laminate/notebooks/shop";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const plan = planResin({
 *   cloths: [{ name: "200 g cloth", area: 4, arealWeight: 0.2, fibreMassFraction: 0.5 }],
 *   cores: [],
 *   coats: [],
 *   lossFraction: 0.2,
 *   phr: 25,
 *   densities: { resinDensity: 1150, hardenerDensity: 980 },
 * });
 * assertAlmostEquals(plan.inPart, 0.8, 1e-12);
 * assertAlmostEquals(plan.total, 1, 1e-12);
 * ```
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
