import { assertEquals, assertThrows } from "@std/assert";
import { InputError } from "@laminate/notebooks/check";
import {
  chiSquaredProbability,
  chiSquaredQuantile,
  fProbability,
  fQuantile,
  normalProbability,
  normalQuantile,
  studentTProbability,
  studentTQuantile,
} from "@laminate/notebooks/statistics";
import { assertClose } from "../close.ts";

// Expected values: 40-digit arithmetic (mpmath's incomplete beta and gamma functions, inverted),
// rounded to double. Each agrees with the printed tables of Abramowitz and Stegun where these go.

Deno.test("Student's t quantiles", () => {
  // deno-fmt-ignore
  const table = [
    [0.975, 1, 12.706204736174694], [0.9999, 1, 3183.0987571185015], [0.6, 1, 0.32491969623290623],
    [0.975, 2, 4.302652729749462], [0.995, 3, 5.840909309733355], [0.9, 4, 1.533206274058944],
    [0.975, 5, 2.5705818356363146], [0.975, 9, 2.262157162798205], [0.995, 16, 2.9207816224250998],
    [0.975, 16.7518557, 2.1121987946362037], [0.975, 29, 2.045229642132704],
    [0.9999, 100, 3.8615997909500908], [0.975, 1000, 1.962339080826408],
  ] as const;
  for (const [p, dof, t] of table) {
    assertClose(studentTQuantile(p, dof), t, { relative: 1e-12 }, `t(${p}, ${dof})`);
    assertClose(studentTQuantile(1 - p, dof), -t, { relative: 1e-11 }, `t(1 − ${p}, ${dof})`);
    assertClose(studentTProbability(t, dof), p, { relative: 1e-13 }, `P(t ≤ ${t})`);
  }
  // Half a million for a parameter of the beta function costs four digits.
  assertClose(studentTQuantile(0.975, 1e6), 1.9599663568141066, { relative: 1e-10 });
  assertEquals(studentTQuantile(0.5, 3), 0);
});

Deno.test("one and two degrees of freedom in closed form", () => {
  for (const p of [0.501, 0.75, 0.99, 0.999999]) {
    assertClose(studentTQuantile(p, 1), Math.tan(Math.PI * (p - 0.5)), { relative: 1e-10 });
    const c = 2 * p - 1;
    assertClose(studentTQuantile(p, 2), c * Math.sqrt(2 / (1 - c * c)), { relative: 1e-10 });
  }
  // Far in the tail tan(π(p − ½)) is 1/(πq): the quantile keeps its digits there.
  assertClose(studentTQuantile(1e-100, 1), -1 / (Math.PI * 1e-100), { relative: 1e-12 });
});

Deno.test("normal quantiles and probabilities", () => {
  // deno-fmt-ignore
  const table = [
    [1e-10, -6.361340902404057], [0.001, -3.0902323061678136], [0.025, -1.9599639845400543],
    [0.3, -0.5244005127080408], [0.9, 1.2815515655446006], [0.975, 1.9599639845400538],
    [0.999999, 4.753424308817087],
  ] as const;
  for (const [p, z] of table) {
    assertClose(normalQuantile(p), z, { relative: 1e-13 }, `z(${p})`);
    assertClose(normalProbability(z), p, { relative: 1e-13 }, `Φ(${z})`);
  }
  assertEquals(normalQuantile(0.5), 0);
  assertEquals(normalProbability(0), 0.5);
  // Φ(−10) and Φ(−37), 40 digits.
  assertClose(normalProbability(-10), 7.619853024160525e-24, { relative: 1e-13 });
  assertClose(normalProbability(-37), 5.725571222524577e-300, { relative: 1e-11 });
});

