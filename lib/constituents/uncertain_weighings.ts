import { checksFor } from "../check/mod.ts";
import type { ConstituentDensities } from "./_densities.ts";
import { together } from "./_together.ts";
import { voidFreeDensity } from "./density.ts";
import { fibreVolumeFraction } from "./fibre_fraction.ts";
import {
  type BurnOff,
  burnOff,
  type MeasuredContents,
  type PanelWeighing,
  panelWeighing,
} from "./measured_contents.ts";
import type { UncertainResults, WithUncertainty } from "./with_uncertainty.ts";

const check = checksFor("carry the uncertainty through the weighing");

/** A laminate of which fibre and whole were weighed. */
export interface FibreAndLaminate extends ConstituentDensities {
  /** Mass of the fibre [kg]. */
  readonly massFibre: number;
  /** Mass of the laminate [kg]. */
  readonly massLaminate: number;
}

/** A laminate of which fibre and resin were weighed. */
export interface FibreAndResin extends ConstituentDensities {
  /** Mass of the fibre [kg]. */
  readonly massFibre: number;
  /** Mass of the resin [kg]. */
  readonly massResin: number;
}

/** What two weighings say of a laminate taken as void-free. */
export interface WeighedContents {
  /** Fibre mass over laminate mass [1]. */
  readonly fibreMassFraction: number;
  /** Resin mass over fibre mass [1]. */
  readonly resinRatio: number;
  /** Fibre volume over laminate volume, void-free [1]. */
  readonly fibreVolumeFraction: number;
  /** Density, void-free [kg/m³]. */
  readonly density: number;
}

/**
 * Fractions of a laminate from the masses of its fibre and of the whole, with uncertainties, and
 * with the correlation of the two weighings where one scale made both.
 *
 * Formula: W = mf/mc; Vf = (mf/ρf)/(mf/ρf + (mc − mf)/ρm); ρ = 1/(W/ρf + (1 − W)/ρm)
 *
 * Range: mf up to mc.
 *
 * Source: ASTM D3171, from memory; JCGM 100:2008 (GUM) 5.1 and 5.2.
 *
 * @param weighed Masses and densities, each with its standard uncertainty.
 * @param massCorrelation Correlation of the two masses' errors, −1 to 1 [1].
 * @returns Fractions [1], ratio [1] and density [kg/m³].
 * @throws {InputError} If an input is no value with uncertainty or cannot be meant.
 *
 * @example
 * ```ts
 * import { uncertainFibreAndLaminate } from "@laminate/notebooks/constituents";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const weighed = {
 *   massFibre: { value: 0.5, u: 0.01 },
 *   massLaminate: { value: 1, u: 0.02 },
 *   fibreDensity: { value: 2500, u: 0 },
 *   resinDensity: { value: 1200, u: 0 },
 * };
 * const alone = uncertainFibreAndLaminate(weighed);
 * assertAlmostEquals(alone.fibreMassFraction.u, 0.01 * Math.SQRT2, 1e-9);
 * const oneScale = uncertainFibreAndLaminate(weighed, 1);
 * assertAlmostEquals(oneScale.fibreMassFraction.u, 0, 1e-9);
 * ```
 */
export function uncertainFibreAndLaminate(
  weighed: WithUncertainty<FibreAndLaminate>,
  massCorrelation = 0,
): UncertainResults<WeighedContents, FibreAndLaminate> {
  check.object("weighed", weighed);
  check.within("correlation of the masses", massCorrelation, { min: -1, max: 1 });
  const f = (values: FibreAndLaminate) =>
    contentsOf(values.massFibre, values.massLaminate - values.massFibre, values);
  return together(f, weighed, {
    between: ["massFibre", "massLaminate"],
    coefficient: massCorrelation,
  });
}

/**
 * Fractions of a laminate from the masses of its fibre and its resin, with uncertainties, and
 * with the correlation of the two weighings where one scale made both.
 *
 * Formula: W = mf/(mf + mr); Vf = (mf/ρf)/(mf/ρf + mr/ρm); ρ = 1/(W/ρf + (1 − W)/ρm)
 *
 * Range: both masses above 0.
 *
 * Source: ASTM D3171, from memory; JCGM 100:2008 (GUM) 5.1 and 5.2.
 *
 * @param weighed Masses and densities, each with its standard uncertainty.
 * @param massCorrelation Correlation of the two masses' errors, −1 to 1 [1].
 * @returns Fractions [1], ratio [1] and density [kg/m³].
 * @throws {InputError} If an input is no value with uncertainty or cannot be meant.
 *
 * @example
 * ```ts
 * import { uncertainFibreAndResin } from "@laminate/notebooks/constituents";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { resinRatio } = uncertainFibreAndResin({
 *   massFibre: { value: 0.5, u: 0.005 },
 *   massResin: { value: 0.5, u: 0 },
 *   fibreDensity: { value: 2500, u: 0 },
 *   resinDensity: { value: 1200, u: 0 },
 * });
 * assertAlmostEquals(resinRatio.u, 0.01, 1e-9);
 * ```
 */
