import { checksFor } from "../check/mod.ts";

const check = checksFor("compute the face's buckling stress");

/** The moduli on which a wrinkling face rests. */
export interface WrinklingModuli {
  /** Modulus of the face along the load [Pa]. */
  readonly faceE: number;
  /** Modulus of the core through the thickness [Pa]. */
  readonly coreE: number;
  /** Shear modulus of the core in the plane of load and thickness [Pa]. */
  readonly coreG: number;
}

/** Factors k of the wrinkling stress k (Ef Ec Gc)^⅓ in use. */
export interface WrinklingFactors {
  /** Design value, allows for waviness of real faces: Hoff and Mautner (1945) [1]. */
  readonly design: number;
  /** Perfect faces on a thick core, linear decay of the core's strain: Hoff and Mautner [1]. */
  readonly theory: number;
  /** Perfect faces, energy with exponential decay [1]. */
  readonly energy: number;
}

/** The factors k of the wrinkling stress, from memory of the sources named at each. */
export const wrinklingFactors: WrinklingFactors = Object.freeze({
  design: 0.5,
  theory: 0.91,
  energy: 0.825,
});

/**
 * Compressive stress at which a face wrinkles into short waves on its core.
 *
 * Formula: σ = k (Ef Ec Gc)^⅓
 *
 * Range: core thick against the wave; k an input, see `wrinklingFactors`. Tests of real panels
 * scatter from below 0.5 to 0.9, by waviness and bond: design with 0.5.
 *
 * Source: N. J. Hoff, S. E. Mautner, J. Aero. Sci. 12 (1945) 285, from memory.
 *
 * @param moduli Moduli of face and core [Pa].
 * @param factor The factor k [1].
 * @returns Wrinkling stress, a positive magnitude [Pa].
 * @throws {InputError} If a modulus or the factor is not above 0.
 *
 * @example
 * ```ts
 * import { wrinklingFactors, wrinklingStress } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const moduli = { faceE: 20e9, coreE: 80e6, coreG: 40e6 };
 * assertAlmostEquals(wrinklingStress(moduli, wrinklingFactors.design) / 1e6, 200, 1e-9);
 * ```
 */
export function wrinklingStress(moduli: WrinklingModuli, factor: number): number {
  check.object("moduli", moduli);
  check.positive("face modulus", moduli.faceE, "Pa");
  check.positive("core modulus", moduli.coreE, "Pa");
  check.positive("core shear modulus", moduli.coreG, "Pa");
  check.positive("wrinkling factor", factor);
  return check.result(
    "wrinkling stress",
    factor * Math.cbrt(moduli.faceE) * Math.cbrt(moduli.coreE) * Math.cbrt(moduli.coreG),
    "Pa",
  );
}

/** A face on a honeycomb, which gives way through the thickness only. */
export interface FaceOnHoneycomb {
  /** Modulus of the face along the load [Pa]. */
  readonly faceE: number;
  /** Modulus of the core through the thickness [Pa]. */
  readonly coreE: number;
  /** Thickness of the face [m]. */
  readonly faceThickness: number;
  /** Thickness of the core [m]. */
  readonly coreThickness: number;
}

/** Factors of the honeycomb form: perfect faces 0.82, lower bound of tests 0.33 [1]. */
export const honeycombWrinklingFactors: Pick<WrinklingFactors, "design" | "theory"> = Object
  .freeze({ design: 0.33, theory: 0.82 });

/**
 * Compressive stress at which a face wrinkles on a honeycomb core, both faces mirrored.
 *
 * Formula: σ = k √(Ef Ec t/c)
 *
 * Range: core stiff in shear and without stiffness in its plane; factor 0.82 for perfect faces,
 * 0.33 as lower bound of tests, see `honeycombWrinklingFactors`. Scatter is large: waviness.
 *
 * Source: MIL-HDBK-23A (1968), from memory.
 *
 * @param face Moduli [Pa] and thicknesses [m] of face and core.
 * @param factor The factor k [1].
 * @returns Wrinkling stress, a positive magnitude [Pa].
 * @throws {InputError} If a modulus, a thickness or the factor is not above 0.
 *
 * @example
 * ```ts
 * import { honeycombWrinklingStress } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const face = { faceE: 20e9, coreE: 1e8, faceThickness: 0.0005, coreThickness: 0.01 };
 * assertAlmostEquals(honeycombWrinklingStress(face, 0.33) / 1e6, 104.355, 0.001);
 * ```
 */
