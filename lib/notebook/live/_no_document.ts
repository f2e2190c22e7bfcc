/** Stands in for the server's document in a page's bundle, where the browser has its own. */
export class DOMParser {
  /** Never called: a browser has a document. */
  parseFromString(): never {
    throw new Error("a page draws in its own document");
  }
}
