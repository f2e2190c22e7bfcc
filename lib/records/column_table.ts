import { type Fault, InputError } from "../check/mod.ts";
import type { Columns, RowOf } from "./column.ts";
import type { Scan } from "./_scan.ts";
import type { TableFacts, TableOptions } from "./table.ts";
import { factsOf, named, noFacts, scanSource } from "./_table_facts.ts";

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
function soundCells(cells: Cells, { count: all, headingsSound, badRows }: Scan): Cells {
  const count = headingsSound ? all : 0;
  const isSound = (_: unknown, row: number): boolean => !badRows.has(row);
  if (badRows.size > 0) return cells.slice(0, count).filter(isSound);
  // No copy of a million cells where none is needed.
  if (cells instanceof Float64Array || cells instanceof Uint32Array) {
    return cells.subarray(0, count);
  }
  return cells.length === count ? cells : cells.slice(0, count);
}
