import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { layupStack, stripDemand, type WaysToGive, waysToGive } from "../../lib/comparison/mod.ts";
import type { LayupRecord } from "../../lib/records/mod.ts";
import { assertClose } from "../close.ts";
import { layupOf } from "./_layups.ts";

const heel = { span: 0.4, width: 0.3, force: 900, pressedOn: "bag" } as const;
const options = { criterion: "maximum stress" } as const;
type Loading = Parameters<typeof stripDemand>[0];
const of = (
  layup: LayupRecord,
  change: Partial<Parameters<typeof waysToGive>[0]> = {},
  loading: Loading = heel,
): WaysToGive => {
  const stack = layupStack(layup);
  return waysToGive({ layup, stack, demand: stripDemand(loading, stack), options, ...change });
};

const common = { density: 1, alpha1: 0, alpha2: 0 };
const face = {
  lamina: {
    ...common,
    name: "face",
    E1: 20e9,
    E2: 20e9,
    nu12: 0.1,
    G12: 4e9,
    G13: 3e9,
    G23: 3e9,
  },
  thickness: 0.5e-3,
  angleDeg: 0,
};
const foam = {
  lamina: {
    ...common,
    name: "foam",
    E1: 80e6,
    E2: 80e6,
    nu12: 0.3,
    G12: 27e6,
    G13: 27e6,
    G23: 27e6,
  },
  thickness: 10e-3,
  angleDeg: 0,
};
/** D 564.565, D12 57.922, D66 112.583 N·m, S 297675 N/m, by hand. */
const sandwich = [face, foam, face];

Deno.test("a line across, a pressure, a moment and a pull add up", () => {
  // By hand: 900 × 0.4/(4 × 0.3) + 5000 × 0.4²/8 + 20 = 300 + 100 + 20 N; shear 1500 + 1000 N/m.
  const all = { ...heel, pressure: 5000, moment: 20, pull: 3000 };
  assertClose(stripDemand(all, sandwich).Mx, -420, { relative: 1e-12 });
  assertClose(stripDemand({ ...all, pressedOn: "mould" }, sandwich).Mx, 420, { relative: 1e-12 });
  assertClose(stripDemand(all, sandwich).Qx, 2500, { relative: 1e-12 });
  const { Nx, My, Qy, patch, notes } = stripDemand(all, sandwich);
  assertEquals([Nx, My, Qy, patch, notes], [3000, 0, 0, undefined, []]);
});

Deno.test("under a pad a strip bends more than on average over its width, and across too", () => {
  // By an independent program: sine waves along, finite elements across of a plate with shear,
  // long sides free. Over the width the average is 300 N (width 0.3 m) and 150 N (0.6 m).
  for (
    const [width, pad, Mx, My, Qy] of [
      [0.3, 0.06, 350.373, 160.260, 3959.1],
      [0.3, 0.03, 415.387, 225.179, 8181.8],
      [0.6, 0.06, 276.662, 196.848, 4072.8],
    ] as const
  ) {
    const demand = stripDemand({ ...heel, width, pad }, sandwich);
    assertClose([demand.Mx, demand.My], [-Mx, -My], { relative: 1e-4 });
    assertClose(demand.Qy, Qy, { relative: 1e-3 });
    assertEquals(demand.patch, { force: 900, lengthX: pad, lengthY: pad });
  }
  // At the rim of the pad the rest of the program's waves falls as one over their number:
  // 4189.47 N/m at 101 of them, 4265.55 at 401, hence 4290.9. The rim's average is 3750.
  const { Qx } = stripDemand({ ...heel, pad: 0.06 }, sandwich);
  assertClose(Qx, 4290.9, { relative: 1e-3 });
});

Deno.test("a pad wider than the strip is cut off at its sides", () => {
  const { patch, Mx, Qx, Qy } = stripDemand({ ...heel, width: 0.05, pad: 0.06 }, sandwich);
  assertEquals([patch!.lengthX, patch!.lengthY, Qy], [0.06, 0.05, 0]);
  // By hand: F (L/4 − u/8)/b of a beam; a narrow strip curls, so that its sides hold 1 % more.
  assertClose(Math.abs(Mx), 900 * (0.1 - 0.0075) / 0.05, { relative: 0.01 });
  assert(Qx >= 9000);
});

