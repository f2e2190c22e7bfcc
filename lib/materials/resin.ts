import type { Catalogued } from "./catalogued.ts";

/** The figures of a cured resin, isotropic, and of its mixing. */
export interface ResinProperties {
  /** Young's modulus, cured [Pa]. */
  readonly E: number;
  /** Poisson ratio, cured [1]. */
  readonly nu: number;
  /** Density, cured [kg/m³]. */
  readonly density: number;
  /** Thermal expansion, cured [1/K]. */
  readonly alpha: number;
  /** Swelling strain for a moisture content by mass of 1, cured [1]. */
  readonly beta: number;
  /** Tensile strength, cured [Pa]. */
  readonly tensileStrength: number;
  /** Compressive strength, cured [Pa]. */
  readonly compressiveStrength: number;
  /** Shear strength, cured [Pa]. */
  readonly shearStrength: number;
  /** Hardener mass for 100 mass of resin [1]. */
  readonly hardenerPhr: number;
}

/** Families of resin. */
export type ResinKind = "epoxy" | "polyester" | "vinylester";

/** A resin of the catalogue. */
export interface Resin extends ResinProperties, Catalogued<keyof ResinProperties> {
  /** Family it belongs to. */
  readonly kind: ResinKind;
}
