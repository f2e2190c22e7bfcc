/**
 * Double sine series on typed arrays: the sum over waves is separated, one side after the other,
 * and the sines of a grid come from one recurrence a place. This is the hot kernel of the room.
 */
import type { PlateConstants } from "./_levy_roots.ts";

/** Wave numbers that take part, and the amplitudes of the three fields, m after m. */
export interface WaveTable {
  readonly alphas: Float64Array;
  readonly betas: Float64Array;
  readonly W: Float64Array;
  readonly X: Float64Array;
  readonly Y: Float64Array;
}

/** Pressure amplitude of the waves: sums of products of one amplitude along x and one along y. */
export interface PressureWaves {
  readonly alphas: Float64Array;
  readonly betas: Float64Array;
  readonly x: readonly Float64Array[];
  readonly y: readonly Float64Array[];
}

/** Amplitudes of deflection and rotations for each pair of waves. */
export function solveWaves(
  { D11, D12, D22, D66, S44, S55 }: PlateConstants,
  rigid: boolean,
  { alphas, betas, x, y }: PressureWaves,
): WaveTable {
  const M = alphas.length;
  const N = betas.length;
  const W = new Float64Array(M * N);
  const X = new Float64Array(M * N);
  const Y = new Float64Array(M * N);
  const H = D12 + D66;
  for (let i = 0; i < M; i++) {
    const al = alphas[i]!;
    const a2 = al * al;
    for (let j = 0; j < N; j++) {
      const be = betas[j]!;
      const b2 = be * be;
      let q = 0;
      for (let k = 0; k < x.length; k++) q += x[k]![i]! * y[k]![j]!;
      const at = i * N + j;
      if (rigid) {
        const w = q / (D11 * a2 * a2 + 2 * (H + D66) * a2 * b2 + D22 * b2 * b2);
        W[at] = w;
        X[at] = -al * w;
        Y[at] = -be * w;
        continue;
      }
      const s12 = S55 * al;
      const s13 = S44 * be;
      const s22 = D11 * a2 + D66 * b2 + S55;
      const s23 = H * al * be;
      const s33 = D66 * a2 + D22 * b2 + S44;
      const c1 = s22 * s33 - s23 * s23;
      const c2 = s13 * s23 - s12 * s33;
      const c3 = s12 * s23 - s13 * s22;
      const share = q / ((S55 * a2 + S44 * b2) * c1 + s12 * c2 + s13 * c3);
      W[at] = c1 * share;
      X[at] = c2 * share;
      Y[at] = c3 * share;
    }
  }
  return { alphas, betas, W, X, Y };
}

/** Sines of all waves at all places, wave after wave; waves are whole multiples of the first. */
function sineTable(waves: Float64Array, places: Float64Array, side: number): Float64Array {
  const G = places.length;
  const table = new Float64Array(waves.length * G);
  const step = Math.PI / side;
  const first = Math.round(waves[0]! / step);
  const second = waves.length > 1 ? Math.round(waves[1]! / step) - first : 0;
  const even = waves.every((wave, i) => Math.round(wave / step) === first + second * i);
  for (let g = 0; g < G; g++) {
    const angle = step * places[g]!;
    if (!even) {
      for (let i = 0; i < waves.length; i++) table[i * G + g] = Math.sin(waves[i]! * places[g]!);
      continue;
    }
    const twice = 2 * Math.cos(second * angle);
    let before = Math.sin((first - second) * angle);
    let now = Math.sin(first * angle);
    for (let i = 0; i < waves.length; i++) {
      table[i * G + g] = now;
      const next = twice * now - before;
      before = now;
      now = next;
    }
  }
  return table;
}

/** A grid's places. */
export interface Grid {
  readonly xs: Float64Array;
  readonly ys: Float64Array;
}

/** The panel's sides. */
interface Sides {
  readonly length: number;
  readonly width: number;
}

/**
 * Σ W sin αx sin βy on a grid, places along x one after another. Where only odd waves take part
 * and the places mirror each other, half a side is computed and copied.
 */
