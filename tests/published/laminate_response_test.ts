/**
 * Strain and stress of laminates against printed examples. All figures are from memory of the
 * publication named; the tolerance is half of the last digit printed, a little more where the book
 * carried rounded figures on. The book's z points down and its first ply lies at −h/2, so its
 * "top" of a ply is our bottom.
 */
import {
  laminateResponse,
  type PlyPoint,
  transverseShearStiffness,
} from "../../lib/laminate/mod.ts";
import { assertClose } from "../close.ts";
import { GRAPHITE_EPOXY, stackOf } from "../laminate/laminas.ts";

const STACK = stackOf(GRAPHITE_EPOXY, 5e-3, [0, 30, -45]);
const RESPONSE = laminateResponse(STACK, { Nx: 1000, Ny: 1000 });

Deno.test("[0/30/−45] under Nx = Ny = 1000 N/m: strain and curvature (Kaw 2006, example 4.3)", () => {
  const { midPlaneStrain, curvature } = RESPONSE;
  assertClose(midPlaneStrain.epsilonX, 3.123e-7, { absolute: 5e-11 });
  assertClose(midPlaneStrain.epsilonY, 3.492e-6, { absolute: 5e-10 });
  assertClose(midPlaneStrain.gammaXY, -7.598e-7, { absolute: 5e-11 });
  assertClose(curvature.kappaX, 2.971e-5, { absolute: 5e-9 });
  assertClose(curvature.kappaY, -3.285e-4, { absolute: 5e-8 });
  assertClose(curvature.kappaXY, 4.101e-4, { absolute: 5e-8 });
});

Deno.test("[0/30/−45]: strains at nine heights (Kaw 2006, table 4.1)", () => {
  const printed = [
    [8.944e-8, 5.955e-6, -3.836e-6],
    [1.637e-7, 5.134e-6, -2.811e-6],
    [2.380e-7, 4.313e-6, -1.785e-6],
    [2.380e-7, 4.313e-6, -1.785e-6],
    [3.123e-7, 3.492e-6, -7.598e-7],
    [3.866e-7, 2.670e-6, 2.655e-7],
    [3.866e-7, 2.670e-6, 2.655e-7],
    [4.609e-7, 1.849e-6, 1.291e-6],
    [5.352e-7, 1.028e-6, 2.316e-6],
  ];
  const points = RESPONSE.plies.flatMap(({ bottom, middle, top }) => [bottom, middle, top]);
  const strains = points.map(({ totalStrain: e }) => [e.epsilonX, e.epsilonY, e.gammaXY]);
  // Four digits are printed: half of the fourth at the largest.
  assertClose(strains.map(([x]) => x!), printed.map(([x]) => x!), { absolute: 5e-11 });
  assertClose(strains.map(([, y]) => y!), printed.map(([, y]) => y!), { absolute: 5e-10 });
  assertClose(strains.map(([, , s]) => s!), printed.map(([, , s]) => s!), { absolute: 5e-10 });
});

Deno.test("[0/30/−45]: ply stresses and the share of Nx in each ply (Kaw 2006, example 4.3)", () => {
  const [first, second] = RESPONSE.plies;
  const laminate = ({ stress: s }: PlyPoint): number[] => [s.sigmaX, s.sigmaY, s.tauXY];
  const inPly = ({ plyStress: s }: PlyPoint): number[] => [s.sigma1, s.sigma2, s.tau12];
  assertClose(laminate(first!.bottom), [3.351e4, 6.188e4, -2.750e4], { absolute: 5 });
  // τ12: digits from memory, sign from the transformation.
  assertClose(inPly(second!.bottom), [9.973e4, 4.348e4, 1.890e4], { absolute: 5 });
  assertClose(inPly(second!.middle), [1.502e5, 3.356e4, 1.702e4], { absolute: 50 });
  // The book's ply loads are its rounded stresses times 5 mm.
  const shares = RESPONSE.plies.map(({ middle }) => middle.stress.sigmaX * 5e-3);
  assertClose(shares, [223.2, 531.5, 245.2], { absolute: 0.16 });
});

