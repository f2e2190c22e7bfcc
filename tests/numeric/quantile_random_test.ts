import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "@laminate/notebooks/check";
import { quantiles, randomGenerator } from "@laminate/notebooks/numeric";
import { nextBits } from "../../lib/numeric/_ziggurat.ts";
import { LAYER_WIDTH } from "../../lib/numeric/_ziggurat.ts";
import { assertClose } from "../close.ts";

Deno.test("quantiles by hand, also of equal, sorted and single values", () => {
  assertEquals(quantiles([7], [0, 0.3, 1]), [7, 7, 7]);
  assertEquals(quantiles([2, 2, 2, 2], [0.1, 0.9]), [2, 2]);
  assertEquals(quantiles([10, 20, 30, 40], [0.75, 0.25, 0.5]), [32.5, 17.5, 25]);
  assertEquals(quantiles(Float64Array.of(4, 3, 2, 1), [0, 1]), [1, 4]);
  assertEquals(quantiles([1], []), []);
});

Deno.test("the list asked stays as it is", () => {
  const values = Object.freeze([3, 1, 2]);
  quantiles(values, [0.5]);
  assertEquals(values, [3, 1, 2]);
});

Deno.test("refusals of quantiles", () => {
  assertThrows(() => quantiles([], [0.5]), InputError, "values is a list of 0");
  assertThrows(() => quantiles([1, NaN], [0.5]), InputError, "values entry 1 is NaN");
  assertThrows(() => quantiles([1], [1.5]), InputError, "between 0 and 1");
  assertThrows(() => quantiles([1], 0.5 as never), InputError, "probabilities is 0.5");
});

Deno.test("xoshiro128++ from state 1 2 3 4", () => {
  // The authors' C code rewritten in Python by itself; Rust's rand_xoshiro carries the
  // same ten (from memory).
  const state = Int32Array.of(1, 2, 3, 4);
  // deno-fmt-ignore
  assertEquals(Array.from({ length: 10 }, () => nextBits(state) >>> 0), [
    641, 1573767, 3222811527, 3517856514, 836907274,
    4247214768, 3867114732, 1355841295, 495546011, 621204420,
  ]);
});

Deno.test("a seed gives the same numbers everywhere, a large one too", () => {
  // Independent Python program of splitmix32 and xoshiro128++.
  const first = (seed: number): number[] => {
    const generator = randomGenerator(seed);
    return [generator.bits(), generator.bits(), generator.bits()];
  };
  assertEquals(first(1), [909274362, 1311799249, 1224002957]);
  assertEquals(first(20261125), [305408046, 1665638294, 1792351856]);
  assertEquals(first(2 ** 40 + 5), [1298553450, 4125138145, 2661297367]);
});

Deno.test("the ziggurat's layers close at the top of the bell", () => {
  // The last layer's area must end at height 1: an error in the constants shows here first.
  const [below, top] = [LAYER_WIDTH[255]!, LAYER_WIDTH[256]!];
  assertEquals(top, 0);
  const area = LAYER_WIDTH[0]! * Math.exp(-0.5 * LAYER_WIDTH[1]! ** 2);
  assertClose(below * (1 - Math.exp(-0.5 * below * below)), area, { relative: 1e-11 });
});

Deno.test("filling an array equals drawing one by one", () => {
  const [one, many] = [randomGenerator(9), randomGenerator(9)];
  const normals = many.fillNormal(new Float64Array(20_000));
  for (const value of normals) assertEquals(one.normal(), value);
  const uniforms = many.fillUniform(new Float64Array(100));
  for (const value of uniforms) assertEquals(one.uniform(), value);
});

