import type { Fault } from "../check/mod.ts";
import type { LeftOut } from "./left_out.ts";

/** The text of a table, ready to be parsed. */
export interface Prepared {
  /** The text from the headings on to the last row, with `\n` at the end of each line. */
  readonly text: string;
  /** The line of the file at which the text begins. */
  readonly firstLine: number;
  /** The delimiter that a line `sep=` names. */
  readonly separator: string | undefined;
  /** Lines that were skipped. */
  readonly leftOut: readonly LeftOut[];
  /** The blank lines behind the last row. */
  readonly blankEnd: LeftOut | undefined;
  /** What is wrong with the text as a whole. */
  readonly fault: Fault | undefined;
}

/** Brings the line ends to one form, and takes off what stands before the headings. */
export function prepare(source: string, skipLines: number): Prepared {
  let text = source.charCodeAt(0) === 0xfeff ? source.slice(1) : source;
  if (text.includes("\r")) text = text.replace(/\r\n?/g, "\n");
  // The end-of-file mark of old systems.
  if (text.endsWith("\x1a")) text = text.slice(0, -1);
  const fault = damage(text);

  let firstLine = 1;
  const leftOut: LeftOut[] = [];
  const cutLine = (): string => {
    const end = text.indexOf("\n");
    const line = end < 0 ? text : text.slice(0, end);
    text = end < 0 ? "" : text.slice(end + 1);
    firstLine++;
    return line;
  };
  while (firstLine <= skipLines && text !== "") {
    const line = firstLine;
    leftOut.push({ reason: "skipped line", line, lastLine: line, count: 1, text: cutLine() });
  }
  const separator = /^"?sep=([\t;|,])"?[ \t;|,]*(?:\n|$)/i.exec(text.slice(0, 80))?.[1];
  if (separator !== undefined) cutLine();
  const end = endOfRows(text);
  // Without a copy where one line end is there already: a million rows are read faster so.
  const rows = end === text.length ? `${text}\n` : text.slice(0, end + 1);
  const blankEnd = blankLines(text.slice(end + 1), () => firstLine + lineEnds(rows));
  return { text: rows, firstLine, separator, leftOut, blankEnd, fault };
}

/** Number of line ends in a text. */
export function lineEnds(text: string): number {
  let count = 0;
  for (let at = 0; (at = text.indexOf("\n", at)) >= 0; at++) count++;
  return count;
}

/** The end of the last line that is not blank, or of the first line. */
function endOfRows(text: string): number {
  let end = text.length;
  for (let at = end - 1; at >= 0; at--) {
    const sign = text[at];
    if (sign === "\n") end = at;
    else if (sign !== " " && sign !== "\t") break;
  }
  return end;
}

function blankLines(end: string, firstLine: () => number): LeftOut | undefined {
  const count = lineEnds(end) + (/[ \t]$/.test(end) ? 1 : 0);
  if (count < 1) return undefined;
  const line = firstLine();
  return { reason: "blank row", line, lastLine: line + count - 1, count, text: "" };
}

function damage(text: string): Fault | undefined {
  const wanted = 'must be text in UTF-8: save it again as "CSV UTF-8"';
  for (const [sign, value] of [["\0", "text with a NUL"], ["\ufffd", "damaged text"]] as const) {
    const at = text.indexOf(sign);
    if (at >= 0) {
      const line = lineEnds(text.slice(0, at)) + 1;
      return { argument: "encoding", value, wanted, line };
    }
  }
  return undefined;
}
