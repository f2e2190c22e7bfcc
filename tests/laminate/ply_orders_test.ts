import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { laminateStiffness, plyOrders, type Stack, stackOfCode } from "../../lib/laminate/mod.ts";
import { assertClose } from "../close.ts";

const lamina = {
  name: "glass ply",
  E1: 40e9,
  E2: 10e9,
  G12: 4e9,
  nu12: 0.28,
  G13: 4e9,
  G23: 3e9,
  density: 1900,
  alpha1: 7e-6,
  alpha2: 25e-6,
};
const ply = { lamina, thickness: 0.25e-3 };
const foam = { ...lamina, name: "foam", E1: 70e6, E2: 70e6, G12: 27e6 };
const core = { lamina: foam, thickness: 0.01 };
const anglesOf = (stack: Stack): string => stack.map(({ angleDeg }) => angleDeg).join(" ");
const namesOf = (stack: Stack): string => stack.map(({ lamina }) => lamina.name[0]).join("");

Deno.test("every order is listed once, a sheet turned over not again", () => {
  // Three different plies: 3! = 6 orders, of which each is another one from the other side.
  const { orders, complete } = plyOrders(stackOfCode("[0/45/90]", { ply }));
  assertEquals(orders.map(anglesOf).sort(), ["0 45 90", "0 90 45", "45 0 90"]);
  assert(complete);
  // 0 0 90 90 45: 5!/(2! 2!) = 30 sequences, of which 2 are their own reverse: (30 + 2)/2 = 16.
  assertEquals(plyOrders(stackOfCode("[0_2/90_2/45]", { ply })).orders.length, 16);
  assertEquals(plyOrders(stackOfCode("[0_6]", { ply })).orders.length, 1);
  // All 30 are looked through where 16 may be listed, and 15 do not hold them.
  const most = (count: number): readonly [number, boolean] => {
    const { orders, complete } = plyOrders(stackOfCode("[0_2/90_2/45]", { ply }), { most: count });
    return [orders.length, complete];
  };
  assertEquals([most(16), most(15)], [[16, true], [15, false]]);
});

Deno.test("the order that was given comes first, as it was given", () => {
  const stack = stackOfCode("[90/45/0]", { ply });
  assertEquals(plyOrders(stack).orders[0], [...stack]);
});

Deno.test("a ply turned by half a turn is the same ply", () => {
  const stack = [{ ...ply, angleDeg: 90 }, { ...ply, angleDeg: -90 }];
  assertEquals(plyOrders(stack).orders.length, 1);
});

Deno.test("a core stays inside", () => {
  const stack = stackOfCode("[0_2/core/0_2]", { ply, named: { core } });
  const { orders } = plyOrders(stack, { inside: ["foam"] });
  assertEquals(orders.map(namesOf), ["ggfgg", "gggfg"]);
});

Deno.test("where there are too many orders the swaps of two plies are listed, and it is said", () => {
  const stack = stackOfCode("[0_8/90_8]", { ply });
  const { orders, complete } = plyOrders(stack);
  // 8 × 8 swaps and the stack itself, less those that are the same from the other side:
  // swap (i, j) is from the other side the swap (j', i') of the mirrored places, 8 of 64 are their
  // own; but the stack from the other side is 90s first, so that none coincide.
  assertEquals(orders.length, 65);
  assert(!complete);
  for (const order of orders) {
    assertEquals(order.filter(({ angleDeg }) => angleDeg === 90).length, 8);
  }
  assertEquals(plyOrders(stack, { most: 10 }).orders.length, 10);
  assert(!plyOrders(stackOfCode("[0/45/90]", { ply }), { most: 2 }).complete);
});

Deno.test("the order changes D and B, never A", () => {
  const { orders } = plyOrders(stackOfCode("[0_2/45/-45/90]", { ply }));
  const first = laminateStiffness(orders[0]!);
  const different = new Set<string>();
  for (const order of orders) {
    const { A11, A12, A16, A22, A26, A66, D11 } = laminateStiffness(order);
    const now = { A11, A12, A16, A22, A26, A66 };
    for (const [name, value] of Object.entries(now)) {
      assertClose(value, first[name as keyof typeof now], { relative: 1e-12, absolute: 1e-3 });
    }
    different.add(D11.toPrecision(9));
  }
  assert(different.size > 5);
});

Deno.test("orders that cannot be listed are refused", () => {
  const sandwich = stackOfCode("[core/0]", { ply, named: { core } });
  assertThrows(() => plyOrders(sandwich, { inside: ["foam"] }), InputError, "must not be one of");
  assertThrows(() => plyOrders([]), InputError, "stack");
  assertThrows(() => plyOrders(sandwich, { most: 0 }), InputError, "most orders");
  assertThrows(() => plyOrders(sandwich, { most: NaN }), InputError, "most orders");
  assertThrows(() => plyOrders(sandwich, null as never), InputError, "rules");
});
