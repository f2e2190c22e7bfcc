import { escapeHtml, proseHtml } from "../_html.ts";
import { type Answer, partName } from "./notebook_page.ts";
import { pageFrame } from "./page_frame.ts";

/** One notebook's line on the index. */
export interface IndexEntry {
  /** Name of the notebook and of its page, without ending. */
  readonly name: string;
  /** Its title. */
  readonly title: string;
  /** Its answer, if it gave one. */
  readonly answer?: Answer;
  /** Why there is no page, if there is none. */
  readonly failure?: string;
  /** What the notebook would need that the part folder lacks, if it was left out for that. */
  readonly leftOut?: string;
}

/** The page that lists the notebooks of a run with their answers. */
export function indexPage(
  entries: readonly IndexEntry[],
  { part, partFault }: { readonly part?: string; readonly partFault?: string } = {},
): string {
  const items = entries.map(({ name, title, answer, failure, leftOut }) => {
    if (leftOut !== undefined) {
      return `<li>\n<h2>${escapeHtml(title)}</h2>\n<p class="soft">Left out: ${
        escapeHtml(leftOut)
      }</p>\n</li>`;
    }
    // What is wrong with the part stands above all of them.
    if (failure !== undefined && failure === partFault) {
      return `<li>\n<h2>${escapeHtml(title)}</h2>\n<p class="soft">Not run.</p>\n</li>`;
    }
    if (failure !== undefined) {
      return `<li>\n<h2>${escapeHtml(title)}</h2>\n<p class="answer failed">No answer: ${
        escapeHtml(failure)
      }</p>\n</li>`;
    }
    const sentence = answer === undefined || answer.folded
      ? ""
      : `\n<p class="answer"><strong>${proseHtml(answer.sentence)}</strong></p>`;
    return `<li>\n<h2><a href="${escapeHtml(encodeURIComponent(name))}.html">${
      escapeHtml(title)
    }</a></h2>${sentence}\n</li>`;
  });
  const about = part === undefined
    ? ""
    : `<p class="soft">Part folder: <code>${escapeHtml(partName(part))}</code></p>\n`;
  const fault = partFault === undefined
    ? ""
    : `<p class="answer failed">${escapeHtml(partFault)}</p>\n`;
  return pageFrame(
    "Laminate notebooks: all answers",
    `<header>
<h1>All answers</h1>
${about}${fault}</header>
<main>
<ul class="notebooks">
${items.join("\n")}
</ul>
</main>
<footer>
<p>Each answer rests on the inputs and the working on its page.</p>
</footer>`,
  );
}
