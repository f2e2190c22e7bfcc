import { checksFor } from "../check/mod.ts";
import type { FibreProperties, ResinProperties } from "../materials/mod.ts";
import { checkTwoPhase } from "./_two_phase.ts";
import { longitudinalModulus, majorPoissonRatio } from "./rule_of_mixtures.ts";
import type { FibreElastic, ResinElastic, TwoPhase } from "./two_phase.ts";

const check = checksFor("compute the expansion");

/** Two phases whose thermal expansion is known. */
export interface ThermalTwoPhase extends TwoPhase {
  /** The fibre with its expansions [1/K]. */
  readonly fibre: FibreElastic & Pick<FibreProperties, "alpha1" | "alpha2">;
  /** The resin with its expansion [1/K]. */
  readonly resin: ResinElastic & Pick<ResinProperties, "alpha">;
}

/** Two phases whose swelling with moisture is known; the fibre takes none. */
export interface MoistTwoPhase extends TwoPhase {
  /** The fibre with its density [kg/m³]. */
  readonly fibre: FibreElastic & Pick<FibreProperties, "density">;
  /** The resin with its density [kg/m³] and swelling [1]. */
  readonly resin: ResinElastic & Pick<ResinProperties, "density" | "beta">;
}

/** Expansion along and across the fibres. */
export interface MixExpansion {
  /** Along the fibres [1/K], or [1] for a moisture content of 1. */
  readonly along: number;
  /** Across the fibres [1/K], or [1] for a moisture content of 1. */
  readonly across: number;
}

/**
 * Thermal expansion of parallel fibres in resin, after Schapery.
 *
 * Formula: α1 = (E1f α1f Vf + Em αm Vm)/E1;
 * α2 = (α2f + ν12f α1f) Vf + (1 + νm) αm Vm − ν12 α1
 *
 * Range: Vf 0 to 1. Some books write (1 + ν12f) α2f for the fibre's term: equal for glass, a
 * few per cent higher for carbon, ten to twenty for aramid (see `mixThermalExpansionVariant`).
 *
 * Source: Schapery, J. Composite Materials 2 (1968) 380; Kaw (2006) section 3.5, from memory.
 *
 * @param mix Fibre, resin and fibre volume fraction [1].
 * @returns Expansion along and across [1/K].
 * @throws {InputError} If a phase or the fraction cannot be meant.
 *
 * @example
 * ```ts
 * import { isotropicFibre, mixThermalExpansion } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { along, across } = mixThermalExpansion({
 *   fibre: { ...isotropicFibre({ E: 85e9, nu: 0.2 }), alpha1: 5e-6, alpha2: 5e-6 },
 *   resin: { E: 3.4e9, nu: 0.3, alpha: 63e-6 },
 *   fibreVolumeFraction: 0.7,
 * });
 * assertAlmostEquals(along * 1e6, 5.978, 0.0005);
 * assertAlmostEquals(across * 1e6, 27.40, 0.005);
 * ```
 */
export function mixThermalExpansion(mix: ThermalTwoPhase): MixExpansion {
  checkThermal(mix);
  return schapery(mix, mix.fibre.alpha2 + mix.fibre.nu12 * mix.fibre.alpha1);
}

/**
 * Thermal expansion with the fibre's transverse term written as for an isotropic fibre: offered
 * for comparison with books that do so.
 *
 * Formula: α1 as `mixThermalExpansion`; α2 = (1 + ν12f) α2f Vf + (1 + νm) αm Vm − ν12 α1
 *
 * Range: Vf 0 to 1; meant for isotropic fibres.
 *
 * Source: Kaw, Mechanics of Composite Materials, 2nd ed. (2006), section 3.5, from memory.
 *
 * @param mix Fibre, resin and fibre volume fraction [1].
 * @returns Expansion along and across [1/K].
 * @throws {InputError} If a phase or the fraction cannot be meant.
 *
 * @example
 * ```ts
 * import { isotropicFibre, mixThermalExpansionVariant } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { across } = mixThermalExpansionVariant({
 *   fibre: { ...isotropicFibre({ E: 85e9, nu: 0.2 }), alpha1: 5e-6, alpha2: 5e-6 },
 *   resin: { E: 3.4e9, nu: 0.3, alpha: 63e-6 },
 *   fibreVolumeFraction: 0.7,
 * });
 * assertAlmostEquals(across * 1e6, 27.40, 0.005);
 * ```
 */
