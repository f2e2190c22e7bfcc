import type { Cell, Notebook } from "./notebook_file.ts";

/** The line by which a notebook says which part folder it reads. */
const PART = /^(\s*let part(?:: string)? = )"(?:[^"\\]|\\.)*"/m;

/** Whether a cell carries a tag. */
export function hasTag(cell: Cell, tag: string): boolean {
  return cell.metadata.tags?.includes(tag) ?? false;
}

/** The part folder that a notebook reads, or undefined if it names none. */
export function partOf(notebook: Notebook): string | undefined {
  const line = notebook.cells.find((cell) => hasTag(cell, "parameters"))?.source.match(PART)?.[0];
  return line === undefined ? undefined : JSON.parse(line.slice(line.indexOf('"')));
}

/** The same notebook for another part folder. */
export function withPart(notebook: Notebook, part: string): Notebook {
  if (partOf(notebook) === undefined) {
    throw new Error('no cell tagged "parameters" holds a line such as: let part = "data/…";');
  }
  return {
    ...notebook,
    cells: notebook.cells.map((cell) =>
      hasTag(cell, "parameters")
        ? {
          ...cell,
          source: cell.source.replace(PART, (_, before) => before + JSON.stringify(part)),
        }
        : cell
    ),
  };
}
