import { DOMParser } from "linkedom";
import { escapeHtml } from "../_html.ts";

/** Tables with at least this many columns become cards on a phone. */
const CARD_COLUMNS = 4;

/**
 * Puts each table of clean HTML into a box that scrolls by itself, and tells each cell of a wide
 * table its column: on a phone such a table is a card for each row. The roles keep it a table for
 * a screen reader, which would take cards for plain text.
 */
export function framedTables(html: string): string {
  return html.replace(/<table[\s>][^]*?<\/table>/g, (table) => {
    const document = new DOMParser().parseFromString(
      `<html><body>${table}</body></html>`,
      "text/html",
    );
    const element = document.querySelector("table")!;
    const caption = element.querySelector("caption")?.textContent.trim() || "Table";
    const heads = [...element.querySelectorAll("thead th")].map((head) => head.textContent.trim());
    if (heads.length >= CARD_COLUMNS) makeCards(element as unknown as Element, heads);
    return `<div class="scroll" tabindex="0" role="region" aria-label="${escapeHtml(caption)}">` +
      `${element.outerHTML}</div>`;
  });
}

function makeCards(table: Element, heads: readonly string[]): void {
  table.setAttribute("class", "cards");
  table.setAttribute("role", "table");
  for (const row of table.querySelectorAll("tr")) {
    row.setAttribute("role", "row");
    [...row.children].forEach((cell, i) => {
      const inHead = cell.closest("thead") !== null;
      const isHead = cell.tagName.toLowerCase() === "th";
      cell.setAttribute("role", inHead ? "columnheader" : isHead ? "rowheader" : "cell");
      if (!inHead) cell.setAttribute("data-label", heads[i] ?? "");
    });
  }
}
