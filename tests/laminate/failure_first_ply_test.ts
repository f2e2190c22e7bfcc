import { InputError } from "../../lib/check/mod.ts";
import {
  type FailureCriterion,
  type FailureOptions,
  firstPlyFailure,
  firstPlyFailureAllScaled,
  type LaminateLoad,
  stackOfCode,
} from "../../lib/laminate/mod.ts";
import { assertClose } from "../close.ts";
import { assert, assertEquals, assertThrows } from "@std/assert";

const strengths = { Xt: 800e6, Xc: 600e6, Yt: 40e6, Yc: 120e6, S: 60e6 };
const lamina = {
  ...{ name: "glass ply", E1: 40e9, E2: 10e9, G12: 4e9, nu12: 0.28, G13: 4e9, G23: 3e9 },
  ...{ density: 1900, alpha1: 7e-6, alpha2: 25e-6, strengths },
};
const { strengths: _, ...foam } = { ...lamina, name: "foam", E1: 70e6, E2: 70e6, G12: 27e6 };
const ply = { lamina, thickness: 0.25e-3 };
const named = { core: { lamina: foam, thickness: 10e-3 } };
const crossPly = stackOfCode("[0/90]s", { ply });
const wu: FailureOptions = { criterion: "Tsai-Wu" };

/**
 * [0/90]s of 4 × 0.25 mm under Nx 50 kN/m after cooling by 60 K: by hand in exact fractions from
 * equal strains and force balance, then Tsai–Wu by bisection. 90° plies: σ = residual + R load.
 */
const residual = [-7769784.172661871, 7769784.172661871] as const;
const loaded = [-3402683.258798367, 19618899.475014582] as const;

Deno.test("cure stress is held while the load grows", () => {
  const load: LaminateLoad = { Nx: 50e3, temperatureChange: -60 };
  const { ratio, tied } = firstPlyFailure(crossPly, load, wu);
  assertClose(ratio!, 1.6170175437091108, { relative: 1e-12 });
  assertEquals(tied.map(({ layer, face, mode }) => `${layer} ${face} ${mode}`), [
    ...["2 bottom 2t", "2 top 2t", "3 bottom 2t", "3 top 2t"],
  ]);
  const limit = firstPlyFailure(crossPly, load, { criterion: "maximum stress" });
  assertClose(limit.ratio!, (40e6 - residual[1]) / loaded[1], { relative: 1e-12 });
});

Deno.test("or scaled with it, as some books do", () => {
  const load = { Nx: 50e3, temperatureChange: -60 };
  const { ratio } = firstPlyFailureAllScaled(crossPly, load, { criterion: "maximum stress" });
  assertClose(ratio!, 40e6 / (residual[1] + loaded[1]), { relative: 1e-12 });
});

Deno.test("nothing fails without a load, and all has failed where the climate suffices", () => {
  const idle = firstPlyFailure(crossPly, { temperatureChange: -60 }, wu);
  assertEquals([idle.ratio, idle.tied.length], [null, 0]);
  const cold = firstPlyFailure(crossPly, { Nx: 50e3, temperatureChange: -600 }, wu);
  assertEquals(cold.ratio, 0);
  assertEquals(cold.tied.length, 8);
});

Deno.test("a push across that first undoes the cure's pull meets no failure on the way", () => {
  // Two equal plies at 0° and 90° held flat; the pull left by cooling is turned into a push.
  const load = { Nx: -50e3, temperatureChange: -60 };
  const { ratio } = firstPlyFailure(crossPly, load, { criterion: "Puck" });
  const across = (40e6 * 3 + residual[1]) / loaded[1]; // −120 MPa across the 90° plies
  const along = (600e6 + residual[0]) / 80381100.52498542; // −600 MPa along the 0° plies
  assertClose(ratio!, Math.min(across, along), { relative: 1e-12 });
});

Deno.test("a core without strengths is left out and named", () => {
  const stack = stackOfCode("[0/core/0]", { ply, named });
  const { faces, tied, notes } = firstPlyFailure(stack, { Mx: 10 }, wu);
  assertEquals(faces.map(({ layer }) => layer), [1, 1, 3, 3]);
  // Sagging the bag side: the mould face is pressed, its lower edge most; it has the lower Xc.
  assertEquals(tied.map(({ layer, face, mode }) => [layer, face, mode]), [[1, "bottom", "1c"]]);
  assert(notes.some((note) => note.includes("Not judged, since without strengths here: foam")));
});

Deno.test("notes say what a criterion assumes, and how many there are", () => {
  const count = (options: FailureOptions): number =>
    firstPlyFailure(crossPly, { Nx: 1 }, options).notes.length;
  assertEquals(count(wu), 1); // no knock-down
  assertEquals(count({ ...wu, knockDown: 0.5 }), 0);
  assertEquals(count({ criterion: "Hashin", knockDown: 0.5 }), 1); // S23 guessed
  const transverseShearStrengths = { "glass ply": 50e6 };
  assertEquals(count({ criterion: "Hashin", knockDown: 0.5, transverseShearStrengths }), 0);
  const cloth = stackOfCode("[(0/90)]", {
    cloth: { lamina: { ...lamina, E2: 38e9, name: "cloth" }, thickness: 1e-3 },
  });
  const { notes } = firstPlyFailure(cloth, { Nx: 1 }, { criterion: "Puck", knockDown: 0.5 });
  assertEquals(notes.length, 1);
  assert(notes[0]!.includes("as stiff across as a cloth: cloth"));
});

