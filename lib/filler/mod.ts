/**
 * How light is this putty, how much fills this corner?
 *
 * Start with {@link recipeForDensity} or {@link stiffestRecipe} for a putty, {@link puttyForVolume} for
 * how much to stir, {@link filletQuantity} and {@link filletSchedule} for corners, and
 * {@link largestRadius} for what a corner allows. Mixing ratios of resin and hardener stand here too,
 * since each putty begins with a mix: {@link splitMix}.
 *
 * @example Putty for two fillets of 20 mm along 1.5 m, and the resin in it
 * ```ts
 * import { filletQuantity, puttyForVolume, recipeForDensity } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const filler = { particleDensity: 200, bulkDensity: 120, packing: 0.6 };
 * const recipe = recipeForDensity(675, { resinDensity: 1150, filler, airFraction: 0 });
 * const fillet = filletQuantity({ radius: 0.02, cornerDeg: 90, length: 1.5, count: 2, density: 675 });
 * // A square less a quarter of a circle; half of that putty is resin by volume.
 * const volume = 0.02 ** 2 * (1 - Math.PI / 4) * 3;
 * assertAlmostEquals(fillet.mass, 675 * volume, 1e-12);
 * assertAlmostEquals(puttyForVolume(recipe, volume).resinMass, 1150 * volume / 2, 1e-12);
 * ```
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
