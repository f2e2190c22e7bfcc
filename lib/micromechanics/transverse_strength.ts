import { checksFor } from "../check/mod.ts";
import type { ResinProperties } from "../materials/mod.ts";
import { checkTwoPhase, shearModulus } from "./_two_phase.ts";
import { diameterToSpacing } from "./packing.ts";
import { shearModulusInverse, transverseModulusInverse } from "./rule_of_mixtures.ts";
import type { ResinElastic, TwoPhase } from "./two_phase.ts";

const check = checksFor("estimate the strength across the fibres");

/** Two phases whose resin's three strengths are known. */
export interface ResinStrengthTwoPhase extends TwoPhase {
  /** The resin with its strengths [Pa]. */
  readonly resin:
    & ResinElastic
    & Pick<ResinProperties, "tensileStrength" | "compressiveStrength" | "shearStrength">;
}

/** Strengths across the fibres and in shear, where the resin decides. */
export interface TransverseStrengths {
  /** Tension across [Pa]. */
  readonly tension: number;
  /** Compression across [Pa]. */
  readonly compression: number;
  /** In-plane shear [Pa]. */
  readonly shear: number;
}

/** The moduli by which a failure strain becomes a strength. */
export interface TransverseModuli {
  /** Modulus across the fibres [Pa]. */
  readonly E2: number;
  /** In-plane shear modulus [Pa]. */
  readonly G12: number;
}

/**
 * Strengths across parallel fibres and in shear, from the strain that the resin between the
 * fibres of a square array can bear.
 *
 * Formula: σ2 = E2 (Xm/Em) [(d/s)(Em/E2f − 1) + 1]; τ = G12 (Sm/Gm) [(d/s)(Gm/G12f − 1) + 1]
 *
 * Range: Vf 0 to π/4. With the inverse rule's moduli, the default, the figures are low; compression
 * and shear are measured two to seven times as high.
 *
 * Source: Kaw, Mechanics of Composite Materials, 2nd ed. (2006), sections 3.4.3 to 3.4.5, from
 * memory.
 *
 * @param mix Fibre, resin and fibre volume fraction [1].
 * @param moduli E2 and G12 of the composite [Pa]; by the inverse rule if left out.
 * @returns Strengths [Pa].
 * @throws {InputError} If a phase, the fraction or a modulus cannot be meant.
 *
 * @example
 * ```ts
 * import { isotropicFibre, transverseStrengths } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { tension } = transverseStrengths({
 *   fibre: isotropicFibre({ E: 85e9, nu: 0.2 }),
 *   resin: {
 *     E: 3.4e9,
 *     nu: 0.3,
 *     tensileStrength: 72e6,
 *     compressiveStrength: 102e6,
 *     shearStrength: 34e6,
 *   },
 *   fibreVolumeFraction: 0.7,
 * });
 * assertAlmostEquals(tension / 1e6, 20.56, 0.01);
 * ```
 */
export function transverseStrengths(
  mix: ResinStrengthTwoPhase,
  moduli?: TransverseModuli,
): TransverseStrengths {
  checkResinStrengths(mix);
  const { E2, G12 } = moduli === undefined
    ? { E2: transverseModulusInverse(mix), G12: shearModulusInverse(mix) }
    : check.object("moduli", moduli);
  check.positive("E2", E2, "Pa");
  check.positive("G12", G12, "Pa");
  const { fibre, resin, fibreVolumeFraction } = mix;
  const dOverS = diameterToSpacing(fibreVolumeFraction);
  const Gm = shearModulus(resin);
  const pull = E2 / resin.E * (dOverS * (resin.E / fibre.E2 - 1) + 1);
  const shear = G12 / Gm * (dOverS * (Gm / fibre.G12 - 1) + 1);
  return {
    tension: check.result("transverse tension", pull * resin.tensileStrength, "Pa"),
    compression: check.result("transverse compression", pull * resin.compressiveStrength, "Pa"),
    shear: check.result("shear strength", shear * resin.shearStrength, "Pa"),
  };
}

/**
 * Strengths across parallel fibres and in shear by the simplified equations of NASA: the resin's
 * strength lowered by the crowding of the fibres.
 *
 * Formula: X = Xm [1 − (√Vf − Vf)(1 − Pm/Pf)], P the modulus E2 or G12
 *
 * Range: Vf 0 to 1; good bond between fibre and resin.
 *
 * Source: Chamis, NASA TM-83320 (1983), from memory.
 *
 * @param mix Fibre, resin and fibre volume fraction [1].
 * @returns Strengths [Pa].
 * @throws {InputError} If a phase or the fraction cannot be meant.
 *
 * @example
 * ```ts
 * import { isotropicFibre, transverseStrengthsCrowded } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { tension } = transverseStrengthsCrowded({
 *   fibre: isotropicFibre({ E: 72e9, nu: 0.2 }),
 *   resin: {
 *     E: 3.6e9,
 *     nu: 0.2,
 *     tensileStrength: 70e6,
 *     compressiveStrength: 100e6,
 *     shearStrength: 45e6,
 *   },
 *   fibreVolumeFraction: 0.25,
 * });
 * assertAlmostEquals(tension / 1e6, 70 * (1 - 0.25 * 0.95), 1e-9);
 * ```
 */
export function transverseStrengthsCrowded(mix: ResinStrengthTwoPhase): TransverseStrengths {
  checkResinStrengths(mix);
  const { fibre, resin, fibreVolumeFraction: Vf } = mix;
  const crowding = Math.sqrt(Vf) - Vf;
  const across = 1 - crowding * (1 - resin.E / fibre.E2);
  const shear = 1 - crowding * (1 - shearModulus(resin) / fibre.G12);
  return {
    tension: check.result("transverse tension", across * resin.tensileStrength, "Pa"),
    compression: check.result("transverse compression", across * resin.compressiveStrength, "Pa"),
    shear: check.result("shear strength", shear * resin.shearStrength, "Pa"),
  };
}

function checkResinStrengths(mix: ResinStrengthTwoPhase): void {
  checkTwoPhase(check, mix);
  check.positive("resin tensile strength", mix.resin.tensileStrength, "Pa");
  check.positive("resin compressive strength", mix.resin.compressiveStrength, "Pa");
  check.positive("resin shear strength", mix.resin.shearStrength, "Pa");
}
