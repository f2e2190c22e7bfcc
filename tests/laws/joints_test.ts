import fc from "fast-check";
import { assert } from "@std/assert";
import { assertClose } from "../close.ts";
import {
  bentLap,
  boltStresses,
  buildUpPlies,
  dropImpact,
  lapProfile,
  lapShear,
  opposedStays,
  stayedPanel,
  stayStiffness,
} from "../../lib/joints/mod.ts";

const SEEDED = { seed: 20261125, numRuns: 300 };

function between(min: number, max: number): fc.Arbitrary<number> {
  return fc.double({ min, max, noNaN: true });
}

const laps = fc.record({
  modulus1: between(5e9, 210e9),
  thickness1: between(0.0003, 0.01),
  modulus2: between(5e9, 210e9),
  thickness2: between(0.0003, 0.01),
  adhesiveShearModulus: between(1e7, 3e9),
  adhesiveThickness: between(5e-5, 2e-3),
  width: between(0.01, 0.1),
  overlap: between(0.003, 0.2),
  load: between(10, 1e5),
});

Deno.test("shear along a lap adds up to the load", () => {
  fc.assert(
    fc.property(laps, (lap) => {
      const { decay } = lapShear(lap);
      // Simpson's rule on steps of λΔx below 0.02 is good to 1e-8 of the sum.
      const count = 2 * Math.ceil(decay * lap.overlap / 0.04 + 10) + 1;
      const { positions, shear } = lapProfile(lap, count);
      const step = positions[1]! - positions[0]!;
      let sum = shear[0]! + shear[count - 1]!;
      for (let i = 1; i < count - 1; i++) sum += shear[i]! * (i % 2 === 1 ? 4 : 2);
      assertClose(sum * step / 3 * lap.width, lap.load, { relative: 1e-7 });
    }),
    SEEDED,
  );
});

Deno.test("a lap turned round has its ends exchanged, and its peak is never below the mean", () => {
  fc.assert(
    fc.property(laps, (lap) => {
      const there = lapShear(lap);
      const back = lapShear({
        ...lap,
        modulus1: lap.modulus2,
        thickness1: lap.thickness2,
        modulus2: lap.modulus1,
        thickness2: lap.thickness1,
      });
      assertClose(back.atStart, there.atEnd, { relative: 1e-12 });
      assertClose(back.atEnd, there.atStart, { relative: 1e-12 });
      assert(there.concentration >= 1 - 1e-12);
    }),
    SEEDED,
  );
});

Deno.test("an equal lap follows the closed form of its concentration", () => {
  fc.assert(
    fc.property(laps, (lap) => {
      const equal = { ...lap, modulus2: lap.modulus1, thickness2: lap.thickness1 };
      const { concentration, decay } = lapShear(equal);
      const half = decay * lap.overlap / 2;
      assertClose(concentration, half / Math.tanh(half), { relative: 1e-12 });
    }),
    SEEDED,
  );
});

Deno.test("a bending lap's edge factor lies between its limits and falls with load", () => {
  fc.assert(
    fc.property(laps, between(0, 0.45), (lap, nu) => {
      const bent = {
        modulus: lap.modulus1,
        nu,
        thickness: lap.thickness1,
        adhesiveModulus: 2.7 * lap.adhesiveShearModulus,
        adhesiveShearModulus: lap.adhesiveShearModulus,
        adhesiveThickness: lap.adhesiveThickness,
        width: lap.width,
        overlap: lap.overlap,
        load: lap.load,
      };
      const once = bentLap(bent);
      const twice = bentLap({ ...bent, load: 2 * lap.load });
      assert(once.edgeMomentFactor <= 1 && once.edgeMomentFactor >= 1 / (1 + 2 * Math.SQRT2));
      assert(twice.edgeMomentFactor <= once.edgeMomentFactor);
      assert(once.peakPeel > 0 && once.peakShear > once.mean * (1 - 1e-12));
    }),
    SEEDED,
  );
});

const rows = fc.record({
  load: between(100, 1e4),
  boltCount: fc.integer({ min: 1, max: 5 }),
  boltDiameter: between(0.003, 0.012),
  clearance: between(0, 0.001),
  width: between(0.08, 0.2),
  edgeDistance: between(0.01, 0.05),
}).map(({ clearance, ...row }) => ({ ...row, holeDiameter: row.boltDiameter + clearance }));

Deno.test("the plies of a build-up carry the load, and one fewer does not", () => {
  fc.assert(
    fc.property(rows, between(50e6, 300e6), (row, strength) => {
      const strengths = { bearing: strength, netTension: strength, shearOut: strength / 3 };
      const plyThickness = 0.00025;
      const { plies, mode } = buildUpPlies({ ...row, strengths, plyThickness, pliesThere: 0 });
      const on = (count: number): number => {
        const stresses = boltStresses({ ...row, thickness: count * plyThickness });
        const stress = mode === "shearOut" ? stresses.shearOutFromRim : stresses[mode];
        return stress / strengths[mode];
      };
      assert(on(plies) <= 1 + 1e-9);
      if (plies > 1) assert(on(plies - 1) > 1);
    }),
    SEEDED,
  );
});

Deno.test("stays balance the load, before and after one goes slack", () => {
  const stiffness = between(1e3, 1e6);
  fc.assert(
    fc.property(
      stiffness,
      stiffness,
      between(0, 2000),
      between(0, 5000),
      (k1, k2, preload, load) => {
        const state = opposedStays({ stiffness1: k1, stiffness2: k2, preload }, load);
        const limit = { absolute: 1e-9 * (load + preload + 1) };
        assertClose(state.tension1 - state.tension2, load, limit);
        assertClose(state.tension1, preload + k1 * state.displacement, {
          absolute: 1e-9 * (load + preload + 1) * (1 + k1 / k2),
        });
        for (const signed of [load, -load]) {
          const panel = stayedPanel(
            { panelStiffness: k1, stayStiffness: k2, preload },
            signed,
          );
          assertClose(panel.panelForce, k1 * panel.displacement, {
            absolute: 1e-9 * (load + preload + 1),
          });
          assert(panel.stayForce >= -1e-9 * (load + preload + 1));
        }
      },
    ),
    SEEDED,
  );
});

Deno.test("a stay's two end stiffnesses add up to the axial one; energy closes in an impact", () => {
  fc.assert(
    fc.property(between(-90, 90), between(0, 1), between(1e3, 1e6), (angleDeg, drop, k) => {
      const { axial, horizontal, vertical } = stayStiffness({
        area: 5e-6,
        modulus: 1e11,
        length: 2,
        angleDeg,
        fittingStiffness: [k],
      });
      assertClose(horizontal + vertical, axial, { relative: 1e-14 });
      const { peakDeflection, peakForce } = dropImpact({
        weight: 700,
        dropHeight: drop,
        stiffness: k,
      });
      assertClose(0.5 * k * peakDeflection ** 2, 700 * (drop + peakDeflection), {
        relative: 1e-12,
      });
      assertClose(peakForce, k * peakDeflection, { relative: 1e-14 });
    }),
    SEEDED,
  );
});
