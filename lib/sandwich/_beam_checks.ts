import type { Checks } from "../check/mod.ts";
import type { BeamSection } from "./beam_section.ts";
import type { BeamSpan } from "./beam_deflection.ts";
import type { BeamLoadCase } from "./beam_load_cases.ts";

/** Refuses a load case or a beam that cannot be meant. */
export function checkBeam(check: Checks, loadCase: BeamLoadCase, beam: BeamSpan): void {
  check.object("load case", loadCase);
  check.oneOf("supports of the load case", loadCase.supports, ["simple", "cantilever", "builtIn"]);
  check.oneOf("load of the load case", loadCase.load, ["points", "uniform"]);
  check.within("load span of the load case", loadCase.loadSpanFraction, { min: 0, max: 0.999 });
  check.finite("moment of the load case", loadCase.moment);
  check.finite("shear force of the load case", loadCase.shearForce);
  for (const place of ["deflection", "deflectionAtLoad"] as const) {
    const { bending, shear } = check.object(`${place} of the load case`, loadCase[place]);
    check.finite(`${place} by bending of the load case`, bending);
    check.finite(`${place} by shear of the load case`, shear);
  }
  check.object("beam", beam);
  check.positive("span", beam.span, "m");
  check.positive("flexural rigidity", beam.flexuralRigidity, "N·m²");
  if (beam.shearStiffness !== "rigid") {
    check.positive("shear stiffness", beam.shearStiffness, "N");
  }
}

/** Refuses a section that no function of this room would give. */
export function checkSection(check: Checks, section: BeamSection): void {
  check.object("section", section);
  check.list("layers of the section", section.layers, 2);
  section.layers.forEach((layer, i) => {
    const name = `layer ${i + 1} of the section`;
    check.object(name, layer);
    check.oneOf(`part of ${name}`, layer.part, ["bottom face", "core", "top face"]);
    check.nonNegative(`modulus of ${name}`, layer.E, "Pa");
    check.nonNegative(`thickness of ${name}`, layer.thickness, "m");
    check.finite(`bottom of ${name}`, layer.bottom, "m");
    check.finite(`top of ${name}`, layer.top, "m");
  });
  check.positive("width of the section", section.width, "m");
  check.positive("bottom face of the section", section.bottomThickness, "m");
  check.nonNegative("core of the section", section.coreThickness, "m");
  check.positive("top face of the section", section.topThickness, "m");
  check.finite("neutral axis of the section", section.neutralAxis, "m");
  check.positive("flexural rigidity of the section", section.flexuralRigidity, "N·m²");
  check.positive("centroid distance of the section", section.centroidDistance, "m");
}
