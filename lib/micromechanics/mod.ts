/**
 * What does this mix of fibre and resin do? Stiffness, expansion and strength of a ply from its fibre,
 * its resin and the fibre fraction reached.
 *
 * Start with {@link curedPly}, which makes the ply of a cloth of the catalogue;
 * {@link longitudinalModulus}, {@link transverseModulusHalpinTsai} and {@link hashinHillBounds} are
 * the steps behind it, each with its source.
 *
 * @example Along the fibres, half glass and half resin
 * ```ts
 * import {
 *   fibreLoadShare,
 *   isotropicFibre,
 *   longitudinalModulus,
 * } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const mix = {
 *   fibre: isotropicFibre({ E: 72e9, nu: 0.2 }),
 *   resin: { E: 3.2e9, nu: 0.35 },
 *   fibreVolumeFraction: 0.5,
 * };
 * assertAlmostEquals(longitudinalModulus(mix), 37.6e9, 1);
 * assertAlmostEquals(fibreLoadShare(mix), 72 / 75.2, 1e-12);
 * ```
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
