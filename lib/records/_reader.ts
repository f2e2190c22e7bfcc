import type { Fault } from "../check/mod.ts";
import type { Columns } from "./column.ts";
import { addPlainRow, addRow } from "./_cells.ts";
import { type Field, makeFields, setPlaceholders, type Store, unitsRow } from "./_fields.ts";
import { meantHeading, readHeadings } from "./_heading.ts";
import type { LeftOut } from "./left_out.ts";
import type { DecimalSign } from "./number_cell.ts";
import type { ParseError } from "./_papaparse.d.ts";
import { lineEnds, type Prepared } from "./_prepare.ts";
import type { RowTaker } from "./_rows.ts";
import type { Progress, Scan } from "./_scan.ts";

/** A table while it is read. */
export interface Reader {
  readonly text: string;
  /** Line of the file at which the text begins. */
  readonly firstLine: number;
  readonly columns: Columns;
  readonly delimiter: string;
  readonly onProgress: ((progress: Progress) => void) | undefined;
  readonly store: Store;
  readonly leftOut: LeftOut[];
  /** The blank lines behind the last row. */
  readonly blankEnd: LeftOut | undefined;
  readonly notes: string[];
  /** The columns that the schema knows; none before the heading row. */
  fields: readonly Field[];
  /** Columns that the schema does not know and that are empty so far, by place. */
  unknown: Map<number, string>;
  /** Cells of the heading row; 0 before it. */
  width: number;
  headingLine: number;
  headingsSound: boolean;
  /** Whether the next row can be the row of units. */
  expectUnits: boolean;
  /** Line of each row. */
  readonly lines: Uint32Array;
  /** Line of the row that is being read. */
  line: number;
  stopped: boolean;
}

/** Beyond this many faults the file is not worth reading on. */
const mostFaults = 100_000;
const progressEvery = 100_000;
const longestComment = 120;

/** A reader at the beginning of the text. */
export function startReader(
  { text, firstLine, leftOut, blankEnd }: Prepared,
  { columns, delimiter, decimal, onProgress }: {
    readonly columns: Columns;
    readonly delimiter: string;
    readonly decimal: DecimalSign;
    readonly onProgress?: (progress: Progress) => void;
  },
): Reader {
  return {
    text,
    firstLine,
    columns,
    delimiter,
    onProgress,
    store: { count: 0, faults: [], badRows: new Set(), decimal, decimalCommas: 0 },
    leftOut: [...leftOut],
    blankEnd,
    notes: [],
    fields: [],
    unknown: new Map(),
    width: 0,
    headingLine: 0,
    headingsSound: true,
    expectUnits: false,
    lines: new Uint32Array(lineEnds(text)),
    line: firstLine,
    stopped: false,
  };
}

/** The reader as one that takes rows. */
export function takerOf(reader: Reader): RowTaker {
  const { store, text } = reader;
  return {
    comments: (begin) => passComments(reader, begin),
    row(cells, begin, end): void {
      takeRow(reader, cells, end);
      for (let at = begin; (at = text.indexOf("\n", at)) >= 0 && at < end; at++) reader.line++;
    },
    plainRow(cells, end): boolean {
      if (cells.width !== reader.width || reader.unknown.size > 0) return false;
      if (!addPlainRow(text, cells, reader)) return false;
      countRow(reader, end);
      reader.line++;
      return true;
    },
    broken(error, behindQuote): void {
      const at = behindQuote - 1;
      const line = reader.firstLine + text.slice(0, at).split("\n").length - 1;
      store.faults.push(brokenQuote(error, { text, at, line }));
      reader.stopped = true;
    },
    width: () => reader.expectUnits ? 0 : reader.width,
    done: () => reader.stopped,
  };
}

function passComments(reader: Reader, begin: number): number {
  const { text } = reader;
  let position = begin;
  while (text.charCodeAt(position) === 35) {
    const end = text.indexOf("\n", position);
    takeComment(reader, text.slice(position, end));
    position = end + 1;
    reader.line++;
  }
  return position;
}

const spreadsheetError = /^#(?:DIV\/0!|N\/A|NAME\?|NULL!|NUM!|REF!|VALUE!)/;

