import { checksFor } from "../check/mod.ts";
import type { Stack } from "../materials/mod.ts";
import { checkStack } from "./_checks.ts";
import { engineeringConstants } from "./engineering_constants.ts";

const check = checksFor("compute the moduli by direction");

/** Moduli of a laminate along each direction, in the four ways of `engineeringConstants`. */
export interface DirectionalModuli {
  /** Directions from x, positive towards y, from 0 to below 360 [deg]. */
  readonly anglesDeg: readonly number[];
  /** In the plane; the laminate may bend as it is pulled [Pa]. */
  readonly membraneFree: readonly number[];
  /** In the plane; curvature is suppressed [Pa]. */
  readonly membraneHeldFlat: readonly number[];
  /** In bending; the middle may stretch as the laminate is bent [Pa]. */
  readonly flexuralFree: readonly number[];
  /** In bending; strain of the middle is suppressed [Pa]. */
  readonly flexuralMiddleHeld: readonly number[];
}

/**
 * Moduli of a laminate along every direction, for a polar plot. In the plane the order of the
 * plies does not matter, in bending it does.
 *
 * Formula: `engineeringConstants` of the stack turned by minus the direction
 *
 * Range: as for `engineeringConstants`
 *
 * Source: R. M. Jones, Mechanics of Composite Materials, 2nd ed. 1999, section 2.6, from memory.
 *
 * @param stack Plies, mould side first.
 * @param steps Number of directions round the circle, an even number from 8 on; 72 if left
 * out [1].
 * @returns Directions [deg] and moduli [Pa].
 * @throws {InputError} If the stack is empty, a ply is not possible, or the steps are no even
 * count from 8 to 3600.
 *
 * @example
 * ```ts
 * import { moduliByDirection } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const lamina = {
 *   name: "glass ply", E1: 40e9, E2: 10e9, G12: 4e9, nu12: 0.28, G13: 4e9, G23: 3e9,
 *   density: 1900, alpha1: 7e-6, alpha2: 25e-6,
 * };
 * const { membraneFree } = moduliByDirection([{ lamina, thickness: 0.001, angleDeg: 0 }], 8);
 * assertAlmostEquals(membraneFree[0]!, 40e9, 1e-3);
 * assertAlmostEquals(membraneFree[2]!, 10e9, 1e-3);
 * ```
 */
export function moduliByDirection(stack: Stack, steps = 72): DirectionalModuli {
  checkStack(check, stack);
  check.count("steps", steps, 8);
  check.within("steps", steps, { min: 8, max: 3600 });
  if (steps % 2 !== 0) check.refuse("steps", steps, "must be even");
  // A direction and its opposite are one: half the circle is computed, and stands for the other.
  const half = Array.from({ length: steps / 2 }, (_, i) => {
    const turned = stack.map((ply) => ({ ...ply, angleDeg: ply.angleDeg - 360 * i / steps }));
    return engineeringConstants(turned);
  });
  const round = [...half, ...half];
  return {
    anglesDeg: round.map((_, i) => 360 * i / steps),
    membraneFree: round.map(({ membraneFree }) => membraneFree.Ex),
    membraneHeldFlat: round.map(({ membraneHeldFlat }) => membraneHeldFlat.Ex),
    flexuralFree: round.map(({ flexuralFree }) => flexuralFree.Ex),
    flexuralMiddleHeld: round.map(({ flexuralMiddleHeld }) => flexuralMiddleHeld.Ex),
  };
}
