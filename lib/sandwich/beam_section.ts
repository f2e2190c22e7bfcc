import { checksFor } from "../check/mod.ts";
import { assembleSection } from "./_assemble_section.ts";

const check = checksFor("compute the beam section");

/** One face of a sandwich beam. */
export interface BeamFace {
  /** Thickness [m]. */
  readonly thickness: number;
  /** Modulus along the beam, as for a narrow bar; not divided by 1 − ν² [Pa]. */
  readonly E: number;
}

/** The core of a sandwich beam. */
export interface BeamCore {
  /** Thickness; 0 for faces bonded to each other [m]. */
  readonly thickness: number;
  /** Modulus along the beam; 0 where it does not help, as in honeycomb [Pa]. */
  readonly E: number;
  /** Shear modulus along the beam and through the thickness [Pa]. */
  readonly G: number;
}

/** What a sandwich beam is made of; z counts up from the middle of the core. */
export interface BeamMakeup {
  /** Width [m]. */
  readonly width: number;
  /** Face on the bag side, at positive z. */
  readonly topFace: BeamFace;
  /** Face on the mould side, at negative z. */
  readonly bottomFace: BeamFace;
  /** Core between them. */
  readonly core: BeamCore;
}

/** One layer of a section, in its place. */
export interface SectionLayer {
  /** Which part of the section it belongs to. */
  readonly part: "bottom face" | "core" | "top face";
  /** Modulus along the beam [Pa]. */
  readonly E: number;
  /** Thickness [m]. */
  readonly thickness: number;
  /** Lower surface, from the middle of the core [m]. */
  readonly bottom: number;
  /** Upper surface, from the middle of the core [m]. */
  readonly top: number;
}

/** Shear stiffness of a section [N], or "rigid" where shear is not counted (no core). */
export type ShearStiffness = number | "rigid";

/** A beam's section: what its deflections and stresses are computed from. */
export interface BeamSection {
  /** "sandwich" with a core, "solid" without: then shear is not counted. */
  readonly kind: "sandwich" | "solid";
  /** Width [m]. */
  readonly width: number;
  /** Layers from the bottom up. */
  readonly layers: readonly SectionLayer[];
  /** Thickness of the bottom face [m]. */
  readonly bottomThickness: number;
  /** Thickness of the core [m]. */
  readonly coreThickness: number;
  /** Thickness of the top face [m]. */
  readonly topThickness: number;
  /** Neutral axis, weighted with the moduli, from the middle of the core [m]. */
  readonly neutralAxis: number;
  /** Flexural rigidity D, exact: faces' own, core, unequal faces [N·m²]. */
  readonly flexuralRigidity: number;
  /** Flexural rigidity of thin faces alone, for comparison [N·m²]. */
  readonly thinFaceRigidity: number;
  /** Distance d between the middles of the faces [m]. */
  readonly centroidDistance: number;
  /** Shear stiffness S [N], or "rigid". */
  readonly shearStiffness: ShearStiffness;
  /** Axial stiffness EA [N]. */
  readonly axialStiffness: number;
  /** Remarks on the result, empty where there is nothing to say. */
  readonly notes: readonly string[];
  /** Where the equations come from. */
  readonly source: string;
}

/**
 * The section of a sandwich beam with two faces of any thickness and modulus.
 *
 * The distance d is between the middles of the faces; symbols d and S follow ASTM D7250's form
 * of the shear stiffness. E is used as for a narrow bar; a wide panel is a plate.
 *
 * Formula: zn = Σ E t z̄ / Σ E t; D = b Σ E (t³/12 + t (z̄ − zn)²); d = c + (t1 + t2)/2;
 * D thin = b E1 t1 E2 t2 d² / (E1 t1 + E2 t2); S = G b d²/c; EA = b Σ E t
 *
 * Range: any thickness. Without a core (thickness 0) the section is "solid", its shear stiffness
 * "rigid": shear is not counted. S is within 4 % of elasticity for faces up to 0.3 of the core.
 *
 * Source: Allen, Analysis and Design of Structural Sandwich Panels (1969), chapter 2; ASTM
 * D7250 for S; from memory.
 *
 * @param makeup Width [m], faces and core: thickness [m], moduli [Pa].
 * @returns The section: neutral axis [m], D [N·m²], d [m], S [N], EA [N].
 * @throws {InputError} If a width, a face's thickness or modulus, or the core's shear modulus is
 * not above 0, or the core's thickness or modulus is below 0.
 *
 * @example
 * ```ts
 * import { sandwichSection } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals, assertEquals } from "@std/assert";
 *
 * const face = { thickness: 0.001, E: 20e9 };
 * const section = sandwichSection({
 *   width: 0.05,
 *   topFace: face,
 *   bottomFace: face,
 *   core: { thickness: 0.02, E: 0, G: 15e6 },
 * });
 * assertEquals(section.centroidDistance, 0.021);
 * assertAlmostEquals(section.shearStiffness as number, 16537.5, 1e-9);
 * assertAlmostEquals(section.flexuralRigidity, 220.6666666666667, 1e-10);
 * ```
 */
export function sandwichSection(makeup: BeamMakeup): BeamSection {
  check.object("makeup", makeup);
  const { width, topFace, bottomFace, core } = makeup;
  check.object("top face", topFace);
  check.object("bottom face", bottomFace);
  check.object("core", core);
  checkFace("top face", topFace);
  checkFace("bottom face", bottomFace);
  check.nonNegative("core thickness", core.thickness, "m");
  check.nonNegative("core modulus", core.E, "Pa");
  check.positive("width", width, "m");
  if (core.thickness > 0) check.positive("core shear modulus", core.G, "Pa");
  return assembleSection({ width, coreG: core.G }, [
    { part: "bottom face", E: bottomFace.E, thickness: bottomFace.thickness },
    { part: "core", E: core.E, thickness: core.thickness },
    { part: "top face", E: topFace.E, thickness: topFace.thickness },
  ]);
}

function checkFace(name: string, face: BeamFace): void {
  check.positive(`${name} thickness`, face.thickness, "m");
  check.positive(`${name} modulus`, face.E, "Pa");
}
