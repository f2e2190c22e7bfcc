import { checksFor } from "../check/mod.ts";
import type { PuttyRecipe } from "./putty_recipe.ts";

const check = checksFor("compute the putty batch");

/** A batch of putty: what to weigh, and what comes out. */
export interface PuttyBatch {
  /** Mixed resin, hardener included [kg]. */
  readonly resinMass: number;
  /** Filler [kg]. */
  readonly fillerMass: number;
  /** Filler as it lies in a cup, for those who measure by volume [m³]. */
  readonly fillerCupVolume: number;
  /** Putty; the air counts with its mass [kg]. */
  readonly puttyMass: number;
  /** Putty, air included [m³]. */
  readonly puttyVolume: number;
}

/**
 * Filler for the mixed resin in hand, and the putty it makes.
 *
 * Formula: m_f = m_r f, cup = m_f/ρ_bulk, V = (m_r/ρr + m_f/ρf)/(1 − va), m = ρ V
 *
 * Range: any mass of 0 or above.
 *
 * Source: mass balance.
 *
 * @param recipe From `recipeForDensity` or `stiffestRecipe`.
 * @param resinMass Mixed resin, hardener included [kg].
 * @returns Filler by mass [kg] and by cup [m³], and the putty's mass [kg] and volume [m³].
 * @throws {InputError} If the mass is below 0 or the recipe is not one.
 *
 * @example
 * ```ts
 * import { puttyFromResin, recipeForDensity } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const filler = { particleDensity: 200, bulkDensity: 120, packing: 0.6 };
 * const recipe = recipeForDensity(675, { resinDensity: 1150, filler, airFraction: 0 });
 * const batch = puttyFromResin(recipe, 0.115);
 * assertAlmostEquals(batch.fillerMass, 0.020, 1e-12);
 * assertAlmostEquals(batch.puttyVolume, 200e-6, 1e-15);
 * ```
 */
export function puttyFromResin(recipe: PuttyRecipe, resinMass: number): PuttyBatch {
  checkRecipe(recipe);
  check.nonNegative("mass of mixed resin", resinMass, "kg");
  const { filler, resinDensity, airFraction, density } = recipe;
  const fillerMass = resinMass * recipe.fillerPerResin;
  const solids = resinMass / resinDensity + fillerMass / filler.particleDensity;
  const puttyVolume = solids / (1 - airFraction);
  return check.results({
    resinMass,
    fillerMass,
    fillerCupVolume: fillerMass / filler.bulkDensity,
    puttyMass: puttyVolume * density,
    puttyVolume,
  });
}

/**
 * Resin and filler for a wanted volume of putty.
 *
 * Formula: m_r = V (1 − va)(1 − φ) ρr, the rest as `puttyFromResin`
 *
 * Range: any volume of 0 or above; losses in the cup and on the blade come on top.
 *
 * Source: mass balance.
 *
 * @param recipe From `recipeForDensity` or `stiffestRecipe`.
 * @param volume Putty wanted [m³].
 * @returns Resin and filler by mass [kg] and cup [m³], and the putty's mass [kg].
 * @throws {InputError} If the volume is below 0 or the recipe is not one.
 *
 * @example
 * ```ts
 * import { puttyForVolume, recipeForDensity } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const filler = { particleDensity: 200, bulkDensity: 120, packing: 0.6 };
 * const recipe = recipeForDensity(675, { resinDensity: 1150, filler, airFraction: 0 });
 * assertAlmostEquals(puttyForVolume(recipe, 200e-6).resinMass, 0.115, 1e-12);
 * ```
 */
export function puttyForVolume(recipe: PuttyRecipe, volume: number): PuttyBatch {
  checkRecipe(recipe);
  check.nonNegative("volume of putty", volume, "m³");
  const resinShare = (1 - recipe.airFraction) * (1 - recipe.fillerVolumeFraction);
  return puttyFromResin(
    recipe,
    check.result("mass of resin", volume * resinShare * recipe.resinDensity, "kg"),
  );
}

function checkRecipe(recipe: PuttyRecipe): void {
  check.object("recipe", recipe);
  check.object("filler", recipe.filler);
  check.positive("resin density", recipe.resinDensity, "kg/m³");
  check.positive("particle density", recipe.filler.particleDensity, "kg/m³");
  check.positive("bulk density", recipe.filler.bulkDensity, "kg/m³");
  check.fraction("air fraction", recipe.airFraction);
  check.fraction("filler by volume", recipe.fillerVolumeFraction);
  check.nonNegative("filler per resin", recipe.fillerPerResin);
  check.positive("density", recipe.density, "kg/m³");
}
