import type { Fibre, Reinforcement, Resin } from "../materials/mod.ts";

/** A cloth, what its fibre and the resin are, and how much fibre the part holds. */
export interface PlyRecipe {
  /** The cloth, mat or unidirectional. */
  readonly reinforcement: Reinforcement;
  /** Its fibre. */
  readonly fibre: Fibre;
  /** The resin. */
  readonly resin: Resin;
  /** Fibre volume over volume, as planned or as weighed, Vf [1]. */
  readonly fibreVolumeFraction: number;
  /** Share of the straight fibre's modulus that is kept; by form and weave if left out [1]. */
  readonly stiffnessFactor?: number;
}
