/** The batch engine is the plain functions, but for rounding: over random batches. */
import { assert } from "@std/assert";
import fc from "fast-check";
import {
  analyseBatch,
  type BatchLoad,
  batchOf,
  type BatchResult,
  engineeringConstants,
  firstPlyFailure,
  firstPlyFailureAllScaled,
  type Lamina,
  type LaminateResponse,
  laminateResponse,
  type LaminateStrain,
  type Ply,
  type Stack,
} from "../../lib/laminate/mod.ts";
import { assertClose } from "../close.ts";

const RUNS = { seed: 20261125, numRuns: 200 };

const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true });

/** Plies as the trade has them, from mat to carbon; one in four has no strengths. */
const laminas: fc.Arbitrary<Lamina> = fc.record({
  E2: between(3e9, 12e9),
  ratio: between(1, 20),
  shear: between(0.3, 0.7),
  nu12: between(0.05, 0.35),
  alpha1: between(-1e-6, 1e-5),
  alpha2: between(1e-5, 6e-5),
  strength: between(0.5, 2),
  rated: fc.constantFrom(true, true, true, false),
}).map(({ E2, ratio, shear, nu12, alpha1, alpha2, strength: s, rated }) => ({
  name: "random",
  ...{ E1: E2 * ratio, E2, G12: E2 * shear, nu12, G13: E2 * shear, G23: E2 * 0.3 },
  ...{ density: 1500, alpha1, alpha2, beta1: 0, beta2: 0.3 },
  ...(rated ? { strengths: { Xt: 1e9 * s, Xc: 7e8 * s, Yt: 4e7, Yc: 1.5e8 * s, S: 6e7 } } : {}),
}));

const plies: fc.Arbitrary<Ply> = fc.record({
  lamina: laminas,
  thickness: between(1e-4, 1e-3),
  angleDeg: fc.oneof(between(-180, 180), fc.constantFrom(0, 90, 45, -45, 180)),
});

/** A core of foam or honeycomb between two lay-ups, or none. */
const cores: fc.Arbitrary<Ply | undefined> = fc.option(
  fc.record({ modulus: fc.constantFrom(1e4, 1e6, 5e7), thickness: between(3e-3, 2e-2) })
    .map(({ modulus, thickness }) => ({
      lamina: {
        name: "core",
        ...{ E1: modulus, E2: modulus, G12: modulus * 0.4, nu12: 0.3, G13: 2e7, G23: 2e7 },
        ...{ density: 80, alpha1: 3e-5, alpha2: 3e-5, beta1: 0, beta2: 0 },
      },
      thickness,
      angleDeg: 0,
    })),
  { nil: undefined },
);

const stacks: fc.Arbitrary<Stack> = fc.tuple(
  fc.array(plies, { minLength: 1, maxLength: 4 }),
  cores,
  fc.array(plies, { minLength: 1, maxLength: 4 }),
).map(([below, core, above]) => [...below, ...(core === undefined ? [] : [core]), ...above]);

/** Steps of a thousandth: small loads and none, but no numbers at the bottom of their range. */
const steps = (size: number): fc.Arbitrary<number> =>
  fc.integer({ min: -1000, max: 1000 }).map((step) => step * size / 1000);

const loads: fc.Arbitrary<BatchLoad> = fc.record({
  Nx: steps(1e5),
  Ny: steps(1e5),
  Nxy: steps(1e5),
  Mx: steps(50),
  My: steps(50),
  Mxy: steps(50),
});

const climates = fc.record({ temperatureChange: steps(80), moistureChange: steps(0.01) });

/** Within a share of the largest of the list: the entries of one state share their rounding. */
function assertSameState(actual: readonly number[], expected: readonly number[]): void {
  const size = Math.max(...expected.map(Math.abs));
  assertClose(actual, expected, { absolute: 1e-12 * size }, "state");
}

const list = (state: LaminateStrain | object): number[] => Object.values(state);

function assertSameResponse(result: BatchResult, response: LaminateResponse, i: number): void {
  const strains = Array.from(result.strains.subarray(6 * i, 6 * i + 6));
  const h = response.plies.at(-1)!.top.z * 2;
  assertSameState(
    strains.map((strain, j) => j < 3 ? strain : strain * h),
    [...list(response.midPlaneStrain), ...list(response.curvature).map((kappa) => kappa * h)],
  );
  const plyCount = result.plyStress.length / 6 / result.utilisation.length;
  const stress = response.plies.flatMap(({ bottom, top }) => [
    ...list(bottom.plyStress),
    ...list(top.plyStress),
  ]);
  const from = 6 * plyCount * i;
  assertSameState(Array.from(result.plyStress.subarray(from, from + stress.length)), stress);
}

function assertSameFirstPly(
  result: BatchResult,
  { ratio, tied }: ReturnType<typeof firstPlyFailure>,
  i: number,
): void {
  const utilisation = result.utilisation[i]!;
  if (ratio === null) return assertClose(utilisation, 0, {});
  if (ratio === 0) return assertClose(utilisation, Number.MAX_VALUE, {});
  assertClose(utilisation, 1 / ratio, { relative: 1e-12 }, "utilisation");
  const face = result.criticalFace[i] === 0 ? "bottom" : "top";
  assert(tied.some((one) => one.layer === result.criticalPly[i]! + 1 && one.face === face));
}

const isRated = (stack: Stack): boolean =>
  stack.some(({ lamina }) => lamina.strengths !== undefined);

Deno.test("forces and moments: strain, ply stress, modulus and first ply as the plain functions", () => {
  fc.assert(
    fc.property(fc.array(stacks, { minLength: 1, maxLength: 4 }), loads, (batch, load) => {
      const result = analyseBatch(batchOf(batch, load), { keepPlyStress: true });
      batch.forEach((stack, i) => {
        assertSameResponse(result, laminateResponse(stack, load), i);
        assertClose(result.membraneEx[i]!, engineeringConstants(stack).membraneFree.Ex, {
          relative: 1e-12,
        });
        if (!isRated(stack)) return;
        assertSameFirstPly(result, firstPlyFailure(stack, load, { criterion: "Tsai-Wu" }), i);
      });
    }),
    RUNS,
  );
});

Deno.test("with a change of climate, its stress held or scaled with the load", () => {
  fc.assert(
    fc.property(stacks, loads, climates, (stack, forces, climate) => {
      const load = { ...forces, ...climate };
      const batch = batchOf([stack], load);
      const held = analyseBatch(batch, { keepPlyStress: true });
      const scaled = analyseBatch(batch, { keepPlyStress: true, scaleResidual: true });
      const response = laminateResponse(stack, load);
      assertSameResponse(held, response, 0);
      assertSameResponse(scaled, response, 0);
      if (!isRated(stack)) return;
      const options = { criterion: "Tsai-Wu" } as const;
      assertSameFirstPly(held, firstPlyFailure(stack, load, options), 0);
      assertSameFirstPly(scaled, firstPlyFailureAllScaled(stack, load, options), 0);
    }),
    RUNS,
  );
});
