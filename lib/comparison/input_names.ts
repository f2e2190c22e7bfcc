import type { Core, Fibre } from "../materials/mod.ts";

/** Name of the input that all plies share. */
export const FIBRE_FRACTION = "fibre volume fraction";
/** Name of the input that takes the place of the core's thickness where the part was measured. */
export const PART_THICKNESS = "thickness of the part";

/**
 * Name of the input that the modulus of a fibre goes by.
 *
 * @param fibre The fibre.
 * @returns The name.
 *
 * @example
 * ```ts
 * import { fibreModulusInput } from "@laminate/notebooks/comparison";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(fibreModulusInput({ name: "E-glass" }), "modulus of E-glass");
 * ```
 */
export function fibreModulusInput({ name }: Pick<Fibre, "name">): string {
  return `modulus of ${name}`;
}

/**
 * Name of the input that the shear modulus of a core goes by.
 *
 * @param core The core.
 * @returns The name.
 *
 * @example
 * ```ts
 * import { coreShearModulusInput } from "@laminate/notebooks/comparison";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(coreShearModulusInput({ name: "PVC foam 80" }), "shear modulus of PVC foam 80");
 * ```
 */
export function coreShearModulusInput({ name }: Pick<Core, "name">): string {
  return `shear modulus of ${name}`;
}
