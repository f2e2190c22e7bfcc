/**
 * How far does it bend, and what gives first? Beams, strips and panels with a core, and solid ones.
 *
 * Start with {@link sandwichSection} or {@link sectionFromStack} for a beam's section,
 * {@link deflectBeam} for how far it bends, {@link failureLoads} for what gives first,
 * {@link solvePanel} for a panel held at its edges, and {@link panelFailure} for what gives there.
 *
 * Beams: z counts up from the middle of the core, load and deflection down, sagging moments and
 * tension positive, P the total load. Panels: deflection positive with the load, moments and
 * forces for each metre of width, Q the plain shear force.
 *
 * @example A strip of glass on foam, 75 mm wide, 0.5 m between the supports, 100 N in the middle
 * ```ts
 * import { beamLoadCases, deflectBeam, sandwichSection } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const face = { thickness: 0.0004, E: 19e9 };
 * const section = sandwichSection({
 *   width: 0.075,
 *   topFace: face,
 *   bottomFace: face,
 *   core: { thickness: 0.01, E: 71e6, G: 27e6 },
 * });
 * const { total } = deflectBeam(beamLoadCases.threePoint, { ...section, span: 0.5, totalLoad: 100 });
 * // By hand from the dimensions: D = 31.28 N m², S = 21.90 kN, so 8.32 mm by bending, 0.57 by shear.
 * assertAlmostEquals(total, 8.89e-3, 5e-6);
 * ```
 *
 * @module
 */
export type {
  CoreKind,
  CoreProperties,
  Lamina,
  LaminaStrengths,
  Ply,
  Stack,
} from "../materials/mod.ts";
export type {
  LaminateStrain,
  LaminateStress,
  PlyPoint,
  PlyResponse,
  PlyStrain,
  PlyStress,
} from "../laminate/mod.ts";
export * from "./beam_section.ts";
export * from "./core_left.ts";
export * from "./stack_section.ts";
export * from "./beam_load_cases.ts";
export * from "./beam_deflection.ts";
export * from "./beam_along_span.ts";
export * from "./beam_stress.ts";
export * from "./face_stability.ts";
export * from "./local_load.ts";
export * from "./sandwich_design.ts";
export * from "./failure_modes.ts";
export * from "./failure_loads.ts";
export * from "./shaped_section.ts";
export * from "./section_parts.ts";
export * from "./stiffeners.ts";
export * from "./ring.ts";
export * from "./detail_guidance.ts";
export * from "./panel_stiffness.ts";
export * from "./panel.ts";
export * from "./solve_panel.ts";
export * from "./levy.ts";
export * from "./navier.ts";
export * from "./ritz.ts";
export * from "./panel_field.ts";
export * from "./failure_places.ts";
export * from "./panel_failure.ts";
export * from "./panel_frequency.ts";
export * from "./panel_buckling.ts";
export * from "./coupon_bending.ts";
export * from "./strip_frequency.ts";
export * from "./hung_weight.ts";
export * from "./short_beam.ts";
