import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { evenPoints, oneAtATime, varianceShares } from "../../lib/study/mod.ts";
import { assertClose } from "../close.ts";

Deno.test("even points: each coordinate alone falls into every cell once", () => {
  // In base p the first p^k points fall one into each of p^k equal cells, shuffled or not.
  for (const [d, base] of [[0, 2], [1, 3], [2, 5]] as const) {
    const count = base ** 4;
    const points = evenPoints(count, 3, 7);
    const cells = new Set<number>();
    for (let i = 0; i < count; i++) cells.add(Math.floor(points[3 * i + d]! * count + 1e-9));
    assertEquals(cells.size, count);
  }
});

Deno.test("even points integrate a smooth product far better than random ones would", () => {
  const points = evenPoints(4096, 4, 3);
  let mean = 0;
  for (let i = 0; i < 4096; i++) {
    let product = 1;
    for (let d = 0; d < 4; d++) product *= 2 * points[4 * i + d]!;
    mean += product / 4096;
  }
  // Random points: sd of the product √((4/3)⁴ − 1) = 1.47 over √4096 gives 0.023.
  assertClose(mean, 1, { absolute: 0.004 });
});

Deno.test("the same seed gives the same points, another seed others", () => {
  assertEquals(evenPoints(50, 5, 9), evenPoints(50, 5, 9));
  assert(evenPoints(50, 5, 9)[11] !== evenPoints(50, 5, 10)[11]);
  const inside = evenPoints(1000, 40, 1).every((value) => value > 0 && value < 1);
  assert(inside);
});

// T. Ishigami, T. Homma (1990): f = sin x1 + 7 sin² x2 + 0.1 x3⁴ sin x1 on (−π, π)³. Shares by
// integration, printed in many places (A. Saltelli et al., Global Sensitivity Analysis, 2008):
// alone 0.3139, 0.4424, 0; in all 0.5576, 0.4424, 0.2437; from memory, and by the formulas below.
Deno.test("Ishigami: variance shares, alone and in all", () => {
  const even = { kind: "even", low: -Math.PI, high: Math.PI } as const;
  const { shares, mean, sd } = varianceShares(
    { x1: even, x2: even, x3: even },
    ({ x1, x2, x3 }) => Math.sin(x1) + 7 * Math.sin(x2) ** 2 + 0.1 * x3 ** 4 * Math.sin(x1),
    { points: 4096, repeats: 4 },
  );
  const p = Math.PI;
  const variance = 49 / 8 + 0.1 * p ** 4 / 5 + 0.01 * p ** 8 / 18 + 0.5;
  assertClose(mean, 3.5, { absolute: 0.01 });
  assertClose(sd, Math.sqrt(variance), { relative: 0.005 });
  const share = (name: string): (typeof shares)[number] => shares.find((s) => s.name === name)!;
  assertClose(share("x1").alone, 0.3139, { absolute: 0.01 });
  assertClose(share("x2").alone, 0.4424, { absolute: 0.01 });
  assertClose(share("x3").alone, 0, { absolute: 0.01 });
  assertClose(share("x1").inAll, 0.5576, { absolute: 0.01 });
  assertClose(share("x2").inAll, 0.4424, { absolute: 0.01 });
  assertClose(share("x3").inAll, 0.2437, { absolute: 0.01 });
  assertEquals(shares.map(({ name }) => name), ["x1", "x2", "x3"]);
  assert(shares.every(({ aloneUncertainty }) => aloneUncertainty < 0.02));
});

Deno.test("normal inputs: a sum shares by variances; the uncertainty covers the truth", () => {
  const { shares, sd } = varianceShares(
    {
      a: { kind: "normal", mean: 5, sd: 3 },
      b: { kind: "normal", mean: -1, sd: 4 },
      idle: { kind: "normal", mean: 0, sd: 9 },
    },
    ({ a, b }) => a + b,
  );
  assertClose(sd, 5, { relative: 0.01 });
  assertClose(shares[0]!.alone, 0.64, { absolute: 0.01 });
  // Eight repeats: beyond four standard errors once in two hundred (t of 7 degrees of freedom).
  assertClose(shares[0]!.alone, 0.64, { absolute: 4 * shares[0]!.aloneUncertainty });
  assertClose(shares[0]!.inAll, 0.64, { absolute: 4 * shares[0]!.inAllUncertainty });
  assertEquals(shares[2]!.name, "idle");
  assertClose(shares[2]!.inAll, 0, { absolute: 1e-15 });
});

