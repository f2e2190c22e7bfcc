import { assert, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { type CurvedSheet, sheetsFigure } from "../../lib/charts/mod.ts";

const TEXT = { title: "A finding", description: "What is shown." };
const FLAT: CurvedSheet = { label: "flat", kappaX: 0, kappaY: 0, kappaXY: 0 };
const draw = (sheets: readonly CurvedSheet[], lengthX = 0.5): string =>
  sheetsFigure({ sheets, lengthX, lengthY: 0.4 }, TEXT).outerHTML;

Deno.test("the figure says how much larger heights are drawn, a round factor", () => {
  // A bow of 0.1 × 0.5²/8 = 3.125 mm may be drawn 0.15 m high: 48 times, and so 20.
  assert(draw([FLAT, { ...FLAT, kappaX: 0.1 }]).includes("heights drawn 20 times as large"));
  assert(draw([FLAT]).includes("heights as they are"));
});

Deno.test("two sheets curved alike and opposite are both drawn above the table", () => {
  const [up, down] = [draw([{ ...FLAT, kappaX: 0.1 }]), draw([{ ...FLAT, kappaX: -0.1 }])];
  assert(up !== down);
  const heights = [up, down].map((svg) => Number(svg.match(/ height="([\d.]+)"/)![1]));
  assert(Math.abs(heights[0]! - heights[1]!) < 1e-6);
});

Deno.test("more than three sheets and a sheet without size are refused", () => {
  assertThrows(() => draw([FLAT, FLAT, FLAT, FLAT]), InputError, "3 or fewer");
  for (const length of [0, -1, NaN]) {
    assertThrows(() => draw([FLAT], length), InputError, "length along x");
  }
});
