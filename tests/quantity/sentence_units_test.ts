import { assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { sentenceIn } from "../../lib/quantity/mod.ts";

const US = (sentence: string): string => sentenceIn(sentence, "US");

Deno.test("quantities of a remark in US units, by their definitions, digits kept", () => {
  // 1 in = 25.4 mm, 1 lbf = 4.4482216 N, 1 oz = 28.349523 g, 1 lb/ft³ = 16.018463 kg/m³.
  assertEquals(
    US("Reading 7, at 60 N, lies 0.418 mm off the line"),
    "Reading 7, at 13 lbf, lies 0.0165 in off the line",
  );
  assertEquals(US("leaves −761 g of resin"), "leaves −1.68 lb of resin");
  assertEquals(US("leaves 12 ± 3 g of resin"), "leaves 0.42 ± 0.11 oz of resin");
  assertEquals(
    US("it weighed 69 kg/m³, not 74 to 86 kg/m³"),
    "it weighed 4.3 lb/ft³, not 4.6 to 5.4 lb/ft³",
  );
  assertEquals(US("cooled from 60 °C to 15 °C"), "cooled from 140 °F to 59 °F");
  assertEquals(US("60 to 15 °C"), "140 to 59 °F");
  assertEquals(US("20 ± 2 °C"), "68 ± 3.6 °F");
  assertEquals(US("240 MPa and 19 GPa"), "34.8 ksi and 2.8 Msi");
});

Deno.test("what is no quantity stays as it is", () => {
  for (
    const sentence of [
      "aramid honeycomb 48 3 mm",
      "glass twill 200, layer 5, 35.8 % fibre by volume",
      "A7 m, 3.m, 12g, version 2 of 3, 4 mmHg, 3 g-clamps is 3 times",
      "$5 <b>& 1/2</b>",
    ]
  ) {
    assertEquals(US(sentence), sentence);
  }
  assertEquals(sentenceIn("60 N", "metric"), "60 N");
});

Deno.test("no text, and an unknown system, are refused", () => {
  assertThrows(() => sentenceIn(5 as never, "US"), InputError, "sentence");
  assertThrows(() => sentenceIn("60 N", "imperial" as never), InputError, "system");
});
