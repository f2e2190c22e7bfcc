import fc from "fast-check";
import {
  type FailureCriterion,
  failureEnvelope,
  type FailureOptions,
  type FailureVerdict,
  firstPlyFailure,
  firstPlyFailureAllScaled,
  hashin,
  knockDownStrengths,
  type LaminaStrengths,
  type LaminateLoad,
  laminateResponse,
  maximumStrain,
  maximumStress,
  type PlyStress,
  progressiveFailure,
  puck,
  type Stack,
  tsaiHill,
  tsaiHillTensile,
  tsaiWu,
} from "../../lib/laminate/mod.ts";
import { assertClose } from "../close.ts";
import { assert, assertEquals } from "@std/assert";

const seeded = { seed: 20261125, numRuns: 300 };

const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true });

/** Strengths from a hand-laid glass cloth to carbon; S/Yt stays above 0.3 for Puck's curve. */
const strengthsOf = fc.record({
  ...{ Xt: between(200e6, 2500e6), Xc: between(150e6, 1600e6), Yt: between(20e6, 80e6) },
  ...{ Yc: between(80e6, 300e6), S: between(30e6, 120e6) },
});
const stressOf: fc.Arbitrary<PlyStress> = fc.record({
  ...{ sigma1: between(-1e9, 1e9), sigma2: between(-200e6, 200e6), tau12: between(-90e6, 90e6) },
}).filter(({ sigma1, sigma2, tau12 }) => Math.abs(sigma1) + Math.abs(sigma2) + Math.abs(tau12) > 1);

const S23Of = (strengths: LaminaStrengths): number => 0.6 * strengths.Yc;

/** Each criterion as it is called. */
const called: Readonly<
  Record<string, (stress: PlyStress, strengths: LaminaStrengths) => FailureVerdict>
> = {
  "maximum stress": maximumStress,
  "Tsai-Hill": tsaiHill,
  "Tsai-Hill, tensile strengths": tsaiHillTensile,
  "Tsai-Wu": tsaiWu,
  "Hashin": (stress, strengths) => hashin(stress, { ...strengths, S23: S23Of(strengths) }),
  "Puck": puck,
};

/**
 * Each criterion as its definition reads, 1 at failure and below 1 before, written without the
 * quadratics of the code under test.
 */
const plain: Readonly<
  Record<string, (stress: PlyStress, strengths: LaminaStrengths) => number>
> = {
  "maximum stress": ({ sigma1, sigma2, tau12 }, { Xt, Xc, Yt, Yc, S }) =>
    Math.max(sigma1 / Xt, -sigma1 / Xc, sigma2 / Yt, -sigma2 / Yc, Math.abs(tau12) / S),
  "Tsai-Hill": ({ sigma1, sigma2, tau12 }, { Xt, Xc, Yt, Yc, S }) => {
    const X = sigma1 >= 0 ? Xt : Xc;
    const Y = sigma2 >= 0 ? Yt : Yc;
    return (sigma1 / X) ** 2 - sigma1 * sigma2 / X ** 2 + (sigma2 / Y) ** 2 + (tau12 / S) ** 2;
  },
  "Tsai-Hill, tensile strengths": ({ sigma1, sigma2, tau12 }, { Xt, Yt, S }) =>
    (sigma1 / Xt) ** 2 - sigma1 * sigma2 / Xt ** 2 + (sigma2 / Yt) ** 2 + (tau12 / S) ** 2,
  "Tsai-Wu": ({ sigma1, sigma2, tau12 }, { Xt, Xc, Yt, Yc, S }) =>
    (1 / Xt - 1 / Xc) * sigma1 + (1 / Yt - 1 / Yc) * sigma2 + sigma1 ** 2 / (Xt * Xc) +
    sigma2 ** 2 / (Yt * Yc) + (tau12 / S) ** 2 - sigma1 * sigma2 / Math.sqrt(Xt * Xc * Yt * Yc),
  "Hashin": ({ sigma1, sigma2, tau12 }, strengths) => {
    const { Xt, Xc, Yt, Yc, S } = strengths;
    const S23 = S23Of(strengths);
    const fibre = sigma1 >= 0 ? (sigma1 / Xt) ** 2 + (tau12 / S) ** 2 : -sigma1 / Xc;
    const matrix = sigma2 >= 0
      ? (sigma2 / Yt) ** 2 + (tau12 / S) ** 2
      : (sigma2 / (2 * S23)) ** 2 + ((Yc / (2 * S23)) ** 2 - 1) * sigma2 / Yc + (tau12 / S) ** 2;
    return Math.max(fibre, matrix);
  },
  "Puck": ({ sigma1, sigma2, tau12 }, { Xt, Xc, Yt, Yc, S }) => {
    const [pull, push] = [0.3, 0.25];
    const fibre = Math.max(sigma1 / Xt, -sigma1 / Xc);
    if (sigma2 >= 0) {
      const opening = Math.hypot(tau12 / S, (1 - pull * Yt / S) * sigma2 / Yt);
      return Math.max(fibre, opening + pull * sigma2 / S);
    }
    const RA = S / (2 * push) * (Math.sqrt(1 + 2 * push * Yc / S) - 1);
    const slope = push * RA / S;
    if (-sigma2 * S * Math.sqrt(1 + 2 * slope) <= RA * Math.abs(tau12)) {
      return Math.max(fibre, (Math.hypot(tau12, push * sigma2) + push * sigma2) / S);
    }
    const wedge = (tau12 / (2 * (1 + slope) * S)) ** 2 + (sigma2 / Yc) ** 2;
    return Math.max(fibre, wedge * Yc / -sigma2);
  },
};