Deno.test("plies that lie askew are said to be counted without their twist", () => {
  const askew = [{ ...face, lamina: { ...face.lamina, E2: 5e9 }, angleDeg: 30 }, foam, face];
  const [note] = stripDemand({ ...heel, pad: 0.06 }, askew).notes;
  assert(note!.includes("askew"));
  assertEquals(stripDemand(heel, askew).notes, []);
});

Deno.test("a push makes moments and shear grow, and at its critical value the strip buckles", () => {
  // By an independent program: finite elements of a beam with shear, D = 558.62 N·m free to curl,
  // S = 297675 N/m, span 0.6 m, push 5000 N/m; each line is one load alone.
  const push = { span: 0.6, width: 0.3, pressedOn: "mould", pull: -5000 } as const;
  for (
    const [load, Mx, Qx] of [
      [{ force: 900 }, 643.98672, 2470.41009],
      [{ pressure: 5000 }, 345.941923, 2146.6224],
      [{ moment: 20 }, 32.3855333, 76.8541233],
    ] as const
  ) {
    const demand = stripDemand({ ...push, ...load }, sandwich);
    assertClose([demand.Mx, demand.Qx], [Mx, Qx], { relative: 1e-6 });
    assert(demand.notes.some((note) => note.includes("34 %")), demand.notes.join());
  }
  // 1/(L²/(π² D) + 1/S) by hand; beside it the program's deflection changes its sign.
  const { criticalPush } = stripDemand(push, sandwich);
  assertClose(criticalPush, 14565.57677, { relative: 1e-9 });
  assertThrows(() => stripDemand({ ...push, pull: -14566 }, sandwich), InputError, "buckles");
  stripDemand({ ...push, pull: -14565 }, sandwich);
  const tiny = stripDemand({ ...push, force: 900, pull: -1e-9 }, sandwich);
  assertClose(tiny.Mx, 450, { relative: 1e-9 });
});

Deno.test("a push can buckle the strip as a whole, solid or sandwich; a pull cannot", () => {
  const layup = layupOf("glass twill 200", "PVC foam 80,,10", "glass twill 200");
  const push = { ...heel, force: 1, pull: -8000 };
  const { ways, notes } = of(layup, {}, push);
  const { criticalPush } = stripDemand(push, layupStack(layup));
  assertEquals(ways[0]!.what, "buckling");
  assertClose(ways[0]!.utilisation!, 8000 / criticalPush, { relative: 1e-12 });
  assert(notes.some((note) => note.includes("grow")));
  const half = of(layup, { options: { ...options, knockDown: 0.8 } }, push).ways;
  assertClose(half[0]!.utilisation!, 8000 / criticalPush / 0.8, { relative: 1e-12 });
  const solid = of(layupOf("glass twill 200", "glass twill 200"), {}, { ...push, pull: -1 });
  assertEquals(solid.ways[0]!.what, "buckling");
  const pulled = of(layup, {}, { ...push, pull: 8000 });
  assert(pulled.ways.every(({ what }) => what !== "buckling"));
});

Deno.test("a heel bends the plies across too, and no way is told twice", () => {
  const layup = layupOf("glass twill 200", "PVC foam 80,,10", "glass twill 200");
  const pad = of(layup, {}, { ...heel, pad: 0.06 }).ways;
  const line = of(layup).ways;
  const used = (ways: typeof line, what: string): number =>
    ways.find((way) => way.what === what)!.utilisation!;
  assert(used(pad, "layer 3 (bag side)") > 1.1 * used(line, "layer 3 (bag side)"));
  // Core shear at the pad, 4.3 kN/m, beside that at the bearers, 1.5 kN/m.
  assert(used(pad, "core shear") > 2.7 * used(line, "core shear"));
  assertEquals(new Set(pad.map(({ what }) => what)).size, pad.length);
});

