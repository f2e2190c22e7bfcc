import { checksFor } from "../check/mod.ts";
import { inverse3 } from "../numeric/mod.ts";
import type { Stack } from "../materials/mod.ts";
import { checkResult, checkStack } from "./_checks.ts";
import { abdMatrix, plyHeightsOf, stiffnessSumsOf, symmetricInverse } from "./_stack.ts";

const check = checksFor("compute the engineering constants");

/** Moduli and ratios of a homogeneous sheet that would behave like the laminate. */
export interface EngineeringConstants {
  /** Modulus along x [Pa]. */
  readonly Ex: number;
  /** Modulus along y [Pa]. */
  readonly Ey: number;
  /** Shear modulus [Pa]. */
  readonly Gxy: number;
  /** Contraction along y for a pull along x [1]. */
  readonly nuxy: number;
  /** Contraction along x for a pull along y [1]. */
  readonly nuyx: number;
  /** Shear strain γxy over strain εx for a pull along x [1]. */
  readonly etaXYX: number;
  /** Shear strain γxy over strain εy for a pull along y [1]. */
  readonly etaXYY: number;
}

/**
 * Engineering constants of a laminate, each in two ways. The two differ only where B is not 0; a
 * test strip of an unsymmetric laminate is free, a skin held flat by a rib is not.
 */
export interface LaminateConstants {
  /** In the plane; the laminate may bend as it is pulled. */
  readonly membraneFree: EngineeringConstants;
  /** In the plane; curvature is suppressed. */
  readonly membraneHeldFlat: EngineeringConstants;
  /** In bending; the middle may stretch as the laminate is bent. */
  readonly flexuralFree: EngineeringConstants;
  /** In bending; strain of the middle is suppressed. */
  readonly flexuralMiddleHeld: EngineeringConstants;
}

/**
 * Engineering constants of a laminate: in the plane and in bending, free and held.
 *
 * Formula: from a compliance c (a for free, A⁻¹ for held flat): Ex = 1/(h c11), Ey = 1/(h c22),
 * Gxy = 1/(h c66), νxy = −c12/c11, νyx = −c12/c22, ηxy,x = c16/c11, ηxy,y = c26/c22; in bending
 * from d (free) or D⁻¹ (middle held) with 12/h³ in place of 1/h
 *
 * Range: the free and the held values are equal for a symmetric stack. A flexural modulus depends
 * on the order of the plies and means nothing for another thickness.
 *
 * Source: R. M. Jones, Mechanics of Composite Materials, 2nd ed. 1999, sections 2.6 and 4.5;
 * A. K. Kaw, Mechanics of Composite Materials, 2nd ed. 2006, section 4.4; both from memory.
 *
 * @param stack Plies, mould side first.
 * @returns Four sets of constants [Pa], [1].
 * @throws {InputError} If the stack is empty, or a ply's lamina, thickness or angle is not possible.
 *
 * @example Stiff faces outside count more in bending
 * ```ts
 * import { engineeringConstants } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const stiff = {
 *   name: "stiff", E1: 40e9, E2: 40e9, G12: 20e9, nu12: 0, G13: 3e9, G23: 3e9,
 *   density: 1800, alpha1: 0, alpha2: 0,
 * };
 * const soft = { ...stiff, name: "soft", E1: 8e9, E2: 8e9, G12: 4e9 };
 * const { membraneFree, flexuralFree } = engineeringConstants([
 *   { lamina: stiff, thickness: 0.001, angleDeg: 0 },
 *   { lamina: soft, thickness: 0.002, angleDeg: 0 },
 *   { lamina: stiff, thickness: 0.001, angleDeg: 0 },
 * ]);
 * assertAlmostEquals(membraneFree.Ex, 24e9, 1e-3);
 * assertAlmostEquals(flexuralFree.Ex, 36e9, 1e-3);
 * ```
 */
export function engineeringConstants(stack: Stack): LaminateConstants {
  checkStack(check, stack);
  const matrix = abdMatrix(stiffnessSumsOf(stack));
  const compliance = symmetricInverse(matrix);
  const thickness = 2 * plyHeightsOf(stack).at(-1)!.top;
  const flexural = thickness ** 3 / 12;
  return {
    membraneFree: constantsFrom(block(compliance, 0), thickness),
    membraneHeldFlat: constantsFrom(inverse3(block(matrix, 0)), thickness),
    flexuralFree: constantsFrom(block(compliance, 3), flexural),
    flexuralMiddleHeld: constantsFrom(inverse3(block(matrix, 3)), flexural),
  };
}

/** The diagonal 3 × 3 block of a 6 × 6 matrix that begins at a row. */
function block(matrix: Float64Array, start: number): Float64Array {
  return Float64Array.from(
    { length: 9 },
    (_, i) => matrix[6 * (start + Math.floor(i / 3)) + start + i % 3]!,
  );
}

/** Reads the constants out of a 3 × 3 compliance; `section` is h, or h³/12 in bending. */
function constantsFrom(compliance: Float64Array, section: number): EngineeringConstants {
  const [c11, c12, c16] = [compliance[0]!, compliance[1]!, compliance[2]!];
  const [c22, c26, c66] = [compliance[4]!, compliance[5]!, compliance[8]!];
  return checkResult(check, {
    Ex: 1 / (section * c11),
    Ey: 1 / (section * c22),
    Gxy: 1 / (section * c66),
    // From 0, so that no contraction reads 0 and not −0.
    nuxy: 0 - c12 / c11,
    nuyx: 0 - c12 / c22,
    etaXYX: c16 / c11,
    etaXYY: c26 / c22,
  });
}
