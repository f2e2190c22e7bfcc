import type { Fault } from "../check/mod.ts";
import type { ColumnUnit } from "../quantity/mod.ts";
import type { ChoiceColumn, NumberColumn, TextColumn } from "./column.ts";
import { type Match, unitOf } from "./_heading.ts";
import { type DecimalSign, readNumberCell } from "./number_cell.ts";

/** What the cells of a table are gathered into. */
export interface Store {
  /** Rows so far. */
  count: number;
  /** Faults so far. */
  readonly faults: Fault[];
  /** Rows with a fault. */
  readonly badRows: Set<number>;
  /** The decimal sign in force. */
  readonly decimal: DecimalSign;
  /** Cells that can only be numbers with a decimal comma. */
  decimalCommas: number;
}

/** A column of the file while it is read. */
export type Field = NumberField | TextField;

interface FieldBase {
  readonly name: string;
  readonly heading: string;
  readonly index: number;
}

/** A column of figures; NaN stands for an empty cell and for a bad one. */
export interface NumberField extends FieldBase {
  readonly kind: "number";
  readonly column: NumberColumn;
  /** The unit as the heading writes it. */
  readonly suffix: string | undefined;
  unit: ColumnUnit | undefined;
  /** The limits of the column, each in its place whether it is set or not: this is the hot path. */
  readonly above: number;
  readonly min: number;
  readonly max: number;
  readonly whole: boolean;
  /** As long as there can be rows. */
  readonly values: Float64Array;
}

/** A column of names, words or notes. */
export interface TextField extends FieldBase {
  readonly kind: "text";
  readonly column: TextColumn | ChoiceColumn;
  readonly values: (string | undefined)[];
}

/** The columns of the file that the schema knows, empty. */
export function makeFields(
  matches: readonly Match[],
  { store, line, mostRows }: Omit<RowPlace, "fields"> & { readonly mostRows: number },
): Field[] {
  return matches.map(({ name, column, heading, index, suffix }): Field => {
    if (column.kind !== "number") {
      return { kind: "text", name, heading, index, column, values: [] };
    }
    const found = suffix === undefined ? undefined : unitOf(column, suffix);
    if (found !== undefined && !("unit" in found)) {
      store.faults.push({ argument: "unit in the heading", value: heading, line, ...found });
    }
    const unit = found !== undefined && "unit" in found ? found.unit : undefined;
    const { above = -Infinity, min = -Infinity, max = Infinity, whole = false } = column;
    const limits = { above, min, max, whole };
    const values = new Float64Array(mostRows);
    return { kind: "number", name, heading, index, column, suffix, unit, ...limits, values };
  });
}

/** Keeps the columns equally long where a row cannot be read. */
export function setPlaceholders(fields: readonly Field[], row: number): void {
  for (const field of fields) {
    if (field.kind === "number") field.values[row] = NaN;
    else field.values[row] = undefined;
  }
}

/** What a row is checked against, and where it stands. */
export interface RowPlace {
  /** The columns. */
  readonly fields: readonly Field[];
  /** Where cells and faults go. */
  readonly store: Store;
  /** Line of the row. */
  readonly line: number;
}

/**
 * Takes the first row below the headings as a row of units, if it is one: at least one column of
 * figures has a unit there, and none has a figure. Sees to it that each such column has its unit.
 */
export function unitsRow(
  cells: readonly string[],
  { fields, store, line, headingLine }: RowPlace & { readonly headingLine: number },
): boolean {
  const numbers = fields.filter((field): field is NumberField => field.kind === "number");
  const cellOf = (field: NumberField): string => {
    const cell = cells[field.index]?.trim() ?? "";
    return cell === "-" ? "" : cell;
  };
  const isUnits = numbers.some((field) => {
    const cell = cellOf(field);
    return cell !== "" && "unit" in unitOf(field.column, cell);
  }) && !numbers.some((field) => "value" in readNumberCell(cellOf(field), store.decimal));
  for (const field of numbers) {
    const fault = takeUnit(field, isUnits ? cellOf(field) : "");
    if (fault === undefined) continue;
    store.faults.push({ ...fault, line: fault.argument === "heading" ? headingLine : line });
  }
  return isUnits;
}

/** Gives a column the unit of the units row (empty where there is none), or says what is wrong. */
function takeUnit(field: NumberField, cell: string): Fault | undefined {
  const found = unitOf(field.column, cell);
  const argument = `unit of ${field.heading}`;
  if (field.suffix !== undefined) {
    if (field.unit === undefined || cell === "") return undefined;
    if ("unit" in found && found.unit.unit === field.unit.unit) return undefined;
    const wanted = `must be the unit of the heading, ${field.unit.unit}, or empty`;
    return { argument, value: cell, wanted };
  }
  if ("unit" in found) {
    field.unit = found.unit;
    return undefined;
  }
  return cell === ""
    ? { argument: "heading", value: field.heading, wanted: found.wanted }
    : { argument, value: cell, wanted: found.wanted };
}
