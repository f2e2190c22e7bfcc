import { checksFor } from "../check/mod.ts";
import type { Range } from "../materials/mod.ts";
import { checkTwoPhase, fibreBulkCompliance, shearModulus } from "./_two_phase.ts";
import type { TwoPhase } from "./two_phase.ts";

const check = checksFor("compute the bounds of Hashin and Hill");

/** Bounds of the five elastic figures of parallel fibres in resin. */
export interface HashinHillBounds {
  /** Plane-strain bulk modulus [Pa]. */
  readonly planeStrainBulk: Range;
  /** Modulus along the fibres [Pa]. */
  readonly E1: Range;
  /** Major Poisson ratio [1]. */
  readonly nu12: Range;
  /** In-plane shear modulus [Pa]. */
  readonly G12: Range;
  /** Shear modulus across the fibres [Pa]. */
  readonly G23: Range;
}

/**
 * The narrowest bounds of a composite of parallel fibres for which only the fibre fraction is
 * known: fibre set in resin, and the phases exchanged.
 *
 * Formula: each figure as pm + Vf Δ/(1 + Vm Δ/a), Δ = pf − pm, with a = km + Gm (bulk), 2 Gm
 * (G12), 2 Gm (km + Gm)/(km + 2 Gm) (G23), and the phases exchanged;
 * E1 = rule of mixtures + 4 Vf Vm (νf − νm)²/(Vm/kf + Vf/km + 1/G);
 * ν12 = rule of mixtures + (νf − νm)(1/km − 1/kf) Vf Vm/(the same), G = Gm and G23f;
 * fibre 1/k = 4/E2 − 1/G23 − 4 ν12²/E1, resin k = G/(1 − 2 ν)
 *
 * Range: Vf 0 to 1; ordered by value, low first.
 *
 * Source: Hashin, NASA CR-1974 (1972); Hill, J. Mech. Phys. Solids 12 (1964) 199, from memory.
 *
 * @param mix Fibre [Pa], resin [Pa] and fibre volume fraction [1].
 * @returns Low and high of each figure [Pa], nu12 [1].
 * @throws {InputError} If a phase or the fraction cannot be meant.
 *
 * @example
 * ```ts
 * import { hashinHillBounds, isotropicFibre } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const bounds = hashinHillBounds({
 *   fibre: isotropicFibre({ E: 85e9, nu: 0.2 }),
 *   resin: { E: 3.4e9, nu: 0.3 },
 *   fibreVolumeFraction: 0.7,
 * });
 * assertAlmostEquals(bounds.E1.low / 1e9, 60.53, 0.005);
 * assertAlmostEquals(bounds.nu12.high, 0.2238, 0.00005);
 * ```
 */
export function hashinHillBounds(mix: TwoPhase): HashinHillBounds {
  const { fibre, resin, fibreVolumeFraction: Vf } = checkTwoPhase(check, mix);
  const Vm = 1 - Vf;
  const Gm = shearModulus(resin);
  const km = Gm / (1 - 2 * resin.nu);
  const kf = 1 / fibreBulkCompliance(fibre);

  const bound = (property: { f: number; m: number }, inResin: number, inFibre: number): Range => {
    const { f, m } = property;
    const fibreInside = m + Vf * (f - m) / (1 + Vm * (f - m) / inResin);
    const resinInside = f + Vm * (m - f) / (1 + Vf * (m - f) / inFibre);
    return ordered(fibreInside, resinInside);
  };
  const dnu = fibre.nu12 - resin.nu;
  const coupling = (G: number) => Vf * Vm / (Vm / kf + Vf / km + 1 / G);
  const E1 = (G: number) => fibre.E1 * Vf + resin.E * Vm + 4 * dnu * dnu * coupling(G);
  const nu12 = (G: number) =>
    fibre.nu12 * Vf + resin.nu * Vm + dnu * (1 / km - 1 / kf) * coupling(G);

  return {
    planeStrainBulk: bound(
      { f: kf, m: km },
      km + Gm,
      kf + fibre.G23,
    ),
    E1: ordered(E1(Gm), E1(fibre.G23)),
    nu12: ordered(nu12(Gm), nu12(fibre.G23)),
    G12: bound({ f: fibre.G12, m: Gm }, 2 * Gm, 2 * fibre.G12),
    G23: bound({ f: fibre.G23, m: Gm }, addShear23(km, Gm), addShear23(kf, fibre.G23)),
  };
}

/** What stands beside the difference of the shear moduli across the fibres [Pa]. */
const addShear23 = (k: number, G: number): number => 2 * G * (k + G) / (k + 2 * G);

/**
 * Shear modulus across the fibres, fibre set in resin: one of the two bounds of
 * `hashinHillBounds`, and the one that a composite of round fibres comes near.
 *
 * Formula: G23 = Gm + Vf Δ/(1 + Vm Δ/a), Δ = G23f − Gm, a = 2 Gm (km + Gm)/(km + 2 Gm); the same
 * as stress partitioning with η = (3 − 4 νm + Gm/G23f)/(4 (1 − νm))
 *
 * Range: Vf 0 to 1.
 *
 * Source: Hashin, NASA CR-1974 (1972); stress partitioning in Barbero, Introduction to Composite
 * Materials Design; from memory.
 *
 * @param mix Fibre [Pa], resin [Pa] and fibre volume fraction [1].
 * @returns Shear modulus across the fibres [Pa].
 * @throws {InputError} If a phase or the fraction cannot be meant.
 *
 * @example
 * ```ts
 * import { isotropicFibre, transverseShearModulus } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const G23 = transverseShearModulus({
 *   fibre: isotropicFibre({ E: 85e9, nu: 0.2 }),
 *   resin: { E: 3.4e9, nu: 0.3 },
 *   fibreVolumeFraction: 0.7,
 * });
 * assertAlmostEquals(G23 / 1e9, 5.267040234466944, 1e-12);
 * ```
 */
export function transverseShearModulus(mix: TwoPhase): number {
  const { fibre, resin, fibreVolumeFraction: Vf } = checkTwoPhase(check, mix);
  const Gm = shearModulus(resin);
  const beside = addShear23(Gm / (1 - 2 * resin.nu), Gm);
  const gap = fibre.G23 - Gm;
  return check.result("G23", Gm + Vf * gap / (1 + (1 - Vf) * gap / beside), "Pa");
}

/** Both ends in order; the double's range is checked here, where every figure passes. */
function ordered(a: number, b: number): Range {
  check.result("bound", a);
  check.result("bound", b);
  return a <= b ? { low: a, high: b } : { low: b, high: a };
}
