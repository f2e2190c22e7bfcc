import { checksFor } from "../check/mod.ts";
import { type Dimension, siUnits } from "../quantity/mod.ts";
import type { Column, ColumnLimits } from "./column.ts";

const check = checksFor("describe the column");
const dimensions = Object.keys(siUnits) as readonly Dimension[];

/** Refuses what is no column, before a table is read by it. */
export function checkColumn<C extends Column>(column: C, argument = "column"): C {
  check.object(argument, column);
  if (column.kind === "text") checkKnown(column.known);
  else if (column.kind === "choice") checkWords(column.words);
  else if (column.kind === "number") {
    check.oneOf("dimension", column.dimension, dimensions);
    checkLimits(column);
  } else check.refuse(argument, column, "must be a column of text, of words or of figures");
  return column;
}

/** Refuses limits that are no numbers. */
export function checkLimits(limits: ColumnLimits): void {
  check.object("limits", limits);
  for (const name of ["above", "min", "max"] as const) {
    const limit = limits[name];
    if (limit !== undefined) check.finite(name, limit);
  }
  const { whole } = limits;
  if (whole !== undefined && typeof whole !== "boolean") {
    check.refuse("whole", whole, "must be true or false");
  }
}

function checkKnown(known: unknown): void {
  if (known === undefined) return;
  const { names, wanted } = check.object("known names", known as Readonly<Record<string, unknown>>);
  if (!(names instanceof Set || names instanceof Map)) {
    check.refuse("names", names, "must be a Set of names, or a Map by name");
  }
  if (typeof wanted !== "string") check.refuse("wanted", wanted, "must be text");
}

function checkWords(words: readonly string[]): void {
  for (const word of check.list("words", words)) {
    if (typeof word !== "string" || word === "") check.refuse("word", word, "must be a word");
  }
}
