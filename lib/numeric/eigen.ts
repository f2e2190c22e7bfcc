import { checksFor } from "../check/mod.ts";
import { cholesky } from "./cholesky.ts";
import { checkSymmetric } from "./_matrix_check.ts";

const check = checksFor("find the eigenvalues");

/** Eigenvalues with their vectors. */
export interface Eigensystem {
  /** Eigenvalues, the smallest first [unit of the matrix]. */
  readonly values: Float64Array;
  /** One vector after another, in the order of the values; n numbers each [1]. */
  readonly vectors: Float64Array;
}

/**
 * Eigenvalues and vectors of a symmetric matrix.
 *
 * Formula: A x = λ x, with vectors of length 1 at right angles to each other
 *
 * Range: any n, at about n³/10⁸ s times 5; absolute error near 1e-15 of the largest eigenvalue.
 *
 * Source: Jacobi's rotations as in Golub and Van Loan, Matrix Computations, chapter 8, from memory.
 *
 * @param matrix The n × n matrix A, row after row.
 * @returns Eigenvalues from the smallest up, with their vectors.
 * @throws {InputError} If the matrix is not square and symmetric.
 *
 * @example
 * ```ts
 * import { symmetricEigen } from "@laminate/notebooks/numeric";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { values } = symmetricEigen([2, 1, 1, 2]);
 * assertAlmostEquals(values[0]!, 1, 1e-14);
 * assertAlmostEquals(values[1]!, 3, 1e-14);
 * ```
 */
export function symmetricEigen(matrix: ArrayLike<number>): Eigensystem {
  const order = checkSymmetric(check, "matrix", matrix);
  return sorted(jacobi(Float64Array.from(matrix), order), order);
}

/**
 * Eigenvalues and vectors of one symmetric matrix against another: vibration (stiffness against
 * mass), buckling (geometric stiffness against elastic stiffness, whose eigenvalues are the
 * reciprocals of the load factors).
 *
 * Formula: A x = λ B x, with vectors scaled so that xᵀ B x = 1
 *
 * Range: A symmetric, B symmetric positive definite.
 *
 * Source: reduction by Cholesky's factor, Golub and Van Loan, chapter 8, from memory.
 *
 * @param matrix The n × n matrix A, row after row.
 * @param metric The n × n matrix B, row after row.
 * @returns Eigenvalues from the smallest up, with their vectors.
 * @throws {InputError} If a matrix is not square and symmetric, the two differ in size, or B is
 * not positive definite.
 *
 * @example A mass of 2 kg on a spring of 8 N/m: λ = ω²
 * ```ts
 * import { generalisedEigen } from "@laminate/notebooks/numeric";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(generalisedEigen([8], [2]).values[0]!, 4, 1e-14);
 * ```
 */
export function generalisedEigen(
  matrix: ArrayLike<number>,
  metric: ArrayLike<number>,
): Eigensystem {
  const order = checkSymmetric(check, "matrix", matrix);
  if (checkSymmetric(check, "metric", metric) !== order) {
    check.refuse("number of entries of the metric", metric.length, `must be ${order * order}`);
  }
  const factor = cholesky(metric);
  const { values, vectors } = sorted(jacobi(reduced(matrix, factor, order), order), order);
  for (let v = 0; v < order; v++) {
    for (let i = order - 1; i >= 0; i--) {
      let sum = vectors[v * order + i]!;
      for (let k = i + 1; k < order; k++) sum -= factor[k * order + i]! * vectors[v * order + k]!;
      vectors[v * order + i] = sum / factor[i * order + i]!;
    }
  }
  return { values, vectors };
}

/** L⁻¹ A L⁻ᵀ, made exactly symmetric. */
function reduced(matrix: ArrayLike<number>, factor: Float64Array, order: number): Float64Array {
  const half = Float64Array.from(matrix);
  forwardRows(half, factor, order);
  const full = new Float64Array(order * order);
  for (let i = 0; i < order; i++) {
    for (let j = 0; j < order; j++) full[i * order + j] = half[j * order + i]!;
  }
  forwardRows(full, factor, order);
  for (let i = 0; i < order; i++) {
    for (let j = 0; j < i; j++) full[j * order + i] = full[i * order + j]!;
  }
  return full;
}

