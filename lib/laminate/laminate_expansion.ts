import { checksFor } from "../check/mod.ts";
import type { Stack } from "../materials/mod.ts";
import { multiply } from "../numeric/mod.ts";
import { checkResult, checkStack } from "./_checks.ts";
import { checkExpansion, type EnvironmentChange, freeForcesOf } from "./_free_strain.ts";
import type { Curvature } from "./plane_state.ts";
import type { Expansion } from "./rotated_lamina.ts";
import { abdMatrix, stiffnessSumsOf, symmetricInverse } from "./_stack.ts";

const checkThermal = checksFor("compute the thermal expansion of the laminate");
const checkMoisture = checksFor("compute the swelling of the laminate");

/** Free expansion of a laminate, per unit of what causes it. */
export interface LaminateExpansion {
  /** Strain of the middle: per kelvin [1/K], or per moisture content by mass of 1 [1]. */
  readonly membrane: Expansion;
  /** Curvature: per kelvin [1/(m·K)], or per moisture content by mass of 1 [1/m]. */
  readonly curvature: Curvature;
}

/**
 * Free thermal expansion of a laminate, and the curvature that an unsymmetric one takes on.
 *
 * Formula: [ε⁰; κ]/ΔT = [a b; bᵀ d] [Σ Q̄ ᾱ t; Σ Q̄ ᾱ t z̄]
 *
 * Range: constants of the lamina taken as independent of temperature; curvature as long as the
 * warp is less than about the thickness.
 *
 * Source: R. M. Jones, Mechanics of Composite Materials, 2nd ed. 1999, section 4.5, from memory.
 *
 * @param stack Plies, mould side first.
 * @returns Expansion in the plane [1/K] and curvature [1/(m·K)].
 * @throws {InputError} If the stack is empty, or a ply's lamina, thickness or angle is not possible.
 *
 * @example One material expands as it does alone
 * ```ts
 * import { thermalExpansion } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const lamina = {
 *   name: "glass cloth", E1: 20e9, E2: 20e9, G12: 4e9, nu12: 0.1, G13: 3e9, G23: 3e9,
 *   density: 1800, alpha1: 15e-6, alpha2: 15e-6,
 * };
 * const ply = { lamina, thickness: 0.001, angleDeg: 0 };
 * const { membrane, curvature } = thermalExpansion([ply, { ...ply, angleDeg: 30 }]);
 * assertAlmostEquals(membrane.alphaX, 15e-6, 1e-17);
 * assertAlmostEquals(curvature.kappaX, 0, 1e-15);
 * ```
 */
export function thermalExpansion(stack: Stack): LaminateExpansion {
  return expansionOf(checkThermal, stack, { temperature: 1, moisture: 0 });
}

/**
 * Free swelling of a laminate with moisture, and the curvature that an unsymmetric one takes on.
 *
 * Formula: as `thermalExpansion`, with β in place of α and moisture content by mass in place of ΔT
 *
 * Range: moisture spread evenly through the plies.
 *
 * Source: R. M. Jones, Mechanics of Composite Materials, 2nd ed. 1999, section 4.6, from memory.
 *
 * @param stack Plies, mould side first, each with `beta1` and `beta2`.
 * @returns Swelling in the plane [1] and curvature [1/m], for a moisture content by mass of 1.
 * @throws {InputError} If the stack is empty, a ply's lamina, thickness or angle is not possible,
 * or its swelling is not given.
 *
 * @example
 * ```ts
 * import { moistureExpansion } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const lamina = {
 *   name: "glass cloth", E1: 20e9, E2: 20e9, G12: 4e9, nu12: 0.1, G13: 3e9, G23: 3e9,
 *   density: 1800, alpha1: 15e-6, alpha2: 15e-6, beta1: 0.1, beta2: 0.1,
 * };
 * const { membrane } = moistureExpansion([{ lamina, thickness: 0.001, angleDeg: 30 }]);
 * assertAlmostEquals(membrane.alphaX, 0.1, 1e-13);
 * ```
 */
export function moistureExpansion(stack: Stack): LaminateExpansion {
  return expansionOf(checkMoisture, stack, { temperature: 0, moisture: 1 });
}

function expansionOf(
  check: typeof checkThermal,
  stack: Stack,
  change: EnvironmentChange,
): LaminateExpansion {
  checkStack(check, stack, checkExpansion(check, change));
  const compliance = symmetricInverse(abdMatrix(stiffnessSumsOf(stack)));
  const free = multiply(compliance, freeForcesOf(stack, change), 6);
  return {
    membrane: checkResult(check, { alphaX: free[0]!, alphaY: free[1]!, alphaXY: free[2]! }),
    curvature: checkResult(check, { kappaX: free[3]!, kappaY: free[4]!, kappaXY: free[5]! }),
  };
}
