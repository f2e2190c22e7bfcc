import { type Checks } from "../check/mod.ts";
import { checksForShowing, escapeHtml, numberText, objectOf, proseHtml, textOf } from "./_html.ts";
import { type Displayed, displayed } from "./display.ts";

/** One column of a table. */
export interface Column<Row> {
  /** The field of a row that it shows. */
  readonly key: keyof Row & string;
  /** What stands at its head; the key if there is none. */
  readonly heading?: string;
  /** Unit of its numbers, shown in the head. */
  readonly unit?: string;
  /** Where its cells stand; right if every value is a number. */
  readonly align?: "left" | "right";
  /** How a value is written; numbers get four digits if there is none. */
  readonly format?: (value: Row[keyof Row & string], row: Row) => string;
}

/** What a table shows of its rows. */
export interface TableOptions<Row> {
  /** The columns, left to right; the first names the row. */
  readonly columns: readonly Column<Row>[];
  /** What the table shows, in a sentence above it. */
  readonly caption: string;
}

/**
 * A table of rows, as HTML and as aligned text. A missing value shows as a dash.
 *
 * @param rows The rows, top to bottom; none is allowed and is said.
 * @param options Columns and caption.
 * @returns A value for the last line of a notebook cell.
 * @throws {InputError} If there is no column, the caption is blank, or a value is NaN or Infinity.
 *
 * @example
 * ```ts
 * import { consoleDisplay, table } from "@laminate/notebooks/notebook";
 * import { assertEquals } from "@std/assert";
 *
 * const shown = table([{ part: "hatch", mass: 1.25 }], {
 *   caption: "Parts weighed",
 *   columns: [{ key: "part", heading: "Part" }, { key: "mass", heading: "Mass", unit: "kg" }],
 * });
 * assertEquals(shown[consoleDisplay](), "Parts weighed\nPart   Mass [kg]\nhatch       1.25");
 * ```
 */
export function table<Row extends object>(
  rows: readonly Row[],
  options: TableOptions<Row>,
): Displayed {
  const check = checksForShowing("table");
  check.list("rows", rows, 0);
  const { columns, caption } = objectOf(check, "options", options);
  textOf(check, "caption", caption);
  const shown = check.list("columns", columns).map((column) => showColumn(check, column, rows));
  return displayed({
    "text/plain": tableText(caption, shown, rows.length),
    "text/html": tableHtml(caption, shown, rows.length),
  });
}

interface ShownColumn {
  readonly heading: string;
  readonly right: boolean;
  readonly cells: readonly string[];
}

function showColumn<Row extends object>(
  check: Checks,
  column: Column<Row>,
  rows: readonly Row[],
): ShownColumn {
  const { key, heading = key, unit, format } = objectOf(check, "column", column);
  if (format !== undefined && typeof format !== "function") {
    check.refuse(`format of ${key}`, format, "must be a function of the value");
  }
  textOf(check, "heading", heading);
  const cells = rows.map((row, i) => {
    const value = objectOf(check, `row ${i + 1}`, row)[key];
    const name = `${heading} in row ${i + 1}`;
    if (typeof value === "number") check.finite(name, value, unit);
    if (value === undefined || value === null) return "\u2013";
    if (format !== undefined) return String(format(value, row));
    return typeof value === "number" ? numberText(check, name, value) : String(value);
  });
  const allNumbers = rows.some((row) => typeof row[key] === "number") &&
    rows.every((row) => typeof (row[key] ?? 0) === "number");
  return {
    heading: unit === undefined || unit === "" ? heading : `${heading} [${unit}]`,
    right: (column.align ?? (allNumbers ? "right" : "left")) === "right",
    cells,
  };
}

function tableText(caption: string, columns: readonly ShownColumn[], count: number): string {
  const padded = columns.map(({ heading, right, cells }) => {
    const lines = [heading, ...cells].map((line) => line.replace(/\s*[\r\n]+\s*/g, " "));
    const width = Math.max(...lines.map((line) => [...line].length));
    return lines.map((line) => {
      const space = " ".repeat(width - [...line].length);
      return right ? space + line : line + space;
    });
  });
  const lines = padded[0]!.map((_, i) => padded.map((column) => column[i]).join("  ").trimEnd());
  return [caption, ...lines, ...(count === 0 ? ["(no rows)"] : [])].join("\n");
}

function tableHtml(caption: string, columns: readonly ShownColumn[], count: number): string {
  const style = (right: boolean): string =>
    right ? ' class="number" style="text-align:right"' : ' style="text-align:left"';
  const head = columns.map(({ heading, right }) =>
    `<th scope="col"${style(right)}>${escapeHtml(heading)}</th>`
  ).join("");
  const body = Array.from(
    { length: count },
    (_, i) =>
      `<tr>${
        columns.map(({ right, cells }, j) =>
          j === 0
            ? `<th scope="row"${style(right)}>${escapeHtml(unparted(cells[i]!))}</th>`
            : `<td${style(right)}>${escapeHtml(unparted(cells[i]!))}</td>`
        ).join("")
      }</tr>\n`,
  ).join("");
  const none = count === 0
    ? `<tr><td colspan="${columns.length}" style="text-align:left">no rows</td></tr>\n`
    : "";
  return `<table>\n<caption style="text-align:left">${proseHtml(caption)}</caption>\n` +
    `<thead>\n<tr>${head}</tr>\n</thead>\n<tbody>\n${body}${none}</tbody>\n</table>`;
}

/** A cell in which no line ends between a number, its uncertainty and its unit. */
function unparted(cell: string): string {
  return cell.replace(/ (?=± )|(?<=±) |(?<=\d\)?) (?=[%°A-Za-zµ])/g, "\u00a0");
}
