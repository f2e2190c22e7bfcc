/**
 * LU factors with partial pivoting of a matrix that was scaled first, so that rows and columns of
 * mixed units (N/m beside N·m) neither spoil the pivots nor look like a singular matrix.
 *
 * A hot kernel: the indices below are inside the arrays by construction, hence the `!`.
 */

/** Factors of the scaled matrix R A C = Pᵀ L U. */
export interface Factors {
  readonly order: number;
  readonly lu: Float64Array;
  /** Row of the scaled matrix that stands at each row of the factors. */
  readonly rowOrder: Int32Array;
  readonly rowScale: Float64Array;
  readonly columnScale: Float64Array;
  /** Largest column sum of the scaled matrix. */
  readonly norm: number;
  /** Whether a pivot is exactly zero: then there are no solutions to ask for. */
  readonly singular: boolean;
}

/** Scales and factors an n × n matrix. */
export function factorise(matrix: ArrayLike<number>, order: number): Factors {
  const { lu, rowScale, columnScale } = scaled(matrix, order);
  const norm = largestColumnSum(lu, order);
  const rowOrder = new Int32Array(order);
  for (let i = 0; i < order; i++) rowOrder[i] = i;
  let singular = false;
  for (let k = 0; k < order; k++) {
    let pivotRow = k;
    for (let i = k + 1; i < order; i++) {
      if (Math.abs(lu[i * order + k]!) > Math.abs(lu[pivotRow * order + k]!)) pivotRow = i;
    }
    if (pivotRow !== k) swapRows(lu, rowOrder, { order, first: k, second: pivotRow });
    const pivot = lu[k * order + k]!;
    if (pivot === 0) {
      singular = true;
      continue;
    }
    for (let i = k + 1; i < order; i++) {
      const factor = (lu[i * order + k]! /= pivot);
      if (factor === 0) continue;
      for (let j = k + 1; j < order; j++) lu[i * order + j]! -= factor * lu[k * order + j]!;
    }
  }
  return { order, lu, rowOrder, rowScale, columnScale, norm, singular };
}

/** Solves the scaled system in place of a fresh vector. */
export function solveScaled(factors: Factors, rightHandSide: ArrayLike<number>): Float64Array {
  const { order, lu, rowOrder } = factors;
  const x = new Float64Array(order);
  for (let i = 0; i < order; i++) {
    let sum = rightHandSide[rowOrder[i]!]!;
    for (let j = 0; j < i; j++) sum -= lu[i * order + j]! * x[j]!;
    x[i] = sum;
  }
  for (let i = order - 1; i >= 0; i--) {
    let sum = x[i]!;
    for (let j = i + 1; j < order; j++) sum -= lu[i * order + j]! * x[j]!;
    x[i] = sum / lu[i * order + i]!;
  }
  return x;
}

/** Solves with the transpose of the scaled matrix. */
function solveTransposed(factors: Factors, rightHandSide: ArrayLike<number>): Float64Array {
  const { order, lu, rowOrder } = factors;
  const y = new Float64Array(order);
  for (let i = 0; i < order; i++) {
    let sum = rightHandSide[i]!;
    for (let j = 0; j < i; j++) sum -= lu[j * order + i]! * y[j]!;
    y[i] = sum / lu[i * order + i]!;
  }
  for (let i = order - 1; i >= 0; i--) {
    let sum = y[i]!;
    for (let j = i + 1; j < order; j++) sum -= lu[j * order + i]! * y[j]!;
    y[i] = sum;
  }
  const x = new Float64Array(order);
  for (let i = 0; i < order; i++) x[rowOrder[i]!] = y[i]!;
  return x;
}

/**
 * Condition number of the scaled matrix in the 1-norm, estimated from below by Hager's ascent
 * (W. W. Hager, SIAM J. Sci. Stat. Comput. 5, 1984, from memory): mostly exact, seldom under a third.
 */
export function conditionEstimate(factors: Factors): number {
  const { order, norm, singular } = factors;
  if (singular) return Infinity;
  let probe = new Float64Array(order).fill(1 / order);
  let estimate = 0;
  for (let round = 0; round < 5; round++) {
    const image = solveScaled(factors, probe);
    const size = image.reduce((sum, value) => sum + Math.abs(value), 0);
    if (!(size > estimate)) break;
    estimate = size;
    const slope = solveTransposed(factors, image.map((value) => (value < 0 ? -1 : 1)));
    let steepest = 0;
    for (let i = 1; i < order; i++) {
      if (Math.abs(slope[i]!) > Math.abs(slope[steepest]!)) steepest = i;
    }
    probe = new Float64Array(order);
    probe[steepest] = 1;
  }
  return norm * estimate;
}

/**
 * Multiplies rows and columns by powers of two (no rounding) until the largest entry of each is
 * near 1. Both sides get the same treatment, so a symmetric matrix stays symmetric.
 */
function scaled(
  matrix: ArrayLike<number>,
  order: number,
): { lu: Float64Array; rowScale: Float64Array; columnScale: Float64Array } {
  const lu = Float64Array.from(matrix);
  const rowScale = new Float64Array(order).fill(1);
  const columnScale = new Float64Array(order).fill(1);
  for (let round = 0; round < 4; round++) {
    const rows = new Float64Array(order);
    const columns = new Float64Array(order);
    for (let i = 0; i < order; i++) {
      for (let j = 0; j < order; j++) {
        const size = Math.abs(lu[i * order + j]!);
        if (size > rows[i]!) rows[i] = size;
        if (size > columns[j]!) columns[j] = size;
      }
    }
    for (let i = 0; i < order; i++) {
      rows[i] = powerOfTwo(rows[i]!);
      columns[i] = powerOfTwo(columns[i]!);
      rowScale[i]! *= rows[i]!;
      columnScale[i]! *= columns[i]!;
    }
    for (let i = 0; i < order; i++) {
      for (let j = 0; j < order; j++) lu[i * order + j]! *= rows[i]! * columns[j]!;
    }
  }
  return { lu, rowScale, columnScale };
}

/** The power of two nearest 1/√size; 1 for a row of zeros, which stays one. */
function powerOfTwo(size: number): number {
  return size === 0 ? 1 : 2 ** -Math.round(Math.log2(size) / 2);
}

function largestColumnSum(matrix: Float64Array, order: number): number {
  let largest = 0;
  for (let j = 0; j < order; j++) {
    let sum = 0;
    for (let i = 0; i < order; i++) sum += Math.abs(matrix[i * order + j]!);
    if (sum > largest) largest = sum;
  }
  return largest;
}

function swapRows(
  lu: Float64Array,
  rowOrder: Int32Array,
  { order, first, second }: { order: number; first: number; second: number },
): void {
  const keptRow = rowOrder[first]!;
  rowOrder[first] = rowOrder[second]!;
  rowOrder[second] = keptRow;
  for (let j = 0; j < order; j++) {
    const kept = lu[first * order + j]!;
    lu[first * order + j] = lu[second * order + j]!;
    lu[second * order + j] = kept;
  }
}
