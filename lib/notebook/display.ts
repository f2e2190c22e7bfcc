/** The method by which a notebook's kernel asks a value how it shows itself. */
export const jupyterDisplay: unique symbol = Symbol.for("Jupyter.display");

/** The method by which a console asks a value how it prints itself. */
export const consoleDisplay: unique symbol = Symbol.for("Deno.customInspect");

/** MIME type under which `answer` carries its sentence, so that a program finds it. */
export const ANSWER_MIME = "application/vnd.laminate.answer+json";

/** One value in several forms, by MIME type; the reader's program picks the richest it can show. */
export interface MimeBundle {
  /** The form that every program can show. */
  readonly "text/plain": string;
  /** Other forms: text, or an object under a type that ends in `+json`. */
  readonly [mime: string]: string | Readonly<Record<string, unknown>>;
}

/**
 * A value that shows richly as the last line of a notebook cell and prints as plain text elsewhere.
 */
export interface Displayed {
  /** The forms in which a notebook may show it. */
  readonly [jupyterDisplay]: () => MimeBundle;
  /** What `console.log` prints. */
  readonly [consoleDisplay]: () => string;
}

/**
 * Makes a value that shows itself, from its forms.
 *
 * @param bundle The forms, `text/plain` among them.
 * @returns A value for the last line of a notebook cell.
 *
 * @example
 * ```ts
 * import { consoleDisplay, displayed } from "@laminate/notebooks/notebook";
 * import { assertEquals } from "@std/assert";
 *
 * const hello = displayed({ "text/plain": "hello", "text/html": "<b>hello</b>" });
 * assertEquals(hello[consoleDisplay](), "hello");
 * ```
 */
export function displayed(bundle: MimeBundle): Displayed {
  const frozen = Object.freeze({ ...bundle });
  return Object.freeze({
    [jupyterDisplay]: () => frozen,
    [consoleDisplay]: () => frozen["text/plain"],
  });
}
