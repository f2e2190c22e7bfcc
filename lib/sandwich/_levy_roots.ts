/**
 * Rates at which one sine wave of an orthotropic plate with shear dies away from an edge: the
 * roots μ of e^(−μη), η = αy. With σ = μ²,
 * (S44 σ − S55)(D66 D22 σ² − (D66² + D11 D22 − H²) σ + D11 D66)
 *   = (S44 S55/α²)(D22 σ² − 2(D12 + 2 D66) σ + D11),  H = D12 + D66,
 * a form free of the cancellation that the plain determinant has for stiff shear.
 */
import type { PanelShear, PanelStiffness } from "./panel_stiffness.ts";

/** Bending and shear stiffness of an orthotropic plate. */
export interface PlateConstants
  extends Pick<PanelStiffness, "D11" | "D12" | "D22" | "D66">, Pick<PanelShear, "S44" | "S55"> {}

/** Three roots: two as a pair m ± δ, which may fall together or be conjugate, and a third. */
export interface DecayRoots {
  /** Mean of the pair. */
  readonly mean: number;
  /** δ², below zero for a conjugate pair. */
  readonly delta2: number;
  /** The third root. */
  readonly third: number;
}

/** The roots for wave number α. */
export function decayRoots(
  { D11, D12, D22, D66, S44, S55 }: PlateConstants,
  alpha: number,
): DecayRoots {
  const H = D12 + D66;
  const a2 = alpha * alpha;
  const middle = D66 * D66 + D11 * D22 - H * H;
  // Divided by S44 S55/α², so that stiff shear leaves the thin plate's quadratic.
  const [u, v] = [a2 / S55, a2 / S44];
  const c3 = u * D66 * D22;
  const c2 = -u * middle - v * D66 * D22 - D22;
  const c1 = u * D11 * D66 + v * middle + 2 * (D12 + 2 * D66);
  const c0 = -v * D11 * D66 - D11;
  const lone = loneRoot(c2 / c3, c1 / c3, c0 / c3);
  const product = -c0 / c3 / lone;
  // Of the two ways to the others' sum the one that does not subtract near equals.
  const sum = lone * lone > product ? (c1 / c3 - product) / lone : -c2 / c3 - lone;
  const root = Math.sqrt(product);
  return {
    mean: Math.sqrt(sum + 2 * root) / 2,
    delta2: (sum - 2 * root) / 4,
    third: Math.sqrt(lone),
  };
}

/** The root of x³ + a x² + b x + c that lies farthest from the others; real, and here positive. */
function loneRoot(a: number, b: number, c: number): number {
  const Q = (a * a - 3 * b) / 9;
  const R = (2 * a ** 3 - 9 * a * b + 27 * c) / 54;
  const cube = Q ** 3;
  let x: number;
  if (R * R < cube) {
    const theta = Math.acos(R / Math.sqrt(cube));
    const at = (k: number): number => -2 * Math.sqrt(Q) * Math.cos((theta + k) / 3) - a / 3;
    const [least = 0, middle = 0, most = 0] = [at(0), at(2 * Math.PI), at(-2 * Math.PI)]
      .sort((p, q) => p - q);
    x = most - middle >= middle - least ? most : least;
  } else {
    const A = -Math.sign(R) * Math.cbrt(Math.abs(R) + Math.sqrt(R * R - cube));
    x = A + (A === 0 ? 0 : Q / A) - a / 3;
  }
  for (let round = 0; round < 4; round++) {
    const slope = (3 * x + 2 * a) * x + b;
    if (slope === 0) break;
    const next = x - (((x + a) * x + b) * x + c) / slope;
    // At a double root rounding makes Newton's step wild: then the closed form is best.
    if (!(Math.abs(next - x) < 1e-4 * Math.abs(x))) break;
    x = next;
  }
  return x;
}
