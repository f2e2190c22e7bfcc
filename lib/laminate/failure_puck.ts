import { checksFor } from "../check/mod.ts";
import type { LaminaStrengths } from "../materials/mod.ts";
import { checkedVerdict, checkSlopes, checkStrengths, stressState } from "./_failure_checks.ts";
import { verdictOf } from "./_failure_surface.ts";
import { puckSurface } from "./_failure_surfaces.ts";
import type { FailureVerdict } from "./failure_verdict.ts";
import type { PlyStress } from "./plane_state.ts";

const check = checksFor("apply the Puck criterion");

/** Slopes of the fracture curve at σ2 = 0: how much a push or pull across changes the shear strength. */
export interface PuckSlopes {
  /** On the side of tension, p(⊥∥)⁺ [1]. */
  readonly tension: number;
  /** On the side of compression, p(⊥∥)⁻ [1]. */
  readonly compression: number;
}

/** Usual slopes for glass fibre in epoxy; carbon has about 0.35 and 0.30. */
export const glassPuckSlopes: PuckSlopes = Object.freeze({ tension: 0.3, compression: 0.25 });

/**
 * Puck's criterion in plane stress: fibres fail at their own strength, the matrix between them by
 * one of three cracks, told apart by the plane on which they run.
 *
 * Formula: fibre: σ1/Xt or −σ1/Xc = 1. With p⁺, p⁻ the slopes, RA = (S/2p⁻)(√(1 + 2p⁻Yc/S) − 1),
 * p = p⁻RA/S and τc = S√(1 + 2p):
 * A (σ2 ≥ 0): √[(τ12/S)² + (1 − p⁺Yt/S)²(σ2/Yt)²] + p⁺σ2/S = 1;
 * B (σ2 < 0, |σ2/τ12| ≤ RA/τc): [√(τ12² + (p⁻σ2)²) + p⁻σ2]/S = 1;
 * C (else): {[τ12/(2(1 + p)S)]² + (σ2/Yc)²} Yc/(−σ2) = 1; R is the smallest, index = 1/R
 *
 * Range: unidirectional plies; without the weakening of the matrix by high stress along the
 * fibres; p⁺Yt/S up to 1
 *
 * Source: A. Puck and H. Schürmann, Failure analysis of FRP laminates by means of physically based
 * phenomenological models, Compos. Sci. Technol. 58 (1998) 1045; slopes: A. Puck, J. Kopp and
 * M. Knops, Compos. Sci. Technol. 62 (2002) 371; both from memory
 *
 * @param stress Stress in ply axes [Pa].
 * @param strengths Strengths, positive [Pa].
 * @param slopes Slopes of the fracture curve; glass if left out [1].
 * @returns Strength ratio [1], index [1] and mode.
 * @throws {InputError} If a stress is not finite, a strength not above 0, or a slope not above 0
 * or too large for the strengths.
 *
 * @example
 * ```ts
 * import { puck } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals, assertEquals } from "@std/assert";
 *
 * const strengths = { Xt: 800e6, Xc: 600e6, Yt: 40e6, Yc: 120e6, S: 60e6 };
 * const { ratio, mode } = puck({ sigma1: 0, sigma2: -60e6, tau12: 0 }, strengths);
 * assertAlmostEquals(ratio!, 2, 1e-14);
 * assertEquals(mode, "C");
 * ```
 */
export function puck(
  stress: PlyStress,
  strengths: LaminaStrengths,
  slopes: PuckSlopes = glassPuckSlopes,
): FailureVerdict {
  checkStrengths(check, strengths);
  checkSlopes(check, strengths, slopes);
  const state = stressState(check, stress);
  return checkedVerdict(check, verdictOf(puckSurface(strengths, slopes), state));
}
