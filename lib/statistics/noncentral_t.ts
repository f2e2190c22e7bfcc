import { checksFor } from "../check/mod.ts";
import { findRoot, gaussLegendre } from "../numeric/mod.ts";
import { checkInside } from "./_probability.ts";
import { chiSquaredQuantile } from "./chi_squared.ts";
import { normalProbability } from "./normal.ts";
import { logGamma } from "./_special.ts";

const check = checksFor("use the noncentral t distribution");

/** Parameters of the noncentral t distribution. */
export interface NoncentralT {
  /** Degrees of freedom ν [1]. */
  readonly dof: number;
  /** Noncentrality δ: the shift of the normal number above the line [1]. */
  readonly shift: number;
}

const RULE = gaussLegendre(24);
/** Panels of the integral: enough that a panel sees at most a third of the sharpest step. */
const PANELS = 48;
/** Largest noncentrality: k √n of any tolerance factor lies far below. */
const FARTHEST = 1e6;
/** Probability left out at either end of the chi distribution. */
const LEFT_OUT = 1e-18;

/**
 * Probability that (z + δ)/√(χ²/ν) is at most t.
 *
 * Formula: ∫ Φ(t s − δ) f(s) ds with s = √(χ²/ν), by Gauss–Legendre over 48 panels
 *
 * Range: ν 1 or above, |t| and |δ| up to about 500; absolute error about 1e-13.
 *
 * Source: definition, e.g. Johnson and Kotz, Continuous Univariate Distributions 2, from memory.
 *
 * @param t Value of t [1].
 * @param parameters Degrees of freedom ν and noncentrality δ [1].
 * @returns Probability [1].
 * @throws {InputError} If t is not a finite number, δ is beyond ±1e6 or ν is not 1 to 1e7.
 *
 * @example Without a shift it is Student's t
 * ```ts
 * import { noncentralTProbability } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(noncentralTProbability(1, { dof: 1, shift: 0 }), 0.75, 1e-12);
 * ```
 */
export function noncentralTProbability(t: number, parameters: NoncentralT): number {
  check.finite("t", t);
  return probabilityAt(t, chiWeights(checked(parameters)));
}

/**
 * t below which (z + δ)/√(χ²/ν) falls with probability p.
 *
 * Formula: P(T ≤ t) = p
 *
 * Range: p from 1e-6 to 1 − 1e-6; relative error about 1e-11.
 *
 * Source: as `noncentralTProbability`.
 *
 * @param probability p [1].
 * @param parameters Degrees of freedom ν and noncentrality δ [1].
 * @returns t [1].
 * @throws {InputError} If p is outside its range, δ beyond ±1e6 or ν not 1 to 1e7.
 *
 * @example
 * ```ts
 * import { noncentralTQuantile, studentTQuantile } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const t = noncentralTQuantile(0.95, { dof: 4, shift: 0 });
 * assertAlmostEquals(t, studentTQuantile(0.95, 4), 1e-9);
 * ```
 */
export function noncentralTQuantile(probability: number, parameters: NoncentralT): number {
  checkInside(check, probability);
  check.within("probability", probability, { min: 1e-6, max: 1 - 1e-6 });
  const weights = chiWeights(checked(parameters));
  const gap = (t: number): number => probabilityAt(t, weights) - probability;
  let reach = 1 + Math.abs(parameters.shift);
  while (gap(reach) < 0 && reach < 1e9) reach *= 2;
  let depth = -1 - Math.abs(parameters.shift);
  while (gap(depth) > 0 && depth > -1e9) depth *= 2;
  return findRoot(gap, { from: depth, to: reach });
}

function checked(parameters: NoncentralT): NoncentralT {
  const { dof, shift } = check.object("parameters", parameters);
  check.within("degrees of freedom", dof, { min: 1, max: 1e7 });
  check.within("noncentrality", shift, { min: -FARTHEST, max: FARTHEST });
  return parameters;
}

/** Where s = √(χ²/ν) is read, and how much each reading counts. */
interface ChiWeights {
  readonly s: Float64Array;
  readonly weight: Float64Array;
  readonly shift: number;
}

function chiWeights({ dof, shift }: NoncentralT): ChiWeights {
  const from = Math.sqrt(chiSquaredQuantile(LEFT_OUT, dof) / dof);
  // The upper end by symmetry of the logarithm would not do: chi's upper tail is normal.
  const to = Math.sqrt(chiSquaredQuantile(1 - 1e-16, dof) / dof) + 1 / Math.sqrt(dof);
  const count = PANELS * RULE.nodes.length;
  const [s, weight] = [new Float64Array(count), new Float64Array(count)];
  const half = (to - from) / PANELS / 2;
  const scale = Math.log(2) + (dof / 2) * Math.log(dof / 2) - logGamma(dof / 2);
  for (let panel = 0, k = 0; panel < PANELS; panel++) {
    for (let i = 0; i < RULE.nodes.length; i++, k++) {
      const at = from + half * (2 * panel + 1 + RULE.nodes[i]!);
      s[k] = at;
      weight[k] = half * RULE.weights[i]! *
        Math.exp(scale + (dof - 1) * Math.log(at) - (dof * at * at) / 2);
    }
  }
  return { s, weight, shift };
}

function probabilityAt(t: number, { s, weight, shift }: ChiWeights): number {
  let sum = 0;
  for (let k = 0; k < s.length; k++) {
    // Far out the probability is 0 or 1, and the product may overflow.
    const z = Math.max(-1e3, Math.min(1e3, t * s[k]! - shift));
    sum += weight[k]! * normalProbability(z);
  }
  return Math.min(1, sum);
}
