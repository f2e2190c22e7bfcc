/**
 * What does this stack do? Stiffness of a lamina and of a laminate, its engineering constants and
 * free expansion, the stress and strain in each ply, and which ply breaks first.
 *
 * Start with {@link stackOfCode} for a stack as the trade writes it, {@link engineeringConstants} for
 * its moduli, {@link laminateResponse} for what a load does to each ply, {@link firstPlyFailure} for
 * how much it bears, and {@link analyseBatch} for many stacks at once.
 *
 * Plies are listed mould side first; z runs from −h/2 at the mould face to +h/2 at the bag face.
 * Shear strain is engineering shear; angles run from x to the fibre, positive towards y.
 *
 * @example Plies along and across, without contraction: the mean of both moduli
 * ```ts
 * import { engineeringConstants, stackOfCode } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const lamina = {
 *   name: "one-way glass", E1: 40e9, E2: 10e9, G12: 4e9, nu12: 0, G13: 4e9, G23: 3e9,
 *   density: 1900, alpha1: 7e-6, alpha2: 25e-6,
 * };
 * const stack = stackOfCode("[0/90]s", { ply: { lamina, thickness: 0.25e-3 } });
 * assertAlmostEquals(engineeringConstants(stack).membraneFree.Ex, 25e9, 1e-3);
 * ```
 *
 * @module
 */
export type { Lamina, LaminaStrengths, Ply, Stack } from "../materials/mod.ts";
export * from "./plane_state.ts";
export * from "./lamina_stiffness.ts";
export * from "./invariants.ts";
export * from "./rotation.ts";
export * from "./rotated_lamina.ts";
export * from "./laminate_stiffness.ts";
export * from "./engineering_constants.ts";
export * from "./thickness_and_mass.ts";
export * from "./laminate_expansion.ts";
export * from "./solid.ts";
export * from "./response.ts";
export * from "./orientation_code.ts";
export * from "./orientation_code_layers.ts";
export * from "./orientation_code_write.ts";
export * from "./stack_differences.ts";
export * from "./warp.ts";
export * from "./out_of_flat.ts";
export * from "./ply_orders.ts";
export * from "./moduli_by_direction.ts";
export * from "./transverse_shear.ts";
export * from "./failure_verdict.ts";
export * from "./failure_limits.ts";
export * from "./failure_quadratic.ts";
export * from "./failure_hashin.ts";
export * from "./failure_puck.ts";
export * from "./failure_first_ply.ts";
export * from "./failure_utilisation.ts";
export * from "./failure_progress.ts";
export * from "./failure_envelope.ts";
export * from "./failure_strengths.ts";
export * from "./failure_criterion.ts";
export * from "./failure_explained.ts";
export * from "./failure_fitting.ts";
export * from "./failure_coupons.ts";
export * from "./coupon_tension.ts";
export * from "./batch.ts";
export * from "./batch_arrays.ts";
export * from "./batch_async.ts";
