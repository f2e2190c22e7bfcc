import { checksFor } from "../check/mod.ts";
import { laminateDensity } from "../constituents/mod.ts";
import type { FibreProperties, Lamina, ResinProperties } from "../materials/mod.ts";
import {
  crossedExpansion,
  crossedStiffness,
  planeConstants,
  type PlaneExpansion,
  planeStiffness,
  randomExpansion,
  randomStiffness,
} from "./_plane_stress.ts";
import { mixMoistureExpansion, mixThermalExpansion } from "./expansion.ts";
import { shearModulusHalpinTsai, transverseModulusHalpinTsai } from "./halpin_tsai.ts";
import { transverseShearModulus } from "./hashin_hill.ts";
import { longitudinalModulus, majorPoissonRatio } from "./rule_of_mixtures.ts";

const check = checksFor("compute the lamina");

/** Fibre and resin with all their figures. */
export interface FibreResinMix {
  /** The fibre. */
  readonly fibre: FibreProperties;
  /** The resin. */
  readonly resin: ResinProperties;
  /** Fibre volume over volume, Vf [1]. */
  readonly fibreVolumeFraction: number;
}

/**
 * Stiffness, density and expansions of straight parallel fibres in resin, as a lamina without
 * strengths.
 *
 * Formula: E1, ν12 rule of mixtures; E2, G12 Halpin–Tsai (ξ 2 and 1); G13 = G12; G23 fibre set
 * in resin; α Schapery; β Kaw; ρ rule of mixtures
 *
 * Range: Vf above 0, below 1; no voids.
 *
 * Source: those of the functions named.
 *
 * @param mix Fibre, resin and fibre volume fraction [1].
 * @param stiffnessFactor On E1 alone, for fibres that do not lie straight; 1 if left out [1].
 * @returns The lamina: moduli [Pa], density [kg/m³], expansions [1/K] and [1].
 * @throws {InputError} If a phase or the fraction cannot be meant.
 *
 * @example
 * ```ts
 * import { isotropicFibre, parallelFibreLamina } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const lamina = parallelFibreLamina({
 *   fibre: {
 *     ...isotropicFibre({ E: 85e9, nu: 0.2 }),
 *     density: 2500,
 *     alpha1: 5e-6,
 *     alpha2: 5e-6,
 *     tensileStrength: 1550e6,
 *     compressiveStrength: 1000e6,
 *   },
 *   resin: {
 *     E: 3.4e9,
 *     nu: 0.3,
 *     density: 1200,
 *     alpha: 63e-6,
 *     beta: 0.33,
 *     tensileStrength: 72e6,
 *     compressiveStrength: 102e6,
 *     shearStrength: 34e6,
 *     hardenerPhr: 30,
 *   },
 *   fibreVolumeFraction: 0.7,
 * });
 * assertAlmostEquals(lamina.E1 / 1e9, 60.52, 1e-9);
 * assertAlmostEquals(lamina.E2 / 1e9, 20.2, 1e-9);
 * ```
 */
export function parallelFibreLamina(mix: FibreResinMix, stiffnessFactor = 1): Lamina {
  check.object("mix", mix);
  check.within("stiffness factor", stiffnessFactor, { min: 0.1, max: 1 });
  const E1 = longitudinalModulus(mix) * stiffnessFactor;
  check.positive("fibre volume fraction", mix.fibreVolumeFraction);
  const heat = mixThermalExpansion(mix);
  const moisture = mixMoistureExpansion(mix);
  const G12 = shearModulusHalpinTsai(mix);
  return {
    name: "parallel fibres in resin",
    E1,
    E2: transverseModulusHalpinTsai(mix),
    G12,
    nu12: majorPoissonRatio(mix),
    G13: G12,
    G23: transverseShearModulus(mix),
    density: laminateDensity(mix.fibreVolumeFraction, {
      fibreDensity: mix.fibre.density,
      resinDensity: mix.resin.density,
    }),
    alpha1: heat.along,
    alpha2: heat.across,
    beta1: moisture.along,
    beta2: moisture.across,
  };
}

/**
 * A cloth as one lamina: its warp and weft as two parallel-fibre layers stretched alike, shared
 * by mass. 1 is the warp.
 *
 * Formula: Q11 = s q11 + (1 − s) q22, Q22 = s q22 + (1 − s) q11, Q12 = q12, Q66 = q66; constants
 * and free expansions from Q; G13 = s g13 + (1 − s) g23 and the reverse for G23
 *
 * Range: s 0 to 1; bending within one cloth is not seen (its warp and weft count as mixed through
 * the thickness). Crimp enters through the lamina given (`parallelFibreLamina`'s factor).
 *
 * Source: classical lamination of a cross-ply, membrane part; mixing of the transverse shear
 * moduli: estimate of this project.
 *
 * @param ply Lamina of parallel fibres, 1 along them.
 * @param warpShare Share of the fibre that runs along the warp, s [1].
 * @returns The lamina of the cloth, without strengths.
 * @throws {InputError} If a modulus is not above 0 or the share is outside 0 to 1.
 *
 * @example A balanced cloth is alike both ways
 * ```ts
 * import { crossedLamina } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const cloth = crossedLamina({
 *   name: "ply",
 *   E1: 40e9,
 *   E2: 10e9,
 *   G12: 4e9,
 *   nu12: 0.28,
 *   G13: 4e9,
 *   G23: 3.5e9,
 *   density: 1900,
 *   alpha1: 7e-6,
 *   alpha2: 30e-6,
 * }, 0.5);
 * assertAlmostEquals(cloth.E1, cloth.E2, 1);
 * assertAlmostEquals(cloth.E1 / 1e9, 25.18, 0.005);
 * ```
 */
