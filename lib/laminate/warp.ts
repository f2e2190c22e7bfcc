import { checksFor } from "../check/mod.ts";
import type { Stack } from "../materials/mod.ts";
import { checkStack } from "./_checks.ts";
import { checkExpansion } from "./_free_strain.ts";
import { outOfFlat } from "./out_of_flat.ts";
import type { Curvature, LaminateStrain } from "./plane_state.ts";
import { responseOf } from "./_response.ts";
import { plyHeightsOf } from "./_stack.ts";

const check = checksFor("compute the warp of the panel");

/** A panel lying free, and the change since it was free of stress. */
export interface FreePanel {
  /** Size along x [m]. */
  readonly lengthX: number;
  /** Size along y [m]. */
  readonly lengthY: number;
  /** Temperature less the temperature at which the laminate was free of stress [K]. */
  readonly temperatureChange?: number;
  /** Moisture content by mass less that at which the laminate was free of stress [1]. */
  readonly moistureChange?: number;
}

/** The shape that a free panel takes on. */
export interface FreeWarp {
  /** Total strain of the middle [1]. */
  readonly midPlaneStrain: LaminateStrain;
  /** Curvature [1/m]. */
  readonly curvature: Curvature;
  /** Height of the centre over the line through the ends along x, positive to the bag side [m]. */
  readonly bowX: number;
  /** Height of the centre over the line through the ends along y, positive to the bag side [m]. */
  readonly bowY: number;
  /** How far the fourth corner stands off a flat table on which three corners rest [m]. */
  readonly rock: number;
  /** What makes the figures doubtful; empty if nothing does. */
  readonly notes: readonly string[];
}

/**
 * Warp of a free panel after a change of temperature or moisture, for example from cure to use.
 *
 * Formula: [ε⁰; κ] = [a b; bᵀ d] [N_T; M_T], w = −(κx x² + κy y² + κxy x y)/2;
 * bow κ L²/8, rock |κxy| Lx Ly/2
 *
 * Range: warp, by bow, rock or `outOfFlat`, up to about half the thickness; beyond it a thin unsymmetric panel curls less than
 * this, and often into a cylinder that can snap through. The result says so in `notes`.
 *
 * Source: linear laminate theory (R. M. Jones, Mechanics of Composite Materials, 2nd ed. 1999,
 * section 4.5); its limit for thin panels: M. W. Hyer, J. Composite Materials 15 (1981) 175; both
 * from memory.
 *
 * @param stack Plies, mould side first.
 * @param panel Size of the panel [m] and the change since it was free of stress [K], [1].
 * @returns Strain, curvature and heights of the warped panel, with notes.
 * @throws {InputError} If the stack is empty, a ply's lamina, thickness or angle is not possible,
 * a length is not above 0, or an expansion that is needed is missing.
 *
 * @example A bare mat laminate does not warp
 * ```ts
 * import { freeWarp } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const lamina = {
 *   name: "mat", E1: 7e9, E2: 7e9, G12: 2.7e9, nu12: 0.3, G13: 2.7e9, G23: 2.7e9,
 *   density: 1450, alpha1: 30e-6, alpha2: 30e-6,
 * };
 * const { midPlaneStrain, bowX } = freeWarp(
 *   [{ lamina, thickness: 0.003, angleDeg: 0 }],
 *   { lengthX: 1, lengthY: 0.5, temperatureChange: -40 },
 * );
 * assertAlmostEquals(midPlaneStrain.epsilonX, -0.0012, 1e-15);
 * assertAlmostEquals(bowX, 0, 1e-15);
 * ```
 */
export function freeWarp(stack: Stack, panel: FreePanel): FreeWarp {
  check.object("panel", panel);
  const { lengthX, lengthY, temperatureChange = 0, moistureChange = 0 } = panel;
  check.positive("length along x", lengthX, "m");
  check.positive("length along y", lengthY, "m");
  const change = {
    temperature: check.finite("temperature change", temperatureChange, "K"),
    moisture: check.finite("moisture change", moistureChange),
  };
  checkStack(check, stack, checkExpansion(check, change));
  const { midPlaneStrain, curvature } = responseOf(stack, {}, change);
  const bowX = check.result("bow along x", curvature.kappaX * lengthX * lengthX / 8, "m");
  const bowY = check.result("bow along y", curvature.kappaY * lengthY * lengthY / 8, "m");
  const rock = check.result("rock", Math.abs(curvature.kappaXY) * lengthX * lengthY / 2, "m");
  const thickness = 2 * plyHeightsOf(stack).at(-1)!.top;
  // Two bows against each other, each within bounds, make a saddle that is not.
  const gap = outOfFlat(curvature, { lengthX, lengthY });
  const largest = Math.max(Math.abs(bowX), Math.abs(bowY), rock, gap);
  const notes = largest > thickness / 2
    ? [
      "The warp exceeds half the thickness: the linear theory overestimates it, and a thin panel " +
      "may curl into a cylinder that snaps through.",
    ]
    : [];
  return { midPlaneStrain, curvature, bowX, bowY, rock, notes };
}
