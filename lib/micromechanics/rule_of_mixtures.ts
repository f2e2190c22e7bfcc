import { checksFor } from "../check/mod.ts";
import { checkTwoPhase, shearModulus } from "./_two_phase.ts";
import type { TwoPhase } from "./two_phase.ts";

const check = checksFor("compute the mixture's stiffness");

/** One property of two phases. */
export interface PhaseProperty {
  /** Its value in the fibre (or filler), in any unit. */
  readonly fibre: number;
  /** Its value in the resin, in the same unit. */
  readonly resin: number;
  /** Fibre volume over volume [1]. */
  readonly fibreVolumeFraction: number;
}

/**
 * Phases side by side, stretched alike: the rule of mixtures, an upper bound of any modulus.
 *
 * Formula: P = Pf Vf + Pm (1 − Vf)
 *
 * Range: Vf 0 to 1.
 *
 * Source: Voigt (1889); in any textbook.
 *
 * @param phases The property in both phases, and the fibre volume fraction.
 * @returns The property of the mixture [unit of the property].
 * @throws {InputError} If a property is not a number or the fraction is outside 0 to 1.
 *
 * @example
 * ```ts
 * import { voigt } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const E = voigt({ fibre: 85e9, resin: 3.4e9, fibreVolumeFraction: 0.7 });
 * assertAlmostEquals(E, 60.52e9, 1);
 * ```
 */
export function voigt(phases: PhaseProperty): number {
  check.object("phases", phases);
  const { fibre, resin, fibreVolumeFraction: Vf } = phases;
  check.finite("property of the fibre", fibre);
  check.finite("property of the resin", resin);
  check.fraction("fibre volume fraction", Vf);
  return check.result("property of the mixture", fibre * Vf + resin * (1 - Vf));
}

/**
 * Phases in a row, stressed alike: the inverse rule, a lower bound of any modulus.
 *
 * Formula: 1/P = Vf/Pf + (1 − Vf)/Pm
 *
 * Range: Vf 0 to 1, both properties above 0.
 *
 * Source: Reuss (1929); in any textbook.
 *
 * @param phases The property in both phases, and the fibre volume fraction.
 * @returns The property of the mixture [unit of the property].
 * @throws {InputError} If a property is not above 0 or the fraction is outside 0 to 1.
 *
 * @example
 * ```ts
 * import { reuss } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const E = reuss({ fibre: 85e9, resin: 3.4e9, fibreVolumeFraction: 0.7 });
 * assertAlmostEquals(E / 1e9, 10.37, 0.005);
 * ```
 */
export function reuss(phases: PhaseProperty): number {
  check.object("phases", phases);
  const { fibre, resin, fibreVolumeFraction: Vf } = phases;
  check.positive("property of the fibre", fibre);
  check.positive("property of the resin", resin);
  check.fraction("fibre volume fraction", Vf);
  return check.result("property of the mixture", 1 / (Vf / fibre + (1 - Vf) / resin));
}

/**
 * Modulus along parallel fibres, by the rule of mixtures.
 *
 * Formula: E1 = E1f Vf + Em (1 − Vf)
 *
 * Range: Vf 0 to 1; true within a fraction of a per cent for straight fibres (the exact value
 * lies a little higher, see `hashinHillBounds`).
 *
 * Source: Kaw, Mechanics of Composite Materials, 2nd ed. (2006), section 3.3.1, from memory.
 *
 * @param mix Fibre [Pa], resin [Pa] and fibre volume fraction [1].
 * @returns Modulus along the fibres [Pa].
 * @throws {InputError} If a phase or the fraction cannot be meant.
 *
 * @example
 * ```ts
 * import { isotropicFibre, longitudinalModulus } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const E1 = longitudinalModulus({
 *   fibre: isotropicFibre({ E: 85e9, nu: 0.2 }),
 *   resin: { E: 3.4e9, nu: 0.3 },
 *   fibreVolumeFraction: 0.7,
 * });
 * assertAlmostEquals(E1, 60.52e9, 1);
 * ```
 */
export function longitudinalModulus(mix: TwoPhase): number {
  const { fibre, resin, fibreVolumeFraction } = checkTwoPhase(check, mix);
  return voigt({ fibre: fibre.E1, resin: resin.E, fibreVolumeFraction });
}

