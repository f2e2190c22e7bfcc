/**
 * Worked examples of JCGM 101:2008 (Supplement 1 to the GUM), an NPL report and NIST TN 1900. Where
 * the exact distribution is known, exact figures stand beside the printed ones. A run of 10⁶ draws
 * leaves about 0.1 % of u in each figure: the absolute tolerances are three to five times that.
 */
import { assert, assertEquals } from "@std/assert";
import { fromRange, monteCarlo, propagate, shortestInterval } from "@laminate/notebooks/statistics";
import { assertClose } from "../close.ts";

const MILLION = { trials: 1_000_000, seed: 20261125 };
const four = ({ a, b, c, d }: Record<"a" | "b" | "c" | "d", number>): number => a + b + c + d;

Deno.test("JCGM 101, 9.2.2: sum of four normal inputs", () => {
  const one = { value: 0, u: 1 };
  const inputs = { a: one, b: one, c: one, d: one };
  const result = monteCarlo(four, inputs, MILLION);
  assertClose(result.value, 0, { absolute: 0.008 });
  assertClose(result.u, 2.0, { absolute: 0.006 });
  assertClose([result.low, result.high], [-3.92, 3.92], { absolute: 0.02 });
  assertClose(propagate(four, inputs).u, 2, { relative: 1e-12 });
});

Deno.test("JCGM 101, 9.2.3: sum of four rectangular inputs of the same u", () => {
  const one = fromRange({ low: -Math.sqrt(3), high: Math.sqrt(3) });
  const result = monteCarlo(four, { a: one, b: one, c: one, d: one }, MILLION);
  assertClose(result.u, 2.0, { absolute: 0.006 });
  // Printed ± 3.88; exact ± 3.87941 from the piecewise polynomial distribution, narrower than ± 3.92.
  assertClose([result.low, result.high], [-3.87940674, 3.87940674], { absolute: 0.015 });
});

Deno.test("JCGM 101, 9.3: calibration of a mass, where first order loses a quarter of u", () => {
  const inputs = {
    reference: { value: 100_000, u: 0.050 },
    added: { value: 1.234, u: 0.020 },
    air: fromRange({ low: 1.10, high: 1.30 }),
    weight: fromRange({ low: 7000, high: 9000 }),
    standard: fromRange({ low: 7950, high: 8050 }),
  };
  const f = ({ reference, added, air, weight, standard }: Record<keyof typeof inputs, number>) =>
    (reference + added) * (1 + (air - 1.2) * (1 / weight - 1 / standard)) - 100_000;
  const linear = propagate(f, inputs);
  // Printed 0.0539, from memory; by hand √(0.05² + 0.02²).
  assertClose(linear.u, 0.0538516481, { relative: 1e-6 });
  assertEquals(linear.notes.filter((note) => note.includes("does not see")).length, 3);
  const drawn = monteCarlo(f, inputs, MILLION);
  assertClose(drawn.value, 1.2340, { absolute: 0.0003 });
  // Printed 0.0754 and [1.0834, 1.3825], from memory; exact u 0.07548.
  assertClose(drawn.u, 0.07547974, { absolute: 0.0002 });
  const { low, high } = shortestInterval(drawn.samples);
  // Where the shortest interval lies is loose (a flat maximum), how long it is is not.
  assertClose([low, high], [1.0834, 1.3825], { absolute: 0.003 });
  assertClose(high - low, 0.2991, { absolute: 0.0008 });
});

Deno.test("JCGM 101, 9.4: comparison loss near zero, exact by noncentral chi-squared", () => {
  // x1, exact mean and u, shortest 95 % interval (printed from memory: u 50, 112, 502 millionths).
  const cases = [
    [0, 50e-6, 50e-6, [0, 149.79e-6]],
    [0.010, 150e-6, 111.803399e-6, [0, 366.01e-6]],
    [0.050, 2550e-6, 502.493781e-6, [1593.6e-6, 3548.6e-6]],
  ] as const;
  for (const [x1, mean, u, [low, high]] of cases) {
    const inputs = { x1: { value: x1, u: 0.005 }, x2: { value: 0, u: 0.005 } };
    const result = monteCarlo(({ x1, x2 }) => x1 * x1 + x2 * x2, inputs, MILLION);
    assertClose(result.value, mean, { absolute: 0.005 * u });
    assertClose(result.u, u, { absolute: 0.005 * u });
    const shortest = shortestInterval(result.samples);
    // The place of the shortest interval is looser than its length.
    assertClose(shortest.low, low, { absolute: x1 === 0.05 ? 0.05 * u : 0.01 * u });
    assertClose(shortest.high, high, { absolute: x1 === 0.05 ? 0.05 * u : 0.015 * u });
  }
});

Deno.test("JCGM 101, 9.4 with correlated inputs: u rises from 50 to 70 millionths at r = 0.9", () => {
  // Var(X1² + X2²) = 4u⁴(1 + r²) for zero means: u = 2u²√(1 + r²) = 67.27 millionths.
  const result = monteCarlo(({ x1, x2 }) => x1 * x1 + x2 * x2, {
    x1: { value: 0, u: 0.005 },
    x2: { value: 0, u: 0.005 },
  }, { ...MILLION, correlations: [{ between: ["x1", "x2"], coefficient: 0.9 }] });
  assertClose(result.value, 50e-6, { absolute: 0.3e-6 });
  assertClose(result.u, 2 * 0.005 ** 2 * Math.sqrt(1.81), { absolute: 0.4e-6 });
});

Deno.test("NPL DEM-ES-011, 9.2: the logarithm of a rectangular input", () => {
  const inputs = { x: fromRange({ low: 0.1, high: 1.1 }) };
  const linear = propagate(({ x }) => Math.log(x), inputs);
  assertClose([linear.value, linear.u], [-0.511, 0.481], { absolute: 0.0005 });
  assert(linear.notes[0]!.includes("curves in x"));
  const drawn = monteCarlo(({ x }) => Math.log(x), inputs, MILLION);
  // Printed −0.665, 0.606 and shortest [−1.895, 0.095]; exact −0.66490, 0.60623, [−1.89712, 0.09531].
  assertClose([drawn.value, drawn.u], [-0.664900293, 0.606226697], { absolute: 0.002 });
  const { low, high } = shortestInterval(drawn.samples);
  assertClose([low, high], [-1.89711998, 0.0953101798], { absolute: 0.008 });
});

Deno.test("NIST TN 1900, E3: viscosity by a falling ball, whose interval is lopsided", () => {
  const drawn = monteCarlo(
    ({ muC, tM, tC, rhoB, rhoM, rhoC }) => (muC * (rhoB - rhoM) * tM) / ((rhoB - rhoC) * tC),
    {
      muC: { value: 4.63, u: 0.0463 },
      tM: { value: 61, u: 6.1 },
      tC: { value: 36.6, u: 5.49 },
      rhoB: { value: 2217, u: 0.5 },
      rhoM: { value: 1180, u: 0.5 },
      rhoC: { value: 810, u: 0.5 },
    },
    MILLION,
  );
  assertClose(drawn.value, 5.82, { absolute: 0.01 });
  assertClose(drawn.u, 1.11, { absolute: 0.01 });
  assertClose([drawn.low, drawn.high], [4.05, 8.39], { absolute: 0.02 });
});
