import type { Catalogued } from "./catalogued.ts";

/** The figures of a reinforcement as it comes off the roll. */
export interface ReinforcementProperties {
  /** Dry mass per area [kg/m²]. */
  readonly arealWeight: number;
  /** Share of the fibre mass that runs along the roll: 1 unidirectional, 0.5 balanced [1]. */
  readonly warpShare: number;
  /** Fibre volume fraction usually reached by hand lay-up [1]. */
  readonly fibreFraction: number;
  /** Share of the straight fibre's modulus that is kept, from own tests; by form if left out [1]. */
  readonly stiffnessKept?: number;
}

/** How the fibre is held together. */
export type ReinforcementForm = "unidirectional" | "woven" | "stitched" | "mat";

/** Interlacing of a woven cloth; "none" for the other forms. */
export type Weave = "none" | "plain" | "twill" | "satin";

/** A reinforcement of the catalogue: cloth, mat or unidirectional. */
export interface Reinforcement
  extends ReinforcementProperties, Catalogued<keyof ReinforcementProperties> {
  /** How the fibre is held together. */
  readonly form: ReinforcementForm;
  /** Interlacing, if woven. */
  readonly weave: Weave;
  /** Name of its fibre in the catalogue. */
  readonly fibre: string;
}
