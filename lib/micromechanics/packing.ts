import { checksFor } from "../check/mod.ts";

const check = checksFor("compute the packing of fibres");

/** Arrays in which round fibres of one size can lie. */
export type FibreArray = "square" | "hexagonal";

/** Fibre volume fraction at which the fibres of an array touch [1]. */
const FULLEST: Readonly<Record<FibreArray, number>> = Object.freeze({
  square: Math.PI / 4,
  hexagonal: Math.PI / (2 * Math.sqrt(3)),
});

/**
 * The largest fibre volume fraction that round fibres of one size can reach in an array.
 *
 * Formula: square π/4, hexagonal π/(2 √3)
 *
 * Range: a bound of geometry; real laminates stay below 0.7.
 *
 * Source: geometry; Kaw, Mechanics of Composite Materials, 2nd ed. (2006), section 3.3.
 *
 * @param array The array.
 * @returns Fibre volume fraction at which the fibres touch [1].
 * @throws {InputError} If the array is neither of the two.
 *
 * @example
 * ```ts
 * import { largestFibreFraction } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(largestFibreFraction("hexagonal"), 0.9069, 0.0001);
 * ```
 */
export function largestFibreFraction(array: FibreArray): number {
  return FULLEST[check.oneOf("array", array, ["square", "hexagonal"])];
}

/**
 * Fibre diameter over the spacing of fibre centres: how much of the gap between fibres is left
 * for the resin to stretch in.
 *
 * Formula: d/s = √(Vf/Vf,max), Vf,max the fraction at which the fibres touch
 *
 * Range: Vf 0 up to the fullest of the array.
 *
 * Source: Kaw, Mechanics of Composite Materials, 2nd ed. (2006), section 3.4.2, from memory.
 *
 * @param fibreVolumeFraction Fibre volume over volume, Vf [1].
 * @param array The array, square if left out.
 * @returns Diameter over spacing [1].
 * @throws {InputError} If the fraction is above what the array can hold.
 *
 * @example
 * ```ts
 * import { diameterToSpacing } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(diameterToSpacing(0.7), 0.9441, 0.00005);
 * ```
 */
export function diameterToSpacing(
  fibreVolumeFraction: number,
  array: FibreArray = "square",
): number {
  const max = largestFibreFraction(array);
  check.within("fibre volume fraction", fibreVolumeFraction, { min: 0, max });
  return Math.sqrt(fibreVolumeFraction / max);
}
