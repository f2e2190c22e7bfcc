import { checksFor } from "../check/mod.ts";
import type { FillerProperties, ResinProperties } from "../materials/mod.ts";
import type { PuttyRecipe } from "./putty_recipe.ts";
import {
  hashinShtrikmanBounds,
  isotropicModuli,
  type ModulusBounds,
  type Phase,
  voigtReussBounds,
} from "./stiffness_bounds.ts";

const check = checksFor("compute the putty stiffness");

/** Elastic figures of the two solids in a putty. */
export interface PuttySolids {
  /** Cured resin. */
  readonly resin: Pick<ResinProperties, "E" | "nu">;
  /** Filler, its particle taken as a solid body. */
  readonly filler: Pick<FillerProperties, "E" | "nu">;
}

/** Between which moduli a putty lies. */
export interface PuttyStiffness {
  /** Widest bounds, all strained or all stressed alike. */
  readonly voigtReuss: ModulusBounds;
  /** Tighter bounds for an isotropic mixture of resin, filler and air. */
  readonly hashinShtrikman: ModulusBounds;
  /** The same for resin and filler alone, as if the putty were free of air. */
  readonly withoutAir: ModulusBounds;
}

/**
 * Bounds of a cured putty's moduli from its recipe.
 *
 * Formula: `voigtReussBounds` and `hashinShtrikmanBounds` with shares (1 − va)(1 − φ) resin,
 * (1 − va)φ filler, va air
 *
 * Range: perfect bond, no crushed spheres. With air both lower bounds are 0, hence the pair
 * without air beside them.
 *
 * Source: Hashin and Shtrikman 1963, from memory.
 *
 * @param recipe From `recipeForDensity` or `stiffestRecipe`.
 * @param solids Elastic figures of resin and filler.
 * @returns Bounds of bulk, shear and Young's modulus [Pa].
 * @throws {InputError} If a modulus or Poisson ratio is outside its range.
 *
 * @example
 * ```ts
 * import { puttyStiffness, recipeForDensity } from "@laminate/notebooks/filler";
 * import { assert } from "@std/assert";
 *
 * const filler = { particleDensity: 200, bulkDensity: 120, packing: 0.6 };
 * const recipe = recipeForDensity(675, { resinDensity: 1150, filler, airFraction: 0 });
 * const { hashinShtrikman } = puttyStiffness(recipe, {
 *   resin: { E: 3e9, nu: 0.36 },
 *   filler: { E: 2e9, nu: 0.25 },
 * });
 * assert(hashinShtrikman.youngsModulus.low > 2e9 && hashinShtrikman.youngsModulus.high < 3e9);
 * ```
 */
export function puttyStiffness(recipe: PuttyRecipe, solids: PuttySolids): PuttyStiffness {
  const { airFraction, fillerVolumeFraction } = check.object("recipe", recipe);
  const { resin, filler } = check.object("solids", solids);
  check.object("resin", resin);
  check.object("filler", filler);
  check.fraction("air fraction", airFraction);
  check.fraction("filler by volume", fillerVolumeFraction);
  const dense: readonly Phase[] = [
    { ...isotropicModuli(resin.E, resin.nu), fraction: 1 - fillerVolumeFraction },
    { ...isotropicModuli(filler.E, filler.nu), fraction: fillerVolumeFraction },
  ];
  const airy: readonly Phase[] = [
    ...dense.map((phase) => ({ ...phase, fraction: phase.fraction * (1 - airFraction) })),
    { bulkModulus: 0, shearModulus: 0, fraction: airFraction },
  ];
  return {
    voigtReuss: voigtReussBounds(airy),
    hashinShtrikman: hashinShtrikmanBounds(airy),
    withoutAir: hashinShtrikmanBounds(dense),
  };
}
