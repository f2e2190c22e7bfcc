import { InputError } from "../../lib/check/mod.ts";
import {
  failureEnvelope,
  firstPlyFailure,
  type LaminateLoad,
  progressiveFailure,
  stackOfCode,
} from "../../lib/laminate/mod.ts";
import { assertClose } from "../close.ts";
import { assert, assertEquals, assertThrows } from "@std/assert";

const lamina = {
  ...{ name: "glass ply", E1: 40e9, E2: 10e9, G12: 4e9, nu12: 0.28, G13: 4e9, G23: 3e9 },
  ...{ density: 1900, alpha1: 7e-6, alpha2: 25e-6 },
  strengths: { Xt: 800e6, Xc: 600e6, Yt: 40e6, Yc: 120e6, S: 60e6 },
};
const ply = { lamina, thickness: 0.25e-3 };
const crossPly = stackOfCode("[0/90]s", { ply });
const limit = { criterion: "maximum stress" } as const;

Deno.test("cracks across come first, then the fibres bear to their strength", () => {
  const { events, firstRatio, lastRatio, end } = progressiveFailure(crossPly, { Nx: 1e3 }, limit);
  const first = firstPlyFailure(crossPly, { Nx: 1e3 }, limit);
  assertEquals(firstRatio, first.ratio);
  assertEquals(events[0]!.layers, [
    { layer: 2, mode: "2t", lost: "matrix" },
    { layer: 3, mode: "2t", lost: "matrix" },
  ]);
  // The 0° plies alone: 800 MPa × 0.5 mm = 400 kN/m; but before, at less load, they split along:
  // the cracked 90° plies hold their contraction, so that σ2 reaches Yt.
  assertEquals(events[1]!.layers.map(({ mode, lost }) => [mode, lost]), [
    ["2t", "matrix"],
    ["2t", "matrix"],
  ]);
  assertEquals(events[2]!.layers.map(({ layer, mode }) => [layer, mode]), [[1, "1t"], [4, "1t"]]);
  assertClose(lastRatio!, 400, { relative: 2e-6 });
  assertEquals(end, "gave way");
});

Deno.test("cure stress stays in the layers as it was", () => {
  const load = { Nx: 50e3, temperatureChange: -60 };
  const { firstRatio } = progressiveFailure(crossPly, load, { criterion: "Tsai-Wu" });
  // By exact fractions and bisection, as in the test of the first ply.
  assertClose(firstRatio!, 1.6170175437091108, { relative: 1e-12 });
  // In the 0° plies σ1 = −7.77 MPa from the cure; the load's own part is all the force.
  const last = progressiveFailure(crossPly, load, { ...limit, loss: "whole ply" });
  assertClose(last.lastRatio!, (800e6 + 7769784.172661871) * 0.5e-3 / 50e3, { relative: 2e-6 });
});

Deno.test("layers that fail under the load already borne go in a cascade", () => {
  // One 0° ply between many 90° plies: once they crack it is far beyond its strength.
  const stack = stackOfCode("[90_20/0|]s", { ply });
  const { events, lastRatio } = progressiveFailure(stack, { Nx: 1e3 }, {
    ...limit,
    loss: "whole ply",
    breakingWork: 1e6,
  });
  assertEquals(events.map(({ cascade }) => cascade), [false, true]);
  assert(events[1]!.ratio < events[0]!.ratio);
  assertEquals(lastRatio, events[0]!.ratio);
  assertEquals(events[1]!.carried, events[0]!.ratio);
});

Deno.test("a laminate held by nothing but cracked plies has given way", () => {
  const { events, end, lastRatio } = progressiveFailure(
    stackOfCode("[0]", { ply }),
    { Ny: 1e3 },
    limit,
  );
  assertEquals(events.length, 1);
  assertEquals(end, "gave way");
  assertClose(lastRatio!, 40e6 * 0.25e-3 / 1e3, { relative: 1e-12 });
});

Deno.test("without a load nothing fails", () => {
  const { events, end, firstRatio, lastRatio } = progressiveFailure(crossPly, {}, limit);
  assertEquals([events.length, end, firstRatio, lastRatio], [0, "nothing more fails", null, null]);
});

Deno.test("a cure that breaks plies without a load does it at ratio 0, and no work is lost", () => {
  const { events, firstRatio } = progressiveFailure(crossPly, { temperatureChange: -600 }, limit);
  assertEquals(firstRatio, 0);
  assert(events.every(({ ratio, work }) => ratio === 0 && work === 1));
});

