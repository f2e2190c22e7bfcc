import { assert, assertEquals, assertThrows } from "@std/assert";
import { assertClose } from "../close.ts";
import { InputError } from "../../lib/check/mod.ts";
import {
  activationEnergy,
  curePlan,
  cureProgress,
  cureRateFactor,
  degreeOfCure,
  equivalentTime,
  planNights,
} from "../../lib/shop/mod.ts";

const rate = { activationEnergy: 55_000, referenceTemperature: 298.15 };
const log = {
  times: [0, 1800, 7200, 14400, 43200],
  temperatures: [291.15, 313.15, 333.15, 328.15, 293.15],
};

// Python's mpmath, 50 digits, adaptive quadrature on eighths of each step.
Deno.test("equivalent time of a warm cure, exact and by both shortcuts", () => {
  const found = equivalentTime(log, rate);
  assertClose(found.exact, 184730.4498916935, { relative: 1e-13 });
  assertClose(found.trapezoid, 222446.80343928424, { relative: 1e-13 });
  assertClose(found.atMeanTemperature, 143369.54186281831, { relative: 1e-12 });
  assertClose(found.meanTemperature, 315.19166666666667, { relative: 1e-14 });
  assertEquals(found.duration, 43200);
  // A log that does not begin at 0 says the same.
  const later = equivalentTime({ ...log, times: log.times.map((time) => time + 5000) }, rate);
  assertEquals(later.duration, 43200);
  assertClose(later.meanTemperature, found.meanTemperature, { relative: 1e-14 });
  assertClose([later.exact, later.trapezoid], [found.exact, found.trapezoid], { relative: 1e-13 });
});

Deno.test("a ramp of a millionth of a degree loses no digits", () => {
  const ramp = { times: [0, 3600], temperatures: [300, 300.000001] };
  // Temperatures of 300 K are doubles in steps of 5.7e-14 K: 2e-15 of the rate.
  assertClose(equivalentTime(ramp, rate).exact, 4127.8313581701042, { relative: 1e-14 });
});

Deno.test("a ramp over hundreds of degrees is still exact", () => {
  const ramp = { times: [0, 3600], temperatures: [200, 600] };
  const wide = { activationEnergy: 90_000, referenceTemperature: 298.15 };
  assertClose(equivalentTime(ramp, wide).exact, 23160413204.588104, { relative: 1e-12 });
  const fast = { times: [0, 60], temperatures: [293.15, 423.15] };
  const cold = { activationEnergy: 70_000, referenceTemperature: 293.15 };
  assertClose(equivalentTime(fast, cold).exact, 60788.516302950293, { relative: 1e-13 });
});

Deno.test("rates and energies go there and back", () => {
  const ratio = cureRateFactor(318, { activationEnergy: 61_000, referenceTemperature: 293 });
  assertClose(activationEnergy({ cooler: 293, warmer: 318, ratio }), 61_000, { relative: 1e-13 });
  assertClose(activationEnergy({ cooler: 298, warmer: 308, ratio: 2 }), 52896.462197602191, {
    relative: 1e-14,
  });
});

const sheet = {
  temperature: 298.15,
  handlingTime: 72_000,
  fullCureTime: 604_800,
  activationEnergy: 55_000,
};

Deno.test("a cool workshop makes curing longer", () => {
  const plan = curePlan(sheet, 291.15);
  assertClose(plan.handlingTime, 122743.03797078512, { relative: 1e-12 });
  assertClose(plan.fullCureTime / plan.handlingTime, 8.4, { relative: 1e-13 });
  // 7 K below the sheet's 25 °C: it may never cure fully. It softens from 18 + 15 °C on.
  assertEquals([plan.byRuleOfThumb, plan.mayStopShort, plan.notes.length], [false, true, 1]);
  assertClose(plan.softensFrom, 306.15, { relative: 1e-14 });
  assertEquals(curePlan(sheet, 293.16).mayStopShort, false);
  assertEquals(curePlan(sheet, 293.14).mayStopShort, true);
  // 11 °C, 14 K below: said too, where only what is beyond 15 K used to be.
  assert(curePlan(sheet, 284.15).notes[0]!.startsWith("At 11 °C, below the sheet's 25 °C"));
  assert(curePlan(sheet, 353.15).notes[0]!.includes("heats itself"));
  // At the sheet's own temperature nothing is guessed.
  const { activationEnergy: _, ...bare } = sheet;
  assertEquals([curePlan(bare, 298.15).byRuleOfThumb, curePlan(bare, 298.15).notes.length], [
    false,
    0,
  ]);
  // Rule of thumb, cold, far from the sheet's temperature, a post-cure asked for.
  assertEquals(curePlan({ ...bare, postCureTemperature: 333 }, 280).notes.length, 4);
});

