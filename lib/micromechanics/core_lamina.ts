import { checksFor } from "../check/mod.ts";
import type { Core, Lamina } from "../materials/mod.ts";

const check = checksFor("compute the core's lamina");

/**
 * A core as a layer of the stack like any other, 1 along L. It carries no strengths: a core fails
 * by shear and crushing, which the sandwich checks look at.
 *
 * Formula: G12 = √(E1 E2)/(2 (1 + ν12 √(E2/E1))), exact for an isotropic core; G13, G23 the
 * transverse shear moduli L and W
 *
 * Range: in-plane moduli above 0 (a honeycomb's are near zero, not zero).
 *
 * Source: in-plane shear modulus after Huber's estimate for orthotropic plates, from memory.
 *
 * @param core The core.
 * @returns The lamina of the core: moduli [Pa], density [kg/m³], expansions [1/K].
 * @throws {InputError} If a modulus or the density is not above 0, or nu12² E2/E1 reaches 1.
 *
 * @example
 * ```ts
 * import { coreLamina } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const lamina = coreLamina({
 *   name: "foam",
 *   kind: "foam",
 *   density: 80,
 *   compressiveModulus: 90e6,
 *   inPlaneModulusL: 70e6,
 *   inPlaneModulusW: 70e6,
 *   nu: 0.3,
 *   shearModulusL: 27e6,
 *   shearModulusW: 27e6,
 *   compressiveStrength: 1.3e6,
 *   shearStrengthL: 1.1e6,
 *   shearStrengthW: 1.1e6,
 *   alpha: 40e-6,
 *   cellSize: 0,
 *   resinUptake: 0.15,
 *   source: "example",
 *   typical: {},
 * });
 * assertAlmostEquals(lamina.G12, 70e6 / 2.6, 1e-6);
 * ```
 */
export function coreLamina(core: Core): Lamina {
  check.object("core", core);
  const E1 = check.positive("in-plane modulus L", core.inPlaneModulusL, "Pa");
  const E2 = check.positive("in-plane modulus W", core.inPlaneModulusW, "Pa");
  check.finite("Poisson ratio", core.nu);
  check.positive("1 - nu² E2/E1", 1 - core.nu * core.nu * E2 / E1);
  const huber = 1 + core.nu * Math.sqrt(E2 / E1);
  return {
    name: core.name,
    E1,
    E2,
    G12: check.result("in-plane shear modulus", Math.sqrt(E1 * E2) / (2 * huber), "Pa"),
    nu12: core.nu,
    G13: check.positive("shear modulus L", core.shearModulusL, "Pa"),
    G23: check.positive("shear modulus W", core.shearModulusW, "Pa"),
    density: check.positive("density", core.density, "kg/m³"),
    alpha1: check.finite("thermal expansion", core.alpha, "1/K"),
    alpha2: core.alpha,
  };
}
