import { assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { outOfFlat } from "../../lib/laminate/mod.ts";
import { assertClose } from "../close.ts";

Deno.test("out of flat is the range of heights, found by walking over the sheet", () => {
  const cases = [
    [0.1, 0.05, 0],
    [0.1, -0.05, 0],
    [0.1, -0.05, 0.3],
    [-0.02, 0.1, 0.06],
    [0, 0.1, 0.05],
    [0, 0, -0.2],
    [0, 0, 0],
  ] as const;
  const [lengthX, lengthY] = [1.2, 0.5];
  for (const [kappaX, kappaY, kappaXY] of cases) {
    let [low, high] = [Infinity, -Infinity];
    for (let i = -200; i <= 200; i++) {
      for (let j = -200; j <= 200; j++) {
        const [x, y] = [i / 400 * lengthX, j / 400 * lengthY];
        const w = -(kappaX * x * x + kappaY * y * y + kappaXY * x * y) / 2;
        low = Math.min(low, w);
        high = Math.max(high, w);
      }
    }
    // The walk's grid misses a stationary point of an edge by up to half a step.
    assertClose(outOfFlat({ kappaX, kappaY, kappaXY }, { lengthX, lengthY }), high - low, {
      relative: 1e-4,
      absolute: 1e-15,
    });
  }
});

Deno.test("a curvature that is no number and a sheet without size are refused", () => {
  const flat = { kappaX: 0, kappaY: 0, kappaXY: 0 };
  const sheet = { lengthX: 1, lengthY: 1 };
  assertThrows(() => outOfFlat({ ...flat, kappaXY: NaN }, sheet), InputError, "kappaXY");
  assertThrows(() => outOfFlat(flat, { ...sheet, lengthY: 0 }), InputError, "length along y");
  assertThrows(() => outOfFlat(flat, undefined as never), InputError, "sheet");
});
