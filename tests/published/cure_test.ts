import { assertEquals } from "@std/assert";
import { assertClose } from "../close.ts";
import {
  activationEnergy,
  curePlan,
  cureRateFactor,
  infusionCheck,
  RULE_OF_TEN_DEGREES,
} from "../../lib/shop/mod.ts";

// A worked solution of school chemistry, as read in a public text: Ea 50 kJ/mol from 298 to 308 K
// is 1.93 times faster (unrounded 1.9258 with R 8.314).
Deno.test("rate ratio of 50 kJ/mol for ten degrees", () => {
  const factor = cureRateFactor(308, { activationEnergy: 50_000, referenceTemperature: 298 });
  assertClose(factor, 1.93, { absolute: 0.005 });
});

// NCERT, Chemistry for class 12, chapter 4, from memory: a rate that doubles from 298 to 308 K has
// an activation energy of 52.9 kJ/mol.
Deno.test("the rule of ten degrees is 52.9 kJ/mol", () => {
  const energy = activationEnergy({ cooler: 298, warmer: 308, ratio: 2 });
  assertClose(energy, 52.9e3, { absolute: 50 });
  assertClose(RULE_OF_TEN_DEGREES, 52.9e3, { absolute: 50 });
});

// common practice, no source: parts stay under vacuum overnight at room temperature.
Deno.test("a usual laminating resin is handled after a night at room temperature", () => {
  const sheet = { temperature: 298.15, handlingTime: 9 * 3600, fullCureTime: 7 * 86400 };
  const { handlingTime, byRuleOfThumb, notes } = curePlan(sheet, 293.15);
  assertEquals(handlingTime < 14 * 3600, true);
  assertEquals([byRuleOfThumb, notes.length], [true, 1]);
});

// common practice, no source: resin as thick as honey suits hand lay-up and not infusion. Honey has
// about 10 Pa s (from memory).
Deno.test("resin as thick as honey does not infuse a part that thin resin fills", () => {
  const part = {
    permeability: 1e-9,
    porosity: 0.5,
    pressure: 75e3,
    flowLength: 0.8,
    gelTime: 3 * 3600,
  };
  const thin = infusionCheck({ ...part, viscosity: 0.3 });
  assertEquals([thin.verdict, thin.notes.length], ["holds", 0]);
  const honey = infusionCheck({ ...part, viscosity: 10 });
  assertEquals([honey.verdict, honey.notes.length], ["fails", 1]);
});
