import { type Fault, InputError } from "../check/mod.ts";
import type { Columns, RowOf } from "./column.ts";
import type { Encoding } from "./decode.ts";
import type { LeftOut } from "./left_out.ts";
import type { DecimalSign } from "./number_cell.ts";
import type { Progress, Scan } from "./_scan.ts";
import { factsOf, named, noFacts, scanSource } from "./_table_facts.ts";

export type { Progress } from "./_scan.ts";

/** What a table must hold, and how it is written. */
export interface TableOptions<C extends Columns> {
  /** The columns that it must hold. */
  readonly columns: C;
  /** The name of the file, for messages; `table` if left out. */
  readonly file?: string;
  /** The encoding of bytes; UTF-8 if left out. */
  readonly encoding?: Encoding;
  /**
   * The decimal sign. If left out it is the point, or the comma in a file with another delimiter
   * whose numbers can mean nothing else.
   */
  readonly decimal?: DecimalSign;
  /** The delimiter; found out if left out. */
  readonly delimiter?: string;
  /** Lines above the headings to skip; 0 if left out [1]. */
  readonly skipLines?: number;
  /** Called every 100 000 rows. */
  readonly onProgress?: (progress: Progress) => void;
}

/** What is known of a table beside its cells. */
export interface TableFacts {
  /** The line of the file at which each row begins, counted from 1. */
  readonly lines: Uint32Array;
  /** The headings that the columns have in the file. */
  readonly headings: ReadonlyMap<string, string>;
  /** A figure of a column as the file writes it, with its unit: for messages. */
  written(column: string, value: number): string;
  /** What was read but is no data: nothing is dropped without being named here. */
  readonly leftOut: readonly LeftOut[];
  /** What the reader should know, each as one line. */
  readonly notes: readonly string[];
}

/** A table as rows. */
export interface Table<C extends Columns> extends TableFacts {
  /** The rows, in the order of the file. */
  readonly rows: readonly RowOf<C>[];
}

const action = "read the table";

/** A table and all that is wrong with it: for a caller who gathers the faults of several files. */
export interface CheckedTable<C extends Columns> {
  /** The table; rows with a fault are left out of it. */
  readonly table: Table<C>;
  /** What is wrong, in the order of the file. */
  readonly faults: readonly Fault[];
  /** Each text in a column, rows with a fault included; none if the column is missing. */
  namesIn(column: keyof C & string): ReadonlySet<string> | undefined;
}

/**
 * Reads a table and checks each cell; all that is wrong is reported at once.
 *
 * Figures are brought to SI by their unit, which stands in the heading (`span_mm`, `span [mm]`) or
 * in a row below the headings. An apostrophe that keeps a text from being a formula is taken off.
 *
 * Range: CSV with comma, semicolon, tab or bar; quoted cells may hold line ends. A line that begins
 * with `#` is a comment, and a column whose heading begins with `x_` is the builder's own; any
 * other column must be one of those asked for, or empty
 *
 * Source: RFC 4180, and the project's own rules for what it leaves open
 *
 * @param source The file's bytes, or its text.
 * @param options The columns, and how the file is written where it does not say so itself.
 * @returns The rows, and what was left out.
 * @throws {InputError} If anything is wrong: each fault has its file, line, column and value.
 *
 * @example
 * ```ts
 * import { numberColumn, readTable, textColumn } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const columns = { part: textColumn(), mass: numberColumn("mass", { above: 0 }) };
 * const { rows, leftOut } = readTable("part,mass_g\nP1,412\n\nP2,398.5\n", { columns });
 * assertEquals(rows, [{ part: "P1", mass: 0.412 }, { part: "P2", mass: 0.3985 }]);
 * assertEquals(leftOut.map(({ reason, line }) => `${reason} at ${line}`), ["blank row at 3"]);
 * ```
 */
export function readTable<const C extends Columns>(
  source: string | Uint8Array,
  options: TableOptions<C>,
): Table<C> {
  const { table, faults } = checkTable(source, options);
  if (faults.length > 0) throw new InputError(action, faults);
  return table;
}

/**
 * Reads a table as `readTable` does, and returns what is wrong with it instead of throwing.
 *
 * @param source The file's bytes, or its text.
 * @param options The columns, and how the file is written where it does not say so itself.
 * @returns The rows without fault, and the faults.
 *
 * @example
 * ```ts
 * import { checkTable, numberColumn } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const columns = { load: numberColumn("force") };
 * const { table, faults } = checkTable("load_N\n10\n1e\n", { columns });
 * assertEquals(table.rows, [{ load: 10 }]);
 * assertEquals(faults.map(({ line, value }) => `${line} ${value}`), ["3 1e"]);
 * ```
 */
export function checkTable<const C extends Columns>(
  source: string | Uint8Array,
  options: TableOptions<C>,
): CheckedTable<C> {
  const read = scanSource(source, options);
  if ("decodeFaults" in read) {
    const table = { rows: [], ...noFacts };
    return { table, faults: read.decodeFaults, namesIn: () => undefined };
  }
  const { columns } = options;
  const rows: RowOf<C>[] = [];
  const lines: number[] = [];
  // Where a column is missing no row is whole.
  const count = read.headingsSound ? read.count : 0;
  for (let i = 0; i < count; i++) {
    if (read.badRows.has(i)) continue;
    const row: Record<string, string | number | undefined> = {};
    for (const name of Object.keys(columns)) row[name] = cellAt(read, name, i);
    rows.push(row as RowOf<C>);
    lines.push(read.lines[i]!);
  }
  const table = { rows, ...factsOf(read, options.file), lines: Uint32Array.from(lines) };
  return {
    table,
    faults: named(read.faults, options.file),
    namesIn(column): ReadonlySet<string> | undefined {
      const field = read.fields.get(column);
      if (field?.kind !== "text") return undefined;
      return new Set(field.values.slice(0, read.count).filter((name) => name !== undefined));
    },
  };
}

function cellAt(read: Scan, name: string, row: number): string | number | undefined {
  const field = read.fields.get(name);
  if (field === undefined) return undefined;
  const value = field.values[row];
  return typeof value === "number" && Number.isNaN(value) ? undefined : value;
}
