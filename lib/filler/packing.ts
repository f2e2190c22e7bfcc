import { checksFor } from "../check/mod.ts";

const check = checksFor("compute the packing of the filler");

/** Share of the space that equal spheres fill in a known arrangement. */
export interface SpherePackings {
  /** Shaken at random; an experiment: 0.6366 ± 0.0005 [1]. */
  readonly random: number;
  /** Densest possible, face-centred cubic: π/√18 [1]. */
  readonly densest: number;
  /** Body-centred cubic: π√3/8 [1]. */
  readonly bodyCentred: number;
  /** One sphere a cube: π/6 [1]. */
  readonly simpleCubic: number;
}

/**
 * Packings of equal spheres. Mixed sizes pack closer than `random`.
 *
 * Source: Scott and Kilgour, J. Phys. D 2 (1969) 863 for `random`; geometry for the others.
 */
export const SPHERE_PACKINGS: SpherePackings = {
  random: 0.6366,
  densest: Math.PI / Math.sqrt(18),
  bodyCentred: Math.PI * Math.sqrt(3) / 8,
  simpleCubic: Math.PI / 6,
};

/**
 * Density of a powder as it lies in the cup, air between the particles included.
 *
 * Formula: ρ_bulk = φ ρ_particle (the air weighs nothing)
 *
 * Range: packing φ above 0, to 1.
 *
 * Source: mass balance.
 *
 * @param particleDensity Density of a particle, its hollow included [kg/m³].
 * @param packing Share of the space that particles fill [1].
 * @returns Bulk density [kg/m³].
 * @throws {InputError} If the density is not above 0 or the packing not in its range.
 *
 * @example
 * ```ts
 * import { bulkDensity } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(bulkDensity(200, 0.6), 120, 1e-10);
 * ```
 */
export function bulkDensity(particleDensity: number, packing: number): number {
  check.positive("particle density", particleDensity, "kg/m³");
  checkPacking(packing);
  return check.result("bulk density", particleDensity * packing, "kg/m³");
}

/**
 * Density of a particle from that of the powder in the cup.
 *
 * Formula: ρ_particle = ρ_bulk / φ
 *
 * Range: packing φ above 0, to 1; the answer is as uncertain as the packing (a cup filled loosely,
 * tapped or pressed differs by a tenth and more).
 *
 * Source: mass balance.
 *
 * @param bulk Bulk density of the powder [kg/m³].
 * @param packing Share of the space that particles fill [1].
 * @returns Particle density [kg/m³].
 * @throws {InputError} If the density is not above 0 or the packing not in its range.
 *
 * @example
 * ```ts
 * import { particleDensity } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(particleDensity(120, 0.6), 200, 1e-10);
 * ```
 */
export function particleDensity(bulk: number, packing: number): number {
  check.positive("bulk density", bulk, "kg/m³");
  checkPacking(packing);
  return check.result("particle density", bulk / packing, "kg/m³");
}

/**
 * Share of the cup that the particles fill.
 *
 * Formula: φ = ρ_bulk / ρ_particle
 *
 * Range: bulk density up to the particle density. Above 0.74 the spheres are not of one size.
 *
 * Source: mass balance.
 *
 * @param bulk Bulk density of the powder [kg/m³].
 * @param particle Density of a particle [kg/m³].
 * @returns Packing [1].
 * @throws {InputError} If a density is not above 0, or the powder is denser than its particles.
 *
 * @example
 * ```ts
 * import { packingFraction } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(packingFraction(120, 200), 0.6, 1e-12);
 * ```
 */
export function packingFraction(bulk: number, particle: number): number {
  check.positive("bulk density", bulk, "kg/m³");
  check.positive("particle density", particle, "kg/m³");
  if (!(bulk <= particle)) {
    check.refuse("bulk density", bulk, `must not be above the particle density, ${particle} kg/m³`);
  }
  return check.result("packing", bulk / particle);
}

/**
 * Inner over outer radius of a hollow sphere: how thin its wall is.
 *
 * Formula: η = (1 − ρ_particle/ρ_wall)^(1/3)
 *
 * Range: particle density up to the wall's density.
 *
 * Source: volume of a shell; so used for glass microspheres by N. Gupta and co-workers (e.g.
 * J. Mater. Sci. 39, 2004), from memory.
 *
 * @param particle Density of a particle, its hollow included [kg/m³].
 * @param wallDensity Density of the solid wall; glass about 2540 [kg/m³].
 * @returns Inner radius over outer radius [1].
 * @throws {InputError} If a density is not above 0, or the particle is denser than its wall.
 *
 * @example
 * ```ts
 * import { hollowRadiusRatio } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(hollowRadiusRatio(220, 2540), 0.970, 5e-4);
 * ```
 */
export function hollowRadiusRatio(particle: number, wallDensity: number): number {
  check.positive("particle density", particle, "kg/m³");
  check.positive("wall density", wallDensity, "kg/m³");
  if (!(particle <= wallDensity)) {
    check.refuse(
      "particle density",
      particle,
      `must not be above the wall's, ${wallDensity} kg/m³`,
    );
  }
  return Math.cbrt(1 - particle / wallDensity);
}

function checkPacking(packing: number): void {
  check.fraction("packing", packing);
  check.positive("packing", packing);
}
