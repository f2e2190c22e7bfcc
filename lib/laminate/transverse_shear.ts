import { checksFor } from "../check/mod.ts";
import type { Ply, Stack } from "../materials/mod.ts";
import { checkStack } from "./_checks.ts";
import { sineCosineDeg } from "./_degrees.ts";
import {
  type ShearBasis,
  shearBasisOf,
  shearComplianceOf,
  shearSumOf,
} from "./_transverse_shear.ts";

const checkStiffness = checksFor("compute the transverse shear stiffness");
const checkStress = checksFor("compute the transverse shear stress");

/** Transverse shear stiffness: [Qy; Qx] = [S44 S45; S45 S55] [γyz; γxz]. */
export interface TransverseShearStiffness {
  /** Qy for γyz [N/m]. */
  readonly S44: number;
  /** Qy for γxz; 0 where no ply is turned off the axes [N/m]. */
  readonly S45: number;
  /** Qx for γxz [N/m]. */
  readonly S55: number;
  /** S44 over the sum of shear modulus times thickness: what a correction factor would be [1]. */
  readonly correctionYZ: number;
  /** S55 over the sum of shear modulus times thickness: what a correction factor would be [1]. */
  readonly correctionXZ: number;
}

/** Transverse forces on a laminate. */
export interface TransverseForces {
  /** Transverse force on the edge facing x, the rate of Mx along x [N/m]. */
  readonly Qx?: number;
  /** Transverse force on the edge facing y, the rate of My along y [N/m]. */
  readonly Qy?: number;
}

/** Transverse shear stress at one height. */
export interface TransverseShearPoint {
  /** Height over the middle of the laminate, mould side negative [m]. */
  readonly z: number;
  /** Stress in the x-z plane [Pa]. */
  readonly tauXZ: number;
  /** Stress in the y-z plane [Pa]. */
  readonly tauYZ: number;
  /** Stress in the 1-3 plane of the ply: along the ribbon of a honeycomb [Pa]. */
  readonly tau13: number;
  /** Stress in the 2-3 plane of the ply [Pa]. */
  readonly tau23: number;
}

/** Transverse shear stress through one ply: a parabola, given by three points. */
export interface PlyTransverseShear {
  /** The ply, as it stands in the stack. */
  readonly ply: Ply;
  /** At its face towards the mould. */
  readonly bottom: TransverseShearPoint;
  /** At its middle. */
  readonly middle: TransverseShearPoint;
  /** At its face towards the bag. */
  readonly top: TransverseShearPoint;
  /** Largest magnitude of the stress in the x-z plane within the ply [Pa]. */
  readonly largestXZ: number;
  /** Largest magnitude of the stress in the y-z plane within the ply [Pa]. */
  readonly largestYZ: number;
}

/**
 * Transverse shear stiffness of a laminate that equilibrium implies, with no assumed correction
 * factor: equal energy of the stress found by `transverseShearStress`.
 *
 * Formula: S⁻¹ij = ∫ τi(z)ᵀ Ḡ(z)⁻¹ τj(z) dz, with τi the shear stress for a transverse force of 1
 *
 * Range: bending along x and along y taken as independent, each with no other moment changing;
 * 5/6 G h for a homogeneous sheet, near G d²/c for a sandwich. A core that is soft in shear also
 * lets thick faces bend on their own near loads and supports, which this leaves out.
 *
 * Source: K. Rohwer, Improved transverse shear stiffnesses for layered finite elements,
 * DFVLR-FB 88-32 (1988), from memory; derived from equilibrium.
 *
 * @param stack Plies, mould side first, each with `G13` and `G23`.
 * @returns Stiffness, 44 for the y-z plane and 55 for the x-z plane [N/m].
 * @throws {InputError} If the stack is empty, or a ply's lamina, thickness or angle is not possible.
 *
 * @example
 * ```ts
 * import { transverseShearStiffness } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const lamina = {
 *   name: "glass cloth", E1: 20e9, E2: 20e9, G12: 4e9, nu12: 0.1, G13: 3e9, G23: 3e9,
 *   density: 1800, alpha1: 15e-6, alpha2: 15e-6,
 * };
 * const { S55 } = transverseShearStiffness([{ lamina, thickness: 0.002, angleDeg: 0 }]);
 * assertAlmostEquals(S55, 5 / 6 * 3e9 * 0.002, 1e-6);
 * ```
 */
