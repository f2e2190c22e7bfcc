import { checksFor } from "../check/mod.ts";

const check = checksFor("look up the defaults of a glass mat");

/** Properties that a standard gives to a hand-laid mat where nobody has tested it. */
export interface GlassMatDefaults {
  /** Tensile strength [Pa]. */
  readonly tensileStrength: number;
  /** Compressive strength [Pa]. */
  readonly compressiveStrength: number;
  /** Flexural strength [Pa]. */
  readonly flexuralStrength: number;
  /** Modulus in the plane [Pa]. */
  readonly E: number;
  /** In-plane shear strength [Pa]. */
  readonly shearStrength: number;
  /** In-plane shear modulus [Pa]. */
  readonly G: number;
  /** Interlaminar shear strength [Pa]. */
  readonly interlaminarShearStrength: number;
}

/** Glass mass fractions for which the defaults are meant [1]. */
const MEANT = { min: 0.2, max: 0.5 };

/**
 * Default properties of hand-laid chopped-strand E-glass mat, by its glass mass fraction: a
 * cautious yardstick beside `curedPly`.
 *
 * Formula: in MPa with ψ: tension 800 ψ² − 80 ψ + 37; compression 150 ψ + 72; bending
 * 502 ψ² + 107; E 38000 ψ − 5000; shear 80 ψ + 38; G 1700 ψ + 2240; interlaminar 22.5 − 17.5 ψ
 *
 * Range: ψ 0.2 to 0.5. A craft that is to meet the standard is designed from the standard itself.
 *
 * Source: ISO 12215-5:2008, annex C, default properties, from memory.
 *
 * @param glassMassFraction Glass mass over laminate mass, ψ [1].
 * @returns Strengths and moduli [Pa].
 * @throws {InputError} If ψ is outside 0.2 to 0.5.
 *
 * @example
 * ```ts
 * import { glassMatDefaults } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(glassMatDefaults(0.3).tensileStrength / 1e6, 85, 1e-9);
 * ```
 */
export function glassMatDefaults(glassMassFraction: number): GlassMatDefaults {
  const psi = check.within("glass mass fraction", glassMassFraction, MEANT);
  const MPa = 1e6;
  return {
    tensileStrength: (800 * psi * psi - 80 * psi + 37) * MPa,
    compressiveStrength: (150 * psi + 72) * MPa,
    flexuralStrength: (502 * psi * psi + 107) * MPa,
    E: (38000 * psi - 5000) * MPa,
    shearStrength: (80 * psi + 38) * MPa,
    G: (1700 * psi + 2240) * MPa,
    interlaminarShearStrength: (22.5 - 17.5 * psi) * MPa,
  };
}
