import { checksFor } from "../check/mod.ts";
import type { LaminaStrengths } from "../materials/mod.ts";
import {
  checkedVerdict,
  checkStrainAllowables,
  checkStrengths,
  strainLimits,
  stressLimits,
  stressState,
} from "./_failure_checks.ts";
import type { StrainAllowables } from "./failure_strengths.ts";
import { type State, verdictOf } from "./_failure_surface.ts";
import { limitSurface } from "./_failure_surfaces.ts";
import type { FailureVerdict } from "./failure_verdict.ts";
import type { PlyStrain, PlyStress } from "./plane_state.ts";

const checkStress = checksFor("apply the maximum stress criterion");
const checkStrain = checksFor("apply the maximum strain criterion");

/**
 * Maximum stress criterion: a ply fails where one of its stresses reaches its strength, whatever
 * the others do.
 *
 * Formula: R = min(X/|σ1|, Y/|σ2|, S/|τ12|), X and Y for the sign of the stress; index = 1/R
 *
 * Range: unsafe where stresses act together; tells the mode clearly
 *
 * Source: R. M. Jones, Mechanics of Composite Materials, 2nd ed. 1999, section 2.9, from memory
 *
 * @param stress Stress in ply axes [Pa].
 * @param strengths Strengths, positive [Pa].
 * @returns Strength ratio [1], index [1] and mode.
 * @throws {InputError} If a stress is not finite or a strength not above 0.
 *
 * @example
 * ```ts
 * import { maximumStress } from "@laminate/notebooks/laminate";
 * import { assertEquals } from "@std/assert";
 *
 * const strengths = { Xt: 800e6, Xc: 600e6, Yt: 40e6, Yc: 120e6, S: 60e6 };
 * const { ratio, mode } = maximumStress({ sigma1: 200e6, sigma2: -60e6, tau12: 10e6 }, strengths);
 * assertEquals(ratio, 2);
 * assertEquals(mode, "2c");
 * ```
 */
export function maximumStress(stress: PlyStress, strengths: LaminaStrengths): FailureVerdict {
  checkStrengths(checkStress, strengths);
  const state = stressState(checkStress, stress);
  return checkedVerdict(checkStress, verdictOf(limitSurface(stressLimits(strengths)), state));
}

/**
 * Maximum strain criterion: a ply fails where one of its strains reaches its allowable, whatever
 * the others do.
 *
 * Formula: R = min(e1/|ε1|, e2/|ε2|, g12/|γ12|), e for the sign of the strain; index = 1/R
 *
 * Range: mechanical strain, without free expansion; unsafe where strains act together
 *
 * Source: R. M. Jones, Mechanics of Composite Materials, 2nd ed. 1999, section 2.9, from memory
 *
 * @param strain Mechanical strain in ply axes, engineering shear [1].
 * @param allowables Strains at failure, positive [1].
 * @returns Strength ratio [1], index [1] and mode.
 * @throws {InputError} If a strain is not finite or an allowable not above 0.
 *
 * @example
 * ```ts
 * import { maximumStrain } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals, assertEquals } from "@std/assert";
 *
 * const allowables = { e1t: 0.02, e1c: 0.015, e2t: 0.004, e2c: 0.012, g12: 0.015 };
 * const { ratio, mode } = maximumStrain({ epsilon1: 0.001, epsilon2: 0.002, gamma12: 0 }, allowables);
 * assertAlmostEquals(ratio!, 2, 1e-14);
 * assertEquals(mode, "2t");
 * ```
 */
export function maximumStrain(strain: PlyStrain, allowables: StrainAllowables): FailureVerdict {
  checkStrainAllowables(checkStrain, allowables);
  const { epsilon1, epsilon2, gamma12 } = checkStrain.object("strain", strain);
  const state: State = [
    checkStrain.finite("epsilon1", epsilon1),
    checkStrain.finite("epsilon2", epsilon2),
    checkStrain.finite("gamma12", gamma12),
  ];
  return checkedVerdict(checkStrain, verdictOf(limitSurface(strainLimits(allowables)), state));
}
