/**
 * How much of the part is fibre? Fibre and resin by mass and by volume, density, voids and thickness,
 * from cloth and weighings.
 *
 * Start with {@link weighPart} for a part on the scale, {@link burnOff} or {@link panelWeighing} for a
 * sample of it, and {@link fibreVolumeFraction}, {@link resinRatio} and {@link plyThickness} to turn
 * one figure into another.
 *
 * @example As much resin as cloth, by mass: the fibre fraction and the thickness of a ply
 * ```ts
 * import { fibreVolumeFraction, plyThickness } from "@laminate/notebooks/constituents";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const densities = { fibreDensity: 2560, resinDensity: 1200 };
 * const fraction = fibreVolumeFraction(0.5, densities);
 * const thickness = plyThickness({
 *   arealWeight: 0.2,
 *   fibreDensity: 2560,
 *   fibreVolumeFraction: fraction,
 * });
 * // 200 g of glass and 200 g of resin on a square metre, by volume.
 * assertAlmostEquals(thickness, 0.2 / 2560 + 0.2 / 1200, 1e-15);
 * ```
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
