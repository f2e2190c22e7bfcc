import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import {
  allEdges,
  type Panel,
  type PanelLoad,
  type PanelStiffness,
  type PointSupport,
  ritzPanel,
} from "../../lib/sandwich/mod.ts";
import { assertClose } from "../close.ts";

/** A beam in the shape of a panel: no Poisson's ratio, so that a strip bends as one. */
const beamLike: PanelStiffness = {
  D11: 900,
  D12: 0,
  D16: 0,
  D22: 900,
  D26: 0,
  D66: 450,
  shear: { S44: 4e4, S45: 0, S55: 4e4 },
  massPerArea: 3,
  notes: [],
};
const [L, b] = [0.8, 0.1] as const;
const strip: Panel = {
  length: L,
  width: b,
  stiffness: beamLike,
  edges: { ...allEdges("free"), x0: "simple", x1: "simple" },
  loads: [],
};
const stay = (
  name: string,
  side: "far" | "near",
  change: Partial<PointSupport> = {},
): PointSupport => ({
  name,
  side,
  x: L / 2,
  y: b / 2,
  stiffness: 2e4,
  oneWay: true,
  preload: 0,
  // The pad spans the strip, so that the strip bends as a beam over it.
  padX: 0,
  padY: b,
  ...change,
});
const press = (force: number): PanelLoad => ({
  kind: "line",
  along: "y",
  force,
  at: L / 2,
  from: 0,
  to: b,
});

/** Beam by hand: deflection of the middle for a force there. */
const compliance = L ** 3 / (48 * 900 * b) + L / (4 * 4e4 * b);
const kp = 1 / compliance;
// A polynomial does not kink in shear as the beam does under the force: 1 % at degree 20.
const kink = { relative: 0.012 };

Deno.test("two opposed stays with preload: the far one takes, the near one goes slack by hand", () => {
  const [k1, k2, T0] = [2e4, 3e4, 60] as const;
  const supports = [
    stay("taking", "far", { stiffness: k1, preload: T0 }),
    stay("easing", "near", { stiffness: k2, preload: T0 }),
  ];
  // While both are taut: x = P/(kp + k1 + k2); slack at k2 x = T0.
  const slackAt = T0 / k2 * (kp + k1 + k2);
  const solve = (force: number): ReturnType<typeof ritzPanel> =>
    ritzPanel({ ...strip, loads: [press(force)], supports }, 20);
  const below = solve(0.9 * slackAt).reactions.supports;
  assertEquals(below.map(({ holds }) => holds), [true, true]);
  const x = 0.9 * slackAt / (kp + k1 + k2);
  assertClose(below[0]!.deflection, x, kink);
  assertClose(below[0]!.force, T0 + k1 * x, kink);
  assertClose(below[1]!.force, T0 - k2 * x, { absolute: 0.012 * T0 });
  // Beyond: (kp + k1) x + T0 = P.
  const beyond = solve(1.5 * slackAt).reactions.supports;
  assertEquals(beyond.map(({ holds }) => holds), [true, false]);
  const y = (1.5 * slackAt - T0) / (kp + k1);
  assertClose(beyond[0]!.deflection, y, kink);
  assertClose(beyond[0]!.force, T0 + k1 * y, kink);
  assertEquals(beyond[1]!.force, 0);
});

Deno.test("exactly, the spring law holds at each stay, taut and slack", () => {
  const supports = [
    stay("taking", "far", { stiffness: 2e4, preload: 60 }),
    stay("easing", "near", { stiffness: 3e4, preload: 60 }),
  ];
  for (const force of [-400, 0, 100, 900]) {
    const { reactions } = ritzPanel({ ...strip, loads: [press(force)], supports });
    reactions.supports.forEach(({ holds, force: found, deflection }, i) => {
      const { stiffness, side } = supports[i]!;
      const law = 60 + stiffness * (side === "far" ? deflection : -deflection);
      assertClose(found, Math.max(law, 0), { relative: 1e-9, absolute: 1e-9 });
      assertEquals(holds, law >= 0);
    });
  }
});

Deno.test("equal opposed preloads alone move nothing; a single stay pulls the panel to itself", () => {
  const pair = [stay("a", "far", { preload: 60 }), stay("b", "near", { preload: 60 })];
  const still = ritzPanel({ ...strip, supports: pair });
  assertClose(still.at(L / 2, b / 2).deflection, 0, { absolute: 1e-15 });
  const single = ritzPanel({ ...strip, supports: [pair[0]!] }).reactions;
  assert(single.supports[0]!.deflection < 0);
  assertClose(single.imbalance, 0, { absolute: 1e-9 });
});

