/** Laws that hold for any stack: over random plies, sandwiches with a core of next to no stiffness
 * in the plane included. */
import { assert, assertEquals } from "@std/assert";
import fc from "fast-check";
import {
  engineeringConstants,
  type Lamina,
  laminateCompliance,
  laminateResponse,
  type LaminateStiffness,
  laminateStiffness,
  laminateThickness,
  massPerArea,
  type Ply,
  plyPositions,
  reducedStiffness,
  rotatedCompliance,
  rotatedStiffness,
  solidStiffness,
  type Stack,
  stiffnessInvariants,
  strainToLaminate,
  strainToPly,
  stressToLaminate,
  stressToPly,
  thermalExpansion,
  transverseShearStiffness,
  transverseShearStress,
} from "../../lib/laminate/mod.ts";
import { assertClose } from "../close.ts";

const RUNS = { seed: 20261125, numRuns: 300 };

const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true });

/** Even over the orders of magnitude. */
const orders = (min: number, max: number): fc.Arbitrary<number> =>
  between(Math.log10(min), Math.log10(max)).map((exponent) => 10 ** exponent);

/** Any lamina that is elastically possible, from honeycomb to carbon. */
const laminas: fc.Arbitrary<Lamina> = fc.record({
  E2: orders(1e6, 2e10),
  ratio: orders(0.2, 40),
  shear: between(0.1, 0.8),
  poisson: between(-0.6, 0.9),
  alpha1: between(-1e-6, 3e-5),
  alpha2: between(0, 6e-5),
}).map(({ E2, ratio, shear, poisson, alpha1, alpha2 }) => {
  const G12 = E2 * shear;
  return {
    name: "random",
    E1: E2 * ratio,
    E2,
    G12,
    nu12: poisson * Math.sqrt(ratio),
    G13: G12,
    G23: G12 * 0.7,
    density: 1500,
    alpha1,
    alpha2,
  };
});

const angles = fc.oneof(between(-90, 90), fc.constantFrom(0, 30, 45, 60, 90, -45));
const plies: fc.Arbitrary<Ply> = fc.record({
  lamina: laminas,
  thickness: orders(5e-5, 2e-2),
  angleDeg: angles,
});
const stacks: fc.Arbitrary<Stack> = fc.array(plies, { minLength: 1, maxLength: 6 });

/** Largest entry of each block, the measure of its rounding. */
function sizes(s: LaminateStiffness): { A: number; B: number; D: number } {
  const A = Math.max(s.A11, s.A22, s.A66);
  const D = Math.max(s.D11, s.D22, s.D66);
  return { A, B: Math.sqrt(A * D), D };
}

/** Stiffness of the two stacks is equal, but for rounding and a sign of B. */
function assertEqualStiffness(one: LaminateStiffness, other: LaminateStiffness, signOfB = 1): void {
  const scale = sizes(other);
  for (const name of Object.keys(one) as (keyof LaminateStiffness)[]) {
    const block = name[0] as "A" | "B" | "D";
    assertClose(one[name], other[name] * (block === "B" ? signOfB : 1), {
      absolute: 1e-12 * scale[block],
    }, name);
  }
}

const STIFFNESS_ENTRIES = (s: LaminateStiffness): { A: number[]; D: number[] } => ({
  A: [s.A11, s.A12, s.A16, s.A22, s.A26, s.A66],
  D: [s.D11, s.D12, s.D16, s.D22, s.D26, s.D66],
});

