import { type Fault, InputError } from "../check/mod.ts";
import type { Columns, RowOf } from "./column.ts";
import { decodeText, type Encoding } from "./decode.ts";
import { describeLeftOut, type LeftOut } from "./left_out.ts";
import type { DecimalSign } from "./number_cell.ts";
import { type Progress, type Scan, scan } from "./_scan.ts";

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

/** The cells of a column: figures as one typed array. */
export type ColumnValues<Cell> = [Cell] extends [number] ? Float64Array : readonly Cell[];

/** A table as columns. */
export interface ColumnTable<C extends Columns> extends TableFacts {
  /** Number of rows [1]. */
  readonly count: number;
  /** The columns; figures that may be missing are checked but not kept. */
  readonly columns: {
    readonly [
      Name in keyof C as C[Name] extends { readonly kind: "number"; readonly optional: true }
        ? never
        : Name
    ]: ColumnValues<RowOf<C>[Name]>;
  };
}

const action = "read the table";

/** A table and all that is wrong with it: for a caller who gathers the faults of several files. */
export interface CheckedTable<C extends Columns> {
  /** The table; rows with a fault are left out of it. */
  readonly table: Table<C>;
  /** What is wrong, in the order of the file. */
  readonly faults: readonly Fault[];
  /** Each text in a column of names, rows with a fault included. */
  namesIn(column: keyof C & string): ReadonlySet<string>;
}

/**
 * Reads a table and checks each cell; all that is wrong is reported at once.
 *
 * Figures are brought to SI by the unit in their heading
 *
 * Range: CSV with comma, semicolon, tab or bar; quoted cells may hold line ends; lines that begin
 * with `#` are comments; units stand in the heading (`span_mm`, `span [mm]`) or in a row below it
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
    const table = {
      rows: [],
      lines: new Uint32Array(),
      headings: new Map(),
      leftOut: [],
      notes: [],
    };
    return { table, faults: read.decodeFaults, namesIn: () => new Set() };
  }
  const { columns } = options;
  const rows: RowOf<C>[] = [];
  const lines: number[] = [];
  for (let i = 0; i < read.count; i++) {
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
    namesIn: (column) => new Set(read.fields.get(column)?.values as string[] | undefined),
  };
}

/**
 * Reads a table as columns: as `readTable`, for tables of a million rows.
 *
 * @param source The file's bytes, or its text.
 * @param options The columns, and how the file is written where it does not say so itself.
 * @returns The columns, figures as typed arrays; figures that may be missing are not kept.
 * @throws {InputError} If anything is wrong: each fault has its file, line, column and value.
 *
 * @example
 * ```ts
 * import { numberColumn, readColumns } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const columns = { load: numberColumn("force"), deflection: numberColumn("length") };
 * const table = readColumns("load_N;deflection_mm\n10;0,5\n20;1,0\n", { columns });
 * assertEquals([...table.columns.deflection], [0.0005, 0.001]);
 * ```
 */
export function readColumns<const C extends Columns>(
  source: string | Uint8Array,
  options: TableOptions<C>,
): ColumnTable<C> {
  const { table, faults } = checkColumns(source, options);
  if (faults.length > 0) throw new InputError(action, faults);
  return table;
}

/**
 * Reads a table as `readColumns` does, and returns what is wrong with it instead of throwing.
 *
 * @param source The file's bytes, or its text.
 * @param options The columns, and how the file is written where it does not say so itself.
 * @returns The columns, rows with a fault left out of them, and the faults.
 *
 * @example
 * ```ts
 * import { checkColumns, numberColumn } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const columns = { load: numberColumn("force") };
 * const { faults } = checkColumns("load_N\n", { columns, file: "a.csv" });
 * assertEquals(faults.map((fault) => fault.argument), ["number of data rows"]);
 * ```
 */
export function checkColumns<const C extends Columns>(
  source: string | Uint8Array,
  options: TableOptions<C>,
): { readonly table: ColumnTable<C>; readonly faults: readonly Fault[] } {
  const read = scanSource(source, options);
  const columns: Record<string, Cells> = {};
  const bad = "decodeFaults" in read;
  for (const [name, column] of Object.entries(options.columns)) {
    if (column.optional && column.kind === "number") continue;
    const field = bad ? undefined : read.fields.get(name);
    columns[name] = bad || field === undefined
      ? (column.kind === "number" ? new Float64Array() : new Array(bad ? 0 : read.count))
      : soundCells(field.values, read);
  }
  const facts = bad
    ? noFacts
    : { ...factsOf(read, options.file), lines: soundCells(read.lines, read) as Uint32Array };
  const table = {
    count: facts.lines.length,
    columns: columns as ColumnTable<C>["columns"],
    ...facts,
  };
  return { table, faults: bad ? read.decodeFaults : named(read.faults, options.file) };
}

type Cells = Float64Array | Uint32Array | readonly (string | undefined)[];

/** The cells of the rows without fault. */
function soundCells(cells: Cells, { count, badRows }: Scan): Cells {
  const all = cells.slice(0, count);
  return badRows.size === 0 ? all : all.filter((_: unknown, row: number) => !badRows.has(row));
}

const noFacts: TableFacts = {
  lines: new Uint32Array(),
  headings: new Map(),
  leftOut: [],
  notes: [],
};

function scanSource<C extends Columns>(
  source: string | Uint8Array,
  options: TableOptions<C>,
): Scan | { readonly decodeFaults: readonly Fault[] } {
  const { file, encoding } = options;
  try {
    return scan(
      typeof source === "string" ? source : decodeText(source, {
        ...(file === undefined ? {} : { file }),
        ...(encoding === undefined ? {} : { encoding }),
      }),
      options,
    );
  } catch (error) {
    if (error instanceof InputError) return { decodeFaults: error.faults };
    throw error;
  }
}

function cellAt(read: Scan, name: string, row: number): string | number | undefined {
  const field = read.fields.get(name);
  if (field === undefined) return undefined;
  const value = field.values[row];
  return typeof value === "number" && Number.isNaN(value) ? undefined : value;
}

function factsOf(read: Scan, file = "table"): TableFacts {
  return {
    lines: read.lines,
    headings: new Map([...read.fields].map(([name, field]) => [name, field.heading])),
    leftOut: read.leftOut,
    notes: [
      ...read.notes.map((note) => `${file}: ${note}`),
      ...read.leftOut.map((part) => describeLeftOut(part, file)),
    ],
  };
}

function named(faults: readonly Fault[], file = "table"): readonly Fault[] {
  return faults.map((fault) => ({ file, ...fault }));
}
