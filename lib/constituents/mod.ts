/**
 * How much of the part is fibre?
 *
 * @module
 */
export * from "./fibre_fraction.ts";
export * from "./density.ts";
export * from "./ply_thickness.ts";
export * from "./voids.ts";
export * from "./moisture.ts";
export * from "./measured_contents.ts";
export * from "./mixture_of_layers.ts";
export * from "./usual_bands.ts";
export * from "./part_balance.ts";
export * from "./part_weighing.ts";
export * from "./weigh_part.ts";
export * from "./with_uncertainty.ts";
export * from "./uncertain_layers.ts";
export * from "./uncertain_weighings.ts";
