import { checksFor } from "../check/mod.ts";
import type { BeamSection, SectionLayer } from "./beam_section.ts";

const check = checksFor("compute the beam section");

/** Where the equations of a section come from. */
const SOURCE =
  "H. G. Allen, Analysis and Design of Structural Sandwich Panels (1969), chapter 2; " +
  "S = G b d²/c as in ASTM D7250; from memory, derived anew in the tests";

/** Largest face over core for which S = G b d²/c was compared with elasticity. */
const THICKEST_FACE_COMPARED = 0.3;

/** A layer that has no place yet. */
export type UnplacedLayer = Pick<SectionLayer, "part" | "E" | "thickness">;

/** What the layers do not carry. */
export interface SectionFrame {
  readonly width: number;
  readonly coreG: number;
}

/** The section of checked layers from the bottom up, one of which is the core. */
export function assembleSection(
  { width, coreG }: SectionFrame,
  unplaced: readonly UnplacedLayer[],
): BeamSection {
  const [t1, Et1] = sums(unplaced, "bottom face");
  const [c] = sums(unplaced, "core");
  const [t2, Et2] = sums(unplaced, "top face");
  const layers = place(unplaced, c, t1);
  const { EA, neutralAxis, D } = rigidity(layers);
  const d = c + (t1 + t2) / 2;
  const thin = d * d * Et1 * (Et2 / (Et1 + Et2));
  return Object.freeze({
    kind: c > 0 ? "sandwich" : "solid",
    width,
    layers,
    bottomThickness: t1,
    coreThickness: c,
    topThickness: t2,
    neutralAxis: check.result("neutral axis", neutralAxis, "m"),
    flexuralRigidity: check.result("flexural rigidity", width * D, "N·m²"),
    thinFaceRigidity: check.result("thin-face rigidity", width * thin, "N·m²"),
    centroidDistance: d,
    shearStiffness: c > 0
      ? check.result("shear stiffness", coreG * width * d * d / c, "N")
      : "rigid",
    axialStiffness: check.result("axial stiffness", width * EA, "N"),
    notes: sectionNotes(Math.max(t1, t2), c),
    source: SOURCE,
  });
}

/** Thickness and modulus times thickness of one part. */
function sums(
  layers: readonly UnplacedLayer[],
  part: SectionLayer["part"],
): readonly [thickness: number, Et: number] {
  let thickness = 0;
  let Et = 0;
  for (const layer of layers) {
    if (layer.part !== part) continue;
    thickness += layer.thickness;
    Et += layer.E * layer.thickness;
  }
  return [thickness, Et];
}

function place(
  layers: readonly UnplacedLayer[],
  core: number,
  bottomFace: number,
): readonly SectionLayer[] {
  let z = -core / 2 - bottomFace;
  return layers.map((layer) => {
    // The core's surfaces are set, not summed up, so that they are symmetric to the last digit.
    const bottom = layer.part === "core" ? -core / 2 : z;
    const top = layer.part === "core" ? core / 2 : bottom + layer.thickness;
    z = top;
    return Object.freeze({ ...layer, bottom, top });
  });
}

/** EA, neutral axis and D of layers, per unit width. */
function rigidity(
  layers: readonly SectionLayer[],
): { readonly EA: number; readonly neutralAxis: number; readonly D: number } {
  let EA = 0;
  let moment = 0;
  for (const { E, thickness, bottom, top } of layers) {
    EA += E * thickness;
    moment += E * thickness * (top + bottom) / 2;
  }
  const neutralAxis = moment / EA;
  let D = 0;
  for (const { E, thickness, bottom, top } of layers) {
    const arm = (top + bottom) / 2 - neutralAxis;
    D += E * thickness * (thickness * thickness / 12 + arm * arm);
  }
  return { EA, neutralAxis, D };
}

function sectionNotes(face: number, core: number): readonly string[] {
  if (core === 0) return ["no core: a solid section, deflection by shear is not counted"];
  return face > THICKEST_FACE_COMPARED * core
    ? [
      "a face is thicker than 0.3 of the core: S = G b d²/c overstates the shear stiffness by " +
      "more than 4 %",
    ]
    : [];
}
