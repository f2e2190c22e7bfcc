/** Whether a sandwich with what it stands can be meant. */
import type { Checks } from "../check/mod.ts";
import type { SandwichDesign } from "./sandwich_design.ts";

/** Figures of a face that have to be above 0. */
const FACE_FIELDS = [
  "thickness",
  "Ex",
  "Ey",
  "tensileX",
  "tensileY",
  "compressiveX",
  "compressiveY",
  "shearXY",
] as const;

/** Figures of a core that have to be above 0. */
const CORE_FIELDS = [
  "thickness",
  "Ez",
  "Gx",
  "Gy",
  "shearX",
  "shearY",
  "compressive",
] as const;

/** Refuses a design whose figures cannot be meant. */
export function checkDesign(check: Checks, design: SandwichDesign): void {
  check.object("design", design);
  for (const side of ["topFace", "bottomFace"] as const) {
    const face = check.object(side, design[side]);
    for (const field of FACE_FIELDS) check.positive(`${field} of the ${side}`, face[field]);
    check.within(`Poisson ratio of the ${side}`, face.nu, { min: -0.99, max: 0.99 });
  }
  const core = check.object("core", design.core);
  check.oneOf("kind of the core", core.kind, ["foam", "honeycomb", "wood"]);
  for (const field of ["Ex", "Ey", "cellSize"] as const) {
    check.nonNegative(`${field} of the core`, core[field]);
  }
  for (const field of CORE_FIELDS) check.positive(`${field} of the core`, core[field]);
}