export function mixThermalExpansionVariant(mix: ThermalTwoPhase): MixExpansion {
  checkThermal(mix);
  return schapery(mix, (1 + mix.fibre.nu12) * mix.fibre.alpha2);
}

function checkThermal(mix: ThermalTwoPhase): void {
  checkTwoPhase(check, mix);
  check.finite("fibre expansion alpha1", mix.fibre.alpha1, "1/K");
  check.finite("fibre expansion alpha2", mix.fibre.alpha2, "1/K");
  check.finite("resin expansion alpha", mix.resin.alpha, "1/K");
}

function schapery(mix: ThermalTwoPhase, fibreTerm: number): MixExpansion {
  const { fibre, resin, fibreVolumeFraction: Vf } = mix;
  const Vm = 1 - Vf;
  const along = (fibre.E1 * fibre.alpha1 * Vf + resin.E * resin.alpha * Vm) /
    longitudinalModulus(mix);
  const across = fibreTerm * Vf + (1 + resin.nu) * resin.alpha * Vm -
    majorPoissonRatio(mix) * along;
  return {
    along: check.result("expansion along the fibres", along, "1/K"),
    across: check.result("expansion across the fibres", across, "1/K"),
  };
}

/**
 * Swelling of parallel fibres in resin with moisture, for fibres that take up none.
 *
 * The strain is for a moisture content of 1 by mass of the laminate; real contents are a few per
 * cent at most. Flax and aramid take up water themselves: for them the figures are too low.
 *
 * Formula: β1 = (Em/E1)(ρ/ρm) βm; β2 = (1 + νm)(ρ/ρm) βm − ν12 β1
 *
 * Range: Vf 0 up to, not at, 1: without resin nothing takes up the moisture.
 *
 * Source: Kaw, Mechanics of Composite Materials, 2nd ed. (2006), section 3.6, from memory.
 *
 * @param mix Fibre, resin and fibre volume fraction [1].
 * @returns Swelling along and across for a moisture content of 1 [1].
 * @throws {InputError} If a phase or the fraction cannot be meant.
 *
 * @example
 * ```ts
 * import { isotropicFibre, mixMoistureExpansion } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { along, across } = mixMoistureExpansion({
 *   fibre: { ...isotropicFibre({ E: 85e9, nu: 0.2 }), density: 2500 },
 *   resin: { E: 3.4e9, nu: 0.3, density: 1200, beta: 0.33 },
 *   fibreVolumeFraction: 0.7,
 * });
 * assertAlmostEquals(along, 0.0326, 0.000005);
 * assertAlmostEquals(across, 0.7468, 0.00005);
 * ```
 */
export function mixMoistureExpansion(mix: MoistTwoPhase): MixExpansion {
  const { fibre, resin, fibreVolumeFraction: Vf } = checkTwoPhase(check, mix) as MoistTwoPhase;
  check.positive("fibre density", fibre.density, "kg/m³");
  check.positive("resin density", resin.density, "kg/m³");
  check.nonNegative("resin swelling beta", resin.beta);
  check.positive("resin volume fraction", 1 - Vf);
  const density = fibre.density * Vf + resin.density * (1 - Vf);
  const free = density / resin.density * resin.beta;
  const along = resin.E / longitudinalModulus(mix) * free;
  const across = (1 + resin.nu) * free - majorPoissonRatio(mix) * along;
  return {
    along: check.result("swelling along the fibres", along),
    across: check.result("swelling across the fibres", across),
  };
}
