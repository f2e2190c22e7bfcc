import type { Checks } from "../check/mod.ts";

/** Densities of the two constituents. */
export interface ConstituentDensities {
  /** Density of the fibre [kg/m³]. */
  readonly fibreDensity: number;
  /** Density of the cured resin [kg/m³]. */
  readonly resinDensity: number;
}

/** Refuses densities that cannot be meant. */
export function checkDensities(check: Checks, densities: ConstituentDensities): void {
  check.object("densities", densities);
  check.positive("fibre density", densities.fibreDensity, "kg/m³");
  check.positive("resin density", densities.resinDensity, "kg/m³");
}
