import { checksFor } from "../check/mod.ts";
import type { Range } from "../materials/mod.ts";

const check = checksFor("compute the stiffness bounds");

/** One isotropic constituent of a mixture. */
export interface Phase {
  /** Bulk modulus; 0 for air [Pa]. */
  readonly bulkModulus: number;
  /** Shear modulus; 0 for air and liquids [Pa]. */
  readonly shearModulus: number;
  /** Share of the volume [1]. */
  readonly fraction: number;
}

/** Lower and upper bound of the moduli of an isotropic mixture. */
export interface ModulusBounds {
  /** Bulk modulus [Pa]. */
  readonly bulkModulus: Range;
  /** Shear modulus [Pa]. */
  readonly shearModulus: Range;
  /** Young's modulus, from the two [Pa]. */
  readonly youngsModulus: Range;
}

/** Bulk and shear modulus of an isotropic material. */
export interface IsotropicModuli {
  /** Bulk modulus [Pa]. */
  readonly bulkModulus: number;
  /** Shear modulus [Pa]. */
  readonly shearModulus: number;
}

/**
 * Bulk and shear modulus from Young's modulus and Poisson's ratio.
 *
 * Formula: K = E/(3(1 − 2ν)), G = E/(2(1 + ν))
 *
 * Range: ν above −1 and below 0.5.
 *
 * Source: isotropic elasticity.
 *
 * @param E Young's modulus [Pa].
 * @param nu Poisson ratio [1].
 * @returns Bulk and shear modulus [Pa].
 * @throws {InputError} If the modulus is below 0 or the ratio outside its range.
 *
 * @example
 * ```ts
 * import { isotropicModuli } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(isotropicModuli(3e9, 0.25).bulkModulus, 2e9, 1e-3);
 * ```
 */
export function isotropicModuli(E: number, nu: number): IsotropicModuli {
  check.nonNegative("Young's modulus", E, "Pa");
  check.finite("Poisson ratio", nu);
  if (!(nu > -1 && nu < 0.5)) {
    check.refuse("Poisson ratio", nu, "must be above -1 and below 0.5");
  }
  return {
    bulkModulus: check.result("bulk modulus", E / (3 * (1 - 2 * nu)), "Pa"),
    shearModulus: E / (2 * (1 + nu)),
  };
}

/**
 * Widest bounds: all constituents strained alike (Voigt) or stressed alike (Reuss).
 *
 * Formula: high Σ f M; low 1/Σ(f/M), for M = K and G; E = 9KG/(3K + G)
 *
 * Range: shares add up to 1 within 1e-9; a constituent without stiffness makes the low bound 0.
 *
 * Source: W. Voigt (1889); A. Reuss, Z. angew. Math. Mech. 9 (1929) 49; from memory.
 *
 * @param phases Constituents [Pa] with their shares [1].
 * @returns Bounds of the three moduli [Pa].
 * @throws {InputError} If a modulus is below 0 or the shares do not add up to 1.
 *
 * @example
 * ```ts
 * import { voigtReussBounds } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { shearModulus } = voigtReussBounds([
 *   { bulkModulus: 4, shearModulus: 1, fraction: 0.5 },
 *   { bulkModulus: 4, shearModulus: 3, fraction: 0.5 },
 * ]);
 * assertAlmostEquals(shearModulus.low, 1.5, 1e-12);
 * assertAlmostEquals(shearModulus.high, 2, 1e-12);
 * ```
 */
export function voigtReussBounds(phases: readonly Phase[]): ModulusBounds {
  checkPhases(phases);
  let bulk = 0;
  let shear = 0;
  for (const phase of phases) {
    bulk += phase.fraction * phase.bulkModulus;
    shear += phase.fraction * phase.shearModulus;
  }
  return withYoung(
    { low: shiftedHarmonicMean(phases, "bulkModulus", 0), high: bulk },
    { low: shiftedHarmonicMean(phases, "shearModulus", 0), high: shear },
  );
}

