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
    // Two rows at a time share what they read; the last may stand alone.
    const even = i - i % 2;
    if (i === even && i + 1 < size) pairOfRows({ matrix, size, scale, L }, i);
    const row = i * size;
    for (let j = even + 1 < size ? even - even % 4 : 0; j <= i; j++) {
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

/**
 * Rows i and i + 1 of the factor, as many fours of columns as lie left of both diagonals: eight sums
 * that need not wait for each other, each in the order in which it alone would be taken.
 */
function pairOfRows(
  { matrix, size, scale, L }: {
    readonly matrix: Float64Array;
    readonly size: number;
    readonly scale: Float64Array;
    readonly L: Float64Array;
  },
  i: number,
): void {
  const [p, q] = [i * size, (i + 1) * size];
  const [scaleP, scaleQ] = [scale[i]!, scale[i + 1]!];
  for (let j = 0; j + 4 <= i; j += 4) {
    const [a, b, c, d] = [j * size, (j + 1) * size, (j + 2) * size, (j + 3) * size];
    let p0 = matrix[p + j]! * scaleP * scale[j]!;
    let p1 = matrix[p + j + 1]! * scaleP * scale[j + 1]!;
    let p2 = matrix[p + j + 2]! * scaleP * scale[j + 2]!;
    let p3 = matrix[p + j + 3]! * scaleP * scale[j + 3]!;
    let q0 = matrix[q + j]! * scaleQ * scale[j]!;
    let q1 = matrix[q + j + 1]! * scaleQ * scale[j + 1]!;
    let q2 = matrix[q + j + 2]! * scaleQ * scale[j + 2]!;
    let q3 = matrix[q + j + 3]! * scaleQ * scale[j + 3]!;
    for (let k = 0; k < j; k++) {
      const u = L[p + k]!;
      const v = L[q + k]!;
      const ak = L[a + k]!;
      const bk = L[b + k]!;
      const ck = L[c + k]!;
      const dk = L[d + k]!;
      p0 -= u * ak;
      p1 -= u * bk;
      p2 -= u * ck;
      p3 -= u * dk;
      q0 -= v * ak;
      q1 -= v * bk;
      q2 -= v * ck;
      q3 -= v * dk;
    }
    fourOf(L, p + j, [p0, p1, p2, p3], [a + j, b + j, c + j, d + j]);
    fourOf(L, q + j, [q0, q1, q2, q3], [a + j, b + j, c + j, d + j]);
  }
}

/** Four entries of a row from their sums and the triangle of the factor above them. */
function fourOf(
  L: Float64Array,
  at: number,
  [s0, s1, s2, s3]: readonly [number, number, number, number],
  [a, b, c, d]: readonly [number, number, number, number],
): void {
  const x0 = s0 / L[a]!;
  const x1 = (s1 - x0 * L[b]!) / L[b + 1]!;
  const x2 = (s2 - x0 * L[c]! - x1 * L[c + 1]!) / L[c + 2]!;
  L[at] = x0;
  L[at + 1] = x1;
  L[at + 2] = x2;
  L[at + 3] = (s3 - x0 * L[d]! - x1 * L[d + 1]! - x2 * L[d + 2]!) / L[d + 3]!;
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
