import { checksFor } from "../check/mod.ts";
import type { Stack } from "../materials/mod.ts";
import { checkResult, checkStack } from "./_checks.ts";
import { abdMatrix, stiffnessSumsOf, symmetricInverse } from "./_stack.ts";

const check = checksFor("compute the stiffness of the laminate");

/** Stiffness of a laminate: [N; M] = [A B; B D] [ε⁰; κ], each block symmetric. */
export interface LaminateStiffness {
  /** Nx for ε⁰x [N/m]. */
  readonly A11: number;
  /** Nx for ε⁰y [N/m]. */
  readonly A12: number;
  /** Nx for γ⁰xy [N/m]. */
  readonly A16: number;
  /** Ny for ε⁰y [N/m]. */
  readonly A22: number;
  /** Ny for γ⁰xy [N/m]. */
  readonly A26: number;
  /** Nxy for γ⁰xy [N/m]. */
  readonly A66: number;
  /** Nx for κx, and Mx for ε⁰x [N]. */
  readonly B11: number;
  /** Nx for κy, and Mx for ε⁰y [N]. */
  readonly B12: number;
  /** Nx for κxy, and Mx for γ⁰xy [N]. */
  readonly B16: number;
  /** Ny for κy, and My for ε⁰y [N]. */
  readonly B22: number;
  /** Ny for κxy, and My for γ⁰xy [N]. */
  readonly B26: number;
  /** Nxy for κxy, and Mxy for γ⁰xy [N]. */
  readonly B66: number;
  /** Mx for κx [N·m]. */
  readonly D11: number;
  /** Mx for κy [N·m]. */
  readonly D12: number;
  /** Mx for κxy [N·m]. */
  readonly D16: number;
  /** My for κy [N·m]. */
  readonly D22: number;
  /** My for κxy [N·m]. */
  readonly D26: number;
  /** Mxy for κxy [N·m]. */
  readonly D66: number;
}

/**
 * Compliance of a laminate: [ε⁰; κ] = [a b; bᵀ d] [N; M]. The blocks a and d are symmetric; b is
 * not: its first index names the strain, its second the moment.
 */
export interface LaminateCompliance {
  /** ε⁰x for Nx [m/N]. */
  readonly a11: number;
  /** ε⁰x for Ny [m/N]. */
  readonly a12: number;
  /** ε⁰x for Nxy [m/N]. */
  readonly a16: number;
  /** ε⁰y for Ny [m/N]. */
  readonly a22: number;
  /** ε⁰y for Nxy [m/N]. */
  readonly a26: number;
  /** γ⁰xy for Nxy [m/N]. */
  readonly a66: number;
  /** ε⁰x for Mx, and κx for Nx [1/N]. */
  readonly b11: number;
  /** ε⁰x for My, and κy for Nx [1/N]. */
  readonly b12: number;
  /** ε⁰x for Mxy, and κxy for Nx [1/N]. */
  readonly b16: number;
  /** ε⁰y for Mx, and κx for Ny [1/N]. */
  readonly b21: number;
  /** ε⁰y for My, and κy for Ny [1/N]. */
  readonly b22: number;
  /** ε⁰y for Mxy, and κxy for Ny [1/N]. */
  readonly b26: number;
  /** γ⁰xy for Mx, and κx for Nxy [1/N]. */
  readonly b61: number;
  /** γ⁰xy for My, and κy for Nxy [1/N]. */
  readonly b62: number;
  /** γ⁰xy for Mxy, and κxy for Nxy [1/N]. */
  readonly b66: number;
  /** κx for Mx [1/(N·m)]. */
  readonly d11: number;
  /** κx for My [1/(N·m)]. */
  readonly d12: number;
  /** κx for Mxy [1/(N·m)]. */
  readonly d16: number;
  /** κy for My [1/(N·m)]. */
  readonly d22: number;
  /** κy for Mxy [1/(N·m)]. */
  readonly d26: number;
  /** κxy for Mxy [1/(N·m)]. */
  readonly d66: number;
}

