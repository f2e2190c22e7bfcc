import type { Fault } from "../check/mod.ts";
import type { Columns } from "./column.ts";
import { findDelimiter } from "./delimiter.ts";
import type { Field } from "./_fields.ts";
import type { LeftOut } from "./left_out.ts";
import type { DecimalSign } from "./number_cell.ts";
import { prepare, type Prepared } from "./_prepare.ts";
import { finish, type Reader, startReader, takerOf } from "./_reader.ts";
import { eachRow } from "./_rows.ts";

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
  /** Whether the headings are as they must be. */
  readonly headingsSound: boolean;
  /** Rows that have a fault: their cells hold placeholders. */
  readonly badRows: ReadonlySet<number>;
  /** Everything that is wrong, in the order of the file, without the file's name. */
  readonly faults: readonly Fault[];
  /** Everything that is no data. */
  readonly leftOut: readonly LeftOut[];
  /** What the reader should know. */
  readonly notes: readonly string[];
}

/**
 * Reads a table with a decimal point, and once more with a comma if the cells say so: the comma
 * is the decimal sign only where it cannot be a delimiter, and some number can mean nothing else.
 */
export function scan(source: string, options: ScanOptions): Scan {
  const prepared = prepare(source, options.skipLines ?? 0);
  const delimiter = options.delimiter ?? prepared.separator ?? findDelimiter(prepared.text);
  const settings = { ...options, delimiter, decimal: options.decimal ?? "." } as const;
  const first = scanOnce(prepared, settings);
  const commas = first.store.decimalCommas > 0;
  if (options.decimal !== undefined || delimiter === undefined || delimiter === "," || !commas) {
    return finish(first);
  }
  const second = scanOnce(prepared, { ...settings, decimal: "," });
  second.notes.push("the decimal sign is a comma: 10,5 is read as 10.5");
  return finish(second);
}

function scanOnce(
  prepared: Prepared,
  settings: Omit<ScanOptions, "delimiter" | "decimal"> & {
    readonly decimal: DecimalSign;
    readonly delimiter: string | undefined;
  },
): Reader {
  // A table of one column: a sign that no number holds.
  const delimiter = settings.delimiter ?? (settings.decimal === "," ? ";" : ",");
  const reader = startReader(prepared, { ...settings, delimiter });
  if (prepared.fault !== undefined) reader.store.faults.push(prepared.fault);
  else if (prepared.text.trim() !== "") {
    eachRow(prepared.text, { delimiter, decimal: settings.decimal }, takerOf(reader));
  }
  return reader;
}
