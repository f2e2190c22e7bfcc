import { checksFor } from "../check/mod.ts";
import { engineeringConstants } from "../laminate/mod.ts";
import type { Core, Fibre, Lamina, Reinforcement, Resin, Stack } from "../materials/mod.ts";
import { coreLamina, curedPly } from "../micromechanics/mod.ts";
import {
  coreInPlace,
  type FaceDesign,
  failurePlaces,
  type Panel,
  type PanelFailure,
  panelFailure,
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
 * import { makePanel } from "@laminate/notebooks/study";
 * import { readCatalogue } from "@laminate/notebooks/records";
 * import { assert, assertEquals } from "@std/assert";
 *
 * const { fibres, resins, reinforcements, cores } = await readCatalogue();
 * const recipe = {
 *   reinforcement: reinforcements.get("glass twill 200")!,
 *   fibre: fibres.get("E-glass")!,
 *   resin: resins.get("epoxy laminating slow")!,
 *   fibreFraction: 0.4,
 *   pliesMould: 2,
 *   pliesBag: 2,
 *   core: cores.get("PVC foam 80")!,
 *   coreThickness: 0.01,
 * };
 * const { stack, massPerArea } = makePanel(recipe);
 * assertEquals(stack.length, 5);
 * assert(massPerArea > 2 && massPerArea < 3.5);
 * ```
 */
export function makePanel(recipe: PanelRecipe): PanelMake {
  check.object("recipe", recipe);
  check.count("plies on the mould side", recipe.pliesMould, 1);
  check.count("plies on the bag side", recipe.pliesBag, 1);
  check.within("plies of both sides", recipe.pliesMould + recipe.pliesBag, { min: 2, max: 200 });
  check.positive("core thickness", recipe.coreThickness, "m");
  checkMaterials(recipe);
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
  const massPerArea = check.result(
    "mass per area",
    stiffness.massPerArea + 2 * recipe.core.resinUptake,
    "kg/m²",
  );
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

function checkMaterials({ reinforcement, fibre, resin, core }: PanelRecipe): void {
  for (const [name, value] of Object.entries({ reinforcement, fibre, resin, core })) {
    check.object(name, value);
  }
  check.nonNegative("resin uptake of the core", core.resinUptake, "kg/m²");
  const usual = check.object("typical of the reinforcement", reinforcement.typical).fibreFraction;
  if (usual === undefined) return;
  check.object("typical fibre fraction", usual);
  check.fraction("low of the typical fibre fraction", usual.low);
  check.fraction("high of the typical fibre fraction", usual.high);
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
    shearXY: strengths.S,
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
  /** Largest deflection at the places looked at, a magnitude [m]. */
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
 * Formula: `makePanel`, `solvePanel`, `panelFailure` at the `failurePlaces` of a grid
 *
 * Range: as those functions; deflection is the largest at those places.
 *
 * Source: as those functions.
 *
 * @param recipe What it is made of.
 * @param task Sides [m], edges, loads, supports.
 * @param grid Places along each side, beside those of patches and pads; 2 to 50; 9 if not given,
 * an odd number has the middle.
 * @returns Figures, ways to give, make-up.
 * @throws {InputError} If recipe or task cannot be meant.
 *
 * @example
 * ```ts
 * import { judgePanel } from "@laminate/notebooks/study";
 * import { readCatalogue } from "@laminate/notebooks/records";
 * import { allEdges } from "@laminate/notebooks/sandwich";
 * import { assert } from "@std/assert";
 *
 * const { fibres, resins, reinforcements, cores } = await readCatalogue();
 * const recipe = {
 *   reinforcement: reinforcements.get("glass twill 200")!,
 *   fibre: fibres.get("E-glass")!,
 *   resin: resins.get("epoxy laminating slow")!,
 *   fibreFraction: 0.4,
 *   pliesMould: 2,
 *   pliesBag: 2,
 *   core: cores.get("PVC foam 80")!,
 *   coreThickness: 0.01,
 * };
 * const loads = [{ kind: "uniform", pressure: 3000 }] as const;
 * const task = { length: 0.6, width: 0.4, edges: allEdges("simple"), loads };
 * const { figures, failures } = judgePanel(recipe, task, 5);
 * assert(figures.deflection < 0.01);
 * assert(failures[0]!.reserve === figures.reserve);
 * ```
 */
export function judgePanel(recipe: PanelRecipe, task: PanelTask, grid = 9): PanelVerdict {
  const make = makePanel(recipe);
  check.object("task", task);
  check.count("grid", grid, 2);
  check.within("grid", grid, { min: 2, max: 50 });
  const panel: Panel = { ...task, stiffness: make.stiffness };
  const solution = solvePanel(panel);
  const points = failurePlaces(panel, grid).map(({ x, y }) => solution.at(x, y));
  const failures = panelFailure({ points }, panel.loads, make.design);
  const deflection = Math.max(...points.map((point) => Math.abs(point.deflection)));
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
