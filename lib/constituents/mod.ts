/**
 * How much of the part is fibre?
 *
 * @module
 */
export * from "./fibre_fraction.ts";
