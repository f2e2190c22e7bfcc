import { checksFor } from "../check/mod.ts";
import type { CoreKind, CoreProperties } from "../materials/mod.ts";

const check = checksFor("describe the sandwich");

/** A face with what it stands, along x and along y; strengths as positive magnitudes. */
export interface FaceDesign {
  /** Thickness [m]. */
  readonly thickness: number;
  /** Modulus along x [Pa]. */
  readonly Ex: number;
  /** Modulus along y [Pa]. */
  readonly Ey: number;
  /** Poisson ratio [1]. */
  readonly nu: number;
  /** Tensile strength along x [Pa]. */
  readonly tensileX: number;
  /** Tensile strength along y [Pa]. */
  readonly tensileY: number;
  /** Compressive strength along x [Pa]. */
  readonly compressiveX: number;
  /** Compressive strength along y [Pa]. */
  readonly compressiveY: number;
  /** Shear strength in the plane, in the axes x and y [Pa]. */
  readonly shearXY: number;
}

/** A core in its place with what it stands. */
export interface CoreDesign {
  /** Family: decides the wrinkling formula, and whether faces can dimple. */
  readonly kind: CoreKind;
  /** Thickness [m]. */
  readonly thickness: number;
  /** Modulus in the plane along x [Pa]. */
  readonly Ex: number;
  /** Modulus in the plane along y [Pa]. */
  readonly Ey: number;
  /** Modulus through the thickness [Pa]. */
  readonly Ez: number;
  /** Shear modulus, x and through the thickness [Pa]. */
  readonly Gx: number;
  /** Shear modulus, y and through the thickness [Pa]. */
  readonly Gy: number;
  /** Shear strength, x and through the thickness [Pa]. */
  readonly shearX: number;
  /** Shear strength, y and through the thickness [Pa]. */
  readonly shearY: number;
  /** Compressive strength through the thickness [Pa]. */
  readonly compressive: number;
  /** Cell size, circle inscribed; 0 where there are no cells [m]. */
  readonly cellSize: number;
}

/** A sandwich with what it stands. */
export interface SandwichDesign {
  /** Face on the bag side. */
  readonly topFace: FaceDesign;
  /** Face on the mould side. */
  readonly bottomFace: FaceDesign;
  /** Core between them. */
  readonly core: CoreDesign;
}

/**
 * A face that is alike along x and y, such as a balanced cloth.
 *
 * Source: definition.
 *
 * @param face Thickness [m], modulus [Pa], Poisson ratio [1], strengths [Pa].
 * @returns The face, the same both ways.
 * @throws {InputError} If a thickness, modulus or strength is not above 0.
 *
 * @example
 * ```ts
 * import { balancedFace } from "@laminate/notebooks/sandwich";
 * import { assertEquals } from "@std/assert";
 *
 * const face = balancedFace({
 *   thickness: 1e-3, E: 20e9, nu: 0.1, tensile: 3e8, compressive: 2e8, shear: 4e7,
 * });
 * assertEquals(face.Ey, 20e9);
 * ```
 */
export function balancedFace(
  face: {
    /** Thickness [m]. */
    readonly thickness: number;
    /** Modulus [Pa]. */
    readonly E: number;
    /** Poisson ratio [1]. */
    readonly nu: number;
    /** Tensile strength [Pa]. */
    readonly tensile: number;
    /** Compressive strength [Pa]. */
    readonly compressive: number;
    /** Shear strength in the plane; a cloth along x and y has little, mostly the resin's [Pa]. */
    readonly shear: number;
  },
): FaceDesign {
  check.object("face", face);
  const { thickness, E, nu, tensile, compressive, shear } = face;
  check.positive("thickness", thickness, "m");
  check.positive("modulus", E, "Pa");
  check.within("Poisson ratio", nu, { min: -0.99, max: 0.99 });
  check.positive("tensile strength", tensile, "Pa");
  check.positive("compressive strength", compressive, "Pa");
  check.positive("shear strength", shear, "Pa");
  return Object.freeze({
    thickness,
    Ex: E,
    Ey: E,
    nu,
    tensileX: tensile,
    tensileY: tensile,
    compressiveX: compressive,
    compressiveY: compressive,
    shearXY: shear,
  });
}

/** Figures of a core that have to be above 0. */
const CORE_FIELDS = [
  "compressiveModulus",
  "shearModulusL",
  "shearModulusW",
  "compressiveStrength",
  "shearStrengthL",
  "shearStrengthW",
] as const;

/**
 * A core of the catalogue, laid into a sandwich.
 *
 * Source: definition; L (ribbon of a honeycomb, grain) along x or along y.
 *
 * @param core The core's figures and family.
 * @param thickness Thickness [m].
 * @param lengthAlong Along which side its L direction lies.
 * @returns The core in its place.
 * @throws {InputError} If a thickness, modulus or strength is not above 0 or the direction is not x
 * or y.
 *
 * @example
 * ```ts
 * import { coreInPlace } from "@laminate/notebooks/sandwich";
 * import { assertEquals } from "@std/assert";
 *
 * const honeycomb = {
 *   kind: "honeycomb", density: 48, compressiveModulus: 138e6, inPlaneModulusL: 1e5,
 *   inPlaneModulusW: 1e5, nu: 0.1, shearModulusL: 40e6, shearModulusW: 24e6,
 *   compressiveStrength: 2e6, shearStrengthL: 1.2e6, shearStrengthW: 0.7e6, alpha: 0,
 *   cellSize: 0.0032, resinUptake: 0,
 * } as const;
 * assertEquals(coreInPlace(honeycomb, 0.01, "y").Gx, 24e6);
 * ```
 */
export function coreInPlace(
  core: CoreProperties & {
    /** Family it belongs to. */
    readonly kind: CoreKind;
  },
  thickness: number,
  lengthAlong: "x" | "y",
): CoreDesign {
  check.object("core", core);
  check.positive("thickness", thickness, "m");
  check.oneOf("direction of L", lengthAlong, ["x", "y"]);
  check.oneOf("kind", core.kind, ["foam", "honeycomb", "wood"]);
  for (const field of ["inPlaneModulusL", "inPlaneModulusW", "cellSize"] as const) {
    check.nonNegative(field, core[field]);
  }
  for (const field of CORE_FIELDS) check.positive(field, core[field]);
  const along = lengthAlong === "x";
  const pick = (L: number, W: number): readonly [number, number] => along ? [L, W] : [W, L];
  const [Ex, Ey] = pick(core.inPlaneModulusL, core.inPlaneModulusW);
  const [Gx, Gy] = pick(core.shearModulusL, core.shearModulusW);
  const [shearX, shearY] = pick(core.shearStrengthL, core.shearStrengthW);
  return Object.freeze({
    kind: core.kind,
    thickness,
    Ex,
    Ey,
    Ez: core.compressiveModulus,
    Gx,
    Gy,
    shearX,
    shearY,
    compressive: core.compressiveStrength,
    cellSize: core.cellSize,
  });
}
