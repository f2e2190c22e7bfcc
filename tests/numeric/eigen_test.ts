import { assertEquals, assertThrows } from "@std/assert";
import { InputError } from "@laminate/notebooks/check";
import {
  cholesky,
  generalisedEigen,
  isPositiveDefinite,
  symmetricEigen,
} from "@laminate/notebooks/numeric";
import { assertClose } from "../close.ts";

/** Stiffness of n equal springs in a chain held at both ends: 2 on the diagonal, −1 beside it. */
function chain(order: number): number[] {
  const matrix = new Array<number>(order * order).fill(0);
  for (let i = 0; i < order; i++) {
    matrix[i * order + i] = 2;
    if (i > 0) matrix[i * order + i - 1] = matrix[(i - 1) * order + i] = -1;
  }
  return matrix;
}

Deno.test("eigenvalues of a chain of springs: 4 sin²(kπ/2(n + 1))", () => {
  // Closed form found in any text on vibration, e.g. Rayleigh's Theory of Sound, from memory.
  for (const order of [1, 2, 7, 40]) {
    const expected = Array.from(
      { length: order },
      (_, k) => 4 * Math.sin(((k + 1) * Math.PI) / (2 * (order + 1))) ** 2,
    );
    const { values } = symmetricEigen(chain(order));
    // Absolute, since Jacobi's error goes with the largest eigenvalue, 4.
    assertClose(Array.from(values), expected, { absolute: 2e-14 });
  }
});

Deno.test("two masses between three springs: ω² of the generalised problem", () => {
  // k = 1, masses 2 and 1: det(K − λM) = 2λ² − 6λ + 3 = 0, so λ = (3 ± √3)/2.
  const { values, vectors } = generalisedEigen([2, -1, -1, 2], [2, 0, 0, 1]);
  assertClose(Array.from(values), [(3 - Math.sqrt(3)) / 2, (3 + Math.sqrt(3)) / 2], {
    relative: 1e-14,
  });
  const [x, y] = vectors;
  // First row of (K − λM) x = 0 gives y/x = 2 − 2λ; the mass is scaled to 1.
  assertClose(y! / x!, 2 - (3 - Math.sqrt(3)), { relative: 1e-13 });
  assertClose(2 * x! * x! + y! * y!, 1, { relative: 1e-14 });
});

Deno.test("an indefinite matrix has eigenvalues of both signs against a positive metric", () => {
  // Shear against a unit stiffness: ±1 by hand.
  assertClose(Array.from(generalisedEigen([0, 2, 2, 0], [2, 0, 0, 2]).values), [-1, 1], {
    relative: 1e-15,
  });
});

Deno.test("a matrix that is diagonal already is only sorted", () => {
  const { values, vectors } = symmetricEigen([3, 0, 0, 0, 1, 0, 0, 0, 2]);
  assertEquals(Array.from(values), [1, 2, 3]);
  assertEquals(Array.from(vectors), [0, 1, 0, 0, 0, 1, 1, 0, 0]);
});

Deno.test("entries whose squares leave the range of doubles do no harm", () => {
  for (const unit of [1e-300, 1e300]) {
    assertClose(Array.from(symmetricEigen([2, 1, 1, 2].map((x) => x * unit)).values), [
      unit,
      3 * unit,
    ], { relative: 1e-14 });
  }
});

Deno.test("cholesky of Wilkinson's kind of matrix, by hand", () => {
  assertEquals(
    Array.from(cholesky([4, 12, -16, 12, 37, -43, -16, -43, 98])),
    [2, 0, 0, 6, 1, 0, -8, 5, 3],
  );
});

Deno.test("positive definite by rounding only is not positive definite", () => {
  assertEquals(isPositiveDefinite([1, 1, 1, 1]), false);
  assertEquals(isPositiveDefinite([1, 1 - 1e-16, 1 - 1e-16, 1]), false);
  assertEquals(isPositiveDefinite([1e-30, 0, 0, 1e30]), true);
});

Deno.test("refusals of eigenvalues and of the factor", () => {
  assertThrows(() => cholesky([1, 2, 2, 1]), InputError, "must be positive definite");
  assertThrows(() => symmetricEigen([1, 2, 3, 4]), InputError, "must equal its mirror image");
  assertThrows(() => symmetricEigen([1, 2]), InputError, "square number");
  assertThrows(() => generalisedEigen([1], [1, 0, 0, 1]), InputError, "must be 1");
  assertThrows(() => generalisedEigen([1], [-1]), InputError, "positive definite");
  assertThrows(() => symmetricEigen(new Array(4).fill(1.5e308)), InputError, "beyond the range");
});
