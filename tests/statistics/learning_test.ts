import { assert, assertEquals, assertThrows } from "@std/assert";
import { checksFor, InputError } from "@laminate/notebooks/check";
import { randomGenerator } from "@laminate/notebooks/numeric";
import {
  controlChart,
  noncentralTProbability,
  noncentralTQuantile,
  poolGroups,
  predictiveCheck,
  toleranceFactor,
  toleranceLimit,
  trend,
  updateEstimate,
  updateParameters,
} from "@laminate/notebooks/statistics";
import { assertClose } from "../close.ts";

Deno.test("noncentral t seen from the other side is the other tail, far from its middle too", () => {
  for (const [dof, shift] of [[2, 5], [10, 5], [29, 12], [4, -3]] as const) {
    for (const p of [0.001, 0.01, 0.2, 0.9, 0.999]) {
      const t = noncentralTQuantile(p, { dof, shift });
      assertClose(noncentralTProbability(t, { dof, shift }), p, { relative: 1e-9 });
      assertClose(noncentralTQuantile(1 - p, { dof, shift: -shift }), -t, { relative: 1e-8 });
    }
  }
});

Deno.test("the spread from group to group: its posterior by sums over a fine grid", () => {
  // Eight coaching programmes (D. B. Rubin 1981, in Gelman and others, Bayesian Data Analysis, 5.5,
  // from memory), and four groups that differ. Independent program: p(τ) ∝ √V Π vi^−½
  // exp(−(yi − μ)²/2vi) on 400 000 points, vi = ui² + τ², 1/V = Σ 1/vi, μ = V Σ yi/vi.
  const sets = [
    [
      [28, 8, -3, 7, -1, 1, 18, 12],
      [15, 10, 16, 11, 9, 11, 10, 18],
      [0.2427091, 5.238503, 20.75236],
    ],
    [[9, 10.5, 12, 14], [0.3, 0.5, 0.4, 0.6], [1.259045, 3.070047, 16.25476]],
  ] as const;
  for (const [values, u, expected] of sets) {
    const { spread } = poolGroups(
      values.map((value, i) => ({ name: `${i}`, value, u: u[i]! })),
    );
    // 128 points with straight lines between them are good for 3 parts in a thousand.
    assertClose([spread.low, spread.median, spread.high], expected, { relative: 3e-3 });
  }
});

Deno.test("updating by hand: precision adds", () => {
  const { value, u, priorShare, shares, chiSquared, notes } = updateEstimate(
    { value: 10, u: 2 },
    [{ value: 12, u: 1 }, { value: 11, u: 1 }],
  );
  // Weights ¼, 1, 1 of 2¼; χ² = ¼ 1.3333² + … by hand: value (2.5 + 12 + 11)/2.25 = 11.3333.
  assertClose(value, 25.5 / 2.25, { relative: 1e-14 });
  assertClose(u, 1 / Math.sqrt(2.25), { relative: 1e-14 });
  assertClose([priorShare, ...shares], [1 / 9, 4 / 9, 4 / 9], { relative: 1e-14 });
  assertClose(chiSquared, (4 / 3) ** 2 / 4 + (2 / 3) ** 2 + (1 / 3) ** 2, { relative: 1e-13 });
  assertEquals(notes, []);
});

Deno.test("prior and evidence that contradict each other are noted", () => {
  const { notes, chance } = updateEstimate({ value: 10, u: 1 }, [{ value: 20, u: 1 }]);
  assertEquals(notes.length, 1);
  // χ² = 50 at one degree of freedom: 2 Φ(−√50) = 1.537e-12 (40 digits).
  assertClose(chance, 1.5374597944280347e-12, { relative: 1e-10 });
});

Deno.test("linear parameters: the update equals the conjugate formula", () => {
  // Prior precision diag(1, 1/4); observations a + b = 5 ± ½ and a − b = 0 ± 1.
  // Precision [[1 + 4 + 1, 4 − 1], [4 − 1, ¼ + 4 + 1]], right side [1 + 20 + 0, ½ + 20 − 0].
  const { parameters, correlations, observations } = updateParameters(
    { a: { value: 1, u: 1 }, b: { value: 2, u: 2 } },
    {
      predict: ({ a, b }) => ({ sum: a + b, difference: a - b }),
      observed: { sum: { value: 5, u: 0.5 }, difference: { value: 0, u: 1 } },
    },
  );
  const determinant = 6 * 5.25 - 9;
  assertClose(parameters.a.value, (5.25 * 21 - 3 * 20.5) / determinant, { relative: 1e-10 });
  assertClose(parameters.b.value, (6 * 20.5 - 3 * 21) / determinant, { relative: 1e-10 });
  assertClose(parameters.a.u, Math.sqrt(5.25 / determinant), { relative: 1e-10 });
  assertClose(parameters.b.u, Math.sqrt(6 / determinant), { relative: 1e-10 });
  assertClose(parameters.a.learned, 1 - 5.25 / determinant, { relative: 1e-9 });
  assertClose(correlations[0]!.coefficient, -3 / Math.sqrt(6 * 5.25), { relative: 1e-9 });
  assertClose(observations.sum.before, 3, { relative: 1e-14 });
  assertClose(observations.sum.z, (5 - observations.sum.after) / 0.5, { relative: 1e-12 });
});