export function transverseShearStiffness(stack: Stack): TransverseShearStiffness {
  checkStack(checkStiffness, stack, (lamina, where) => {
    checkStiffness.positive(`${where}G13`, lamina.G13, "Pa");
    checkStiffness.positive(`${where}G23`, lamina.G23, "Pa");
  });
  const { xx, xy, yy } = shearComplianceOf(stack, shearBasisOf(stack));
  const determinant = xx * yy - xy * xy;
  const [S44, S45, S55] = [xx / determinant, (0 - xy) / determinant, yy / determinant];
  const sum = shearSumOf(stack);
  return {
    S44: checkStiffness.result("S44", S44, "N/m"),
    S45: checkStiffness.result("S45", S45, "N/m"),
    S55: checkStiffness.result("S55", S55, "N/m"),
    correctionYZ: S44 / sum.yz,
    correctionXZ: S55 / sum.xz,
  };
}

/**
 * Transverse shear stress through the thickness of a laminate, by equilibrium with the bending
 * stress that a transverse force changes along its way.
 *
 * Formula: ∂τxz/∂z = −∂σx/∂x, ∂τyz/∂z = −∂τxy/∂x with ∂σ/∂x = Q̄ (b + z d) [Qx; 0; 0]; likewise
 * for Qy along y; 0 at both faces, and ∫ τxz dz = Qx
 *
 * Range: as for `transverseShearStiffness`; away from supports and loads by a few thicknesses.
 *
 * Source: equilibrium; K. Rohwer, DFVLR-FB 88-32 (1988), from memory.
 *
 * @param stack Plies, mould side first.
 * @param forces Transverse forces [N/m]; one that is not given is 0.
 * @returns One entry a ply, in the order of the stack [Pa].
 * @throws {InputError} If the stack is empty, a ply's lamina, thickness or angle is not possible,
 * or a force is not a number.
 *
 * @example The parabola of a homogeneous sheet
 * ```ts
 * import { transverseShearStress } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const lamina = {
 *   name: "glass cloth", E1: 20e9, E2: 20e9, G12: 4e9, nu12: 0.1, G13: 3e9, G23: 3e9,
 *   density: 1800, alpha1: 15e-6, alpha2: 15e-6,
 * };
 * const [ply] = transverseShearStress(
 *   [{ lamina, thickness: 0.002, angleDeg: 0 }],
 *   { Qx: 1000 },
 * );
 * assertAlmostEquals(ply!.middle.tauXZ, 1.5 * 1000 / 0.002, 1e-6);
 * assertAlmostEquals(ply!.bottom.tauXZ, 0, 1e-6);
 * ```
 */
export function transverseShearStress(
  stack: Stack,
  forces: TransverseForces,
): readonly PlyTransverseShear[] {
  checkStack(checkStress, stack);
  checkStress.object("forces", forces);
  const { Qx = 0, Qy = 0 } = forces;
  checkStress.finite("Qx", Qx, "N/m");
  checkStress.finite("Qy", Qy, "N/m");
  return shearBasisOf(stack).map((basis, k) => plyShear(stack[k]!, basis, { Qx, Qy }));
}

function plyShear(
  ply: Ply,
  { heights, forQx, forQy }: ShearBasis,
  { Qx, Qy }: Required<TransverseForces>,
): PlyTransverseShear {
  const xz = [0, 1, 2].map((i) => forQx.xz[i]! * Qx + forQy.xz[i]! * Qy) as Three;
  const yz = [0, 1, 2].map((i) => forQx.yz[i]! * Qx + forQy.yz[i]! * Qy) as Three;
  const { sine, cosine } = sineCosineDeg(ply.angleDeg);
  const point = (i: 0 | 1 | 2, z: number): TransverseShearPoint => ({
    z,
    tauXZ: checkStress.result("stress", xz[i], "Pa"),
    tauYZ: checkStress.result("stress", yz[i], "Pa"),
    tau13: cosine * xz[i] + sine * yz[i],
    tau23: cosine * yz[i] - sine * xz[i],
  });
  return {
    ply,
    bottom: point(0, heights.bottom),
    middle: point(1, heights.middle),
    top: point(2, heights.top),
    largestXZ: largestOf(xz),
    largestYZ: largestOf(yz),
  };
}

type Three = [number, number, number];

/** Largest magnitude of the parabola through three evenly spaced points, between the outer two. */
function largestOf([bottom, middle, top]: Three): number {
  const largest = Math.max(Math.abs(bottom), Math.abs(middle), Math.abs(top));
  const bend = bottom - 2 * middle + top;
  const place = bend === 0 ? Infinity : (bottom - top) / (2 * bend);
  if (!(Math.abs(place) < 1)) return largest;
  return Math.max(largest, Math.abs(middle + place * (top - bottom) / 4));
}