Deno.test("chi-squared quantiles", () => {
  // deno-fmt-ignore
  const table = [
    [0.001, 1, 1.57079714926249e-06], [0.025, 1, 0.000982069117175256], [0.95, 1, 3.8414588206941245],
    [0.5, 2, 1.3862943611198906], [0.95, 4, 9.487729036781154], [0.025, 9, 2.700389499980358],
    [0.975, 9, 19.02276779864163], [0.05, 30, 18.492660981953467], [0.999, 200, 267.5405278227572],
  ] as const;
  for (const [p, dof, x] of table) {
    assertClose(chiSquaredQuantile(p, dof), x, { relative: 1e-13 }, `χ²(${p}, ${dof})`);
    assertClose(chiSquaredProbability(x, dof), p, { relative: 1e-13 }, `P(χ² ≤ ${x})`);
  }
  assertEquals(chiSquaredProbability(0, 3), 0);
});

Deno.test("F quantiles", () => {
  // deno-fmt-ignore
  const table = [
    [0.05, 1, 1, 0.0061939586571081945], [0.5, 1, 1, 1], [0.95, 1, 1, 161.4476387975882],
    [0.95, 2, 5, 5.786135043349964], [0.99, 9, 22, 3.345772756551531], [0.05, 8, 22, 0.3193584865626186],
    [0.95, 1, 100, 3.9361429863126483], [0.99, 30, 7, 5.992010174485092],
  ] as const;
  for (const [p, numerator, denominator, ratio] of table) {
    const dof = { numerator, denominator };
    assertClose(fQuantile(p, dof), ratio, { relative: 1e-12 }, `F(${p}, ${numerator})`);
    assertClose(fProbability(ratio, dof), p, { relative: 1e-13 }, `P(F ≤ ${ratio})`);
  }
});

Deno.test("t squared is F with one degree of freedom above the line", () => {
  for (const dof of [1, 4, 17]) {
    const t = studentTQuantile(0.95, dof);
    assertClose(fQuantile(0.9, { numerator: 1, denominator: dof }), t * t, { relative: 1e-11 });
  }
});

Deno.test("the far upper tails keep their digits, in closed form", () => {
  // q = 1 − p exact in binary. χ² of 2 is −2 ln q, F of 2 and 2 is p/q, F of 1 and 1 cot²(πq/2),
  // t of 1 cot(πq), t of 2 (1 − 2q)/√(2q(1 − q)).
  for (const bits of [10, 30, 45]) {
    const q = 2 ** -bits;
    const p = 1 - q;
    const words = `1 − 2^−${bits}`;
    assertClose(chiSquaredQuantile(p, 2), 2 * bits * Math.LN2, { relative: 1e-13 }, words);
    const [two, one] = [{ numerator: 2, denominator: 2 }, { numerator: 1, denominator: 1 }];
    assertClose(fQuantile(p, two), p / q, { relative: 1e-12 }, words);
    assertClose(fQuantile(p, one), Math.tan(Math.PI * q / 2) ** -2, { relative: 1e-11 }, words);
    assertClose(studentTQuantile(p, 1), 1 / Math.tan(Math.PI * q), { relative: 1e-11 }, words);
    const t2 = (1 - 2 * q) / Math.sqrt(2 * q * p);
    assertClose(studentTQuantile(p, 2), t2, { relative: 1e-11 }, words);
    assertClose(normalQuantile(p), -normalQuantile(q), { relative: 1e-13 }, words);
  }
});

Deno.test("refusals of the distributions", () => {
  for (const p of [0, 1, -0.1, NaN, "0.5" as never]) {
    assertThrows(() => studentTQuantile(p, 3), InputError, "probability is");
    assertThrows(() => normalQuantile(p), InputError, "probability is");
    assertThrows(() => chiSquaredQuantile(p, 3), InputError, "probability is");
    assertThrows(
      () => fQuantile(p, { numerator: 1, denominator: 1 }),
      InputError,
      "probability is",
    );
  }
  assertThrows(() => studentTQuantile(0.9, 0), InputError, "degrees of freedom is 0");
  assertThrows(() => chiSquaredProbability(-1, 2), InputError, "chi-squared is -1");
  assertThrows(
    () => fProbability(1, undefined as never),
    InputError,
    "degrees of freedom is missing",
  );
  assertThrows(() => normalProbability(Infinity), InputError, "z is Infinity");
  assertThrows(() => studentTQuantile(1e-300, 1), InputError, "beyond the range");
});
