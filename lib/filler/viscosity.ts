import { checksFor } from "../check/mod.ts";
import type { PuttyRecipe } from "./putty_recipe.ts";

const check = checksFor("compute the viscosity of the putty");

/** Einstein's coefficient: how strongly a few rigid spheres thicken a liquid [1]. */
export const EINSTEIN_COEFFICIENT = 2.5;

/** How a filler thickens a liquid. */
export interface Thickening {
  /** Volume fraction at which nothing moves any more; 0.64 for spheres at random [1]. */
  readonly maximumPacking: number;
  /** Intrinsic viscosity; `EINSTEIN_COEFFICIENT` for spheres if left out [1]. */
  readonly intrinsicViscosity?: number;
}

/**
 * How many times thicker a resin gets with filler.
 *
 * Formula: η/η₀ = (1 − φ/φm)^(−[η] φm)
 *
 * Range: φ from 0 to below φm; slow stirring of rigid particles. Fume, fibres and entrained air
 * thicken far more than this.
 *
 * Source: I. M. Krieger, T. J. Dougherty, Trans. Soc. Rheol. 3 (1959) 137, from memory.
 *
 * @param fillerVolumeFraction Filler by volume of resin and filler, φ [1].
 * @param thickening Maximum packing φm and intrinsic viscosity [η] [1].
 * @returns Viscosity over that of the resin alone [1].
 * @throws {InputError} If the filler is not from 0 to below the maximum packing.
 *
 * @example
 * ```ts
 * import { relativeViscosity } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(relativeViscosity(0.5, { maximumPacking: 0.64 }), 11.4, 0.05);
 * ```
 */
export function relativeViscosity(
  fillerVolumeFraction: number,
  thickening: Thickening,
): number {
  const { packing, exponent } = checkThickening(thickening);
  check.nonNegative("filler by volume", fillerVolumeFraction);
  if (!(fillerVolumeFraction < packing)) {
    check.refuse(
      "filler by volume",
      fillerVolumeFraction,
      `must be below the maximum packing, ${packing}: there it no longer flows`,
    );
  }
  const relative = Math.exp(-exponent * Math.log1p(-fillerVolumeFraction / packing));
  return check.result("relative viscosity", relative);
}

/**
 * How much filler makes a resin a wanted number of times thicker.
 *
 * Formula: φ = φm [1 − (η/η₀)^(−1/([η] φm))]
 *
 * Range: η/η₀ of 1 or above.
 *
 * Source: Krieger and Dougherty 1959, solved for φ.
 *
 * @param relative Viscosity over that of the resin alone [1].
 * @param thickening Maximum packing and intrinsic viscosity [1].
 * @returns Filler by volume of resin and filler [1].
 * @throws {InputError} If the ratio is below 1 or the thickening outside its range.
 *
 * @example
 * ```ts
 * import { fillerForViscosity, relativeViscosity } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const filler = fillerForViscosity(100, { maximumPacking: 0.64 });
 * assertAlmostEquals(relativeViscosity(filler, { maximumPacking: 0.64 }), 100, 1e-9);
 * ```
 */
export function fillerForViscosity(relative: number, thickening: Thickening): number {
  const { packing, exponent } = checkThickening(thickening);
  check.finite("relative viscosity", relative);
  if (!(relative >= 1)) check.refuse("relative viscosity", relative, "must be 1 or above");
  const volume = packing * -Math.expm1(-Math.log(relative) / exponent);
  return check.result("volume fraction", volume);
}

/** What decides whether a putty can be stirred. */
export interface Stirring extends Thickening {
  /** Viscosity of the mixed resin at the temperature of the day [Pa s]. */
  readonly resinViscosity: number;
  /** Thickest that the crew's stick or mixer turns, from a trial [Pa s]. */
  readonly thickestStirred: number;
}

