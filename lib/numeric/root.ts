import { checksFor } from "../check/mod.ts";
import type { Interval } from "./quadrature.ts";

const check = checksFor("find the root");

/**
 * Where a continuous function crosses zero inside an interval.
 *
 * Formula: f(x) = 0, by inverse quadratic interpolation where it is safe and bisection elsewhere
 *
 * Range: f has opposite signs at the two ends (or is zero at one).
 *
 * Source: T. R. Chandrupatla, Advances in Engineering Software 28 (1997), from memory.
 *
 * @param f The function.
 * @param interval Ends at which f has opposite signs.
 * @param tolerance How far the answer may be off, in the unit of x; 0 asks for the last digit.
 * @returns x with f(x) = 0 to the tolerance [unit of x].
 * @throws {InputError} If f has the same sign at both ends, or an end, the tolerance or a value of
 * f is not a number.
 *
 * @example
 * ```ts
 * import { findRoot } from "@laminate/notebooks/numeric";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(findRoot((x) => x * x - 2, { from: 0, to: 2 }), Math.SQRT2, 1e-15);
 * ```
 */
export function findRoot(
  f: (x: number) => number,
  interval: Interval,
  tolerance = 0,
): number {
  if (typeof f !== "function") check.refuse("function", f, "must be a function");
  const { from, to } = check.object("interval", interval);
  check.nonNegative("tolerance", tolerance);
  const at = (x: number): number => check.finite(`value of the function at ${x}`, f(x));
  let a = check.finite("start of the interval", from);
  let b = check.finite("end of the interval", to);
  let fa = at(a);
  let fb = at(b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (Math.sign(fa) === Math.sign(fb)) {
    check.refuse(
      `value of the function at ${b}`,
      fb,
      `must have the opposite sign of ${fa} at ${a}: no crossing is enclosed`,
    );
  }
  let c = b;
  let fc = fb;
  let t = 0.5;
  for (let round = 0; round < 1100; round++) {
    const x = a + t * (b - a);
    const fx = at(x);
    if (Math.sign(fx) === Math.sign(fa)) {
      [c, fc] = [a, fa];
    } else {
      [c, b, fc, fb] = [b, a, fb, fa];
    }
    [a, fa] = [x, fx];
    const best = Math.abs(fa) < Math.abs(fb) ? a : b;
    const share = (2 * Number.EPSILON * Math.abs(best) + tolerance / 2) / Math.abs(b - a);
    if (fa === 0 || !(share < 0.5)) return best;
    t = Math.min(Math.max(nextShare({ a, b, c, fa, fb, fc }), share), 1 - share);
  }
  return a;
}

/** Where between a and b to look next: interpolated where the three points allow it, else half. */
function nextShare(
  { a, b, c, fa, fb, fc }: Readonly<Record<"a" | "b" | "c" | "fa" | "fb" | "fc", number>>,
): number {
  const xi = (a - b) / (c - b);
  const phi = (fa - fb) / (fc - fb);
  if (!(phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi)) return 0.5;
  return (fa / (fb - fa)) * (fc / (fb - fc)) +
    ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb));
}