Deno.test("a log tells whether the part can be handled", () => {
  const found = cureProgress(sheet, log);
  assertClose(found.shareOfHandling, 184730.4498916935 / 72_000, { relative: 1e-12 });
  assertEquals(found.verdict, "holds");
  const lasting = cureProgress({ ...sheet, fullCureTime: 400_000 }, log);
  assertClose(lasting.shareOfFullCure, 184730.4498916935 / 400_000, { relative: 1e-12 });
  const cold = { times: [0, 43_200], temperatures: [288.15, 283.15] };
  assertEquals(cureProgress(sheet, cold).verdict, "fails");
});

Deno.test("degree of cure from one point", () => {
  // 1 − 0.2^2.5
  const degree = degreeOfCure(25_000, { time: 10_000, degree: 0.8 });
  assertClose(degree, 1 - 0.2 ** 2.5, { relative: 1e-14 });
});

const hour = 3600;
const sessions = { length: 4 * hour, gap: 20 * hour };

Deno.test("nights: the longest chain counts, and what fits one evening costs none", () => {
  const plan = planNights([
    { name: "first skin", after: [], handsOn: 2 * hour, wait: 12 * hour },
    { name: "core", after: ["first skin"], handsOn: 1.5 * hour, wait: 12 * hour },
    { name: "flip", after: ["core"], handsOn: 0.5 * hour, wait: 0 },
    { name: "second skin", after: ["flip"], handsOn: 2 * hour, wait: 12 * hour },
    { name: "hatch", after: [], handsOn: 2 * hour, wait: 12 * hour },
    { name: "fillets", after: ["second skin"], handsOn: hour, wait: 10 * hour },
    { name: "doublers", after: ["second skin", "hatch"], handsOn: hour, wait: 16 * hour },
    { name: "paint", after: ["fillets", "doublers"], handsOn: 2 * hour, wait: 48 * hour },
  ], sessions);
  assertEquals(plan.operations.map(({ session }) => session), [1, 2, 3, 3, 1, 4, 4, 5]);
  // Paint waits two days: one night of 20 h and two more days for the other 28 h.
  assertEquals(plan.operations.at(-1)?.nights, 3);
  assertEquals([plan.sessions, plan.nights], [5, 7]);
  assertEquals(plan.criticalPath, [
    "first skin",
    "core",
    "flip",
    "second skin",
    "fillets",
    "paint",
  ]);
  assertEquals(plan.operations.find(({ name }) => name === "hatch")?.critical, false);
  assertEquals(plan.notes.length, 0);
});

Deno.test("an evening with too much work in a row is noted", () => {
  const plan = planNights([
    { name: "sand", after: [], handsOn: 3 * hour, wait: 0 },
    { name: "skin", after: ["sand"], handsOn: 2 * hour, wait: 12 * hour },
  ], sessions);
  assertEquals([plan.sessions, plan.nights], [1, 1]);
  assertEquals(plan.notes, [
    "Session 1 holds more work, one piece after the other, than it is long.",
  ]);
});

Deno.test("cure refuses what cannot be", () => {
  assertThrows(() => cureRateFactor(-5, rate), InputError, "temperature is -5 K");
  assertThrows(
    () => activationEnergy({ cooler: 308, warmer: 298, ratio: 2 }),
    InputError,
    "must be above 308 K",
  );
  assertThrows(
    () => equivalentTime({ times: [0, 1], temperatures: [300] }, rate),
    InputError,
    "a list of 2 or more",
  );
  assertThrows(
    () => equivalentTime({ times: [0, 1, 2], temperatures: [300, 300] }, rate),
    InputError,
    "must be 3, one for each time",
  );
  assertThrows(
    () => equivalentTime({ times: [1, 0], temperatures: [300, 300] }, rate),
    InputError,
    "must come after the last",
  );
  assertThrows(() => curePlan({ ...sheet, fullCureTime: 1 }, 293), InputError, "must not be below");
  assertThrows(() => degreeOfCure(1, { time: 1, degree: 1 }), InputError, "must be below 1");
  const step = { name: "skin", after: [], handsOn: 1, wait: 1 };
  assertThrows(() => planNights([step, step], sessions), InputError, "must not stand twice");
  assertThrows(
    () => planNights([{ ...step, after: ["core"] }], sessions),
    InputError,
    'what comes before skin is "core", must be an operation',
  );
  assertThrows(
    () =>
      planNights([
        { ...step, after: ["core"] },
        { ...step, name: "core", after: ["skin"] },
      ], sessions),
    InputError,
    "must not wait for itself in a circle",
  );
});
