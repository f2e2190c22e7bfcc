import { checksFor } from "../check/mod.ts";
import type { FillerProperties, Range, ResinProperties } from "../materials/mod.ts";
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

/** A solid whose modulus is known within a range. */
export interface RangedSolid {
  /** Young's modulus from its least to its greatest [Pa]. */
  readonly E: Range;
  /** Poisson ratio [1]. */
  readonly nu: number;
}

/**
 * Young's modulus that a putty may have, from the ranges of its resin and its filler and with its
 * air: the least of soft resin with soft filler, arranged as unluckily as they can be, to the
 * greatest of stiff ones.
 *
 * Formula: `hashinShtrikmanBounds` of resin and filler, low bound at the low ends, high bound at the
 * high ends; then the upper bound of that solid with air, as closed bubbles have it
 *
 * Range: as `puttyStiffness`; air in closed bubbles. Air that forms gaps from one side to the other
 * leaves less.
 *
 * Source: as `puttyStiffness`; bubbles apart from each other lie at the upper bound (Hashin 1962,
 * composite spheres), from memory.
 *
 * @param recipe From `recipeForDensity` or `stiffestRecipe`.
 * @param solids Ranges of resin and filler.
 * @returns Least and greatest Young's modulus [Pa].
 * @throws {InputError} If a modulus or Poisson ratio is outside its range, or the ends of a range are
 * the wrong way round.
 *
 * @example
 * ```ts
 * import { puttyModulusRange, recipeForDensity } from "@laminate/notebooks/filler";
 * import { assert } from "@std/assert";
 *
 * const filler = { particleDensity: 200, bulkDensity: 120, packing: 0.6 };
 * const recipe = recipeForDensity(675, { resinDensity: 1150, filler, airFraction: 0.03 });
 * const { low, high } = puttyModulusRange(recipe, {
 *   resin: { E: { low: 2.8e9, high: 3.5e9 }, nu: 0.36 },
 *   filler: { E: { low: 1.8e9, high: 3.5e9 }, nu: 0.21 },
 * });
 * assert(low > 1.8e9 && high < 3.5e9);
 * ```
 */
export function puttyModulusRange(
  recipe: PuttyRecipe,
  solids: { readonly resin: RangedSolid; readonly filler: RangedSolid },
): Range {
  const { airFraction } = check.object("recipe", recipe);
  const { resin, filler } = check.object("solids", solids);
  checkRange("resin", resin);
  checkRange("filler", filler);
  const at = (end: "low" | "high"): number => {
    const { withoutAir: { bulkModulus, shearModulus } } = puttyStiffness(recipe, {
      resin: { E: resin.E[end], nu: resin.nu },
      filler: { E: filler.E[end], nu: filler.nu },
    });
    return hashinShtrikmanBounds([
      {
        ...{ bulkModulus: bulkModulus[end], shearModulus: shearModulus[end] },
        fraction: 1 - airFraction,
      },
      { bulkModulus: 0, shearModulus: 0, fraction: airFraction },
    ]).youngsModulus.high;
  };
  return Object.freeze({ low: at("low"), high: at("high") });
}

function checkRange(name: string, solid: RangedSolid): void {
  const { low, high } = check.object(`modulus of the ${name}`, check.object(name, solid).E);
  check.nonNegative(`least modulus of the ${name}`, low, "Pa");
  check.nonNegative(`greatest modulus of the ${name}`, high, "Pa");
  if (!(low <= high)) {
    check.refuse(`least modulus of the ${name}`, low, `must not be above the greatest, ${high} Pa`);
  }
}
