import { checksFor } from "../check/mod.ts";
import { checkNumbers } from "./_matrix_check.ts";

const check = checksFor("integrate");

/** Points and weights of a rule of quadrature on −1 to 1. */
export interface QuadratureRule {
  /** Where the integrand is read, from −1 up to 1 [1]. */
  readonly nodes: Float64Array;
  /** What each reading counts; they add up to 2 [1]. */
  readonly weights: Float64Array;
}

/** Ends of an interval. */
export interface Interval {
  /** Where it starts [any unit]. */
  readonly from: number;
  /** Where it ends; may lie below the start [unit of the start]. */
  readonly to: number;
}

/**
 * Gauss–Legendre points and weights.
 *
 * Formula: nodes are the zeros of Pn; weight 2/((1 − x²) Pn′(x)²)
 *
 * Range: n 1 to 10 000; exact for polynomials up to degree 2n − 1, to about 1e-15.
 *
 * Source: Abramowitz and Stegun, 25.4.29, from memory; Newton from the asymptotic zeros.
 *
 * @param count Number of points n.
 * @returns Points from −1 up to 1 with their weights [1].
 * @throws {InputError} If n is not a whole number from 1 to 10 000.
 *
 * @example
 * ```ts
 * import { gaussLegendre } from "@laminate/notebooks/numeric";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { nodes, weights } = gaussLegendre(2);
 * assertAlmostEquals(nodes[1]!, 1 / Math.sqrt(3), 1e-15);
 * assertAlmostEquals(weights[1]!, 1, 1e-15);
 * ```
 */
export function gaussLegendre(count: number): QuadratureRule {
  check.count("number of points", count, 1);
  check.within("number of points", count, { min: 1, max: 10_000 });
  const nodes = new Float64Array(count);
  const weights = new Float64Array(count);
  for (let i = 0; i < Math.ceil(count / 2); i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (count + 0.5));
    let slope = 1;
    for (let round = 0; round < 20; round++) {
      const legendre = legendreAt(count, x);
      slope = legendre.slope;
      const step = legendre.value / slope;
      x -= step;
      if (Math.abs(step) < 1e-15) break;
    }
    // The middle point of an odd rule is zero exactly.
    if (2 * i + 1 === count) x = 0;
    slope = legendreAt(count, x).slope;
    nodes[i] = -x;
    nodes[count - 1 - i] = x;
    weights[i] = weights[count - 1 - i] = 2 / ((1 - x * x) * slope * slope);
  }
  return { nodes, weights };
}

/**
 * Integral of a smooth function by one rule over the whole interval.
 *
 * Formula: ∫ f dx ≈ (b − a)/2 Σ w f((a + b)/2 + x (b − a)/2)
 *
 * Range: f smooth over the whole interval; split it at a kink.
 *
 * Source: Abramowitz and Stegun, 25.4.30, from memory.
 *
 * @param integrand The function f.
 * @param interval From where to where.
 * @param rule The rule, made once by `gaussLegendre`.
 * @returns The integral [unit of f times unit of x].
 * @throws {InputError} If a bound or a value of f is not a finite number.
 *
 * @example
 * ```ts
 * import { gaussLegendre, integrate } from "@laminate/notebooks/numeric";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const area = integrate(Math.sin, { from: 0, to: Math.PI }, gaussLegendre(12));
 * assertAlmostEquals(area, 2, 1e-14);
 * ```
 */
export function integrate(
  integrand: (x: number) => number,
  interval: Interval,
  rule: QuadratureRule,
): number {
  if (typeof integrand !== "function") check.refuse("integrand", integrand, "must be a function");
  const { from, to } = check.object("interval", interval);
  const { nodes, weights } = check.object("rule", rule);
  checkNumbers(check, "nodes of the rule", nodes);
  checkNumbers(check, "weights of the rule", weights);
  check.finite("start of the interval", from);
  check.finite("end of the interval", to);
  const half = (to - from) / 2;
  let sum = 0;
  for (let i = 0; i < nodes.length; i++) {
    sum += weights[i]! * integrand(from + half * (1 + nodes[i]!));
  }
  return check.result("integral", half * sum);
}

/** Legendre polynomial of degree n and its slope at x inside −1 to 1. */
function legendreAt(degree: number, x: number): { value: number; slope: number } {
  let before = 1;
  let value = x;
  for (let k = 2; k <= degree; k++) {
    const next = ((2 * k - 1) * x * value - (k - 1) * before) / k;
    before = value;
    value = next;
  }
  return { value, slope: (degree * (x * value - before)) / (x * x - 1) };
}
