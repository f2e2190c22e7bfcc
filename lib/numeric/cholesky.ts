import { checksFor } from "../check/mod.ts";
import { checkSymmetric } from "./_matrix_check.ts";

const check = checksFor("take the Cholesky factor");

/** A pivot below this share of its diagonal entry is rounding, not a positive number. */
const SMALLEST_PIVOT = 1e-14;

/**
 * Lower triangular factor of a symmetric positive definite matrix.
 *
 * Formula: A = L Lᵀ
 *
 * Range: any n; refuses a matrix that is not positive definite, or is so only by rounding.
 *
 * Source: Golub and Van Loan, Matrix Computations, chapter 4, from memory.
 *
 * @param matrix The n × n matrix A, row after row.
 * @returns L, row after row, zeros above the diagonal.
 * @throws {InputError} If the matrix is not square, symmetric, and positive definite.
 *
 * @example
 * ```ts
 * import { cholesky } from "@laminate/notebooks/numeric";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(Array.from(cholesky([4, 2, 2, 10])), [2, 0, 1, 3]);
 * ```
 */
export function cholesky(matrix: ArrayLike<number>): Float64Array {
  const order = checkSymmetric(check, "matrix", matrix);
  const factor = choleskyFactor(matrix, order);
  return factor ??
    check.refuse("matrix", matrix, "must be positive definite: xᵀAx above 0 for every x but 0");
}

/**
 * Whether a symmetric matrix is positive definite: a stiffness that stores energy in every
 * deformation, a covariance that has no negative variance.
 *
 * Formula: its Cholesky factor exists
 *
 * Range: any n; a matrix that is positive definite only by rounding is not.
 *
 * Source: Golub and Van Loan, Matrix Computations, chapter 4, from memory.
 *
 * @param matrix The n × n matrix, row after row.
 * @returns True where xᵀAx is above 0 for every x but 0.
 * @throws {InputError} If the matrix is not square and symmetric.
 *
 * @example
 * ```ts
 * import { isPositiveDefinite } from "@laminate/notebooks/numeric";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(isPositiveDefinite([2, 1, 1, 2]), true);
 * assertEquals(isPositiveDefinite([1, 2, 2, 1]), false);
 * ```
 */
export function isPositiveDefinite(matrix: ArrayLike<number>): boolean {
  return choleskyFactor(matrix, checkSymmetric(check, "matrix", matrix)) !== undefined;
}

function choleskyFactor(matrix: ArrayLike<number>, order: number): Float64Array | undefined {
  const factor = new Float64Array(order * order);
  for (let i = 0; i < order; i++) {
    for (let j = 0; j <= i; j++) {
      const entry = matrix[i * order + j]!;
      let sum = entry;
      for (let k = 0; k < j; k++) sum -= factor[i * order + k]! * factor[j * order + k]!;
      if (i > j) {
        factor[i * order + j] = sum / factor[j * order + j]!;
      } else if (sum > SMALLEST_PIVOT * entry) {
        factor[i * order + i] = Math.sqrt(sum);
      } else {
        return undefined;
      }
    }
  }
  return factor;
}
