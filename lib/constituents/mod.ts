/**
 * How much of the part is fibre?
 *
 * @module
 */
export * from "./fibre_fraction.ts";
export * from "./density.ts";
export * from "./ply_thickness.ts";
export * from "./voids.ts";
export * from "./measured_contents.ts";
export * from "./mixture_of_layers.ts";