export function deflectionGrid(waves: WaveTable, grid: Grid, sides: Sides): Float64Array {
  const halfX = isMirrored(waves.alphas, grid.xs, sides.length);
  const halfY = isMirrored(waves.betas, grid.ys, sides.width);
  const GX = grid.xs.length;
  const GY = grid.ys.length;
  const HX = halfX ? Math.ceil(GX / 2) : GX;
  const HY = halfY ? Math.ceil(GY / 2) : GY;
  const part = fullGrid(waves, {
    xs: grid.xs.subarray(0, HX),
    ys: grid.ys.subarray(0, HY),
  }, sides);
  if (!halfX && !halfY) return part;
  const whole = new Float64Array(GX * GY);
  for (let h = 0; h < GX; h++) {
    const from = (h < HX ? h : GX - 1 - h) * HY;
    const to = h * GY;
    for (let g = 0; g < HY; g++) whole[to + g] = part[from + g]!;
    for (let g = HY; g < GY; g++) whole[to + g] = part[from + GY - 1 - g]!;
  }
  return whole;
}

/** Whether the field along a side is the same from both ends, at places that are too. */
function isMirrored(waves: Float64Array, places: Float64Array, side: number): boolean {
  for (let i = 0; i < waves.length; i++) {
    if (Math.round(waves[i]! * side / Math.PI) % 2 === 0) return false;
  }
  const last = places.length - 1;
  for (let g = 0; 2 * g <= last; g++) {
    if (Math.abs(places[g]! + places[last - g]! - side) > 1e-12 * side) return false;
  }
  return true;
}

/** The sum at every place. */
function fullGrid(
  { alphas, betas, W }: WaveTable,
  { xs, ys }: Grid,
  sides: Sides,
): Float64Array {
  const M = alphas.length;
  const N = betas.length;
  const GX = xs.length;
  const GY = ys.length;
  const grid = new Float64Array(GX * GY);
  if (M === 0 || N === 0) return grid;
  const SX = sineTable(alphas, xs, sides.length);
  const SY = sineTable(betas, ys, sides.width);
  const row = new Float64Array(GY);
  const rows = new Float64Array(M * GY);
  for (let i = 0; i < M; i++) {
    row.fill(0);
    // Four waves at a time: a quarter of the reads and writes of the row.
    let j = 0;
    for (; j + 3 < N; j += 4) {
      const at = i * N + j;
      const [w0, w1, w2, w3] = [W[at]!, W[at + 1]!, W[at + 2]!, W[at + 3]!];
      const [s0, s1, s2, s3] = [j * GY, (j + 1) * GY, (j + 2) * GY, (j + 3) * GY];
      for (let g = 0; g < GY; g++) {
        row[g]! += w0 * SY[s0 + g]! + w1 * SY[s1 + g]! + w2 * SY[s2 + g]! + w3 * SY[s3 + g]!;
      }
    }
    for (; j < N; j++) {
      const w = W[i * N + j]!;
      for (let g = 0; g < GY; g++) row[g]! += w * SY[j * GY + g]!;
    }
    rows.set(row, i * GY);
  }
  for (let h = 0; h < GX; h++) {
    const from = h * GY;
    let i = 0;
    for (; i + 3 < M; i += 4) {
      const [a0, a1] = [SX[i * GX + h]!, SX[(i + 1) * GX + h]!];
      const [a2, a3] = [SX[(i + 2) * GX + h]!, SX[(i + 3) * GX + h]!];
      const [r0, r1, r2, r3] = [i * GY, (i + 1) * GY, (i + 2) * GY, (i + 3) * GY];
      for (let g = 0; g < GY; g++) {
        grid[from + g]! += a0 * rows[r0 + g]! + a1 * rows[r1 + g]! + a2 * rows[r2 + g]! +
          a3 * rows[r3 + g]!;
      }
    }
    for (; i < M; i++) {
      const a = SX[i * GX + h]!;
      for (let g = 0; g < GY; g++) grid[from + g]! += a * rows[i * GY + g]!;
    }
  }
  return grid;
}
