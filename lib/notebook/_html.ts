import katex from "katex";
import { type Checks, checksFor } from "../check/mod.ts";

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/** Text as it may stand in HTML, in an element or in a quoted attribute. */
export function escapeHtml(text: string): string {
  return text.replace(/[&<>"']/g, (character) => ENTITIES[character]!);
}

/** Prose as HTML: escaped, with `code` between back-ticks. */
export function proseHtml(text: string): string {
  return escapeHtml(text).replace(/`([^`]+)`/g, "<code>$1</code>");
}

/** A formula as MathML, which browsers show without fonts or scripts of ours. */
export function mathHtml(tex: string, checks: Checks, display = false): string {
  try {
    return katex.renderToString(tex, {
      output: "mathml",
      displayMode: display,
      throwOnError: true,
      strict: "ignore",
      trust: false,
      maxSize: 10,
      maxExpand: 100,
    });
  } catch (error) {
    return checks.refuse("formula", tex, `must be TeX that can be set (${messageOf(error)})`);
  }
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message.replace(/^KaTeX parse error: /, "") : String(error);
}

/** A text argument: refuses what is not text and what is blank. */
export function textOf(checks: Checks, argument: string, value: unknown): string {
  return typeof value === "string" && value.trim() !== ""
    ? value
    : checks.refuse(argument, value, "must be a text that is not blank");
}

/** A list argument whose entries are checked one by one. */
export function textsOf(checks: Checks, argument: string, values: readonly string[]): string[] {
  return checks.list(argument, values).map((value, i) =>
    textOf(checks, `${argument} ${i + 1}`, value)
  );
}

/** An object argument: refuses null, text and numbers, which have no fields to read. */
export function objectOf<T extends object>(checks: Checks, argument: string, value: T): T {
  return typeof value === "object" && value !== null
    ? value
    : checks.refuse(argument, value, "must be an object with named fields");
}

/** A number as readers expect it: a true minus sign, and never NaN or Infinity. */
export function numberText(checks: Checks, argument: string, value: number): string {
  checks.finite(argument, value);
  const size = Math.abs(value);
  const text = value === 0
    ? "0"
    : size >= 1e7 || size < 1e-4
    ? powerText(value)
    : size >= 1000
    ? String(Math.round(value))
    : String(Number(value.toPrecision(4)));
  return text.replace("-", "\u2212");
}

function powerText(value: number): string {
  const [digits, power] = value.toExponential(3).split("e") as [string, string];
  const superscript = [...power.replace("+", "")].map((c) =>
    c === "-" ? "\u207b" : "\u2070\u00b9\u00b2\u00b3\u2074\u2075\u2076\u2077\u2078\u2079"[Number(c)]
  ).join("");
  return `${Number(digits)}\u00d710${superscript}`;
}

/** A value with its unit; a number gets sensible digits, a text stands as it is. */
export function valueText(
  checks: Checks,
  argument: string,
  { value, unit }: { readonly value: number | string; readonly unit?: string },
): string {
  const text = typeof value === "number"
    ? numberText(checks, argument, value)
    : textOf(checks, argument, value);
  if (unit === undefined || unit === "" || unit === "1") return text;
  return unit === "%" || unit === "°" ? `${text}\u202f${unit}` : `${text}\u00a0${unit}`;
}

/** The room's checks, by what is being shown. */
export function checksForShowing(what: string): Checks {
  return checksFor(`show the ${what}`);
}
