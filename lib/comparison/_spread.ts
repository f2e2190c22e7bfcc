import type { Range } from "../materials/mod.ts";
import type { Uncertain } from "../statistics/mod.ts";

/**
 * Standard uncertainty of a value that may lie anywhere in a catalogue's range; 0 where none is
 * given (JCGM 100:2008, 4.3.7).
 */
export function spread(range: Range | undefined): number {
  return range === undefined ? 0 : (range.high - range.low) / Math.sqrt(12);
}

/** The range that `spread` reads a standard uncertainty out of again. */
export function rangeOf({ value, u }: Uncertain): Range {
  const half = Math.sqrt(3) * u;
  return { low: value - half, high: value + half };
}