Deno.test("a strip that cannot be meant is refused", () => {
  const refused = (change: object, word: string): unknown =>
    assertThrows(() => stripDemand({ ...heel, ...change }, sandwich), InputError, word);
  refused({ span: 0 }, "span");
  refused({ width: NaN }, "width");
  refused({ force: -1 }, "force");
  refused({ pad: 0 }, "pad");
  refused({ pull: "3 kN" }, "pull");
  refused({ pressedOn: "top" }, "side");
  assertThrows(() => stripDemand(heel, []), InputError);
});

Deno.test("on a thin skin the compressed face of a light foam wrinkles before a ply breaks", () => {
  const light = of(layupOf("glass twill 200", "PVC foam 48,,10", "glass twill 200"));
  assertEquals(light.ways[0]!.what, "wrinkling");
  assert(light.ways[0]!.how.includes("bag-side face"), light.ways[0]!.how);
  // On a stiff core the ply goes first.
  const stiff = of(layupOf("glass twill 200", "balsa 150,,10", "glass twill 200"));
  assertEquals([stiff.ways[0]!.layer, stiff.ways[0]!.what], [3, "layer 3 (bag side)"]);
});

Deno.test("pressing on the other side of a mirrored sandwich mirrors the answer", () => {
  const layup = layupOf("glass twill 200", "PVC foam 80,,10", "glass twill 200");
  const pad = { ...heel, pad: 0.05 };
  const bag = of(layup, {}, pad).ways;
  const mould = of(layup, {}, { ...pad, pressedOn: "mould" }).ways;
  assertClose(mould.map((way) => way.utilisation!), bag.map((way) => way.utilisation!), {
    relative: 1e-9,
  });
  assertEquals(
    bag.find(({ what }) => what === "layer 3 (bag side)")!.how,
    mould.find(({ what }) => what === "layer 1 (mould side)")!.how,
  );
  const crushing = (ways: typeof bag) => ways.find(({ what }) => what === "core crushing")!.how;
  assert(crushing(bag) !== undefined && crushing(mould) !== undefined);
});

Deno.test("a knock-down by half doubles every utilisation", () => {
  const layup = layupOf("glass twill 200", "PVC foam 80,,10", "glass twill 200");
  const full = of(layup).ways.map((way) => way.utilisation!);
  const half = of(layup, { options: { ...options, knockDown: 0.5 } }).ways;
  assertClose(half.map((way) => way.utilisation!), full.map((value) => 2 * value), {
    relative: 1e-9,
  });
});

Deno.test("a ply that cooling alone breaks goes before all others", () => {
  const layup = layupOf("glass UD 500, 0", "glass UD 500, 90", "glass UD 500, 0");
  const { ways } = of(layup, {
    temperatureChange: -150,
    options: { criterion: "maximum stress", knockDown: 0.3 },
  });
  assertEquals([ways[0]!.utilisation, ways[0]!.how], [null, "tension across the fibres"]);
});

Deno.test("a solid laminate has plies only, and two cores are said to be left out", () => {
  const solid = of(layupOf("glass twill 200", "glass mat 300", "glass twill 200"));
  assertEquals(solid.ways.every(({ layer }) => layer !== null), true);
  assert(solid.notes.every((note) => !note.includes("core")));
  const two = of(
    layupOf(
      "glass twill 200",
      "PVC foam 80,,5",
      "glass mat 300",
      "PVC foam 80,,5",
      "glass twill 200",
    ),
  );
  assert(two.notes.some((note) => note.includes("The core is not judged")));
  assertThrows(() => waysToGive(null as never), InputError, "loaded lay-up");
  const laid = layupOf("glass twill 200", "PVC foam 80,,10", "glass twill 200");
  const demand = { ...stripDemand(heel, sandwich), notes: undefined };
  assertThrows(
    () => waysToGive({ layup: laid, stack: sandwich, demand, options } as never),
    InputError,
    "notes of demand is missing",
  );
});
