import katex from "katex";
import { Marked, type TokenizerAndRendererExtension, type Tokens } from "marked";
import { escapeHtml } from "../_html.ts";
import { cleanHtml } from "./clean.ts";

/** A heading of a page. */
export interface Heading {
  /** 1 for the title, 2 for a section, and so on. */
  readonly level: number;
  /** Its text as clean HTML. */
  readonly html: string;
  /** The id by which it is linked to. */
  readonly id: string;
}

/** Renders Markdown with maths between dollar signs; one renderer for each page. */
export interface MarkdownRenderer {
  /** Clean HTML of a text. */
  render(text: string): string;
  /** The headings rendered so far. */
  readonly headings: readonly Heading[];
}

/** Makes the renderer of one page, which keeps the ids of its headings apart. */
export function markdownRenderer(): MarkdownRenderer {
  const headings: Heading[] = [];
  const marked = new Marked({ gfm: true }, {
    extensions: [mathBlock, mathInline],
    renderer: {
      heading({ tokens, depth, text }): string {
        const html = cleanHtml(this.parser.parseInline(tokens));
        const base = `s-${
          text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-|-$/g, "")
        }`;
        const same = headings.filter(({ id }) => id === base || id.startsWith(`${base}--`)).length;
        const id = same === 0 ? base : `${base}--${same + 1}`;
        headings.push({ level: depth, html, id });
        return `<h${depth} id="${escapeHtml(id)}">${html}</h${depth}>\n`;
      },
    },
  });
  return {
    headings,
    render: (text): string => cleanHtml(marked.parse(text, { async: false })),
  };
}

const mathBlock: TokenizerAndRendererExtension = {
  name: "mathBlock",
  level: "block",
  start: (text) => text.indexOf("$$"),
  tokenizer(text): Tokens.Generic | undefined {
    const match = /^\$\$([^$]+?)\$\$[ \t]*(?:\n|$)/.exec(text);
    return match === null
      ? undefined
      : { type: "mathBlock", raw: match[0], text: match[1]!.trim() };
  },
  renderer: ({ text }) => `<p>${math(text, true)}</p>\n`,
};

const mathInline: TokenizerAndRendererExtension = {
  name: "mathInline",
  level: "inline",
  start: (text) => text.indexOf("$"),
  tokenizer(text): Tokens.Generic | undefined {
    const display = /^\$\$([^$]+?)\$\$/.exec(text);
    // As elsewhere: no space inside the signs and no digit after them, so that prices stay text.
    const match = display ?? /^\$(?!\s)((?:\\[^]|[^$\\])+?)(?<!\s)\$(?!\d)/.exec(text);
    return match === null ? undefined : {
      type: "mathInline",
      raw: match[0],
      text: match[1]!.trim(),
      display: display !== null,
    };
  },
  renderer: ({ text, display }) => math(text, display),
};

/** A formula that cannot be set stands as it was written: a page is no place to fail. */
function math(tex: string, displayMode: boolean): string {
  try {
    return katex.renderToString(tex, { output: "mathml", displayMode, strict: "ignore" });
  } catch {
    return `<code>${escapeHtml(tex)}</code>`;
  }
}
