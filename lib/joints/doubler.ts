import { checksFor } from "../check/mod.ts";

const check = checksFor("compute the doubler");

/** Plies laid on a skin around a mount. */
export interface Doubler {
  /** Plies of the doubler [1]. */
  readonly plies: number;
  /** Cured thickness of one of them [m]. */
  readonly plyThickness: number;
  /** Modulus of the plies along the load [Pa]. */
  readonly modulus: number;
  /** Thickness of the skin beneath [m]. */
  readonly skinThickness: number;
  /** Modulus of the skin along the load [Pa]. */
  readonly skinModulus: number;
  /** Shear modulus of the resin between doubler and skin [Pa]. */
  readonly resinShearModulus: number;
  /** Thickness of that resin layer [m]. */
  readonly resinThickness: number;
  /** Length over which each ply steps back, in ply thicknesses [1]. */
  readonly taperRatio: number;
}

/** How far a doubler has to reach. */
export interface DoublerReach {
  /** Length in which 95 % of its share of the load passes into it [m]. */
  readonly transferLength: number;
  /** By how much each ply is shorter than the one beneath [m]. */
  readonly stepLength: number;
  /** Length of the whole taper [m]. */
  readonly taperLength: number;
  /** How far the doubler's largest ply has to reach beyond the mount: the taper and the transfer. */
  readonly reach: number;
  /** Share of the load that the doubler carries where it is fully in [1]. */
  readonly share: number;
  /** What to know about it. */
  readonly notes: readonly string[];
}

/** Drop-offs steeper than this are seldom advised: 1:20, MIL-HDBK-17-3F, from memory. */
const USUAL_TAPER_RATIO = 20;

/**
 * How far a doubler reaches beyond a mount, so that the load has passed into it and no ply ends in
 * a hard step.
 *
 * Formula: λ² = (G/ta)(1/E_d t_d + 1/E_s t_s); transfer ln 20/λ; step = ratio × ply; reach =
 * transfer + plies × step; share E_d t_d/(E_d t_d + E_s t_s)
 *
 * Range: elastic; a ratio below 20 is noted.
 *
 * Source: shear lag as in Volkersen 1938; taper MIL-HDBK-17-3F; both from memory.
 *
 * @param doubler Plies, moduli [Pa], thicknesses [m] and taper ratio [1].
 * @returns Lengths [m] and the doubler's share [1].
 * @throws {InputError} If an input is not above 0.
 *
 * @example
 * ```ts
 * import { doublerReach } from "@laminate/notebooks/joints";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const found = doublerReach({
 *   plies: 4, plyThickness: 0.00025, modulus: 20e9, skinThickness: 0.0005, skinModulus: 20e9,
 *   resinShearModulus: 1.1e9, resinThickness: 0.0001, taperRatio: 30,
 * });
 * assertAlmostEquals(found.taperLength, 0.03, 1e-12);
 * assertAlmostEquals(found.share, 2 / 3, 1e-12);
 * ```
 */
export function doublerReach(doubler: Doubler): DoublerReach {
  check.object("doubler", doubler);
  const { plies, plyThickness, modulus, skinThickness, skinModulus, taperRatio } = doubler;
  check.count("plies", plies, 1);
  check.positive("thickness of a ply", plyThickness, "m");
  check.positive("modulus of the doubler", modulus, "Pa");
  check.positive("thickness of the skin", skinThickness, "m");
  check.positive("modulus of the skin", skinModulus, "Pa");
  check.positive("shear modulus of the resin", doubler.resinShearModulus, "Pa");
  check.positive("thickness of the resin", doubler.resinThickness, "m");
  check.positive("taper ratio", taperRatio);
  const stiffness = modulus * plies * plyThickness;
  const skin = skinModulus * skinThickness;
  const bond = doubler.resinShearModulus / doubler.resinThickness;
  const decay = Math.sqrt(bond * (1 / stiffness + 1 / skin));
  const transferLength = Math.log(20) / decay;
  const stepLength = taperRatio * plyThickness;
  const taperLength = plies * stepLength;
  return check.results({
    transferLength,
    stepLength,
    taperLength,
    reach: transferLength + taperLength,
    share: stiffness / (stiffness + skin),
    notes: taperRatio < USUAL_TAPER_RATIO
      ? [`Steps steeper than 1:${USUAL_TAPER_RATIO} start peeling at their ends.`]
      : [],
  });
}