export function crossedLamina(ply: Lamina, warpShare: number): Lamina {
  checkLamina(ply);
  check.fraction("warp share", warpShare);
  const stiffness = planeStiffness(ply);
  const crossed = (expansion: PlaneExpansion) => crossedExpansion(stiffness, expansion, warpShare);
  return withExpansions(ply, crossed, {
    ...planeConstants(crossedStiffness(stiffness, warpShare)),
    G13: warpShare * ply.G13 + (1 - warpShare) * ply.G23,
    G23: warpShare * ply.G23 + (1 - warpShare) * ply.G13,
  });
}

/**
 * A mat as one lamina: the parallel-fibre lamina in every direction of the plane.
 *
 * Formula: U1 = (3 Q11 + 3 Q22 + 2 Q12 + 4 Q66)/8, U4 = (Q11 + Q22 + 6 Q12 − 4 Q66)/8;
 * E = (U1² − U4²)/U1, ν = U4/U1, G = (U1 − U4)/2; α = the mean of the free stress over U1 + U4;
 * G13 = G23 = the mean of the ply's
 *
 * Range: long fibres, evenly spread; chopped strands of 25 to 50 mm count as long.
 *
 * Source: Tsai and Pagano (1968), invariants; in Jones and in Kaw (2006), from memory.
 *
 * @param ply Lamina of parallel fibres, 1 along them.
 * @returns The isotropic lamina of the mat, without strengths.
 * @throws {InputError} If a modulus is not above 0.
 *
 * @example
 * ```ts
 * import { randomFibreModuli, randomLamina } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const ply = {
 *   name: "ply",
 *   E1: 15e9,
 *   E2: 4.8e9,
 *   G12: 1.7e9,
 *   nu12: 0.33,
 *   G13: 1.7e9,
 *   G23: 1.6e9,
 *   density: 1430,
 *   alpha1: 20e-6,
 *   alpha2: 80e-6,
 * };
 * assertAlmostEquals(randomLamina(ply).E1 / randomFibreModuli(ply).E, 1, 0.1);
 * ```
 */
export function randomLamina(ply: Lamina): Lamina {
  checkLamina(ply);
  const stiffness = planeStiffness(ply);
  const transverse = (ply.G13 + ply.G23) / 2;
  const both = (expansion: PlaneExpansion) => {
    const alike = randomExpansion(stiffness, expansion);
    return { along: alike, across: alike };
  };
  return withExpansions(ply, both, {
    ...planeConstants(randomStiffness(stiffness)),
    G13: transverse,
    G23: transverse,
  });
}

/** Moduli of a mat by the rule of thumb. */
export interface RandomFibreModuli {
  /** Young's modulus in the plane [Pa]. */
  readonly E: number;
  /** Shear modulus in the plane [Pa]. */
  readonly G: number;
}

/**
 * Moduli of a mat by the well-known approximation, beside the invariants of `randomLamina`.
 *
 * Formula: E = 3/8 E1 + 5/8 E2; G = 1/8 E1 + 1/4 E2
 *
 * Range: E1, E2 of parallel fibres at the mat's fibre fraction.
 *
 * Source: Tsai and Pagano (1968), quoted in Agarwal and Broutman and in Mallick, from memory.
 *
 * @param ply Moduli of the parallel-fibre lamina [Pa].
 * @returns Moduli in the plane [Pa].
 * @throws {InputError} If a modulus is not above 0.
 *
 * @example
 * ```ts
 * import { randomFibreModuli } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(randomFibreModuli({ E1: 16e9, E2: 4e9 }).E, 8.5e9, 1e-3);
 * ```
 */
export function randomFibreModuli(ply: Pick<Lamina, "E1" | "E2">): RandomFibreModuli {
  check.object("ply", ply);
  const E1 = check.positive("E1", ply.E1, "Pa");
  const E2 = check.positive("E2", ply.E2, "Pa");
  return { E: 3 / 8 * E1 + 5 / 8 * E2, G: E1 / 8 + E2 / 4 };
}

function checkLamina(ply: Lamina): void {
  check.object("ply", ply);
  check.positive("E1", ply.E1, "Pa");
  check.positive("E2", ply.E2, "Pa");
  check.positive("G12", ply.G12, "Pa");
  check.positive("G13", ply.G13, "Pa");
  check.positive("G23", ply.G23, "Pa");
  check.finite("nu12", ply.nu12);
  check.positive("1 - nu12² E2/E1", 1 - ply.nu12 * ply.nu12 * ply.E2 / ply.E1);
  check.positive("density", ply.density, "kg/m³");
  check.finite("alpha1", ply.alpha1, "1/K");
  check.finite("alpha2", ply.alpha2, "1/K");
  if (ply.beta1 !== undefined) check.finite("beta1", ply.beta1);
  if (ply.beta2 !== undefined) check.finite("beta2", ply.beta2);
}

/** A lamina with new constants, its expansions put through `mixed`, its strengths left out. */
function withExpansions(
  ply: Lamina,
  mixed: (expansion: PlaneExpansion) => PlaneExpansion,
  constants: Pick<Lamina, "E1" | "E2" | "nu12" | "G12" | "G13" | "G23">,
): Lamina {
  const heat = mixed({ along: ply.alpha1, across: ply.alpha2 });
  const moist = ply.beta1 === undefined || ply.beta2 === undefined
    ? undefined
    : mixed({ along: ply.beta1, across: ply.beta2 });
  return check.results({
    name: ply.name,
    ...constants,
    density: ply.density,
    alpha1: heat.along,
    alpha2: heat.across,
    ...(moist === undefined ? {} : { beta1: moist.along, beta2: moist.across }),
  });
}
