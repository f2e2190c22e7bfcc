import { checksFor } from "../check/mod.ts";
import { type ClothedCorner, stiffenedCorner } from "../filler/mod.ts";
import type { MemberPart } from "./member_beams.ts";

const check = checksFor("compute the fillet as a member");

/**
 * A filler fillet under cloth as a part of a member, from its rigidities as a corner.
 *
 * Formula: E A and E I of `stiffenedCorner`, in a right angle turned by 45°: height c/√2,
 * E I = (E I along + E I across the bisector)/2
 *
 * Range: as `stiffenedCorner`, 90° only; no shear counted: it needs a fin beside it.
 *
 * Source: turned axes of a symmetric section, any text on strength of materials.
 *
 * @param corner Fillet, putty and cloth; its angle must be 90°.
 * @param height Height of the corner [m].
 * @returns The part: putty, cloth and its resin as one.
 * @throws {InputError} If the angle is not 90° or the corner cannot be meant.
 *
 * @example
 * ```ts
 * import { filletMember } from "@laminate/notebooks/comparison";
 * import { stiffenedCorner } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const corner = {
 *   radius: 0.02, cornerDeg: 90, puttyDensity: 600, puttyModulus: 1.5e9,
 *   clothThickness: 0.0005, clothModulus: 18e9, clothArealMass: 0.8, overlap: 0.04,
 * };
 * const { E, area } = filletMember(corner, 0.01);
 * assertAlmostEquals(E * area / stiffenedCorner(corner).axialStiffness, 1, 1e-12);
 * ```
 */
export function filletMember(corner: ClothedCorner, height: number): MemberPart {
  check.object("corner", corner);
  check.finite("height", height, "m");
  if (corner.cornerDeg !== 90) check.refuse("angle of the corner", corner.cornerDeg, "must be 90°");
  const made = stiffenedCorner(corner);
  const clothArea = made.clothWidth * corner.clothThickness;
  const area = check.positive("area", clothArea + corner.radius ** 2 * (1 - Math.PI / 4), "m²");
  const E = made.axialStiffness / area;
  return Object.freeze({
    name: "fillet under cloth",
    E: check.result("modulus", E, "Pa"),
    G: 0,
    density: check.result(
      "density",
      (made.puttyMassPerMetre + made.clothMassPerMetre) / area,
      "kg/m³",
    ),
    area,
    height: height + made.centroid * Math.SQRT1_2,
    ownSecondMoment: check.result(
      "second moment",
      (made.rigidityAlongBisector + made.rigidityAcrossBisector) / 2 / E,
      "m⁴",
    ),
    low: height,
    high: height + corner.radius + corner.overlap,
  });
}
