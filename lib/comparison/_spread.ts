import type { Range } from "../materials/mod.ts";

/**
 * Standard uncertainty of a value that may lie anywhere in a catalogue's range; 0 where none is
 * given (JCGM 100:2008, 4.3.7).
 */
export function spread(range: Range | undefined): number {
  return range === undefined ? 0 : (range.high - range.low) / Math.sqrt(12);
}
