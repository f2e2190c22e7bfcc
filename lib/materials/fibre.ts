import type { Catalogued } from "./catalogued.ts";

/** The figures of a fibre, transversely isotropic: 1 along the fibre, 2 and 3 across. */
export interface FibreProperties {
  /** Modulus along the fibre [Pa]. */
  readonly E1: number;
  /** Modulus across the fibre [Pa]. */
  readonly E2: number;
  /** Shear modulus along the fibre [Pa]. */
  readonly G12: number;
  /** Poisson ratio: contraction across for a pull along [1]. */
  readonly nu12: number;
  /** Shear modulus across the fibre [Pa]. */
  readonly G23: number;
  /** Density [kg/m³]. */
  readonly density: number;
  /** Thermal expansion along the fibre [1/K]. */
  readonly alpha1: number;
  /** Thermal expansion across the fibre [1/K]. */
  readonly alpha2: number;
  /** Tensile strength of the fibre in a composite [Pa]. */
  readonly tensileStrength: number;
  /** Compressive strength of the fibre in a composite [Pa]. */
  readonly compressiveStrength: number;
}

/** Families of fibre. */
export type FibreKind = "glass" | "carbon" | "aramid" | "basalt" | "flax" | "polymer";

/** A fibre of the catalogue. */
export interface Fibre extends FibreProperties, Catalogued<keyof FibreProperties> {
  /** Family it belongs to. */
  readonly kind: FibreKind;
}
