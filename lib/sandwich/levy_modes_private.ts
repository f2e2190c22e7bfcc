/**
 * The solutions that die away from an edge, of one sine wave along x, of an orthotropic plate
 * with shear: w = W sin αx, φx = X cos αx, φy = Y sin αx, in η = αy.
 *
 * With σ = μ² of e^(−μη) the characteristic equation is
 * (S44 σ − S55)(D66 D22 σ² − (D66² + D11 D22 − H²) σ + D11 D66)
 *   = (S44 S55/α²)(D22 σ² − 2(D12 + 2 D66) σ + D11),  H = D12 + D66,
 * free of the cancellation that the plain determinant has for stiff shear. Two of its roots may
 * fall together (an isotropic plate): they are kept as a pair, by mean and difference, whose
 * functions stay well apart.
 */
import type { PanelShear, PanelStiffness } from "./panel_stiffness.ts";

/** Bending and shear stiffness of an orthotropic plate. */
export interface PlateConstants
  extends Pick<PanelStiffness, "D11" | "D12" | "D22" | "D66">, Pick<PanelShear, "S44" | "S55"> {}

/** Factors of the pair's two functions e^(−mη) cosh δη and e^(−mη) sinh(δη)/δ. */
type PairFactors = readonly [number, number];

/** Amplitudes of one solution: αW, X, Y, each as factors of the pair or of the single root. */
interface Mode {
  readonly pair: boolean;
  readonly factors: readonly [PairFactors, PairFactors, PairFactors];
}

/** The three decaying solutions of one wave. */
export interface DecayingModes {
  /** Mean of the pair's roots. */
  readonly mean: number;
  /** Square of half the difference of the pair's roots; below zero for a conjugate pair. */
  readonly delta2: number;
  /** The third root. */
  readonly single: number;
  readonly modes: readonly [Mode, Mode, Mode];
}

/** Values of a solution and its derivatives by η at one place: αW, X, Y and so on. */
export interface WaveState {
  W: number;
  X: number;
  Y: number;
  Xd: number;
  Yd: number;
  Xdd: number;
  Ydd: number;
}

/** Roots nearer than this, relative, are better taken as a pair. */
const NEAR = 1e-3;

/** The decaying solutions for wave number α. */
export function decayingModes(plate: PlateConstants, alpha: number): DecayingModes {
  const { mean, delta2, single } = roots(plate, alpha);
  return {
    mean,
    delta2,
    single,
    modes: [
      pairMode(plate, alpha, { mean, delta2, start: [1, 0] }),
      pairMode(plate, alpha, { mean, delta2, start: [0, 1] }),
      singleMode(plate, alpha, single),
    ],
  };
}

/** Roots of c3 σ³ + c2 σ² + c1 σ + c0, as square roots: a pair and a single one. */
function roots(
  { D11, D12, D22, D66, S44, S55 }: PlateConstants,
  alpha: number,
): { readonly mean: number; readonly delta2: number; readonly single: number } {
  const H = D12 + D66;
  const a2 = alpha * alpha;
  const middle = D66 * D66 + D11 * D22 - H * H;
  // Divided by S44 S55/α², so that stiff shear leaves the thin plate's quadratic.
  const [u, v] = [a2 / S55, a2 / S44];
  const c3 = u * D66 * D22;
  const c2 = -u * middle - v * D66 * D22 - D22;
  const c1 = u * D11 * D66 + v * middle + 2 * (D12 + 2 * D66);
  const c0 = -v * D11 * D66 - D11;
  const largest = newton([c3, c2, c1, c0], 1 + Math.max(-c2, c1, -c0) / c3);
  const product = -c0 / c3 / largest;
  const sum = (c1 / c3 - product) / largest;
  const gap = sum * sum / 4 - product;
  const upper = sum / 2 + Math.sqrt(Math.max(gap, 0));
  if (gap < 0 || largest - upper > NEAR * largest) return fromSquares(sum, product, largest);
  const smallest = newton([c3, c2, c1, c0], 0);
  return fromSquares(-c2 / c3 - smallest, -c0 / c3 / smallest, smallest);
}

function fromSquares(
  sum: number,
  product: number,
  third: number,
): { readonly mean: number; readonly delta2: number; readonly single: number } {
  const root = Math.sqrt(product);
  return {
    mean: Math.sqrt(sum + 2 * root) / 2,
    delta2: (sum - 2 * root) / 4,
    single: Math.sqrt(third),
  };
}

/** Newton from outside all roots: monotone towards the nearest. */
function newton(
  [c3, c2, c1, c0]: readonly [number, number, number, number],
  start: number,
): number {
  let x = start;
  for (let round = 0; round < 200; round++) {
    const value = ((c3 * x + c2) * x + c1) * x + c0;
    const slope = (3 * c3 * x + 2 * c2) * x + c1;
    const next = x - value / slope;
    if (!(Math.abs(next - x) > 1e-16 * Math.abs(next))) return next;
    // Beyond the first steps the approach is one-sided: turning back means rounding is reached.
    if (round > 0 && (next - x) * (x - start) < 0) return x;
    x = next;
  }
  return x;
}

/** Derivative by η of a f1 + b f2. */
function derive([a, b]: PairFactors, mean: number, delta2: number): PairFactors {
  return [b - mean * a, delta2 * a - mean * b];
}

