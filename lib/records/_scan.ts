// @ts-types="./_papaparse.d.ts"
import Papa, { type ParseError } from "papaparse";
import type { Fault } from "../check/mod.ts";
import type { Columns } from "./column.ts";
import { findDelimiter } from "./delimiter.ts";
import { addRow, type Field, makeFields, type Store, unitsRow } from "./_fields.ts";
import { readHeadings } from "./_heading.ts";
import type { LeftOut } from "./left_out.ts";
import type { DecimalSign } from "./number_cell.ts";
import { prepare, type Prepared } from "./_prepare.ts";

/** How far the reading of a table has come. */
export interface Progress {
  /** Rows read so far [1]. */
  readonly rows: number;
  /** Share of the text that is read [1]. */
  readonly share: number;
}

/** How a table is to be read. */
export interface ScanOptions {
  /** The columns that it must hold. */
  readonly columns: Columns;
  /** The decimal sign; found out if left out. */
  readonly decimal?: DecimalSign;
  /** The delimiter; found out if left out. */
  readonly delimiter?: string;
  /** Lines above the headings that are to be skipped. */
  readonly skipLines?: number;
  /** Called every 100 000 rows. */
  readonly onProgress?: (progress: Progress) => void;
}

/** A table as read, faults and all. */
export interface Scan {
  /** The columns that the file has, with their cells. */
  readonly fields: ReadonlyMap<string, Field>;
  /** Number of data rows. */
  readonly count: number;
  /** The line at which each row begins. */
  readonly lines: Uint32Array;
  /** The line of the headings. */
  readonly headingLine: number;
  /** Rows that have a fault: their cells hold placeholders. */
  readonly badRows: ReadonlySet<number>;
  /** Everything that is wrong, in the order of the file, without the file's name. */
  readonly faults: readonly Fault[];
  /** Everything that is no data. */
  readonly leftOut: readonly LeftOut[];
  /** What the reader should know. */
  readonly notes: readonly string[];
}

/** Beyond this many faults the file is not worth reading on. */
const mostFaults = 100_000;
const progressEvery = 100_000;
const hash = 35;

/**
 * Reads a table with one decimal sign, and once more with the other if the cells say so: the sign
 * is a comma only if no cell can then mean two things.
 */
export function scan(source: string, options: ScanOptions): Scan {
  const prepared = prepare(source, options.skipLines ?? 0);
  const delimiter = options.delimiter ?? prepared.separator ?? findDelimiter(prepared.text);
  const first = scanOnce(prepared, { ...options, delimiter, decimal: options.decimal ?? "." });
  if (options.decimal !== undefined || delimiter === undefined || delimiter === ",") return first;
  if (first.decimalCommas === 0) return first;
  const second = scanOnce(prepared, { ...options, delimiter, decimal: "," });
  return {
    ...second,
    notes: [...second.notes, "the decimal sign is a comma: 10,5 is read as 10.5"],
  };
}

interface Settings extends Omit<ScanOptions, "delimiter" | "decimal"> {
  readonly decimal: DecimalSign;
  readonly delimiter: string | undefined;
}

type Counted = Scan & { readonly decimalCommas: number };

