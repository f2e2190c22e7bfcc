import { checksFor } from "../check/mod.ts";
import { together } from "./_together.ts";
import { fibreMassFraction } from "./fibre_fraction.ts";
import {
  fibreFractionFromThickness,
  type LayerContents,
  layerContents,
  type MeasuredThickness,
  type PlannedLayer,
} from "./ply_thickness.ts";
import type { UncertainResults, WithUncertainty } from "./with_uncertainty.ts";

const check = checksFor("carry the uncertainty through the layer");

/**
 * `layerContents` with uncertainties: what a planned layer holds.
 *
 * Formula: as `layerContents`; u² = Σ(∂f/∂x u)²
 *
 * Range: as `layerContents`; inputs independent of each other.
 *
 * Source: mass balance; JCGM 100:2008 (GUM) 5.1.
 *
 * @param layer Cloth, resin and fractions, each with its standard uncertainty.
 * @returns Thickness [m], masses per area [kg/m²], fractions [1] and density [kg/m³].
 * @throws {InputError} If an input is no value with uncertainty or cannot be meant.
 *
 * @example
 * ```ts
 * import { uncertainLayerContents } from "@laminate/notebooks/constituents";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { thickness } = uncertainLayerContents({
 *   arealWeight: { value: 0.2, u: 0.005 },
 *   fibreDensity: { value: 2500, u: 0 },
 *   fibreVolumeFraction: { value: 0.4, u: 0.01 },
 *   resinDensity: { value: 1200, u: 10 },
 * });
 * assertAlmostEquals(thickness.u, 0.2e-3 * 0.025 * Math.SQRT2, 1e-12);
 * ```
 */
export function uncertainLayerContents(
  layer: WithUncertainty<PlannedLayer>,
): UncertainResults<LayerContents, PlannedLayer> {
  check.object("layer", layer);
  return together((values: PlannedLayer) => ({ ...layerContents(values) }), layer);
}

/** A laminate of equal plies, its thickness measured, with the resin's density. */
export interface MeasuredLaminate extends MeasuredThickness {
  /** Density of the cured resin [kg/m³]. */
  readonly resinDensity: number;
}

/** What a measured thickness says of a laminate taken as void-free. */
export interface ThicknessContents {
  /** Fibre volume over laminate volume [1]. */
  readonly fibreVolumeFraction: number;
  /** Fibre mass over laminate mass, void-free [1]. */
  readonly fibreMassFraction: number;
  /** Resin mass per area, void-free [kg/m²]. */
  readonly resinPerArea: number;
}

/**
 * Fibre fraction and resin of a laminate of equal plies from its measured thickness, taken as
 * void-free, with uncertainties.
 *
 * Formula: Vf = n w/(ρf t); W = ρf Vf/(ρf Vf + ρm (1 − Vf)); wm = ρm (1 − Vf) t
 *
 * Range: Vf up to 1.
 *
 * Source: ASTM D3171, test method by thickness, from memory; JCGM 100:2008 (GUM) 5.1.
 *
 * @param laminate Cloth, plies, densities and thickness, each with its standard uncertainty.
 * @returns Fractions [1] and resin per area [kg/m²].
 * @throws {InputError} If an input is no value with uncertainty or cannot be meant.
 *
 * @example
 * ```ts
 * import { uncertainThicknessContents } from "@laminate/notebooks/constituents";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { fibreVolumeFraction } = uncertainThicknessContents({
 *   arealWeight: { value: 0.2, u: 0 },
 *   plies: { value: 4, u: 0 },
 *   fibreDensity: { value: 2500, u: 0 },
 *   thickness: { value: 0.8e-3, u: 0.02e-3 },
 *   resinDensity: { value: 1200, u: 0 },
 * });
 * assertAlmostEquals(fibreVolumeFraction.u, 0.4 * 0.025, 1e-9);
 * ```
 */
export function uncertainThicknessContents(
  laminate: WithUncertainty<MeasuredLaminate>,
): UncertainResults<ThicknessContents, MeasuredLaminate> {
  check.object("laminate", laminate);
  return together((values: MeasuredLaminate) => {
    const Vf = fibreFractionFromThickness(values);
    return {
      fibreVolumeFraction: Vf,
      fibreMassFraction: fibreMassFraction(Vf, values),
      resinPerArea: values.resinDensity * (1 - Vf) * values.thickness,
    };
  }, laminate);
}
