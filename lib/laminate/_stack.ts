/** The matrices of a stack without checks, for callers that have made them. */
import { inverse } from "../numeric/mod.ts";
import type { Stack } from "../materials/mod.ts";
import { rotatedStiffnessOf } from "./_lamina.ts";

/** Where a ply lies. */
export interface PlyHeights {
  readonly bottom: number;
  readonly middle: number;
  readonly top: number;
}

/**
 * Heights of the plies, z from the middle of the whole. Each face is the difference of the sums
 * below and above it, so that a symmetric stack has exactly mirrored heights.
 */
export function plyHeightsOf(stack: Stack): PlyHeights[] {
  const below = [0];
  const above = [0];
  stack.forEach((ply, k) => below.push(below[k]! + ply.thickness));
  stack.toReversed().forEach((ply, k) => above.push(above[k]! + ply.thickness));
  const faces = below.map((sum, k) => (sum - above[stack.length - k]!) / 2);
  return stack.map((_, k) => {
    const [bottom, top] = [faces[k]!, faces[k + 1]!];
    return { bottom, middle: (bottom + top) / 2, top };
  });
}

/** Sums one vector a ply, pairing each ply with its mirror image so that opposites cancel exactly. */
export function sumOverPlies(
  count: number,
  size: number,
  addPly: (ply: number) => readonly number[],
): Float64Array {
  const sum = new Float64Array(size);
  for (let k = 0; k < count - 1 - k; k++) {
    const lower = addPly(k);
    const upper = addPly(count - 1 - k);
    for (let i = 0; i < size; i++) sum[i]! += lower[i]! + upper[i]!;
  }
  if (count % 2 === 1) addPly((count - 1) / 2).forEach((value, i) => sum[i]! += value);
  return sum;
}

/** A, B and D, each as 11, 12, 16, 22, 26, 66: eighteen numbers. */
export function stiffnessSumsOf(stack: Stack): Float64Array {
  const heights = plyHeightsOf(stack);
  return sumOverPlies(stack.length, 18, (k) => {
    const { lamina, thickness, angleDeg } = stack[k]!;
    const { Q11, Q12, Q16, Q22, Q26, Q66 } = rotatedStiffnessOf(lamina, angleDeg);
    const entries = [Q11, Q12, Q16, Q22, Q26, Q66];
    const { middle } = heights[k]!;
    const first = thickness * middle;
    const second = thickness * (middle * middle + thickness * thickness / 12);
    return [
      ...entries.map((entry) => entry * thickness),
      ...entries.map((entry) => entry * first),
      ...entries.map((entry) => entry * second),
    ];
  });
}

/** Places of 11, 12, 16, 22, 26, 66 in a row-by-row symmetric 3 × 3 matrix. */
const PLACE = [0, 1, 2, 1, 3, 4, 2, 4, 5] as const;

/** The 6 × 6 matrix [A B; B D], row after row, from the eighteen sums. */
export function abdMatrix(sums: Float64Array): Float64Array {
  const matrix = new Float64Array(36);
  for (let i = 0; i < 3; i++) {
    for (let j = 0; j < 3; j++) {
      const place = PLACE[3 * i + j]!;
      matrix[6 * i + j] = sums[place]!;
      matrix[6 * i + j + 3] = matrix[6 * (i + 3) + j] = sums[6 + place]!;
      matrix[6 * (i + 3) + j + 3] = sums[12 + place]!;
    }
  }
  return matrix;
}

/** Inverse of a symmetric matrix, mirrored exactly. */
export function symmetricInverse(matrix: Float64Array): Float64Array {
  const result = inverse(matrix);
  const order = Math.sqrt(matrix.length);
  for (let i = 0; i < order; i++) {
    for (let j = 0; j < i; j++) {
      const mean = (result[i * order + j]! + result[j * order + i]!) / 2;
      result[i * order + j] = result[j * order + i] = mean;
    }
  }
  return result;
}