/** Second and third row of the operator crossed: its null vector, as polynomials of ∂/∂η. */
function pairMode(
  plate: PlateConstants,
  alpha: number,
  { mean, delta2, start }: {
    readonly mean: number;
    readonly delta2: number;
    readonly start: PairFactors;
  },
): Mode {
  const { D11, D12, D22, D66, S44, S55 } = plate;
  const H = D12 + D66;
  const [k5, k4] = [S55 / alpha ** 2, S44 / alpha ** 2];
  const scale = 1 / (k5 * k4 + D11 * D66);
  const f = [start];
  for (let n = 1; n <= 4; n++) f.push(derive(f[n - 1] as PairFactors, mean, delta2));
  const combine = (weights: readonly number[]): PairFactors => [
    scale * weights.reduce((sum, w, n) => sum + w * (f[n] as PairFactors)[0], 0),
    scale * weights.reduce((sum, w, n) => sum + w * (f[n] as PairFactors)[1], 0),
  ];
  const p = D11 + k5;
  const r = D66 + k4;
  return normalised({
    pair: true,
    factors: [
      combine([p * r, 0, H * H - D66 * r - D22 * p, 0, D66 * D22]),
      combine([-k5 * r, 0, k5 * D22 - k4 * H]),
      combine([0, k5 * H - k4 * p, 0, k4 * D66]),
    ],
  });
}

/** Null vector at the single root: the best of the three crossings of two rows. */
function singleMode(plate: PlateConstants, alpha: number, root: number): Mode {
  const { D11, D12, D22, D66, S44, S55 } = plate;
  const H = D12 + D66;
  const [k5, k4] = [S55 / alpha ** 2, S44 / alpha ** 2];
  const mu = -root;
  const sigma = root * root;
  const first = unit([S44 * sigma - S55, -S55, S44 * mu]);
  const second = unit([-k5, D66 * sigma - D11 - k5, H * mu]);
  const third = unit([-k4 * mu, -H * mu, D22 * sigma - D66 - k4]);
  const crossings = [cross(first, second), cross(second, third), cross(first, third)]
    .sort((a, b) => Math.hypot(...b) - Math.hypot(...a));
  const [W, X, Y] = crossings[0] as Triple;
  return normalised({ pair: false, factors: [[W, 0], [X, 0], [Y, 0]] });
}

type Triple = readonly [number, number, number];

function unit([a, b, c]: Triple): Triple {
  const size = Math.max(Math.abs(a), Math.abs(b), Math.abs(c));
  return [a / size, b / size, c / size];
}

function cross(a: Triple, b: Triple): Triple {
  return [
    a[1] * b[2] - a[2] * b[1],
    a[2] * b[0] - a[0] * b[2],
    a[0] * b[1] - a[1] * b[0],
  ];
}

function normalised({ pair, factors }: Mode): Mode {
  const size = Math.max(...factors.flat().map(Math.abs));
  const divide = ([a, b]: PairFactors): PairFactors => [a / size, b / size];
  return { pair, factors: [divide(factors[0]), divide(factors[1]), divide(factors[2])] };
}

/** One decaying solution at η from its edge. */
export function evaluateMode(
  { mean, delta2, single, modes }: DecayingModes,
  index: 0 | 1 | 2,
  eta: number,
): WaveState {
  const { pair, factors: [W, X, Y] } = modes[index];
  if (!pair) {
    const e = Math.exp(-single * eta);
    return {
      W: W[0] * e,
      X: X[0] * e,
      Y: Y[0] * e,
      Xd: -single * X[0] * e,
      Yd: -single * Y[0] * e,
      Xdd: single * single * X[0] * e,
      Ydd: single * single * Y[0] * e,
    };
  }
  const [f1, f2] = pairFunctions(mean, delta2, eta);
  const at = ([a, b]: PairFactors): number => a * f1 + b * f2;
  const Xd = derive(X, mean, delta2);
  const Yd = derive(Y, mean, delta2);
  return {
    W: at(W),
    X: at(X),
    Y: at(Y),
    Xd: at(Xd),
    Yd: at(Yd),
    Xdd: at(derive(Xd, mean, delta2)),
    Ydd: at(derive(Yd, mean, delta2)),
  };
}

/** e^(−mη) cosh δη and e^(−mη) sinh(δη)/δ for any sign of δ², without overflow. */
function pairFunctions(mean: number, delta2: number, eta: number): PairFactors {
  if (delta2 < 0) {
    const e = Math.exp(-mean * eta);
    const delta = Math.sqrt(-delta2);
    const x = delta * eta;
    return [e * Math.cos(x), e * (x < 1e-4 ? eta * (1 - x * x / 6) : Math.sin(x) / delta)];
  }
  const delta = Math.sqrt(delta2);
  const x = delta * eta;
  if (x < 1e-2) {
    const e = Math.exp(-mean * eta);
    return [e * Math.cosh(x), e * eta * (1 + x * x / 6 * (1 + x * x / 20 * (1 + x * x / 42)))];
  }
  const slow = Math.exp(-(mean - delta) * eta);
  const fast = Math.exp(-(mean + delta) * eta);
  return [(slow + fast) / 2, (slow - fast) / (2 * delta)];
}
