import { checksFor } from "../check/mod.ts";

const check = checksFor("compute the core thickness");

/**
 * What is left for the core in a part of known thickness.
 *
 * Formula: c = h − t1 − t2
 *
 * Source: definition.
 *
 * @param partThickness Thickness of the part as measured [m].
 * @param faces Thickness of both faces [m].
 * @returns Thickness of the core [m].
 * @throws {InputError} If a thickness is not above 0 or the faces leave no room.
 *
 * @example
 * ```ts
 * import { coreThicknessLeft } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(coreThicknessLeft(0.0112, { top: 0.0007, bottom: 0.0005 }), 0.01, 1e-15);
 * ```
 */
export function coreThicknessLeft(
  partThickness: number,
  faces: {
    /** Face on the bag side [m]. */
    readonly top: number;
    /** Face on the mould side [m]. */
    readonly bottom: number;
  },
): number {
  check.positive("thickness of the part", partThickness, "m");
  check.object("faces", faces);
  const { top, bottom } = faces;
  check.positive("thickness of the top face", top, "m");
  check.positive("thickness of the bottom face", bottom, "m");
  if (!(top + bottom < partThickness)) {
    check.refuse(
      "thickness of both faces",
      `${top} m and ${bottom} m`,
      `must be below that of the part, ${partThickness} m: a face cannot be thicker than the part`,
    );
  }
  return partThickness - top - bottom;
}
