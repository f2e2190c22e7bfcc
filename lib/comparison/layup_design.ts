import { checksFor } from "../check/mod.ts";
import { engineeringConstants, firstPlyFailure, laminateThickness } from "../laminate/mod.ts";
import type { Core, Stack } from "../materials/mod.ts";
import type { LayupRecord } from "../records/mod.ts";
import {
  type CoreDesign,
  coreInPlace,
  type FaceDesign,
  type SandwichDesign,
} from "../sandwich/mod.ts";
import { checkLayup } from "./_layup_checks.ts";

const check = checksFor("take the lay-up for a sandwich");

/**
 * A lay-up as a sandwich with what its faces and core stand, for `failureModes`: the bag side is
 * the top face. Faces of several plies count as one sheet.
 *
 * Formula: face moduli those of its plies held flat, ν = √(νxy νyx); strengths those at which its
 * first ply fails by maximum stress, over the thickness; a core that lies neither along x nor y
 * counts with the smaller of its L and W figures both ways
 *
 * Range: one core with plies on both sides
 *
 * Source: `engineeringConstants`, `firstPlyFailure`; catalogue rows for the core.
 *
 * @param layup The schedule, materials filled in.
 * @param stack Its stack, such as that of `layupStack`.
 * @returns The sandwich; null where the lay-up has no core, or several, or a core outside.
 * @throws {InputError} If the stack has not the schedule's layers, or a face has no strengths.
 *
 * @example
 * ```ts
 * import { layupDesign, layupStack } from "@laminate/notebooks/comparison";
 * import { readPart } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const { layups } = await readPart("data/sole-panels");
 * const sole = layups.get("sole")!;
 * assertEquals(layupDesign(sole, layupStack(sole))!.core.thickness, 0.01);
 * const bracket = layups.get("bracket")!;
 * assertEquals(layupDesign(bracket, layupStack(bracket)), null);
 * ```
 */
export function layupDesign(layup: LayupRecord, stack: Stack): SandwichDesign | null {
  checkLayup(check, layup);
  check.list("stack", stack);
  if (stack.length !== layup.layers.length) {
    check.refuse("stack", stack, `must have the ${layup.layers.length} layers of the schedule`);
  }
  const places = layup.layers.flatMap(({ kind }, i) => kind === "core" ? [i] : []);
  const [at] = places;
  if (places.length !== 1 || at === undefined || at === 0 || at === stack.length - 1) return null;
  const layer = layup.layers[at]!;
  if (layer.kind !== "core") return null;
  return Object.freeze({
    topFace: faceOf(stack.slice(at + 1)),
    bottomFace: faceOf(stack.slice(0, at)),
    core: coreAt(layer.core, stack[at]!.thickness, layer.angleDeg),
  });
}

function faceOf(plies: Stack): FaceDesign {
  const { Ex, Ey, nuxy, nuyx } = engineeringConstants(plies).membraneHeldFlat;
  const thickness = laminateThickness(plies);
  const strength = (load: { readonly Nx?: number; readonly Ny?: number; readonly Nxy?: number }) =>
    firstPlyFailure(plies, load, { criterion: "maximum stress" }).ratio! / thickness;
  return Object.freeze({
    thickness,
    Ex,
    Ey,
    nu: Math.sqrt(Math.max(0, nuxy * nuyx)),
    tensileX: strength({ Nx: 1 }),
    tensileY: strength({ Ny: 1 }),
    compressiveX: strength({ Nx: -1 }),
    compressiveY: strength({ Ny: -1 }),
    // Plies askew stand one way of shear better than the other.
    shearXY: Math.min(strength({ Nxy: 1 }), strength({ Nxy: -1 })),
  });
}

function coreAt(core: Core, thickness: number, angleDeg: number): CoreDesign {
  if (angleDeg % 180 === 0) return coreInPlace(core, thickness, "x");
  if (angleDeg % 90 === 0) return coreInPlace(core, thickness, "y");
  const modulus = Math.min(core.inPlaneModulusL, core.inPlaneModulusW);
  const shear = Math.min(core.shearModulusL, core.shearModulusW);
  const strength = Math.min(core.shearStrengthL, core.shearStrengthW);
  return coreInPlace(
    {
      ...core,
      inPlaneModulusL: modulus,
      inPlaneModulusW: modulus,
      shearModulusL: shear,
      shearModulusW: shear,
      shearStrengthL: strength,
      shearStrengthW: strength,
    },
    thickness,
    "x",
  );
}
