/** The sign between whole and fraction in the numbers of a file. */
export type DecimalSign = "." | ",";

/** A cell read as a number: the number, or what would be accepted instead. */
export type NumberCell = { readonly value: number } | { readonly wanted: string };

const numberWithPoint = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,4})?$/;
const numberWithComma = /^[+-]?(?:\d+(?:,\d+)?|,\d+)(?:[eE][+-]?\d{1,4})?$/;

/**
 * A cell as a number, strictly: the cell holds one number and nothing else.
 *
 * Digits with one decimal sign, a leading sign and an exponent are read.
 *
 * Range: refused are thousands separators, units, percent signs, formulas, hexadecimal, NaN and
 * Infinity, and numbers that a double cannot hold
 *
 * @param text The cell as it stands in the file.
 * @param decimal The decimal sign of the file.
 * @returns The number, or what would be accepted.
 *
 * @example
 * ```ts
 * import { readNumberCell } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(readNumberCell(" 10.5 "), { value: 10.5 });
 * assertEquals(readNumberCell("10,5", ","), { value: 10.5 });
 * assertEquals("wanted" in readNumberCell("1,234.5"), true);
 * ```
 */
export function readNumberCell(text: string, decimal: DecimalSign = "."): NumberCell {
  const cell = String(text).trim();
  const point = decimal === "," ? numberWithComma : numberWithPoint;
  if (!point.test(cell)) return { wanted: wantedInstead(cell, decimal) };
  const value = Number(decimal === "," ? cell.replace(",", ".") : cell);
  if (!Number.isFinite(value)) return { wanted: "must be a number below 1.8e308" };
  const mantissa = cell.replace(/[eE].*$/, "");
  if (value === 0 && /[1-9]/.test(mantissa)) {
    return { wanted: "must be 0 or a number above 1e-308" };
  }
  return { value };
}

/** Says what is wrong with a cell that is no number, and how to mend it. */
function wantedInstead(cell: string, decimal: DecimalSign): string {
  const example = decimal === "," ? "10,5" : "10.5";
  const number = `must be a number such as ${example}`;
  if (cell === "") return `${number} (the cell is empty)`;
  if (cell.startsWith("=")) return "must be the number itself, not a formula";
  if (/^#[A-Z/0!?]+/i.test(cell)) return `${number}, not a spreadsheet's error`;
  if (/^[+-]?(?:nan|inf|infinity|∞)$/i.test(cell)) return "must be a finite number";
  if (/^[−–—‑]\s*[\d.,]+$/.test(cell)) return `${number}, with the minus sign of the keyboard (-)`;
  if (/^[+-]?\d{1,3}(?:[',’ \u00a0\u202f.]\d{3})+(?:[.,]\d+)?$/.test(cell)) {
    return decimal === "." && /^[+-]?\d+,\d{3}$/.test(cell)
      ? "must be written without a comma: it could mean thousands or a decimal"
      : `must be written without thousands separators, such as ${
        decimal === "," ? "1234,5" : "1234.5"
      }`;
  }
  if (/^[+-]?\d*,\d+$/.test(cell)) return "must have a decimal point, such as 10.5";
  if (/^[+-]?\d*\.\d+$/.test(cell)) return "must have a decimal comma as the other cells have";
  if (/^[+-]?[\d.,]+\s*%$/.test(cell)) {
    return `${number}, without %: the unit stands in the heading`;
  }
  if (/^[+-]?[\d.,]+\s*[^\d\s.,]+/.test(cell)) {
    return `${number} and nothing else: the unit stands in the heading`;
  }
  return number;
}
