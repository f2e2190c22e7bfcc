// @ts-types="./_papaparse.d.ts"
import Papa from "papaparse";
import { checksFor, type Fault, InputError } from "../check/mod.ts";

const check = checksFor("write the table");

/** A table to be written. */
export interface TableContent {
  /** The headings, with their units. */
  readonly headings: readonly string[];
  /** The rows, each as long as the headings; `undefined` is an empty cell. */
  readonly rows: readonly (readonly (string | number | undefined)[])[];
}

/** How a table is to be written. */
export interface TableTextOptions {
  /** End of each line; `LF` if left out, `CRLF` as RFC 4180 has it. */
  readonly lineEnd?: "LF" | "CRLF";
  /** Whether the text begins with the mark by which spreadsheets know UTF-8; no if left out. */
  readonly byteOrderMark?: boolean;
}

// A spreadsheet runs a cell that begins with one of these signs (in wide form too), and some run
// one that begins with a tab or a line end.
const runs = /^[\s']*[=+\-@＝＋－＠]|^'*[\t\r\n]/;

/** A text as a cell that no spreadsheet takes for a formula: an apostrophe stands before it. */
function guarded(text: string): string {
  return runs.test(text) ? `'${text}` : text;
}

/** Takes the apostrophe of `guarded` off again. */
export function unguarded(cell: string): string {
  return cell.charCodeAt(0) === 39 && runs.test(cell.slice(1)) ? cell.slice(1) : cell;
}

/**
 * A table as CSV text that no spreadsheet takes for a program: a text cell that begins with
 * `=`, `+`, `-`, `@`, tab or a line end gets an apostrophe before it, which `readTable` takes off.
 *
 * Numbers are written with all the digits that are needed to read the same double.
 *
 * Range: finite numbers; texts are read back without blanks around them, and
 * with `\n` for each line end in them
 *
 * Source: RFC 4180 for quotes and commas
 *
 * @param table Headings and rows.
 * @param options Line end and byte order mark.
 * @returns The text, with a line end behind each row.
 * @throws {InputError} If a row is not as long as the headings, or a number is not finite.
 *
 * @example
 * ```ts
 * import { tableText } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const text = tableText({ headings: ["note", "load_N"], rows: [["=1+2", -3], ["a, b", 1.5]] });
 * assertEquals(text, `note,load_N\n'=1+2,-3\n"a, b",1.5\n`);
 * ```
 */
export function tableText(table: TableContent, options: TableTextOptions = {}): string {
  const { headings, rows } = check.object("table", table);
  const { lineEnd = "LF", byteOrderMark = false } = check.object("options", options);
  check.list("headings", headings);
  check.list("rows", rows, 0);
  check.oneOf("line end", lineEnd, ["LF", "CRLF"]);
  const faults = [headings, ...rows].flatMap((row, i) =>
    rowFaults(row, { name: i === 0 ? "headings" : `row ${i}`, headings })
  );
  if (faults.length > 0) throw new InputError("write the table", faults);
  const cells = [headings, ...rows].map((row) =>
    row.map((cell) => typeof cell === "string" ? guarded(cell) : cell ?? "")
  );
  const newline = lineEnd === "CRLF" ? "\r\n" : "\n";
  const text = Papa.unparse(cells, {
    newline,
    // A line that begins with # is read as a comment, and an empty line as no row.
    quotes: (cell: unknown, column: number): boolean =>
      column === 0 && (String(cell).startsWith("#") || (headings.length === 1 && cell === "")),
  });
  return `${byteOrderMark ? "\ufeff" : ""}${text}${newline}`;
}

function rowFaults(
  row: readonly (string | number | undefined)[],
  { name, headings }: { readonly name: string; readonly headings: readonly string[] },
): readonly Fault[] {
  if (!Array.isArray(row)) {
    return [{ argument: name, value: row, wanted: "must be a list of cells" }];
  }
  const faults: Fault[] = [];
  if (row.length !== headings.length) {
    const wanted = `must be ${headings.length} as there are headings`;
    faults.push({ argument: `number of cells in ${name}`, value: row.length, wanted });
  }
  row.forEach((cell: unknown, j) => {
    if (cell === undefined || Number.isFinite(cell)) return;
    if (typeof cell === "string" && cell.isWellFormed() && !/[\0\ufffd]/.test(cell)) return;
    const wanted = typeof cell === "string"
      ? "must be whole text: no NUL, no half or damaged sign"
      : "must be a text, a finite number or undefined";
    faults.push({ argument: `${headings[j] ?? "cell"} in ${name}`, value: cell, wanted });
  });
  return faults;
}