Deno.test("turned there and back, stress and strain are the same; energy does not turn", () => {
  const state = fc.tuple(between(-1, 1), between(-1, 1), between(-1, 1));
  fc.assert(
    fc.property(state, state, between(-180, 180), ([sx, sy, t], [ex, ey, g], angle) => {
      const stress = { sigmaX: sx, sigmaY: sy, tauXY: t };
      const strain = { epsilonX: ex, epsilonY: ey, gammaXY: g };
      const plyStress = stressToPly(stress, angle);
      const plyStrain = strainToPly(strain, angle);
      const absolute = 1e-14;
      assertClose(Object.values(stressToLaminate(plyStress, angle)), [sx, sy, t], { absolute });
      assertClose(Object.values(strainToLaminate(plyStrain, angle)), [ex, ey, g], { absolute });
      const { sigma1, sigma2, tau12 } = plyStress;
      const { epsilon1, epsilon2, gamma12 } = plyStrain;
      assertClose(
        sigma1 * epsilon1 + sigma2 * epsilon2 + tau12 * gamma12,
        sx * ex + sy * ey + t * g,
        { absolute },
      );
    }),
    RUNS,
  );
});

Deno.test("Q̄ by the invariants, which do not turn; S̄ is its inverse", () => {
  fc.assert(
    fc.property(laminas, between(-180, 180), (lamina, angle) => {
      const { U1, U2, U3, U4, U5 } = stiffnessInvariants(lamina);
      const [double, quadruple] = [angle * Math.PI / 90, angle * Math.PI / 45];
      const { Q11, Q12, Q16, Q22, Q26, Q66 } = rotatedStiffness(lamina, angle);
      assertClose([Q11, Q12, Q16, Q22, Q26, Q66], [
        U1 + U2 * Math.cos(double) + U3 * Math.cos(quadruple),
        U4 - U3 * Math.cos(quadruple),
        U2 * Math.sin(double) / 2 + U3 * Math.sin(quadruple),
        U1 - U2 * Math.cos(double) + U3 * Math.cos(quadruple),
        U2 * Math.sin(double) / 2 - U3 * Math.sin(quadruple),
        U5 - U3 * Math.cos(quadruple),
      ], { absolute: 1e-13 * (U1 + Math.abs(U2)) });
      const S = rotatedCompliance(lamina, angle);
      // Row 1 of Q̄ times the columns of S̄; rounding grows with the ratio of the moduli.
      const rounding = 1e-13 * (Math.abs(S.S11) + S.S22 + S.S66) * U1;
      assertClose(Q11 * S.S11 + Q12 * S.S12 + Q16 * S.S16, 1, { absolute: rounding });
      assertClose(Q11 * S.S12 + Q12 * S.S22 + Q16 * S.S26, 0, { absolute: rounding });
      assertClose(Q16 * S.S16 + Q26 * S.S26 + Q66 * S.S66, 1, { absolute: rounding });
    }),
    RUNS,
  );
});

Deno.test("plane stress is the solid with its surfaces free: Q = C − C·3 C3·/C33", () => {
  fc.assert(
    fc.property(laminas, between(-0.3, 0.3), between(-0.3, 0.3), (lamina, nu13, nu23) => {
      fc.pre(Math.abs(lamina.nu12) < 0.5 * Math.sqrt(lamina.E1 / lamina.E2));
      const C = solidStiffness({ ...lamina, E3: Math.min(lamina.E1, lamina.E2), nu13, nu23 });
      const { Q11, Q12, Q22 } = reducedStiffness(lamina);
      const relative = { absolute: 1e-12 * (Q11 + Q22) };
      assertClose(C.C11 - C.C13 ** 2 / C.C33, Q11, relative);
      assertClose(C.C12 - C.C13 * C.C23 / C.C33, Q12, relative);
      assertClose(C.C22 - C.C23 ** 2 / C.C33, Q22, relative);
    }),
    RUNS,
  );
});

Deno.test("A and D are positive definite, and so is the whole", () => {
  fc.assert(
    fc.property(stacks, (stack) => {
      const { A, D } = STIFFNESS_ENTRIES(laminateStiffness(stack));
      for (const [m11, m12, m16, m22, m26, m66] of [A, D] as [number, ...number[]][]) {
        const minor = m11! * m22! - m12! * m12!;
        const determinant = m66! * minor - m11! * m26! ** 2 - m22! * m16! ** 2 +
          2 * m12! * m16! * m26!;
        assert(m11! > 0 && minor > 0 && determinant > 0);
      }
      const { a11, a22, a66, d11, d22, d66 } = laminateCompliance(stack);
      assert(Math.min(a11, a22, a66, d11, d22, d66) > 0);
    }),
    RUNS,
  );
});

