import { checksFor } from "../check/mod.ts";
import { fibreMassFraction, matrixVolumeFraction } from "./fibre_fraction.ts";
import { laminateDensity } from "./density.ts";

const check = checksFor("compute the ply thickness");
const checkFraction = checksFor("compute the fibre fraction from thickness");

/** Cloth and the fraction of its fibre in the cured ply. */
export interface PlyContents {
  /** Dry mass of the cloth per area [kg/m²]. */
  readonly arealWeight: number;
  /** Density of its fibre [kg/m³]. */
  readonly fibreDensity: number;
  /** Fibre volume over ply volume [1]. */
  readonly fibreVolumeFraction: number;
}

/**
 * Cured thickness of a ply from its cloth and the fibre fraction reached.
 *
 * Formula: t = w/(ρf Vf)
 *
 * Range: Vf above 0, up to 1.
 *
 * Source: mass balance; ISO 12215-5:2008 annex C gives the same for E-glass in polyester as
 * t/w = (2.56/ψ − 1.36)/3.072 mm per kg/m², from memory.
 *
 * @param contents Areal weight [kg/m²], fibre density [kg/m³] and fibre volume fraction [1].
 * @returns Thickness of the ply [m].
 * @throws {InputError} If an input is not above 0 or the fraction is above 1.
 *
 * @example
 * ```ts
 * import { plyThickness } from "@laminate/notebooks/constituents";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const thickness = plyThickness({
 *   arealWeight: 0.2,
 *   fibreDensity: 2500,
 *   fibreVolumeFraction: 0.4,
 * });
 * assertAlmostEquals(thickness, 0.2e-3, 1e-15);
 * ```
 */
export function plyThickness(contents: PlyContents): number {
  check.object("contents", contents);
  const { arealWeight, fibreDensity, fibreVolumeFraction } = contents;
  check.positive("areal weight", arealWeight, "kg/m²");
  check.positive("fibre density", fibreDensity, "kg/m³");
  check.positive("fibre volume fraction", fibreVolumeFraction);
  check.fraction("fibre volume fraction", fibreVolumeFraction);
  return check.result("ply thickness", arealWeight / (fibreDensity * fibreVolumeFraction), "m");
}

/** A laminate of equal plies and how thick it came out. */
export interface MeasuredThickness {
  /** Dry mass of one cloth per area [kg/m²]. */
  readonly arealWeight: number;
  /** Number of plies [1]. */
  readonly plies: number;
  /** Density of the fibre [kg/m³]. */
  readonly fibreDensity: number;
  /** Thickness of the laminate [m]. */
  readonly thickness: number;
}

/**
 * Fibre volume fraction from the measured thickness of a laminate: true whether or not there
 * are voids.
 *
 * Formula: Vf = n w/(ρf t)
 *
 * Range: returned as it comes, also above 1 (then thickness, ply count or areal weight is wrong).
 *
 * Source: ASTM D3171, test method by thickness, from memory.
 *
 * @param laminate Areal weight [kg/m²], plies [1], fibre density [kg/m³], thickness [m].
 * @returns Fibre volume fraction [1].
 * @throws {InputError} If an input is not above 0.
 *
 * @example
 * ```ts
 * import { fibreFractionFromThickness } from "@laminate/notebooks/constituents";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const Vf = fibreFractionFromThickness({
 *   arealWeight: 0.2,
 *   plies: 4,
 *   fibreDensity: 2500,
 *   thickness: 0.8e-3,
 * });
 * assertAlmostEquals(Vf, 0.4, 1e-12);
 * ```
 */
export function fibreFractionFromThickness(laminate: MeasuredThickness): number {
  checkFraction.object("laminate", laminate);
  const { arealWeight, plies, fibreDensity, thickness } = laminate;
  checkFraction.positive("areal weight", arealWeight, "kg/m²");
  checkFraction.positive("plies", plies);
  checkFraction.positive("fibre density", fibreDensity, "kg/m³");
  checkFraction.positive("thickness", thickness, "m");
  const fibre = plies * arealWeight / fibreDensity;
  return checkFraction.result("fibre volume fraction", fibre / thickness);
}

/** A ply or a laminate of equal plies as it is planned. */
export interface PlannedLayer extends PlyContents {
  /** Density of the cured resin [kg/m³]. */
  readonly resinDensity: number;
  /** Void volume over ply volume; 0 if left out [1]. */
  readonly voidFraction?: number;
  /** Number of equal plies; 1 if left out [1]. */
  readonly plies?: number;
}

/** What a layer holds. */
export interface LayerContents {
  /** Thickness of all plies together [m]. */
  readonly thickness: number;
  /** Fibre mass per area [kg/m²]. */
  readonly fibrePerArea: number;
  /** Resin mass per area [kg/m²]. */
  readonly resinPerArea: number;
  /** Fibre mass over mass [1]. */
  readonly fibreMassFraction: number;
  /** Resin mass over fibre mass [1]. */
  readonly resinRatio: number;
  /** Density [kg/m³]. */
  readonly density: number;
}

/**
 * What a layer holds and how thick it is, from the cloth and the fibre fraction planned: how
 * much resin to mix for a square metre.
 *
 * Formula: t = n w/(ρf Vf); wm = ρm (1 − Vf − Vv) t; ρ = ρf Vf + ρm (1 − Vf − Vv)
 *
 * Range: Vf above 0; Vf + Vv up to 1.
 *
 * Source: mass balance.
 *
 * @param layer Cloth, resin, fractions and number of plies.
 * @returns Thickness [m], masses per area [kg/m²], fractions [1], density [kg/m³].
 * @throws {InputError} If an input is not above 0 or a fraction is out of range.
 *
 * @example
 * ```ts
 * import { layerContents } from "@laminate/notebooks/constituents";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const layer = layerContents({
 *   arealWeight: 0.2,
 *   fibreDensity: 2500,
 *   fibreVolumeFraction: 0.4,
 *   resinDensity: 1200,
 *   plies: 2,
 * });
 * assertAlmostEquals(layer.thickness, 0.4e-3, 1e-15);
 * assertAlmostEquals(layer.resinPerArea, 0.288, 1e-12);
 * ```
 */
export function layerContents(layer: PlannedLayer): LayerContents {
  const ply = plyThickness(layer);
  const { arealWeight, fibreVolumeFraction: fraction, voidFraction = 0, plies = 1 } = layer;
  check.positive("plies", plies);
  const densities = { fibreDensity: layer.fibreDensity, resinDensity: layer.resinDensity };
  const thickness = plies * ply;
  const fibrePerArea = plies * arealWeight;
  const density = laminateDensity(fraction, densities, voidFraction);
  const resinPerArea = layer.resinDensity * matrixVolumeFraction(fraction, voidFraction) *
    thickness;
  return {
    thickness: check.result("thickness", thickness, "m"),
    fibrePerArea: check.result("fibre per area", fibrePerArea, "kg/m²"),
    resinPerArea: check.result("resin per area", resinPerArea, "kg/m²"),
    fibreMassFraction: fibreMassFraction(fraction, densities, voidFraction),
    resinRatio: check.result("resin ratio", resinPerArea / fibrePerArea),
    density,
  };
}
