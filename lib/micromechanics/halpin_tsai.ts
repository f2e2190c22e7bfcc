import { checksFor } from "../check/mod.ts";
import { checkTwoPhase, shearModulus } from "./_two_phase.ts";
import type { PhaseProperty } from "./rule_of_mixtures.ts";
import type { TwoPhase } from "./two_phase.ts";

const check = checksFor("compute the modulus after Halpin and Tsai");

/**
 * The contrast of two phases in the Halpin–Tsai equations.
 *
 * Formula: η = (Pf/Pm − 1)/(Pf/Pm + ξ)
 *
 * Range: both properties above 0, ξ 0 or above (0 gives the inverse rule, ∞ the rule of mixtures).
 *
 * Source: Halpin and Tsai, AFML TR 67-423 (1967), from memory.
 *
 * @param fibre Property of the fibre, in any unit.
 * @param resin Property of the resin, in the same unit.
 * @param xi Reinforcing parameter ξ [1].
 * @returns η [1].
 * @throws {InputError} If a property is not above 0 or ξ is below 0.
 *
 * @example
 * ```ts
 * import { halpinTsaiEta } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(halpinTsaiEta(85e9, 3.4e9, 2), 24 / 27, 1e-12);
 * ```
 */
export function halpinTsaiEta(fibre: number, resin: number, xi: number): number {
  check.positive("property of the fibre", fibre);
  check.positive("property of the resin", resin);
  check.nonNegative("xi", xi);
  return check.result("eta", (fibre - resin) / (fibre + xi * resin));
}

/**
 * A modulus between the inverse rule and the rule of mixtures, after Halpin and Tsai.
 *
 * Formula: P = Pm (1 + ξ η Vf)/(1 − η Vf), η = (Pf/Pm − 1)/(Pf/Pm + ξ)
 *
 * Range: Vf 0 to 1, ξ 0 or above.
 *
 * Source: Halpin and Tsai, AFML TR 67-423 (1967); Kaw (2006) section 3.3.5, from memory.
 *
 * @param phases The property in both phases, and the fibre volume fraction.
 * @param xi Reinforcing parameter ξ: 2 for E2 of round fibres, 1 for G12 [1].
 * @returns The property of the mixture [unit of the property].
 * @throws {InputError} If a property is not above 0, or ξ or the fraction is out of range.
 *
 * @example
 * ```ts
 * import { halpinTsai } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const E2 = halpinTsai({ fibre: 85e9, resin: 3.4e9, fibreVolumeFraction: 0.7 }, 2);
 * assertAlmostEquals(E2 / 1e9, 20.2, 1e-9);
 * ```
 */
export function halpinTsai(phases: PhaseProperty, xi: number): number {
  check.object("phases", phases);
  const { fibre, resin, fibreVolumeFraction: Vf } = phases;
  check.fraction("fibre volume fraction", Vf);
  const eta = halpinTsaiEta(fibre, resin, xi);
  return check.result("property of the mixture", resin * (1 + xi * eta * Vf) / (1 - eta * Vf));
}

/**
 * Reinforcing parameter for the shear modulus that follows measurements at high fibre fractions.
 *
 * Formula: ξ = 1 + 40 Vf¹⁰
 *
 * Range: Vf 0 to 1; below 0.5 it is hardly above 1.
 *
 * Source: Hewitt and de Malherbe, Journal of Composite Materials 4 (1970) 280, from memory.
 *
 * @param fibreVolumeFraction Fibre volume over volume, Vf [1].
 * @returns ξ [1].
 * @throws {InputError} If the fraction is outside 0 to 1.
 *
 * @example
 * ```ts
 * import { hewittMalherbeXi } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(hewittMalherbeXi(0.7), 2.13, 0.0005);
 * ```
 */
export function hewittMalherbeXi(fibreVolumeFraction: number): number {
  check.fraction("fibre volume fraction", fibreVolumeFraction);
  return 1 + 40 * fibreVolumeFraction ** 10;
}

/**
 * Modulus across the fibres, after Halpin and Tsai.
 *
 * Formula: `halpinTsai` with Pf = E2f, Pm = Em
 *
 * Range: Vf 0 to 1; ξ = 2 is for round fibres.
 *
 * Source: Kaw, Mechanics of Composite Materials, 2nd ed. (2006), section 3.3.5, from memory.
 *
 * @param mix Fibre [Pa], resin [Pa] and fibre volume fraction [1].
 * @param xi Reinforcing parameter ξ [1].
 * @returns Modulus across the fibres [Pa].
 * @throws {InputError} If a phase, the fraction or ξ cannot be meant.
 *
 * @example
 * ```ts
 * import { isotropicFibre, transverseModulusHalpinTsai } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const E2 = transverseModulusHalpinTsai({
 *   fibre: isotropicFibre({ E: 85e9, nu: 0.2 }),
 *   resin: { E: 3.4e9, nu: 0.3 },
 *   fibreVolumeFraction: 0.7,
 * });
 * assertAlmostEquals(E2 / 1e9, 20.2, 1e-9);
 * ```
 */
export function transverseModulusHalpinTsai(mix: TwoPhase, xi = 2): number {
  const { fibre, resin, fibreVolumeFraction } = checkTwoPhase(check, mix);
  return halpinTsai({ fibre: fibre.E2, resin: resin.E, fibreVolumeFraction }, xi);
}

/**
 * In-plane shear modulus, after Halpin and Tsai. With ξ = 1 it is the lower bound of
 * `hashinHillBounds` when the fibre is the stiffer.
 *
 * Formula: `halpinTsai` with Pf = G12f, Pm = Gm
 *
 * Range: Vf 0 to 1.
 *
 * Source: Kaw, Mechanics of Composite Materials, 2nd ed. (2006), section 3.3.5, from memory.
 *
 * @param mix Fibre [Pa], resin [Pa] and fibre volume fraction [1].
 * @param xi Reinforcing parameter ξ; `hewittMalherbeXi` gives another choice [1].
 * @returns In-plane shear modulus [Pa].
 * @throws {InputError} If a phase, the fraction or ξ cannot be meant.
 *
 * @example
 * ```ts
 * import { isotropicFibre, shearModulusHalpinTsai } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const G12 = shearModulusHalpinTsai({
 *   fibre: isotropicFibre({ E: 85e9, nu: 0.2 }),
 *   resin: { E: 3.4e9, nu: 0.3 },
 *   fibreVolumeFraction: 0.7,
 * });
 * assertAlmostEquals(G12 / 1e9, 6.168, 0.001);
 * ```
 */
export function shearModulusHalpinTsai(mix: TwoPhase, xi = 1): number {
  const { fibre, resin, fibreVolumeFraction } = checkTwoPhase(check, mix);
  const phases = { fibre: fibre.G12, resin: shearModulus(resin), fibreVolumeFraction };
  return halpinTsai(phases, xi);
}
