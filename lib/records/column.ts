import { checkColumn, checkLimits } from "./_check_column.ts";
import type { Dimension } from "../quantity/mod.ts";

/** A column of names: text that may not be a formula. */
export interface TextColumn {
  /** The kind of column. */
  readonly kind: "text";
  /** Whether the column may be missing and a cell empty. */
  readonly optional: boolean;
  /** Whether any text will do, as in a note; a name must not begin with `=`. */
  readonly free: boolean;
  /** The names that may stand in it; any if left out. */
  readonly known?: KnownNames;
  /** Whether each cell must be a day, written year-month-day. */
  readonly day?: boolean;
}

/** Names that a column may hold. */
export interface KnownNames {
  /** The names. */
  readonly names: ReadonlySet<string> | ReadonlyMap<string, unknown>;
  /** What is said of another name, such as `must be a resin of the catalogue`. */
  readonly wanted: string;
}

/** A column of words from a fixed set. */
export interface ChoiceColumn<Word extends string = string> {
  /** The kind of column. */
  readonly kind: "choice";
  /** Whether the column may be missing and a cell empty. */
  readonly optional: boolean;
  /** The words that may stand in it. */
  readonly words: readonly Word[];
}

/** Limits of the figures in a column, in SI. */
export interface ColumnLimits {
  /** The figures must be above this. */
  readonly above?: number;
  /** The figures must be this or above. */
  readonly min?: number;
  /** The figures must be this or below. */
  readonly max?: number;
  /** Whether the figures must be whole numbers. */
  readonly whole?: boolean;
}

/** A column of figures, in any unit of its kind of quantity; read into SI. */
export interface NumberColumn extends ColumnLimits {
  /** The kind of column. */
  readonly kind: "number";
  /** Whether the column may be missing and a cell empty. */
  readonly optional: boolean;
  /** The kind of quantity. */
  readonly dimension: Dimension;
}

/** What one column must hold. */
export type Column = TextColumn | ChoiceColumn | NumberColumn;

/**
 * What a table must hold: each column by the name that its heading has, without the unit. The
 * order of the columns in the file is free.
 */
export type Columns = Readonly<Record<string, Column>>;

/** The value of a cell in a column. */
export type CellOf<C extends Column> =
  | (C extends NumberColumn ? number : C extends ChoiceColumn<infer Word> ? Word : string)
  | (C extends { readonly optional: false } ? never : undefined);

/** A row of a table with those columns; figures in SI, degrees for angles. */
export type RowOf<C extends Columns> = { readonly [Name in keyof C]: CellOf<C[Name]> };

/** The column, as one that may be missing and whose cells may be empty. */
export type Optional<C extends Column> = Omit<C, "optional"> & { readonly optional: true };

/** The column, as one that must be there and whose cells must be filled. */
export type Filled<C extends Column> = Omit<C, "optional"> & { readonly optional: false };

/**
 * A column of names.
 *
 * @param known The names that may stand in it; any if left out.
 * @returns The column.
 * @throws {InputError} If the names are no Set or Map.
 *
 * @example
 * ```ts
 * import { readTable, textColumn } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const { rows } = readTable("part\nP1\n", { columns: { part: textColumn() } });
 * assertEquals(rows[0]?.part, "P1");
 * ```
 */
export function textColumn(known?: KnownNames): Filled<TextColumn> {
  const column = { kind: "text", optional: false, free: false } as const;
  return known === undefined ? column : checkColumn({ ...column, known });
}

/**
 * A column of days, written year-month-day: the only way that means the same day to everybody, and
 * that sorts as text.
 *
 * @returns The column.
 *
 * @example
 * ```ts
 * import { checkTable, dayColumn } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const columns = { date: dayColumn() };
 * const { table, faults } = checkTable("date\n2026-04-18\n4/5/2026\n", { columns });
 * assertEquals(table.rows, [{ date: "2026-04-18" }]);
 * assertEquals(faults.map(({ value }) => value), ["4/5/2026"]);
 * ```
 */
export function dayColumn(): Filled<TextColumn> {
  return { kind: "text", optional: false, free: false, day: true };
}

/**
 * A column of notes: it may be missing, and any text will do.
 *
 * @returns The column.
 *
 * @example
 * ```ts
 * import { noteColumn, readTable, textColumn } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const columns = { part: textColumn(), note: noteColumn() };
 * const { rows } = readTable("part,note\nP1,=so far\n", { columns });
 * assertEquals(rows[0]?.note, "=so far");
 * ```
 */
export function noteColumn(): Optional<TextColumn> {
  return { kind: "text", optional: true, free: true };
}

/**
 * A column of words from a fixed set.
 *
 * @param words The words that may stand in it.
 * @returns The column.
 * @throws {InputError} If there is no word, or one is no text.
 *
 * @example
 * ```ts
 * import { choiceColumn, readTable } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const columns = { branch: choiceColumn("loading", "unloading") };
 * const { rows } = readTable("branch\nloading\n", { columns });
 * assertEquals(rows[0]?.branch, "loading");
 * ```
 */
export function choiceColumn<const Word extends string>(
  ...words: readonly Word[]
): Filled<ChoiceColumn<Word>> {
  return checkColumn({ kind: "choice", optional: false, words });
}

/**
 * A column of figures.
 *
 * @param dimension The kind of quantity; any unit of it may stand in the heading.
 * @param limits Limits of the figures, in SI.
 * @returns The column.
 * @throws {InputError} If there is no such kind of quantity, or a limit is no number.
 *
 * @example
 * ```ts
 * import { numberColumn, readTable } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const columns = { span: numberColumn("length", { above: 0 }) };
 * const { rows } = readTable("span_mm\n400\n", { columns });
 * assertEquals(rows[0]?.span, 0.4);
 * ```
 */
export function numberColumn(
  dimension: Dimension,
  limits: ColumnLimits = {},
): Filled<NumberColumn> {
  checkLimits(limits);
  return checkColumn({ kind: "number", optional: false, dimension, ...limits });
}

/**
 * A column that may be missing, and whose cells may be empty.
 *
 * @param column The column as it would be if it were required.
 * @returns The column.
 * @throws {InputError} If it is no column.
 *
 * @example
 * ```ts
 * import { numberColumn, optional, readTable, textColumn } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const columns = { part: textColumn(), thickness: optional(numberColumn("thickness")) };
 * const { rows } = readTable("part,thickness_mm\nP1,\n", { columns });
 * assertEquals(rows[0]?.thickness, undefined);
 * ```
 */
export function optional<C extends Column>(column: C): Optional<C> {
  return { ...checkColumn(column), optional: true };
}
