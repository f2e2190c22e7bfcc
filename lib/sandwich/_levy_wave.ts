/** One sine wave along x of a plate between two edges, y from 0 to `width`. */
import { checksFor } from "../check/mod.ts";
import { solveDense } from "./_dense_solve.ts";
import { type DecayingModes, decayingModes, evaluateMode, type WaveState } from "./_levy_modes.ts";
import type { PlateConstants } from "./_levy_roots.ts";
import type { EdgeSupport } from "./panel.ts";
import type { Profile } from "./_panel_load.ts";

const check = checksFor("solve the panel by sine waves");

/** What stays the same for all waves. */
export interface WaveProblem {
  readonly plate: PlateConstants;
  readonly width: number;
  readonly y0: EdgeSupport;
  readonly y1: EdgeSupport;
  /** Load along y. */
  readonly load: Profile;
}

/** Amplitudes at one y. Those of w, Mx, My, Qy go with sin αx, the others with cos αx. */
export interface WaveAmplitudes {
  readonly w: number;
  readonly X: number;
  readonly Y: number;
  readonly Mx: number;
  readonly My: number;
  readonly Mxy: number;
  readonly Qx: number;
  readonly Qy: number;
}

/** A stretch of y in which the load is one straight line, or nothing. */
interface Region {
  readonly from: number;
  readonly to: number;
  /** Load at y = from and its slope, both 0 outside the load. */
  readonly value: number;
  readonly slope: number;
}

/** Regions of a load along y. */
function regionsOf({ load, width }: WaveProblem): readonly Region[] {
  if (load.kind === "at") {
    return [
      { from: 0, to: load.place, value: 0, slope: 0 },
      { from: load.place, to: width, value: 0, slope: 0 },
    ].filter(({ from, to }) => to > from);
  }
  const slope = (load.end - load.start) / (load.to - load.from);
  return [
    { from: 0, to: load.from, value: 0, slope: 0 },
    { from: load.from, to: load.to, value: load.start, slope },
    { from: load.to, to: width, value: 0, slope: 0 },
  ].filter(({ from, to }) => to > from);
}

/** Place of the region of a y; on the rim of the load the loaded one, as `profileAt` takes it. */
function regionAt({ load }: WaveProblem, regions: readonly Region[], y: number): number {
  const loaded = load.kind === "at" || y < load.from || y > load.to
    ? -1
    : regions.findIndex(({ from, to }) => from === load.from && to === load.to);
  if (loaded >= 0) return loaded;
  const index = regions.findIndex(({ to }) => y <= to);
  return index < 0 ? regions.length - 1 : index;
}

/** Solves the wave with load amplitude `amplitude` × load profile; gives its homogeneous part
 * and, apart, what of the loaded part has no closed form over all waves (see `particular`). */
export function solveWave(
  problem: WaveProblem,
  alpha: number,
  amplitude: number,
): (y: number) => { readonly free: WaveAmplitudes; readonly loaded: WaveAmplitudes } {
  const { plate } = problem;
  const modes = decayingModes(plate, alpha);
  const regions = regionsOf(problem);
  const coefficients = matchRegions({ problem, alpha, amplitude, modes, regions });
  return (y) => {
    const index = regionAt(problem, regions, y);
    const region = regions[index] as Region;
    const state = emptyState();
    for (let j = 0; j < 6; j++) {
      addState(state, basisState(modes, region, { alpha, j, y }), coefficients[6 * index + j] ?? 0);
    }
    return {
      free: amplitudesOf(plate, alpha, state),
      loaded: amplitudesOf(plate, alpha, particular(plate, { alpha, amplitude, region, y })),
    };
  };
}

/** Solution of the loaded wave away from all edges: linear in y. */
function particular(
  { D11, D12, D66, S44, S55 }: PlateConstants,
  { alpha, amplitude, region, y }: {
    readonly alpha: number;
    readonly amplitude: number;
    readonly region: Region;
    readonly y: number;
  },
): WaveState {
  const q = amplitude * (region.value + region.slope * (y - region.from));
  const dq = amplitude * region.slope;
  const bending = 1 / (alpha ** 3 * D11);
  const Xy = -dq * bending;
  const Wy = dq * (bending + 1 / (alpha * S55)) / alpha;
  const state = emptyState();
  state.W = q * (bending + 1 / (alpha * S55));
  state.X = -q * bending;
  state.Y = -(alpha * (D12 + D66) * Xy + S44 * Wy) / (alpha * alpha * D66 + S44);
  state.Xd = Xy / alpha;
  return state;
}

function emptyState(): WaveState {
  return { W: 0, X: 0, Y: 0, Xd: 0, Yd: 0, Xdd: 0, Ydd: 0 };
}

