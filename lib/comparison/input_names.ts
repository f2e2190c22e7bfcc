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

const AS_LAID = " as laid";

/**
 * Name of a fibre's own row, which carries its modulus as a crew lays it.
 *
 * @param name Name of the fibre.
 * @returns The name, marked as laid once.
 *
 * @example
 * ```ts
 * import { asLaid } from "@laminate/notebooks/comparison";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(asLaid(asLaid("E-glass")), "E-glass as laid");
 * ```
 */
export function asLaid(name: string): string {
  return name.endsWith(AS_LAID) ? name : `${name}${AS_LAID}`;
}

/**
 * Whether a fibre's row is a crew's own.
 *
 * @param fibre The fibre.
 * @returns True for a row named as laid.
 *
 * @example
 * ```ts
 * import { isAsLaid } from "@laminate/notebooks/comparison";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(isAsLaid({ name: "E-glass" }), false);
 * ```
 */
export function isAsLaid({ name }: Pick<Fibre, "name">): boolean {
  return name.endsWith(AS_LAID);
}
