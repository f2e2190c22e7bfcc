/**
 * What does this mix of fibre and resin do?
 *
 * @module
 */
export * from "./two_phase.ts";
export * from "./rule_of_mixtures.ts";
export * from "./halpin_tsai.ts";
export * from "./hashin_hill.ts";
export * from "./expansion.ts";
export * from "./packing.ts";
export * from "./longitudinal_strength.ts";
export * from "./transverse_strength.ts";
export * from "./form_factors.ts";
export * from "./lamina_of_fibres.ts";
export * from "./cured_strengths.ts";
export * from "./ply_recipe.ts";
export * from "./cured_ply.ts";
export type { PlyWorkingStep } from "./ply_working.ts";
export * from "./core_lamina.ts";
export * from "./glass_mat_defaults.ts";
