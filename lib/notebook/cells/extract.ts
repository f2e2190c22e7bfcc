import type { Notebook } from "../runner/notebook_file.ts";

/** A notebook's code as one module, with the way back. */
export interface ExtractedCode {
  /** The module. */
  readonly text: string;
  /** The cell and the line in it where a line of the module comes from; all counted from 1. */
  placeOf(line: number): CellPlace | undefined;
}

/** A place in a notebook. */
export interface CellPlace {
  /** Number among the code cells, as Jupyter shows it. */
  readonly cell: number;
  /** Line in the cell. */
  readonly line: number;
  /** Tags of the cell. */
  readonly tags: readonly string[];
}

/** The code cells one below the other: type checker and linter do not read notebooks. */
export function extractCode(notebook: Notebook): ExtractedCode {
  const places: CellPlace[] = [];
  const lines: string[] = [];
  const code = notebook.cells.filter(({ cell_type }) => cell_type === "code");
  for (const [i, { source, metadata: { tags = [] } }] of code.entries()) {
    for (const [j, line] of source.split("\n").entries()) {
      lines.push(line);
      places.push({ cell: i + 1, line: j + 1, tags });
    }
  }
  // Without an import or export the text would be a script, where await is not allowed.
  return { text: [...lines, "export {};", ""].join("\n"), placeOf: (line) => places[line - 1] };
}
