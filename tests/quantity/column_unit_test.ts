import { InputError } from "../../lib/check/mod.ts";
import { columnUnit, splitHeading } from "../../lib/quantity/mod.ts";
import { assertClose } from "../close.ts";
import { assertEquals, assertThrows } from "@std/assert";

Deno.test("a column's figures arrive in SI as the nearest double", () => {
  // Each right-hand side is the decimal written out: no neighbour of it will do.
  assertEquals(columnUnit("mm").toSI(12.7), 0.0127);
  assertEquals(columnUnit("g").toSI(412.3), 0.4123);
  assertEquals(columnUnit("g/m2").toSI(163), 0.163);
  assertEquals(columnUnit("GPa").toSI(72.4), 72.4e9);
  assertEquals(columnUnit("1e-6/K").toSI(5.4), 5.4e-6);
  assertEquals(columnUnit("%").toSI(54), 0.54);
  assertEquals(columnUnit("deg").toSI(-45), -45);
  assertEquals(columnUnit("kg/m3").toSI(80), 80);
});

Deno.test("a temperature has a zero of its own, a difference has none", () => {
  assertClose(columnUnit("degF").toSI(68), 293.15, { relative: 1e-15 });
  assertClose(columnUnit("degC").toSI(20), 293.15, { relative: 1e-15 });
  assertClose(columnUnit("degF", "temperature difference").toSI(9), 5, { relative: 1e-15 });
  assertEquals(columnUnit("degC", "temperature difference").toSI(20), 20);
});

Deno.test("spellings of one unit are one unit", () => {
  for (const text of ["g/m2", "g/m^2", "g/m²", "g / m²", "gsm"]) {
    assertEquals(columnUnit(text).unit, "g/m2", text);
  }
  assertEquals(columnUnit("µm").unit, "um");
  assertEquals(columnUnit("N m").unit, "N*m");
  assertEquals(columnUnit("N·m²").unit, "N*m2");
  assertEquals(columnUnit("°C").unit, "degC");
});

Deno.test("a cloth's ounces are per square yard only where an areal weight is asked for", () => {
  assertEquals(columnUnit("oz").dimension, "mass");
  assertEquals(columnUnit("oz", "areal weight").unit, "oz/yd2");
});

Deno.test("an unknown unit and a unit of another kind are refused with what would do", () => {
  assertThrows(() => columnUnit("furlong"), InputError, 'the unit is "furlong", must be a unit');
  assertThrows(() => columnUnit("N", "mass"), InputError, "must be a unit of mass: kg, g, mg");
  assertThrows(() => columnUnit("", "mass"), InputError, "must be a unit of mass");
  assertThrows(() => columnUnit(undefined as unknown as string), InputError, "missing");
});

Deno.test("a heading comes apart at its last underscore where a unit follows", () => {
  assertEquals(splitHeading("areal_g/m2"), { name: "areal", unit: "g/m2" });
  assertEquals(splitHeading(" alpha_1e-6/K "), { name: "alpha", unit: "1e-6/K" });
  assertEquals(splitHeading("laid_by"), { name: "laid_by" });
  assertEquals(splitHeading("layer_1"), { name: "layer_1" });
  assertEquals(splitHeading("floor_kN/m2"), { name: "floor", unit: "kN/m2" });
  assertEquals(splitHeading("g"), { name: "g" });
  assertThrows(() => splitHeading(7 as unknown as string), InputError, "must be text");
});
