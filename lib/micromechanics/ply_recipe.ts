import { checksFor } from "../check/mod.ts";
import { formFactors } from "./form_factors.ts";
import type { Fibre, Reinforcement, Resin } from "../materials/mod.ts";

const check = checksFor("compute the cured ply");

/** A cloth, what its fibre and the resin are, and how much fibre the part holds. */
export interface PlyRecipe {
  /** The cloth, mat or unidirectional. */
  readonly reinforcement: Reinforcement;
  /** Its fibre. */
  readonly fibre: Fibre;
  /** The resin. */
  readonly resin: Resin;
  /** Fibre volume over volume, as planned or as weighed, Vf [1]. */
  readonly fibreVolumeFraction: number;
  /** Share of the straight fibre's modulus that is kept; as `stiffnessFactorOf` if left out [1]. */
  readonly stiffnessFactor?: number;
}

/**
 * Share of the straight fibre's modulus that a recipe keeps: its own, else the reinforcement's from
 * a builder's tests, else that of its form and weave.
 *
 * Formula: a choice of the first that is given
 *
 * Range: as `formFactors`.
 *
 * Source: as `formFactors`.
 *
 * @param recipe Reinforcement, and the share if it is given.
 * @returns The share that is kept [1].
 * @throws {InputError} If the form or weave is not known.
 *
 * @example
 * ```ts
 * import { stiffnessFactorOf } from "@laminate/notebooks/micromechanics";
 * import { readCatalogue } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const twill = (await readCatalogue()).reinforcements.get("glass twill 200")!;
 * assertEquals(stiffnessFactorOf({ reinforcement: twill }), 0.93);
 * assertEquals(stiffnessFactorOf({ reinforcement: { ...twill, stiffnessKept: 0.9 } }), 0.9);
 * ```
 */
export function stiffnessFactorOf(
  recipe: Pick<PlyRecipe, "reinforcement" | "stiffnessFactor">,
): number {
  const { reinforcement, stiffnessFactor } = check.object("recipe", recipe);
  const { stiffnessKept } = check.object("reinforcement", reinforcement);
  const factor = stiffnessFactor ?? stiffnessKept ?? formFactors(reinforcement).stiffness;
  return check.within("stiffness factor", factor, { min: 0.1, max: 1 });
}
