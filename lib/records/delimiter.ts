// @ts-types="./_papaparse.d.ts"
import Papa from "papaparse";
import { checksFor } from "../check/mod.ts";

/** The signs that may stand between the cells of a row. */
export type Delimiter = "\t" | ";" | "|" | ",";

/** Rare signs first: a comma also stands in texts and in numbers. */
const delimiters: readonly Delimiter[] = ["\t", ";", "|", ","];
const check = checksFor("find the delimiter");
const longestHead = 65536;
const rowsLookedAt = 50;

/**
 * The delimiter of a table: the first of tab, `;`, `|`, `,` that gives at least 80 % of the first
 * rows as many cells as it gives the headings, two or more.
 *
 * Formula: rows with the headings' number of cells ≥ 0.8 × rows
 *
 * Range: the first 50 rows that are neither blank nor comments; a table in which no delimiter
 * agrees gets the one that its headings have
 *
 * @param text The table, headings first; its line ends are `\n`.
 * @returns The delimiter, or undefined if there is one column.
 * @throws {InputError} If it is no text.
 *
 * @example
 * ```ts
 * import { findDelimiter } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(findDelimiter("load_N;deflection_mm\n0,5;1,25\n"), ";");
 * assertEquals(findDelimiter("load_N\n10\n"), undefined);
 * ```
 */
export function findDelimiter(text: string): Delimiter | undefined {
  if (typeof text !== "string") return check.refuse("text", text, "must be text");
  let head = text.slice(0, longestHead);
  if (head.length < text.length) head = head.slice(0, head.lastIndexOf("\n") + 1) || head;
  let widestHeadings = 1;
  let widest: Delimiter | undefined;
  for (const delimiter of delimiters) {
    const widths = rowWidths(head, delimiter);
    const headings = widths[0] ?? 0;
    const agreeing = widths.filter((width) => width === headings).length;
    if (headings >= 2 && agreeing >= 0.8 * widths.length) return delimiter;
    if (headings > widestHeadings) {
      widestHeadings = headings;
      widest = delimiter;
    }
  }
  return widest;
}

function rowWidths(head: string, delimiter: Delimiter): readonly number[] {
  const { data } = Papa.parse(head, {
    delimiter,
    newline: "\n",
    comments: "#",
    skipEmptyLines: "greedy",
  });
  return data.slice(0, rowsLookedAt).map((row) => row.length);
}
