import { checksFor } from "../check/mod.ts";
import { hydrostaticDensity } from "./density.ts";

const checkBurn = checksFor("compute the burn-off");
const checkPanel = checksFor("compute the panel's contents");

/** A burnt-off (or digested) specimen with its hydrostatic weighing. */
export interface BurnOff {
  /** Mass of the specimen before burning [kg]. */
  readonly massSpecimen: number;
  /** Mass of the fibre left, ash and filler subtracted [kg]. */
  readonly massFibre: number;
  /** Mass in air of the hydrostatic weighing [kg]. */
  readonly massInAir: number;
  /** Apparent mass under water [kg]. */
  readonly massInWater: number;
  /** Density of the water [kg/m³]. */
  readonly waterDensity: number;
  /** Density of the fibre [kg/m³]. */
  readonly fibreDensity: number;
  /** Density of the cured resin [kg/m³]. */
  readonly resinDensity: number;
}

/** What a laminate is made of, by volume and by mass. */
export interface MeasuredContents {
  /** Density of the laminate [kg/m³]. */
  readonly density: number;
  /** Fibre mass over laminate mass [1]. */
  readonly fibreMassFraction: number;
  /** Fibre volume over laminate volume [1]. */
  readonly fibreVolumeFraction: number;
  /** Resin volume over laminate volume [1]. */
  readonly resinVolumeFraction: number;
  /** Void volume over laminate volume; negative if a figure is off, never clipped [1]. */
  readonly voidFraction: number;
}

/**
 * Fibre, resin and void fractions from a burn-off and a hydrostatic weighing.
 *
 * Burning resin gives poisonous smoke and leaves loose fibre: laboratory work, and only for
 * glass and basalt (carbon oxidises, aramid and flax burn).
 *
 * Formula: Wf = mf/mc; ρ = mair ρw/(mair − mwater); Vf = Wf ρ/ρf; Vm = (1 − Wf) ρ/ρm;
 * Vv = 1 − Vf − Vm
 *
 * Range: fibre mass 0 to the specimen's; the void fraction may come out negative.
 *
 * Source: ASTM D3171 and D2734, from memory.
 *
 * @param specimen Masses [kg] and densities [kg/m³].
 * @returns Density [kg/m³] and the fractions [1].
 * @throws {InputError} If a mass or density cannot be meant.
 *
 * @example
 * ```ts
 * import { burnOff } from "@laminate/notebooks/constituents";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const contents = burnOff({
 *   massSpecimen: 3.6e-3,
 *   massFibre: 1.8e-3,
 *   massInAir: 3.6e-3,
 *   massInWater: 1.35e-3,
 *   waterDensity: 1000,
 *   fibreDensity: 2560,
 *   resinDensity: 1200,
 * });
 * assertAlmostEquals(contents.density, 1600, 1e-9);
 * assertAlmostEquals(contents.voidFraction, 1 - 800 / 2560 - 800 / 1200, 1e-12);
 * ```
 */
export function burnOff(specimen: BurnOff): MeasuredContents {
  checkBurn.object("specimen", specimen);
  const { massSpecimen, massFibre, fibreDensity, resinDensity } = specimen;
  checkBurn.positive("specimen mass", massSpecimen, "kg");
  checkBurn.within("fibre mass", massFibre, { min: 0, max: massSpecimen, unit: "kg" });
  checkBurn.positive("fibre density", fibreDensity, "kg/m³");
  checkBurn.positive("resin density", resinDensity, "kg/m³");
  const density = hydrostaticDensity(specimen);
  const massFraction = massFibre / massSpecimen;
  const fibre = massFraction * density / fibreDensity;
  const resin = (1 - massFraction) * density / resinDensity;
  return {
    density,
    fibreMassFraction: massFraction,
    fibreVolumeFraction: checkBurn.result("fibre volume fraction", fibre),
    resinVolumeFraction: checkBurn.result("resin volume fraction", resin),
    voidFraction: 1 - fibre - resin,
  };
}

/** A flat panel without core: weighed, measured, its cloth known. */
export interface PanelWeighing {
  /** Mass of the panel [kg]. */
  readonly mass: number;
  /** Mass of the dry fibre in it [kg]. */
  readonly massFibre: number;
  /** Area [m²]. */
  readonly area: number;
  /** Thickness [m]. */
  readonly thickness: number;
  /** Density of the fibre [kg/m³]. */
  readonly fibreDensity: number;
  /** Density of the cured resin [kg/m³]. */
  readonly resinDensity: number;
}

/**
 * Fibre, resin and void fractions of a flat panel from its mass, area and thickness.
 *
 * Formula: V = A t; ρ = m/V; Vf = mf/(ρf V); Vm = (m − mf)/(ρm V); Vv = 1 − Vf − Vm
 *
 * Range: fibre mass above 0, up to the panel's; the void fraction may come out negative.
 *
 * Source: mass and volume balance.
 *
 * @param panel Masses [kg], area [m²], thickness [m] and densities [kg/m³].
 * @returns Density [kg/m³] and the fractions [1].
 * @throws {InputError} If a mass, size or density cannot be meant.
 *
 * @example
 * ```ts
 * import { panelWeighing } from "@laminate/notebooks/constituents";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const contents = panelWeighing({
 *   mass: 1.7,
 *   massFibre: 1,
 *   area: 1,
 *   thickness: 1e-3,
 *   fibreDensity: 2500,
 *   resinDensity: 1250,
 * });
 * assertAlmostEquals(contents.fibreVolumeFraction, 0.4, 1e-12);
 * assertAlmostEquals(contents.voidFraction, 0.04, 1e-12);
 * ```
 */
export function panelWeighing(panel: PanelWeighing): MeasuredContents {
  checkPanel.object("panel", panel);
  const { mass, massFibre, area, thickness, fibreDensity, resinDensity } = panel;
  checkPanel.positive("mass", mass, "kg");
  checkPanel.within("fibre mass", massFibre, { min: 0, max: mass, unit: "kg" });
  checkPanel.positive("area", area, "m²");
  checkPanel.positive("thickness", thickness, "m");
  checkPanel.positive("fibre density", fibreDensity, "kg/m³");
  checkPanel.positive("resin density", resinDensity, "kg/m³");
  const volume = checkPanel.positive("volume", area * thickness, "m³");
  const fibre = massFibre / fibreDensity / volume;
  const resin = (mass - massFibre) / resinDensity / volume;
  return {
    density: checkPanel.result("density", mass / volume, "kg/m³"),
    fibreMassFraction: massFibre / mass,
    fibreVolumeFraction: checkPanel.result("fibre volume fraction", fibre),
    resinVolumeFraction: checkPanel.result("resin volume fraction", resin),
    voidFraction: 1 - fibre - resin,
  };
}
