import { checksFor } from "../check/mod.ts";
import { engineeringConstants } from "../laminate/mod.ts";
import type { Core, Fibre, Lamina, Reinforcement, Resin, Stack } from "../materials/mod.ts";
import { coreLamina, curedPly } from "../micromechanics/mod.ts";
import {
  coreInPlace,
  type FaceDesign,
  type Panel,
  type PanelFailure,
  panelFailure,
  panelField,
  type PanelStiffness,
  panelStiffness,
  type SandwichDesign,
  solvePanel,
} from "../sandwich/mod.ts";

const check = checksFor("design the panel");

/** What a sandwich panel is made of, by choices that a builder makes. */
export interface PanelRecipe {
  /** Cloth of both faces. */
  readonly reinforcement: Reinforcement;
  /** Its fibre. */
  readonly fibre: Fibre;
  /** Resin. */
  readonly resin: Resin;
  /** Fibre volume fraction [1]. */
  readonly fibreFraction: number;
  /** Plies of the face on the mould side, each laid along x. */
  readonly pliesMould: number;
  /** Plies of the face on the bag side, each laid along x. */
  readonly pliesBag: number;
  /** Core. */
  readonly core: Core;
  /** Thickness of the core [m]. */
  readonly coreThickness: number;
  /** Along which side the core's L direction lies; x if not given. */
  readonly coreAlong?: "x" | "y";
}

/** A panel's make-up, ready for the panel and failure functions. */
export interface PanelMake {
  /** The stack, mould side first. */
  readonly stack: Stack;
  /** Stiffness for each metre of width; its mass has the resin that the core drinks. */
  readonly stiffness: PanelStiffness;
  /** Faces and core with what they stand. */
  readonly design: SandwichDesign;
  /** Mass for each area, resin in the core's surface included [kg/m²]. */
  readonly massPerArea: number;
  /** Remarks on the make-up. */
  readonly notes: readonly string[];
}

/**
 * Builds a sandwich from a cloth, a resin, a core and how many plies of what.
 *
 * Formula: `curedPly`, `coreLamina`, `panelStiffness`; mass with the core's resin uptake on both
 * sides
 *
 * Range: as those functions; plies along x, all of one cloth.
 *
 * Source: as those functions.
 *
 * @param recipe Cloth, fibre, resin, fibre fraction [1], plies, core and its thickness [m].
 * @returns Stack, stiffness, strengths, mass for each area [kg/m²].
 * @throws {InputError} If a count is not a whole number above 0 or a material cannot be meant.
 *
 * @example
 * ```ts
 * import { makePanel, type PanelRecipe } from "@laminate/notebooks/study";
 * import { InputError } from "@laminate/notebooks/check";
 * import { assertThrows } from "@std/assert";
 *
 * assertThrows(() => makePanel({ pliesMould: 0 } as PanelRecipe), InputError, "plies");
 * ```
 */
export function makePanel(recipe: PanelRecipe): PanelMake {
  check.object("recipe", recipe);
  check.count("plies on the mould side", recipe.pliesMould, 1);
  check.count("plies on the bag side", recipe.pliesBag, 1);
  check.positive("core thickness", recipe.coreThickness, "m");
  const along = check.oneOf("direction of the core", recipe.coreAlong ?? "x", ["x", "y"]);
  const { lamina, thickness, notes } = curedPly({
    reinforcement: recipe.reinforcement,
    fibre: recipe.fibre,
    resin: recipe.resin,
    fibreVolumeFraction: recipe.fibreFraction,
  });
  const core = {
    lamina: coreLamina(recipe.core),
    thickness: recipe.coreThickness,
    angleDeg: along === "x" ? 0 : 90,
  };
  const face = (plies: number): Stack =>
    Array.from({ length: plies }, () => ({ lamina, thickness, angleDeg: 0 }));
  const stack = [...face(recipe.pliesMould), core, ...face(recipe.pliesBag)];
  const stiffness = panelStiffness(stack, { core: recipe.pliesMould });
  const massPerArea = stiffness.massPerArea + 2 * recipe.core.resinUptake;
  return Object.freeze({
    stack,
    stiffness: { ...stiffness, massPerArea },
    design: {
      topFace: faceDesign(face(recipe.pliesBag), lamina),
      bottomFace: faceDesign(face(recipe.pliesMould), lamina),
      core: coreInPlace(recipe.core, recipe.coreThickness, along),
    },
    massPerArea,
    notes: [...notes, ...stiffness.notes],
  });
}

