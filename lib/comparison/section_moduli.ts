import { checksFor, type Fields } from "../check/mod.ts";
import type { BeamSection, SectionLayer } from "../sandwich/mod.ts";
import type { ModuliPair } from "./allowed_moduli.ts";
import type { MeasuredBeam } from "./face_and_core.ts";

const check = checksFor("tell the section's moduli");

/** A predicted section as one beam of two plain faces on a core. */
export interface SectionModuli extends ModuliPair {
  /** Its shape taken as exact, for `allowedModuli`; `measuredModuli` counts how well it is known. */
  readonly beam: MeasuredBeam;
}

const SECTION: Fields = {
  ...{ width: "positive", coreThickness: "positive", centroidDistance: "positive" },
  ...{ topThickness: "positive", bottomThickness: "positive" },
  layers: [{ part: "text", E: "nonNegative", thickness: "positive" }],
};

/**
 * Face modulus and core shear modulus of a predicted section, in the terms in which tests tell them:
 * each face as one layer of the mean modulus of its plies.
 *
 * Formula: E = Σ Ei ti/Σ ti over the plies of the top face; G = S c/(b d²)
 *
 * Range: sandwich sections. Of a face whose plies differ, D is not exactly that of the mean.
 *
 * Source: as `faceAndCore`.
 *
 * @param section Section of the beam, from `predictBending` or `sectionFromStack`.
 * @returns Moduli [Pa] and shape [m].
 * @throws {InputError} If the section has no core.
 *
 * @example
 * ```ts
 * import { sectionModuli } from "@laminate/notebooks/comparison";
 * import { sandwichSection } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const face = { thickness: 0.002, E: 20e9 };
 * const core = { thickness: 0.02, E: 0, G: 25e6 };
 * const section = sandwichSection({ width: 0.075, topFace: face, bottomFace: face, core });
 * assertAlmostEquals(sectionModuli(section).coreG / 1e6, 25, 1e-9);
 * ```
 */
export function sectionModuli(section: BeamSection): SectionModuli {
  const { kind, shearStiffness } = check.object("section", section);
  if (kind !== "sandwich" || shearStiffness === "rigid") {
    check.refuse("section", kind, "must be a sandwich with a core");
  }
  check.shape("section", section, SECTION);
  const { width, coreThickness, topThickness, bottomThickness } = section;
  const exactly = (value: number): { value: number; u: number } => ({ value, u: 0 });
  const top = check.positive("face modulus", meanModulus(section.layers, "top face"), "Pa");
  const d = section.centroidDistance;
  return {
    faceE: top,
    coreG: check.result(
      "shear modulus",
      check.positive("shear stiffness", shearStiffness as number, "N") * coreThickness /
        (width * d * d),
      "Pa",
    ),
    beam: {
      width: exactly(width),
      coreThickness: exactly(coreThickness),
      topThickness: exactly(topThickness),
      bottomThickness: exactly(bottomThickness),
      moduliRatio: check.result(
        "ratio of the moduli",
        meanModulus(section.layers, "bottom face") / top,
      ),
      coreE: meanModulus(section.layers, "core"),
    },
  };
}

function meanModulus(layers: readonly SectionLayer[], part: SectionLayer["part"]): number {
  const own = layers.filter((layer) => layer.part === part);
  const thickness = own.reduce((sum, layer) => sum + layer.thickness, 0);
  check.list(`layers of the ${part}`, own);
  return check.result(
    `modulus of the ${part}`,
    own.reduce((sum, layer) => sum + layer.E * layer.thickness, 0) / thickness,
    "Pa",
  );
}