Deno.test("a bearer without preload does not hold a panel that lifts off", () => {
  const { reactions, at } = ritzPanel({
    ...strip,
    loads: [press(-100)],
    supports: [stay("bearer", "far")],
  });
  assertEquals(reactions.supports[0]!.holds, false);
  const alone = ritzPanel({ ...strip, loads: [press(-100)] }).at(L / 2, b / 2).deflection;
  assertClose(at(L / 2, b / 2).deflection, alone, { relative: 1e-12 });
});

Deno.test("a plate on four equal mounts shares its load evenly, on three by the lever", () => {
  const mounts = (places: readonly (readonly [number, number])[]): PointSupport[] =>
    places.map(([x, y], i) => stay(`mount ${i + 1}`, "far", { x, y, oneWay: false, padY: 0 }));
  const loads: readonly PanelLoad[] = [{ kind: "uniform", pressure: 500 }];
  const floating: Panel = { ...strip, width: 0.5, edges: allEdges("free"), loads };
  const four = ritzPanel({
    ...floating,
    supports: mounts([[0.1, 0.1], [0.7, 0.1], [0.1, 0.4], [0.7, 0.4]]),
  });
  for (const { force } of four.reactions.supports) {
    assertClose(force, 500 * 0.8 * 0.5 / 4, { relative: 1e-9 });
  }
  const three = ritzPanel({ ...floating, supports: mounts([[0.1, 0.1], [0.1, 0.4], [0.7, 0.25]]) });
  // About x = 0.1: W × 0.3 = R × 0.6.
  const R = 200 * 0.3 / 0.6;
  assertClose(three.reactions.supports.map(({ force }) => force), [50, 50, R], { relative: 1e-8 });
});

Deno.test("a patch of people walks off its support: one-way mounts let go one by one", () => {
  const supports = [[0.1, 0.1], [0.7, 0.1], [0.1, 0.4], [0.7, 0.4]].map(([x = 0, y = 0], i) =>
    stay(`pad ${i + 1}`, "far", { x, y, padX: 0.03, padY: 0.03 })
  );
  const heel = (x: number, y: number): PanelLoad => ({
    kind: "patch",
    force: 700,
    x,
    y,
    lengthX: 0.06,
    lengthY: 0.06,
  });
  const floating: Panel = { ...strip, width: 0.5, edges: allEdges("free") };
  const middle = ritzPanel({ ...floating, loads: [heel(0.4, 0.25)], supports });
  assertEquals(middle.reactions.supports.map(({ holds }) => holds), [true, true, true, true]);
  // Near pad 4, inside the triangle of pads 2, 3, 4: pad 1 lifts.
  const near = ritzPanel({ ...floating, loads: [heel(0.65, 0.37)], supports });
  assertEquals(near.reactions.supports.map(({ holds }) => holds), [false, true, true, true]);
  assertClose(near.reactions.imbalance, 0, { absolute: 1e-9 });
  // Beyond the line of pads 2 and 4 the panel tips over.
  assertThrows(
    () => ritzPanel({ ...floating, loads: [heel(0.76, 0.25)], supports }),
    InputError,
    "must hold the panel: it is free to move or to turn as a whole",
  );
});

Deno.test("supports that cannot be meant are refused, and a panel that nothing holds", () => {
  const refused = (change: object, message: string): void => {
    const supports = [{ ...stay("mount", "far"), ...change }] as PointSupport[];
    assertThrows(() => ritzPanel({ ...strip, supports }), InputError, message);
  };
  refused({ x: 0.9 }, 'x of support "mount" is 0.9 m, must be between 0 and 0.8 m');
  refused({ y: -0.1 }, 'y of support "mount" is -0.1 m');
  refused({ stiffness: -5 }, 'stiffness of support "mount" is -5 N/m, must be above 0');
  refused({ preload: -5 }, 'preload of support "mount" is -5, must be 0 or above if it is one-way');
  refused({ side: "left" }, 'side of support "mount" is "left"');
  refused({ oneWay: "yes" }, 'oneWay of support "mount" is "yes", must be true or false');
  refused({ padX: 0.9 }, "must leave room for its pad of 0.9 m on the panel");
  refused({ padX: -1 }, 'pad along x of support "mount" is -1 m');
  assertThrows(
    () => ritzPanel({ ...strip, edges: allEdges("free"), loads: [press(1)] }),
    InputError,
    "must hold the panel",
  );
});
