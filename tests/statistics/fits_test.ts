import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "@laminate/notebooks/check";
import {
  correlationOf,
  fitGroups,
  fitLine,
  fitPolynomial,
  fromReadings,
  inverseReading,
  lineAt,
  newReadingAt,
  regress,
  summarise,
} from "@laminate/notebooks/statistics";
import { assertClose } from "../close.ts";

/** x̄ = 2.5, ȳ = 6, Sxx = 5. */
const SMALL = { x: [1, 2, 3, 4], y: [3, 5.6, 7, 8.4] };

Deno.test("a line by hand", () => {
  // Sxy = −1.5(−3) − 0.5(−0.4) + 0.5(1) + 1.5(2.4) = 8.8; Syy = 9 + 0.16 + 1 + 5.76 = 15.92.
  const fit = fitLine(SMALL);
  const slope = 8.8 / 5;
  const sse = 15.92 - slope * 8.8;
  const s = Math.sqrt(sse / 2);
  assertClose(fit.slope.value, slope, { relative: 1e-14 });
  assertClose(fit.intercept.value, 6 - slope * 2.5, { relative: 1e-14 });
  assertClose(fit.residualSd, s, { relative: 1e-13 });
  assertClose(fit.slope.u, s / Math.sqrt(5), { relative: 1e-13 });
  assertClose(fit.intercept.u, s * Math.sqrt(1 / 4 + 6.25 / 5), { relative: 1e-13 });
  assertClose(fit.rSquared, 1 - sse / 15.92, { relative: 1e-14 });
  // t(0.975, 2) = 4.302652729749462
  assertClose(fit.slope.high - fit.slope.value, 4.302652729749462 * fit.slope.u, {
    relative: 1e-12,
  });
  assertClose(fit.residuals, [3 - 3.36, 5.6 - 5.12, 7 - 6.88, 8.4 - 8.64], { absolute: 1e-14 });
  assertEquals([fit.dof, fit.count, fit.throughOrigin, fit.notes.length], [2, 4, false, 0]);
});

Deno.test("a line through the origin by hand", () => {
  // Sums about 0: Σxy = 3 + 11.2 + 21 + 33.6 = 68.8, Σxx = 30, Σyy = 9 + 31.36 + 49 + 70.56 = 159.92.
  const fit = fitLine(SMALL, { throughOrigin: true });
  const slope = 68.8 / 30;
  const sse = 159.92 - slope * 68.8;
  assertClose(fit.slope.value, slope, { relative: 1e-14 });
  assertClose(fit.residualSd, Math.sqrt(sse / 3), { relative: 1e-12 });
  assertClose(fit.slope.u, Math.sqrt(sse / 3 / 30), { relative: 1e-12 });
  assertClose(fit.rSquared, 1 - sse / 159.92, { relative: 1e-14 });
  assertEquals(fit.intercept, { value: 0, u: 0, low: 0, high: 0 });
});

Deno.test("relative weights count readings, and their scale does not matter", () => {
  const [x, y] = [[1, 2, 3, 4], [3, 5.6, 7, 8.4]];
  const doubled = fitLine({ x: [...x, 3], y: [...y, 7] });
  const weighted = fitLine({ x, y }, { weights: [1, 1, 2, 1] });
  assertClose(weighted.slope.value, doubled.slope.value, { relative: 1e-14 });
  assertClose(weighted.chiSquared, doubled.chiSquared, { relative: 1e-13 });
  const scaled = fitLine({ x, y }, { weights: [7, 7, 14, 7] });
  assertClose(scaled.slope.u, weighted.slope.u, { relative: 1e-13 });
});

Deno.test("known u(y): two readings make a line, and scatter does not change its u", () => {
  const fit = fitLine({ x: [0, 2], y: [1, 5] }, { uY: [0.3, 0.4] });
  assertClose(fit.slope.value, 2, { relative: 1e-14 });
  assertClose(fit.slope.u, 0.25, { relative: 1e-14 });
  assertClose(fit.intercept.u, 0.3, { relative: 1e-14 });
  assertEquals([fit.dof, fit.slope.dof, fit.residualSd], [0, undefined, 0]);
  assertClose(fitLine(SMALL, { uY: 0.3 }).slope.u, 0.3 / Math.sqrt(5), { relative: 1e-14 });
});

