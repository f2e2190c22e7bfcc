import { assertEquals } from "@std/assert";
import { factorSymmetric, solveFactored } from "../../lib/sandwich/_symmetric_solve.ts";
import { assertClose } from "../close.ts";

/** Distances of i and k from a corner: min(i, k) + 1, positive definite with determinant 1. */
const entry = (i: number, k: number): number => Math.min(i, k) + 1;

// Pairs of rows and fours of columns leave other rests at each size. K = T Tᵀ with T all ones below
// its diagonal, so that K x = b has whole numbers for whole x.
Deno.test("every size up to 21 solves to rounding, whatever rests of pairs and fours remain", () => {
  for (let size = 1; size <= 21; size++) {
    const matrix = Float64Array.from(
      { length: size * size },
      (_, n) => entry(Math.floor(n / size), n % size),
    );
    const wanted = Array.from({ length: size }, (_, i) => (i * 7) % 5 - 2);
    const right = Float64Array.from(
      wanted,
      (_, i) => wanted.reduce((sum, x, k) => sum + entry(i, k) * x, 0),
    );
    const solved = solveFactored(factorSymmetric(matrix, size)!, right);
    assertClose([...solved], wanted, { absolute: 1e-10 }, `size ${size}`);
  }
});

Deno.test("a matrix that holds nothing has no factor, in an even row or an odd one", () => {
  for (const [size, at] of [[6, 5], [7, 6], [9, 4]] as const) {
    const matrix = new Float64Array(size * size);
    for (let i = 0; i < size; i++) matrix[i * size + i] = 1;
    matrix[at * size + at - 1] = matrix[(at - 1) * size + at] = 1;
    assertEquals(factorSymmetric(matrix, size), undefined);
  }
});
