/** Strengths of a lamina, all as positive magnitudes. */
export interface LaminaStrengths {
  /** Tension along 1 [Pa]. */
  readonly Xt: number;
  /** Compression along 1 [Pa]. */
  readonly Xc: number;
  /** Tension along 2 [Pa]. */
  readonly Yt: number;
  /** Compression along 2 [Pa]. */
  readonly Yc: number;
  /** In-plane shear [Pa]. */
  readonly S: number;
}

/**
 * The material of one layer, homogeneous and orthotropic in its plane: a cured ply, or a core.
 * 1 is along the fibres (warp, ribbon), 2 across in the plane.
 */
export interface Lamina {
  /** What it is, for tables. */
  readonly name: string;
  /** Modulus along 1 [Pa]. */
  readonly E1: number;
  /** Modulus along 2 [Pa]. */
  readonly E2: number;
  /** In-plane shear modulus [Pa]. */
  readonly G12: number;
  /** Major Poisson ratio: contraction along 2 for a pull along 1 [1]. */
  readonly nu12: number;
  /** Transverse shear modulus, 1 and through the thickness [Pa]. */
  readonly G13: number;
  /** Transverse shear modulus, 2 and through the thickness [Pa]. */
  readonly G23: number;
  /** Density [kg/m³]. */
  readonly density: number;
  /** Thermal expansion along 1 [1/K]. */
  readonly alpha1: number;
  /** Thermal expansion along 2 [1/K]. */
  readonly alpha2: number;
  /** Swelling along 1 for a moisture content by mass of 1 [1]; none where it is not known. */
  readonly beta1?: number;
  /** Swelling along 2 for a moisture content by mass of 1 [1]; none where it is not known. */
  readonly beta2?: number;
  /** Strengths; none for a layer that is not checked by a ply criterion (a core). */
  readonly strengths?: LaminaStrengths;
}

/** One layer of a stack. */
export interface Ply {
  /** What the layer is made of. */
  readonly lamina: Lamina;
  /** Cured thickness [m]. */
  readonly thickness: number;
  /** From x to the 1 direction, positive towards y [deg]. */
  readonly angleDeg: number;
}

/** Layers in the order in which they are laid: mould side (most negative z) first. */
export type Stack = readonly Ply[];
