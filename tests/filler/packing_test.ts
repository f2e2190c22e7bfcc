import { assertThrows } from "@std/assert";
import { assertClose } from "../close.ts";
import { InputError } from "../../lib/check/mod.ts";
import {
  bulkDensity,
  hollowRadiusRatio,
  packingFraction,
  particleDensity,
} from "../../lib/filler/mod.ts";

Deno.test("bulk density is the packed share of the particle density", () => {
  // 0.62 × 215 = 133.3 by hand
  assertClose(bulkDensity(215, 0.62), 133.3, { relative: 1e-14 });
  assertClose(particleDensity(133.3, 0.62), 215, { relative: 1e-14 });
  assertClose(packingFraction(133.3, 215), 0.62, { relative: 1e-14 });
});

Deno.test("a solid particle has no hollow", () => {
  assertClose(hollowRadiusRatio(2540, 2540), 0, { absolute: 0 });
  // 1 − 1/8 of the wall's density leaves a hollow of half the radius: η³ = 1/8.
  assertClose(hollowRadiusRatio(7, 8), 0.5, { relative: 1e-14 });
});

Deno.test("packing refuses what cannot be", () => {
  assertThrows(() => bulkDensity(0, 0.6), InputError, "particle density is 0 kg/m³");
  assertThrows(() => bulkDensity(200, 0), InputError, "packing is 0, must be above 0");
  assertThrows(() => particleDensity(120, 60), InputError, "must be between 0 and 1");
  assertThrows(() => packingFraction(250, 200), InputError, "must not be above the particle");
  assertThrows(() => hollowRadiusRatio(2600, 2540), InputError, "must not be above the wall's");
  assertThrows(() => bulkDensity(NaN, 0.6), InputError, "must be a finite number");
  assertThrows(() => bulkDensity("200" as unknown as number, 0.6), InputError, '"200"');
});