Deno.test("a knock-down takes its share of the ratio", () => {
  const criteria: readonly FailureCriterion[] = ["maximum stress", "Tsai-Hill", "Hashin", "Puck"];
  for (const criterion of criteria) {
    const whole = firstPlyFailure(crossPly, { Nx: 50e3 }, { criterion });
    const half = firstPlyFailure(crossPly, { Nx: 50e3 }, { criterion, knockDown: 0.5 });
    assertClose(half.ratio!, whole.ratio! / 2, { relative: 1e-13 }, criterion);
  }
});

Deno.test("a knock-down reaches each of the five strain allowables", () => {
  const allowables = { "glass ply": { e1t: 0.02, e1c: 0.015, e2t: 0.004, e2c: 0.012, g12: 0.016 } };
  const options: FailureOptions = { criterion: "maximum strain", allowables, knockDown: 0.6 };
  const flat = { epsilonX: 0, epsilonY: 0, gammaXY: 0 };
  // One strain of 0.001 alone, imposed: 0.6 times its allowable over 0.001.
  const alone = [
    [{ epsilonX: 0.001 }, 12, "1t"],
    [{ epsilonX: -0.001 }, 9, "1c"],
    [{ epsilonY: 0.001 }, 2.4, "2t"],
    [{ epsilonY: -0.001 }, 7.2, "2c"],
    [{ gammaXY: 0.001 }, 9.6, "12"],
    [{ gammaXY: -0.001 }, 9.6, "12"],
  ] as const;
  for (const [strain, expected, mode] of alone) {
    const { ratio, tied } = firstPlyFailure(
      stackOfCode("[0]", { ply }),
      { ...flat, ...strain },
      options,
    );
    assertClose(ratio!, expected, { relative: 1e-13 }, mode);
    assertEquals(tied[0]?.mode, mode);
  }
});

Deno.test("Hashin's transverse shear strength is knocked down with the others", () => {
  // Yc 120, S 60, S23 50 MPa; σ2 = −75, τ12 = 42.75: (75 R/100)² + (1.44 − 1)(−75 R/120) +
  // (42.75 R/60)² = 1, so 1.07015625 R² − 0.275 R − 1 = 0. All strengths by half: half of R.
  const whole = (0.275 + Math.sqrt(0.275 ** 2 + 4 * 1.07015625)) / (2 * 1.07015625);
  const load = { Ny: -75e6 * 0.25e-3, Nxy: 42.75e6 * 0.25e-3 };
  const at = (knockDown: number): number =>
    firstPlyFailure(stackOfCode("[0]", { ply }), load, {
      criterion: "Hashin",
      knockDown,
      transverseShearStrengths: { "glass ply": 50e6 },
    }).ratio!;
  assertClose(at(1), whole, { relative: 1e-12 });
  assertClose(at(0.5), whole / 2, { relative: 1e-12 });
  // Left out, S23 is half of Yc: (75 R/120)² + 0 + (42.75 R/60)² = 1.
  const guessed = firstPlyFailure(stackOfCode("[0]", { ply }), load, {
    criterion: "Hashin",
    knockDown: 0.5,
  });
  assertClose(guessed.ratio!, 0.5 / Math.hypot(75 / 120, 42.75 / 60), { relative: 1e-12 });
});

Deno.test("maximum strain takes its allowables by the name of the lamina", () => {
  const e = { e1t: 0.02, e1c: 0.015, e2t: 0.004, e2c: 0.012, g12: 0.015 };
  const allowables = { "glass ply": e };
  const single = stackOfCode("[0]", { ply });
  const options: FailureOptions = { criterion: "maximum strain", allowables };
  // ε1 = N/(E1 h) = 0.001 for 10 kN/m, ε2 = −0.28 ε1: 0.02 comes at R = 20, −0.012 at R = 42.9.
  assertClose(firstPlyFailure(single, { Nx: 10e3 }, options).ratio!, 20, { relative: 1e-13 });
  assertThrows(
    () => firstPlyFailure(single, { Nx: 10e3 }, { criterion: "maximum strain" }),
    InputError,
    "glass ply strain allowables is missing",
  );
});

Deno.test("imposed strains grow as forces do", () => {
  const single = stackOfCode("[0]", { ply });
  const load = { epsilonX: 0.001, Ny: 0 };
  const { ratio } = firstPlyFailure(single, load, { criterion: "maximum stress" });
  assertClose(ratio!, 20, { relative: 1e-13 });
});

Deno.test("each kind of bad input is refused", () => {
  const fails = (options: unknown, message: string): void => {
    assertThrows(
      () => firstPlyFailure(crossPly, { Nx: 1 }, options as FailureOptions),
      InputError,
      message,
    );
  };
  fails({ criterion: "Tresca" }, "must be one of: maximum stress, maximum strain");
  fails(undefined, "set of options is missing");
  fails({ ...wu, knockDown: 1.5 }, "knock-down is 1.5, must be between 0 and 1");
  fails({ ...wu, interaction: 1 }, "both excluded");
  fails(
    { criterion: "Hashin", transverseShearStrengths: { "glass ply": 0 } },
    "glass ply transverse shear strength is 0 Pa",
  );
  const core = stackOfCode("[core]", { named });
  assertThrows(() => firstPlyFailure(core, { Nx: 1 }, wu), InputError, "for at least one layer");
  const bad = { ...lamina, strengths: { ...strengths, Yt: -40e6 } };
  assertThrows(
    () => firstPlyFailure([{ ...ply, lamina: bad, angleDeg: 0 }], { Nx: 1 }, wu),
    InputError,
    "glass ply Yt is -40000000 Pa",
  );
  assertThrows(
    () => firstPlyFailure(crossPly, { Nz: 1 } as LaminateLoad, wu),
    InputError,
    "must be one of: Nx, Ny",
  );
});
