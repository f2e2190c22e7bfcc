import type { Column } from "@laminate/notebooks/records";

/** What a column holds, as the table of columns for builders says it. */
export function holds(column: Column): string {
  if (column.kind === "choice") return column.words.join(" / ");
  if (column.kind === "text") return column.day === true ? "day: year-month-day" : "text";
  const { dimension, whole = false } = column;
  if (whole) return "whole number";
  return dimension === "ratio" ? "share or factor" : dimension;
}
