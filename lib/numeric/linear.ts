import { checksFor } from "../check/mod.ts";
import { conditionEstimate, factorise, type Factors, solveScaled } from "./_lu.ts";
import { checkNumbers, checkSquare } from "./_matrix_check.ts";

const checkSolve = checksFor("solve the linear equations");
const checkInverse = checksFor("invert the matrix");
const checkProduct = checksFor("multiply the matrices");

/** Above this condition number no digit of a solution can be trusted. */
const HOPELESS = 1e15;

/**
 * Solves n linear equations for one or more right-hand sides.
 *
 * Formula: A X = B, by LU with partial pivoting of the matrix scaled by powers of two
 *
 * Range: any n; relative error near 1e-16 times the condition number of the scaled matrix.
 *
 * Source: Golub and Van Loan, Matrix Computations, chapter 3, from memory.
 *
 * @param matrix The n × n matrix A, row after row.
 * @param rightHandSide B: n numbers, or n rows of m numbers.
 * @returns X, shaped as the right-hand side.
 * @throws {InputError} If a shape does not fit, an entry is not a finite number, or the matrix is
 * singular.
 *
 * @example
 * ```ts
 * import { solve } from "@laminate/notebooks/numeric";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const x = solve([2, 1, 1, 3], [5, 10]);
 * assertAlmostEquals(x[0]!, 1, 1e-14);
 * assertAlmostEquals(x[1]!, 3, 1e-14);
 * ```
 */
export function solve(
  matrix: ArrayLike<number>,
  rightHandSide: ArrayLike<number>,
): Float64Array {
  const order = checkSquare(checkSolve, "matrix", matrix);
  checkNumbers(checkSolve, "right-hand side", rightHandSide);
  if (rightHandSide.length % order !== 0) {
    checkSolve.refuse(
      "number of entries of the right-hand side",
      rightHandSide.length,
      `must be a multiple of the ${order} rows of the matrix`,
    );
  }
  const factors = factorise(matrix, order);
  refuseSingular(checkSolve, factors);
  const solution = solveColumns(factors, rightHandSide);
  solution.forEach((value, i) => checkSolve.result(`solution entry ${i}`, value));
  return solution;
}

/**
 * Inverse of a square matrix.
 *
 * Formula: A⁻¹, by LU with partial pivoting of the matrix scaled by powers of two
 *
 * Range: any n; relative error near 1e-16 times the condition number of the scaled matrix.
 *
 * Source: Golub and Van Loan, Matrix Computations, chapter 3, from memory.
 *
 * @param matrix The n × n matrix A, row after row.
 * @returns A⁻¹, row after row.
 * @throws {InputError} If the matrix is not square, not of finite numbers, or singular.
 *
 * @example
 * ```ts
 * import { inverse } from "@laminate/notebooks/numeric";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const result = inverse([4, 7, 2, 6]);
 * [0.6, -0.7, -0.2, 0.4].forEach((value, i) => assertAlmostEquals(result[i]!, value, 1e-14));
 * ```
 */
export function inverse(matrix: ArrayLike<number>): Float64Array {
  const order = checkSquare(checkInverse, "matrix", matrix);
  const factors = factorise(matrix, order);
  refuseSingular(checkInverse, factors);
  const identity = new Float64Array(order * order);
  for (let i = 0; i < order; i++) identity[i * order + i] = 1;
  const result = solveColumns(factors, identity);
  result.forEach((value, i) => checkInverse.result(`inverse entry ${i}`, value));
  return result;
}

/**
 * Inverse of a symmetric 3 × 3 matrix in closed form: exact mirror images, no pivoting.
 *
 * Formula: adj(A)/det(A)
 *
 * Range: as accurate as `inverse` unless the matrix is nearly singular.
 *
 * Source: Cramer's rule.
 *
 * @param matrix Nine numbers, row after row; the upper triangle is read.
 * @returns Nine numbers, row after row.
 * @throws {InputError} If there are not nine finite numbers or the matrix is singular.
 *
 * @example
 * ```ts
 * import { inverse3 } from "@laminate/notebooks/numeric";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const result = inverse3([2, 1, 0, 1, 2, 0, 0, 0, 4]);
 * [2 / 3, -1 / 3, 0, -1 / 3, 2 / 3, 0, 0, 0, 0.25]
 *   .forEach((value, i) => assertAlmostEquals(result[i]!, value, 1e-15));
 * ```
 */
