import type { Checks } from "../check/mod.ts";
import { symmetricEigen } from "../numeric/mod.ts";
import type { Correlation } from "./propagate.ts";

/** Eigenvalues down to this are rounding; below it, correlations contradict each other. */
const ROUNDING = -1e-9;

/**
 * The full matrix of correlations from the pairs that are stated, row after row; nothing where no
 * pair is correlated.
 */
export function correlationMatrix<K extends string>(
  check: Checks,
  names: readonly K[],
  pairs: readonly Correlation<K>[],
): Float64Array | undefined {
  check.list("correlations", pairs, 0);
  if (pairs.length === 0) return undefined;
  const order = names.length;
  const matrix = new Float64Array(order * order);
  for (let i = 0; i < order; i++) matrix[i * order + i] = 1;
  for (const pair of pairs) {
    check.object("correlation", pair);
    check.list("pair of correlated inputs", pair.between, 2);
    const [i, j] = pair.between.map((name) => {
      check.oneOf("correlated input", name, names);
      return names.indexOf(name);
    }) as [number, number];
    const label = `correlation between ${pair.between.join(" and ")}`;
    check.within(label, pair.coefficient, { min: -1, max: 1 });
    if (i === j) check.refuse(label, pair.coefficient, "must be between two different inputs");
    if (matrix[i * order + j] !== 0) check.refuse(label, pair.coefficient, "must be stated once");
    matrix[i * order + j] = matrix[j * order + i] = pair.coefficient;
  }
  const smallest = symmetricEigen(matrix).values[0]!;
  if (!(smallest >= ROUNDING)) {
    check.refuse(
      "smallest eigenvalue of the correlations",
      smallest,
      "must not be negative: the correlations contradict each other",
    );
  }
  return matrix;
}

/** Row i of the correlation matrix times a list; the list's own entry where there is no matrix. */
export function correlated(
  matrix: Float64Array | undefined,
  list: readonly number[],
  i: number,
): number {
  if (matrix === undefined) return list[i]!;
  return list.reduce((sum, value, j) => sum + matrix[i * list.length + j]! * value, 0);
}
