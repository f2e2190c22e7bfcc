/** The few lowest solutions of K v = λ M v: inverse iteration with a whole block of vectors. */
import type { Checks } from "../check/mod.ts";
import { type Eigensystem, generalisedEigen } from "../numeric/mod.ts";
import { factorSymmetric, multiplySymmetric, solveFactored } from "./_symmetric_solve.ts";

/** Vectors beyond those wanted, which speed the last of them up. */
const SPARE = 8;

/** Relative change of the values at which they count as found. */
const SETTLED = 1e-12;

/** Lowest `wanted` values with vectors; K may let the body move as a whole, M is definite. */
export function lowestModes(
  check: Checks,
  { stiffness, mass, size }: {
    readonly stiffness: Float64Array;
    readonly mass: Float64Array;
    readonly size: number;
  },
  wanted: number,
): Eigensystem {
  const block = Math.min(size, wanted + SPARE);
  // A shift of a typical stiffness holds what is free to move; it is taken off again.
  let [k, m] = [0, 0];
  for (let i = 0; i < size; i++) {
    k = Math.max(k, stiffness[i * size + i]!);
    m = Math.max(m, mass[i * size + i]!);
  }
  const shift = 1e-9 * k / m;
  const shifted = stiffness.map((entry, i) => entry + shift * mass[i]!);
  const factor = factorSymmetric(shifted, size) ??
    check.refuse("stiffness", "not positive", "must not gain energy from a movement");
  let vectors: Float64Array[] = Array.from({ length: block }, (_, v) => startVector(size, v));
  let values = new Float64Array(block);
  for (let round = 0; round < 80; round++) {
    const solved = vectors.map((vector) => solveFactored(factor, multiplySymmetric(mass, vector)));
    const small = projected(solved, { stiffness, mass });
    const { values: next, vectors: mix } = generalisedEigen(small.stiffness, small.mass);
    vectors = solved.map((_, v) => combined(solved, mix.subarray(v * block, (v + 1) * block)));
    const change = next.slice(0, wanted).reduce(
      (most, value, i) => Math.max(most, Math.abs(value - values[i]!) / (Math.abs(value) + shift)),
      0,
    );
    values = Float64Array.from(next);
    if (change < SETTLED) break;
  }
  const kept = Math.min(wanted, block);
  const flat = new Float64Array(kept * size);
  for (let v = 0; v < kept; v++) flat.set(vectors[v] as Float64Array, v * size);
  return { values: values.slice(0, kept), vectors: flat };
}

/** A vector of its own for each column: low functions first, none left out. */
function startVector(size: number, column: number): Float64Array {
  return Float64Array.from(
    { length: size },
    (_, i) => (i === column ? 1 : 0) + 0.1 * Math.cos((i + 1) * (column + 1)) / (1 + i),
  );
}

/** VᵀKV and VᵀMV, scaled by V's own size and made exactly symmetric. */
function projected(
  vectors: Float64Array[],
  { stiffness, mass }: { readonly stiffness: Float64Array; readonly mass: Float64Array },
): { readonly stiffness: Float64Array; readonly mass: Float64Array } {
  const n = vectors.length;
  const result = { stiffness: new Float64Array(n * n), mass: new Float64Array(n * n) };
  for (const vector of vectors) {
    const moved = multiplySymmetric(mass, vector);
    const length = Math.sqrt(vector.reduce((sum, v, i) => sum + v * moved[i]!, 0));
    for (let i = 0; i < vector.length; i++) vector[i]! /= length;
  }
  for (let b = 0; b < n; b++) {
    const k = multiplySymmetric(stiffness, vectors[b] as Float64Array);
    const m = multiplySymmetric(mass, vectors[b] as Float64Array);
    for (let a = 0; a <= b; a++) {
      let [sumK, sumM] = [0, 0];
      const vector = vectors[a] as Float64Array;
      for (let i = 0; i < vector.length; i++) {
        sumK += vector[i]! * k[i]!;
        sumM += vector[i]! * m[i]!;
      }
      result.stiffness[a * n + b] = result.stiffness[b * n + a] = sumK;
      result.mass[a * n + b] = result.mass[b * n + a] = sumM;
    }
  }
  return result;
}

function combined(vectors: readonly Float64Array[], shares: Float64Array): Float64Array {
  const sum = new Float64Array(vectors[0]?.length ?? 0);
  vectors.forEach((vector, v) => {
    for (let i = 0; i < sum.length; i++) sum[i]! += shares[v]! * vector[i]!;
  });
  return sum;
}
