import { checksFor } from "../check/mod.ts";
import type { Curvature } from "./plane_state.ts";

const check = checksFor("compute how far a sheet is out of flat");

/** Size of a rectangular sheet. */
export interface SheetSize {
  /** Along x [m]. */
  readonly lengthX: number;
  /** Along y [m]. */
  readonly lengthY: number;
}

/**
 * How far a curved rectangular sheet is out of flat: the gap between two flat boards between
 * which it just fits. One number for a bow, a saddle and a twist.
 *
 * Formula: max w − min w over the sheet, w = −(κx x² + κy y² + κxy x y)/2 from its middle;
 * extremes lie at the middle, at a corner, or on an edge where w has no slope along it
 *
 * Range: small slopes; weight of the sheet not counted
 *
 * Source: geometry: w is even about the middle, so that no tilt makes the gap smaller
 *
 * @param curvature Curvature [1/m].
 * @param sheet Its size [m].
 * @returns The gap, 0 for a flat sheet [m].
 * @throws {InputError} If a curvature is not a number or a length is not above 0.
 *
 * @example
 * ```ts
 * import { outOfFlat } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const sheet = { lengthX: 1, lengthY: 0.4 };
 * assertAlmostEquals(outOfFlat({ kappaX: 0.08, kappaY: 0, kappaXY: 0 }, sheet), 0.01, 1e-15);
 * // A twist: two corners up, two down by κxy Lx Ly/8.
 * assertAlmostEquals(outOfFlat({ kappaX: 0, kappaY: 0, kappaXY: 0.1 }, sheet), 0.01, 1e-15);
 * ```
 */
export function outOfFlat(curvature: Curvature, sheet: SheetSize): number {
  check.object("curvature", curvature);
  check.object("sheet", sheet);
  const { kappaX, kappaY, kappaXY } = curvature;
  for (const [name, value] of Object.entries({ kappaX, kappaY, kappaXY })) {
    check.finite(name, value, "1/m");
  }
  const a = check.positive("length along x", sheet.lengthX, "m") / 2;
  const b = check.positive("length along y", sheet.lengthY, "m") / 2;
  const height = (x: number, y: number): number =>
    -(kappaX * x * x + kappaY * y * y + kappaXY * x * y) / 2;
  const heights = [0, height(a, b), height(a, -b)];
  // Where the edge x = a has no slope along y, and the edge y = b none along x.
  const y = kappaY === 0 ? b : -kappaXY * a / (2 * kappaY);
  const x = kappaX === 0 ? a : -kappaXY * b / (2 * kappaX);
  if (Math.abs(y) < b) heights.push(height(a, y));
  if (Math.abs(x) < a) heights.push(height(x, b));
  return check.result("gap", Math.max(...heights) - Math.min(...heights), "m");
}
