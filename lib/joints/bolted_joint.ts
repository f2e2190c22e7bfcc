import { checksFor } from "../check/mod.ts";
import type { Verdict } from "./design_load.ts";

const check = checksFor("compute the bolted joint");

/** A row of bolts across a strip that is pulled along. */
export interface BoltRow {
  /** Load on the whole row, its factors included [N]. */
  readonly load: number;
  /** Bolts in the row [1]. */
  readonly boltCount: number;
  /** Diameter of the bolt's shank [m]. */
  readonly boltDiameter: number;
  /** Diameter of the hole [m]. */
  readonly holeDiameter: number;
  /** Thickness that carries: the skins with their build-up, not the core [m]. */
  readonly thickness: number;
  /** Width of the strip [m]. */
  readonly width: number;
  /** From the centre of the hole to the edge that the bolt would tear out of [m]. */
  readonly edgeDistance: number;
}

/** Stresses around the bolts of a row. */
export interface BoltStresses {
  /** Bearing of the shank on the hole [Pa]. */
  readonly bearing: number;
  /** Tension in what the holes leave of the width [Pa]. */
  readonly netTension: number;
  /** Shear on two planes from the centre of the hole to the edge [Pa]. */
  readonly shearOut: number;
  /** Shear on two planes from the rim of the hole to the edge, the severer form [Pa]. */
  readonly shearOutFromRim: number;
}

/**
 * Stresses around a row of bolts, the load shared equally.
 *
 * Formula: bearing P/(n d t); net tension P/((w − n d_hole) t); shear-out P/(2 n e t), and with
 * e − d_hole/2 in place of e
 *
 * Range: equal share among bolts (a laminate hardly yields, so a badly drilled row shares worse);
 * bolt not larger than its hole.
 *
 * Source: MIL-HDBK-17-3F, mechanically fastened joints, from memory; statics.
 *
 * @param row Load [N], number and sizes of the bolts [m], thickness, width, edge distance [m].
 * @returns Bearing, net tension and both forms of shear-out [Pa].
 * @throws {InputError} If a size is not above 0, the bolt is larger than the hole, the holes leave
 * no width or reach the edge.
 *
 * @example
 * ```ts
 * import { boltStresses } from "@laminate/notebooks/joints";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { bearing } = boltStresses({
 *   load: 2400, boltCount: 2, boltDiameter: 0.006, holeDiameter: 0.0065,
 *   thickness: 0.002, width: 0.06, edgeDistance: 0.02,
 * });
 * assertAlmostEquals(bearing, 100e6, 1e-6);
 * ```
 */
export function boltStresses(row: BoltRow): BoltStresses {
  check.object("row", row);
  const { load, boltCount, boltDiameter, holeDiameter, thickness, width, edgeDistance } = row;
  check.nonNegative("load", load, "N");
  check.count("number of bolts", boltCount, 1);
  check.positive("bolt diameter", boltDiameter, "m");
  check.positive("hole diameter", holeDiameter, "m");
  check.positive("thickness", thickness, "m");
  check.positive("width", width, "m");
  check.positive("edge distance", edgeDistance, "m");
  if (!(boltDiameter <= holeDiameter)) {
    check.refuse("bolt diameter", boltDiameter, `must not be above the hole's, ${holeDiameter} m`);
  }
  const netWidth = width - boltCount * holeDiameter;
  if (!(netWidth > 0)) {
    check.refuse("width", width, `must be above that of the holes, ${boltCount * holeDiameter} m`);
  }
  const rim = edgeDistance - holeDiameter / 2;
  if (!(rim > 0)) {
    check.refuse("edge distance", edgeDistance, "must be above half of the hole's diameter");
  }
  return {
    bearing: check.result("bearing", load / (boltCount * boltDiameter * thickness), "Pa"),
    netTension: check.result("net tension", load / (netWidth * thickness), "Pa"),
    shearOut: check.result("shear-out", load / (2 * boltCount * edgeDistance * thickness), "Pa"),
    shearOutFromRim: check.result("shear-out", load / (2 * boltCount * rim * thickness), "Pa"),
  };
}