Deno.test("band of the line is narrowest at the mean; a new reading adds its own scatter", () => {
  const fit = fitLine(SMALL);
  assertClose(lineAt(fit, 2.5).u, fit.residualSd / 2, { relative: 1e-13 });
  assertClose(lineAt(fit, 0).u, fit.intercept.u, { relative: 1e-13 });
  assertClose(newReadingAt(fit, 2.5).u, fit.residualSd * Math.sqrt(1.25), { relative: 1e-13 });
  assertClose(newReadingAt(fit, 2.5, { u: 0 }).u, lineAt(fit, 2.5).u, { relative: 1e-13 });
  const wide = lineAt(fit, 2.5, { level: 0.99 });
  // t(0.995, 2) = 9.92484320091829
  assertClose(wide.factor, 9.92484320091829, { relative: 1e-12 });
});

Deno.test("reading back warns of a slope that is poorly known or none at all", () => {
  assertEquals(inverseReading(fitLine(SMALL), { value: 6, u: 0.1 }).notes.length, 1);
  const flat = fitLine({ x: [1, 2, 3, 4], y: [1, 2, 1, 2.1] });
  assert(inverseReading(flat, { value: 1.5, u: 0.1 }).notes[0]!.includes("cannot be told from 0"));
});

Deno.test("a large offset of x or y costs no digits", () => {
  const shifted = fitLine({ x: SMALL.x.map((x) => x + 2 ** 30), y: SMALL.y });
  assertClose(shifted.slope.value, 8.8 / 5, { relative: 1e-13 });
  assertClose(shifted.slope.u, fitLine(SMALL).slope.u, { relative: 1e-12 });
});

Deno.test("readings that are all equal have a slope of 0 and a note", () => {
  const fit = fitLine({ x: [1, 2, 3], y: [4, 4, 4] });
  assertEquals([fit.slope.value, fit.rSquared, fit.notes.length], [0, 0, 1]);
});

Deno.test("regression of degree 1 is the line, and weights act alike", () => {
  for (const options of [{}, { weights: [1, 2, 3, 4] }, { uY: [0.1, 0.2, 0.1, 0.3] }]) {
    const line = fitLine(SMALL, options);
    const { coefficients, covariance, ...fit } = fitPolynomial(SMALL, 1, options);
    assertClose(coefficients[1]!.value, line.slope.value, { relative: 1e-13 });
    assertClose(coefficients[1]!.u, line.slope.u, { relative: 1e-13 });
    assertClose(coefficients[0]!.u, line.intercept.u, { relative: 1e-13 });
    const off = line.correlation * line.slope.u * line.intercept.u;
    assertClose(covariance[1]!, off, { relative: 1e-12 });
    assertClose(fit.residuals, line.residuals, { absolute: 1e-13 });
    assertClose(fit.rSquared, line.rSquared, { relative: 1e-12 });
    assertClose(fit.residualSd, line.residualSd, { relative: 1e-12 });
  }
});

Deno.test("correlation by hand, and none where one does not vary", () => {
  // About the means a is −1, 0, 1 and b is −1, 1, 0: Σab = 1, Σa² = Σb² = 2.
  assertClose(correlationOf([1, 2, 3], [4, 6, 5]), 0.5, { relative: 1e-14 });
  assertEquals(correlationOf([1, 2, 3], [7, 7, 7]), 0);
  assertThrows(() => correlationOf([1, 2, 3], [1, 2]), InputError, "that of the first, 3");
});

