/**
 * How far does it bend, and what gives first?
 *
 * @module
 */
export type { Lamina, LaminaStrengths, Ply, Stack } from "../materials/mod.ts";
export * from "./beam_section.ts";
export * from "./stack_section.ts";
export * from "./beam_load_cases.ts";
export * from "./beam_deflection.ts";
export * from "./beam_along_span.ts";
export * from "./beam_stress.ts";
export * from "./face_stability.ts";
