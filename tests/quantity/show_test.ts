import { InputError } from "../../lib/check/mod.ts";
import { type Dimension, fromSI, showNumber, showQuantity } from "../../lib/quantity/mod.ts";
import { assertClose } from "../close.ts";
import { assertEquals, assertThrows } from "@std/assert";

Deno.test("each kind in a unit of its size, metric and US", () => {
  const cases: readonly [number, Dimension, string, string][] = [
    [0.2, "areal weight", "200 g/m²", "5.9 oz/yd²"],
    [3.5, "areal weight", "3.5 kg/m²", "103 oz/yd²"],
    [0.0127, "thickness", "12.7 mm", "0.5 in"],
    [0.6, "length", "600 mm", "23.6 in"],
    [3.2, "length", "3.2 m", "10.5 ft"],
    [0.4123, "mass", "412 g", "14.5 oz"],
    [4.2, "mass", "4.2 kg", "9.26 lb"],
    [72.4e9, "modulus", "72.4 GPa", "10.5 Msi"],
    [85e6, "modulus", "85 MPa", "12.3 ksi"],
    [240e6, "stress", "240 MPa", "34.8 ksi"],
    [1.1e6, "stress", "1.1 MPa", "160 psi"],
    [84660, "pressure", "84.7 kPa", "25 inHg"],
    [19.6133, "force", "19.6 N", "4.41 lbf"],
    [1234.6, "density", "1235 kg/m³", "77.1 lb/ft³"],
    [293.15, "temperature", "20 °C", "68 °F"],
    [5, "temperature difference", "5 K", "9 °F"],
    [22.5e-6, "thermal expansion", "22.5 µm/m/K", "12.5 µin/in/°F"],
    [-45, "angle", "−45°", "−45°"],
    [0.543, "ratio", "54.3 %", "54.3 %"],
    [5400, "time", "90 min", "90 min"],
    [0, "mass", "0 g", "0 oz"],
  ];
  for (const [si, dimension, metric, us] of cases) {
    assertEquals(showQuantity(si, dimension), metric);
    assertEquals(showQuantity(si, dimension, { system: "US" }), us);
  }
});

Deno.test("an uncertainty has two digits from 1 or 2, one from 3 up, and sets the value's", () => {
  assertEquals(showNumber(203.43, { u: 4.1 }), "203 ± 4");
  assertEquals(showNumber(203.43, { u: 2.96 }), "203.4 ± 3.0");
  assertEquals(showNumber(203.43, { u: 0.96 }), "203.4 ± 1.0");
  assertEquals(showNumber(203.43, { u: 2.9999999999999996 }), "203 ± 3");
  assertEquals(showNumber(203.43, { u: 14.6 }), "203 ± 15");
  assertEquals(showNumber(1234, { u: 34 }), "1230 ± 30");
  assertEquals(showNumber(1234, { u: 150 }), "1230 ± 150");
  assertEquals(showNumber(-0.001, { u: 0.3 }), "0.0 ± 0.3");
  assertEquals(showQuantity(0.2, "areal weight", { u: 0.004 }), "200 ± 4 g/m²");
  assertEquals(showQuantity(0.543, "ratio", { u: 0.021 }), "(54.3 ± 2.1) %");
  // An uncertainty of a temperature is a difference: 1 K is 1.8 °F, without an offset.
  assertEquals(showQuantity(293.15, "temperature", { system: "US", u: 1 }), "68.0 ± 1.8 °F");
});

Deno.test("digits and unit by request", () => {
  assertEquals(showNumber(2, { digits: 4 }), "2.000");
  assertEquals(showNumber(1234.56, { digits: 2 }), "1235");
  assertEquals(showNumber(1.5e-12), "1.50e-12");
  assertEquals(showNumber(0.00001234), "0.0000123");
  assertEquals(showQuantity(0.0006, "length", { unit: "mil" }), "23.6 mil");
  assertEquals(showQuantity(0.85, "mass", { unit: "kg", digits: 3 }), "0.850 kg");
});

Deno.test("each kind of refusal", () => {
  assertThrows(() => showQuantity(NaN, "mass"), InputError, "must be a finite number");
  assertThrows(() => showQuantity(1, "weight" as Dimension), InputError, "must be one of");
  assertThrows(() => showQuantity(1, "mass", { unit: "N" }), InputError, "must be a unit of mass");
  assertThrows(() => showQuantity(1, "mass", { u: -1 }), InputError, "must be 0 or above");
  assertThrows(() => showQuantity(1, "mass", { system: "UK" as "US" }), InputError, "metric, US");
  assertThrows(() => showNumber(1, 3 as unknown as object), InputError, "the style");
  assertThrows(() => showNumber(1, { digits: 0 }), InputError, "must be between 1 and 15");
  assertThrows(() => showNumber(1, { digits: 2.5 }), InputError, "must be a whole number");
  assertThrows(() => fromSI(1, "N", "mass"), InputError, "must be a unit of mass");
});

Deno.test("back from SI", () => {
  assertClose(fromSI(0.0254, "in"), 1, { relative: 1e-15 });
  assertClose(fromSI(273.15, "degF"), 32, { absolute: 1e-13 });
  assertClose(fromSI(5, "degF", "temperature difference"), 9, { relative: 1e-15 });
});