const names = Object.keys(called);
const scaled = ({ sigma1, sigma2, tau12 }: PlyStress, by: number): PlyStress => ({
  ...{ sigma1: sigma1 * by, sigma2: sigma2 * by, tau12: tau12 * by },
});

Deno.test("at strength ratio 1 each criterion lies on its own surface", () => {
  fc.assert(
    fc.property(fc.constantFrom(...names), stressOf, strengthsOf, (name, stress, strengths) => {
      const { ratio } = called[name]!(stress, strengths);
      const failed = scaled(stress, ratio!);
      assertClose(plain[name]!(failed, strengths), 1, { relative: 1e-12 }, name);
      const again = called[name]!(failed, strengths);
      assertClose(again.ratio!, 1, { relative: 1e-12 }, name);
      assertClose(again.index, 1, { relative: 1e-12 }, name);
      // Nothing fails earlier on the way there.
      for (const share of [0.3, 0.7, 0.99]) {
        assert(plain[name]!(scaled(failed, share), strengths) < 1, name);
      }
    }),
    seeded,
  );
});

Deno.test("each strength alone comes back, with its mode", () => {
  fc.assert(
    fc.property(strengthsOf, (strengths) => {
      const { Xt, Xc, Yt, Yc, S } = strengths;
      const alone: readonly (readonly [PlyStress, string, string])[] = [
        [{ sigma1: Xt, sigma2: 0, tau12: 0 }, "1t", "1t"],
        [{ sigma1: -Xc, sigma2: 0, tau12: 0 }, "1c", "1c"],
        [{ sigma1: 0, sigma2: Yt, tau12: 0 }, "2t", "A"],
        [{ sigma1: 0, sigma2: -Yc, tau12: 0 }, "2c", "C"],
        [{ sigma1: 0, sigma2: 0, tau12: S }, "12", "A"],
      ];
      for (const name of names) {
        alone.forEach(([stress, mode, crack], place) => {
          if (name === "Tsai-Hill, tensile strengths" && mode.endsWith("c")) return;
          const verdict = called[name]!(stress, strengths);
          assertClose(verdict.ratio!, 1, { relative: 1e-13 }, `${name} ${mode}`);
          // Pure shear: Hashin has it in fibre and matrix tension alike, Puck at the end of A.
          if (place < 4) assertEquals(verdict.mode, name === "Puck" ? crack : mode, name);
        });
      }
    }),
    { ...seeded, numRuns: 50 },
  );
});

