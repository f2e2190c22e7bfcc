import { escapeHtml, proseHtml } from "../_html.ts";
import { ownIds } from "../_svg.ts";
import { ANSWER_MIME } from "../display.ts";
import type { Cell, Notebook, Output } from "../runner/notebook_file.ts";
import { hasTag, partOf } from "../runner/parameters.ts";
import { cleanHtml } from "./clean.ts";
import { titledFigures } from "./figures.ts";
import { type MarkdownRenderer, markdownRenderer } from "./render_markdown.ts";
import { pageFrame } from "./page_frame.ts";
import { framedTables } from "./tables.ts";

/** What a notebook answers with. */
export interface Answer {
  /** The answer in one sentence. */
  readonly sentence: string;
  /** True where readers are to predict before they see it. */
  readonly folded: boolean;
}

/** What a notebook answers with, or undefined if it has no answer. */
export function answerOf(notebook: Notebook): Answer | undefined {
  for (const { outputs = [] } of notebook.cells) {
    for (const output of outputs) {
      if (!isAnswer(output)) continue;
      const { sentence, folded } = output.data[ANSWER_MIME] as Record<string, unknown>;
      if (typeof sentence === "string") return { sentence, folded: folded === true };
    }
  }
  return undefined;
}

/** The title of a notebook: its first heading, or its file's name. */
export function titleOf(notebook: Notebook, name: string): string {
  for (const { cell_type, source } of notebook.cells) {
    const title = cell_type === "markdown" && source.match(/^# +(.+?) *#*$/m)?.[1];
    if (title) return title;
  }
  return name.replaceAll("_", " ");
}

/**
 * One self-contained page from a notebook that was run: the answer first, then all that led to it.
 * `said` is what was set in its first cell, and from where.
 */
export function notebookPage(notebook: Notebook, name: string, said = ""): string {
  const title = titleOf(notebook, name);
  const answer = answerOf(notebook);
  const part = partOf(notebook);
  const markdown = markdownRenderer();
  const shown = notebook.cells.filter((cell) => !hasTag(cell, "remove-cell"));
  let number = 0;
  const cells = shown.map((cell) =>
    shownCell(cell, { markdown, number: cell.cell_type === "code" ? ++number : 0 })
  );
  // The title stands above the answer, so it leaves its cell.
  const [heading] = markdown.headings.filter(({ level }) => level === 1);
  const h1 = heading === undefined
    ? ""
    : new RegExp(`<h1 id="${escapeRegExp(escapeHtml(heading.id))}">[^]*?</h1>\\n?`);
  const body = foldedCode(cells).replace(h1, "")
    .replace('<div class="caution"', '<div id="caution" class="caution"');
  return pageFrame(
    title,
    `<header>
<p class="home"><a href="index.html">All answers</a></p>
<h1>${heading?.html ?? escapeHtml(title)}</h1>
${answer === undefined ? "" : answerHtml(answer)}${
      part === undefined
        ? ""
        : `<p class="soft">Part folder: <code>${escapeHtml(partName(part))}</code></p>\n`
    }${said === "" ? "" : `<p class="soft">${escapeHtml(said)}</p>\n`}</header>
${contents(markdown, body)}<main>
${body}</main>
<footer>
<p>Made by <code>${escapeHtml(name)}.ipynb</code>. A page of figures is no permission: the product’s
safety sheet, local codes, event rules and licensed practice come first.</p>
</footer>`,
  );
}

function answerHtml({ sentence, folded }: Answer): string {
  const shown = `<p class="answer"><strong>${proseHtml(sentence)}</strong></p>\n`;
  return folded
    ? `<details class="folded"><summary>The answer, for afterwards</summary>\n${shown}</details>\n`
    : shown;
}

/** A part folder as it is called from the project's folder. */
export function partName(part: string): string {
  return part.replace(/^(\.\.\/)+/, "");
}

function contents({ headings }: MarkdownRenderer, body: string): string {
  const links = headings.filter(({ level }) => level === 2)
    .map(({ id, html }) => `<li><a href="#${escapeHtml(id)}">${withoutLinks(html)}</a></li>`);
  if (body.includes('id="caution"')) links.push('<li><a href="#caution">Cautions</a></li>');
  return links.length < 2
    ? ""
    : `<nav aria-label="On this page">\n<ul>\n${links.join("\n")}\n</ul>\n</nav>\n`;
}

interface CellPlace {
  readonly markdown: MarkdownRenderer;
  readonly number: number;
}

interface ShownCell {
  /** The cell's number among those with code. */
  readonly number: number;
  /** Its code, blank if it is not to be seen. */
  readonly code: string;
  /** Whether a reader sets the notebook's figures in it. */
  readonly settings: boolean;
  /** What stands under it. */
  readonly html: string;
}

function shownCell(cell: Cell, { markdown, number }: CellPlace): ShownCell {
  const shown = { number, code: "", settings: hasTag(cell, "parameters") };
  if (cell.cell_type === "markdown") {
    return { ...shown, html: framedTables(markdown.render(cell.source)) };
  }
  if (cell.cell_type === "raw") return { ...shown, html: "" };
  const html = (cell.outputs ?? []).filter((output) => !isAnswer(output))
    .map((output) => outputHtml(output, markdown)).join("");
  return { ...shown, code: hasTag(cell, "hide-input") ? "" : cell.source.trimEnd(), html };
}

/** The cells of a page; code of cells with nothing to see between them folds up together. */
function foldedCode(cells: readonly ShownCell[]): string {
  let html = "";
  let folded: ShownCell[] = [];
  const close = (): void => {
    html += codeHtml(folded);
    folded = [];
  };
  for (const cell of cells) {
    if (cell.settings || folded[0]?.settings) close();
    if (cell.code !== "") folded.push(cell);
    if (cell.html !== "") close();
    html += cell.html;
  }
  close();
  return html;
}

function codeHtml(cells: readonly ShownCell[]): string {
  const [first, last] = [cells[0], cells.at(-1)];
  if (first === undefined || last === undefined) return "";
  const numbers = first === last ? `${first.number}` : `${first.number} to ${last.number}`;
  const name = first.settings ? "First cell: what you may set" : `Code ${numbers}`;
  return `<details class="code"><summary>${name}</summary>${
    cells.map(({ code }) => `<pre><code>${escapeHtml(code)}</code></pre>`).join("")
  }</details>\n`;
}

function isAnswer(output: Output): output is Output & { output_type: "execute_result" } {
  return "data" in output && ANSWER_MIME in output.data;
}

function outputHtml(output: Output, markdown: MarkdownRenderer): string {
  if (output.output_type === "stream") return pre(output.text);
  if (output.output_type === "error") return pre(`${output.ename}: ${output.evalue}`);
  const { data } = output;
  const form = (mime: string): string | undefined =>
    typeof data[mime] === "string" ? data[mime] : undefined;
  const html = form("text/html");
  if (html !== undefined) {
    return `${titledFigures(framedTables(ownIdsOfAll(cleanHtml(html))))}\n`;
  }
  const text = form("text/markdown");
  if (text !== undefined) return framedTables(markdown.render(text));
  const svg = form("image/svg+xml");
  if (svg !== undefined) return titledFigures(`<figure>${ownIds(cleanHtml(svg))}</figure>\n`);
  const png = form("image/png");
  if (png !== undefined) {
    return cleanHtml(
      `<figure><img src="data:image/png;base64,${escapeHtml(png)}" alt="${
        escapeHtml(form("text/plain") ?? "")
      }"></figure>`,
    ) + "\n";
  }
  return pre(form("text/plain") ?? "");
}

/** Each picture in a piece of HTML with ids of its own. */
function ownIdsOfAll(html: string): string {
  return html.replace(/<svg[\s>][^]*?<\/svg>/g, ownIds);
}

function pre(text: string): string {
  return text.trim() === "" ? "" : `<pre>${escapeHtml(text.trimEnd())}</pre>\n`;
}

function withoutLinks(html: string): string {
  return html.replace(/<\/?a\b[^>]*>/g, "");
}

function escapeRegExp(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
}
