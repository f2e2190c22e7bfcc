import type { Checks } from "../check/mod.ts";

/** Checks that this is a flat list of finite numbers, and returns it. */
export function checkNumbers(
  check: Checks,
  argument: string,
  values: ArrayLike<number>,
): ArrayLike<number> {
  const isList = Array.isArray(values) || (ArrayBuffer.isView(values) && "length" in values);
  if (!(isList && values.length > 0)) {
    check.refuse(argument, values, "must be a flat list of one or more numbers");
  }
  for (let i = 0; i < values.length; i++) {
    if (!Number.isFinite(values[i])) check.finite(`${argument} entry ${i}`, values[i]!);
  }
  return values;
}

/** Checks that this is a square matrix as a flat list, and returns its number of rows. */
export function checkSquare(check: Checks, argument: string, matrix: ArrayLike<number>): number {
  checkNumbers(check, argument, matrix);
  const order = Math.round(Math.sqrt(matrix.length));
  if (order * order !== matrix.length) {
    check.refuse(`number of entries of the ${argument}`, matrix.length, "must be a square number");
  }
  return order;
}

/** How unequal the two halves of a symmetric matrix may be from rounding, relative. */
const SYMMETRY = 1e-9;

/** Checks a square symmetric matrix, and returns its number of rows. */
export function checkSymmetric(check: Checks, argument: string, matrix: ArrayLike<number>): number {
  const order = checkSquare(check, argument, matrix);
  for (let i = 0; i < order; i++) {
    for (let j = 0; j < i; j++) {
      const low = matrix[i * order + j]!;
      const high = matrix[j * order + i]!;
      // Rounding in an off-diagonal entry scales with its rows, not with itself.
      const diagonal = Math.sqrt(Math.abs(matrix[i * order + i]! * matrix[j * order + j]!));
      if (!(Math.abs(low - high) <= SYMMETRY * Math.max(Math.abs(low), Math.abs(high), diagonal))) {
        check.refuse(
          `${argument} at row ${i}, column ${j}`,
          low,
          `must equal its mirror image ${high}: the matrix is symmetric`,
        );
      }
    }
  }
  return order;
}
