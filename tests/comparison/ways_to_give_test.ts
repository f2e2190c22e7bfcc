import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { layupStack, stripDemand, waysToGive } from "../../lib/comparison/mod.ts";
import type { LayupRecord } from "../../lib/records/mod.ts";
import { assertClose } from "../close.ts";
import { layupOf } from "./_layups.ts";

const heel = { span: 0.4, width: 0.3, force: 900, pressedOn: "bag" } as const;
const options = { criterion: "maximum stress" } as const;
const of = (layup: LayupRecord, change: Partial<Parameters<typeof waysToGive>[0]> = {}) =>
  waysToGive({ layup, stack: layupStack(layup), demand: stripDemand(heel), options, ...change });

Deno.test("a heel, a pressure, a moment and a pull add up", () => {
  // By hand: 900 × 0.4/(4 × 0.3) + 5000 × 0.4²/8 + 20 = 300 + 100 + 20 N; shear 1500 + 1000 N/m.
  const all = { ...heel, pressure: 5000, moment: 20, pull: -3000, pad: 0.06 };
  assertClose(stripDemand(all).Mx, -420, { relative: 1e-12 });
  assertClose(stripDemand({ ...all, pressedOn: "mould" }).Mx, 420, { relative: 1e-12 });
  assertClose(stripDemand(all).Qx, 2500, { relative: 1e-12 });
  assertEquals(stripDemand(all).Nx, -3000);
  assertEquals(stripDemand(all).patch, { force: 900, lengthX: 0.06, lengthY: 0.06 });
  assertEquals(stripDemand(heel).patch, undefined);
});

Deno.test("a strip that cannot be meant is refused", () => {
  assertThrows(() => stripDemand({ ...heel, span: 0 }), InputError, "span");
  assertThrows(() => stripDemand({ ...heel, width: NaN }), InputError, "width");
  assertThrows(() => stripDemand({ ...heel, force: -1 }), InputError, "force");
  assertThrows(() => stripDemand({ ...heel, pad: 0 }), InputError, "pad");
  assertThrows(() => stripDemand({ ...heel, pull: "3 kN" as never }), InputError, "pull");
  assertThrows(() => stripDemand({ ...heel, pressedOn: "top" as never }), InputError, "side");
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
  const bag = of(layup, { demand: stripDemand(pad) }).ways;
  const mould = of(layup, { demand: stripDemand({ ...pad, pressedOn: "mould" }) }).ways;
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
});
