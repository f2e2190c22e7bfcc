import { checksFor } from "../check/mod.ts";
import type { Stack } from "../materials/mod.ts";
import { failureModes, panelStiffness, type SandwichDesign } from "../sandwich/mod.ts";
import type { JudgedMake } from "./supported_panel.ts";

const check = checksFor("resize the panel");

/**
 * A sandwich with other thicknesses of faces and core, its materials as they are: the one cell of
 * a map over both.
 *
 * Formula: plies of each face stretched alike until they are as thick as asked
 *
 * Range: one core; a face of so many plies that only its thickness counts.
 *
 * Source: definition.
 *
 * @param stack The stack, mould side first.
 * @param design The same as a sandwich.
 * @param sizes Thickness of each face and of the core [m].
 * @returns Stiffness and design with those thicknesses.
 * @throws {InputError} If a thickness is not above 0 or stack and design have not the same core.
 *
 * @example
 * ```ts
 * import { layupDesign, layupStack, resizedPanel } from "@laminate/notebooks/comparison";
 * import { readPart } from "@laminate/notebooks/records";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const sole = (await readPart("data/sole-panels")).layups.get("sole")!;
 * const stack = layupStack(sole);
 * const sizes = { face: 0.001, core: 0.02 };
 * const { design } = resizedPanel(stack, layupDesign(sole, stack)!, sizes);
 * assertAlmostEquals(design.topFace.thickness, 0.001, 1e-15);
 * ```
 */
export function resizedPanel(
  stack: Stack,
  design: SandwichDesign,
  sizes: {
    /** Thickness of each face [m]. */
    readonly face: number;
    /** Thickness of the core [m]. */
    readonly core: number;
  },
): JudgedMake {
  check.list("stack", stack, 3).forEach((ply, i) => check.object(`ply ${i + 1}`, ply));
  check.object("design", design);
  check.object("sizes", sizes);
  const face = check.positive("thickness of a face", sizes.face, "m");
  const core = check.positive("thickness of the core", sizes.core, "m");
  const bottom = check.object("bottom face", design.bottomFace).thickness;
  const top = check.object("top face", design.topFace).thickness;
  const middle = check.object("core", design.core).thickness;
  const at = stack.findIndex((ply, i) => i > 0 && ply?.thickness === middle);
  if (!(at > 0 && at < stack.length - 1)) {
    check.refuse("stack", stack, "must have the design's core inside");
  }
  const resized = stack.map((ply, i) => ({
    ...ply,
    thickness: i === at ? core : ply.thickness * face / (i < at ? bottom : top),
  }));
  const sized = Object.freeze({
    topFace: { ...design.topFace, thickness: face },
    bottomFace: { ...design.bottomFace, thickness: face },
    core: { ...design.core, thickness: core },
  });
  // With nothing acting it only looks whether the design can be meant.
  failureModes(sized, {});
  return Object.freeze({ stiffness: panelStiffness(resized, { core: at }), design: sized });
}
