import { assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { displayUnit } from "../../lib/quantity/mod.ts";
import { assertClose } from "../close.ts";

Deno.test("an axis gets the trade's unit and its factor, in either system", () => {
  const cases = [
    ["length", "metric", "mm", 1000],
    ["length", "US", "in", 1 / 0.0254],
    ["areal weight", "metric", "g/m²", 1000],
    ["areal weight", "US", "oz/yd²", 1 / 0.03390574747488229],
    ["force", "US", "lbf", 1 / 4.4482216152605],
    ["ratio", "metric", "%", 100],
    ["count", "metric", "", 1],
  ] as const;
  for (const [dimension, system, symbol, perSI] of cases) {
    const unit = displayUnit(dimension, { system });
    assertEquals(unit.symbol, symbol);
    assertClose(unit.perSI, perSI, { relative: 1e-14 });
  }
});

Deno.test("a large value brings the larger unit", () => {
  assertEquals(displayUnit("modulus", { largest: 2e9 }).symbol, "GPa");
  assertEquals(displayUnit("modulus", { largest: 2e8 }).symbol, "MPa");
});

Deno.test("a temperature, an unknown kind and a size that is no number are refused", () => {
  assertThrows(() => displayUnit("temperature"), InputError, "zero of its own");
  assertThrows(() => displayUnit("colour" as "length"), InputError, "kind of quantity");
  assertThrows(() => displayUnit("length", { largest: NaN }), InputError, "largest value is NaN");
});
