import { checksForShowing, escapeHtml, objectOf, textOf } from "./_html.ts";
import { consoleDisplay, type Displayed, displayed, jupyterDisplay } from "./display.ts";

/**
 * Something to be opened when its time has come, such as the answers of a lesson.
 *
 * @param title What stands on it while it is closed.
 * @param part A displayed value, such as a table.
 * @returns A value for the last line of a notebook cell.
 * @throws {InputError} If the title is blank, or the part does not show itself.
 *
 * @example
 * ```ts
 * import { consoleDisplay, folded, note } from "@laminate/notebooks/notebook";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(
 *   folded("For the leader", note("47 %"))[consoleDisplay](),
 *   "For the leader\nNote: 47 %",
 * );
 * ```
 */
export function folded(title: string, part: Displayed): Displayed {
  const check = checksForShowing("folded part");
  textOf(check, "title", title);
  if (typeof objectOf(check, "part", part)[jupyterDisplay] !== "function") {
    check.refuse("part", part, "must show itself, such as a table");
  }
  const { "text/html": html } = part[jupyterDisplay]();
  const text = part[consoleDisplay]();
  return displayed({
    "text/plain": `${title}\n${text}`,
    "text/html": `<details class="folded"><summary>${escapeHtml(title)}</summary>\n${
      typeof html === "string" ? html : `<pre>${escapeHtml(text)}</pre>`
    }\n</details>`,
  });
}
