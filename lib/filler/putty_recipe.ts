import { checksFor } from "../check/mod.ts";
import type { FillerProperties } from "../materials/mod.ts";
import { AIR_DENSITY } from "./putty_density.ts";

const check = checksFor("compute the putty recipe");

/** What a recipe has to know of the filler. */
export type RecipeFiller = Pick<FillerProperties, "particleDensity" | "bulkDensity" | "packing">;

/** What goes into the putty. */
export interface PuttyIngredients {
  /** Density of the mixed resin, thickened or not [kg/m³]. */
  readonly resinDensity: number;
  /** The filler. */
  readonly filler: RecipeFiller;
  /** Air by volume of the finished putty [1]. */
  readonly airFraction: number;
  /** Density of that air; `AIR_DENSITY` if left out [kg/m³]. */
  readonly airDensity?: number;
}

/** A putty, as proportions. */
export interface PuttyRecipe extends PuttyIngredients {
  /** Filler by mass of resin and filler [1]. */
  readonly fillerMassFraction: number;
  /** Filler mass for a mass of mixed resin of 1 [1]. */
  readonly fillerPerResin: number;
  /** Filler by volume of resin and filler, air left out [1]. */
  readonly fillerVolumeFraction: number;
  /** Density of the putty, air included [kg/m³]. */
  readonly density: number;
  /** What is doubtful about it. */
  readonly notes: readonly string[];
}

/**
 * Recipe for a putty of a wanted density with one filler and a given share of air.
 *
 * Formula: ρ₀ = (ρ − va ρ_air)/(1 − va); x = (1/ρ₀ − 1/ρr)/(1/ρf − 1/ρr), x filler by mass of
 * resin and filler, ρf of its particle
 *
 * Range: a density between that of the filler and that of the resin, air included. With more
 * filler than packs closely, air must fill what resin does not: that is noted, and refused where
 * even so the particles have no room.
 *
 * Source: mass balance.
 *
 * @param targetDensity Density wanted [kg/m³].
 * @param ingredients Resin, filler and air.
 * @returns The recipe.
 * @throws {InputError} If an input is outside its range, or no mix reaches the density.
 *
 * @example
 * ```ts
 * import { puttyDensity, recipeForDensity } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const filler = { particleDensity: 200, bulkDensity: 120, packing: 0.6 };
 * const recipe = recipeForDensity(700, { resinDensity: 1150, filler, airFraction: 0.05 });
 * const density = puttyDensity({
 *   parts: [
 *     { mass: 1, density: 1150 },
 *     { mass: recipe.fillerPerResin, density: 200 },
 *   ],
 *   airFraction: 0.05,
 * });
 * assertAlmostEquals(density, 700, 1e-9);
 * ```
 */
export function recipeForDensity(
  targetDensity: number,
  ingredients: PuttyIngredients,
): PuttyRecipe {
  check.positive("target density", targetDensity, "kg/m³");
  const { airDensity, rhoResin, rhoFiller, air } = checkIngredients(ingredients);
  const solid = (targetDensity - air * airDensity) / (1 - air);
  const lightest = Math.min(rhoResin, rhoFiller);
  const heaviest = Math.max(rhoResin, rhoFiller);
  if (!(solid >= lightest && solid <= heaviest) || rhoResin === rhoFiller) {
    const withAir = (rho: number): string => (rho * (1 - air) + air * airDensity).toPrecision(4);
    check.refuse(
      "target density",
      targetDensity,
      `must be between ${withAir(lightest)} and ${withAir(heaviest)} kg/m³ with this filler, ` +
        "resin and air, and the filler of another density than the resin",
    );
  }
  const fillerVolumeFraction = (solid - rhoResin) / (rhoFiller - rhoResin);
  return recipeOf(fillerVolumeFraction, ingredients);
}

/** Size of the particles and the film of resin around each. */
export interface ResinFilm {
  /** Diameter of a particle [m]. */
  readonly particleDiameter: number;
  /** Resin around each particle that stirring needs [m]. */
  readonly filmThickness: number;
}

/**
 * Recipe for putty "as stiff as can be stirred": particles wear a film of resin and pack as
 * closely as the dry powder does.
 *
 * Formula: φ = φ_packed (d/(d + 2δ))³, φ filler by volume of resin and filler
 *
 * Range: particles of about one size, film δ of 0 or above. The film is found by trial:
 * stir a weighed batch stiff and read it with `filmFromTrial`.
 *
 * Source: geometry of coated spheres.
 *
 * @param film Diameter of the particles and thickness of the film [m].
 * @param ingredients Resin, filler and air.
 * @returns The recipe.
 * @throws {InputError} If an input is outside its range.
 *
 * @example Spheres of 60 µm with 2 µm of resin around each
 * ```ts
 * import { stiffestRecipe } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const recipe = stiffestRecipe(
 *   { particleDiameter: 60e-6, filmThickness: 2e-6 },
 *   {
 *     resinDensity: 1150,
 *     filler: { particleDensity: 200, bulkDensity: 120, packing: 0.6 },
 *     airFraction: 0.05,
 *   },
 * );
 * assertAlmostEquals(recipe.fillerVolumeFraction, 0.6 * (60 / 64) ** 3, 1e-12);
 * ```
 */
