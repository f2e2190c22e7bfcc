import type { Checks } from "../check/mod.ts";
import type { BeamSpan } from "./beam_deflection.ts";
import type { BeamLoadCase } from "./beam_load_cases.ts";

/** Refuses a load case or a beam that cannot be meant. */
export function checkBeam(check: Checks, loadCase: BeamLoadCase, beam: BeamSpan): void {
  check.object("load case", loadCase);
  check.object("load case's deflection", loadCase.deflection);
  check.object("beam", beam);
  check.positive("span", beam.span, "m");
  check.positive("flexural rigidity", beam.flexuralRigidity, "N·m²");
  if (beam.shearStiffness !== "rigid") {
    check.positive("shear stiffness", beam.shearStiffness, "N");
  }
}
