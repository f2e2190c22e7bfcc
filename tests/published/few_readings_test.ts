/**
 * Published figures for decisions from few readings: tolerance factors, a control chart, a fit with
 * both readings uncertain, and partial pooling.
 */
import { assert, assertEquals } from "@std/assert";
import {
  controlChart,
  fitLineBoth,
  poolGroups,
  toleranceFactor,
} from "@laminate/notebooks/statistics";
import { assertClose } from "../close.ts";

Deno.test("one-sided tolerance factors, as printed", () => {
  // NIST/SEMATECH e-Handbook, 7.2.6.3, and MIL-HDBK-17, B-basis (90 %) and A-basis (99 %) at 95 %
  // confidence, from memory.
  const printed = [
    [2, 0.9, 20.581],
    [3, 0.9, 6.155],
    [5, 0.9, 3.407],
    [10, 0.9, 2.355],
    [30, 0.9, 1.777],
    [2, 0.99, 37.094],
    [5, 0.99, 5.741],
    [10, 0.99, 3.981],
  ] as const;
  for (const [count, content, factor] of printed) {
    assertClose(toleranceFactor(count, { content }), factor, { absolute: 0.0005 }, `n ${count}`);
  }
});

Deno.test("one-sided tolerance factors to ten digits", () => {
  // The noncentral t distribution integrated at 25 digits (mpmath) and inverted by secants.
  const exact = [
    [2, 0.9, 0.95, 20.581467624245],
    [5, 0.9, 0.95, 3.4066332628008],
    [10, 0.99, 0.95, 3.9811178452731],
    [100, 0.99, 0.99, 2.8496481175979],
    [6, 0.9, 0.75, 1.8591683980971],
  ] as const;
  for (const [count, content, confidence, factor] of exact) {
    assertClose(toleranceFactor(count, { content, confidence }), factor, { relative: 1e-12 });
  }
});

Deno.test("control chart of single values: flow rate of ten batches", () => {
  // NIST/SEMATECH e-Handbook, 6.3.2.2, from memory: mean 50.81, mean range 1.8778, limits 55.8041 and
  // 45.8159 with the printed divisor 1.128 (2/√π is 1.12838: hence 0.002).
  const flow = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];
  const chart = controlChart(flow);
  assertClose(chart.centre, 50.81, { absolute: 1e-12 });
  const ranges = [2.0, 2.3, 1.4, 3.5, 3.4, 1.4, 0.2, 1.2, 1.5];
  assertClose(chart.movingRanges, ranges, { absolute: 1e-12 });
  assertClose([chart.upper, chart.lower], [55.8041, 45.8159], { absolute: 0.002 });
  assertClose(chart.rangeLimit, 3.267 * 1.8778, { absolute: 0.002 });
  assertEquals(chart.signals, []);
});

Deno.test("ISO/TS 28037, clause 7: line with u(x) and u(y)", () => {
  const fit = fitLineBoth(
    { x: [1.2, 1.9, 2.9, 4.0, 4.7, 5.9], y: [3.4, 4.4, 7.2, 8.5, 10.8, 13.5] },
    { uX: 0.2, uY: [0.2, 0.2, 0.2, 0.4, 0.4, 0.4] },
  );
  assertClose(fit.intercept.value, 0.5788, { absolute: 0.00005 });
  assertClose(fit.slope.value, 2.1597, { absolute: 0.00005 });
  assertClose(fit.intercept.u, 0.4764, { absolute: 0.00005 });
  assertClose(fit.slope.u, 0.1355, { absolute: 0.00005 });
  assertClose(fit.correlation * fit.slope.u * fit.intercept.u, -0.0577, { absolute: 0.00005 });
  assertClose(fit.chiSquared, 2.743, { absolute: 0.0005 });
  assertEquals(fit.dof, 4);
});

Deno.test("partial pooling: coaching in eight schools", () => {
  // Data: Rubin, Journal of Educational Statistics 6 (1981); Gelman and others, Bayesian Data
  // Analysis, table 5.2, from memory. Expected: the same posterior integrated independently by
  // adaptive quadrature (scipy), flat in mean and spread.
  const schools = [
    ["A", 28, 15],
    ["B", 8, 10],
    ["C", -3, 16],
    ["D", 7, 11],
    ["E", -1, 9],
    ["F", 1, 11],
    ["G", 18, 10],
    ["H", 12, 18],
  ] as const;
  const pooled = poolGroups(schools.map(([name, value, u]) => ({ name, value, u })));
  const { mean, spread, groups, next } = pooled;
  assertClose([mean.low, mean.value, mean.high], [
    -2.0902203821713847,
    7.891700247105554,
    18.218143072686328,
  ], { relative: 1e-8 });
  assertClose(mean.u, (12.791155828232817 - 3.0579158167045803) / 2, { relative: 1e-8 });
  const ends = (k: number): number[] => [groups[k]!.low, groups[k]!.value, groups[k]!.high];
  assertClose(ends(0), [-2.105016400487014, 10.240720342943565, 31.62342190599748], {
    relative: 1e-8,
  });
  assertClose(ends(4), [-8.904878297404414, 5.602786276602951, 16.46860761318532], {
    relative: 1e-8,
  });
  assertClose([next.low, next.value, next.high], [
    -12.412834210433287,
    7.839853565378312,
    28.86033210785089,
  ], { relative: 1e-8 });
  // Quantiles of the spread are read between points of the rule.
  assertClose([spread.low, spread.median, spread.high], [0.2427, 5.2385, 20.752], {
    relative: 4e-3,
  });
  // The book's table 5.3, from 200 draws: school A 10 with −2 to 31, E 5 with −9 to 18.
  assertClose(ends(0), [-2, 10, 31], { absolute: 1 });
  assert(pooled.notes.length === 0);
});