Deno.test("[0/90] cooled by 75 K: forces, strain, curvature (Kaw 2006, example 4.5)", () => {
  const stack = stackOf(GRAPHITE_EPOXY, 5e-3, [0, 90]);
  const { freeForces, midPlaneStrain, curvature } = laminateResponse(stack, {
    temperatureChange: -75,
  });
  assertClose([freeForces.Nx, freeForces.Ny], [-1.131e5, -1.131e5], { absolute: 50 });
  assertClose([freeForces.Mx, freeForces.My], [-153.8, 153.8], { absolute: 0.05 });
  assertClose([midPlaneStrain.epsilonX, midPlaneStrain.epsilonY], [-3.907e-4, -3.907e-4], {
    absolute: 5e-8,
  });
  assertClose([curvature.kappaX, curvature.kappaY], [-0.1276, 0.1276], { absolute: 5e-5 });
});

Deno.test("shear correction of cross-plies (Whitney, J. Applied Mechanics 40 (1973) 302)", () => {
  // E1/E2 = 25, G12 = G13 = E2/2, G23 = E2/5, ν12 = 1/4. Whitney bends a wide plate into a
  // cylinder, we bend a strip: the two differ in the fourth digit, hence 4e-4.
  const lamina = { ...GRAPHITE_EPOXY, E1: 25e9, E2: 1e9, nu12: 0.25 };
  const plies = { ...lamina, G12: 0.5e9, G13: 0.5e9, G23: 0.2e9 };
  const two = transverseShearStiffness(stackOf(plies, 1e-3, [0, 90]));
  assertClose([two.correctionXZ, two.correctionYZ], [0.8212, 0.8212], { absolute: 4e-4 });
  const four = transverseShearStiffness(stackOf(plies, 1e-3, [0, 90, 90, 0]));
  assertClose([four.correctionXZ, four.correctionYZ], [0.5952, 0.7205], { absolute: 4e-4 });
  const one = transverseShearStiffness(stackOf(plies, 1e-3, [0]));
  // Reissner 1945: 5/6 for a homogeneous plate.
  assertClose([one.correctionXZ, one.correctionYZ], [5 / 6, 5 / 6], { relative: 1e-12 });
});

Deno.test("bimetal strip (Timoshenko, J. Optical Society of America 11 (1925) 233)", () => {
  // 1/ρ = 6 (α2 − α1) ΔT (1 + m)² / (h [3 (1 + m)² + (1 + m n)(m² + 1/(m n))]), m = t1/t2,
  // n = E1/E2; strips without Poisson ratio, as a narrow strip behaves. Brass over steel.
  const strip = (E: number, alpha: number): typeof GRAPHITE_EPOXY => ({
    ...GRAPHITE_EPOXY,
    ...{ E1: E, E2: E, G12: E / 2, nu12: 0, alpha1: alpha, alpha2: alpha },
  });
  const [steel, brass] = [strip(200e9, 12e-6), strip(100e9, 19e-6)];
  const [t1, t2, warming] = [0.5e-3, 0.8e-3, 100];
  const [m, n] = [t1 / t2, 2];
  const bracket = 3 * (1 + m) ** 2 + (1 + m * n) * (m * m + 1 / (m * n));
  const expected = 6 * 7e-6 * warming * (1 + m) ** 2 / ((t1 + t2) * bracket);
  const { curvature } = laminateResponse([
    { lamina: steel, thickness: t1, angleDeg: 0 },
    { lamina: brass, thickness: t2, angleDeg: 0 },
  ], { temperatureChange: warming });
  // The plate curves both ways alike, and without Poisson ratio neither hinders the other.
  assertClose([curvature.kappaX, curvature.kappaY], [expected, expected], { relative: 1e-11 });
});