Deno.test("a symmetric stack has B of exactly 0, and free and held constants that agree", () => {
  fc.assert(
    fc.property(stacks, fc.boolean(), (half, odd) => {
      const stack = [...half, ...half.toReversed().slice(odd ? 1 : 0)];
      const { B11, B12, B16, B22, B26, B66 } = laminateStiffness(stack);
      assertEquals([B11, B12, B16, B22, B26, B66].map((entry) => entry + 0), [0, 0, 0, 0, 0, 0]);
      const { membraneFree, membraneHeldFlat, flexuralFree, flexuralMiddleHeld } =
        engineeringConstants(stack);
      const close = { relative: 1e-9 };
      assertClose(membraneFree.Ex, membraneHeldFlat.Ex, close);
      assertClose(membraneFree.Gxy, membraneHeldFlat.Gxy, close);
      assertClose(flexuralFree.Ey, flexuralMiddleHeld.Ey, close);
    }),
    RUNS,
  );
});

Deno.test("turned over, a stack keeps A and D and flips the sign of B", () => {
  fc.assert(
    fc.property(stacks, (stack) => {
      assertEqualStiffness(laminateStiffness(stack.toReversed()), laminateStiffness(stack), -1);
    }),
    RUNS,
  );
});

Deno.test("splitting a ply in two changes nothing", () => {
  fc.assert(
    fc.property(stacks, fc.nat(), between(0.1, 0.9), (stack, place, share) => {
      const k = place % stack.length;
      const ply = stack[k]!;
      const parts = [share, 1 - share].map((part) => ({ ...ply, thickness: ply.thickness * part }));
      const split = stack.toSpliced(k, 1, ...parts);
      assertEqualStiffness(laminateStiffness(split), laminateStiffness(stack));
      assertClose(massPerArea(split), massPerArea(stack), { relative: 1e-14 });
      const shear = transverseShearStiffness(stack);
      const shearSplit = transverseShearStiffness(split);
      assertClose(shearSplit.S55, shear.S55, { relative: 1e-7 });
      assertClose(shearSplit.S44, shear.S44, { relative: 1e-7 });
    }),
    RUNS,
  );
});

Deno.test("the traces of A and D do not turn with the stack", () => {
  fc.assert(
    fc.property(stacks, between(-90, 90), (stack, angle) => {
      const turned = stack.map((ply) => ({ ...ply, angleDeg: ply.angleDeg + angle }));
      const [one, other] = [laminateStiffness(stack), laminateStiffness(turned)];
      const invariants = (s: LaminateStiffness): number[] => [
        s.A11 + s.A22 + 2 * s.A12,
        s.A66 - s.A12,
        (s.D11 + s.D22 + 2 * s.D12) / laminateThickness(stack) ** 2,
        (s.D66 - s.D12) / laminateThickness(stack) ** 2,
        (s.B11 + s.B22 + 2 * s.B12) / laminateThickness(stack),
      ];
      assertClose(invariants(other), invariants(one), { absolute: 1e-12 * (one.A11 + one.A22) });
    }),
    RUNS,
  );
});

Deno.test("n ≥ 3 plies at even angles are alike in every direction: A from the invariants", () => {
  fc.assert(
    fc.property(laminas, fc.integer({ min: 3, max: 8 }), between(0, 90), (lamina, n, start) => {
      const stack = Array.from(
        { length: n },
        (_, k) => ({ lamina, thickness: 1e-4, angleDeg: start + 180 * k / n }),
      );
      const { A11, A12, A16, A22, A26, A66 } = laminateStiffness(stack);
      const { U1, U4, U5 } = stiffnessInvariants(lamina);
      const h = n * 1e-4;
      assertClose([A11, A12, A16, A22, A26, A66], [U1 * h, U4 * h, 0, U1 * h, 0, U5 * h], {
        absolute: 1e-12 * U1 * h,
      });
    }),
    RUNS,
  );
});