Deno.test("groups: equal lines agree, unequal ones are told apart", () => {
  const noise = [0.01, -0.02, 0.015, -0.005];
  const specimen = (name: string, slope: number): { name: string; x: number[]; y: number[] } => ({
    name,
    x: [0, 1, 2, 3],
    y: noise.map((e, i) => slope * i + e),
  });
  const same = fitGroups([specimen("A", 2), specimen("B", 2), specimen("C", 2)]);
  assertClose(same.slopeSd, 0, { absolute: 1e-14 });
  assertClose(same.slopesDiffer!.chance, 1, { relative: 1e-12 });
  const differ = fitGroups([specimen("A", 2), specimen("B", 2.2), specimen("C", 1.8)]);
  // The noise's own slope is Σ(x − 1.5)e/5 = (−0.015 + 0.01 + 0.0075 − 0.0075)/5 = −0.001.
  assertClose(differ.meanSlope.value, 1.999, { relative: 1e-13 });
  assertClose(differ.slopeSd, 0.2, { relative: 1e-12 });
  // Σ(b − b̄)² Sxx = 0.08 × 5 between; within 3 × SSE, SSE = Σe² − 0.001² × 5.
  const within = 3 * (0.00075 - 0.000005);
  assertClose(differ.slopesDiffer!.F, 0.4 / 2 / (within / 6), { relative: 1e-10 });
  assert(differ.slopesDiffer!.chance < 1e-6);
  assertEquals([differ.slopesDiffer!.numeratorDof, differ.slopesDiffer!.denominatorDof], [2, 6]);
  assertEquals(differ.commonSlope.dof, 8);
});

Deno.test("readings without any scatter leave no test of difference", () => {
  const exact = fitGroups([
    { name: "A", x: [0, 1, 2], y: [0, 2, 4] },
    { name: "B", x: [0, 1, 2], y: [0, 3, 6] },
  ]);
  assertEquals(exact.slopesDiffer, undefined);
  assertEquals(exact.meanSlope.value, 2.5);
});

Deno.test("refusals of fits", () => {
  const fails = (act: () => unknown, message: string): unknown =>
    assertThrows(act, InputError, message);
  fails(() => fitLine({ x: [1, 2], y: [1, 2] }), "number of readings is 2, must be 3 or more");
  fails(() => fitLine({ x: [1], y: [1] }, { throughOrigin: true }), "must be 2 or more");
  fails(() => fitLine({ x: [1, 1, 1], y: [1, 2, 3] }), "all readings stand at one x");
  fails(() => fitLine({ x: [1, 2, 3], y: [1, 2] }), "number of y readings is 2");
  fails(() => fitLine({ x: [1, 2, "3"] as never, y: [1, 2, 3] }), 'x 2 is "3"');
  fails(() => fitLine({ x: [1, 2, 3], y: [1, NaN, 3] }), "y 1 is NaN");
  fails(() => fitLine(undefined as never), "readings is missing");
  fails(() => fitLine({ x: "123", y: [1, 2, 3] } as never), 'x is "123"');
  fails(() => fitLine(SMALL, { weights: [1, 1, 1] }), "must be 4, one a reading");
  fails(() => fitLine(SMALL, { weights: [1, 1, 0, 1] }), "weight 2 is 0");
  fails(() => fitLine(SMALL, { uY: 0 }), "uncertainty of y is 0");
  fails(() => fitLine(SMALL, { uY: 1, weights: [1, 1, 1, 1] }), "must be left out");
  fails(() => newReadingAt(fitLine(SMALL, { uY: 1 }), 2), "must be given, as it was to the fit");
  fails(() => lineAt(fitLine(SMALL), NaN), "x is NaN");
  const level = fitLine({ x: [1, 2, 3], y: [4, 4, 4] });
  fails(() => inverseReading(level, { value: 4, u: 0 }), "every x gives the same y");
  fails(() => regress([[1, 2, 3, 4], [2, 4, 6, 8]], [1, 2, 3, 5]), "must not repeat");
  fails(() => regress([[1, 2, 3]], [1, 2, 3, 5]), "length of column 0 is 3, must be 4");
  fails(() => regress([], [1, 2], { intercept: false }), "columns with the constant term");
  fails(() => fitPolynomial(SMALL, 3), "must be 5 or more");
  fails(() => fitPolynomial(SMALL, 1.5), "degree is 1.5");
  fails(() => fitGroups([{ name: "A", ...SMALL }]), "groups is a list of 1");
  fails(() => fitGroups([{ name: "A", ...SMALL }, { name: "A", ...SMALL }]), "must be given once");
  fails(() => summarise([1]), "number of readings is 1");
  fails(() => fromReadings([1, "2" as never]), 'reading 1 is "2"');
});