/** Whether a putty can be stirred. */
export interface StirVerdict {
  /** Holds: it stirs. Fails: it does not. Not known: too close to the limit to say. */
  readonly verdict: "holds" | "fails" | "not known";
  /** Viscosity of the putty; none at or above the maximum packing [Pa s]. */
  readonly viscosity?: number;
  /** Filler at which stirring stops, by volume of resin and filler [1]. */
  readonly fillerLimit: number;
  /** What to know about the verdict. */
  readonly notes: readonly string[];
}

/** The law's curve is so steep near its end that a factor of 2 is not resolved (estimate). */
const DOUBTFUL_FACTOR = 2;

/**
 * Whether a putty of a recipe can still be stirred.
 *
 * Formula: η₀ (1 − φ/φm)^(−[η] φm) against the thickest that the crew can stir
 *
 * Range: within a factor of 2 of the limit the verdict is "not known".
 *
 * Source: Krieger and Dougherty 1959, from memory. Putty is mixed until it can hardly be stirred
 * and holds a peak: common practice, no source.
 *
 * @param recipe From `recipeForDensity` or `stiffestRecipe`.
 * @param stirring Viscosity of the resin and the thickest that can be stirred [Pa s].
 * @returns Verdict, viscosity [Pa s] and the filler at which stirring stops [1].
 * @throws {InputError} If an input is outside its range.
 *
 * @example
 * ```ts
 * import { recipeForDensity, stirVerdict } from "@laminate/notebooks/filler";
 * import { assertEquals } from "@std/assert";
 *
 * const filler = { particleDensity: 200, bulkDensity: 120, packing: 0.64 };
 * const recipe = recipeForDensity(800, { resinDensity: 1150, filler, airFraction: 0.02 });
 * const { verdict } = stirVerdict(recipe, {
 *   maximumPacking: 0.64, resinViscosity: 1, thickestStirred: 100,
 * });
 * assertEquals(verdict, "holds");
 * ```
 */
export function stirVerdict(recipe: PuttyRecipe, stirring: Stirring): StirVerdict {
  const { fillerVolumeFraction } = check.object("recipe", recipe);
  check.fraction("filler by volume", fillerVolumeFraction);
  const { resinViscosity, thickestStirred, maximumPacking } = check.object("stirring", stirring);
  check.positive("viscosity of the resin", resinViscosity, "Pa s");
  check.positive("thickest that can be stirred", thickestStirred, "Pa s");
  checkThickening(stirring);
  const room = thickestStirred / resinViscosity;
  const fillerLimit = room > 1 ? fillerForViscosity(room, stirring) : 0;
  if (!(fillerVolumeFraction < maximumPacking)) {
    return {
      verdict: "fails",
      fillerLimit,
      notes: ["The filler is at or above its maximum packing: nothing flows."],
    };
  }
  const viscosity = check.result(
    "viscosity",
    resinViscosity * relativeViscosity(fillerVolumeFraction, stirring),
    "Pa s",
  );
  if (viscosity <= thickestStirred / DOUBTFUL_FACTOR) {
    return { verdict: "holds", viscosity, fillerLimit, notes: [] };
  }
  if (viscosity > thickestStirred * DOUBTFUL_FACTOR) {
    return { verdict: "fails", viscosity, fillerLimit, notes: [] };
  }
  return {
    verdict: "not known",
    viscosity,
    fillerLimit,
    notes: ["Within a factor of 2 of what can be stirred: add the last of the filler by trial."],
  };
}

function checkThickening(thickening: Thickening): { packing: number; exponent: number } {
  const { maximumPacking, intrinsicViscosity = EINSTEIN_COEFFICIENT } = check.object(
    "thickening",
    thickening,
  );
  check.positive("maximum packing", check.fraction("maximum packing", maximumPacking));
  check.positive("intrinsic viscosity", intrinsicViscosity);
  return { packing: maximumPacking, exponent: intrinsicViscosity * maximumPacking };
}
