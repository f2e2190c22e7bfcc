import { assertThrows } from "@std/assert";
import { InputError } from "@laminate/notebooks/check";
import { findRoot, gaussLegendre, integrate } from "@laminate/notebooks/numeric";
import { assertClose } from "../close.ts";

Deno.test("five points in closed form", () => {
  // Abramowitz and Stegun, table 25.4 (closed form as in any text), from memory.
  const inner = Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3;
  const outer = Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3;
  const { nodes, weights } = gaussLegendre(5);
  assertClose(Array.from(nodes), [-outer, -inner, 0, inner, outer], { relative: 1e-15 });
  const [heavy, light] = [(322 + 13 * Math.sqrt(70)) / 900, (322 - 13 * Math.sqrt(70)) / 900];
  assertClose(Array.from(weights), [light, heavy, 128 / 225, heavy, light], { relative: 1e-14 });
});

Deno.test("outermost of 64 points", () => {
  // 30-digit arithmetic (mpmath): root of P64 and its weight.
  const { nodes, weights } = gaussLegendre(64);
  assertClose(nodes[63]!, 0.99930504173577214, { relative: 1e-15 });
  // The weight divides by P64′², whose relative error grows with the degree.
  assertClose(weights[63]!, 0.0017832807216964329, { relative: 1e-12 });
});

Deno.test("exact for polynomials up to degree 2n − 1 and not beyond", () => {
  for (let n = 1; n <= 12; n++) {
    const rule = gaussLegendre(n);
    const power = (degree: number): number =>
      integrate((x) => x ** degree, { from: 0, to: 2 }, rule);
    assertClose(power(2 * n - 1), 2 ** (2 * n) / (2 * n), { relative: 1e-13 });
    // The first degree missed, by n!⁴ 2^(2n+1) / ((2n + 1) (2n)!²) on an interval of length 2.
    let missed = 2 / (2 * n + 1);
    for (let k = 1; k <= n; k++) missed *= (2 * k) ** 2 * k ** 2 / ((2 * k) * (2 * k - 1)) ** 2;
    const exact = 2 ** (2 * n + 1) / (2 * n + 1);
    assertClose(exact - power(2 * n), missed, { relative: 1e-6, absolute: 1e-13 * exact });
  }
});

Deno.test("the sign of an integral goes with its direction", () => {
  const rule = gaussLegendre(20);
  assertClose(integrate(Math.exp, { from: 1, to: 0 }, rule), 1 - Math.E, { relative: 1e-14 });
});

Deno.test("roots that are simple, flat, at an end, and far to one side", () => {
  assertClose(findRoot(Math.cos, { from: 0, to: 3 }), Math.PI / 2, { relative: 2e-16 });
  assertClose(findRoot((x) => x ** 9, { from: -1, to: 2 }), 0, { absolute: 1e-30 });
  assertClose(findRoot((x) => x - 2, { from: 2, to: 5 }), 2, {});
  assertClose(findRoot((x) => x - 5, { from: 2, to: 5 }), 5, {});
  assertClose(findRoot((x) => Math.exp(x) - 1e10, { from: 200, to: -100 }), 10 * Math.LN10, {
    relative: 1e-15,
  });
});

Deno.test("a tolerance saves work and is kept", () => {
  let calls = 0;
  const counted = (x: number): number => {
    calls++;
    return Math.tanh(x - 0.3);
  };
  assertClose(findRoot(counted, { from: -40, to: 60 }, 1e-3), 0.3, { absolute: 1e-3 });
  const rough = calls;
  findRoot(counted, { from: -40, to: 60 });
  if (!(calls - rough > rough)) throw new Error(`${calls - rough} calls to the last digit`);
});

Deno.test("refusals of integrals and roots", () => {
  assertThrows(() => gaussLegendre(0), InputError, "whole number, 1 or above");
  assertThrows(() => gaussLegendre(2.5), InputError, "whole number, 1 or above");
  assertThrows(() => gaussLegendre(1e6), InputError, "between 1 and 10000");
  assertThrows(
    () => integrate((x) => 1 / x, { from: -1, to: 1 }, gaussLegendre(3)),
    InputError,
    "integral is Infinity",
  );
  assertThrows(() => findRoot((x) => x * x + 1, { from: -1, to: 1 }), InputError, "opposite sign");
  assertThrows(() => findRoot(() => NaN, { from: -1, to: 1 }), InputError, "is NaN");
  assertThrows(() => findRoot(Math.sin, { from: NaN, to: 1 }), InputError, "start of the interval");
  assertThrows(() => findRoot(Math.sin, { from: -1, to: 1 }, -1), InputError, "tolerance is -1");
});