/**
 * Share of a pull along the fibres that the fibres carry.
 *
 * Formula: Ff/F = E1f Vf/E1
 *
 * Range: Vf 0 to 1.
 *
 * Source: Kaw, Mechanics of Composite Materials, 2nd ed. (2006), section 3.3.1, from memory.
 *
 * @param mix Fibre [Pa], resin [Pa] and fibre volume fraction [1].
 * @returns Load in the fibres over the whole load [1].
 * @throws {InputError} If a phase or the fraction cannot be meant.
 *
 * @example
 * ```ts
 * import { fibreLoadShare, isotropicFibre } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const share = fibreLoadShare({
 *   fibre: isotropicFibre({ E: 85e9, nu: 0.2 }),
 *   resin: { E: 3.4e9, nu: 0.3 },
 *   fibreVolumeFraction: 0.7,
 * });
 * assertAlmostEquals(share, 59.5 / 60.52, 1e-12);
 * ```
 */
export function fibreLoadShare(mix: TwoPhase): number {
  const whole = longitudinalModulus(mix);
  return check.result("fibre load share", mix.fibre.E1 * mix.fibreVolumeFraction / whole);
}

/**
 * Major Poisson ratio, by the rule of mixtures.
 *
 * Formula: ν12 = ν12f Vf + νm (1 − Vf)
 *
 * Range: Vf 0 to 1.
 *
 * Source: Kaw, Mechanics of Composite Materials, 2nd ed. (2006), section 3.3.3, from memory.
 *
 * @param mix Fibre, resin and fibre volume fraction [1].
 * @returns Contraction across for a pull along the fibres [1].
 * @throws {InputError} If a phase or the fraction cannot be meant.
 *
 * @example
 * ```ts
 * import { isotropicFibre, majorPoissonRatio } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const nu12 = majorPoissonRatio({
 *   fibre: isotropicFibre({ E: 85e9, nu: 0.2 }),
 *   resin: { E: 3.4e9, nu: 0.3 },
 *   fibreVolumeFraction: 0.7,
 * });
 * assertAlmostEquals(nu12, 0.23, 1e-12);
 * ```
 */
export function majorPoissonRatio(mix: TwoPhase): number {
  const { fibre, resin, fibreVolumeFraction } = checkTwoPhase(check, mix);
  return voigt({ fibre: fibre.nu12, resin: resin.nu, fibreVolumeFraction });
}

/**
 * Modulus across the fibres, by the inverse rule with the resin's plain modulus. It lies below
 * measured values and below the Hashin range; `transverseModulusHalpinTsai` is nearer.
 *
 * Formula: 1/E2 = Vf/E2f + (1 − Vf)/Em
 *
 * Range: Vf 0 to 1.
 *
 * Source: Kaw, Mechanics of Composite Materials, 2nd ed. (2006), section 3.3.2, from memory.
 *
 * @param mix Fibre [Pa], resin [Pa] and fibre volume fraction [1].
 * @returns Modulus across the fibres [Pa].
 * @throws {InputError} If a phase or the fraction cannot be meant.
 *
 * @example
 * ```ts
 * import { isotropicFibre, transverseModulusInverse } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const E2 = transverseModulusInverse({
 *   fibre: isotropicFibre({ E: 85e9, nu: 0.2 }),
 *   resin: { E: 3.4e9, nu: 0.3 },
 *   fibreVolumeFraction: 0.7,
 * });
 * assertAlmostEquals(E2 / 1e9, 10.37, 0.005);
 * ```
 */
export function transverseModulusInverse(mix: TwoPhase): number {
  const { fibre, resin, fibreVolumeFraction } = checkTwoPhase(check, mix);
  return reuss({ fibre: fibre.E2, resin: resin.E, fibreVolumeFraction });
}

/**
 * In-plane shear modulus, by the inverse rule; low, as `transverseModulusInverse` is.
 *
 * Formula: 1/G12 = Vf/G12f + (1 − Vf)/Gm
 *
 * Range: Vf 0 to 1.
 *
 * Source: Kaw, Mechanics of Composite Materials, 2nd ed. (2006), section 3.3.4, from memory.
 *
 * @param mix Fibre [Pa], resin [Pa] and fibre volume fraction [1].
 * @returns In-plane shear modulus [Pa].
 * @throws {InputError} If a phase or the fraction cannot be meant.
 *
 * @example
 * ```ts
 * import { isotropicFibre, shearModulusInverse } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const G12 = shearModulusInverse({
 *   fibre: isotropicFibre({ E: 85e9, nu: 0.2 }),
 *   resin: { E: 3.4e9, nu: 0.3 },
 *   fibreVolumeFraction: 0.7,
 * });
 * assertAlmostEquals(G12 / 1e9, 4.013, 0.001);
 * ```
 */
export function shearModulusInverse(mix: TwoPhase): number {
  const { fibre, resin, fibreVolumeFraction } = checkTwoPhase(check, mix);
  return reuss({ fibre: fibre.G12, resin: shearModulus(resin), fibreVolumeFraction });
}
