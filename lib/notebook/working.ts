import { type Checks } from "../check/mod.ts";
import {
  checksForShowing,
  escapeHtml,
  mathHtml,
  objectOf,
  proseHtml,
  textOf,
  valueText,
} from "./_html.ts";
import { type Displayed, displayed } from "./display.ts";

/** A value that goes into a step of the working. */
export interface WorkingValue {
  /** Its symbol in the formula, as TeX. */
  readonly symbol: string;
  /** What it is, in words. */
  readonly meaning: string;
  /** The value: a number in `unit`, or a text that carries its own unit. */
  readonly value: number | string;
  /** Unit of the value, as it is written. */
  readonly unit?: string;
  /** Where the value came from. */
  readonly source?: string;
}

/** What a step of the working comes to. */
export interface WorkingResult {
  /** Its symbol, as TeX. */
  readonly symbol?: string;
  /** The value: a number in `unit`, or a text that carries its own unit. */
  readonly value: number | string;
  /** Unit of the value, as it is written. */
  readonly unit?: string;
}

/** One step of the working. */
export interface WorkingStep {
  /** What is worked out, in words. */
  readonly meaning: string;
  /** The formula, as TeX without dollar signs. */
  readonly formula: string;
  /** The formula with the numbers put in, as TeX; optional. */
  readonly withNumbers?: string;
  /** The values that go in. */
  readonly values?: readonly WorkingValue[];
  /** What it comes to. */
  readonly result: WorkingResult;
  /** Where the formula came from: a book with its page, a standard, "common practice, no source". */
  readonly source: string;
}

/** The working of an answer. */
export interface Working {
  /** What is worked out. */
  readonly title: string;
  /** The steps, in order. */
  readonly steps: readonly WorkingStep[];
}

/**
 * The working behind a number, for a crew to follow with a pocket calculator: each step with its
 * formula, the values that went in with unit and origin, the result and the formula's source.
 *
 * @param work Title and steps.
 * @returns A value for the last line of a notebook cell.
 * @throws {InputError} If there is no step, a formula cannot be set, a value is not finite, or a
 * text is blank.
 *
 * @example
 * ```ts
 * import { consoleDisplay, working } from "@laminate/notebooks/notebook";
 * import { assert } from "@std/assert";
 *
 * const shown = working({
 *   title: "Distance between the faces",
 *   steps: [{
 *     meaning: "Between the middles of two equal faces",
 *     formula: "d = t_c + t_f",
 *     values: [
 *       { symbol: "t_c", meaning: "core", value: 10, unit: "mm", source: "layup.csv" },
 *       { symbol: "t_f", meaning: "face", value: 0.5, unit: "mm" },
 *     ],
 *     result: { symbol: "d", value: 10.5, unit: "mm" },
 *     source: "geometry",
 *   }],
 * });
 * assert(shown[consoleDisplay]().includes("d = 10.5\u00a0mm"));
 * ```
 */
export function working(work: Working): Displayed {
  const check = checksForShowing("working");
  const { title, steps } = objectOf(check, "working", work);
  textOf(check, "title", title);
  const shown = check.list("steps", steps).map((step) => showStep(check, step));
  return displayed({
    "text/plain": [`Working: ${title}`, ...shown.map(({ text }, i) => `${i + 1}. ${text}`)]
      .join("\n"),
    "text/html": `<div class="working">\n<p><strong>Working: ${escapeHtml(title)}</strong></p>\n` +
      `<ol>\n${shown.map(({ html }) => `<li>${html}</li>\n`).join("")}</ol>\n</div>`,
  });
}

interface Shown {
  readonly text: string;
  readonly html: string;
}

function showStep(check: Checks, step: WorkingStep): Shown {
  const { meaning, formula, withNumbers, values = [], result, source } = objectOf(
    check,
    "step",
    step,
  );
  textOf(check, "meaning", meaning);
  textOf(check, "formula", formula);
  textOf(check, "source", source);
  const given = check.list("values", values, 0).map((value) => showValue(check, value));
  const end = showResult(check, objectOf(check, "result", result));
  const put = withNumbers === undefined ? [] : [textOf(check, "formula with numbers", withNumbers)];
  return {
    text: [
      `${meaning}: ${formula}   (${source})`,
      ...given.map(({ text }) => `     ${text}`),
      ...put.map((tex) => `     ${tex}`),
      `   = ${end.text}`,
    ].join("\n"),
    html: `<p>${proseHtml(meaning)}:</p>\n${mathHtml(formula, check, true)}\n` +
      (given.length === 0
        ? ""
        : `<ul>${given.map(({ html }) => `<li>${html}</li>`).join("")}</ul>\n`) +
      put.map((tex) => `${mathHtml(tex, check, true)}\n`).join("") +
      `<p><strong>${end.html}</strong></p>\n<p><small>Formula: ${proseHtml(source)}</small></p>`,
  };
}

function showValue(check: Checks, value: WorkingValue): Shown {
  const { symbol, meaning, source } = objectOf(check, "value", value);
  textOf(check, "symbol", symbol);
  textOf(check, "meaning", meaning);
  const amount = valueText(check, symbol, value);
  const from = source === undefined ? "" : ` (${textOf(check, "source", source)})`;
  return {
    text: `${symbol} = ${amount}, ${meaning}${from}`,
    html: `${mathHtml(symbol, check)} = ${escapeHtml(amount)}, ${proseHtml(meaning + from)}`,
  };
}

function showResult(check: Checks, result: WorkingResult): Shown {
  const { symbol } = result;
  const name = symbol === undefined ? "result" : textOf(check, "symbol", symbol);
  const amount = valueText(check, name, result);
  if (symbol === undefined) return { text: amount, html: `= ${escapeHtml(amount)}` };
  return {
    text: `${symbol} = ${amount}`,
    html: `${mathHtml(symbol, check)} = ${escapeHtml(amount)}`,
  };
}
