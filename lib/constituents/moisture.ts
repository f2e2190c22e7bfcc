import { checksFor } from "../check/mod.ts";

const check = checksFor("compute the moisture content");

/**
 * Moisture content of a laminate from that of its resin, for fibres that take up none: the figure
 * by which a lamina's swelling (`beta1`, `beta2`) is multiplied.
 *
 * Formula: m = m_resin (1 − W)
 *
 * Range: glass, carbon and basalt; aramid and flax take up water themselves. A room-cured epoxy
 * left in water takes up 0.02 to 0.05 of its mass over months (common practice, no source).
 *
 * Source: mass balance.
 *
 * @param resinMoisture Water over dry resin, by mass [1].
 * @param fibreMassFraction Fibre mass over laminate mass, W [1].
 * @returns Water over dry laminate, by mass [1].
 * @throws {InputError} If a share is outside 0 to 1.
 *
 * @example
 * ```ts
 * import { laminateMoisture } from "@laminate/notebooks/constituents";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(laminateMoisture(0.03, 0.6), 0.012, 1e-15);
 * ```
 */
export function laminateMoisture(resinMoisture: number, fibreMassFraction: number): number {
  check.fraction("moisture of the resin", resinMoisture);
  check.fraction("fibre mass fraction", fibreMassFraction);
  return resinMoisture * (1 - fibreMassFraction);
}
