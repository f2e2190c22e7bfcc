import { checksFor } from "../check/mod.ts";
import type { FibreProperties, ResinProperties } from "../materials/mod.ts";
import { checkTwoPhase, shearModulus } from "./_two_phase.ts";
import { diameterToSpacing } from "./packing.ts";
import { longitudinalModulus, majorPoissonRatio } from "./rule_of_mixtures.ts";
import type { FibreElastic, ResinElastic, TwoPhase } from "./two_phase.ts";

const check = checksFor("estimate the strength along the fibres");

/** Two phases whose tensile strength is known. */
export interface TensileTwoPhase extends TwoPhase {
  /** The fibre with its strength [Pa]. */
  readonly fibre: FibreElastic & Pick<FibreProperties, "tensileStrength">;
  /** The resin with its strength [Pa]. */
  readonly resin: ResinElastic & Pick<ResinProperties, "tensileStrength">;
}

/** Strength along the fibres in tension, and what it rests on. */
export interface LongitudinalTension {
  /** Strength along the fibres [Pa]. */
  readonly strength: number;
  /** Strain at which the fibre breaks [1]. */
  readonly fibreFailureStrain: number;
  /** Strain at which the resin breaks [1]. */
  readonly resinFailureStrain: number;
  /** Least fibre fraction from which the fibres, not the resin, decide [1]. */
  readonly minimumFibreFraction: number;
  /** Fibre fraction from which the composite is stronger than the resin; 0 if always [1]. */
  readonly criticalFibreFraction: number;
}

/**
 * Tensile strength along parallel fibres: the fibres break first and take the resin with them; with
 * few fibres the resin decides.
 *
 * Formula: σ = Xf Vf + Em εf (1 − Vf), εf = Xf/E1f, εm = Xm/Em, not below Xm (1 − Vf), what the
 * resin bears once all fibres are broken; Vf,min = (Xm − Em εf)/(Xf − Em εf + Xm);
 * Vf,crit = (Xm − Em εf)/(Xf − Em εf). Where εm is below εf the resin cracks first and then counts
 * nothing: σ = Xf Vf, not below εm (E1f Vf + Em (1 − Vf)), at which it cracks;
 * Vf,min = Xm/(Xf − E1f εm + Xm), Vf,crit = 0, or Xm/Xf for fibres softer than the resin
 *
 * Range: straight fibres.
 *
 * Source: Kaw, Mechanics of Composite Materials, 2nd ed. (2006), section 3.4.1, from memory; the
 * cracked resin left out: conservative choice of this project.
 *
 * @param mix Fibre, resin and fibre volume fraction [1].
 * @returns Strength [Pa], failure strains [1] and fractions [1].
 * @throws {InputError} If a phase or the fraction cannot be meant.
 *
 * @example
 * ```ts
 * import { isotropicFibre, longitudinalTension } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { strength } = longitudinalTension({
 *   fibre: { ...isotropicFibre({ E: 85e9, nu: 0.2 }), tensileStrength: 1550e6 },
 *   resin: { E: 3.4e9, nu: 0.3, tensileStrength: 72e6 },
 *   fibreVolumeFraction: 0.7,
 * });
 * assertAlmostEquals(strength / 1e6, 1104, 0.5);
 * ```
 */
export function longitudinalTension(mix: TensileTwoPhase): LongitudinalTension {
  const { fibre, resin, fibreVolumeFraction: Vf } = checkTwoPhase(check, mix) as TensileTwoPhase;
  const Xf = check.positive("fibre tensile strength", fibre.tensileStrength, "Pa");
  const Xm = check.positive("resin tensile strength", resin.tensileStrength, "Pa");
  const fibreFailureStrain = Xf / fibre.E1;
  const resinFailureStrain = Xm / resin.E;
  const resinHolds = resinFailureStrain >= fibreFailureStrain;
  const resinStress = resin.E * fibreFailureStrain;
  const fractions = { fibreFailureStrain, resinFailureStrain };
  if (resinHolds) {
    const lead = Math.max(0, Xm - resinStress);
    const strength = Math.max(Xf * Vf + resinStress * (1 - Vf), Xm * (1 - Vf));
    return check.results({
      strength: check.result("strength", strength, "Pa"),
      ...fractions,
      minimumFibreFraction: lead / (Xf + lead),
      criticalFibreFraction: lead === 0 ? 0 : Math.min(1, lead / (Xf - resinStress)),
    });
  }
  const cracking = resinFailureStrain * longitudinalModulus(mix);
  return check.results({
    strength: check.result("strength", Math.max(Xf * Vf, cracking), "Pa"),
    ...fractions,
    minimumFibreFraction: Xm / (Xf - fibre.E1 * resinFailureStrain + Xm),
    criticalFibreFraction: fibre.E1 >= resin.E ? 0 : Math.min(1, Xm / Xf),
  });
}