Deno.test("twice the stress has half the ratio, and the sign of the shear does not matter", () => {
  fc.assert(
    fc.property(fc.constantFrom(...names), stressOf, strengthsOf, (name, stress, strengths) => {
      const { ratio } = called[name]!(stress, strengths);
      const exact = { relative: 1e-13 };
      assertClose(called[name]!(scaled(stress, 2), strengths).ratio!, ratio! / 2, exact, name);
      const mirrored = { ...stress, tau12: -stress.tau12 };
      assertEquals(called[name]!(mirrored, strengths).ratio, ratio);
      const half = knockDownStrengths(strengths, 0.5);
      assertClose(called[name]!(stress, half).ratio!, ratio! / 2, { relative: 1e-12 }, name);
    }),
    seeded,
  );
});

Deno.test("Puck's cracks meet without a step", () => {
  fc.assert(
    fc.property(strengthsOf, between(1e6, 50e6), (strengths, tau12) => {
      const { Yc, S } = strengths;
      const push = 0.25;
      const RA = S / (2 * push) * (Math.sqrt(1 + 2 * push * Yc / S) - 1);
      const border = -tau12 * RA / (S * Math.sqrt(1 + 2 * push * RA / S));
      for (const sigma2 of [0, border]) {
        const step = 1e-9 * Math.abs(tau12);
        const [below, above] = [-step, step].map((shift) =>
          puck({ sigma1: 0, sigma2: sigma2 + shift, tau12 }, strengths).ratio!
        );
        // The slopes differ on either side, so the step is of the order of the shift.
        assertClose(above!, below!, { relative: 1e-8 });
      }
    }),
    seeded,
  );
});

const laminaOf = fc.record({
  ...{ E1: between(20e9, 180e9), E2: between(5e9, 15e9), G12: between(2e9, 8e9) },
  ...{ nu12: between(0.1, 0.35), alpha1: between(-1e-6, 10e-6), alpha2: between(15e-6, 40e-6) },
  strengths: strengthsOf,
}).map((figures) => ({ name: "ply", G13: 4e9, G23: 3e9, density: 1600, ...figures }));

const stackOf: fc.Arbitrary<Stack> = fc.record({
  lamina: laminaOf,
  plies: fc.array(
    fc.record({ angleDeg: between(-90, 90), thickness: between(0.1e-3, 0.5e-3) }),
    { minLength: 1, maxLength: 6 },
  ),
}).map(({ lamina, plies }) => plies.map((ply) => ({ lamina, ...ply })));

const loadOf: fc.Arbitrary<LaminateLoad> = fc.record({
  ...{ Nx: between(-50e3, 50e3), Ny: between(-50e3, 50e3), Nxy: between(-20e3, 20e3) },
  ...{ Mx: between(-10, 10), My: between(-10, 10), Mxy: between(-5, 5) },
}).filter(({ Nx, Ny, Nxy }) => Math.abs(Nx) + Math.abs(Ny) + Math.abs(Nxy) > 100);

const optionsFor = (name: string, stack: Stack): FailureOptions => {
  const S23 = S23Of(stack[0]!.lamina.strengths!);
  return { criterion: name as FailureCriterion, transverseShearStrengths: { ply: S23 } };
};

/** The largest value of a criterion over both faces of all plies, from the public response. */
function worst(name: string, stack: Stack, load: LaminateLoad): number {
  const values = laminateResponse(stack, load).plies.flatMap(({ ply, bottom, top }) =>
    [bottom, top].map(({ plyStress }) => plain[name]!(plyStress, ply.lamina.strengths!))
  );
  return Math.max(...values);
}

const times = (load: LaminateLoad, by: number): LaminateLoad =>
  Object.fromEntries(
    Object.entries(load).map((
      [key, value],
    ) => [key, key === "temperatureChange" ? value : value! * by]),
  );