Deno.test("a correlated prior teaches the parameter that was not observed", () => {
  // b given a: mean 0 + r (ub/ua)(a − 0), variance ub²(1 − r²), as the observation is exact.
  const { parameters } = updateParameters(
    { a: { value: 0, u: 1 }, b: { value: 0, u: 2 } },
    { predict: ({ a }) => ({ a }), observed: { a: { value: 1, u: 1e-6 } } },
    { correlations: [{ between: ["a", "b"], coefficient: 0.8 }] },
  );
  assertClose(parameters.b.value, 0.8 * 2, { relative: 1e-6 });
  assertClose(parameters.b.u, 2 * 0.6, { relative: 1e-6 });
});

Deno.test("two spans tell bending from shear, one span does not", () => {
  // Compliance c = kb/D + ks/S with truth D = 700, S = 45 000 (invented).
  const compliance = (D: number, S: number, span: number): number =>
    span ** 3 / (48 * D) + span / (4 * S);
  const prior = { D: { value: 600, u: 150 }, S: { value: 40_000, u: 10_000 } };
  const observe = (...spans: number[]) =>
    updateParameters(prior, {
      predict: ({ D, S }) =>
        Object.fromEntries(spans.map((span) => [`at ${span}`, compliance(D, S, span)])),
      observed: Object.fromEntries(spans.map((span) => {
        const value = compliance(700, 45_000, span);
        return [`at ${span}`, { value, u: 0.002 * value }];
      })),
    });
  const two = observe(0.2, 0.8);
  assertClose([two.parameters.D.value, two.parameters.S.value], [700, 45_000], { relative: 0.01 });
  assert(two.parameters.D.learned > 0.99 && two.parameters.S.learned > 0.99);
  const one = observe(0.4);
  assert(one.parameters.D.learned < 0.9 && one.parameters.S.learned < 0.9);
  assert(one.correlations[0]!.coefficient < -0.9);
  assertEquals(two.notes, []);
});

Deno.test("observations against the prior, and a bent posterior, are noted", () => {
  const odd = updateParameters(
    { a: { value: 0, u: 1 } },
    { predict: ({ a }) => ({ a }), observed: { a: { value: 9, u: 1 } } },
  );
  assert(odd.notes[0]!.includes("contradict"));
  const bent = updateParameters(
    { a: { value: 1, u: 1 } },
    { predict: ({ a }) => ({ square: a * a }), observed: { square: { value: 0.5, u: 1 } } },
  );
  assert(bent.notes.some((note) => note.includes("not spread normally")));
});

Deno.test("steps that the formula refuses are halved", () => {
  const check = checksFor("test");
  const { parameters } = updateParameters(
    { a: { value: 0.5, u: 5 } },
    {
      predict: ({ a }) => ({ log: Math.log(check.positive("a", a)) }),
      observed: { log: { value: -6, u: 0.01 } },
    },
  );
  assertClose(parameters.a.value, Math.exp(-6), { relative: 1e-3 });
});

Deno.test("groups that agree are drawn together, unequal ones stay apart", () => {
  const named = (values: readonly number[], u: number) =>
    values.map((value, i) => ({ name: String(i), value, u }));
  const apart = poolGroups(named([0, 100, 200, 300, 400], 1));
  assert(apart.groups.every(({ drawn }) => drawn < 0.01));
  assertClose(apart.groups[0]!.value, 0, { absolute: 0.05 });
  const same = poolGroups(named([10, 10, 10, 10, 10], 1));
  assert(same.groups.every(({ drawn, u }) => drawn > 0.5 && u < 1));
  assertClose(same.mean.value, 10, { absolute: 1e-9 });
  assertEquals(same.notes, []);
  assertEquals(poolGroups(named([1, 2, 3], 1)).notes.length, 1);
});