/** Strength along the fibres in compression by each way of failing. */
export interface LongitudinalCompression {
  /** The resin splits as the composite bulges, strain of the square array [Pa]. */
  readonly splitting: number;
  /** The resin splits, with the empirical strain εm (1 − Vf^⅓) [Pa]. */
  readonly splittingEmpirical: number;
  /** Fibres buckle side by side, shearing the resin [Pa]. */
  readonly shearBuckling: number;
  /** Fibres buckle against each other, stretching the resin [Pa]. */
  readonly extensionBuckling: number;
  /** Transverse failure strain by the square array [1]. */
  readonly transverseFailureStrain: number;
  /** Transverse failure strain by the empirical form [1]. */
  readonly transverseFailureStrainEmpirical: number;
}

/**
 * Compressive strength along parallel fibres by the textbook's modes. They spread widely: the
 * buckling modes hold for perfectly straight fibres and are far above what is measured. A ply of
 * `curedPly` uses the fibre's strength in a composite instead.
 *
 * Formula: splitting E1 ε2/ν12 with ε2 = εm [(d/s)(Em/E2f − 1) + 1] or εm (1 − Vf^⅓); shear
 * Gm/(1 − Vf); extension 2 [Vf + (1 − Vf) Em/E1f] √(Vf Em E1f/(3 (1 − Vf)))
 *
 * Range: Vf above 0, up to π/4 (fibres touch in the square array).
 *
 * Source: Kaw, Mechanics of Composite Materials, 2nd ed. (2006), section 3.4.2, from memory
 * (buckling after Rosen).
 *
 * @param mix Fibre, resin and fibre volume fraction [1].
 * @returns Strength by each mode [Pa] and failure strains [1].
 * @throws {InputError} If a phase or the fraction cannot be meant.
 *
 * @example
 * ```ts
 * import { isotropicFibre, longitudinalCompression } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { splitting, shearBuckling } = longitudinalCompression({
 *   fibre: isotropicFibre({ E: 85e9, nu: 0.2 }),
 *   resin: { E: 3.4e9, nu: 0.3, tensileStrength: 72e6 },
 *   fibreVolumeFraction: 0.7,
 * });
 * assertAlmostEquals(splitting / 1e6, 521.8, 0.3);
 * assertAlmostEquals(shearBuckling / 1e6, 4359, 1);
 * ```
 */
export function longitudinalCompression(
  mix: TwoPhase & { readonly resin: ResinElastic & Pick<ResinProperties, "tensileStrength"> },
): LongitudinalCompression {
  checkTwoPhase(check, mix);
  const { fibre, resin, fibreVolumeFraction: Vf } = mix;
  check.positive("resin tensile strength", resin.tensileStrength, "Pa");
  check.positive("fibre volume fraction", Vf);
  const Vm = 1 - Vf;
  const resinStrain = resin.tensileStrength / resin.E;
  const byArray = resinStrain * (diameterToSpacing(Vf) * (resin.E / fibre.E2 - 1) + 1);
  const empirical = resinStrain * (1 - Math.cbrt(Vf));
  const perStrain = longitudinalModulus(mix) /
    check.positive("major Poisson ratio", majorPoissonRatio(mix));
  const extension = 2 * (Vf + Vm * resin.E / fibre.E1) *
    Math.sqrt(Vf * resin.E * fibre.E1 / (3 * Vm));
  return check.results({
    splitting: check.result("strength", perStrain * byArray, "Pa"),
    splittingEmpirical: check.result("strength", perStrain * empirical, "Pa"),
    shearBuckling: check.result("strength", shearModulus(resin) / Vm, "Pa"),
    extensionBuckling: check.result("strength", extension, "Pa"),
    transverseFailureStrain: byArray,
    transverseFailureStrainEmpirical: empirical,
  });
}
