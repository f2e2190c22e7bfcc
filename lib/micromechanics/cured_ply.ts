import { checksFor } from "../check/mod.ts";
import { plyThickness } from "../constituents/mod.ts";
import type { Lamina } from "../materials/mod.ts";
import { curedStrengths } from "./cured_strengths.ts";
import { formFactors } from "./form_factors.ts";
import { crossedLamina, parallelFibreLamina, randomLamina } from "./lamina_of_fibres.ts";
import { plyWorking, type PlyWorkingStep } from "./ply_working.ts";
import { largestFibreFraction } from "./packing.ts";
import { type PlyRecipe, stiffnessFactorOf } from "./ply_recipe.ts";

const check = checksFor("compute the cured ply");

/** Above this, a fibre fraction is beyond what vacuum alone brings together [1]. */
const CROWDED = 0.65;

/** A ply as it comes out of the mould. */
export interface CuredPly {
  /** Its material, 1 along the warp (the roll); strengths are estimates. */
  readonly lamina: Lamina;
  /** Cured thickness [m]. */
  readonly thickness: number;
  /** How the figures come about, step by step. */
  readonly working: readonly PlyWorkingStep[];
  /** Where the figures of the materials come from. */
  readonly source: string;
  /** What is unusual about the input. */
  readonly notes: readonly string[];
}

/**
 * The cured ply of a reinforcement, from its fibre, the resin and the fibre fraction reached: so
 * that the ratio weighed drives the stack.
 *
 * A stitched biaxial lies at 0/90 here: turn it by the angle of the ply (45° for a ±45 cloth).
 *
 * Formula: thickness w/(ρf Vf); sub-ply `parallelFibreLamina` with the form's stiffness factor;
 * cloth `crossedLamina`, mat `randomLamina`; strengths `curedStrengths`
 *
 * Range: Vf above 0, up to π/(2 √3); unusual fractions are noted.
 *
 * Source: those of the functions named; each step of the working names its own.
 *
 * @param recipe Reinforcement, fibre, resin and fibre volume fraction [1].
 * @returns Lamina, thickness [m], working, source and notes.
 * @throws {InputError} If a figure cannot be meant, or the fibre is not the reinforcement's.
 *
 * @example
 * ```ts
 * import { curedPly } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { lamina, thickness } = curedPly({
 *   reinforcement: {
 *     name: "glass twill 200",
 *     form: "woven",
 *     weave: "twill",
 *     fibre: "E-glass",
 *     arealWeight: 0.2,
 *     warpShare: 0.5,
 *     fibreFraction: 0.4,
 *     source: "example",
 *     typical: {},
 *   },
 *   fibre: {
 *     name: "E-glass",
 *     kind: "glass",
 *     E1: 72e9,
 *     E2: 72e9,
 *     G12: 30e9,
 *     nu12: 0.2,
 *     G23: 30e9,
 *     density: 2500,
 *     alpha1: 5e-6,
 *     alpha2: 5e-6,
 *     tensileStrength: 1700e6,
 *     compressiveStrength: 1100e6,
 *     source: "example",
 *     typical: {},
 *   },
 *   resin: {
 *     name: "epoxy",
 *     kind: "epoxy",
 *     E: 3.2e9,
 *     nu: 0.35,
 *     density: 1150,
 *     alpha: 65e-6,
 *     beta: 0.33,
 *     tensileStrength: 68e6,
 *     compressiveStrength: 100e6,
 *     shearStrength: 45e6,
 *     hardenerPhr: 30,
 *     source: "example",
 *     typical: {},
 *   },
 *   fibreVolumeFraction: 0.4,
 * });
 * assertAlmostEquals(thickness, 0.2e-3, 1e-15);
 * assertAlmostEquals(lamina.E1 / 1e9, 18.7, 0.1);
 * ```
 */
export function curedPly(recipe: PlyRecipe): CuredPly {
  check.object("recipe", recipe);
  const { reinforcement, fibre, resin, fibreVolumeFraction } = recipe;
  check.object("reinforcement", reinforcement);
  check.object("fibre", fibre);
  check.object("resin", resin);
  if (reinforcement.fibre !== fibre.name) {
    check.refuse("fibre", fibre.name, `must be ${reinforcement.fibre}, the reinforcement's fibre`);
  }
  check.positive("fibre volume fraction", fibreVolumeFraction);
  const max = largestFibreFraction("hexagonal");
  check.within("fibre volume fraction", fibreVolumeFraction, { min: 0, max });
  const factors = formFactors(reinforcement);
  const strands = parallelFibreLamina(recipe, stiffnessFactorOf(recipe));
  const ply = reinforcement.form === "mat"
    ? randomLamina(strands)
    : crossedLamina(strands, reinforcement.warpShare);
  const thickness = plyThickness({
    arealWeight: reinforcement.arealWeight,
    fibreDensity: fibre.density,
    fibreVolumeFraction,
  });
  const percent = Math.round(fibreVolumeFraction * 1000) / 10;
  const lamina: Lamina = {
    ...ply,
    name: `${reinforcement.name} / ${resin.name}, ${percent} % fibre by volume`,
    strengths: curedStrengths(recipe),
  };
  return {
    lamina,
    thickness,
    working: plyWorking({ recipe, strands, lamina, thickness }),
    source: `${reinforcement.name}: ${reinforcement.source}. ${fibre.name}: ${fibre.source}. ` +
      `${resin.name}: ${resin.source}. Knock-downs: ${factors.source}.`,
    notes: recipeNotes(recipe),
  };
}

function recipeNotes({ reinforcement, fibreVolumeFraction: Vf }: PlyRecipe): readonly string[] {
  const notes: string[] = [];
  const usual = reinforcement.typical?.fibreFraction;
  if (usual !== undefined) {
    check.object("usual fibre fraction", usual);
    check.finite("least usual fibre fraction", usual.low);
    check.finite("largest usual fibre fraction", usual.high);
  }
  if (Vf > CROWDED) {
    notes.push(
      `A fibre volume fraction of ${Vf.toFixed(2)} is more than vacuum alone presses together: ` +
        "look again at the weighing, and for dry spots.",
    );
  } else if (usual !== undefined && !(Vf >= usual.low && Vf <= usual.high)) {
    notes.push(
      `A fibre volume fraction of ${Vf.toFixed(2)} is ${Vf < usual.low ? "below" : "above"} the ` +
        `${usual.low.toFixed(2)} to ${usual.high.toFixed(2)} usual for ${reinforcement.name} ` +
        "laid by hand.",
    );
  }
  return notes;
}