Deno.test("control chart: each rule by a row made for it", () => {
  const base = [0, 1, 0, -1, 0, 1, 0, -1, 0, 1, 0, -1];
  const rulesOf = (...more: number[]): string[] =>
    controlChart([...base, ...more], { baseline: base.length }).signals
      .filter(({ index }) => index >= base.length)
      .map(({ index, rule }) => `${index - base.length} ${rule}`);
  // Every step is 1: σ = 0.886, limits ± 2.659, largest step 3.267.
  assertEquals(rulesOf(0.5, 2.6), []);
  assertEquals(rulesOf(0.5, 2.7), ["1 beyond limit"]);
  assertEquals(rulesOf(0, 1.8, 1.0, 1.8), ["3 two of three"]);
  assertEquals(rulesOf(0, 1, 1, 1, 1, 1, 1, 1, 1), ["8 run of eight"]);
  assertEquals(rulesOf(-1.7, 1.7), ["1 jump"]);
  assertEquals(controlChart([5, 5, 5, 5, 5]).signals, []);
  assertEquals(controlChart([5, 5, 5, 5, 5]).notes.length, 2);
});

Deno.test("trend: told, not told, and tied to the value before", () => {
  assertEquals(trend([5, 4, 3.1, 2, 1]).verdict, "falling");
  assertEquals(trend([5, 1, 4, 2, 5]).verdict, "cannot be told");
  assertEquals(trend([1, 2, 3, 4]).chance, 0);
  assertEquals(trend([2, 2, 2, 2]).verdict, "cannot be told");
  assertClose(trend([0, 1, 3, 4], [0, 10, 30, 40]).slope.value, 0.1, { relative: 1e-13 });
  const wave = Array.from({ length: 40 }, (_, i) => Math.sin(i / 6) + i / 100);
  assertEquals(trend(wave).notes.length, 1);
});

Deno.test("tolerance limits: factor times sd, and notes where they promise little", () => {
  const { mean, sd, factor, lower, upper, notes } = toleranceLimit([410, 396, 402, 415, 387]);
  assertClose([mean, sd], [402, Math.sqrt(123.5)], { relative: 1e-14 });
  assertClose(factor, toleranceFactor(5), {});
  assertClose([lower, upper], [mean - factor * sd, mean + factor * sd], { relative: 1e-14 });
  assertEquals(notes.length, 1);
  assertEquals(toleranceLimit([100, 150]).notes.length, 2);
});

Deno.test("noncentral t against 25-digit integrals", () => {
  const parameters = { dof: 5, shift: 1 };
  assertClose(noncentralTProbability(3, parameters), 0.916261755972806, { relative: 1e-13 });
  assertClose(noncentralTProbability(-1, parameters), 0.0308073532607502, { relative: 1e-12 });
  const t = noncentralTQuantile(0.916261755972806, parameters);
  assertClose(t, 3, { relative: 1e-11 });
});

Deno.test("a model that fits raises no note, one that does not says where", () => {
  const data = Array.from(randomGenerator(4).fillNormal(new Float64Array(30)));
  const model = (spread: number) =>
    predictiveCheck((random) => data.map(() => spread * random.normal()), data);
  assertEquals(model(1).notes, []);
  const wide = model(5);
  assert(wide.notes.some((note) => note.includes("The sd of the data")));
  assertEquals(wide.figures.map(({ name }) => name), [
    "mean",
    "sd",
    "smallest",
    "largest",
    "lag 1",
  ]);
});

Deno.test("refusals of what learns", () => {
  const fails = (act: () => unknown, message: string): unknown =>
    assertThrows(act, InputError, message);
  const one = { value: 1, u: 1 };
  fails(() => updateEstimate({ value: 1, u: 0 }, [one]), "uncertainty of prior is 0");
  fails(() => updateEstimate(one, []), "evidence is a list of 0");
  fails(() => updateEstimate(one, [{ value: NaN, u: 1 }]), "evidence 0 is NaN");
  const predict = ({ a }: { a: number }) => ({ a });
  fails(() => updateParameters({ a: one }, undefined as never), "evidence is missing");
  fails(
    () => updateParameters({ a: { value: 1, u: 0 } }, { predict, observed: { a: one } }),
    "uncertainty of a is 0",
  );
  fails(
    () => updateParameters({ a: one }, { predict, observed: { a: one, b: one } as never }),
    "prediction of b is missing",
  );
  fails(() => poolGroups([{ name: "1", ...one }]), "groups is a list of 1");
  fails(() => poolGroups([1, 2, 3].map((i) => ({ name: `${i}`, value: i, u: 0 }))), "is 0");
  fails(() => controlChart([1, 2, 3]), "number of values is 3");
  fails(() => controlChart([1, 2, 3, 4], { baseline: 9 }), "baseline is 9");
  fails(() => trend([1, 2, 3]), "number of values is 3");
  fails(() => toleranceFactor(1), "number of readings is 1");
  fails(() => toleranceFactor(5, { content: 1 }), "content is 1");
  fails(() => noncentralTQuantile(0.5, { dof: 0, shift: 1 }), "degrees of freedom is 0");
  fails(() => predictiveCheck(() => [1], [1, 2]), "number of readings is 1");
  fails(() => predictiveCheck(() => [1, 2], [1, 2], { trials: 0 }), "number of campaigns is 0");
});
