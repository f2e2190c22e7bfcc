import { type Setting, settingsOf, withValues } from "./first_cell.ts";
import type { Cell, Notebook } from "./notebook_file.ts";

/** Whether a cell carries a tag. */
export function hasTag(cell: Cell, tag: string): boolean {
  return cell.metadata.tags?.includes(tag) ?? false;
}

/** All that may be set in a notebook's first cell, the one tagged `parameters`. */
export function firstCellSettings(notebook: Notebook): readonly Setting[] {
  const cell = notebook.cells.find((each) => hasTag(each, "parameters"));
  return cell === undefined ? [] : settingsOf(cell.source);
}

/** The part folder that a notebook reads, or undefined if it names none. */
export function partOf(notebook: Notebook): string | undefined {
  const value = firstCellSettings(notebook).find(({ name }) => name === "part")?.value;
  return typeof value === "string" ? value : undefined;
}

/** The same notebook for another part folder; refused if it names none. */
export function withPart(notebook: Notebook, part: string): Notebook {
  if (partOf(notebook) === undefined) {
    throw new Error(
      "it reads no part folder: leave --part out for it (a notebook that reads one has a cell " +
        'tagged "parameters" with a line such as: let part = "data/…";)',
    );
  }
  return withSettings(notebook, new Map([["part", part]]));
}

/** The same notebook with other values in its first cell. */
export function withSettings(
  notebook: Notebook,
  values: ReadonlyMap<string, NonNullable<Setting["value"]>>,
): Notebook {
  const first = notebook.cells.findIndex((cell) => hasTag(cell, "parameters"));
  const cell = notebook.cells[first];
  if (cell === undefined || values.size === 0) return notebook;
  const source = withValues(cell.source, values);
  return { ...notebook, cells: notebook.cells.with(first, { ...cell, source }) };
}
