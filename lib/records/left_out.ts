import { checksFor } from "../check/mod.ts";

const check = checksFor("describe what was left out");

/** A part of a file that was read but is no data. */
export interface LeftOut {
  /** Why it was left out. */
  readonly reason: "blank row" | "comment" | "skipped line" | "empty column" | "column marked x_";
  /** First line of it, counted from 1. */
  readonly line: number;
  /** Last line of it. */
  readonly lastLine: number;
  /** How many rows, lines or columns [1]. */
  readonly count: number;
  /** The comment, or the heading of the column. */
  readonly text: string;
}

/**
 * What was left out, as one line for a reader.
 *
 * @param leftOut The part that was left out.
 * @param file The file it stands in.
 * @returns A line such as `weighings.csv lines 9 to 12: 4 blank rows left out`.
 * @throws {InputError} If it is missing.
 *
 * @example
 * ```ts
 * import { describeLeftOut } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(
 *   describeLeftOut(
 *     { reason: "blank row", line: 9, lastLine: 12, count: 4, text: "" },
 *     "weighings.csv",
 *   ),
 *   "weighings.csv lines 9 to 12: 4 blank rows left out",
 * );
 * ```
 */
export function describeLeftOut(leftOut: LeftOut, file: string): string {
  const { reason, line, lastLine, count, text } = check.object("what was left out", leftOut);
  const place = line === lastLine ? `line ${line}` : `lines ${line} to ${lastLine}`;
  if (reason === "empty column" || reason === "column marked x_") {
    return `${file} ${place}: ${reason} left out: ${JSON.stringify(text)}`;
  }
  const what = count === 1 ? reason : `${count} ${reason}s`;
  return `${file} ${place}: ${what} left out${text === "" ? "" : `: ${JSON.stringify(text)}`}`;
}
