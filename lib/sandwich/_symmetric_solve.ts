/** Cholesky in place, for the large symmetric systems of this room. */

/**
 * Factor of a symmetric positive definite matrix in its lower triangle, rows scaled to unit
 * diagonal first; `undefined` if it is not positive definite.
 */
export interface SymmetricFactor {
  readonly size: number;
  readonly lower: Float64Array;
  readonly scale: Float64Array;
}

/** A pivot below this share of its diagonal entry means that nothing holds the body. */
const SINGULAR = 1e-13;

export function factorSymmetric(
  matrix: Float64Array,
  size: number,
): SymmetricFactor | undefined {
  const scale = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    const diagonal = matrix[i * size + i]!;
    if (!(diagonal > 0)) return undefined;
    scale[i] = 1 / Math.sqrt(diagonal);
  }
  const L = new Float64Array(size * size);
  for (let i = 0; i < size; i++) {
    const row = i * size;
    for (let j = 0; j <= i; j++) {
      const other = j * size;
      let sum = matrix[row + j]! * scale[i]! * scale[j]!;
      for (let k = 0; k < j; k++) sum -= L[row + k]! * L[other + k]!;
      if (i > j) L[row + j] = sum / L[other + j]!;
      else if (!(sum > SINGULAR)) return undefined;
      else L[row + i] = Math.sqrt(sum);
    }
  }
  return { size, lower: L, scale };
}

/** Solves with a factor; the right-hand side is left as it is. */
export function solveFactored(
  { size, lower: L, scale }: SymmetricFactor,
  right: Float64Array,
): Float64Array {
  const x = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    let sum = right[i]! * scale[i]!;
    for (let k = 0; k < i; k++) sum -= L[i * size + k]! * x[k]!;
    x[i] = sum / L[i * size + i]!;
  }
  for (let i = size - 1; i >= 0; i--) {
    const value = x[i]! / L[i * size + i]!;
    x[i] = value;
    for (let k = 0; k < i; k++) x[k]! -= L[i * size + k]! * value;
  }
  for (let i = 0; i < size; i++) x[i]! *= scale[i]!;
  return x;
}

/** Matrix times vector. */
export function multiplySymmetric(
  matrix: Float64Array,
  vector: Float64Array,
): Float64Array {
  const size = vector.length;
  const product = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    let sum = 0;
    for (let k = 0; k < size; k++) sum += matrix[i * size + k]! * vector[k]!;
    product[i] = sum;
  }
  return product;
}
