import { type Field, type NumberField, type RowPlace, type TextField } from "./_fields.ts";
import { readNumberCell } from "./number_cell.ts";
import type { PlainCells } from "./_rows.ts";
import { unguarded } from "./table_text.ts";

/** Checks the cells of a row and adds them to the columns. */
export function addRow(cells: readonly string[], place: RowPlace): void {
  const row = place.store.count;
  for (const field of place.fields) {
    const cell = cells[field.index]!;
    if (field.kind === "number") field.values[row] = numberOf(cell, field, place);
    else field.values[row] = textOf(cell, field, place);
  }
}

/**
 * Adds a row whose cells are all plainly right, cut from the text itself; any other row is left
 * to `addRow`, which gives the same values and says what is wrong.
 */
export function addPlainRow(
  text: string,
  { begins, ends, numbers }: PlainCells,
  { fields, store }: RowPlace,
): boolean {
  const row = store.count;
  let filled = false;
  for (let i = 0; i < fields.length; i++) {
    const field = fields[i]!;
    if (field.kind === "number") {
      if (field.unit === undefined) return false;
      const value = field.unit.toSI(numbers[field.index]!);
      if (!fits(value, field)) return false;
      field.values[row] = value;
      filled = true;
    } else {
      const begin = begins[field.index]!;
      const end = ends[field.index]!;
      if (begin === end) {
        if (!field.column.optional) return false;
        field.values[row] = undefined;
        continue;
      }
      // The same name mostly stands in the row above: one text for both saves time and memory.
      const above = field.values[row - 1];
      const same = above !== undefined && end - begin === above.length &&
        text.startsWith(above, begin);
      const cell = same ? above : text.slice(begin, end);
      if (!same && !(isPlain(cell) && isAccepted(cell, field))) return false;
      field.values[row] = cell;
      filled = true;
    }
  }
  // A row of empty cells may be a blank row.
  return filled;
}

/** Whether a text stands for itself: no blanks around it, no guard and no formula. */
function isPlain(cell: string): boolean {
  const first = cell.charCodeAt(0);

  const last = cell.charCodeAt(cell.length - 1);
  return first > 32 && first < 127 && first !== 39 && first !== 61 && last > 32 && last < 127;
}

function fits(value: number, field: NumberField): boolean {
  return value > field.above && value >= field.min && value <= field.max && value < Infinity &&
    (!field.whole || Number.isInteger(value));
}

function fault(cell: string, wanted: string, { field, place }: Cell): void {
  const { store, line } = place;
  store.badRows.add(store.count);
  store.faults.push({ argument: field.heading, value: cell, wanted, line });
}

interface Cell {
  readonly field: Field;
  readonly place: RowPlace;
}

const certainComma = /^[+-]?(?:\d*,(?:\d{1,2}|\d{4,})|0,\d+|\d{4,},\d+)$/;

/** The figure of a cell in SI; NaN for an empty cell, and for a bad one. */
function numberOf(text: string, field: NumberField, place: RowPlace): number {
  const cell = text.trim();
  if (cell === "" && field.column.optional) return NaN;
  const { store } = place;
  const read = readNumberCell(cell, store.decimal);
  if (!("value" in read)) {
    if (store.decimal === "." && certainComma.test(cell)) store.decimalCommas++;
    fault(cell, read.wanted, { field, place });
    return NaN;
  }
  // Without a unit, of which there is a fault already, limits mean nothing.
  if (field.unit === undefined) return read.value;
  const value = field.unit.toSI(read.value);
  if (fits(value, field)) return value;
  fault(cell, wantedRange(field), { field, place });
  return NaN;
}

function wantedRange({ column, unit }: NumberField): string {
  const shown = (limit: number): string => {
    const inUnit = unit === undefined ? limit : unit.fromSI(limit);
    const name = unit === undefined || unit.unit === "1" || limit === 0 ? "" : ` ${unit.unit}`;
    return `${Number(inUnit.toPrecision(6))}${name}`;
  };
  const { above, min, max } = column;
  const limits: string[] = [];
  if (above !== undefined) limits.push(`above ${shown(above)}`);
  if (min !== undefined) limits.push(`${shown(min)} or above`);
  if (max !== undefined) limits.push(`${shown(max)} or below`);
  if (limits.length === 0) limits.push("within the range of numbers");
  return `must be ${column.whole === true ? "a whole number, " : ""}${limits.join(" and ")}`;
}

function textOf(text: string, field: TextField, place: RowPlace): string | undefined {
  const cell = unguarded(text).trim();
  const { column } = field;
  let wanted: string | undefined;
  if (cell === "") {
    if (column.optional) return undefined;
    wanted = "must not be empty";
  } else if (column.kind === "text" && !column.free && text.trimStart().startsWith("=")) {
    wanted = "must be the text itself, not a formula";
  } else if (!isAccepted(cell, field)) {
    wanted = column.kind === "choice"
      ? `must be one of: ${column.words.join(", ")}`
      : column.day === true
      ? wantedDay
      : column.known?.wanted ?? "must be a known name";
  }
  if (wanted === undefined) return cell;
  fault(text.trim(), wanted, { field, place });
  return undefined;
}

function isAccepted(cell: string, { column }: TextField): boolean {
  if (column.kind === "choice") return column.words.includes(cell);
  if (column.day === true && !isDay(cell)) return false;
  return column.known === undefined || column.known.names.has(cell);
}

const wantedDay = "must be written year-month-day, such as 2026-04-18: in the spreadsheet give " +
  "the column the format YYYY-MM-DD, or text, and save again";

/** Whether a text is a day of the calendar, written year-month-day. */
function isDay(cell: string): boolean {
  if (!/^\d{4}-\d\d-\d\d$/.test(cell)) return false;
  const time = Date.parse(`${cell}T00:00:00Z`);
  // The 30th of February would be taken for a day of March.
  return Number.isFinite(time) && new Date(time).toISOString().startsWith(cell);
}