export function honeycombWrinklingStress(face: FaceOnHoneycomb, factor: number): number {
  check.object("face", face);
  check.positive("face modulus", face.faceE, "Pa");
  check.positive("core modulus", face.coreE, "Pa");
  check.positive("face thickness", face.faceThickness, "m");
  check.positive("core thickness", face.coreThickness, "m");
  check.positive("wrinkling factor", factor);
  return check.result(
    "wrinkling stress",
    factor * Math.sqrt(face.faceE) * Math.sqrt(face.coreE) *
      Math.sqrt(face.faceThickness / face.coreThickness),
    "Pa",
  );
}

/**
 * Factor k of the wrinkling stress for a perfect face on a deep isotropic core (elastic
 * half-plane).
 *
 * Formula: k = 3 (12 (3 − ν)² (1 + ν)²)^(−⅓) (2 (1 + ν))^⅓, from σ = B1 Ef^⅓ Ec^⅔
 *
 * Range: ν of the core 0 to 0.5.
 *
 * Source: Allen (1969), chapter 8, from memory.
 *
 * @param coreNu Poisson ratio of the core [1].
 * @returns The factor k [1].
 * @throws {InputError} If the Poisson ratio is outside 0 to 0.5.
 *
 * @example
 * ```ts
 * import { halfPlaneWrinklingFactor } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(halfPlaneWrinklingFactor(0.25), 0.781, 0.0005);
 * ```
 */
export function halfPlaneWrinklingFactor(coreNu: number): number {
  check.within("Poisson ratio of the core", coreNu, { min: 0, max: 0.5 });
  const term = 12 * (3 - coreNu) ** 2 * (1 + coreNu) ** 2;
  return 3 * Math.cbrt(2 * (1 + coreNu) / term);
}

/** A face over an open cell. */
export interface FaceOverCell {
  /** Modulus of the face along the load [Pa]. */
  readonly faceE: number;
  /** Poisson ratio of the face [1]. */
  readonly faceNu: number;
  /** Thickness of the face [m]. */
  readonly thickness: number;
  /** Cell size s, circle inscribed in the cell [m]. */
  readonly cellSize: number;
}

/**
 * Compressive stress at which a face buckles into the cells of a honeycomb.
 *
 * Formula: σ = 2 Ef/(1 − ν²) (t/s)²
 *
 * Range: face thin against the cell; s is the circle inscribed in the cell. Other coefficients
 * and cell sizes are in use: do not mix.
 *
 * Source: MIL-HDBK-23A, from memory.
 *
 * @param face Modulus [Pa], Poisson ratio [1] and thickness [m] of the face, cell size [m].
 * @returns Dimpling stress, a positive magnitude [Pa].
 * @throws {InputError} If modulus, thickness or cell size is not above 0, or the Poisson ratio is
 * not between −0.99 and 0.99.
 *
 * @example
 * ```ts
 * import { dimplingStress } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const face = { faceE: 20e9, faceNu: 0, thickness: 0.0005, cellSize: 0.005 };
 * assertAlmostEquals(dimplingStress(face) / 1e6, 400, 1e-9);
 * ```
 */
export function dimplingStress(face: FaceOverCell): number {
  check.object("face", face);
  check.positive("face modulus", face.faceE, "Pa");
  check.within("Poisson ratio of the face", face.faceNu, { min: -0.99, max: 0.99 });
  check.positive("face thickness", face.thickness, "m");
  check.positive("cell size", face.cellSize, "m");
  const ratio = face.thickness / face.cellSize;
  return check.result(
    "dimpling stress",
    2 * face.faceE / (1 - face.faceNu * face.faceNu) * ratio * ratio,
    "Pa",
  );
}
