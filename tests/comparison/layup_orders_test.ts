import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { compareOrders } from "../../lib/comparison/mod.ts";
import { assertClose } from "../close.ts";
import { layupOf } from "./_layups.ts";

const panel = { lengthX: 0.5, lengthY: 0.4, temperatureChange: -45 };

Deno.test("of a cross-ply the mirrored order with its fibres outside along x is told to be flattest", () => {
  const layup = layupOf(
    "glass UD 250, 0",
    "glass UD 250, 0",
    "glass UD 250, 90",
    "glass UD 250, 90",
  );
  const { laid, flattest, worst, orders, complete } = compareOrders(layup, panel);
  // 4!/(2! 2!) = 6 sequences, 2 of them their own mirror image: 4 sheets.
  assertEquals([orders.length, complete], [4, true]);
  assertEquals([laid.code, laid.mirrored], ["[0₂/90₂]", false]);
  assertEquals([flattest.code, flattest.mirrored], ["[0/90]s", true]);
  assertEquals(worst.code, laid.code);
  assertClose(flattest.gap, 0, { absolute: 1e-12 });
  // Turned over and by a right angle the cross-ply is itself again: a saddle, as deep both ways.
  const { kappaX, kappaY } = laid.warp.curvature;
  assertClose(kappaX, -kappaY, { relative: 1e-9 });
});

Deno.test("a schedule that is the best keeps its place", () => {
  const layup = layupOf("glass twill 200", "PVC foam 80,,10", "glass twill 200");
  const { laid, flattest, worst, orders } = compareOrders(layup, panel);
  assertEquals(orders.length, 1);
  assert(flattest === laid && worst === laid);
  assertEquals(laid.code, "[(0/90)/core|]s");
});

Deno.test("the weighed fibre fraction drives the warp and the layers are counted anew", () => {
  const layup = layupOf("glass mat 300", "glass UD 500, 0");
  const gap = (value: number): number =>
    compareOrders(layup, panel, { fibreFraction: { value, u: 0 } }).laid.gap;
  assert(Math.abs(gap(0.17) / gap(0.22) - 1) > 0.02);
  const layers = compareOrders(layup, panel).orders.map((order) => order.layup.layers);
  assertEquals(layers.map((each) => each.map(({ layer }) => layer)), [[1, 2]]);
});

Deno.test("a core outside and a panel without size are refused", () => {
  const outside = layupOf("PVC foam 80,,10", "glass twill 200");
  assertThrows(() => compareOrders(outside, panel), InputError, "outer ply");
  const layup = layupOf("glass twill 200");
  assertThrows(() => compareOrders(layup, { ...panel, lengthX: 0 }), InputError, "length along x");
  assertThrows(() => compareOrders(layup, null as never), InputError, "panel");
});