function faceDesign(plies: Stack, lamina: Lamina): FaceDesign {
  const { membraneHeldFlat: membrane } = engineeringConstants(plies);
  const strengths = lamina.strengths ??
    check.refuse("strengths of the ply", lamina.name, "must be known");
  return {
    thickness: plies.reduce((sum, ply) => sum + ply.thickness, 0),
    Ex: membrane.Ex,
    Ey: membrane.Ey,
    nu: membrane.nuxy,
    tensileX: strengths.Xt,
    tensileY: strengths.Yt,
    compressiveX: strengths.Xc,
    compressiveY: strengths.Yc,
  };
}

/** Where a panel sits and what it has to carry: a `Panel` without its stiffness. */
export type PanelTask = Omit<Panel, "stiffness">;

/** How a panel made from a recipe does its task. */
export interface PanelFigures {
  /** Mass for each area [kg/m²]. */
  readonly massPerArea: number;
  /** Mass of the panel [kg]. */
  readonly mass: number;
  /** Largest deflection on the grid, a magnitude [m]. */
  readonly deflection: number;
  /** That deflection over the shorter side [1]. */
  readonly deflectionOverSide: number;
  /** Factor on all loads at which something gives first [1]. */
  readonly reserve: number;
}

/** Figures of a panel with what gives first and what it is made of. */
export interface PanelVerdict {
  /** The figures. */
  readonly figures: PanelFigures;
  /** Ways to give, the nearest first. */
  readonly failures: readonly PanelFailure[];
  /** The make-up. */
  readonly make: PanelMake;
  /** Remarks. */
  readonly notes: readonly string[];
}

/** A reserve that stands for "nothing acts". */
const NOTHING_ACTS = 1e9;

/**
 * How a panel made from a recipe does its task: mass, deflection, what gives first.
 *
 * Formula: `makePanel`, `solvePanel`, `panelField`, `panelFailure`
 *
 * Range: as those functions; deflection is the largest on the grid.
 *
 * Source: as those functions.
 *
 * @param recipe What it is made of.
 * @param task Sides [m], edges, loads, supports.
 * @param grid Places along each side; 9 if not given, an odd number has the middle.
 * @returns Figures, ways to give, make-up.
 * @throws {InputError} If recipe or task cannot be meant.
 *
 * @example
 * ```ts
 * import { judgePanel, type PanelRecipe, type PanelTask } from "@laminate/notebooks/study";
 * import { InputError } from "@laminate/notebooks/check";
 * import { assertThrows } from "@std/assert";
 *
 * const run = () => judgePanel({ pliesMould: 1.5 } as PanelRecipe, {} as PanelTask);
 * assertThrows(run, InputError, "plies on the mould side is 1.5, must be a whole number");
 * ```
 */
export function judgePanel(recipe: PanelRecipe, task: PanelTask, grid = 9): PanelVerdict {
  const make = makePanel(recipe);
  check.object("task", task);
  const panel: Panel = { ...task, stiffness: make.stiffness };
  const solution = solvePanel(panel);
  const field = panelField(solution, { x: grid, y: grid });
  const failures = panelFailure(field, panel.loads, make.design);
  const deflection = Math.abs(field.largest("deflection").deflection);
  return Object.freeze({
    figures: {
      massPerArea: make.massPerArea,
      mass: make.massPerArea * panel.length * panel.width,
      deflection,
      deflectionOverSide: deflection / Math.min(panel.length, panel.width),
      reserve: failures[0]?.reserve ?? NOTHING_ACTS,
    },
    failures,
    make,
    notes: [...make.notes, ...solution.notes],
  });
}