export function inverse3(matrix: ArrayLike<number>): Float64Array {
  checkNumbers(checkInverse, "matrix", matrix);
  if (matrix.length !== 9) {
    checkInverse.refuse("number of entries of the matrix", matrix.length, "must be 9");
  }
  const [a, b, c, , d, e, , , f] = Array.from(matrix) as [
    ...[number, number, number, number, number, number, number, number, number],
  ];
  const A = d * f - e * e;
  const B = c * e - b * f;
  const C = b * e - c * d;
  const determinant = a * A + b * B + c * C;
  // What the determinant would be if none of its terms cancelled: the measure of its rounding.
  const uncancelled = Math.abs(a) * (Math.abs(d * f) + e * e) +
    Math.abs(b) * (Math.abs(c * e) + Math.abs(b * f)) +
    Math.abs(c) * (Math.abs(b * e) + Math.abs(c * d));
  if (!(Math.abs(determinant) > uncancelled / HOPELESS)) {
    checkInverse.refuse("matrix", determinant, "must not be singular (this is its determinant)");
  }
  const result = Float64Array.of(
    ...[A, B, C],
    ...[B, a * f - c * c, b * c - a * e],
    ...[C, b * c - a * e, a * d - b * b],
  );
  for (let i = 0; i < 9; i++) {
    result[i] = checkInverse.result(`inverse entry ${i}`, result[i]! / determinant);
  }
  return result;
}

/**
 * Product of two matrices, or of a matrix and a vector.
 *
 * Formula: (A B)ij = Σk Aik Bkj
 *
 * Range: any shapes that fit.
 *
 * Source: definition.
 *
 * @param left A, row after row.
 * @param right B, row after row; a vector is a matrix of one column.
 * @param inner Columns of A, which are the rows of B.
 * @returns A B, row after row.
 * @throws {InputError} If the shapes do not fit or an entry is not a finite number.
 *
 * @example
 * ```ts
 * import { multiply } from "@laminate/notebooks/numeric";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(Array.from(multiply([1, 2, 3, 4], [5, 6], 2)), [17, 39]);
 * ```
 */
export function multiply(
  left: ArrayLike<number>,
  right: ArrayLike<number>,
  inner: number,
): Float64Array {
  checkProduct.count("inner dimension", inner, 1);
  checkNumbers(checkProduct, "left matrix", left);
  checkNumbers(checkProduct, "right matrix", right);
  for (const [name, length] of [["left", left.length], ["right", right.length]] as const) {
    if (length % inner !== 0) {
      checkProduct.refuse(
        `number of entries of the ${name} matrix`,
        length,
        `must be a multiple of the inner dimension ${inner}`,
      );
    }
  }
  const rows = left.length / inner;
  const columns = right.length / inner;
  const product = new Float64Array(rows * columns);
  for (let i = 0; i < rows; i++) {
    for (let k = 0; k < inner; k++) {
      const factor = left[i * inner + k]!;
      for (let j = 0; j < columns; j++) {
        product[i * columns + j]! += factor * right[k * columns + j]!;
      }
    }
  }
  product.forEach((value, i) => checkProduct.result(`product entry ${i}`, value));
  return product;
}

/** Solves column by column and undoes the scaling. */
function solveColumns(factors: Factors, rightHandSide: ArrayLike<number>): Float64Array {
  const { order, rowScale, columnScale } = factors;
  const columns = rightHandSide.length / order;
  const solution = new Float64Array(rightHandSide.length);
  const column = new Float64Array(order);
  for (let j = 0; j < columns; j++) {
    for (let i = 0; i < order; i++) column[i] = rightHandSide[i * columns + j]! * rowScale[i]!;
    const x = solveScaled(factors, column);
    for (let i = 0; i < order; i++) solution[i * columns + j] = x[i]! * columnScale[i]!;
  }
  return solution;
}

function refuseSingular(check: typeof checkSolve, factors: Factors): void {
  const condition = conditionEstimate(factors);
  if (!(condition < HOPELESS)) {
    check.refuse(
      "condition number of the matrix",
      condition,
      `must be below ${HOPELESS}: its rows say the same thing twice (the matrix is singular)`,
    );
  }
}