Deno.test("at the first ply's ratio one face is on its surface and none beyond, cure included", () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...names),
      stackOf,
      loadOf,
      between(-80, 0),
      (name, stack, forces, temperatureChange) => {
        const load = { ...forces, temperatureChange };
        const { ratio } = firstPlyFailure(stack, load, optionsFor(name, stack));
        if (worst(name, stack, { temperatureChange }) >= 1) {
          assertEquals(ratio, 0);
          return;
        }
        // The stresses come from solving six equations: 1e-9 by their conditioning.
        assertClose(worst(name, stack, times(load, ratio!)), 1, { relative: 1e-9 }, name);
        for (const share of [0.25, 0.5, 0.9]) {
          assert(worst(name, stack, times(load, ratio! * share)) < 1 + 1e-9, name);
        }
      },
    ),
    { ...seeded, numRuns: 600 },
  );
});

Deno.test("without a cure stress it does not matter whether it is scaled", () => {
  fc.assert(
    fc.property(fc.constantFrom(...names), stackOf, loadOf, (name, stack, load) => {
      const options = optionsFor(name, stack);
      const held = firstPlyFailure(stack, load, options);
      const all = firstPlyFailureAllScaled(stack, load, options);
      assertEquals(all.ratio, held.ratio);
      const smallest = Math.min(...held.faces.map(({ ratio }) => ratio!));
      assertEquals(held.ratio, smallest);
    }),
    seeded,
  );
});

Deno.test("maximum strain at the first ply agrees with the criterion on the response", () => {
  fc.assert(
    fc.property(stackOf, loadOf, between(-80, 0), (stack, forces, temperatureChange) => {
      const load = { ...forces, temperatureChange };
      const ply = { e1t: 0.015, e1c: 0.01, e2t: 0.005, e2c: 0.015, g12: 0.02 };
      const options: FailureOptions = { criterion: "maximum strain", allowables: { ply } };
      const { ratio } = firstPlyFailureAllScaled(stack, load, options);
      const strains = laminateResponse(stack, load).plies.flatMap(({ bottom, top }) => [
        ...[bottom.mechanicalPlyStrain, top.mechanicalPlyStrain],
      ]);
      const least = Math.min(...strains.map((strain) => maximumStrain(strain, ply).ratio!));
      assertClose(ratio!, least, { relative: 1e-9 });
    }),
    seeded,
  );
});

Deno.test("layer by layer: begins at the first ply, what is borne never falls, and it ends", () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...names),
      stackOf,
      loadOf,
      between(-40, 0),
      (name, stack, forces, temperatureChange) => {
        const load = { ...forces, temperatureChange };
        const options = optionsFor(name, stack);
        const { events, firstRatio, lastRatio } = progressiveFailure(stack, load, options);
        assertEquals(firstRatio, firstPlyFailure(stack, load, options).ratio);
        events.forEach(({ carried, ratio, cascade }, i) => {
          const before = events[i - 1]?.carried ?? -1;
          assertEquals(carried, Math.max(before, ratio));
          assertEquals(cascade, ratio <= before);
        });
        assert(lastRatio! >= firstRatio!);
        const fates = events.flatMap(({ layers }) => layers.map(({ layer }) => layer));
        for (let layer = 1; layer <= stack.length; layer++) {
          assert(fates.filter((fate) => fate === layer).length <= 2, "a layer fails twice at most");
        }
      },
    ),
    { ...seeded, numRuns: 150 },
  );
});

Deno.test("each point of an envelope is a first ply failure, and a closed convex one for Tsai–Wu", () => {
  fc.assert(
    fc.property(stackOf, between(-40, 0), (stack, temperatureChange) => {
      if (worst("Tsai-Wu", stack, { temperatureChange }) >= 1) return;
      const options = optionsFor("Tsai-Wu", stack);
      const axes = { first: "Nx", second: "Mxy", points: 16, temperatureChange } as const;
      const { points } = failureEnvelope(stack, axes, options);
      for (const { first, second } of points) {
        const load = { Nx: first, Mxy: second, temperatureChange };
        assertClose(worst("Tsai-Wu", stack, load), 1, { relative: 1e-9 });
      }
      points.forEach((point, i) => {
        const [next, after] = [points[(i + 1) % 16]!, points[(i + 2) % 16]!];
        const turn = (next.first - point.first) * (after.second - next.second) -
          (next.second - point.second) * (after.first - next.first);
        assert(turn > 0, "each corner turns to the left");
      });
    }),
    { ...seeded, numRuns: 100 },
  );
});
