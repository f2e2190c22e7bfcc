import { checksFor } from "../check/mod.ts";

const check = checksFor("compute the core's stress under a local load");

/** Wave number over λ at which the core's firmness counts: 4 (4/(3√3))³, for small patches [1]. */
const SMALL_PATCH = 4 * (4 / (3 * Math.sqrt(3))) ** 3;

/** A loaded face on its core. */
export interface FaceOnCore {
  /** Modulus of the face along the short side of the patch [Pa]. */
  readonly faceE: number;
  /** Thickness of the face [m]. */
  readonly faceThickness: number;
  /** Modulus of the core through the thickness [Pa]. */
  readonly coreE: number;
  /** Shear modulus of the core, through the thickness and along the short side [Pa]. */
  readonly coreG: number;
  /** Thickness of the core [m]. */
  readonly coreThickness: number;
}

/**
 * Pressure on the core under a patch, for each unit of pressure on the face: the face spreads
 * small loads, as a beam on an elastic foundation. A thick core is firmer than springs side by
 * side under a load that is short against its thickness, and takes it more gathered.
 *
 * Formula: 1 − e^(−λa/2) cos(λa/2), 4 D λ⁴ = (Ec/c) ξ coth ξ, ξ = 1.825 λ c √(Gc/Ec),
 * D = Ef t³/12; ξ coth ξ is 1 for a thin core, the springs of Winkler
 *
 * Range: first crushing under the middle of the patch; a is its shorter side, the other taken as
 * long, which is on the safe side. Against an elastic layer in plane strain 4 % low (thin cores,
 * ν 0.3) to 8 % high. Faces of several plies: E t³/12 of bending.
 *
 * Source: M. Hetényi, Beams on Elastic Foundation (1946), chapter 2, from memory, derived anew
 * in the tests; ξ coth ξ: a layer that shears and gives through its thickness only; 1.825 makes
 * the pressure under a small patch on a thick core that of its Fourier integral.
 *
 * @param face Moduli [Pa] and thicknesses [m] of face and core.
 * @param shortSide Shorter side of the patch a [m].
 * @returns Pressure on the core over pressure of the patch [1].
 * @throws {InputError} If a modulus, a thickness or the side is not above 0.
 *
 * @example A wide patch presses through as it is
 * ```ts
 * import { patchSpread } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const face = {
 *   faceE: 20e9, faceThickness: 0.001, coreE: 60e6, coreG: 23e6, coreThickness: 0.01,
 * };
 * assertAlmostEquals(patchSpread(face, 1), 1, 1e-9);
 * ```
 */
export function patchSpread(face: FaceOnCore, shortSide: number): number {
  check.object("face", face);
  const { faceE, faceThickness, coreE, coreG, coreThickness } = face;
  check.positive("face modulus", faceE, "Pa");
  check.positive("face thickness", faceThickness, "m");
  check.positive("core modulus", coreE, "Pa");
  check.positive("core shear modulus", coreG, "Pa");
  check.positive("core thickness", coreThickness, "m");
  check.positive("short side of the patch", shortSide, "m");
  const D = faceE * faceThickness ** 3 / 12;
  const springs = Math.pow(coreE / coreThickness / (4 * D), 0.25);
  const reach = SMALL_PATCH * coreThickness * Math.sqrt(coreG / coreE);
  let lambda = springs;
  // Each round leaves a quarter of the error at the most.
  for (let round = 0; round < 30; round++) {
    lambda = springs * Math.pow(firmness(lambda * reach), 0.25);
  }
  const half = lambda * shortSide / 2;
  return check.result("spread", 1 - Math.exp(-half) * Math.cos(half));
}

/** ξ coth ξ: how much firmer a layer is than springs side by side. */
function firmness(xi: number): number {
  return xi < 1e-6 ? 1 : xi / Math.tanh(xi);
}
