import type { Column, Columns } from "./column.ts";

/** A column that a heading may have been meant for. */
export interface NearColumn {
  /** Name of the column. */
  readonly name: string;
  /** The heading as it must be written. */
  readonly heading: string;
}

/** A share of the letters of a name by which a slip of the pen changes it. */
const SLIP = 0.25;

/**
 * The column that an unknown heading was probably meant for: the same words but for a letter or
 * two, or some of its words (`mass_g` for `part_mass_g`). None where two are as near.
 */
export function nearColumn(
  heading: string,
  columns: Columns,
  hasUnit: (column: Column, unit: string) => boolean,
): NearColumn | undefined {
  const found: (NearColumn & { readonly rank: number })[] = [];
  for (const [name, column] of Object.entries(columns)) {
    for (const { stem, unit } of splits(heading)) {
      if (unit !== undefined && !hasUnit(column, unit)) continue;
      const rank = rankOf(stem, name);
      if (rank === undefined) continue;
      const written = unit === undefined ? name : `${name}_${unit}`;
      // A figure has its unit behind it; a column that must be there is looked for first.
      const bare = unit === undefined && column.kind === "number" ? 1 : 0;
      found.push({ name, heading: written, rank: rank + bare - (column.optional ? 0 : 0.5) });
    }
  }
  const [first, second] = found.toSorted((a, b) => a.rank - b.rank);
  return first === undefined || second?.rank === first.rank && second.name !== first.name
    ? undefined
    : first;
}

interface Split {
  readonly stem: string;
  readonly unit?: string;
}

/** `span_mm`, `span [mm]`, `span (mm)` and `span`, the unit cut off wherever it may begin. */
function splits(heading: string): readonly Split[] {
  const bracket = /^(.*\S)\s*[[(]([^\])]*)[\])]$/.exec(heading);
  if (bracket !== null) return [{ stem: bracket[1]!, unit: bracket[2]! }];
  const cuts = [...heading.matchAll(/[_ ]/g)].map(({ index }) => index).filter((at) => at > 0);
  return [
    { stem: heading },
    ...cuts.map((at) => ({ stem: heading.slice(0, at), unit: heading.slice(at + 1) })),
  ];
}

/** How far a heading is from a name; undefined if too far. */
function rankOf(stem: string, name: string): number | undefined {
  const [from, to] = [wordsOf(stem), wordsOf(name)];
  const letters = distanceOf(from.join(""), to.join(""));
  if (letters <= Math.max(1, Math.floor(SLIP * name.length))) return letters;
  const some = from.length > 0 && from.every((word) => to.includes(word));
  return some ? name.length : undefined;
}

function wordsOf(text: string): string[] {
  return text.toLowerCase().split(/[^\p{L}\p{N}]+/u).filter((word) => word !== "");
}

/** Letters to change, add or drop between two words. */
function distanceOf(from: string, to: string): number {
  let row = Array.from({ length: to.length + 1 }, (_, j) => j);
  for (let i = 0; i < from.length; i++) {
    const next = [i + 1];
    for (let j = 0; j < to.length; j++) {
      const changed = row[j]! + (from[i] === to[j] ? 0 : 1);
      next.push(Math.min(row[j + 1]! + 1, next[j]! + 1, changed));
    }
    row = next;
  }
  return row[to.length]!;
}