function addState(sum: WaveState, state: WaveState, factor: number): void {
  sum.W += factor * state.W;
  sum.X += factor * state.X;
  sum.Y += factor * state.Y;
  sum.Xd += factor * state.Xd;
  sum.Yd += factor * state.Yd;
  sum.Xdd += factor * state.Xdd;
  sum.Ydd += factor * state.Ydd;
}

/** Basis function j of a region: 0 to 2 die away from its start, 3 to 5 from its end. */
function basisState(
  modes: DecayingModes,
  region: Region,
  { alpha, j, y }: { readonly alpha: number; readonly j: number; readonly y: number },
): WaveState {
  if (j < 3) return evaluateMode(modes, j as 0 | 1 | 2, alpha * (y - region.from));
  const mirrored = evaluateMode(modes, (j - 3) as 0 | 1 | 2, alpha * (region.to - y));
  // y runs the other way: φy changes sign, and each derivative once more.
  return {
    W: mirrored.W,
    X: mirrored.X,
    Y: -mirrored.Y,
    Xd: -mirrored.Xd,
    Yd: mirrored.Yd,
    Xdd: mirrored.Xdd,
    Ydd: -mirrored.Ydd,
  };
}

/** Forces from equilibrium of moments, so that stiff shear costs no digits. */
function amplitudesOf(
  { D11, D12, D22, D66 }: PlateConstants,
  alpha: number,
  { W, X, Y, Xd, Yd, Xdd, Ydd }: WaveState,
): WaveAmplitudes {
  return {
    w: W / alpha,
    X,
    Y,
    Mx: alpha * (D12 * Yd - D11 * X),
    My: alpha * (D22 * Yd - D12 * X),
    Mxy: alpha * D66 * (Xd + Y),
    Qx: alpha ** 2 * (D12 * Yd - D11 * X + D66 * (Xdd + Yd)),
    Qy: alpha ** 2 * (D22 * Ydd - D12 * Xd - D66 * (Xd + Y)),
  };
}

/** Coefficients of all basis functions: edge conditions, and continuity between regions. */
function matchRegions({ problem, alpha, amplitude, modes, regions }: {
  readonly problem: WaveProblem;
  readonly alpha: number;
  readonly amplitude: number;
  readonly modes: DecayingModes;
  readonly regions: readonly Region[];
}): Float64Array {
  const { plate } = problem;
  const n = 6 * regions.length;
  const matrix = new Float64Array(n * n);
  const right = new Float64Array(n);
  let row = 0;
  const put = (
    at: number,
    y: number,
    { from, conditions, sign }: {
      readonly from: number;
      readonly conditions: (a: WaveAmplitudes) => readonly number[];
      readonly sign: number;
    },
  ): void => {
    const region = regions[at] as Region;
    for (let j = 0; j < 6; j++) {
      const a = amplitudesOf(plate, alpha, basisState(modes, region, { alpha, j, y }));
      conditions(a).forEach((value, i) => matrix[(from + i) * n + 6 * at + j] = sign * value);
    }
    const loaded = particular(plate, { alpha, amplitude, region, y });
    conditions(amplitudesOf(plate, alpha, loaded)).forEach((value, i) => {
      right[from + i]! -= sign * value;
    });
  };
  put(0, 0, { from: row, conditions: edgeConditions(problem.y0, -1), sign: 1 });
  row += 3;
  for (let at = 0; at + 1 < regions.length; at++) {
    const y = (regions[at] as Region).to;
    put(at, y, { from: row, conditions: continuity, sign: -1 });
    put(at + 1, y, { from: row, conditions: continuity, sign: 1 });
    if (problem.load.kind === "at") right[row + 5]! -= amplitude * problem.load.value;
    row += 6;
  }
  put(regions.length - 1, problem.width, {
    from: row,
    conditions: edgeConditions(problem.y1, 1),
    sign: 1,
  });
  return solveDense(matrix, right) ??
    check.refuse("stiffness and sides", "a wave without solution", "must be of sensible size");
}

function continuity({ w, X, Y, My, Mxy, Qy }: WaveAmplitudes): readonly number[] {
  return [w, X, Y, My, Mxy, Qy];
}

/** The three conditions of an edge; `outward` is the sign of y along its outward normal. */
function edgeConditions(
  support: EdgeSupport,
  outward: 1 | -1,
): (a: WaveAmplitudes) => readonly number[] {
  if (support === "simple") return ({ w, X, My }) => [w, X, My];
  if (support === "clamped") return ({ w, X, Y }) => [w, X, Y];
  if (support === "free") return ({ My, Mxy, Qy }) => [My, Mxy, Qy];
  const { deflectionStiffness, rotationStiffness } = support;
  return ({ w, Y, My, Mxy, Qy }) => [
    My + outward * rotationStiffness * Y,
    Mxy,
    Qy + outward * deflectionStiffness * w,
  ];
}