function scanOnce(prepared: Prepared, settings: Settings): Counted {
  const { columns, decimal, onProgress } = settings;
  const { text } = prepared;
  const store: Store = { count: 0, faults: [], badRows: new Set(), decimal, decimalCommas: 0 };
  const { faults } = store;
  const leftOut = [...prepared.leftOut];
  let fields: readonly Field[] = [];
  let others: Map<number, string> = new Map();
  let lines = new Uint32Array(256);
  let width = 0;
  let headingLine = 0;
  let maybeUnits = false;
  let position = 0;
  let line = prepared.firstLine;

  const leaveOut = (reason: LeftOut["reason"], what = ""): void => {
    const last = leftOut.at(-1);
    if (reason === "blank row" && last?.reason === reason && last.lastLine === line - 1) {
      leftOut[leftOut.length - 1] = { ...last, lastLine: line, count: last.count + 1 };
    } else leftOut.push({ reason, line, lastLine: line, count: 1, text: what });
  };
  const passComments = (): void => {
    while (text.charCodeAt(position) === hash) {
      const end = text.indexOf("\n", position);
      const stop = end < 0 ? text.length : end;
      leaveOut("comment", text.slice(position, stop).slice(0, 120));
      position = stop + 1;
      line++;
    }
  };
  const heading = (cells: readonly string[]): void => {
    const found = readHeadings(cells, columns);
    width = cells.length;
    headingLine = line;
    for (const fault of found.faults) faults.push({ ...fault, line });
    fields = makeFields(found.matches, store, line);
    others = new Map(found.unknown);
    maybeUnits = true;
  };
  const data = (cells: readonly string[]): void => {
    if (maybeUnits) {
      maybeUnits = false;
      if (unitsRow(cells, { fields, store, line, headingLine })) return;
    }
    if (store.count === lines.length) lines = grown(lines);
    lines[store.count] = line;
    if (cells.length !== width) {
      faults.push(ragged(cells, width, line));
      store.badRows.add(store.count);
      for (const field of fields) field.pushPlaceholder(store.count);
      store.count++;
      return;
    }
    for (const [index, name] of others) {
      const cell = cells[index]!.trim();
      if (cell === "" || name.startsWith("x_")) continue;
      faults.push(unknownColumn(name, cell, { line, columns }));
      others.delete(index);
    }
    addRow(cells, { fields, store, line });
    store.count++;
    if (store.count % progressEvery === 0) {
      onProgress?.({ rows: store.count, share: position / text.length });
    }
  };

  if (prepared.fault !== undefined) faults.push(prepared.fault);
  else if (text.trim() !== "") {
    Papa.parse(text, {
      delimiter: settings.delimiter ?? (decimal === "," ? ";" : ","),
      newline: "\n",
      comments: "#",
      step({ data: cells, errors, meta }, parser): void {
        passComments();
        const broken = errors[0];
        if (broken !== undefined) {
          faults.push(brokenQuote(broken, text, prepared.firstLine));
          parser.abort();
          return;
        }
        if (isBlank(cells)) {
          if (position < text.length) leaveOut("blank row");
        } else if (width === 0) heading(cells);
        else data(cells);
        for (let at; (at = text.indexOf("\n", position)) >= 0 && at < meta.cursor;) {
          position = at + 1;
          line++;
        }
        position = meta.cursor;
        if (faults.length > mostFaults) {
          faults.push({
            argument: "number of faults",
            value: faults.length,
            wanted: "must be mended before the rest is read",
            line,
          });
          parser.abort();
        }
      },
    });
    passComments();
  }

  for (const [, name] of others) {
    if (name === "") continue;
    leftOut.push({
      reason: name.startsWith("x_") ? "column marked x_" : "empty column",
      line: headingLine,
      lastLine: headingLine,
      count: 1,
      text: name,
    });
  }
  if (faults.length === 0 && store.count === 0) faults.push(noRows(width, headingLine || line));
  return {
    fields: new Map(fields.map((field) => [field.name, field])),
    count: store.count,
    lines: lines.slice(0, store.count),
    headingLine,
    badRows: store.badRows,
    faults,
    leftOut,
    notes: [],
    decimalCommas: store.decimalCommas,
  };
}

function isBlank(cells: readonly string[]): boolean {
  for (let i = 0; i < cells.length; i++) {
    const cell = cells[i]!;
    if (cell !== "" && cell.trim() !== "") return false;
  }
  return true;
}

function grown(lines: Uint32Array<ArrayBuffer>): Uint32Array<ArrayBuffer> {
  const larger = new Uint32Array(2 * lines.length);
  larger.set(lines);
  return larger;
}

function noRows(width: number, line: number): Fault {
  return width === 0
    ? {
      argument: "the table",
      value: "",
      wanted: "must hold a row of headings and one row or more of data",
      line,
    }
    : { argument: "number of data rows", value: 0, wanted: "must be 1 or more", line };
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

function unknownColumn(
  name: string,
  cell: string,
  { line, columns }: { readonly line: number; readonly columns: Columns },
): Fault {
  return name === ""
    ? { argument: "cell under an empty heading", value: cell, wanted: "must have a heading", line }
    : {
      argument: "column",
      value: name,
      wanted: `must be one of ${Object.keys(columns).join(", ")}, ` +
        "or begin with x_ for a column of your own",
      line,
    };
}

function brokenQuote(error: ParseError, text: string, firstLine: number): Fault {
  const at = error.index ?? 0;
  const line = firstLine + text.slice(0, at).split("\n").length - 1;
  const end = text.indexOf("\n", at);
  return {
    argument: "quoted cell",
    value: text.slice(at, end < 0 ? undefined : end),
    wanted: error.code === "MissingQuotes"
      ? 'must be closed by a " at its end'
      : 'must have nothing behind its closing "; a " within it is written twice',
    line,
  };
}
