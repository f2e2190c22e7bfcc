import { checksFor } from "../check/mod.ts";
import { checkSection } from "./_beam_checks.ts";
import type { BeamSection, SectionLayer } from "./beam_section.ts";

const check = checksFor("compute the beam's stress");

/** Stress in one face, tension positive. */
export interface FaceStress {
  /** At its outer surface [Pa]. */
  readonly outer: number;
  /** At its middle; of several plies the mean over the face [Pa]. */
  readonly centroid: number;
  /** By the thin-face formula M/(b t d) [Pa]. */
  readonly thin: number;
}

/** Stress at the two surfaces of a layer, tension positive. */
export interface LayerStress {
  /** The layer. */
  readonly layer: SectionLayer;
  /** At its lower surface [Pa]. */
  readonly bottom: number;
  /** At its upper surface [Pa]. */
  readonly top: number;
}

/** Stresses along a beam at one section. */
export interface BendingStress {
  /** In the top face. */
  readonly topFace: FaceStress;
  /** In the bottom face. */
  readonly bottomFace: FaceStress;
  /** In each layer, core and plies too, from the bottom up. */
  readonly layers: readonly LayerStress[];
}

/** Shear stress in the core, positive magnitudes for a positive shear force. */
export interface CoreShearStress {
  /** By the simple formula V/(b d) [Pa]. */
  readonly simple: number;
  /** Largest over the core [Pa]. */
  readonly max: number;
  /** Height at which it is largest, from the middle of the core [m]. */
  readonly maxAt: number;
  /** Where the core meets the top face [Pa]. */
  readonly topInterface: number;
  /** Where the core meets the bottom face [Pa]. */
  readonly bottomInterface: number;
}

/**
 * Stresses along a beam that a bending moment makes in faces and core.
 *
 * Formula: σ = −M E (z − zn)/D; thin faces ∓M/(b t d), top face negative for sagging
 *
 * Range: linear, plane sections; the thin form differs by −6 to +36 % from the outer stress over
 * usual sandwiches.
 *
 * Source: Allen (1969), chapter 2, from memory.
 *
 * @param section Section of the beam.
 * @param moment Bending moment, sagging positive [N·m].
 * @returns Stress of each face: outer, at the middle, thin-face form; and of each layer [Pa].
 * @throws {InputError} If the moment is not finite.
 *
 * @example
 * ```ts
 * import { bendingStress, sandwichSection } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const face = { thickness: 0.005, E: 72e9 };
 * const core = { thickness: 0.15, E: 0.8e9, G: 0.3e9 };
 * const section = sandwichSection({ width: 0.2, topFace: face, bottomFace: face, core });
 * const { bottomFace } = bendingStress(section, 3000);
 * assertAlmostEquals(bottomFace.outer / 1e6, 19.0, 0.05);
 * ```
 */
export function bendingStress(section: BeamSection, moment: number): BendingStress {
  checkSection(check, section);
  check.finite("moment", moment, "N·m");
  const { neutralAxis, flexuralRigidity } = section;
  const layers = section.layers.map((layer) => ({
    layer,
    bottom: stressAt(layer, layer.bottom),
    top: stressAt(layer, layer.top),
  }));

  function stressAt(layer: SectionLayer, z: number): number {
    return check.result("stress", -moment * layer.E * (z - neutralAxis) / flexuralRigidity, "Pa");
  }
  const face = (part: SectionLayer["part"], thickness: number, sign: number): FaceStress => {
    const plies = layers.filter(({ layer }) => layer.part === part);
    const outermost = sign < 0 ? plies[plies.length - 1] : plies[0];
    const force = plies.reduce(
      (sum, { layer, bottom, top }) => sum + (bottom + top) / 2 * layer.thickness,
      0,
    );
    return {
      outer: (sign < 0 ? outermost?.top : outermost?.bottom) ?? 0,
      centroid: check.result("face stress", force / thickness, "Pa"),
      thin: check.result(
        "thin-face stress",
        sign * moment / (section.width * thickness * section.centroidDistance),
        "Pa",
      ),
    };
  };
  return Object.freeze({
    topFace: face("top face", section.topThickness, -1),
    bottomFace: face("bottom face", section.bottomThickness, 1),
    layers,
  });
}

/**
 * Shear stress in the core of a beam; without a core, of the bond line between the faces.
 *
 * Formula: simple V/(b d); exact τ(z) = V Q(z)/(D b), Q(z) = b ∫ E (z' − zn) dz' from z to the top
 *
 * Range: linear, plane sections.
 *
 * Source: Allen (1969), chapter 2, from memory.
 *
 * @param section Section of the beam.
 * @param shearForce Shear force [N].
 * @returns Shear stress: simple form, largest over the core and where, at both interfaces [Pa].
 * @throws {InputError} If the shear force is not finite.
 *
 * @example
 * ```ts
 * import { coreShearStress, sandwichSection } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const face = { thickness: 0.002, E: 20e9 };
 * const core = { thickness: 0.02, E: 0, G: 25e6 };
 * const section = sandwichSection({ width: 0.075, topFace: face, bottomFace: face, core });
 * const stress = coreShearStress(section, 1200);
 * assertAlmostEquals(stress.simple, 727272.727272, 1e-3);
 * ```
 */
export function coreShearStress(section: BeamSection, shearForce: number): CoreShearStress {
  checkSection(check, section);
  check.finite("shear force", shearForce, "N");
  const { layers, neutralAxis, flexuralRigidity, width, centroidDistance } = section;
  const half = section.coreThickness / 2;
  // D carries the width once, so V Q/(D b) with Q per unit width needs no width of its own.
  const stressAt = (z: number): number =>
    check.result(
      "shear stress",
      shearForce * firstMoment(layers, z, neutralAxis) / flexuralRigidity,
      "Pa",
    );
  const maxAt = Math.min(Math.max(neutralAxis, -half), half);
  return Object.freeze({
    simple: check.result("shear stress", shearForce / (width * centroidDistance), "Pa"),
    max: stressAt(maxAt),
    maxAt,
    topInterface: stressAt(half),
    bottomInterface: stressAt(-half),
  });
}

/** ∫ E (z' − zn) dz' over the layers above z, per unit width. */
function firstMoment(layers: readonly SectionLayer[], z: number, neutralAxis: number): number {
  let sum = 0;
  for (const { E, bottom, top } of layers) {
    const from = Math.max(bottom, z);
    if (from < top) sum += E * (top - from) * ((top + from) / 2 - neutralAxis);
  }
  return sum;
}
