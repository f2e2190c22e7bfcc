/**
 * A failure criterion as a set of quadratic surfaces. A state (stress, or strain for allowables)
 * is on a piece where
 *   c + b1 v1 + b2 v2 + a11 v1² + a22 v2² + a66 v12² + a12 v1 v2 = 1,
 * and fails where it is on a piece that applies there. So each criterion meets a straight path of
 * states in closed form, also one that does not begin at zero (a residual stress).
 */
import type { FailureMode, FailureVerdict } from "./failure_verdict.ts";

/** A stress or strain in ply axes: 11, 22, 12. */
export type State = readonly [one: number, two: number, shear: number];

/** Coefficients that are not given are 0. */
export interface SurfacePiece {
  readonly mode?: FailureMode;
  readonly c?: number;
  readonly b1?: number;
  readonly b2?: number;
  readonly a11?: number;
  readonly a22?: number;
  readonly a66?: number;
  readonly a12?: number;
  /** At least 0 where the piece applies, in any unit that grows with the state. */
  readonly applies?: (state: State) => number;
}

/** Magnitudes at which one component alone fails. */
export interface Limits {
  readonly tension1: number;
  readonly compression1: number;
  readonly tension2: number;
  readonly compression2: number;
  readonly shear: number;
}

export interface Surface {
  readonly pieces: readonly SurfacePiece[];
  /** For naming the mode where a piece names none. */
  readonly limits: Limits;
  /** Whether the index is the value of the quadratic, and not 1/ratio. */
  readonly quadraticIndex?: boolean;
}

export const ZERO: State = [0, 0, 0];

/** Where a path leaves the safe region. */
export interface Crossing {
  readonly ratio: number;
  readonly mode: FailureMode;
}

/** A piece may be missed by rounding where two meet: it reaches this share beyond its border. */
const OVERLAP = 1e-12;

/** Value of a piece's left-hand side. */
export function valueOf(piece: SurfacePiece, [one, two, shear]: State): number {
  const { c = 0, b1 = 0, b2 = 0, a11 = 0, a22 = 0, a66 = 0, a12 = 0 } = piece;
  return c + b1 * one + b2 * two + a11 * one * one + a22 * two * two + a66 * shear * shear +
    a12 * one * two;
}

/**
 * The smallest R above 0 at which fixed + R growing is on the surface; 0 if `fixed` alone fails,
 * nothing if the path never does.
 */
export function crossing(surface: Surface, fixed: State, growing: State): Crossing | null {
  const alone = fixed.every((value) => value === 0) ? null : reach(surface, ZERO, fixed);
  if (alone !== null && alone.ratio <= 1) return { ratio: 0, mode: alone.mode };
  return reach(surface, fixed, growing);
}

function reach(surface: Surface, fixed: State, growing: State): Crossing | null {
  // Steps of unit size: the square of a tiny load would vanish.
  const size = Math.max(...growing.map(Math.abs));
  if (size === 0) return null;
  const step: State = [growing[0] / size, growing[1] / size, growing[2] / size];
  let first: { step: number; piece: SurfacePiece } | null = null;
  for (const piece of surface.pieces) {
    for (const root of rootsAlong(piece, fixed, step)) {
      if (!(root > 0) || (first !== null && root >= first.step)) continue;
      const at = along(fixed, step, root);
      const extent = Math.max(...at.map(Math.abs), ...fixed.map(Math.abs));
      if ((piece.applies?.(at) ?? 0) >= -OVERLAP * extent) first = { step: root, piece };
    }
  }
  if (first === null) return null;
  const mode = first.piece.mode ?? dominantMode(surface.limits, along(fixed, step, first.step));
  return { ratio: first.step / size, mode };
}

function along(fixed: State, step: State, root: number): State {
  return [fixed[0] + root * step[0], fixed[1] + root * step[1], fixed[2] + root * step[2]];
}

function rootsAlong(piece: SurfacePiece, fixed: State, step: State): number[] {
  const { b1 = 0, b2 = 0, a11 = 0, a22 = 0, a66 = 0, a12 = 0 } = piece;
  const [f1, f2, f6] = fixed;
  const [s1, s2, s6] = step;
  const square = a11 * s1 * s1 + a22 * s2 * s2 + a66 * s6 * s6 + a12 * s1 * s2;
  const linear = b1 * s1 + b2 * s2 + 2 * (a11 * f1 * s1 + a22 * f2 * s2 + a66 * f6 * s6) +
    a12 * (f1 * s2 + f2 * s1);
  return quadraticRoots(square, linear, valueOf(piece, fixed) - 1);
}

/** Real roots of a x² + b x + c, without the loss of digits of the schoolbook formula. */
function quadraticRoots(a: number, b: number, c: number): number[] {
  if (a === 0) return b === 0 ? [] : [-c / b];
  const discriminant = b * b - 4 * a * c;
  if (discriminant < 0) return [];
  const q = -(b + (b < 0 ? -1 : 1) * Math.sqrt(discriminant)) / 2;
  return q === 0 ? [0] : [q / a, c / q];
}

/** The component with the largest share of its limit. */
function dominantMode(limits: Limits, [one, two, shear]: State): FailureMode {
  const shares: readonly (readonly [FailureMode, number])[] = [
    one >= 0 ? ["1t", one / limits.tension1] : ["1c", -one / limits.compression1],
    two >= 0 ? ["2t", two / limits.tension2] : ["2c", -two / limits.compression2],
    ["12", Math.abs(shear) / limits.shear],
  ];
  return shares.reduce((largest, share) => share[1] > largest[1] ? share : largest)[0];
}

/** What the surface says of a state. */
export function verdictOf(surface: Surface, state: State): FailureVerdict {
  const found = reach(surface, ZERO, state);
  if (found === null) return { ratio: null, index: 0, mode: null };
  const index = surface.quadraticIndex === true
    ? valueOf(pieceAt(surface, state), state)
    : 1 / found.ratio;
  return { ratio: found.ratio, index, mode: found.mode };
}

/** The piece that applies at a state, of a criterion in which one does everywhere. */
function pieceAt({ pieces }: Surface, state: State): SurfacePiece {
  return pieces.find((piece) => (piece.applies?.(state) ?? 0) >= 0) ?? pieces[0]!;
}
