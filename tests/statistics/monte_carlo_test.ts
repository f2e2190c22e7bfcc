import { assert, assertEquals, assertThrows } from "@std/assert";
import { checksFor, InputError } from "@laminate/notebooks/check";
import {
  monteCarlo,
  monteCarloBatch,
  shortestInterval,
  studentTQuantile,
} from "@laminate/notebooks/statistics";
import { assertClose } from "../close.ts";

const identity = ({ x }: { x: number }): number => x;
const check = checksFor("test");

Deno.test("each shape has its u and its ends", () => {
  const options = { trials: 400_000, seed: 7 };
  // Half-width over u, then the 97.5 % point over u: in closed form for each shape.
  const shapes = [
    ["rectangular", Math.sqrt(3), 0.95 * Math.sqrt(3)],
    ["triangular", Math.sqrt(6), Math.sqrt(6) * (1 - Math.sqrt(0.05))],
    ["arcsine", Math.SQRT2, Math.SQRT2 * Math.sin(0.475 * Math.PI)],
  ] as const;
  for (const [shape, halfWidth, high] of shapes) {
    const result = monteCarlo(identity, { x: { value: 5, u: 0.1, shape } }, options);
    assertClose(result.value, 5, { absolute: 5e-4 }, shape);
    assertClose(result.u, 0.1, { relative: 0.005 }, shape);
    assertClose(result.high, 5 + 0.1 * high, { absolute: 1e-3 }, shape);
    const most = result.samples.reduce((a, b) => Math.max(a, b));
    assert(most <= 5 + 0.1 * halfWidth && most > 5 + 0.099 * halfWidth, shape);
  }
});

Deno.test("degrees of freedom make Student's t, above and below 2", () => {
  for (const dof of [1, 3, 9.5]) {
    const options = { trials: 400_000, seed: 11 };
    const result = monteCarlo(identity, { x: { value: 0, u: 1, dof } }, options);
    const t = studentTQuantile(0.975, dof);
    // Standard error of a quantile: about 0.4 % of t here, 1 % for the Cauchy distribution.
    assertClose([result.low, result.high], [-t, t], { relative: dof === 1 ? 0.03 : 0.015 });
  }
});

Deno.test("draws of Student's t fill its cells as they should", () => {
  // Two-sided 50, 20, 10, 5, 2, 1 and 0.1 % points of 3 and of 9 degrees of freedom, as printed in
  // tables (Abramowitz and Stegun, table 26.10, from memory; 40-digit arithmetic for the digits).
  const points = [
    [3, [0.76489233, 1.63774436, 2.35336343, 3.18244631, 4.54070286, 5.84090931, 12.92397864]],
    [9, [0.70272215, 1.38302874, 1.83311293, 2.26215716, 2.82143792, 3.24983554, 4.78091259]],
  ] as const;
  const shares = [0.5, 0.3, 0.1, 0.05, 0.03, 0.01, 0.009, 0.001];
  for (const [dof, edges] of points) {
    const trials = 1_000_000;
    const seen = new Array<number>(edges.length + 1).fill(0);
    const count = ({ x }: { x: number }): number => {
      seen[edges.filter((edge) => Math.abs(x) > edge).length]!++;
      return x;
    };
    monteCarlo(count, { x: { value: 0, u: 1, dof } }, { trials, seed: 5 });
    const drawn = seen.reduce((sum, n) => sum + n, 0);
    const chi2 = seen.reduce((sum, n, i) => {
      const expected = shares[i]! * drawn;
      return sum + (n - expected) ** 2 / expected;
    }, 0);
    // 99.99 % point at 7 degrees of freedom.
    assert(drawn >= trials && chi2 < 29.88, `chi-square ${chi2} of ${dof}`);
  }
});

Deno.test("the plain and the batch form draw the same, whatever the number of draws", () => {
  const inputs = {
    a: { value: 2, u: 0.1 },
    b: { value: 3, u: 0.2, dof: 5 },
    c: { value: 4, u: 0.3, shape: "triangular" },
    d: { value: 5, u: 0.1 },
  } as const;
  const correlations = [{ between: ["a", "d"], coefficient: -0.5 }] as const;
  for (const trials of [100, 1999, 2000, 7001]) {
    const options = { trials, correlations };
    const plain = monteCarlo(({ a, b, c, d }) => (a * b) / c + d, inputs, options);
    const batch = monteCarloBatch(
      ({ a, b, c, d }, target) => {
        for (let i = 0; i < target.length; i++) target[i] = (a[i]! * b[i]!) / c[i]! + d[i]!;
      },
      inputs,
      options,
    );
    assertEquals(batch, plain);
    assertEquals(plain.samples.length, trials);
  }
});

