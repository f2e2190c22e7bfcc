import { checksFor } from "../check/mod.ts";

const check = checksFor("compute the potted insert");

/** An insert set in a plug of filled resin that reaches from skin to skin. */
export interface PottedInsert {
  /** Diameter of the plug of filled resin [m]. */
  readonly pottingDiameter: number;
  /** Diameter of the insert in it; 0 for a plug that is drilled later [m]. */
  readonly insertDiameter: number;
  /** Thickness of the core [m]. */
  readonly coreThickness: number;
  /** Shear strength of the core through the thickness, the weaker direction [Pa]. */
  readonly coreShearStrength: number;
  /** Density of the filled resin [kg/m³]. */
  readonly pottingDensity: number;
}

/** What a potted insert carries and weighs. */
export interface PottedStrength {
  /** Pull at which the core shears around the plug [N]. */
  readonly pullOutForce: number;
  /** Filled resin in the plug [kg]. */
  readonly pottingMass: number;
}

/**
 * Pull that a fully potted insert carries, limited by shear of the core around its plug.
 *
 * Formula: P = π d_p c τ_core; mass π/4 (d_p² − d_i²) c ρ
 *
 * Range: the plug reaches both skins; the skins' own share of the pull is left out (safe side).
 * In honeycomb the plug is as large as the opened cells.
 *
 * Source: ECSS-E-HB-32-22A, insert design handbook, first term of the core shear failure, from
 * memory; statics.
 *
 * @param insert Sizes [m], core strength [Pa], density of the filled resin [kg/m³].
 * @returns Pull-out force [N] and mass of the plug [kg].
 * @throws {InputError} If an input is not above 0 or the insert not smaller than the plug.
 *
 * @example
 * ```ts
 * import { pottedInsert } from "@laminate/notebooks/joints";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { pullOutForce } = pottedInsert({
 *   pottingDiameter: 0.03, insertDiameter: 0.012, coreThickness: 0.01,
 *   coreShearStrength: 1e6, pottingDensity: 700,
 * });
 * assertAlmostEquals(pullOutForce, Math.PI * 300, 1e-9);
 * ```
 */
export function pottedInsert(insert: PottedInsert): PottedStrength {
  check.object("insert", insert);
  const { pottingDiameter, insertDiameter, coreThickness } = insert;
  check.positive("diameter of the plug", pottingDiameter, "m");
  check.nonNegative("diameter of the insert", insertDiameter, "m");
  check.positive("core thickness", coreThickness, "m");
  check.positive("shear strength of the core", insert.coreShearStrength, "Pa");
  check.positive("density of the potting", insert.pottingDensity, "kg/m³");
  if (!(insertDiameter < pottingDiameter)) {
    check.refuse(
      "diameter of the insert",
      insertDiameter,
      `must be below the plug's, ${pottingDiameter} m`,
    );
  }
  const wall = (pottingDiameter - insertDiameter) * (pottingDiameter + insertDiameter);
  return {
    pullOutForce: check.result(
      "force",
      Math.PI * pottingDiameter * coreThickness * insert.coreShearStrength,
      "N",
    ),
    pottingMass: check.result(
      "mass",
      Math.PI / 4 * wall * coreThickness * insert.pottingDensity,
      "kg",
    ),
  };
}