/** Solves L X = B in place, all columns at once. */
function forwardRows(block: Float64Array, factor: Float64Array, order: number): void {
  for (let i = 0; i < order; i++) {
    for (let k = 0; k < i; k++) {
      const share = factor[i * order + k]!;
      if (share === 0) continue;
      for (let j = 0; j < order; j++) block[i * order + j]! -= share * block[k * order + j]!;
    }
    const pivot = factor[i * order + i]!;
    for (let j = 0; j < order; j++) block[i * order + j]! /= pivot;
  }
}

/** Diagonalises in place by sweeps of rotations; returns eigenvalues and row vectors, unsorted. */
function jacobi(matrix: Float64Array, order: number): Eigensystem {
  const vectors = new Float64Array(order * order);
  for (let i = 0; i < order; i++) vectors[i * order + i] = 1;
  // A power of two near the largest entry: its square then neither overflows nor vanishes.
  const largest = matrix.reduce((size, entry) => Math.max(size, Math.abs(entry)), 0);
  const unit = largest > 0 ? 2 ** Math.min(1023, Math.ceil(Math.log2(largest))) : 1;
  let whole = 0;
  for (let i = 0; i < matrix.length; i++) {
    matrix[i]! /= unit;
    whole += matrix[i]! ** 2;
  }
  for (let sweep = 0; sweep < 60; sweep++) {
    let off = 0;
    for (let p = 0; p < order; p++) {
      for (let q = p + 1; q < order; q++) off += matrix[p * order + q]! ** 2;
    }
    if (!(off > 1e-36 * whole)) break;
    for (let p = 0; p < order; p++) {
      for (let q = p + 1; q < order; q++) rotate(matrix, vectors, { order, p, q });
    }
  }
  const values = new Float64Array(order);
  for (let i = 0; i < order; i++) {
    values[i] = check.result(`eigenvalue ${i}`, matrix[i * order + i]! * unit);
  }
  return { values, vectors };
}

/** One rotation in the plane of p and q that makes the entry there zero. */
function rotate(
  matrix: Float64Array,
  vectors: Float64Array,
  { order, p, q }: { order: number; p: number; q: number },
): void {
  const entry = matrix[p * order + q]!;
  const app = matrix[p * order + p]!;
  const aqq = matrix[q * order + q]!;
  if (entry * entry <= 1e-38 * Math.abs(app * aqq)) return;
  const theta = (aqq - app) / (2 * entry);
  const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
  const c = 1 / Math.sqrt(t * t + 1);
  const s = t * c;
  for (let k = 0; k < order; k++) {
    const pk = matrix[p * order + k]!;
    const qk = matrix[q * order + k]!;
    matrix[p * order + k] = c * pk - s * qk;
    matrix[q * order + k] = s * pk + c * qk;
    const vp = vectors[p * order + k]!;
    const vq = vectors[q * order + k]!;
    vectors[p * order + k] = c * vp - s * vq;
    vectors[q * order + k] = s * vp + c * vq;
  }
  for (let k = 0; k < order; k++) {
    matrix[k * order + p] = matrix[p * order + k]!;
    matrix[k * order + q] = matrix[q * order + k]!;
  }
  matrix[p * order + p] = app - t * entry;
  matrix[q * order + q] = aqq + t * entry;
  matrix[p * order + q] = matrix[q * order + p] = 0;
}

function sorted({ values, vectors }: Eigensystem, order: number): Eigensystem {
  const rank = Array.from(values.keys()).sort((a, b) => values[a]! - values[b]!);
  const ranked = new Float64Array(order * order);
  rank.forEach((from, to) =>
    ranked.set(vectors.subarray(from * order, (from + 1) * order), to * order)
  );
  return { values: Float64Array.from(rank, (i) => values[i]!), vectors: ranked };
}
