// @ts-types="./_papaparse.d.ts"
import Papa, { type ParseError } from "papaparse";

/** Who takes the rows of a table. */
export interface RowTaker {
  /** Takes the comments that begin here, if any; returns the place behind them. */
  comments(begin: number): number;
  /** Takes a row; `begin` and `end` are its place in the text, its line end included. */
  row(cells: readonly string[], begin: number, end: number): void;
  /** Takes a quote that does not close, or closes too early: reading ends with it. */
  broken(error: ParseError, behindQuote: number): void;
  /** Number of cells in a row, once rows may come by `plainRow`; 0 before. */
  width(): number;
  /** Takes a row that the plain scan has cut, or leaves it to `row`. */
  plainRow(cells: PlainCells, end: number): boolean;
  /** Whether reading ends here. */
  done(): boolean;
}

/** The cells of a row that is cut by the plain scan. */
export interface PlainCells {
  /** Number of cells. */
  width: number;
  /** Place in the text at which each cell begins, behind its quote if it has one. */
  readonly begins: Int32Array;
  /** Place at which each cell ends. */
  readonly ends: Int32Array;
  /** Each cell as a number, NaN if it is none of the plainest kind. */
  readonly numbers: Float64Array;
}

const quote = 34;
const newline = 10;
const minus = 45;
const zero = 48;
const mostDigits = 15;
/** Powers of ten that a double holds exactly. */
const powers = Float64Array.from({ length: mostDigits + 1 }, (_, i) => 10 ** i);

/**
 * Gives each row of a table to its taker; the text has `\n` at the end of each line.
 *
 * papaparse is the parser. Rows that need none (no line end and no doubled quote in a cell) are cut
 * by a plain scan, which takes a third of the time: there may be a million of those. At any other
 * row papaparse takes over, for one row, then two, four and so on, so that a table full of them is
 * not parsed in little pieces.
 */
export function eachRow(
  text: string,
  { delimiter, decimal }: Omit<Task, "taker">,
  taker: RowTaker,
): void {
  let position = taker.comments(0);
  let most = 1;
  while (position < text.length && !taker.done()) {
    if (taker.width() > 0) position = plainRows(text, position, { delimiter, decimal, taker });
    if (position >= text.length || taker.done()) break;
    position = parsedRows(text, position, { delimiter, taker, most });
    if (taker.width() > 0) most *= 2;
  }
}

interface Task {
  readonly delimiter: string;
  readonly decimal: string;
  readonly taker: RowTaker;
}

/** Rows by papaparse; returns the place behind the last row. */
function parsedRows(
  text: string,
  begin: number,
  { delimiter, taker, most }: Omit<Task, "decimal"> & { readonly most: number },
): number {
  let position = begin;
  let count = 0;
  // Behind a last line end papaparse sees an empty row more.
  const last = text.length - 1;
  Papa.parse(text.slice(begin, last), {
    delimiter,
    newline: "\n",
    comments: "#",
    // Its other mode splits the whole text at once.
    fastMode: false,
    step({ data, errors, meta }, parser): void {
      const cursor = begin + meta.cursor;
      const end = cursor === last ? text.length : cursor;
      const error = errors[0];
      if (error !== undefined) taker.broken(error, begin + (error.index ?? 0));
      else taker.row(data, position, end);
      position = taker.done() ? end : taker.comments(end);
      count++;
      if (taker.done() || (taker.width() > 0 && count >= most)) parser.abort();
    },
  });
  // No row is left where there is nothing but the line end.
  return count === 0 ? text.length : position;
}

/** Rows by the plain scan; returns the place of the first row that is not plain. */
function plainRows(text: string, begin: number, { delimiter, decimal, taker }: Task): number {
  const width = taker.width();
  const signs: Signs = {
    delimiter: delimiter.charCodeAt(0),
    decimal: decimal.charCodeAt(0),
    cells: {
      width: 0,
      begins: new Int32Array(width),
      ends: new Int32Array(width),
      numbers: new Float64Array(width),
    },
  };
  let position = begin;
  while (position < text.length && !taker.done()) {
    const end = cutRow(text, position, signs);
    if (end < 0) break;
    if (!taker.plainRow(signs.cells, end + 1)) {
      taker.row(textsOf(text, signs.cells), position, end + 1);
    }
    position = taker.comments(end + 1);
  }
  return position;
}

function textsOf(text: string, { width, begins, ends }: PlainCells): readonly string[] {
  return Array.from({ length: width }, (_, i) => text.slice(begins[i], ends[i]));
}

interface Signs {
  readonly delimiter: number;
  readonly decimal: number;
  /** The row that was cut last. */
  readonly cells: PlainCells;
}

/**
 * Cuts the row that begins here. Returns the place of its line end, or -1 if the row has more
 * cells than the headings, or a quoted cell that is not plain.
 */
function cutRow(text: string, begin: number, signs: Signs): number {
  const { delimiter, cells } = signs;
  const most = cells.begins.length;
  cells.width = 0;
  for (let i = begin; cells.width < most; i++) {
    const quoted = text.charCodeAt(i) === quote;
    i = quoted ? cutQuoted(text, i + 1, signs) : cutPlain(text, i, signs);
    if (i < 0) return -1;
    cells.width++;
    const sign = text.charCodeAt(i);
    if (sign === newline) return i;
    if (sign !== delimiter) return -1;
  }
  return -1;
}

/** Cuts a cell without quotes, and reads it as a number on the way; returns the place of its end. */
function cutPlain(text: string, begin: number, { delimiter, decimal, cells }: Signs): number {
  let i = begin;
  let sign = text.charCodeAt(i);
  const negative = sign === minus;
  if (negative) sign = text.charCodeAt(++i);
  let value = 0;
  let digits = 0;
  let whole = -1;
  for (;;) {
    const digit = sign - zero;
    if (digit >= 0 && digit <= 9) {
      value = value * 10 + digit;
      digits++;
    } else if (sign === delimiter || sign === newline) break;
    else if (sign === decimal && whole < 0 && digits > 0) whole = digits;
    else {
      // No plain number: no more than its end is wanted.
      digits = 0;
      while (sign !== delimiter && sign !== newline) sign = text.charCodeAt(++i);
      break;
    }
    sign = text.charCodeAt(++i);
  }
  // Both parts of the quotient are doubles without error: it is rounded once, as by `Number`.
  if (digits === 0 || digits > mostDigits || whole === digits) value = NaN;
  else if (whole >= 0) value /= powers[digits - whole]!;
  setCell(cells, begin, i);
  cells.numbers[cells.width] = negative ? -value : value;
  return i;
}

/**
 * Cuts a cell behind its opening quote; returns the place behind the closing one, or -1 if there
 * is a line end before it. A doubled quote shows in the sign behind, which is no delimiter.
 */
function cutQuoted(text: string, begin: number, { cells }: Signs): number {
  let end = begin;
  let sign: number;
  while ((sign = text.charCodeAt(end)) !== quote && sign !== newline) end++;
  if (sign === newline) return -1;
  setCell(cells, begin, end);
  cells.numbers[cells.width] = NaN;
  return end + 1;
}

function setCell({ begins, ends, width }: PlainCells, begin: number, end: number): void {
  begins[width] = begin;
  ends[width] = end;
}