export function uncertainFibreAndResin(
  weighed: WithUncertainty<FibreAndResin>,
  massCorrelation = 0,
): UncertainResults<WeighedContents, FibreAndResin> {
  check.object("weighed", weighed);
  check.within("correlation of the masses", massCorrelation, { min: -1, max: 1 });
  const f = (values: FibreAndResin) => contentsOf(values.massFibre, values.massResin, values);
  return together(f, weighed, {
    between: ["massFibre", "massResin"],
    coefficient: massCorrelation,
  });
}

function contentsOf(fibre: number, resin: number, densities: ConstituentDensities): Record<
  keyof WeighedContents,
  number
> {
  const W = fibre / (fibre + resin);
  return {
    fibreMassFraction: W,
    resinRatio: resin / fibre,
    fibreVolumeFraction: fibreVolumeFraction(W, densities),
    density: voidFreeDensity(W, densities),
  };
}

/**
 * `burnOff` with uncertainties.
 *
 * Formula: as `burnOff`; u² = Σ(∂f/∂x u)²
 *
 * Range: as `burnOff`. The specimen's mass and its mass in air are two inputs; where one weighing
 * served both, say so with the correlation 1.
 *
 * Source: ASTM D3171 and D2734, from memory; JCGM 100:2008 (GUM) 5.1 and 5.2.
 *
 * @param specimen Masses and densities, each with its standard uncertainty.
 * @param massCorrelation Correlation of the specimen's mass and its mass in air, −1 to 1 [1].
 * @returns Density [kg/m³] and fractions [1]; the void fraction may be negative.
 * @throws {InputError} If an input is no value with uncertainty or cannot be meant.
 *
 * @example
 * ```ts
 * import { uncertainBurnOff } from "@laminate/notebooks/constituents";
 * import { assert } from "@std/assert";
 *
 * const { voidFraction } = uncertainBurnOff({
 *   massSpecimen: { value: 3.6e-3, u: 1e-6 },
 *   massFibre: { value: 1.8e-3, u: 1e-6 },
 *   massInAir: { value: 3.6e-3, u: 1e-6 },
 *   massInWater: { value: 1.44e-3, u: 1e-6 },
 *   waterDensity: { value: 997, u: 0.5 },
 *   fibreDensity: { value: 2560, u: 20 },
 *   resinDensity: { value: 1200, u: 10 },
 * });
 * assert(voidFraction.u > 0.005);
 * ```
 */
export function uncertainBurnOff(
  specimen: WithUncertainty<BurnOff>,
  massCorrelation = 0,
): UncertainResults<MeasuredContents, BurnOff> {
  check.object("specimen", specimen);
  check.within("correlation of the masses", massCorrelation, { min: -1, max: 1 });
  return together((values: BurnOff) => ({ ...burnOff(values) }), specimen, {
    between: ["massSpecimen", "massInAir"],
    coefficient: massCorrelation,
  });
}

/**
 * `panelWeighing` with uncertainties.
 *
 * Formula: as `panelWeighing`; u² = Σ(∂f/∂x u)²
 *
 * Range: as `panelWeighing`; inputs independent of each other.
 *
 * Source: mass and volume balance; JCGM 100:2008 (GUM) 5.1.
 *
 * @param panel Masses, sizes and densities, each with its standard uncertainty.
 * @returns Density [kg/m³] and fractions [1]; the void fraction may be negative.
 * @throws {InputError} If an input is no value with uncertainty or cannot be meant.
 *
 * @example
 * ```ts
 * import { uncertainPanelWeighing } from "@laminate/notebooks/constituents";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { density } = uncertainPanelWeighing({
 *   mass: { value: 1.7, u: 0.017 },
 *   massFibre: { value: 1, u: 0 },
 *   area: { value: 1, u: 0 },
 *   thickness: { value: 1e-3, u: 0 },
 *   fibreDensity: { value: 2500, u: 0 },
 *   resinDensity: { value: 1250, u: 0 },
 * });
 * assertAlmostEquals(density.u, 17, 1e-6);
 * ```
 */
export function uncertainPanelWeighing(
  panel: WithUncertainty<PanelWeighing>,
): UncertainResults<MeasuredContents, PanelWeighing> {
  check.object("panel", panel);
  return together((values: PanelWeighing) => ({ ...panelWeighing(values) }), panel);
}