/** A load of sensible size: strains near 0.001 and their like in curvature. */
const loads = fc.record({
  Nx: between(-1e5, 1e5),
  Ny: between(-1e5, 1e5),
  Nxy: between(-1e5, 1e5),
  Mx: between(-100, 100),
  My: between(-100, 100),
  Mxy: between(-100, 100),
});

Deno.test("the work of the forces is the energy in the plies", () => {
  fc.assert(
    fc.property(stacks, loads, (stack, load) => {
      const { midPlaneStrain: e, curvature: k, plies } = laminateResponse(stack, load);
      const work = load.Nx * e.epsilonX + load.Ny * e.epsilonY + load.Nxy * e.gammaXY +
        load.Mx * k.kappaX + load.My * k.kappaY + load.Mxy * k.kappaXY;
      // Stress times strain is a parabola through a ply: Simpson's rule is exact.
      const energy = plies.reduce((sum, { ply, bottom, middle, top }) => {
        const density = [bottom, middle, top].map(({ plyStress: s, mechanicalPlyStrain: m }) =>
          s.sigma1 * m.epsilon1 + s.sigma2 * m.epsilon2 + s.tau12 * m.gamma12
        );
        return sum + ply.thickness * (density[0]! + 4 * density[1]! + density[2]!) / 6;
      }, 0);
      assertClose(energy, work, { relative: 1e-8, absolute: 1e-15 });
    }),
    RUNS,
  );
});

Deno.test("stress sums to the forces given, whatever the change of temperature", () => {
  fc.assert(
    fc.property(stacks, loads, between(-100, 100), (stack, load, temperatureChange) => {
      const { plies } = laminateResponse(stack, { ...load, temperatureChange });
      const h = laminateThickness(stack);
      let [Nx, Nxy, My] = [0, 0, 0];
      let size = 0;
      for (const { ply: { lamina, thickness }, bottom, middle, top } of plies) {
        Nx += middle.stress.sigmaX * thickness;
        Nxy += middle.stress.tauXY * thickness;
        My += thickness * (bottom.stress.sigmaY * bottom.z + 4 * middle.stress.sigmaY * middle.z +
          top.stress.sigmaY * top.z) /
          6;
        for (const { stress: s } of [bottom, top]) {
          size += thickness * (Math.abs(s.sigmaX) + Math.abs(s.sigmaY) + Math.abs(s.tauXY));
        }
        // What the stress would be with the strain held: the measure of its rounding.
        size += thickness * (lamina.E1 + lamina.E2) * Math.abs(temperatureChange) *
          (Math.abs(lamina.alpha1) + Math.abs(lamina.alpha2));
      }
      const absolute = 1e-9 * (size + Math.abs(load.Nx) + Math.abs(load.My) / h);
      assertClose([Nx, Nxy, My / h], [load.Nx, load.Nxy, load.My / h], { absolute });
    }),
    RUNS,
  );
});

Deno.test("response is linear: two loads together are the sum of each alone", () => {
  fc.assert(
    fc.property(stacks, loads, between(-100, 100), (stack, load, temperatureChange) => {
      const strain = (response: ReturnType<typeof laminateResponse>): number =>
        response.plies[0]!.bottom.totalStrain.epsilonX;
      const loaded = strain(laminateResponse(stack, load));
      const warmed = strain(laminateResponse(stack, { temperatureChange }));
      const both = strain(laminateResponse(stack, { ...load, temperatureChange }));
      assertClose(both, loaded + warmed, {
        absolute: 1e-9 * (Math.abs(loaded) + Math.abs(warmed) + 1e-9),
      });
    }),
    RUNS,
  );
});

