import type { Catalogued } from "./catalogued.ts";

/**
 * The figures of a core. L (length: ribbon of a honeycomb, grain of a wood on edge) is along x
 * at 0°, W across it; foams have the same figure for both.
 */
export interface CoreProperties {
  /** Density [kg/m³]. */
  readonly density: number;
  /** Compressive modulus through the thickness [Pa]. */
  readonly compressiveModulus: number;
  /** Young's modulus in the plane, along L; near zero for honeycomb [Pa]. */
  readonly inPlaneModulusL: number;
  /** Young's modulus in the plane, along W; near zero for honeycomb [Pa]. */
  readonly inPlaneModulusW: number;
  /** Poisson ratio in the plane, L to W [1]. */
  readonly nu: number;
  /** Transverse shear modulus in the L direction [Pa]. */
  readonly shearModulusL: number;
  /** Transverse shear modulus in the W direction [Pa]. */
  readonly shearModulusW: number;
  /** Compressive strength through the thickness [Pa]. */
  readonly compressiveStrength: number;
  /** Transverse shear strength in the L direction [Pa]. */
  readonly shearStrengthL: number;
  /** Transverse shear strength in the W direction [Pa]. */
  readonly shearStrengthW: number;
  /** Thermal expansion in the plane [1/K]. */
  readonly alpha: number;
  /** Cell size, circle inscribed in the cell; 0 for foams and woods [m]. */
  readonly cellSize: number;
  /** Resin taken up by the open cells or cut surface of one face [kg/m²]. */
  readonly resinUptake: number;
}

/** Families of core. */
export type CoreKind = "foam" | "honeycomb" | "wood";

/** A core of the catalogue. Its thickness is chosen in the lay-up schedule. */
export interface Core extends CoreProperties, Catalogued<keyof CoreProperties> {
  /** Family it belongs to. */
  readonly kind: CoreKind;
}
