/**
 * Is this a number that can be meant? Every room asks here before it computes.
 *
 * @module
 */
export * from "./input_error.ts";
export * from "./checks.ts";
export type { Fields, Kind, Shape } from "./shape.ts";
