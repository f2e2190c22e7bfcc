import { findRoot } from "../numeric/mod.ts";
import type { Tails } from "./_special.ts";

/**
 * The x above 0 at which a growing probability reaches a value given from both ends. Searched in
 * ln x and in the logarithm of the smaller tail, so that far tails keep their digits. Infinity
 * where it lies beyond the doubles: the caller refuses that.
 */
export function positiveQuantile(tailsAt: (x: number) => Tails, wanted: Tails): number {
  const byLower = wanted.lower < wanted.upper;
  const target = Math.log(byLower ? wanted.lower : wanted.upper);
  const gap = (logX: number): number => {
    const { lower, upper } = tailsAt(Math.exp(logX));
    // A tail of zero is far beyond any target; −800 stands for it.
    return byLower
      ? Math.max(-800, Math.log(lower)) - target
      : target - Math.max(-800, Math.log(upper));
  };
  // Halve or double from 1 until the crossing is enclosed: two calls for most tables.
  let from = -1;
  let to = 1;
  while (gap(from) > 0 && from > -740) from = Math.max(-740, from * 2);
  while (gap(to) < 0 && to < 709) to = Math.min(709, to * 2);
  if (gap(from) > 0) return 0;
  if (gap(to) < 0) return Infinity;
  return Math.exp(findRoot(gap, { from, to }));
}
