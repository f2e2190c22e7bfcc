import { checksFor } from "../check/mod.ts";
import { checkDensities, type ConstituentDensities } from "./_densities.ts";
import { matrixVolumeFraction } from "./fibre_fraction.ts";

const check = checksFor("compute the density");

/**
 * Density of a laminate from its volume fractions.
 *
 * Formula: ρ = ρf Vf + ρm (1 − Vf − Vv)
 *
 * Range: Vf and Vv 0 to 1, together not above 1.
 *
 * Source: Kaw, Mechanics of Composite Materials, 2nd ed. (2006), section 3.2, from memory.
 *
 * @param volumeFraction Fibre volume fraction, Vf [1].
 * @param densities Densities of fibre and resin [kg/m³].
 * @param voidFraction Void volume fraction, Vv [1].
 * @returns Density of the laminate [kg/m³].
 * @throws {InputError} If a fraction is outside its range or a density is not above 0.
 *
 * @example
 * ```ts
 * import { laminateDensity } from "@laminate/notebooks/constituents";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const density = laminateDensity(0.7, { fibreDensity: 2500, resinDensity: 1200 });
 * assertAlmostEquals(density, 2110, 1e-9);
 * ```
 */
export function laminateDensity(
  volumeFraction: number,
  densities: ConstituentDensities,
  voidFraction = 0,
): number {
  checkDensities(check, densities);
  const matrix = matrixVolumeFraction(volumeFraction, voidFraction);
  const { fibreDensity, resinDensity } = densities;
  return check.result("density", fibreDensity * volumeFraction + resinDensity * matrix, "kg/m³");
}

/**
 * Density that a laminate of known mass fractions would have without voids.
 *
 * Formula: ρ = 1/(W/ρf + (1 − W)/ρm)
 *
 * Range: W 0 to 1.
 *
 * Source: ASTM D2734, "theoretical density" (100/(R/D + r/d) with per cent by mass), from memory.
 *
 * @param fibreMassFraction Fibre mass over laminate mass, W [1].
 * @param densities Densities of fibre and resin [kg/m³].
 * @returns Void-free density [kg/m³].
 * @throws {InputError} If the fraction is outside 0 to 1 or a density is not above 0.
 *
 * @example
 * ```ts
 * import { voidFreeDensity } from "@laminate/notebooks/constituents";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const density = voidFreeDensity(0.5, { fibreDensity: 2560, resinDensity: 1200 });
 * assertAlmostEquals(density, 2 * 2560 * 1200 / 3760, 1e-9);
 * ```
 */
export function voidFreeDensity(
  fibreMassFraction: number,
  densities: ConstituentDensities,
): number {
  check.fraction("fibre mass fraction", fibreMassFraction);
  checkDensities(check, densities);
  const { fibreDensity, resinDensity } = densities;
  const volume = fibreMassFraction / fibreDensity + (1 - fibreMassFraction) / resinDensity;
  return check.result("density", 1 / volume, "kg/m³");
}

/** One specimen weighed in air and under water. */
export interface HydrostaticWeighing {
  /** Mass in air [kg]. */
  readonly massInAir: number;
  /** Apparent mass hung under water, wire subtracted; negative for what would float [kg]. */
  readonly massInWater: number;
  /** Density of the water at its temperature, 997.0 at 25 °C [kg/m³]. */
  readonly waterDensity: number;
}

/**
 * Density of a specimen by weighing it in air and under water.
 *
 * Formula: ρ = mair ρw/(mair − mwater); no term for the buoyancy of air
 *
 * Range: mass in air above the mass in water; the specimen must not soak up water.
 *
 * Source: ASTM D792, from memory; Archimedes.
 *
 * @param weighing The two masses [kg] and the density of the water [kg/m³].
 * @returns Density of the specimen [kg/m³].
 * @throws {InputError} If a mass or density is not above 0, or the specimen does not weigh less
 * under water.
 *
 * @example
 * ```ts
 * import { hydrostaticDensity } from "@laminate/notebooks/constituents";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const density = hydrostaticDensity({
 *   massInAir: 9e-3,
 *   massInWater: 4e-3,
 *   waterDensity: 1000,
 * });
 * assertAlmostEquals(density, 1800, 1e-9);
 * ```
 */
export function hydrostaticDensity(weighing: HydrostaticWeighing): number {
  check.object("weighing", weighing);
  const { massInAir, massInWater, waterDensity } = weighing;
  check.positive("mass in air", massInAir, "kg");
  check.finite("mass in water", massInWater, "kg");
  check.positive("water density", waterDensity, "kg/m³");
  check.positive("mass in air less mass in water", massInAir - massInWater, "kg");
  return check.result("density", massInAir * waterDensity / (massInAir - massInWater), "kg/m³");
}
