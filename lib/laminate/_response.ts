/** The response of a stack without checks, for callers that have made them. */
import type { Ply, Stack } from "../materials/mod.ts";
import { multiply, solve } from "../numeric/mod.ts";
import { sineCosineDeg } from "./_degrees.ts";
import { type EnvironmentChange, freeForcesOf, freeStrainOf } from "./_free_strain.ts";
import { reducedStiffnessOf, rotatedExpansionOf } from "./_lamina.ts";
import type { Curvature, ForcesAndMoments, LaminateStrain } from "./plane_state.ts";
import type { LaminateLoad, LaminateResponse, PlyPoint, PlyResponse } from "./response.ts";
import { turnedStrainToPly, turnedStressToPly } from "./_rotation.ts";
import { abdMatrix, plyHeightsOf, stiffnessSumsOf } from "./_stack.ts";

/** The six forces, in the order of the matrix. */
export const FORCES = ["Nx", "Ny", "Nxy", "Mx", "My", "Mxy"] as const;

/** The six strains, in the order of the matrix. */
export const STRAINS = [
  ...["epsilonX", "epsilonY", "gammaXY"] as const,
  ...["kappaX", "kappaY", "kappaXY"] as const,
] as const;

/** See `laminateResponse`. */
export function responseOf(
  stack: Stack,
  load: LaminateLoad,
  change: EnvironmentChange,
): LaminateResponse {
  const stiffness = abdMatrix(stiffnessSumsOf(stack));
  const freeForces = freeForcesOf(stack, change);
  const strains = strainsUnder(load, stiffness, freeForces);
  const held = multiply(stiffness, strains, 6);
  const forces = FORCES.map((name, i) =>
    load[STRAINS[i]!] === undefined ? load[name] ?? 0 : held[i]! - freeForces[i]!
  );
  const [epsilonX, epsilonY, gammaXY, kappaX, kappaY, kappaXY] = strains as unknown as Six;
  const midPlaneStrain = { epsilonX, epsilonY, gammaXY };
  const curvature = { kappaX, kappaY, kappaXY };
  return {
    midPlaneStrain,
    curvature,
    forces: namedForces(forces),
    freeForces: namedForces(freeForces),
    plies: pliesUnder(stack, { midPlaneStrain, curvature, change }),
  };
}

type Six = readonly [number, number, number, number, number, number];

function namedForces(values: ArrayLike<number>): ForcesAndMoments {
  const [Nx, Ny, Nxy, Mx, My, Mxy] = values as unknown as Six;
  return { Nx, Ny, Nxy, Mx, My, Mxy };
}

/** Solves for the strains that are not imposed; an imposed one moves to the right-hand side. */
function strainsUnder(
  load: LaminateLoad,
  stiffness: Float64Array,
  freeForces: Float64Array,
): Float64Array {
  const strains = Float64Array.from(STRAINS, (name) => load[name] ?? 0);
  const unknown = [0, 1, 2, 3, 4, 5].filter((i) => load[STRAINS[i]!] === undefined);
  if (unknown.length === 0) return strains;
  const imposed = multiply(stiffness, strains, 6);
  const solution = solve(
    unknown.flatMap((i) => unknown.map((j) => stiffness[6 * i + j]!)),
    unknown.map((i) => (load[FORCES[i]!] ?? 0) + freeForces[i]! - imposed[i]!),
  );
  unknown.forEach((i, place) => strains[i] = solution[place]!);
  return strains;
}

interface Shape {
  readonly midPlaneStrain: LaminateStrain;
  readonly curvature: Curvature;
  readonly change: EnvironmentChange;
}

function pliesUnder(stack: Stack, { midPlaneStrain, curvature, change }: Shape): PlyResponse[] {
  const heights = plyHeightsOf(stack);
  return stack.map((ply, k) => {
    const pointAt = (z: number): PlyPoint =>
      plyPoint(z, {
        epsilonX: midPlaneStrain.epsilonX + z * curvature.kappaX,
        epsilonY: midPlaneStrain.epsilonY + z * curvature.kappaY,
        gammaXY: midPlaneStrain.gammaXY + z * curvature.kappaXY,
      }, { ply, change });
    const { bottom, middle, top } = heights[k]!;
    return { ply, bottom: pointAt(bottom), middle: pointAt(middle), top: pointAt(top) };
  });
}

function plyPoint(
  z: number,
  totalStrain: LaminateStrain,
  { ply: { lamina, angleDeg }, change }: { readonly ply: Ply; readonly change: EnvironmentChange },
): PlyPoint {
  const { sine, cosine } = sineCosineDeg(angleDeg);
  const free = rotatedExpansionOf(freeStrainOf(lamina, change), angleDeg);
  const mechanicalStrain = {
    epsilonX: totalStrain.epsilonX - free.alphaX,
    epsilonY: totalStrain.epsilonY - free.alphaY,
    gammaXY: totalStrain.gammaXY - free.alphaXY,
  };
  const mechanicalPlyStrain = turnedStrainToPly(mechanicalStrain, { sine, cosine });
  const { epsilon1, epsilon2, gamma12 } = mechanicalPlyStrain;
  const { Q11, Q12, Q22, Q66 } = reducedStiffnessOf(lamina);
  const plyStress = {
    sigma1: Q11 * epsilon1 + Q12 * epsilon2,
    sigma2: Q12 * epsilon1 + Q22 * epsilon2,
    tau12: Q66 * gamma12,
  };
  const turnedBack = turnedStressToPly(
    { sigmaX: plyStress.sigma1, sigmaY: plyStress.sigma2, tauXY: plyStress.tau12 },
    { sine: -sine, cosine },
  );
  return {
    z,
    totalStrain,
    totalPlyStrain: turnedStrainToPly(totalStrain, { sine, cosine }),
    mechanicalStrain,
    mechanicalPlyStrain,
    stress: { sigmaX: turnedBack.sigma1, sigmaY: turnedBack.sigma2, tauXY: turnedBack.tau12 },
    plyStress,
  };
}
