import { checksFor } from "../check/mod.ts";
import type { Core, Fibre } from "../materials/mod.ts";

const check = checksFor("name the input");

/** Name of the input that all plies share. */
export const FIBRE_FRACTION = "fibre volume fraction";
/** Name of the input that takes the place of the core's thickness where the part was measured. */
export const PART_THICKNESS = "thickness of the part";

/**
 * Name of the input that the modulus of a fibre goes by.
 *
 * @param fibre The fibre.
 * @returns The name.
 * @throws {InputError} If there is no name.
 *
 * @example
 * ```ts
 * import { fibreModulusInput } from "@laminate/notebooks/comparison";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(fibreModulusInput({ name: "E-glass" }), "modulus of E-glass");
 * ```
 */
export function fibreModulusInput(fibre: Pick<Fibre, "name">): string {
  return `modulus of ${check.text("name of the fibre", check.object("fibre", fibre).name)}`;
}

/**
 * Name of the input that the shear modulus of a core goes by.
 *
 * @param core The core.
 * @returns The name.
 * @throws {InputError} If there is no name.
 *
 * @example
 * ```ts
 * import { coreShearModulusInput } from "@laminate/notebooks/comparison";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(coreShearModulusInput({ name: "PVC foam 80" }), "shear modulus of PVC foam 80");
 * ```
 */
export function coreShearModulusInput(core: Pick<Core, "name">): string {
  return `shear modulus of ${check.text("name of the core", check.object("core", core).name)}`;
}

const AS_LAID = " as laid";

/**
 * Name of a fibre's own row, which carries its modulus as a crew lays it.
 *
 * @param name Name of the fibre.
 * @returns The name, marked as laid once.
 * @throws {InputError} If there is no name.
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
  return check.text("name of the fibre", name).endsWith(AS_LAID) ? name : `${name}${AS_LAID}`;
}

/**
 * Whether a fibre's row is a crew's own.
 *
 * @param fibre The fibre.
 * @returns True for a row named as laid.
 * @throws {InputError} If there is no name.
 *
 * @example
 * ```ts
 * import { isAsLaid } from "@laminate/notebooks/comparison";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(isAsLaid({ name: "E-glass" }), false);
 * ```
 */
export function isAsLaid(fibre: Pick<Fibre, "name">): boolean {
  return check.text("name of the fibre", check.object("fibre", fibre).name).endsWith(AS_LAID);
}
