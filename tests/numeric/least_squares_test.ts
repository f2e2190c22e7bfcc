import { assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { leastSquares } from "../../lib/numeric/mod.ts";
import { assertClose } from "../close.ts";

// Figures by exact fractions (Python's `fractions`) from the normal equations.

Deno.test("a column that lies along its axis, all but, loses no digits", () => {
  // The reflection must turn it away from itself: towards itself the difference would be rounding.
  const matrix = [1, 2, 3e-9, 1, -2e-9, 1];
  const { solution, residuals, cofactors } = leastSquares(matrix, [1, 2, 4]);
  assertClose([...solution], [-5.00000002, 3.0000000074999997], { relative: 1e-14 });
  assertClose([...residuals], [5e-9, -1, 1], { absolute: 2e-8 });
  assertClose([...cofactors], [3.000000006, -1.0000000025, -1.0000000025, 0.500000001], {
    relative: 1e-14,
  });
  const mirrored = leastSquares(matrix.map((entry) => -entry), [1, 2, 4]);
  assertClose([...mirrored.solution], [5.00000002, -3.0000000074999997], { relative: 1e-14 });
});

Deno.test("a triangle is solved as it stands, whatever its signs", () => {
  for (const sign of [1, -1]) {
    // 2x + y = 5, 3y = 9 and a row of nothing that is missed by 7.
    const { solution, residuals } = leastSquares([2 * sign, 1, 0, 3 * sign, 0, 0], [5, 9, 7]);
    assertClose([...solution], sign === 1 ? [1, 3] : [-4, -3], { relative: 1e-15 });
    assertClose([...residuals], [0, 0, 7], { absolute: 1e-14 });
  }
});

Deno.test("columns of units a trillion times apart", () => {
  // y = 3 + 2e-12 x at x = 0, 1e12, 2e12, 4e12: no residual; (AᵀA)⁻¹ = [21, −7; −7, 4]/35 scaled.
  const { solution, cofactors } = leastSquares([1, 0, 1, 1e12, 1, 2e12, 1, 4e12], [3, 5, 7, 11]);
  assertClose([...solution], [3, 2e-12], { relative: 1e-13 });
  assertClose([...cofactors], [21 / 35, -7 / 35 * 1e-12, -7 / 35 * 1e-12, 4 / 35 * 1e-24], {
    relative: 1e-13,
  });
});

Deno.test("columns that repeat one another and shapes that do not fit are refused", () => {
  const refused = (run: () => unknown, words: string): void => {
    assertThrows(run, InputError, words);
  };
  refused(() => leastSquares([1, 2, 2, 4, 3, 6], [1, 2, 3]), "must not repeat what the columns");
  refused(() => leastSquares([0, 1, 0, 1], [1, 2]), "column 0");
  refused(() => leastSquares([1, 2, 3], [1, 2]), "number of entries of the matrix");
  refused(() => leastSquares([1, 2, 3, 4, 5, 6], [1, 2]), "number of entries of the matrix");
  refused(() => leastSquares([1, NaN], [1, 2]), "matrix entry 1 is NaN");
});