/**
 * Tightest bounds for an isotropic mixture of which only the shares are known: filler, resin and
 * air, in any arrangement.
 *
 * Formula: K = [Σ f/(K_i + ⁴⁄₃G*)]⁻¹ − ⁴⁄₃G*; G = [Σ f/(G_i + ζ)]⁻¹ − ζ,
 * ζ = (G* /6)(9K* + 8G*)/(K* + 2G*), with K*, G* the largest of all constituents for the upper
 * bound and the smallest for the lower; E = 9KG/(3K + G)
 *
 * Range: shares add up to 1 within 1e-9. With air the lower bounds are 0; spheres well apart in
 * resin lie near the bound of the resin. Hollow spheres count with the moduli of a solid particle
 * of the same outer size.
 *
 * Source: Z. Hashin, S. Shtrikman, J. Mech. Phys. Solids 11 (1963) 127, in the form of Mavko,
 * Mukerji, Dvorkin, The Rock Physics Handbook; from memory.
 *
 * @param phases Constituents [Pa] with their shares [1].
 * @returns Bounds of the three moduli [Pa].
 * @throws {InputError} If a modulus is below 0 or the shares do not add up to 1.
 *
 * @example Quartz, calcite and water, as the handbook's example (GPa)
 * ```ts
 * import { hashinShtrikmanBounds } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { bulkModulus } = hashinShtrikmanBounds([
 *   { bulkModulus: 36, shearModulus: 45, fraction: 0.584 },
 *   { bulkModulus: 75, shearModulus: 31, fraction: 0.146 },
 *   { bulkModulus: 2.2, shearModulus: 0, fraction: 0.27 },
 * ]);
 * assertAlmostEquals(bulkModulus.low, 7.10, 0.005);
 * assertAlmostEquals(bulkModulus.high, 26.9, 0.05);
 * ```
 */
export function hashinShtrikmanBounds(phases: readonly Phase[]): ModulusBounds {
  checkPhases(phases);
  // A constituent of which there is none must not widen the bounds.
  const present = phases.filter((phase) => phase.fraction > 0);
  const bulks = present.map((phase) => phase.bulkModulus);
  const shears = present.map((phase) => phase.shearModulus);
  const [lowK, highK] = [Math.min(...bulks), Math.max(...bulks)];
  const [lowG, highG] = [Math.min(...shears), Math.max(...shears)];
  return withYoung(
    {
      low: shiftedHarmonicMean(present, "bulkModulus", 4 / 3 * lowG),
      high: shiftedHarmonicMean(present, "bulkModulus", 4 / 3 * highG),
    },
    {
      low: shiftedHarmonicMean(present, "shearModulus", zeta(lowK, lowG)),
      high: shiftedHarmonicMean(present, "shearModulus", zeta(highK, highG)),
    },
  );
}

/** ζ of Hashin and Shtrikman; 0 where there is no shear stiffness. */
function zeta(K: number, G: number): number {
  return G > 0 ? G / 6 * (9 * K + 8 * G) / (K + 2 * G) : 0;
}

/** [Σ f/(M + shift)]⁻¹ − shift, which is 0 where a constituent has neither M nor shift. */
function shiftedHarmonicMean(
  phases: readonly Phase[],
  modulus: "bulkModulus" | "shearModulus",
  shift: number,
): number {
  let sum = 0;
  for (const phase of phases) {
    const stiffness = phase[modulus] + shift;
    if (phase.fraction > 0 && stiffness === 0) return 0;
    if (phase.fraction > 0) sum += phase.fraction / stiffness;
  }
  // Rounding must not push the bound of air and resin below nothing.
  return Math.max(0, 1 / sum - shift);
}

function withYoung(bulkModulus: Range, shearModulus: Range): ModulusBounds {
  const young = (K: number, G: number): number => K > 0 && G > 0 ? 9 * G * (K / (3 * K + G)) : 0;
  return check.results({
    bulkModulus,
    shearModulus,
    youngsModulus: {
      low: young(bulkModulus.low, shearModulus.low),
      high: young(bulkModulus.high, shearModulus.high),
    },
  });
}

/** How far the shares may be from 1 in all. */
const SUM_TOLERANCE = 1e-9;

function checkPhases(phases: readonly Phase[]): void {
  check.list("phases", phases);
  let sum = 0;
  for (const phase of phases) {
    check.object("phase", phase);
    check.nonNegative("bulk modulus", phase.bulkModulus, "Pa");
    check.nonNegative("shear modulus", phase.shearModulus, "Pa");
    sum += check.fraction("share of a phase", phase.fraction);
  }
  if (!(Math.abs(sum - 1) <= SUM_TOLERANCE)) check.refuse("sum of shares", sum, "must be 1");
}
