import { checksForShowing, escapeHtml, objectOf, proseHtml, textOf, textsOf } from "./_html.ts";
import { ANSWER_MIME, type Displayed, displayed } from "./display.ts";

const BAR = "border-left:0.35em solid;padding:0.4em 0.9em;margin:0.8em 0";
const BOX = "border:0.15em solid;padding:0.5em 0.9em;margin:0.8em 0";

/**
 * The notebook's answer in one sentence. A notebook has one; the runner prints it and the page
 * opens with it.
 *
 * @param sentence The answer, in plain words with its number and unit.
 * @param style Whether a page keeps it folded, since its readers are to predict first.
 * @returns A value for the last line of a notebook cell.
 * @throws {InputError} If the sentence is not text, is blank or runs over several lines.
 *
 * @example
 * ```ts
 * import { answer, consoleDisplay } from "@laminate/notebooks/notebook";
 * import { assertEquals } from "@std/assert";
 *
 * const shown = answer("Sole panel 3 holds 48 % resin by mass, 6 % more than it needed.");
 * assertEquals(shown[consoleDisplay](), "Answer: Sole panel 3 holds 48 % resin by mass, 6 % more than it needed.");
 * ```
 */
export function answer(
  sentence: string,
  style: {
    /** True if a page shows it only when it is asked to. */
    readonly folded?: boolean;
  } = {},
): Displayed {
  const check = checksForShowing("answer");
  textOf(check, "sentence", sentence);
  const { folded = false } = objectOf(check, "style", style);
  if (/[\r\n]/.test(sentence)) check.refuse("sentence", sentence, "must stand on one line");
  return displayed({
    "text/plain": `Answer: ${sentence}`,
    "text/html": `<p class="answer" style="${BAR};font-size:1.15em"><strong>${
      proseHtml(sentence)
    }</strong></p>`,
    [ANSWER_MIME]: folded ? { folded: true, sentence } : { sentence },
  });
}

/**
 * A short remark beside a result.
 *
 * @param text The remark; `code` between back-ticks is set as code.
 * @returns A value for the last line of a notebook cell.
 * @throws {InputError} If the text is not text or is blank.
 *
 * @example
 * ```ts
 * import { consoleDisplay, note } from "@laminate/notebooks/notebook";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(note("Two rows were left out.")[consoleDisplay](), "Note: Two rows were left out.");
 * ```
 */
export function note(text: string): Displayed {
  textOf(checksForShowing("note"), "text", text);
  return displayed({
    "text/plain": `Note: ${text}`,
    "text/html": `<p class="note" style="${BAR}">${proseHtml(text)}</p>`,
  });
}

/** A caution: what can hurt, and what to follow. */
export interface Caution {
  /** What the caution is about; "Caution" stands before it. */
  readonly title?: string;
  /** The points to heed, one sentence each. */
  readonly points: readonly string[];
}

/**
 * A caution box, for work that can hurt someone.
 *
 * @param caution Its title and its points.
 * @returns A value for the last line of a notebook cell.
 * @throws {InputError} If there is no point, or one is not text or is blank.
 *
 * @example
 * ```ts
 * import { caution, consoleDisplay } from "@laminate/notebooks/notebook";
 * import { assertEquals } from "@std/assert";
 *
 * const box = caution({ title: "dust", points: ["Wear a mask when you sand."] });
 * assertEquals(box[consoleDisplay](), "Caution: dust\n  - Wear a mask when you sand.");
 * ```
 */
export function caution(caution: Caution): Displayed {
  const check = checksForShowing("caution");
  const { title, points } = objectOf(check, "caution", caution);
  const texts = textsOf(check, "point", points);
  const heading = title === undefined ? "Caution" : `Caution: ${textOf(check, "title", title)}`;
  return displayed({
    "text/plain": listText(heading, texts),
    "text/html": listHtml({ kind: "caution", role: "note", style: BOX, heading, texts }),
  });
}

/**
 * Things a reader can change in the notebook to see what follows.
 *
 * @param points What to try, one sentence each; `code` between back-ticks is set as code.
 * @returns A value for the last line of a notebook cell.
 * @throws {InputError} If there is no point, or one is not text or is blank.
 *
 * @example
 * ```ts
 * import { consoleDisplay, tryNext } from "@laminate/notebooks/notebook";
 * import { assertEquals } from "@std/assert";
 *
 * const shown = tryNext(["Set `part` to your own folder."]);
 * assertEquals(shown[consoleDisplay](), "Something to try\n  - Set `part` to your own folder.");
 * ```
 */
export function tryNext(points: readonly string[]): Displayed {
  const texts = textsOf(checksForShowing("list of things to try"), "point", points);
  const heading = "Something to try";
  return displayed({
    "text/plain": listText(heading, texts),
    "text/html": listHtml({ kind: "try-next", style: BAR, heading, texts }),
  });
}

/**
 * Markdown with values put in, each escaped so that a value never acts as markup. Maths stands
 * between dollar signs, and a backslash needs no doubling. `note` is for plain text.
 *
 * @param parts The text around the values.
 * @param values What is put in: text or numbers.
 * @returns A value for the last line of a notebook cell.
 * @throws {InputError} If it is not used as a template, or a value is neither text nor a finite
 * number.
 *
 * @example
 * ```ts
 * import { consoleDisplay, markdown } from "@laminate/notebooks/notebook";
 * import { assertEquals } from "@std/assert";
 *
 * const part = "sole_3";
 * const shown = markdown`## Part ${part}`;
 * assertEquals(shown[consoleDisplay](), "## Part sole_3");
 * ```
 */
export function markdown(
  parts: TemplateStringsArray,
  ...values: readonly (string | number)[]
): Displayed {
  const check = checksForShowing("Markdown");
  check.list("template", (parts as Partial<TemplateStringsArray> | undefined)?.raw ?? []);
  values.forEach((value, i) => {
    if (typeof value === "number") check.finite(`value ${i + 1}`, value);
    else if (typeof value !== "string") {
      check.refuse(`value ${i + 1}`, value, "must be a text or a number");
    }
  });
  const join = (show: (value: string) => string): string =>
    parts.raw.map((part, i) => part + (i < values.length ? show(String(values[i])) : "")).join("");
  return displayed({
    "text/plain": join((value) => value),
    "text/markdown": join(escapeMarkdown),
  });
}

/** Punctuation as numbered entities: no Markdown reader takes those for markup or maths. */
function escapeMarkdown(text: string): string {
  return text.replace(/\s+/g, " ").replace(
    /(?<=\d)\.(?=\d)|[!-$&-+\--/:-@[-`{-~]/g,
    (character) => character === "." ? character : `&#${character.charCodeAt(0)};`,
  );
}

function listText(heading: string, texts: readonly string[]): string {
  return [heading, ...texts.map((text) => `  - ${text}`)].join("\n");
}

function listHtml(list: {
  readonly kind: string;
  readonly role?: string;
  readonly style: string;
  readonly heading: string;
  readonly texts: readonly string[];
}): string {
  const role = list.role === undefined ? "" : ` role="${list.role}"`;
  const items = list.texts.map((text) => `<li>${proseHtml(text)}</li>`).join("");
  return `<div class="${list.kind}"${role} style="${list.style}">` +
    `<p><strong>${escapeHtml(list.heading)}</strong></p><ul>${items}</ul></div>`;
}
