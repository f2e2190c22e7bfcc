import { checksFor } from "../check/mod.ts";

const check = checksFor("compute the core's stress under a local load");

/** A loaded face on its core. */
export interface FaceOnCore {
  /** Modulus of the face along the short side of the patch [Pa]. */
  readonly faceE: number;
  /** Thickness of the face [m]. */
  readonly faceThickness: number;
  /** Modulus of the core through the thickness [Pa]. */
  readonly coreE: number;
  /** Thickness of the core [m]. */
  readonly coreThickness: number;
}

/**
 * Pressure on the core under a patch, for each unit of pressure on the face: the face spreads
 * small loads, as a beam on an elastic foundation.
 *
 * Formula: 1 − e^(−λa/2) cos(λa/2), λ = (K/4D)^¼, K = Ec/c, D = Ef t³/12
 *
 * Range: first crushing under the middle of the patch; a is its shorter side, the other taken as
 * long, which is on the safe side. Faces of several plies: E t³/12 of bending.
 *
 * Source: M. Hetényi, Beams on Elastic Foundation (1946), chapter 2, from memory, derived anew
 * in the tests.
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
 * const face = { faceE: 20e9, faceThickness: 0.001, coreE: 60e6, coreThickness: 0.01 };
 * assertAlmostEquals(patchSpread(face, 1), 1, 1e-9);
 * ```
 */
export function patchSpread(face: FaceOnCore, shortSide: number): number {
  check.object("face", face);
  const { faceE, faceThickness, coreE, coreThickness } = face;
  check.positive("face modulus", faceE, "Pa");
  check.positive("face thickness", faceThickness, "m");
  check.positive("core modulus", coreE, "Pa");
  check.positive("core thickness", coreThickness, "m");
  check.positive("short side of the patch", shortSide, "m");
  const D = faceE * faceThickness ** 3 / 12;
  const half = Math.pow(coreE / coreThickness / (4 * D), 0.25) * shortSide / 2;
  return check.result("spread", 1 - Math.exp(-half) * Math.cos(half));
}