Deno.test("plies that all expand alike stay free of stress and flat", () => {
  fc.assert(
    fc.property(stacks, between(0, 5e-5), between(-200, 200), (stack, alpha, temperatureChange) => {
      const alike = stack.map((ply) => ({
        ...ply,
        lamina: { ...ply.lamina, alpha1: alpha, alpha2: alpha },
      }));
      const { membrane, curvature } = thermalExpansion(alike);
      const h = laminateThickness(stack);
      assertClose([membrane.alphaX, membrane.alphaY, membrane.alphaXY], [alpha, alpha, 0], {
        absolute: 1e-8 * alpha + 1e-20,
      });
      assertClose(curvature.kappaX * h, 0, { absolute: 1e-8 * alpha + 1e-20 });
      const { plies } = laminateResponse(alike, { temperatureChange });
      for (const { ply: { lamina }, top } of plies) {
        assertClose(top.plyStress.sigma1 / lamina.E1, 0, {
          absolute: 1e-8 * Math.abs(alpha * temperatureChange) * (1 + lamina.E2 / lamina.E1) +
            1e-20,
        });
      }
    }),
    RUNS,
  );
});

Deno.test("transverse shear is in equilibrium: continuous, 0 at the faces, and sums to Q", () => {
  fc.assert(
    fc.property(stacks, between(-1e4, 1e4), between(-1e4, 1e4), (stack, Qx, Qy) => {
      const plies = transverseShearStress(stack, { Qx, Qy });
      const scale = Math.max(...plies.map((p) => p.largestXZ + p.largestYZ)) +
        (Math.abs(Qx) + Math.abs(Qy)) / laminateThickness(stack);
      const absolute = 1e-8 * scale + 1e-300;
      let [sumX, sumY] = [0, 0];
      plies.forEach(({ ply: { thickness }, bottom, middle, top, largestXZ }, k) => {
        const below = k === 0 ? { tauXZ: 0, tauYZ: 0 } : plies[k - 1]!.top;
        assertClose([bottom.tauXZ, bottom.tauYZ], [below.tauXZ, below.tauYZ], { absolute });
        sumX += thickness * (bottom.tauXZ + 4 * middle.tauXZ + top.tauXZ) / 6;
        sumY += thickness * (bottom.tauYZ + 4 * middle.tauYZ + top.tauYZ) / 6;
        assert(largestXZ >= Math.abs(middle.tauXZ));
      });
      assertClose([plies.at(-1)!.top.tauXZ, plies.at(-1)!.top.tauYZ], [0, 0], { absolute });
      const h = laminateThickness(stack);
      assertClose([sumX / h, sumY / h], [Qx / h, Qy / h], { absolute });
    }),
    RUNS,
  );
});

Deno.test("the slope of the transverse shear is the change of bending stress", () => {
  fc.assert(
    fc.property(stacks, (stack) => {
      // The moment that a force of 1 N/m builds up over 1 m.
      const perMetre = laminateResponse(stack, { Mx: 1 });
      const shear = transverseShearStress(stack, { Qx: 1 });
      const scale = Math.max(...shear.map((p) => p.largestXZ));
      shear.forEach(({ ply: { thickness }, bottom, middle, top }, k) => {
        const stress = perMetre.plies[k]!;
        const absolute = 1e-8 * scale;
        assertClose(top.tauXZ - bottom.tauXZ, -thickness * stress.middle.stress.sigmaX, {
          absolute,
        });
        const quarter = (3 * stress.bottom.stress.sigmaX + stress.top.stress.sigmaX) / 4;
        assertClose(middle.tauXZ - bottom.tauXZ, -thickness / 2 * quarter, { absolute });
      });
    }),
    RUNS,
  );
});

Deno.test("transverse shear stiffness is positive and below the sum of its plies", () => {
  fc.assert(
    fc.property(stacks, (stack) => {
      const { S44, S45, S55, correctionXZ, correctionYZ } = transverseShearStiffness(stack);
      assert(S44 > 0 && S55 > 0 && S44 * S55 > S45 * S45);
      assert(correctionXZ < 1.0000001 && correctionYZ < 1.0000001);
      assertEquals(plyPositions(stack).length, stack.length);
    }),
    RUNS,
  );
});
