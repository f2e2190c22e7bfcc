/**
 * Is this a number that can be meant? Every room asks here before it computes.
 *
 * Start with {@link InputError}, which a program meets whatever room it uses: its `faults` name what
 * was wrong, the value got and what would do. {@link checksFor} makes the same checks for a function of
 * your own.
 *
 * @example Tell a reader what was wrong
 * ```ts
 * import { InputError } from "@laminate/notebooks/check";
 * import { resinRatio } from "@laminate/notebooks/constituents";
 * import { assertEquals, assertThrows } from "@std/assert";
 *
 * const error = assertThrows(() => resinRatio(1.5), InputError);
 * assertEquals(error.faults[0]?.argument, "fibre mass fraction");
 * assertEquals(error.faults[0]?.value, 1.5);
 * ```
 *
 * @module
 */
export * from "./input_error.ts";
export * from "./checks.ts";
export type { Fields, Kind, Shape } from "./shape.ts";