/**
 * Stiffness A, B and D of a stack. B of a symmetric stack is exactly 0.
 *
 * Formula: A = Σ Q̄ t, B = Σ Q̄ t z̄, D = Σ Q̄ t (z̄² + t²/12), z̄ the height of a ply's middle over
 * the middle of the laminate, mould side negative
 *
 * Range: plies bonded to one another, thin against the panel's length; a core counts as a ply, its
 * transverse shear does not (see `transverseShear`).
 *
 * Source: R. M. Jones, Mechanics of Composite Materials, 2nd ed. 1999, section 4.2, from memory.
 *
 * @param stack Plies, mould side first.
 * @returns A [N/m], B [N], D [N·m].
 * @throws {InputError} If the stack is empty, or a ply's lamina, thickness or angle is not possible.
 *
 * @example
 * ```ts
 * import { laminateStiffness } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const lamina = {
 *   name: "glass cloth", E1: 20e9, E2: 20e9, G12: 4e9, nu12: 0, G13: 3e9, G23: 3e9,
 *   density: 1800, alpha1: 15e-6, alpha2: 15e-6,
 * };
 * const { A11, B11, D11 } = laminateStiffness([
 *   { lamina, thickness: 0.001, angleDeg: 0 },
 *   { lamina, thickness: 0.001, angleDeg: 90 },
 * ]);
 * assertAlmostEquals(A11, 40e6, 1e-3);
 * assertAlmostEquals(B11, 0, 1e-9);
 * assertAlmostEquals(D11, 20e9 * 0.002 ** 3 / 12, 1e-9);
 * ```
 */
export function laminateStiffness(stack: Stack): LaminateStiffness {
  checkStack(check, stack);
  const sums = stiffnessSumsOf(stack);
  return checkResult(check, {
    A11: sums[0]!,
    A12: sums[1]!,
    A16: sums[2]!,
    A22: sums[3]!,
    A26: sums[4]!,
    A66: sums[5]!,
    B11: sums[6]!,
    B12: sums[7]!,
    B16: sums[8]!,
    B22: sums[9]!,
    B26: sums[10]!,
    B66: sums[11]!,
    D11: sums[12]!,
    D12: sums[13]!,
    D16: sums[14]!,
    D22: sums[15]!,
    D26: sums[16]!,
    D66: sums[17]!,
  });
}

/**
 * Compliance of a stack, the inverse of its stiffness.
 *
 * Formula: [a b; bᵀ d] = [A B; B D]⁻¹
 *
 * Range: as for `laminateStiffness`; a core with next to no stiffness in the plane does no harm.
 *
 * Source: R. M. Jones, Mechanics of Composite Materials, 2nd ed. 1999, section 4.5, from memory.
 *
 * @param stack Plies, mould side first.
 * @returns a [m/N], b [1/N], d [1/(N·m)].
 * @throws {InputError} If the stack is empty, or a ply's lamina, thickness or angle is not possible.
 *
 * @example
 * ```ts
 * import { laminateCompliance } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const lamina = {
 *   name: "glass cloth", E1: 20e9, E2: 20e9, G12: 4e9, nu12: 0, G13: 3e9, G23: 3e9,
 *   density: 1800, alpha1: 15e-6, alpha2: 15e-6,
 * };
 * const { d11 } = laminateCompliance([{ lamina, thickness: 0.002, angleDeg: 0 }]);
 * assertAlmostEquals(d11, 12 / (20e9 * 0.002 ** 3), 1e-14);
 * ```
 */
export function laminateCompliance(stack: Stack): LaminateCompliance {
  checkStack(check, stack);
  const inverse = symmetricInverse(abdMatrix(stiffnessSumsOf(stack)));
  return checkResult(check, {
    a11: inverse[0]!,
    a12: inverse[1]!,
    a16: inverse[2]!,
    a22: inverse[7]!,
    a26: inverse[8]!,
    a66: inverse[14]!,
    b11: inverse[3]!,
    b12: inverse[4]!,
    b16: inverse[5]!,
    b21: inverse[9]!,
    b22: inverse[10]!,
    b26: inverse[11]!,
    b61: inverse[15]!,
    b62: inverse[16]!,
    b66: inverse[17]!,
    d11: inverse[21]!,
    d12: inverse[22]!,
    d16: inverse[23]!,
    d22: inverse[28]!,
    d26: inverse[29]!,
    d66: inverse[35]!,
  });
}
