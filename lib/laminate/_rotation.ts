/** Turning without checks, for callers that have made them and have the sine at hand. */
import type { SineCosine } from "./_degrees.ts";
import type { LaminateStrain, LaminateStress, PlyStrain, PlyStress } from "./plane_state.ts";

/** See `stressToPly`. */
export function turnedStressToPly(
  { sigmaX, sigmaY, tauXY }: LaminateStress,
  { sine, cosine }: SineCosine,
): PlyStress {
  const [c2, s2, sc] = [cosine * cosine, sine * sine, sine * cosine];
  return {
    sigma1: c2 * sigmaX + s2 * sigmaY + 2 * sc * tauXY,
    sigma2: s2 * sigmaX + c2 * sigmaY - 2 * sc * tauXY,
    tau12: sc * (sigmaY - sigmaX) + (c2 - s2) * tauXY,
  };
}

/** See `strainToPly`. */
export function turnedStrainToPly(
  { epsilonX, epsilonY, gammaXY }: LaminateStrain,
  { sine, cosine }: SineCosine,
): PlyStrain {
  const [c2, s2, sc] = [cosine * cosine, sine * sine, sine * cosine];
  return {
    epsilon1: c2 * epsilonX + s2 * epsilonY + sc * gammaXY,
    epsilon2: s2 * epsilonX + c2 * epsilonY - sc * gammaXY,
    gamma12: 2 * sc * (epsilonY - epsilonX) + (c2 - s2) * gammaXY,
  };
}
