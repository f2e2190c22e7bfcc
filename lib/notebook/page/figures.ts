/**
 * Puts the finding of each figure above it as text that wraps: on a phone a figure is wider than
 * the screen and scrolls in its box, and its own title would be cut. A screen reader has it from
 * the picture's label already.
 */
export function titledFigures(html: string): string {
  return html.replace(
    /(<figure\b[^>]*>\s*)(<svg\b[^>]*>\s*<title>([^<]*)<\/title>)/g,
    (_, before: string, svg: string, finding: string) =>
      `${before}<p class="finding" aria-hidden="true">${finding}</p>${svg}`,
  );
}
