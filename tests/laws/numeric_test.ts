import fc from "fast-check";
import {
  cholesky,
  findRoot,
  generalisedEigen,
  inverse,
  multiply,
  quantiles,
  solve,
  symmetricEigen,
} from "@laminate/notebooks/numeric";
import { assertClose } from "../close.ts";

const RUNS = { seed: 20261125, numRuns: 300 };

const entry = fc.double({ min: -10, max: 10, noNaN: true });

/** A square matrix that is well-conditioned since its diagonal outweighs its rows. */
const dominant = fc.integer({ min: 1, max: 7 }).chain((order) =>
  fc.array(entry, { minLength: order * order, maxLength: order * order }).map((matrix) => {
    for (let i = 0; i < order; i++) {
      matrix[i * order + i]! += matrix[i * order + i]! < 0 ? -10 * order : 10 * order;
    }
    return { order, matrix };
  })
);

function transpose(matrix: ArrayLike<number>, order: number): number[] {
  return Array.from(matrix, (_, i) => matrix[(i % order) * order + Math.floor(i / order)]!);
}

function identity(order: number): number[] {
  return Array.from({ length: order * order }, (_, i) => (i % (order + 1) === 0 ? 1 : 0));
}

Deno.test("a matrix times its inverse is the identity, from both sides", () => {
  fc.assert(
    fc.property(dominant, ({ order, matrix }) => {
      const reciprocal = inverse(matrix);
      const expected = identity(order);
      assertClose(Array.from(multiply(matrix, reciprocal, order)), expected, { absolute: 1e-13 });
      assertClose(Array.from(multiply(reciprocal, matrix, order)), expected, { absolute: 1e-13 });
    }),
    RUNS,
  );
});

Deno.test("scaling the unknowns' units scales the solution and nothing else", () => {
  fc.assert(
    fc.property(dominant, fc.integer({ min: -60, max: 60 }), ({ order, matrix }, power) => {
      const load = Array.from({ length: order }, (_, i) => i + 1);
      const scaled = matrix.map((value) => value * 2 ** power);
      const expected = Array.from(solve(matrix, load), (x) => x * 2 ** -power);
      assertClose(Array.from(solve(scaled, load)), expected, { relative: 1e-13, absolute: 0 });
    }),
    RUNS,
  );
});

Deno.test("eigenvectors solve their equation, stand at right angles, and keep trace", () => {
  fc.assert(
    fc.property(dominant, ({ order, matrix }) => {
      const mirrored = transpose(matrix, order);
      const symmetric = matrix.map((value, i) => value + mirrored[i]!);
      const { values, vectors } = symmetricEigen(symmetric);
      const tolerance = { absolute: 1e-12 * order * 100 };
      const product = multiply(vectors, symmetric, order);
      const expected = Array.from(vectors, (v, i) => v * values[Math.floor(i / order)]!);
      assertClose(Array.from(product), expected, tolerance);
      const gram = multiply(vectors, transpose(vectors, order), order);
      assertClose(Array.from(gram), identity(order), { absolute: 1e-13 });
      const trace = symmetric.reduce((sum, v, i) => i % (order + 1) === 0 ? sum + v : sum, 0);
      assertClose(values.reduce((sum, v) => sum + v, 0), trace, tolerance);
    }),
    RUNS,
  );
});

Deno.test("generalised eigenvectors are of unit mass and solve A x = λ B x", () => {
  fc.assert(
    fc.property(dominant, ({ order, matrix }) => {
      const mirrored = transpose(matrix, order);
      const metric = Array.from(multiply(matrix, mirrored, order));
      const symmetric = matrix.map((value, i) => value + mirrored[i]!);
      const { values, vectors } = generalisedEigen(symmetric, metric);
      const left = multiply(vectors, symmetric, order);
      const right = multiply(vectors, metric, order);
      const expected = Array.from(right, (v, i) => v * values[Math.floor(i / order)]!);
      assertClose(Array.from(left), expected, { absolute: 1e-10 });
      const mass = multiply(right, transpose(vectors, order), order);
      assertClose(Array.from(mass), identity(order), { absolute: 1e-11 });
    }),
    RUNS,
  );
});

Deno.test("Cholesky's factor multiplies back", () => {
  fc.assert(
    fc.property(dominant, ({ order, matrix }) => {
      const square = multiply(matrix, transpose(matrix, order), order);
      const factor = cholesky(square);
      const back = multiply(factor, transpose(factor, order), order);
      assertClose(Array.from(back), Array.from(square), { absolute: 1e-11, relative: 1e-13 });
    }),
    RUNS,
  );
});

Deno.test("quantiles by selection equal those of a full sort", () => {
  fc.assert(
    fc.property(
      fc.array(entry, { minLength: 1, maxLength: 60 }),
      fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 5 }),
      (values, shares) => {
        const sorted = [...values].sort((a, b) => a - b);
        const expected = shares.map((p) => {
          const h = (values.length - 1) * p;
          const low = sorted[Math.floor(h)]!;
          return low + (h - Math.floor(h)) * ((sorted[Math.floor(h) + 1] ?? low) - low);
        });
        assertClose(quantiles(values, shares), expected, { absolute: 1e-14 });
      },
    ),
    RUNS,
  );
});

Deno.test("the root of a rising function is found from any bracket", () => {
  fc.assert(
    fc.property(
      entry,
      fc.double({ min: 0.1, max: 1e4, noNaN: true }),
      fc.double({ min: 0.1, max: 1e4, noNaN: true }),
      (root, below, above) => {
        const rising = (x: number): number => Math.atan(x - root) + 0.01 * (x - root) ** 3;
        const found = findRoot(rising, { from: root - below, to: root + above });
        assertClose(found, root, { absolute: 1e-14 });
      },
    ),
    RUNS,
  );
});
