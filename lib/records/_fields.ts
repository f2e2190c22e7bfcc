import type { Fault } from "../check/mod.ts";
import type { ColumnUnit } from "../quantity/mod.ts";
import type { ChoiceColumn, NumberColumn, TextColumn } from "./column.ts";
import { type Match, unitOf } from "./_heading.ts";
import { type DecimalSign, plainNumber, readNumberCell } from "./number_cell.ts";
import { unguarded } from "./table_text.ts";

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
  /** Keeps the columns equally long where a row cannot be read. */
  pushPlaceholder(row: number): void;
}

/** A column of figures; NaN stands for an empty cell and for a bad one. */
export interface NumberField extends FieldBase {
  readonly kind: "number";
  readonly column: NumberColumn;
  unit: ColumnUnit | undefined;
  suffix: string | undefined;
  values: Float64Array;
}

/** A column of names, words or notes. */
export interface TextField extends FieldBase {
  readonly kind: "text";
  readonly column: TextColumn | ChoiceColumn;
  readonly values: (string | undefined)[];
}

/** The columns of the file that the schema knows, empty. */
export function makeFields(matches: readonly Match[], store: Store, line: number): Field[] {
  return matches.map(({ name, column, heading, index, suffix }): Field => {
    if (column.kind !== "number") {
      const values: (string | undefined)[] = [];
      return {
        kind: "text",
        name,
        heading,
        index,
        column,
        values,
        pushPlaceholder: (): void => void values.push(undefined),
      };
    }
    const field: NumberField = {
      kind: "number",
      name,
      heading,
      index,
      column,
      suffix,
      unit: undefined,
      values: new Float64Array(256),
      pushPlaceholder: (row): void => setNumber(field, row, NaN),
    };
    const found = suffix === undefined ? undefined : unitOf(column, suffix);
    if (found !== undefined && "unit" in found) field.unit = found.unit;
    else if (found !== undefined) {
      store.faults.push({ argument: "unit in the heading", value: heading, line, ...found });
    }
    return field;
  });
}

/** Where a row stands. */
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
  const cellOf = (field: NumberField): string => cells[field.index]?.trim() ?? "";
  const isUnits = numbers.some((field) => {
    const cell = cellOf(field);
    return cell !== "" && "unit" in unitOf(field.column, cell);
  }) && !numbers.some((field) => "value" in readNumberCell(cellOf(field), store.decimal));
  for (const field of numbers) {
    const cell = isUnits ? cellOf(field) : "";
    if (field.unit !== undefined && cell !== "") {
      const found = unitOf(field.column, cell);
      if ("unit" in found && found.unit.unit === field.unit.unit) continue;
      store.faults.push({
        argument: `unit of ${field.heading}`,
        value: cell,
        wanted: `must be the unit of the heading, ${field.unit.unit}, or empty`,
        line,
      });
    } else if (field.suffix === undefined) {
      const found = unitOf(field.column, cell);
      if ("unit" in found) field.unit = found.unit;
      else if (cell === "") {
        const { wanted } = found;
        store.faults.push({ argument: "heading", value: field.heading, wanted, line: headingLine });
      } else {
        const { wanted } = found;
        store.faults.push({ argument: `unit of ${field.heading}`, value: cell, wanted, line });
      }
    }
  }
  return isUnits;
}

/** Checks the cells of a row and adds them to the columns. */
export function addRow(cells: readonly string[], place: RowPlace): void {
  const { fields, store } = place;
  const row = store.count;
  const decimal = store.decimal === "," ? 44 : 46;
  for (let i = 0; i < fields.length; i++) {
    const field = fields[i]!;
    const cell = cells[field.index]!;
    if (field.kind === "number") {
      const plain = plainNumber(cell, decimal);
      const value = field.unit === undefined ? plain : field.unit.toSI(plain);
      setNumber(field, row, fits(value, field.column) ? value : slowNumber(cell, field, place));
    } else field.values.push(readText(cell, field, place));
  }
}

function setNumber(field: NumberField, row: number, value: number): void {
  if (row >= field.values.length) {
    const larger = new Float64Array(2 * field.values.length);
    larger.set(field.values);
    field.values = larger;
  }
  field.values[row] = value;
}

function fits(value: number, column: NumberColumn): boolean {
  const { above = -Infinity, min = -Infinity, max = Infinity } = column;
  return value > above && value >= min && value <= max && value < Infinity &&
    (column.whole !== true || Number.isInteger(value));
}

function fault(cell: string, wanted: string, field: Field, { store, line }: RowPlace): void {
  store.badRows.add(store.count);
  store.faults.push({ argument: field.heading, value: cell, wanted, line });
}

/** A cell that is not plainly right: empty, an unusual number, or a fault. */
function slowNumber(text: string, field: NumberField, place: RowPlace): number {
  const cell = text.trim();
  if (cell === "" && field.column.optional) return NaN;
  const { store } = place;
  const read = readNumberCell(cell, store.decimal);
  if (!("value" in read)) {
    if (store.decimal === "." && /^[+-]?\d*,(?:\d{1,2}|\d{4,})$|^[+-]?0,\d+$/.test(cell)) {
      store.decimalCommas++;
    }
    fault(cell, read.wanted, field, place);
    return NaN;
  }
  const value = field.unit === undefined ? read.value : field.unit.toSI(read.value);
  if (fits(value, field.column)) return value;
  fault(cell, wantedRange(field), field, place);
  return NaN;
}

function wantedRange({ column, unit }: NumberField): string {
  const shown = (limit: number): string => {
    const inUnit = unit === undefined ? limit : unit.fromSI(limit);
    return `${Number(inUnit.toPrecision(6))}${
      unit === undefined || unit.unit === "1" || limit === 0 ? "" : ` ${unit.unit}`
    }`;
  };
  const { above, min, max } = column;
  const limits: string[] = [];
  if (above !== undefined) limits.push(`above ${shown(above)}`);
  if (min !== undefined) limits.push(`${shown(min)} or above`);
  if (max !== undefined) limits.push(`${shown(max)} or below`);
  if (limits.length === 0) limits.push("within the range of numbers");
  return `must be ${column.whole === true ? "a whole number, " : ""}${limits.join(" and ")}`;
}

function readText(cell: string, field: TextField, place: RowPlace): string | undefined {
  const text = unguarded(cell).trim();
  const { column, values } = field;
  // The same name mostly stands in the row above: one text for both saves memory.
  const above = values[values.length - 1];
  if (text === above && above !== undefined) return above;
  if (text === "") {
    if (!column.optional) fault(cell, "must not be empty", field, place);
    return undefined;
  }
  if (column.kind === "choice") {
    if (!column.words.includes(text)) {
      fault(cell, `must be one of: ${column.words.join(", ")}`, field, place);
      return undefined;
    }
  } else if (!column.free && cell.trimStart().startsWith("=")) {
    fault(cell, "must be the text itself, not a formula", field, place);
    return undefined;
  }
  return text;
}