Deno.test("correlated draws have their correlation, also full and also beside others", () => {
  const seen: [number, number, number][] = [];
  const inputs = { a: { value: 1, u: 0.5 }, b: { value: 2, u: 0.1 }, c: { value: 3, u: 2 } };
  monteCarlo(
    ({ a, b, c }) => seen.push([(a - 1) / 0.5, (b - 2) / 0.1, (c - 3) / 2]),
    inputs,
    { trials: 200_000, correlations: [{ between: ["a", "c"], coefficient: 0.8 }] },
  );
  const mean = (of: (z: [number, number, number]) => number): number =>
    seen.reduce((sum, z) => sum + of(z), 0) / seen.length;
  assertClose(mean(([a, , c]) => a * c), 0.8, { absolute: 0.01 });
  assertClose(mean(([a, b]) => a * b), 0, { absolute: 0.01 });
  assertClose(mean(([a]) => a * a), 1, { absolute: 0.015 });
  const tied = monteCarlo(({ a, b }) => a / 0.5 - b / 0.1, { a: inputs.a, b: inputs.b }, {
    trials: 1000,
    correlations: [{ between: ["a", "b"], coefficient: 1 }],
  });
  assertClose(tied.u, 0, { absolute: 1e-7 });
});

Deno.test("it stops by itself once the digits stand still, later for more digits", () => {
  const inputs = { x: { value: 10, u: 1 } };
  const two = monteCarlo(identity, inputs);
  assert(two.settled && two.trials < 1_000_000, `${two.trials}`);
  // u = 1.0: two digits ask for ± 0.05 on each figure.
  assertClose([two.value, two.u, two.low, two.high], [10, 1, 8.04, 11.96], { absolute: 0.05 });
  const one = monteCarlo(identity, inputs, { digits: 1 });
  assert(one.trials < two.trials || two.trials === 20_000);
  const never = monteCarlo(identity, { x: { value: 0, u: 1, dof: 1 } }, { maxTrials: 50_000 });
  assertEquals([never.settled, never.trials, never.notes.length], [false, 50_000, 1]);
  assertEquals(monteCarlo(() => 3, inputs).trials, 20_000);
});

Deno.test("a seed decides the draws", () => {
  const inputs = { x: { value: 0, u: 1 } };
  const first = (seed: number): number =>
    monteCarlo(identity, inputs, { trials: 100, seed }).samples[0]!;
  assertEquals(first(3), first(3));
  assert(first(3) !== first(4));
});

Deno.test("draws that the formula refuses are counted and noted, not hidden", () => {
  const inputs = { x: { value: 1, u: 1 } };
  const result = monteCarlo(({ x }) => check.positive("x", x), inputs, { trials: 10_000 });
  // Φ(−1) = 15.9 % of the draws lie below 0.
  assertClose(result.refused / 10_000, 0.1587, { absolute: 0.012 });
  assertEquals(result.trials + result.refused, 10_000);
  assertEquals(result.notes.length, 1);
  assert(result.samples.every((sample) => sample > 0));
  assertThrows(
    () => monteCarlo(({ x }) => check.positive("x", -Math.abs(x)), inputs),
    InputError,
    "the formula refuses the rest",
  );
});

Deno.test("shortest interval by hand", () => {
  assertEquals(shortestInterval([5], 0.9), { low: 5, high: 5 });
  assertEquals(shortestInterval([0, 10, 11, 12, 30], 0.6), { low: 10, high: 12 });
});

Deno.test("refusals of Monte Carlo", () => {
  const inputs = { x: { value: 0, u: 1, shape: "rectangular" }, y: { value: 0, u: 1 } } as const;
  const sum = ({ x, y }: { x: number; y: number }): number => x + y;
  const correlations = [{ between: ["x", "y"], coefficient: 0.5 }] as const;
  assertThrows(() => monteCarlo(sum, inputs, { correlations }), InputError, "must be normal");
  assertThrows(() => monteCarlo(sum, inputs, { trials: 10 }), InputError, "number of draws is 10");
  assertThrows(() => monteCarlo(sum, inputs, { seed: 0.5 }), InputError, "seed is 0.5");
  assertThrows(() => monteCarlo(sum, inputs, { level: 95 }), InputError, "level is 95");
  assertThrows(() => monteCarlo(sum, inputs, { digits: 0 }), InputError, "digits is 0");
  const odd = { x: { value: 0, u: 1, shape: "round" }, y: { value: 0, u: 1 } } as never;
  assertThrows(() => monteCarlo(sum, odd), InputError, "shape of x");
  assertThrows(() => shortestInterval([]), InputError, "a list of 0");
});