/** Strengths of the laminate around a bolt. */
export interface BoltedStrengths {
  /** Bearing strength [Pa]. */
  readonly bearing: number;
  /** Tensile strength along the load, with the holes' stress concentration knocked down [Pa]. */
  readonly netTension: number;
  /** In-plane shear strength [Pa]. */
  readonly shearOut: number;
}

/** Ways in which a row of bolts gives. */
export type BoltedMode = keyof BoltedStrengths;

/** How much a row of bolts has in hand. */
export interface BoltedReserve {
  /** Strength over stress; the smallest decides. Above 1 holds [1]. */
  readonly reserve: number;
  /** What gives first. */
  readonly mode: BoltedMode;
  /** Strength over stress for each way of failing; shear-out from the hole's centre [1]. */
  readonly reserves: Readonly<Record<BoltedMode, number>>;
  /** Shear-out from the rim of the hole, the severer form: the verdict heeds it too [1]. */
  readonly shearOutFromRim: number;
  /** Holds where every reserve is 1 or more, shear-out from the rim too; else fails. */
  readonly verdict: Verdict;
  /** What is doubtful about it. */
  readonly notes: readonly string[];
}

/**
 * Strength over stress of a row of bolts, for each way in which it can give.
 *
 * Formula: R = strength/stress; shear-out with e from the hole's centre, beside it with
 * e − d_hole/2 from its rim, which the verdict heeds as well
 *
 * Range: load above 0. A laminate should give by bearing first: that is slow and can be seen.
 *
 * Source: MIL-HDBK-17-3F, from memory. Whoever relies on the mount has it judged by a qualified
 * person and proof-loads it.
 *
 * @param row The bolts, the load with its factors.
 * @param strengths Bearing, tension and shear strength of the laminate [Pa].
 * @returns The smallest reserve, its mode, and all of them [1].
 * @throws {InputError} If an input is outside its range.
 *
 * @example
 * ```ts
 * import { boltedReserve } from "@laminate/notebooks/joints";
 * import { assertAlmostEquals, assertEquals } from "@std/assert";
 *
 * const found = boltedReserve({
 *   load: 2400, boltCount: 2, boltDiameter: 0.006, holeDiameter: 0.0065,
 *   thickness: 0.002, width: 0.06, edgeDistance: 0.02,
 * }, { bearing: 200e6, netTension: 150e6, shearOut: 60e6 });
 * assertEquals(found.mode, "bearing");
 * assertAlmostEquals(found.reserve, 2, 1e-12);
 * ```
 */
export function boltedReserve(row: BoltRow, strengths: BoltedStrengths): BoltedReserve {
  const stresses = boltStresses(row);
  check.positive("load", row.load, "N");
  check.object("strengths", strengths);
  const ratio = (mode: BoltedMode, stress: number): number =>
    check.result("reserve", check.positive(`${mode} strength`, strengths[mode], "Pa") / stress);
  const reserves = {
    bearing: ratio("bearing", stresses.bearing),
    netTension: ratio("netTension", stresses.netTension),
    shearOut: ratio("shearOut", stresses.shearOut),
  };
  const shearOutFromRim = ratio("shearOut", stresses.shearOutFromRim);
  let mode: BoltedMode = "bearing";
  if (reserves.netTension < reserves[mode]) mode = "netTension";
  if (reserves.shearOut < reserves[mode]) mode = "shearOut";
  const reserve = reserves[mode];
  return {
    reserve,
    mode,
    reserves,
    shearOutFromRim,
    verdict: Math.min(reserve, shearOutFromRim) >= 1 ? "holds" : "fails",
    notes: [
      ...(mode === "bearing" && reserve <= shearOutFromRim
        ? []
        : ["Bearing is not what gives first: the joint would part without warning."]),
      ...(shearOutFromRim < 1 && reserve >= 1
        ? ["Counted from the rim of the hole it shears out: more edge distance or plies."]
        : []),
    ],
  };
}
