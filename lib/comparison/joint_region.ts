import { checksFor } from "../check/mod.ts";
import type { Rigidities } from "./rigidities.ts";

const check = checksFor("draw the joint region");

/** More than any picture can show. */
const MOST_POINTS = 10_000;

/** A pair of flexural rigidity and shear stiffness. */
export interface RigidityPair {
  /** Flexural rigidity D [N·m²]. */
  readonly flexuralRigidity: number;
  /** Shear stiffness S [N]. */
  readonly shearStiffness: number;
}

/** A pair of stiffnesses as known together. */
export type KnownTogether = Pick<
  Rigidities,
  "flexuralRigidity" | "uFlexuralRigidity" | "shearStiffness" | "uShearStiffness" | "correlation"
>;

/** What may be said of the region. */
export interface JointRegionOptions {
  /** Share of such regions that hold the true pair; 0.95 unless said [1]. */
  readonly level?: number;
  /** Number of points on its edge; 72 unless said [1]. */
  readonly points?: number;
}

/** Pairs of D and S that a set of tests allows together. */
export interface JointRegion {
  /** Points on the edge, in order around it; null where it has no end on one side. */
  readonly edge: readonly RigidityPair[] | null;
  /** Least and largest D on the edge; no largest (null) where it has no end [N·m²]. */
  readonly flexuralRigidity: { readonly low: number; readonly high: number | null };
  /** Least and largest S on the edge; no largest (null) where it has no end [N]. */
  readonly shearStiffness: { readonly low: number; readonly high: number | null };
  /** Remarks, empty where there is nothing to say. */
  readonly notes: readonly string[];
}

/**
 * Pairs of flexural rigidity and shear stiffness that tests allow together. The readings fix the
 * pair along a slope: more of the one goes with less of the other, and two separate intervals would
 * hide that.
 *
 * The region is an ellipse in 1/D and 1/S, in which a compliance is linear, and is carried over to
 * D and S point by point.
 *
 * Formula: (x − x̂)ᵀ V⁻¹ (x − x̂) = −2 ln(1 − level), x = (1/D, 1/S)
 *
 * Range: uncertainties of the compliances known and normal. Where the ellipse reaches 1/D or 1/S of
 * zero, the stiffness has no upper end, and the region no closed edge.
 *
 * Source: χ² on 2 degrees of freedom, Draper and Smith, Applied Regression Analysis (joint
 * confidence region), from memory.
 *
 * @param rigidities D, S, their uncertainties and correlation, from `rigiditiesFromTests`.
 * @param options Level, and number of points, 8 to 10,000.
 * @returns The edge of the region [N·m²], [N], and its extent in D and in S.
 * @throws {InputError} If D or S or an uncertainty is not above 0, or the level is not inside 0 to 1.
 *
 * @example
 * ```ts
 * import { jointRegion, rigiditiesFromTests } from "@laminate/notebooks/comparison";
 * import { beamLoadCases } from "@laminate/notebooks/sandwich";
 * import { assert } from "@std/assert";
 *
 * const loadCase = beamLoadCases.threePoint;
 * const { shearStiffness } = jointRegion(rigiditiesFromTests([
 *   { loadCase, span: 0.8, compliance: 1.906e-5, uCompliance: 1e-7 },
 *   { loadCase, span: 0.2, compliance: 1.331e-6, uCompliance: 1e-8 },
 * ]));
 * assert(shearStiffness.low < 45375 && 45375 < shearStiffness.high!);
 * ```
 */
export function jointRegion(
  rigidities: KnownTogether,
  options: JointRegionOptions = {},
): JointRegion {
  check.object("rigidities", rigidities);
  const { level = 0.95, points = 72 } = check.object("options", options);
  if (!(level > 0 && level < 1)) check.refuse("level", level, "must be above 0 and below 1");
  check.count("number of points", points, 8);
  check.within("number of points", points, { min: 8, max: MOST_POINTS });
  const { flexuralRigidity: D, shearStiffness: S, correlation } = rigidities;
  check.positive("flexural rigidity", D, "N·m²");
  check.positive("shear stiffness", S, "N");
  const uD = check.positive("uncertainty of the flexural rigidity", rigidities.uFlexuralRigidity);
  const uS = check.positive("uncertainty of the shear stiffness", rigidities.uShearStiffness);
  check.within("correlation", correlation, { min: -1, max: 1 });

  const radius = Math.sqrt(-2 * Math.log1p(-level));
  // Relative u of 1/D is that of D; the signs of both turn over, so the correlation stays.
  const [reachD, reachS] = [radius * uD / D, radius * uS / S];
  const edge = Array.from({ length: points }, (_, k): RigidityPair => {
    const angle = 2 * Math.PI * k / points;
    const [along, across] = [Math.cos(angle), Math.sin(angle)];
    const shear = correlation * along + Math.sqrt(1 - correlation ** 2) * across;
    return {
      flexuralRigidity: D / (1 + reachD * along),
      shearStiffness: S / (1 + reachS * shear),
    };
  });
  const extent = (middle: number, reach: number): JointRegion["shearStiffness"] => ({
    low: middle / (1 + reach),
    high: reach < 1 ? middle / (1 - reach) : null,
  });
  const closed = reachD < 1 && reachS < 1;
  return {
    edge: closed ? edge : null,
    flexuralRigidity: extent(D, reachD),
    shearStiffness: extent(S, reachS),
    notes: closed ? [] : [
      `The tests set no upper end to the ${
        reachD < 1 ? "shear stiffness" : "flexural rigidity"
      }: ` +
      "add one at a very different span.",
    ],
  };
}
