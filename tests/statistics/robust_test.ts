import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "@laminate/notebooks/check";
import { randomGenerator } from "@laminate/notebooks/numeric";
import { findSlips, fitLine, fitLineBoth, robustLine } from "@laminate/notebooks/statistics";
import { assertClose } from "../close.ts";

/** y = 1 + 2x with scatter 0.1, and mistakes added at some places. */
function readings(
  count: number,
  mistakes: Readonly<Record<number, number>> = {},
): { x: number[]; y: number[] } {
  const random = randomGenerator(3);
  const x = Array.from({ length: count }, (_, i) => i);
  const y = x.map((at) => 1 + 2 * at + 0.1 * random.normal() + (mistakes[at] ?? 0));
  return { x, y };
}

Deno.test("clean readings: robust line and least squares agree", () => {
  const given = readings(40);
  const [robust, plain] = [robustLine(given), fitLine(given)];
  assertClose(robust.slope.value, plain.slope.value, { absolute: plain.slope.u / 2 });
  assertClose(robust.slope.u, plain.slope.u, { relative: 0.15 });
  assertEquals(robust.suspects, []);
  assert(robust.weights.every((weight) => weight > 0.3 && weight <= 1));
});

Deno.test("ten wrong readings of thirty are shown and do not move the line", () => {
  const places = [1, 4, 5, 9, 13, 14, 20, 22, 27, 29];
  const given = readings(30, Object.fromEntries(places.map((i) => [i, 3 + i / 10])));
  const { slope, suspects, residuals, weights } = robustLine(given);
  assertClose(slope.value, 2, { absolute: 4 * slope.u });
  assertEquals(suspects.map(({ index }) => index).sort((a, b) => a - b), places);
  // Nothing is left out of what was given.
  assertEquals([residuals.length, weights.length], [30, 30]);
  const [worst] = suspects;
  assertEquals(worst!.index, 29);
  assertClose(worst!.y - worst!.expected, residuals[29]!, { relative: 1e-12 });
  assertEquals(worst!.weight, 0);
  // Least squares, for comparison, is off by many of its standard errors' worth.
  assert(Math.abs(fitLine(given).intercept.value - 1) > 0.5);
});

Deno.test("readings that are exact but for one leave a scale of the instrument's step", () => {
  const given = { x: [0, 1, 2, 3, 4, 5, 6], y: [0, 1, 2, 3.5, 4, 5, 6] };
  const exact = robustLine(given);
  assertEquals(exact.suspects.map(({ index }) => index), [3]);
  assertClose([exact.slope.value, exact.intercept.value], [1, 0], { absolute: 1e-13 });
  const dial = robustLine(given, { resolution: 0.01 });
  assertClose(dial.scale, 0.01 / Math.sqrt(12), { relative: 1e-12 });
});

Deno.test("many readings are started from evenly spaced ones", () => {
  const given = readings(5000, { 17: 50, 4000: -80 });
  const indices = robustLine(given).suspects.map(({ index }) => index);
  assertEquals(indices.slice(0, 2), [4000, 17]);
});

Deno.test("a step and a single slip in one row are told apart, with their sizes", () => {
  const given = readings(20, { 5: 3 });
  for (let i = 12; i < 20; i++) given.y[i]! += 1;
  const slips = findSlips(given);
  assertEquals(slips.map(({ kind, index }) => [kind, index]), [["reading", 5], ["step", 12]]);
  assertClose(slips[0]!.size, 3, { absolute: 3 * slips[0]!.u });
  assertClose(slips[1]!.size, 1, { absolute: 3 * slips[1]!.u });
  assert(slips.every(({ chance }) => chance < 1e-4));
});

Deno.test("clean rows raise a slip about as seldom as the chance allowed", () => {
  const random = randomGenerator(8);
  let told = 0;
  for (let row = 0; row < 1000; row++) {
    const x = Array.from({ length: 12 }, (_, i) => i);
    const y = x.map((at) => at + random.normal());
    if (findSlips({ x, y }, { chance: 0.05 }).length > 0) told++;
  }
  // Bonferroni is on the safe side: at most 5 %, and not never.
  assert(told > 2 && told < 60, `${told} of 1000`);
});

Deno.test("exact rows have no slip, and one exact slip is found", () => {
  const x = [0, 1, 2, 3, 4, 5, 6];
  assertEquals(findSlips({ x, y: x.map((at) => 3 * at) }), []);
  assertEquals(findSlips({ x, y: x }), []);
  const [slip] = findSlips({ x, y: [0, 1, 2, 3.5, 4, 5, 6] });
  assertClose(slip!.size, 0.5, { relative: 1e-9 });
  assertEquals(slip!.index, 3);
});

Deno.test("errors in x alone are errors in y of the turned line", () => {
  const given = readings(10);
  const turned = fitLine({ x: given.y, y: given.x }, { uY: 0.05 });
  const both = fitLineBoth(given, { uX: 0.05, uY: 1e-9 });
  assertClose(both.slope.value, 1 / turned.slope.value, { relative: 1e-9 });
  assertClose(both.chiSquared, turned.chiSquared, { relative: 1e-6 });
});

Deno.test("without error in x it is the weighted line", () => {
  const given = readings(10);
  const plain = fitLine(given, { uY: 0.1 });
  const both = fitLineBoth(given, { uX: 1e-9, uY: 0.1 });
  assertClose(both.slope.value, plain.slope.value, { relative: 1e-12 });
  assertClose([both.slope.u, both.intercept.u], [plain.slope.u, plain.intercept.u], {
    relative: 1e-9,
  });
  assertClose(both.correlation, plain.correlation, { relative: 1e-9 });
});

Deno.test("refusals of robust lines, slips and lines with both uncertain", () => {
  const few = { x: [1, 2, 3], y: [1, 2, 3] };
  assertThrows(() => robustLine(few), InputError, "must be 5 or more");
  assertThrows(() => findSlips(few), InputError, "must be 6 or more");
  const upright = { x: [1, 1, 1, 1, 1, 1, 2], y: [1, 2, 3, 4, 5, 6, 7] };
  assertThrows(() => robustLine(upright), InputError, "too many stand at one x");
  const atOne = { x: [1, 1, 1, 1, 1, 1], y: [1, 2, 3, 4, 5, 6] };
  assertThrows(() => findSlips(atOne), InputError, "all readings stand at one x");
  assertThrows(() => robustLine(readings(9), { resolution: -1 }), InputError, "resolution is -1");
  assertThrows(() => findSlips(readings(9), { chance: 5 }), InputError, "chance is 5");
  assertThrows(() => fitLineBoth(few, { uX: 0, uY: 1 }), InputError, "uncertainty of x 0 is 0");
  assertThrows(() => fitLineBoth(few, { uX: [1], uY: 1 }), InputError, "must be 3");
  assertThrows(() => fitLineBoth(few, undefined as never), InputError, "uncertainties is missing");
});
