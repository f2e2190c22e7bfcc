import { checksForShowing, escapeHtml, objectOf, proseHtml, textOf } from "./_html.ts";
import { canRun, ownIds } from "./_svg.ts";
import { type Displayed, displayed } from "./display.ts";

/** What a reader is told about a figure in words. */
export interface FigureText {
  /**
   * What the figure shows, for a reader who cannot see it: the finding, not the looks. A picture
   * with an `aria-label` of its own needs none.
   */
  readonly alt?: string;
  /** The sentence under the figure. */
  readonly caption?: string;
}

/**
 * A drawn figure with its caption and its alternative in words.
 *
 * @param element An SVG element, or its outer HTML.
 * @param text Alternative text and caption.
 * @returns A value for the last line of a notebook cell.
 * @throws {InputError} If the element is not one SVG picture, carries a script, or shows NaN; or
 * if there is no alternative text.
 *
 * @example
 * ```ts
 * import { consoleDisplay, figure } from "@laminate/notebooks/notebook";
 * import { assertEquals } from "@std/assert";
 *
 * const shown = figure("<svg viewBox='0 0 9 9'><path d='M0 0L9 9'/></svg>", {
 *   alt: "Deflection rises in proportion to the load.",
 * });
 * assertEquals(shown[consoleDisplay](), "Figure: Deflection rises in proportion to the load.");
 * ```
 */
export function figure(
  element: string | { readonly outerHTML: string },
  text: FigureText = {},
): Displayed {
  const check = checksForShowing("figure");
  const { alt: given, caption } = objectOf(check, "text", text);
  const drawn = typeof element === "string"
    ? element
    : objectOf(check, "element", element).outerHTML;
  const svg = textOf(check, "element", drawn).trim();
  if (!/^<svg[\s>]/.test(svg) || !svg.endsWith("</svg>")) {
    check.refuse("element", svg, "must be one SVG picture, <svg …>…</svg>");
  }
  if (canRun(svg)) check.refuse("element", svg, "must carry no script and no outside link");
  if (
    /\s(d|x|y|x1|x2|y1|y2|cx|cy|r|width|height|points|transform)="[^"]*(NaN|Infinity)/.test(svg)
  ) {
    check.refuse("element", svg, "must have numbers for its places; it has NaN");
  }
  const alt = textOf(check, "alternative text", given ?? ownLabel(svg));
  const words = caption === undefined ? undefined : textOf(check, "caption", caption);
  return displayed({
    "text/plain": words === undefined ? `Figure: ${alt}` : `Figure: ${words}\n${alt}`,
    "text/html": `<figure style="margin:0.8em 0">\n${ownIds(withAlternative(svg, alt))}\n` +
      (words === undefined ? "" : `<figcaption>${proseHtml(words)}</figcaption>\n`) + "</figure>",
  });
}

/** One opening tag of a picture; a ">" inside quotes does not end it. */
const OPENING = /^<svg(?:"[^"]*"|'[^']*'|[^>"'])*>/;

/** The words that a picture brings for itself, with its entities read. */
function ownLabel(svg: string): string | undefined {
  return svg.match(OPENING)?.[0].match(/\saria-label="([^"]*)"/)?.[1]
    ?.replace(/&(lt|gt|quot|#39|apos|amp);/g, (_, name: string) => CHARACTERS[name]!);
}

const CHARACTERS: Readonly<Record<string, string>> = {
  lt: "<",
  gt: ">",
  quot: '"',
  "#39": "'",
  apos: "'",
  amp: "&",
};

function withAlternative(svg: string, alt: string): string {
  const [opening] = svg.match(OPENING)!;
  const kept = opening.replace(/\s(role|aria-label|aria-description|xmlns)=("[^"]*"|'[^']*')/g, "");
  return `<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-label="${escapeHtml(alt)}"` +
    kept.slice("<svg".length) + svg.slice(opening.length);
}
