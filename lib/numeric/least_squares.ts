import { checksFor } from "../check/mod.ts";
import { checkNumbers } from "./_matrix_check.ts";

const check = checksFor("fit by least squares");

/** Below this share of its length, a column adds nothing to those before it. */
const RANK = 1e-13;

/** What least squares finds. */
export interface LeastSquares {
  /** The n unknowns [unit of b per unit of its column]. */
  readonly solution: Float64Array;
  /** Right-hand side less what the solution gives, row by row [unit of b]. */
  readonly residuals: Float64Array;
  /**
   * (AᵀA)⁻¹, n × n, row after row: times the variance of a row it is the unknowns' covariance
   * [1 per units of two columns].
   */
  readonly cofactors: Float64Array;
}

/**
 * Solves more equations than unknowns so that the squares of what is missed are least.
 *
 * Formula: min |A x − b|² by Householder's QR of A with columns scaled by powers of two
 *
 * Range: m rows, n columns, m ≥ n, columns not dependent; keeps twice the digits that the normal
 * equations would.
 *
 * Source: Golub and Van Loan, Matrix Computations, chapter 5, from memory.
 *
 * @param matrix The m × n matrix A, row after row.
 * @param rightHandSide b, m numbers.
 * @returns Solution, residuals and cofactors.
 * @throws {InputError} If a shape does not fit, an entry is not a finite number, or the columns
 * are dependent.
 *
 * @example
 * ```ts
 * import { leastSquares } from "@laminate/notebooks/numeric";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * // y = 1 + 2x through (0, 1), (1, 3), (2, 5)
 * const { solution } = leastSquares([1, 0, 1, 1, 1, 2], [1, 3, 5]);
 * assertAlmostEquals(solution[0]!, 1, 1e-14);
 * assertAlmostEquals(solution[1]!, 2, 1e-14);
 * ```
 */
export function leastSquares(
  matrix: ArrayLike<number>,
  rightHandSide: ArrayLike<number>,
): LeastSquares {
  checkNumbers(check, "matrix", matrix);
  checkNumbers(check, "right-hand side", rightHandSide);
  const rows = rightHandSide.length;
  const columns = matrix.length / rows;
  if (!(Number.isInteger(columns) && columns <= rows)) {
    check.refuse(
      "number of entries of the matrix",
      matrix.length,
      `must be the ${rows} rows of the right-hand side times no more than as many columns`,
    );
  }
  const { qr, scale } = scaledColumns(matrix, rows, columns);
  const y = Float64Array.from(rightHandSide);
  const diagonal = reflect(qr, y, columns);
  const scaledSolution = backSubstitute({ qr, diagonal, columns }, y);
  const solution = scaledSolution.map((x, j) => check.result(`unknown ${j}`, x * scale[j]!));
  const residuals = new Float64Array(rows);
  for (let i = 0; i < rows; i++) {
    let sum = rightHandSide[i]!;
    for (let j = 0; j < columns; j++) sum -= matrix[i * columns + j]! * solution[j]!;
    residuals[i] = sum;
  }
  return { solution, residuals, cofactors: cofactorsOf({ qr, diagonal, columns }, scale) };
}

/** Upper triangle of the factored matrix, its diagonal kept apart. */
interface Triangle {
  readonly qr: Float64Array;
  readonly diagonal: Float64Array;
  readonly columns: number;
}

function scaledColumns(
  matrix: ArrayLike<number>,
  rows: number,
  columns: number,
): { qr: Float64Array; scale: Float64Array } {
  const qr = Float64Array.from(matrix);
  const scale = new Float64Array(columns);
  for (let j = 0; j < columns; j++) {
    let largest = 0;
    for (let i = 0; i < rows; i++) largest = Math.max(largest, Math.abs(qr[i * columns + j]!));
    scale[j] = largest > 0 ? 2 ** -Math.round(Math.log2(largest)) : 1;
    for (let i = 0; i < rows; i++) qr[i * columns + j]! *= scale[j]!;
  }
  return { qr, scale };
}

/** Householder's reflections in place, applied to y as well; returns R's diagonal. */
function reflect(qr: Float64Array, y: Float64Array, columns: number): Float64Array {
  const rows = y.length;
  const diagonal = new Float64Array(columns);
  for (let k = 0; k < columns; k++) {
    let whole = 0;
    let below = 0;
    for (let i = 0; i < rows; i++) {
      const square = qr[i * columns + k]! ** 2;
      whole += square;
      if (i >= k) below += square;
    }
    const length = Math.sqrt(below);
    if (!(length > RANK * Math.sqrt(whole))) {
      check.refuse(`column ${k}`, length, "must not repeat what the columns before it say");
    }
    const head = qr[k * columns + k]!;
    const pivot = head > 0 ? -length : length;
    diagonal[k] = pivot;
    qr[k * columns + k] = head - pivot;
    const divisor = pivot * (head - pivot);
    for (let j = k + 1; j <= columns; j++) {
      let dot = 0;
      for (let i = k; i < rows; i++) {
        dot += qr[i * columns + k]! * (j < columns ? qr[i * columns + j]! : y[i]!);
      }
      const factor = dot / divisor;
      for (let i = k; i < rows; i++) {
        if (j < columns) qr[i * columns + j]! += factor * qr[i * columns + k]!;
        else y[i]! += factor * qr[i * columns + k]!;
      }
    }
  }
  return diagonal;
}

function backSubstitute({ qr, diagonal, columns }: Triangle, y: ArrayLike<number>): Float64Array {
  const x = new Float64Array(columns);
  for (let i = columns - 1; i >= 0; i--) {
    let sum = y[i]!;
    for (let j = i + 1; j < columns; j++) sum -= qr[i * columns + j]! * x[j]!;
    x[i] = sum / diagonal[i]!;
  }
  return x;
}

/** R⁻¹ R⁻ᵀ with the columns' scale put back. */
function cofactorsOf(triangle: Triangle, scale: Float64Array): Float64Array {
  const { columns } = triangle;
  const cofactors = new Float64Array(columns * columns);
  for (let k = 0; k < columns; k++) {
    const unit = new Float64Array(columns);
    unit[k] = 1;
    // Column k of R⁻¹: its products with itself, summed over k, are R⁻¹ R⁻ᵀ.
    const column = backSubstitute(triangle, unit);
    for (let i = 0; i < columns; i++) {
      for (let j = 0; j < columns; j++) {
        cofactors[i * columns + j]! += column[i]! * scale[i]! * (column[j]! * scale[j]!);
      }
    }
  }
  cofactors.forEach((value, i) => check.result(`cofactor ${i}`, value));
  return cofactors;
}
