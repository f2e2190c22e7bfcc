import { checksFor } from "../check/mod.ts";
import { type BoltedMode, type BoltedStrengths, boltStresses } from "./bolted_joint.ts";

const check = checksFor("compute the build-up");

/** Places of a sandwich part that call for more plies. */
export type BuildUpPlace = "light skin" | "spine" | "loaded corner" | "bolted bracket";

/**
 * Plies of 200 g/m² glass cloth that are usual on each side of a 1/4 inch core.
 *
 * Common practice, no source: a light skin has one, doubled at a spine, four at loaded corners,
 * about seven where a bracket bolts on.
 */
export const USUAL_PLIES: Readonly<Record<BuildUpPlace, number>> = {
  "light skin": 1,
  "spine": 2,
  "loaded corner": 4,
  "bolted bracket": 7,
};

/** Areal weight of the cloth that `USUAL_PLIES` counts in; common practice, no source [kg/m²]. */
export const USUAL_PLY_WEIGHT = 0.2;

/** A row of bolts for which the plies are wanted. */
export interface BuildUpTask {
  /** Load on the whole row, its factors included [N]. */
  readonly load: number;
  /** Bolts in the row [1]. */
  readonly boltCount: number;
  /** Diameter of the bolt's shank [m]. */
  readonly boltDiameter: number;
  /** Diameter of the hole [m]. */
  readonly holeDiameter: number;
  /** Width of the strip [m]. */
  readonly width: number;
  /** From the centre of the hole to the edge [m]. */
  readonly edgeDistance: number;
  /** Strengths of the laminate around the bolt [Pa]. */
  readonly strengths: BoltedStrengths;
  /** Cured thickness of one ply [m]. */
  readonly plyThickness: number;
  /** Plies that the skins have there already, both sides together [1]. */
  readonly pliesThere: number;
  /** Place, for a comparison with what is usual. */
  readonly place?: BuildUpPlace;
  /** Areal weight of the cloth of a ply, to be given with the place [kg/m²]. */
  readonly plyArealWeight?: number;
}

/** Plies that a row of bolts needs. */
export interface BuildUp {
  /** Plies needed in all, both sides together [1]. */
  readonly plies: number;
  /** Plies to add to those there [1]. */
  readonly pliesToAdd: number;
  /** What decides. */
  readonly mode: BoltedMode;
  /** Thickness that each way of failing asks for [m]. */
  readonly thicknesses: Readonly<Record<BoltedMode, number>>;
  /** What to know about it. */
  readonly notes: readonly string[];
}

/**
 * Plies to lay around bolt holes so that the skins carry the load.
 *
 * Formula: t = P/(n d F_bearing), P/((w − n d_hole) F_tension), P/(2 n (e − d_hole/2) F_shear);
 * plies = the largest over the ply's thickness, rounded up; compared with what is usual by the areal
 * weight of all plies
 *
 * Range: skins share the load equally; a bolt loaded from one side alone (no spacer or insert)
 * loads the near skin only: then count the plies of that skin.
 *
 * Source: `boltStresses`, solved for the thickness; usual plies: common practice, no source.
 *
 * @param task Bolts and load, strengths [Pa], thickness of a ply [m] and plies there.
 * @returns Plies in all and to add, and what decides.
 * @throws {InputError} If an input is outside its range.
 *
 * @example
 * ```ts
 * import { buildUpPlies } from "@laminate/notebooks/joints";
 * import { assertEquals } from "@std/assert";
 *
 * const found = buildUpPlies({
 *   load: 2400, boltCount: 2, boltDiameter: 0.006, holeDiameter: 0.0065, width: 0.06,
 *   edgeDistance: 0.02, strengths: { bearing: 200e6, netTension: 150e6, shearOut: 60e6 },
 *   plyThickness: 0.00023, pliesThere: 2,
 * });
 * assertEquals([found.plies, found.pliesToAdd, found.mode], [5, 3, "bearing"]);
 * ```
 */
export function buildUpPlies(task: BuildUpTask): BuildUp {
  check.object("task", task);
  check.positive("thickness of a ply", task.plyThickness, "m");
  check.count("plies there", task.pliesThere);
  if (task.place !== undefined) {
    check.oneOf("place", task.place, Object.keys(USUAL_PLIES) as BuildUpPlace[]);
    check.positive("areal weight of a ply", task.plyArealWeight as number, "kg/m²");
  }
  // Stresses are inversely proportional to the thickness, so those of a ply give what is wanted.
  const onOnePly = boltStresses({ ...task, thickness: task.plyThickness });
  check.object("strengths", task.strengths);
  const pliesFor = (mode: BoltedMode, stress: number): number =>
    stress / check.positive(`${mode} strength`, task.strengths[mode], "Pa");
  const exact = {
    bearing: pliesFor("bearing", onOnePly.bearing),
    netTension: pliesFor("netTension", onOnePly.netTension),
    shearOut: pliesFor("shearOut", onOnePly.shearOutFromRim),
  };
  let mode: BoltedMode = "bearing";
  if (exact.netTension > exact[mode]) mode = "netTension";
  if (exact.shearOut > exact[mode]) mode = "shearOut";
  // A hair above a whole number is rounding, not a ply.
  const plies = check.result("plies", Math.ceil(exact[mode] * (1 - 1e-12)));
  return {
    plies,
    pliesToAdd: Math.max(0, plies - task.pliesThere),
    mode,
    thicknesses: {
      bearing: exact.bearing * task.plyThickness,
      netTension: exact.netTension * task.plyThickness,
      shearOut: exact.shearOut * task.plyThickness,
    },
    notes: buildUpNotes(Math.max(plies, task.pliesThere), task),
  };
}

/** Says so where the cloth is lighter than usual; plies of another cloth count by their weight. */
function buildUpNotes(
  plies: number,
  { place, plyArealWeight = 0 }: BuildUpTask,
): readonly string[] {
  if (place === undefined) return [];
  const usual = 2 * USUAL_PLIES[place];
  const inGrams = (weight: number): string => `${Math.round(1000 * weight)} g/m²`;
  // A hair below the usual weight is rounding, not a ply too few.
  return plies * plyArealWeight >= usual * USUAL_PLY_WEIGHT * (1 - 1e-12) ? [] : [
    `${plies} plies of ${inGrams(plyArealWeight)} on both sides together are less than the ` +
    `${usual} of ${inGrams(USUAL_PLY_WEIGHT)} that are usual at a ${place} (common practice, no ` +
    "source): the figures may miss peel, impact or a bad hole.",
  ];
}
