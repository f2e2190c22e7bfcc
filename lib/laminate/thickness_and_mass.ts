import { checksFor } from "../check/mod.ts";
import type { Ply, Stack } from "../materials/mod.ts";
import { plyHeightsOf } from "./_stack.ts";

const check = checksFor("add up the stack");

/** Where a ply lies in the laminate: z from the middle of the whole, mould side negative. */
export interface PlyPosition {
  /** Its face towards the mould [m]. */
  readonly bottom: number;
  /** Its middle [m]. */
  readonly middle: number;
  /** Its face towards the bag [m]. */
  readonly top: number;
}

/**
 * Thickness of a stack.
 *
 * Formula: h = Σ t
 *
 * Range: any.
 *
 * Source: sum.
 *
 * @param stack Plies, in any order.
 * @returns Thickness [m].
 * @throws {InputError} If the stack is empty or a thickness is not above 0.
 *
 * @example
 * ```ts
 * import { laminateThickness } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const lamina = {
 *   name: "glass cloth", E1: 20e9, E2: 20e9, G12: 4e9, nu12: 0.1, G13: 3e9, G23: 3e9,
 *   density: 1800, alpha1: 15e-6, alpha2: 15e-6,
 * };
 * const ply = { lamina, thickness: 0.00025, angleDeg: 0 };
 * assertAlmostEquals(laminateThickness([ply, ply, ply]), 0.00075, 1e-15);
 * ```
 */
export function laminateThickness(stack: Stack): number {
  checkThicknesses(stack);
  const thickness = stack.reduce((sum, ply) => sum + ply.thickness, 0);
  return check.result("thickness", thickness, "m");
}

/**
 * Mass of a stack per area.
 *
 * Formula: m = Σ ρ t
 *
 * Range: the plies only: resin that fills the core's cells, film, paint and putty are extra.
 *
 * Source: sum.
 *
 * @param stack Plies, in any order.
 * @returns Mass per area [kg/m²].
 * @throws {InputError} If the stack is empty, or a thickness or density is not above 0.
 *
 * @example
 * ```ts
 * import { massPerArea } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const lamina = {
 *   name: "glass cloth", E1: 20e9, E2: 20e9, G12: 4e9, nu12: 0.1, G13: 3e9, G23: 3e9,
 *   density: 1800, alpha1: 15e-6, alpha2: 15e-6,
 * };
 * assertAlmostEquals(massPerArea([{ lamina, thickness: 0.001, angleDeg: 0 }]), 1.8, 1e-12);
 * ```
 */
export function massPerArea(stack: Stack): number {
  checkThicknesses(stack, ({ lamina }, where) => {
    check.object(`${where}lamina`, lamina);
    check.positive(`${where}lamina density`, lamina.density, "kg/m³");
  });
  const mass = stack.reduce((sum, { lamina, thickness }) => sum + lamina.density * thickness, 0);
  return check.result("mass per area", mass, "kg/m²");
}

/**
 * Where each ply lies: heights over the middle of the laminate.
 *
 * Formula: z from −h/2 at the mould face to +h/2 at the bag face
 *
 * Range: any.
 *
 * Source: definition.
 *
 * @param stack Plies, mould side first.
 * @returns One position a ply, in the order of the stack [m].
 * @throws {InputError} If the stack is empty or a thickness is not above 0.
 *
 * @example
 * ```ts
 * import { plyPositions } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const lamina = {
 *   name: "glass cloth", E1: 20e9, E2: 20e9, G12: 4e9, nu12: 0.1, G13: 3e9, G23: 3e9,
 *   density: 1800, alpha1: 15e-6, alpha2: 15e-6,
 * };
 * const ply = { lamina, thickness: 0.001, angleDeg: 0 };
 * assertAlmostEquals(plyPositions([ply, ply])[0]!.middle, -0.0005, 1e-15);
 * ```
 */
export function plyPositions(stack: Stack): readonly PlyPosition[] {
  checkThicknesses(stack);
  return plyHeightsOf(stack);
}

function checkThicknesses(stack: Stack, more?: (ply: Ply, where: string) => void): void {
  check.list("stack", stack);
  stack.forEach((ply, index) => {
    const where = `ply ${index + 1} `;
    check.object(where.trimEnd(), ply);
    check.positive(`${where}thickness`, ply.thickness, "m");
    more?.(ply, where);
  });
}