Deno.test("each kind of bad input is refused", () => {
  const load = { Nx: 1e3 };
  assertThrows(
    () => progressiveFailure(crossPly, { epsilonX: 0.001 }, limit),
    InputError,
    "must be left out: give forces and moments",
  );
  assertThrows(
    () => progressiveFailure(crossPly, load, { ...limit, matrixShareLeft: 0 }),
    InputError,
    "must be between 0.000001 and 1",
  );
  assertThrows(
    () => progressiveFailure(crossPly, load, { ...limit, loss: "half" as "by mode" }),
    InputError,
    "must be one of: by mode, whole ply",
  );
  assertThrows(
    () => progressiveFailure(crossPly, load, { ...limit, breakingWork: 0.5 }),
    InputError,
    "must be between 1 and 1000000",
  );
  assertThrows(
    () => progressiveFailure([], load, limit),
    InputError,
    "must be a list of 1 or more",
  );
});

Deno.test("an envelope meets the strengths on its axes", () => {
  const { points } = failureEnvelope(
    stackOfCode("[0_4]", { ply }),
    { first: "Nx", second: "Nxy", points: 8 },
    limit,
  );
  // 1 mm of one material: N = strength × 1 mm.
  assertEquals(points.length, 8);
  assertClose(points[0]!.first, 800e3, { relative: 1e-13 });
  assertClose(points[2]!.second, 60e3, { relative: 1e-13 });
  assertClose(points[4]!.first, -600e3, { relative: 1e-13 });
  assertEquals([points[0]!.second, points[2]!.mode, points[4]!.mode], [0, "12", "1c"]);
  // At 45° between axes scaled to 700 and 60 the shear is met first: 700/60 × 60.
  assertClose(points[1]!.first, 700e3, { relative: 1e-13 });
  assertClose(points[1]!.second, 60e3, { relative: 1e-13 });
});

Deno.test("a climate that breaks plies by itself leaves no envelope", () => {
  const axes = { first: "Nx", second: "Mx", points: 4, temperatureChange: -600 } as const;
  const { points } = failureEnvelope(crossPly, axes, { criterion: "Tsai-Wu" });
  assert(points.every(({ first, second }) => first === 0 && second === 0));
});

Deno.test("other loads are held while an envelope is drawn", () => {
  // σ2 = 20 MPa held; σ1 of F11 σ1² + (F1 + 2 F12 σ2) σ1 + F2 σ2 + F22 σ2² = 1, in 40 digits.
  const axes = { first: "Nx", second: "Nxy", points: 4 } as const;
  const stack = stackOfCode("[0_4]", { ply });
  const by = { criterion: "Tsai-Wu" } as const;
  const { points } = failureEnvelope(stack, { ...axes, held: { Ny: 20e3 } }, by);
  assertClose(points[0]!.first, 765685.4249492381, { relative: 1e-12 });
  assertClose(points[2]!.first, -365685.424949238, { relative: 1e-12 });
  const broken = failureEnvelope(stack, { ...axes, held: { Ny: 41e3 } }, by);
  assert(broken.points.every(({ first, second }) => first === 0 && second === 0));
});

Deno.test("each kind of bad axis is refused", () => {
  const draw = (axes: object) => (): unknown =>
    failureEnvelope(crossPly, axes as { first: "Nx"; second: "Ny" }, limit);
  assertThrows(draw({ first: "Nz", second: "Ny" }), InputError, "must be one of: Nx, Ny");
  assertThrows(draw({ first: "Nx", second: "Nx" }), InputError, "another than the first");
  const held = (loads: object) => draw({ first: "Nx", second: "Ny", held: loads });
  assertThrows(held({ Nx: 1 }), InputError, "held load");
  assertThrows(held({ My: NaN }), InputError, "held My");
  assertThrows(draw({ first: "Nx", second: "Ny", points: 3 }), InputError, "4 or above");
  assertThrows(draw({ first: "Nx", second: "Ny", points: 1e5 }), InputError, "between 4 and 3600");
  assertThrows(
    draw({ first: "Nx", second: "Ny", temperatureChange: NaN } satisfies LaminateLoad | object),
    InputError,
    "temperatureChange is NaN",
  );
});