/** A comment is left out; what could as well be a row is not. */
function takeComment(reader: Reader, comment: string): void {
  const { store, line, width, delimiter } = reader;
  const cells = comment.split(delimiter);
  const isError = spreadsheetError.test(comment);
  if (width > 0 && (isError || (width > 1 && cells.length === width && /^#\S/.test(comment)))) {
    store.faults.push({
      argument: "first cell",
      value: cells[0],
      wanted: isError
        ? "must be a figure or a name, not a spreadsheet's error"
        : "must not begin with #: put the cell in quotes, or a blank behind the # of a comment",
      line,
    });
  } else leaveOut(reader, "comment", comment.slice(0, longestComment));
}

function leaveOut({ leftOut, line }: Reader, reason: LeftOut["reason"], text = ""): void {
  const last = leftOut.at(-1);
  if (reason === "blank row" && last?.reason === reason && last.lastLine === line - 1) {
    leftOut[leftOut.length - 1] = { ...last, lastLine: line, count: last.count + 1 };
  } else leftOut.push({ reason, line, lastLine: line, count: 1, text });
}

function takeRow(reader: Reader, cells: readonly string[], end: number): void {
  const { store, line } = reader;
  if (isBlank(cells)) leaveOut(reader, "blank row");
  else if (reader.width === 0) takeHeadings(reader, cells);
  else if (!(reader.expectUnits && takeUnits(reader, cells))) {
    if (cells.length === reader.width) {
      checkUnknown(reader, cells);
      addRow(cells, reader);
    } else {
      store.faults.push(ragged(cells, reader.width, line));
      store.badRows.add(store.count);
      setPlaceholders(reader.fields, store.count);
    }
    countRow(reader, end);
  }
  if (store.faults.length > mostFaults) {
    const wanted = "must be mended before the rest is read";
    store.faults.push({ argument: "number of faults", value: store.faults.length, wanted, line });
    reader.stopped = true;
  }
}

function isBlank(cells: readonly string[]): boolean {
  return cells.every((cell) => cell === "" || cell.trim() === "");
}

function takeHeadings(reader: Reader, cells: readonly string[]): void {
  const { store, columns, line } = reader;
  const found = readHeadings(cells, columns);
  reader.width = cells.length;
  reader.headingLine = line;
  for (const fault of found.faults) store.faults.push({ ...fault, line });
  reader.fields = makeFields(found.matches, { store, line, mostRows: reader.lines.length });
  reader.unknown = new Map(found.unknown);
  for (const [index, name] of found.unknown) {
    if (!name.startsWith("x_")) continue;
    reader.unknown.delete(index);
    leaveOut(reader, "column marked x_", name);
  }
  reader.headingsSound = store.faults.length === 0;
  reader.stopped = found.hopeless;
  reader.expectUnits = true;
}

function takeUnits(reader: Reader, cells: readonly string[]): boolean {
  reader.expectUnits = false;
  const before = reader.store.faults.length;
  const isUnits = unitsRow(cells, reader);
  if (reader.store.faults.length > before) reader.headingsSound = false;
  if (isUnits) reader.notes.push(`line ${reader.line} is read as the row of units`);
  return isUnits;
}

function countRow(reader: Reader, end: number): void {
  const { store, lines, text } = reader;
  lines[store.count] = reader.line;
  store.count++;
  if (store.count % progressEvery === 0) {
    reader.onProgress?.({ rows: store.count, share: end / text.length });
  }
}

/** A column that the schema does not know may be there while it is empty. */
function checkUnknown(reader: Reader, cells: readonly string[]): void {
  const { unknown, store, line } = reader;
  for (const [index, name] of unknown) {
    const cell = cells[index]!.trim();
    if (cell === "") continue;
    unknown.delete(index);
    store.faults.push(name === "" ? emptyHeading(cell, line) : unknownColumn(reader, name));
  }
}

function unknownColumn({ columns, fields, headingLine }: Reader, value: string): Fault {
  const free = Object.entries(columns).filter(([name]) => fields.every((f) => f.name !== name));
  const near = meantHeading(value, Object.fromEntries(free));
  const meant = near === undefined ? "" : `did you mean ${near.heading}? It `;
  const wanted = `${meant}must be one of ${Object.keys(columns).join(", ")}, ` +
    "or begin with x_ for a column of your own";
  return { argument: "column", value, wanted, line: headingLine };
}

function emptyHeading(value: string, line: number): Fault {
  return { argument: "cell under an empty heading", value, wanted: "must have a heading", line };
}

function ragged(cells: readonly string[], width: number, line: number): Fault {
  const longer = cells.length > width
    ? ' (a number needs a decimal point; a text with a comma needs "quotes")'
    : "";
  return {
    argument: "number of cells in the row",
    value: cells.length,
    wanted: `must be ${width} as in the heading row${longer}`,
    line,
  };
}

function brokenQuote(
  error: ParseError,
  { text, at, line }: { readonly text: string; readonly at: number; readonly line: number },
): Fault {
  return {
    argument: "quoted cell",
    value: text.slice(at, text.indexOf("\n", at)),
    wanted: error.code === "MissingQuotes"
      ? 'must be closed by a " at its end'
      : 'must have nothing behind its closing "; a " within it is written twice',
    line,
  };
}

/** The table as read. */
export function finish(reader: Reader): Scan {
  const { store, leftOut, fields, headingLine, headingsSound, notes } = reader;
  if (reader.blankEnd !== undefined) leftOut.push(reader.blankEnd);
  for (const name of reader.unknown.values()) {
    if (name === "") continue;
    const line = headingLine;
    leftOut.push({ reason: "empty column", line, lastLine: line, count: 1, text: name });
  }
  if (store.faults.length === 0 && store.count === 0) store.faults.push(noRows(reader));
  return {
    fields: new Map(fields.map((field) => [field.name, field])),
    count: store.count,
    lines: reader.lines.subarray(0, store.count),
    headingsSound,
    badRows: store.badRows,
    faults: store.faults,
    leftOut,
    notes,
  };
}

function noRows({ width, headingLine, line }: Reader): Fault {
  if (width > 0) {
    const wanted = "must be 1 or more";
    return { argument: "number of data rows", value: 0, wanted, line: headingLine };
  }
  const wanted = "must hold a row of headings and one row or more of data";
  return { argument: "the table", value: "", wanted, line };
}
