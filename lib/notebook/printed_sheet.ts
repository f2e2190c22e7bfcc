import { checksForShowing, escapeHtml, objectOf, proseHtml, textOf, textsOf } from "./_html.ts";
import { consoleDisplay, type Displayed, displayed, jupyterDisplay } from "./display.ts";

/** Paper that a sheet is set for. */
export type Paper = "A4" | "Letter";

/** A sheet for the bench. */
export interface PrintedSheet {
  /** What stands on top. */
  readonly title: string;
  /** Paper that it is set for. */
  readonly paper: Paper;
  /** What is on it, top to bottom: tables, figures, check lists, cautions, notes. */
  readonly parts: readonly Displayed[];
}

/**
 * A sheet for the bench: printing the page prints the sheet alone, in letters that can be read at
 * arm's length.
 *
 * @param sheet Title, paper and parts.
 * @returns A value for the last line of a notebook cell.
 * @throws {InputError} If the title is blank, the paper unknown, or a part does not show itself.
 *
 * @example
 * ```ts
 * import { consoleDisplay, note, printedSheet } from "@laminate/notebooks/notebook";
 * import { assertEquals } from "@std/assert";
 *
 * const sheet = printedSheet({ title: "Sole", paper: "A4", parts: [note("Start at six.")] });
 * assertEquals(sheet[consoleDisplay](), "Sheet: Sole\n\nNote: Start at six.");
 * ```
 */
export function printedSheet(sheet: PrintedSheet): Displayed {
  const check = checksForShowing("sheet");
  const { title, paper, parts } = objectOf(check, "sheet", sheet);
  textOf(check, "title", title);
  check.oneOf("paper", paper, ["A4", "Letter"]);
  const shown = check.list("parts", parts).map((part, i) => {
    const forms = objectOf(check, `part ${i + 1}`, part)[jupyterDisplay];
    if (typeof forms !== "function") check.refuse(`part ${i + 1}`, part, "must show itself");
    return { plain: part[consoleDisplay](), html: forms()["text/html"] };
  });
  const html = shown.map(({ plain, html }) =>
    typeof html === "string" ? html : `<p>${escapeHtml(plain)}</p>`
  );
  return displayed({
    "text/plain": [`Sheet: ${title}`, ...shown.map(({ plain }) => plain)].join("\n\n"),
    "text/html": `<section class="sheet sheet-${paper.toLowerCase()}">\n` +
      `<h2>${escapeHtml(title)}</h2>\n${html.join("\n")}\n</section>`,
  });
}

/** A list to tick off. */
export interface Checklist {
  /** What the list is for. */
  readonly title: string;
  /** What to do or to check, in order. */
  readonly points: readonly string[];
}

/**
 * A list with a box before each point, to tick with a pencil.
 *
 * @param list Title and points.
 * @returns A value for the last line of a notebook cell, or for a printed sheet.
 * @throws {InputError} If there is no point, or a text is blank.
 *
 * @example
 * ```ts
 * import { checklist, consoleDisplay } from "@laminate/notebooks/notebook";
 * import { assertEquals } from "@std/assert";
 *
 * const list = checklist({ title: "Before the first pot", points: ["Cloth cut."] });
 * assertEquals(list[consoleDisplay](), "Before the first pot\n  ☐ Cloth cut.");
 * ```
 */
export function checklist(list: Checklist): Displayed {
  const check = checksForShowing("check list");
  const { title, points } = objectOf(check, "list", list);
  textOf(check, "title", title);
  const texts = textsOf(check, "point", points);
  const items = texts.map((text) => `<li>☐ ${proseHtml(text)}</li>`).join("");
  return displayed({
    "text/plain": [title, ...texts.map((text) => `  ☐ ${text}`)].join("\n"),
    "text/html": `<div class="checklist"><p><strong>${escapeHtml(title)}</strong></p>` +
      `<ul style="list-style:none;padding-left:0">${items}</ul></div>`,
  });
}
