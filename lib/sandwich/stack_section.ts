import { checksFor } from "../check/mod.ts";
import { rotatedCompliance, rotatedStiffness } from "../laminate/mod.ts";
import type { Ply, Stack } from "../materials/mod.ts";
import { inverse3 } from "../numeric/mod.ts";
import { assembleSection, type UnplacedLayer } from "./_assemble_section.ts";
import type { BeamSection } from "./beam_section.ts";
import { checkPlies, coreIndexOf, transverseModuli } from "./_core_of_stack.ts";

const check = checksFor("compute the beam section of the stack");

/** How a beam is cut from a stack. */
export interface StripOfStack {
  /** Width [m]. */
  readonly width: number;
  /** Which layer is the core, counted from 0 at the mould; found by its softness if not given. */
  readonly coreIndex?: number;
}

/**
 * The exact section of a beam along x, cut from a stack with a core inside. The stack gives the
 * order: mould side is the bottom face.
 *
 * Each face is a laminate that may contract sideways and shear as a whole; each of its plies
 * counts with the modulus it has in there, so that Σ E t of a face is its A⁻¹-based modulus times
 * its thickness.
 *
 * Formula: in a face with a = A⁻¹, Ei = Q̄11 + (a12/a11) Q̄12 + (a16/a11) Q̄16; core E = 1/S̄11,
 * G = G13 cos² + G23 sin²; then as `sandwichSection`
 *
 * Range: narrow beams. The core is the layer with over 0.9 of Σ t/G, and lies inside.
 *
 * Source: classical lamination theory for each face; Allen (1969), chapter 2, from memory.
 *
 * @param stack Plies and core, mould side first.
 * @param strip Width [m], and which layer is the core if that is not plain.
 * @returns The section, layer by layer.
 * @throws {InputError} If a ply cannot be meant, there is no core inside, or the width is not
 * above 0.
 *
 * @example
 * ```ts
 * import { sectionFromStack } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const common = { nu12: 0, density: 1800, alpha1: 1e-5, alpha2: 1e-5 };
 * const glass = { name: "cloth", E1: 20e9, E2: 20e9, G12: 4e9, G13: 3e9, G23: 3e9, ...common };
 * const foam = { name: "foam", E1: 60e6, E2: 60e6, G12: 25e6, G13: 25e6, G23: 25e6, ...common };
 * const face = { lamina: glass, thickness: 0.001, angleDeg: 0 };
 * const stack = [face, { lamina: foam, thickness: 0.01, angleDeg: 0 }, face];
 * const { shearStiffness } = sectionFromStack(stack, { width: 0.1 });
 * assertAlmostEquals(shearStiffness as number, 25e6 * 0.1 * 0.011 ** 2 / 0.01, 1e-6);
 * ```
 */
export function sectionFromStack(stack: Stack, strip: StripOfStack): BeamSection {
  checkPlies(check, stack, 3);
  check.object("strip", strip);
  check.positive("width", strip.width, "m");
  const coreIndex = coreIndexOf(check, stack, strip.coreIndex);
  const core = stack[coreIndex] as Ply;
  return assembleSection({ width: strip.width, coreG: transverseModuli(core).Gxz }, [
    ...faceLayers(stack.slice(0, coreIndex), "bottom face"),
    {
      part: "core",
      E: 1 / rotatedCompliance(core.lamina, core.angleDeg).S11,
      thickness: core.thickness,
    },
    ...faceLayers(stack.slice(coreIndex + 1), "top face"),
  ]);
}

/**
 * The section of a beam along x, cut from a stack without a core: a solid laminate. Shear is not
 * counted. z counts up from the middle of the thickness.
 *
 * Formula: as `sectionFromStack`, the whole stack as one laminate
 *
 * Range: narrow beams of solid laminate, longer than some 20 times their thickness.
 *
 * Source: as `sectionFromStack`.
 *
 * @param stack Plies, mould side first.
 * @param width Width [m].
 * @returns The section, of kind "solid".
 * @throws {InputError} If a ply cannot be meant or the width is not above 0.
 *
 * @example
 * ```ts
 * import { solidSectionFromStack } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const glass = {
 *   name: "cloth", E1: 20e9, E2: 20e9, G12: 4e9, nu12: 0.1, G13: 3e9, G23: 3e9,
 *   density: 1800, alpha1: 15e-6, alpha2: 15e-6,
 * };
 * const section = solidSectionFromStack([{ lamina: glass, thickness: 0.003, angleDeg: 0 }], 0.05);
 * assertAlmostEquals(section.flexuralRigidity, 20e9 * 0.05 * 0.003 ** 3 / 12, 1e-12);
 * ```
 */
export function solidSectionFromStack(stack: Stack, width: number): BeamSection {
  checkPlies(check, stack, 1);
  check.positive("width", width, "m");
  const layers = faceLayers(stack, "bottom face");
  const half = layers.reduce((sum, layer) => sum + layer.thickness, 0) / 2;
  let below = 0;
  const split = layers.flatMap((layer): UnplacedLayer[] => {
    const lower = Math.min(Math.max(half - below, 0), layer.thickness);
    below += layer.thickness;
    return [
      { ...layer, thickness: lower },
      { ...layer, part: "top face" as const, thickness: layer.thickness - lower },
    ].filter(({ thickness }) => thickness > 0);
  });
  return assembleSection({ width, coreG: 0 }, split);
}

/** The plies of one face, each with the modulus it has inside the face. */
function faceLayers(
  plies: readonly Ply[],
  part: "bottom face" | "top face",
): readonly UnplacedLayer[] {
  const A = new Float64Array(9);
  const stiffness = plies.map(({ lamina, angleDeg, thickness }) => {
    const Q = rotatedStiffness(lamina, angleDeg);
    [Q.Q11, Q.Q12, Q.Q16, Q.Q12, Q.Q22, Q.Q26, Q.Q16, Q.Q26, Q.Q66].forEach((value, i) => {
      A[i] = (A[i] ?? 0) + value * thickness;
    });
    return Q;
  });
  const [a11 = 1, a12 = 0, a16 = 0] = inverse3(A);
  return plies.map(({ thickness }, i) => {
    const { Q11, Q12, Q16 } = stiffness[i] as (typeof stiffness)[number];
    return { part, thickness, E: Q11 + Q12 * (a12 / a11) + Q16 * (a16 / a11) };
  });
}