export function stiffestRecipe(film: ResinFilm, ingredients: PuttyIngredients): PuttyRecipe {
  const { particleDiameter, filmThickness } = check.object("film", film);
  check.positive("particle diameter", particleDiameter, "m");
  check.nonNegative("film thickness", filmThickness, "m");
  checkIngredients(ingredients);
  const bare = particleDiameter / (particleDiameter + 2 * filmThickness);
  return recipeOf(ingredients.filler.packing * bare ** 3, ingredients);
}

/** A batch that was stirred as stiff as it would go. */
export interface StirredBatch {
  /** Mixed resin [kg]. */
  readonly resinMass: number;
  /** Filler [kg]. */
  readonly fillerMass: number;
  /** Density of the mixed resin [kg/m³]. */
  readonly resinDensity: number;
  /** The filler. */
  readonly filler: RecipeFiller;
  /** Diameter of a particle [m]. */
  readonly particleDiameter: number;
}

/**
 * Film of resin around each particle, from a batch stirred as stiff as it would go.
 *
 * Formula: δ = (d/2)[(φ_packed/φ)^(1/3) − 1]
 *
 * Range: negative where the batch holds more filler than packs closely: the packing or a density
 * is wrong, or the batch was full of air. It is not clipped, so that the error shows.
 *
 * Source: `stiffestRecipe` solved for the film.
 *
 * @param batch Masses [kg], densities [kg/m³] and size of the particles [m].
 * @returns Film thickness [m].
 * @throws {InputError} If an input is not above 0.
 *
 * @example
 * ```ts
 * import { filmFromTrial } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const film = filmFromTrial({
 *   resinMass: 0.115,
 *   fillerMass: 0.020,
 *   resinDensity: 1150,
 *   filler: { particleDensity: 200, bulkDensity: 120, packing: 0.64 },
 *   particleDiameter: 60e-6,
 * });
 * assertAlmostEquals(film, 30e-6 * (Math.cbrt(0.64 / 0.5) - 1), 1e-15);
 * ```
 */
export function filmFromTrial(batch: StirredBatch): number {
  const { resinMass, fillerMass, resinDensity, filler, particleDiameter } = check.object(
    "batch",
    batch,
  );
  check.positive("resin mass", resinMass, "kg");
  check.positive("filler mass", fillerMass, "kg");
  check.positive("particle diameter", particleDiameter, "m");
  checkIngredients({ resinDensity, filler, airFraction: 0 });
  const fillerVolume = fillerMass / filler.particleDensity;
  const share = fillerVolume / (fillerVolume + resinMass / resinDensity);
  const film = particleDiameter / 2 * (Math.cbrt(filler.packing / share) - 1);
  return check.result("film thickness", film, "m");
}

function checkIngredients(
  ingredients: PuttyIngredients,
): { airDensity: number; rhoResin: number; rhoFiller: number; air: number } {
  const { resinDensity, filler, airFraction, airDensity = AIR_DENSITY } = check.object(
    "ingredients",
    ingredients,
  );
  check.positive("resin density", resinDensity, "kg/m³");
  check.object("filler", filler);
  check.positive("particle density", filler.particleDensity, "kg/m³");
  check.positive("bulk density", filler.bulkDensity, "kg/m³");
  check.positive("packing", check.fraction("packing", filler.packing));
  check.fraction("air fraction", airFraction);
  if (!(airFraction < 1)) check.refuse("air fraction", airFraction, "must be below 1");
  check.nonNegative("air density", airDensity, "kg/m³");
  return {
    airDensity,
    rhoResin: resinDensity,
    rhoFiller: filler.particleDensity,
    air: airFraction,
  };
}

/** Share of the closest packing from which a putty hardly stirs (estimate). */
const STIRS_HARD = 0.9;

function recipeOf(fillerVolumeFraction: number, ingredients: PuttyIngredients): PuttyRecipe {
  const { airDensity, rhoResin, rhoFiller, air } = checkIngredients(ingredients);
  const { packing } = ingredients.filler;
  if (!(fillerVolumeFraction < 1)) {
    check.refuse("filler by volume", fillerVolumeFraction, "must leave room for resin: below 1");
  }
  if (!(fillerVolumeFraction * (1 - air) <= packing)) {
    check.refuse(
      "filler by volume of the putty",
      fillerVolumeFraction * (1 - air),
      `must not be above the closest packing, ${packing}: take a lighter filler or a heavier putty`,
    );
  }
  const filler = fillerVolumeFraction * rhoFiller;
  const resin = (1 - fillerVolumeFraction) * rhoResin;
  return {
    ...ingredients,
    fillerMassFraction: filler / (filler + resin),
    fillerPerResin: check.result("filler per resin", filler / resin),
    fillerVolumeFraction,
    density: check.result("density", (filler + resin) * (1 - air) + air * airDensity, "kg/m³"),
    notes: recipeNotes(fillerVolumeFraction, packing),
  };
}

function recipeNotes(fillerVolumeFraction: number, packing: number): readonly string[] {
  if (fillerVolumeFraction > packing) {
    return [
      "There is more filler than packs closely: air, not resin, fills part of the gaps. " +
      "The putty is dry and weak.",
    ];
  }
  if (fillerVolumeFraction > STIRS_HARD * packing) {
    return ["The filler is within a tenth of its closest packing: this hardly stirs."];
  }
  return [];
}
