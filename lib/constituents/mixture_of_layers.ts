import { checksFor } from "../check/mod.ts";
import { layerContents, type PlannedLayer } from "./ply_thickness.ts";

const check = checksFor("compute the mixture of layers");

/** Several layers taken as one. */
export interface LayerMixture {
  /** Thickness of all layers [m]. */
  readonly thickness: number;
  /** Mass per area [kg/m²]. */
  readonly massPerArea: number;
  /** Fibre mass per area [kg/m²]. */
  readonly fibrePerArea: number;
  /** Resin mass per area [kg/m²]. */
  readonly resinPerArea: number;
  /** Fibre mass over mass [1]. */
  readonly fibreMassFraction: number;
  /** Fibre volume over volume [1]. */
  readonly fibreVolumeFraction: number;
  /** Resin mass over fibre mass [1]. */
  readonly resinRatio: number;
  /** Mean density [kg/m³]. */
  readonly density: number;
}

/**
 * Layers of different cloths taken as one: their masses, thickness and overall fractions.
 *
 * Formula: sums of thickness, fibre and resin per area over the layers; fractions from the sums
 *
 * Range: each layer as `layerContents` accepts it.
 *
 * Source: mass balance.
 *
 * @param layers The layers, each with its own cloth, fibre, resin and fibre fraction.
 * @returns Thickness [m], masses per area [kg/m²], fractions [1], density [kg/m³].
 * @throws {InputError} If there is no layer, or one of them cannot be meant.
 *
 * @example A mat between two cloths
 * ```ts
 * import { mixtureOfLayers } from "@laminate/notebooks/constituents";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const glass = { fibreDensity: 2500, resinDensity: 1200 };
 * const mixture = mixtureOfLayers([
 *   { ...glass, arealWeight: 0.2, fibreVolumeFraction: 0.4, plies: 2 },
 *   { ...glass, arealWeight: 0.3, fibreVolumeFraction: 0.2 },
 * ]);
 * assertAlmostEquals(mixture.fibreVolumeFraction, 0.28, 1e-12);
 * ```
 */
export function mixtureOfLayers(layers: readonly PlannedLayer[]): LayerMixture {
  check.list("layers", layers);
  let thickness = 0, fibrePerArea = 0, resinPerArea = 0, fibreVolume = 0;
  for (const layer of layers) {
    const contents = layerContents(layer);
    thickness += contents.thickness;
    fibrePerArea += contents.fibrePerArea;
    resinPerArea += contents.resinPerArea;
    fibreVolume += contents.fibrePerArea / layer.fibreDensity;
  }
  const massPerArea = fibrePerArea + resinPerArea;
  return check.results({
    thickness: check.result("thickness", thickness, "m"),
    massPerArea: check.result("mass per area", massPerArea, "kg/m²"),
    fibrePerArea,
    resinPerArea,
    fibreMassFraction: fibrePerArea / massPerArea,
    fibreVolumeFraction: fibreVolume / thickness,
    resinRatio: resinPerArea / fibrePerArea,
    density: massPerArea / thickness,
  });
}
