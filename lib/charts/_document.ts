import { DOMParser } from "linkedom";

/**
 * The document that figures are drawn in: a page's own in a browser, else one that only knows SVG.
 * An SVG document, since it keeps tag names small and escapes what stands in attributes.
 */
export function figureDocument(): Document {
  if (globalThis.document !== undefined) return globalThis.document;
  return new DOMParser().parseFromString(
    "<svg xmlns='http://www.w3.org/2000/svg'></svg>",
    "image/svg+xml",
  ) as unknown as Document;
}
