import { checksFor } from "../check/mod.ts";
import type { LaminaStrengths } from "../materials/mod.ts";
import { checkedVerdict, checkStrengths, stressState } from "./_failure_checks.ts";
import { verdictOf } from "./_failure_surface.ts";
import { hashinSurface } from "./_failure_surfaces.ts";
import type { FailureVerdict } from "./failure_verdict.ts";
import type { PlyStress } from "./plane_state.ts";

const check = checksFor("apply the Hashin criterion");

/** Strengths of a unidirectional ply as Hashin's criterion needs them, positive. */
export interface HashinStrengths extends LaminaStrengths {
  /** Transverse shear, in the 2-3 plane; no test gives it easily, Yc/2 is a usual guess [Pa]. */
  readonly S23: number;
}

/**
 * Hashin's criterion of 1980 in plane stress: fibre and matrix, tension and compression, each with
 * a condition of its own.
 *
 * Formula: σ1 ≥ 0: (σ1/Xt)² + w (τ12/S)² = 1; σ1 < 0: |σ1|/Xc = 1;
 * σ2 ≥ 0: (σ2/Yt)² + (τ12/S)² = 1;
 * σ2 < 0: (σ2/2S23)² + [(Yc/2S23)² − 1] σ2/Yc + (τ12/S)² = 1; R is the smallest, index = 1/R
 *
 * Range: unidirectional plies; w, the share of shear in fibre tension, 1 in the paper and 0 where
 * it is thought harsh
 *
 * Source: Z. Hashin, Failure criteria for unidirectional fiber composites, J. Appl. Mech. 47
 * (1980) 329, from memory
 *
 * @param stress Stress in ply axes [Pa].
 * @param strengths Strengths, positive [Pa].
 * @param shearInFibreTension w, 0 to 1; 1 if left out [1].
 * @returns Strength ratio [1], index [1] and mode.
 * @throws {InputError} If a stress is not finite, a strength not above 0 or the share not within
 * 0 to 1.
 *
 * @example
 * ```ts
 * import { hashin } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals, assertEquals } from "@std/assert";
 *
 * const strengths = { Xt: 800e6, Xc: 600e6, Yt: 40e6, Yc: 120e6, S: 60e6, S23: 50e6 };
 * const { ratio, mode } = hashin({ sigma1: 0, sigma2: -60e6, tau12: 0 }, strengths);
 * assertAlmostEquals(ratio!, 2, 1e-14);
 * assertEquals(mode, "2c");
 * ```
 */
export function hashin(
  stress: PlyStress,
  strengths: HashinStrengths,
  shearInFibreTension = 1,
): FailureVerdict {
  checkStrengths(check, strengths);
  check.positive("S23", strengths.S23, "Pa");
  check.fraction("share of shear in fibre tension", shearInFibreTension);
  const state = stressState(check, stress);
  return checkedVerdict(check, verdictOf(hashinSurface(strengths, shearInFibreTension), state));
}