Deno.test("normal numbers fill the bell's cells as they should", () => {
  // Probabilities of |z| cells from tables of the normal integral (Abramowitz and Stegun, table
  // 26.1, from memory): chi-square over 10 signed cells stays below its 99.99 % point, 33.72 at 9
  // degrees of freedom. The seed is fixed, so the test cannot flicker.
  const cells = [0.3413447460685429, 0.1359051219832778, 0.0214002339165491, 0.0013182267897969];
  const probabilities = [...cells, 0.0000316712418331].flatMap((p) => [p, p]);
  const count = 2_000_000;
  const seen = new Array<number>(10).fill(0);
  for (const z of randomGenerator(42).fillNormal(new Float64Array(count))) {
    seen[2 * Math.min(4, Math.floor(Math.abs(z))) + (z < 0 ? 1 : 0)]! += 1;
  }
  const chi2 = probabilities.reduce(
    (sum, p, i) => sum + (seen[i]! - count * p) ** 2 / (count * p),
    0,
  );
  assert(chi2 < 33.72, `chi-square ${chi2}`);
});

Deno.test("the bell keeps its shape where its tail takes over, at 3.654", () => {
  // ½ erfc(z/√2) differenced (Python's math.erfc): z from 3 to 3.25, 3.45, 3.65, 3.85, 4.05 and on.
  const edges = [3, 3.25, 3.45, 3.65, 3.85, 4.05];
  const probabilities = [
    ...[7.728729892393283e-4, 2.9673176557459e-4, 1.491731223956926e-4],
    ...[7.206124200156218e-5, 3.3450095944881014e-5, 2.5608816474041537e-5],
  ];
  const count = 4_000_000;
  const seen = new Array<number>(12).fill(0);
  for (const z of randomGenerator(43).fillNormal(new Float64Array(count))) {
    const cell = edges.findLastIndex((edge) => Math.abs(z) >= edge);
    if (cell >= 0) seen[2 * cell + (z < 0 ? 1 : 0)]! += 1;
  }
  const chi2 = probabilities.flatMap((p) => [p, p]).reduce(
    (sum, p, i) => sum + (seen[i]! - count * p) ** 2 / (count * p),
    0,
  );
  // 99.99 % point at 12 degrees of freedom (closed form for even ones).
  assert(chi2 < 39.13, `chi-square ${chi2}`);
});

Deno.test("beyond its start the tail is the bell's: number and mean excess", () => {
  // r where the tail begins: Q(r) = ½ erfc(r/√2), E[z − r | z > r] = φ(r)/Q(r) − r, and its variance
  // 1 + r λ − λ² with λ = φ/Q (Python's math.erfc).
  const r = 3.6541528853610088;
  const [share, excess, variance] = [2 * 1.2901624383e-4, 0.242886, 0.053463];
  const draws = 16_000_000;
  const buffer = new Float64Array(1_000_000);
  const random = randomGenerator(44);
  let [beyond, sum] = [0, 0];
  for (let round = 0; round < 16; round++) {
    for (const z of random.fillNormal(buffer)) {
      if (Math.abs(z) <= r) continue;
      beyond++;
      sum += Math.abs(z) - r;
    }
  }
  // Four standard errors: once in sixteen thousand, and the seed is fixed.
  assertClose(beyond, share * draws, { absolute: 4 * Math.sqrt(share * draws) });
  assertClose(sum / beyond, excess, { absolute: 4 * Math.sqrt(variance / beyond) });
});

Deno.test("uniform numbers stay inside 0 and 1 and fill it evenly", () => {
  const count = 500_000;
  const values = randomGenerator(7).fillUniform(new Float64Array(count));
  const seen = new Array<number>(20).fill(0);
  for (const u of values) {
    assert(u > 0 && u < 1);
    seen[Math.floor(20 * u)]! += 1;
  }
  const chi2 = seen.reduce((sum, k) => sum + (k - count / 20) ** 2 / (count / 20), 0);
  // 99.99 % point at 19 degrees of freedom.
  assert(chi2 < 50.8, `chi-square ${chi2}`);
});

Deno.test("a seed that is no whole number is refused", () => {
  for (const seed of [-1, 1.5, NaN, "1" as never]) {
    assertThrows(() => randomGenerator(seed), InputError, "seed is");
  }
});
