/** Gauss with partial pivoting on a scaled matrix: small systems by the hundred. */

/** A pivot below this share of its scaled row means that no digit is left. */
const SINGULAR = 1e-15;

/**
 * Solves in place; rows and columns are scaled to unit largest entries first. Returns undefined if
 * the matrix is singular.
 */
export function solveDense(matrix: Float64Array, right: Float64Array): Float64Array | undefined {
  const n = right.length;
  const columnScale = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < n; k++) {
      const size = Math.abs(matrix[i * n + k]!);
      if (size > columnScale[k]!) columnScale[k] = size;
    }
  }
  for (let i = 0; i < n; i++) {
    let largest = 0;
    for (let k = 0; k < n; k++) {
      const size = Math.abs(matrix[i * n + k]! /= columnScale[k]!);
      if (size > largest) largest = size;
    }
    for (let k = 0; k < n; k++) matrix[i * n + k]! /= largest;
    right[i]! /= largest;
  }
  for (let p = 0; p < n; p++) {
    let best = p;
    for (let i = p + 1; i < n; i++) {
      if (Math.abs(matrix[i * n + p]!) > Math.abs(matrix[best * n + p]!)) best = i;
    }
    const pivot = matrix[best * n + p]!;
    if (!(Math.abs(pivot) > SINGULAR)) return undefined;
    if (best !== p) {
      for (let k = p; k < n; k++) {
        const kept = matrix[p * n + k]!;
        matrix[p * n + k] = matrix[best * n + k]!;
        matrix[best * n + k] = kept;
      }
      const kept = right[p]!;
      right[p] = right[best]!;
      right[best] = kept;
    }
    for (let i = p + 1; i < n; i++) {
      const share = matrix[i * n + p]! / pivot;
      if (share === 0) continue;
      for (let k = p + 1; k < n; k++) matrix[i * n + k]! -= share * matrix[p * n + k]!;
      right[i]! -= share * right[p]!;
    }
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = right[i]!;
    for (let k = i + 1; k < n; k++) sum -= matrix[i * n + k]! * right[k]!;
    right[i] = sum / matrix[i * n + i]!;
  }
  for (let i = 0; i < n; i++) right[i]! /= columnScale[i]!;
  return right;
}
