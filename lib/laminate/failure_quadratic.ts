import { checksFor } from "../check/mod.ts";
import type { LaminaStrengths } from "../materials/mod.ts";
import {
  checkedVerdict,
  checkInteraction,
  checkStrengths,
  stressState,
} from "./_failure_checks.ts";
import { verdictOf } from "./_failure_surface.ts";
import { hillSurface, hillTensileSurface, wuCoefficients, wuSurface } from "./_failure_surfaces.ts";
import type { FailureVerdict } from "./failure_verdict.ts";
import type { PlyStress } from "./plane_state.ts";

const checkHill = checksFor("apply the Tsai–Hill criterion");
const checkWu = checksFor("apply the Tsai–Wu criterion");

/**
 * Tsai–Hill criterion with the strengths that belong to the sign of each stress.
 *
 * Formula: f = σ1²/X² − σ1σ2/X² + σ2²/Y² + τ12²/S², X by the sign of σ1 (in the product too), Y by
 * the sign of σ2; index = f, R = 1/√f
 *
 * Range: unidirectional plies and cloths; the mode is that of the largest share of a strength
 *
 * Source: R. M. Jones, Mechanics of Composite Materials, 2nd ed. 1999, section 2.9, from memory;
 * by sign: A. K. Kaw, Mechanics of Composite Materials, 2nd ed. 2006, example 2.17, from memory
 *
 * @param stress Stress in ply axes [Pa].
 * @param strengths Strengths, positive [Pa].
 * @returns Strength ratio [1], index f [1] and mode.
 * @throws {InputError} If a stress is not finite or a strength not above 0.
 *
 * @example
 * ```ts
 * import { tsaiHill } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const strengths = { Xt: 800e6, Xc: 600e6, Yt: 40e6, Yc: 120e6, S: 60e6 };
 * const { ratio, index } = tsaiHill({ sigma1: 0, sigma2: 20e6, tau12: 0 }, strengths);
 * assertAlmostEquals(ratio!, 2, 1e-14);
 * assertAlmostEquals(index, 0.25, 1e-14);
 * ```
 */
export function tsaiHill(stress: PlyStress, strengths: LaminaStrengths): FailureVerdict {
  checkStrengths(checkHill, strengths);
  const state = stressState(checkHill, stress);
  return checkedVerdict(checkHill, verdictOf(hillSurface(strengths), state));
}

/**
 * Tsai–Hill criterion in its older form, with the tensile strengths whatever the sign. It throws
 * away what a ply bears in compression across: `tsaiHill` goes first.
 *
 * Formula: f = σ1²/Xt² − σ1σ2/Xt² + σ2²/Yt² + τ12²/S²; index = f, R = 1/√f
 *
 * Range: unidirectional plies and cloths; the mode is that of the largest share of a strength
 *
 * Source: A. K. Kaw, Mechanics of Composite Materials, 2nd ed. 2006, example 2.17, from memory
 *
 * @param stress Stress in ply axes [Pa].
 * @param strengths Strengths, positive; Xc and Yc are not used [Pa].
 * @returns Strength ratio [1], index f [1] and mode.
 * @throws {InputError} If a stress is not finite or a strength not above 0.
 *
 * @example
 * ```ts
 * import { tsaiHillTensile } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const strengths = { Xt: 800e6, Xc: 600e6, Yt: 40e6, Yc: 120e6, S: 60e6 };
 * const { ratio } = tsaiHillTensile({ sigma1: 0, sigma2: -20e6, tau12: 0 }, strengths);
 * assertAlmostEquals(ratio!, 2, 1e-14);
 * ```
 */
export function tsaiHillTensile(stress: PlyStress, strengths: LaminaStrengths): FailureVerdict {
  checkStrengths(checkHill, strengths);
  const state = stressState(checkHill, stress);
  return checkedVerdict(checkHill, verdictOf(hillTensileSurface(strengths), state));
}

/** Coefficients of the Tsai–Wu polynomial. */
export interface TsaiWuCoefficients {
  /** Of σ1 [1/Pa]. */
  readonly F1: number;
  /** Of σ2 [1/Pa]. */
  readonly F2: number;
  /** Of σ1² [1/Pa²]. */
  readonly F11: number;
  /** Of σ2² [1/Pa²]. */
  readonly F22: number;
  /** Of τ12² [1/Pa²]. */
  readonly F66: number;
  /** Of 2σ1σ2 [1/Pa²]. */
  readonly F12: number;
}

/**
 * Coefficients of the Tsai–Wu polynomial from the strengths.
 *
 * Formula: F1 = 1/Xt − 1/Xc, F2 = 1/Yt − 1/Yc, F11 = 1/(Xt Xc), F22 = 1/(Yt Yc), F66 = 1/S²,
 * F12 = f √(F11 F22)
 *
 * Range: f between −1 and 1, both excluded, so that the surface is closed; −½ where no test under
 * stress both ways has measured it
 *
 * Source: S. W. Tsai and H. T. Hahn, Introduction to Composite Materials, 1980, chapter 7, from
 * memory
 *
 * @param strengths Strengths, positive [Pa].
 * @param interaction f, the interaction of σ1 and σ2; −½ if left out [1].
 * @returns Coefficients [1/Pa], [1/Pa²].
 * @throws {InputError} If a strength is not above 0 or the interaction not within its range.
 *
 * @example
 * ```ts
 * import { tsaiWuCoefficients } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { F2 } = tsaiWuCoefficients({ Xt: 800e6, Xc: 600e6, Yt: 40e6, Yc: 120e6, S: 60e6 });
 * assertAlmostEquals(F2 * 1e9, 25 - 25 / 3, 1e-12);
 * ```
 */
export function tsaiWuCoefficients(
  strengths: LaminaStrengths,
  interaction = -0.5,
): TsaiWuCoefficients {
  checkStrengths(checkWu, strengths);
  checkInteraction(checkWu, interaction);
  return checkWu.results(wuCoefficients(strengths, interaction));
}

/**
 * Tsai–Wu criterion: one smooth closed surface through all five strengths.
 *
 * Formula: f = F1σ1 + F2σ2 + F11σ1² + F22σ2² + F66τ12² + 2F12σ1σ2; index = f, R the positive root
 * of (F11σ1² + …) R² + (F1σ1 + F2σ2) R = 1
 *
 * Range: as `tsaiWuCoefficients`; below 1 the index is no share of the load, and it may be below 0
 *
 * Source: S. W. Tsai and H. T. Hahn, Introduction to Composite Materials, 1980, chapter 7, from
 * memory
 *
 * @param stress Stress in ply axes [Pa].
 * @param strengths Strengths, positive [Pa].
 * @param interaction F12/√(F11 F22); −½ if left out [1].
 * @returns Strength ratio [1], index f [1] and mode.
 * @throws {InputError} If a stress is not finite, a strength not above 0 or the interaction not
 * within its range.
 *
 * @example
 * ```ts
 * import { tsaiWu } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const strengths = { Xt: 800e6, Xc: 600e6, Yt: 40e6, Yc: 120e6, S: 60e6 };
 * const { ratio } = tsaiWu({ sigma1: 0, sigma2: -60e6, tau12: 0 }, strengths);
 * assertAlmostEquals(ratio!, 2, 1e-14);
 * ```
 */
export function tsaiWu(
  stress: PlyStress,
  strengths: LaminaStrengths,
  interaction = -0.5,
): FailureVerdict {
  checkStrengths(checkWu, strengths);
  checkInteraction(checkWu, interaction);
  const state = stressState(checkWu, stress);
  return checkedVerdict(checkWu, verdictOf(wuSurface(strengths, interaction), state));
}
