/**
 * The solutions that die away from an edge, of one sine wave along x of an orthotropic plate with
 * shear: w = W sin αx, φx = X cos αx, φy = Y sin αx, in η = αy.
 *
 * Roots that lie apart give plain exponentials. Two that come near are kept as a pair e^(−mη) cosh
 * δη and e^(−mη) sinh(δη)/δ; three that come near (short waves) as a chain, the third function
 * f3 with f3′ = f2 − μ3 f3: so the solutions stay apart where exponentials would fall together.
 */
import { type DecayRoots, decayRoots, type PlateConstants } from "./_levy_roots.ts";

/** Factors of the functions f1, f2, f3. */
type Factors = readonly [number, number, number];

/** Amplitudes of one solution: αW, X, Y, each as factors of f1 to f3 or of e^(−root η). */
interface Mode {
  /** The root of a plain exponential, whose factor stands first. */
  readonly root?: number;
  readonly W: Factors;
  readonly X: Factors;
  readonly Y: Factors;
}

/** The three decaying solutions of one wave. */
export interface DecayingModes {
  readonly roots: DecayRoots;
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

/** Roots nearer than this share of their mean are kept together. */
const TOGETHER = 0.1;

/** The decaying solutions for wave number α. */
export function decayingModes(plate: PlateConstants, alpha: number): DecayingModes {
  const roots = decayRoots(plate, alpha);
  const { mean, delta2, third } = roots;
  const limit = (TOGETHER * mean) ** 2;
  if (delta2 > limit) {
    const delta = Math.sqrt(delta2);
    const apart = [mean - delta, mean + delta, third].map((root) => plainMode(plate, alpha, root));
    return { roots, modes: apart as unknown as DecayingModes["modes"] };
  }
  if (Math.abs(delta2) <= limit && (third - mean) ** 2 <= limit) {
    const chain = ([[1, 0, 0], [0, 1, 0], [0, 0, 1]] as const)
      .map((start) => chainMode(plate, alpha, { roots, start }));
    return { roots, modes: chain as unknown as DecayingModes["modes"] };
  }
  return {
    roots,
    modes: [
      pairMode(plate, alpha, { roots, start: [1, 0, 0] }),
      pairMode(plate, alpha, { roots, start: [0, 1, 0] }),
      plainMode(plate, alpha, third),
    ],
  };
}

/** Derivative by η of a f1 + b f2 + c f3. */
function derive([a, b, c]: Factors, { mean, delta2, third }: DecayRoots): Factors {
  return [b - mean * a, delta2 * a - mean * b + c, -third * c];
}

/** What a column of the operator's adjugate is applied to. */
interface Start {
  readonly roots: DecayRoots;
  readonly start: Factors;
}

/** Applies polynomials of ∂/∂η, lowest power first, to the start. */
function applied({ roots, start }: Start): (weights: readonly number[]) => Factors {
  const powers = [start];
  for (let n = 1; n <= 4; n++) powers.push(derive(powers[n - 1] as Factors, roots));
  return (weights) => {
    const sum: [number, number, number] = [0, 0, 0];
    weights.forEach((weight, n) => {
      const power = powers[n] as Factors;
      for (let i = 0; i < 3; i++) sum[i]! += weight * power[i]!;
    });
    return sum;
  };
}

/** Second and third row of the operator crossed: bending solutions have a deflection in it. */
function pairMode(plate: PlateConstants, alpha: number, start: Start): Mode {
  const { H, k4, k5, p, r, D22, D66 } = abbreviations(plate, alpha);
  const apply = applied(start);
  return normalised({
    W: apply([p * r, 0, H * H - D66 * r - D22 * p, 0, D66 * D22]),
    X: apply([-k5 * r, 0, k5 * D22 - k4 * H]),
    Y: apply([0, k5 * H - k4 * p, 0, k4 * D66]),
  });
}

/** First and third row crossed: every solution, pure twist too, has a rotation φx in it. */
function chainMode(plate: PlateConstants, alpha: number, start: Start): Mode {
  const { H, k4, r, D22 } = abbreviations(plate, alpha);
  const { S44, S55 } = plate;
  const apply = applied(start);
  return normalised({
    W: apply([-S55 * r, 0, S55 * D22 - S44 * H]),
    X: apply([S55 * r, 0, -S44 * r - S55 * D22 + S44 * k4, 0, S44 * D22]),
    Y: apply([0, S55 * k4 - S55 * H, 0, S44 * H]),
  });
}

function abbreviations(
  { D11, D12, D22, D66, S44, S55 }: PlateConstants,
  alpha: number,
): Readonly<Record<"H" | "k4" | "k5" | "p" | "r" | "D22" | "D66", number>> {
  const [k5, k4] = [S55 / alpha ** 2, S44 / alpha ** 2];
  return { H: D12 + D66, k4, k5, p: D11 + k5, r: D66 + k4, D22, D66 };
}

type Triple = readonly [number, number, number];

/** Null vector at a root of its own: the best of the three crossings of two rows. */
function plainMode(plate: PlateConstants, alpha: number, root: number): Mode {
  const { D11, D22, D66, S44, S55 } = plate;
  const { H, k4, k5 } = abbreviations(plate, alpha);
  const mu = -root;
  const sigma = root * root;
  const first = unit([S44 * sigma - S55, -S55, S44 * mu]);
  const second = unit([-k5, D66 * sigma - D11 - k5, H * mu]);
  const third = unit([-k4 * mu, -H * mu, D22 * sigma - D66 - k4]);
  const crossings = [cross(first, second), cross(second, third), cross(first, third)]
    .sort((a, b) => Math.hypot(...b) - Math.hypot(...a));
  const [W, X, Y] = crossings[0] as Triple;
  return { root, ...normalised({ W: [W, 0, 0], X: [X, 0, 0], Y: [Y, 0, 0] }) };
}

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

function normalised({ W, X, Y }: Omit<Mode, "root">): Omit<Mode, "root"> {
  const size = Math.max(...[...W, ...X, ...Y].map(Math.abs));
  const divide = ([a, b, c]: Factors): Factors => [a / size, b / size, c / size];
  return { W: divide(W), X: divide(X), Y: divide(Y) };
}

/** One decaying solution at η from its edge. */
export function evaluateMode(
  { roots, modes }: DecayingModes,
  index: 0 | 1 | 2,
  eta: number,
): WaveState {
  const { root, W, X, Y } = modes[index];
  if (root !== undefined) {
    const e = Math.exp(-root * eta);
    return {
      W: W[0] * e,
      X: X[0] * e,
      Y: Y[0] * e,
      Xd: -root * X[0] * e,
      Yd: -root * Y[0] * e,
      Xdd: root * root * X[0] * e,
      Ydd: root * root * Y[0] * e,
    };
  }
  const [f1, f2] = pairFunctions(roots, eta);
  const f3 = modes[2].root === undefined ? chainFunction(roots, eta) : 0;
  const at = ([a, b, c]: Factors): number => a * f1 + b * f2 + c * f3;
  const Xd = derive(X, roots);
  const Yd = derive(Y, roots);
  return {
    W: at(W),
    X: at(X),
    Y: at(Y),
    Xd: at(Xd),
    Yd: at(Yd),
    Xdd: at(derive(Xd, roots)),
    Ydd: at(derive(Yd, roots)),
  };
}

/** e^(−mη) cosh δη and e^(−mη) sinh(δη)/δ for any sign of δ², without overflow. */
function pairFunctions({ mean, delta2 }: DecayRoots, eta: number): readonly [number, number] {
  const e = Math.exp(-mean * eta);
  const x = Math.sqrt(Math.abs(delta2)) * eta;
  if (x < 1e-2) {
    const square = Math.sign(delta2) * x * x;
    return [
      e * (1 + square / 2 * (1 + square / 12 * (1 + square / 30))),
      e * eta * (1 + square / 6 * (1 + square / 20 * (1 + square / 42))),
    ];
  }
  const delta = x / eta;
  if (delta2 < 0) return [e * Math.cos(x), e * Math.sin(x) / delta];
  const slow = Math.exp(-(mean - delta) * eta);
  const fast = Math.exp(-(mean + delta) * eta);
  return [(slow + fast) / 2, (slow - fast) / (2 * delta)];
}

/** Beyond this many lengths of decay nothing of the chain's last function is left. */
const FADED = 80;

/** f3 = ∫ e^(−μ3(η − s)) f2(s) ds from 0 to η, as a power series: the roots lie close here. */
function chainFunction({ mean, delta2, third }: DecayRoots, eta: number): number {
  if (mean * eta > FADED) return 0;
  const x = (mean - third) * eta;
  const y = delta2 * eta * eta;
  // Σ y^j x^i/(i + 2j + 2)! over all i and j, gathered by n = i + 2j.
  let [sum, gathered, even, factorial] = [0, 0, 1, 1];
  for (let n = 0; n < 80; n++) {
    gathered = gathered * x + (n % 2 === 0 ? even : 0);
    if (n % 2 === 0) even *= y;
    factorial *= n + 1;
    sum += gathered / (factorial * (n + 2));
  }
  return Math.exp(-mean * eta) * eta * eta * sum;
}
