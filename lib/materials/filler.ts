import type { Catalogued } from "./catalogued.ts";

/** The figures of a filler powder. */
export interface FillerProperties {
  /** Density of a particle, its hollow included [kg/m³]. */
  readonly particleDensity: number;
  /** Density of the powder as it lies in the cup [kg/m³]. */
  readonly bulkDensity: number;
  /** Volume fraction of particles when packed as close as stirring brings them [1]. */
  readonly packing: number;
  /** Young's modulus of a particle as a solid body [Pa]. */
  readonly E: number;
  /** Poisson ratio of a particle [1]. */
  readonly nu: number;
}

/** Shapes of particle. */
export type FillerKind = "hollow sphere" | "solid sphere" | "fume" | "fibre" | "mineral";

/** A filler of the catalogue. */
export interface Filler extends FillerProperties, Catalogued<keyof FillerProperties> {
  /** Shape of its particles. */
  readonly kind: FillerKind;
}