Deno.test("the uncertainty of a share is the standard error of the mean of its repeats", () => {
  const even = { kind: "even", low: 0, high: 1 } as const;
  const shares = (repeats: number, seed: number) => {
    const { shares } = varianceShares(
      { a: even, b: even },
      ({ a, b }) => Math.exp(a) + a * b,
      { points: 16, repeats, seed },
    );
    return shares.find(({ name }) => name === "a")!;
  };
  // Repeat r takes the seed s + r, so that three means tell three single repeats apart:
  // x3 = 3 m123 − 2 m12, x1 = 3 m123 − 2 m23, x2 = 2 m12 − x1.
  const [all, early, late] = [shares(3, 7), shares(2, 7), shares(2, 8)];
  for (const which of ["alone", "inAll"] as const) {
    const [m123, m12, m23] = [all[which], early[which], late[which]];
    const [x1, x3] = [3 * m123 - 2 * m23, 3 * m123 - 2 * m12];
    const x2 = 2 * m12 - x1;
    // s² = Σ(x − m)²/(n − 1), u = s/√n; of two it is half their difference.
    const u = Math.sqrt(((x1 - m123) ** 2 + (x2 - m123) ** 2 + (x3 - m123) ** 2) / 2 / 3);
    assert(u > 1e-4);
    assertClose(all[`${which}Uncertainty`], u, { relative: 1e-9 });
    assertClose(early[`${which}Uncertainty`], Math.abs(x1 - x2) / 2, { relative: 1e-9 });
  }
});

Deno.test("variance shares tell their progress and stop when asked", () => {
  const told: number[] = [];
  const controller = new AbortController();
  const { stopped } = varianceShares(
    { a: { kind: "even", low: 0, high: 1 } },
    ({ a }) => a,
    {
      points: 16,
      progress: (done) => {
        told.push(done);
        if (done === 3) controller.abort();
      },
      signal: controller.signal,
    },
  );
  assertEquals(told, [1, 2, 3]);
  assertEquals(stopped, true);
});

Deno.test("one at a time: swings, elasticity, order", () => {
  const ranges = {
    span: { low: 0.9, base: 1, high: 1.1 },
    E: { low: 15, base: 20, high: 25 },
  };
  const { base, effects } = oneAtATime(ranges, ({ span, E }) => span ** 3 / E);
  assertClose(base, 0.05, { relative: 1e-15 });
  assertEquals(effects.map(({ name }) => name), ["span", "E"]);
  assertClose(effects[0]!.swing, (1.1 ** 3 - 0.9 ** 3) / 20, { relative: 1e-12 });
  assertClose(effects[0]!.elasticity, 3.01, { relative: 1e-12 });
  assertClose(effects[1]!.elasticity, (1 / 25 - 1 / 15) / 10 * 20 / 0.05, { relative: 1e-12 });
});

Deno.test("inputs that cannot be meant are refused", () => {
  const refused = (run: () => unknown, message: string): void => {
    assertThrows(run, InputError, message);
  };
  refused(() => evenPoints(10, 41, 1), "dimensions is 41");
  refused(() => evenPoints(10, 2, -1), "seed is -1");
  refused(() => oneAtATime({}, () => 0), "ranges is a list of 0");
  refused(
    () => oneAtATime({ a: { low: 2, base: 1, high: 3 } }, () => 0),
    "base of a is 1, must lie between 2 and 3",
  );
  refused(() => oneAtATime({ a: { low: 0, base: 1, high: 3 } }, () => NaN), "result is NaN");
  refused(
    () => varianceShares({ a: { kind: "even", low: 2, high: 1 } }, () => 0),
    "low of a is 2, must not be above 1",
  );
  refused(
    () => varianceShares({ a: { kind: "odd" } as never }, () => 0),
    'kind of a is "odd", must be one of: even, normal',
  );
  refused(
    () => varianceShares({ a: { kind: "normal", mean: 0, sd: 1 } }, () => 0, { points: 3 }),
    "points is 3",
  );
});
