import { checksFor } from "../check/mod.ts";
import { checkAngle, checkResult } from "./_checks.ts";
import { sineCosineDeg } from "./_degrees.ts";
import type { LaminateStrain, LaminateStress, PlyStrain, PlyStress } from "./plane_state.ts";
import { turnedStrainToPly, turnedStressToPly } from "./_rotation.ts";

const checkStress = checksFor("turn the stress");
const checkStrain = checksFor("turn the strain");

/**
 * Stress in the axes of a ply, from stress in the axes of the laminate.
 *
 * Formula: σ1 = c² σx + s² σy + 2sc τxy, σ2 = s² σx + c² σy − 2sc τxy,
 * τ12 = sc (σy − σx) + (c² − s²) τxy
 *
 * Range: any stress; angle from −360° to 360°.
 *
 * Source: Mohr's circle; R. M. Jones, Mechanics of Composite Materials, 2nd ed. 1999,
 * section 2.6, from memory.
 *
 * @param stress Stress in the axes of the laminate [Pa].
 * @param angleDeg From x to the 1 direction, positive towards y [deg].
 * @returns Stress in the axes of the ply [Pa].
 * @throws {InputError} If a stress or the angle is not a number, or the angle is beyond a turn.
 *
 * @example Shear is tension along one diagonal
 * ```ts
 * import { stressToPly } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { sigma1, sigma2 } = stressToPly({ sigmaX: 0, sigmaY: 0, tauXY: 1e6 }, 45);
 * assertAlmostEquals(sigma1, 1e6, 1e-6);
 * assertAlmostEquals(sigma2, -1e6, 1e-6);
 * ```
 */
export function stressToPly(stress: LaminateStress, angleDeg: number): PlyStress {
  checkStress.object("stress", stress);
  const { sigmaX, sigmaY, tauXY } = stress;
  checkStress.finite("sigmaX", sigmaX, "Pa");
  checkStress.finite("sigmaY", sigmaY, "Pa");
  checkStress.finite("tauXY", tauXY, "Pa");
  return checkResult(
    checkStress,
    turnedStressToPly(stress, sineCosineDeg(checkAngle(checkStress, angleDeg))),
  );
}

/**
 * Stress in the axes of the laminate, from stress in the axes of a ply.
 *
 * Formula: σx = c² σ1 + s² σ2 − 2sc τ12, σy = s² σ1 + c² σ2 + 2sc τ12,
 * τxy = sc (σ1 − σ2) + (c² − s²) τ12
 *
 * Range: any stress; angle from −360° to 360°.
 *
 * Source: Mohr's circle; R. M. Jones, Mechanics of Composite Materials, 2nd ed. 1999,
 * section 2.6, from memory.
 *
 * @param stress Stress in the axes of the ply [Pa].
 * @param angleDeg From x to the 1 direction, positive towards y [deg].
 * @returns Stress in the axes of the laminate [Pa].
 * @throws {InputError} If a stress or the angle is not a number, or the angle is beyond a turn.
 *
 * @example
 * ```ts
 * import { stressToLaminate } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { sigmaX, sigmaY } = stressToLaminate({ sigma1: 1e6, sigma2: 0, tau12: 0 }, 90);
 * assertAlmostEquals(sigmaX, 0, 1e-9);
 * assertAlmostEquals(sigmaY, 1e6, 1e-9);
 * ```
 */
export function stressToLaminate(stress: PlyStress, angleDeg: number): LaminateStress {
  checkStress.object("stress", stress);
  checkAngle(checkStress, angleDeg);
  const { sigma1, sigma2, tau12 } = stress;
  const turned = stressToPly({ sigmaX: sigma1, sigmaY: sigma2, tauXY: tau12 }, -angleDeg);
  return { sigmaX: turned.sigma1, sigmaY: turned.sigma2, tauXY: turned.tau12 };
}

/**
 * Strain in the axes of a ply, from strain in the axes of the laminate (engineering shear).
 *
 * Formula: ε1 = c² εx + s² εy + sc γxy, ε2 = s² εx + c² εy − sc γxy,
 * γ12 = 2sc (εy − εx) + (c² − s²) γxy
 *
 * Range: small strains; angle from −360° to 360°.
 *
 * Source: R. M. Jones, Mechanics of Composite Materials, 2nd ed. 1999, section 2.6, from memory.
 *
 * @param strain Strain in the axes of the laminate [1].
 * @param angleDeg From x to the 1 direction, positive towards y [deg].
 * @returns Strain in the axes of the ply [1].
 * @throws {InputError} If a strain or the angle is not a number, or the angle is beyond a turn.
 *
 * @example Engineering shear is twice the strain along the diagonal
 * ```ts
 * import { strainToPly } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { epsilon1 } = strainToPly({ epsilonX: 0, epsilonY: 0, gammaXY: 0.002 }, 45);
 * assertAlmostEquals(epsilon1, 0.001, 1e-15);
 * ```
 */
export function strainToPly(strain: LaminateStrain, angleDeg: number): PlyStrain {
  checkStrain.object("strain", strain);
  const { epsilonX, epsilonY, gammaXY } = strain;
  checkStrain.finite("epsilonX", epsilonX);
  checkStrain.finite("epsilonY", epsilonY);
  checkStrain.finite("gammaXY", gammaXY);
  return checkResult(
    checkStrain,
    turnedStrainToPly(strain, sineCosineDeg(checkAngle(checkStrain, angleDeg))),
  );
}

/**
 * Strain in the axes of the laminate, from strain in the axes of a ply (engineering shear).
 *
 * Formula: εx = c² ε1 + s² ε2 − sc γ12, εy = s² ε1 + c² ε2 + sc γ12,
 * γxy = 2sc (ε1 − ε2) + (c² − s²) γ12
 *
 * Range: small strains; angle from −360° to 360°.
 *
 * Source: R. M. Jones, Mechanics of Composite Materials, 2nd ed. 1999, section 2.6, from memory.
 *
 * @param strain Strain in the axes of the ply [1].
 * @param angleDeg From x to the 1 direction, positive towards y [deg].
 * @returns Strain in the axes of the laminate [1].
 * @throws {InputError} If a strain or the angle is not a number, or the angle is beyond a turn.
 *
 * @example
 * ```ts
 * import { strainToLaminate } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { gammaXY } = strainToLaminate({ epsilon1: 0.001, epsilon2: 0, gamma12: 0 }, 45);
 * assertAlmostEquals(gammaXY, 0.001, 1e-15);
 * ```
 */
export function strainToLaminate(strain: PlyStrain, angleDeg: number): LaminateStrain {
  checkStrain.object("strain", strain);
  checkAngle(checkStrain, angleDeg);
  const { epsilon1, epsilon2, gamma12 } = strain;
  const turned = strainToPly(
    { epsilonX: epsilon1, epsilonY: epsilon2, gammaXY: gamma12 },
    -angleDeg,
  );
  return { epsilonX: turned.epsilon1, epsilonY: turned.epsilon2, gammaXY: turned.gamma12 };
}
