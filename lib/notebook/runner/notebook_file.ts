/** A notebook, format 4.5: what we read of it and all that we keep. */
export interface Notebook {
  /** The cells, top to bottom. */
  readonly cells: readonly Cell[];
  /** Kernel and language. */
  readonly metadata: Readonly<Record<string, unknown>>;
  /** Major version of the format: 4. */
  readonly nbformat: number;
  /** Minor version of the format: 5 or above, so that each cell has an id. */
  readonly nbformat_minor: number;
}

/** One cell of a notebook. */
export interface Cell {
  /** Code, or text in Markdown; `raw` is kept and not shown. */
  readonly cell_type: "code" | "markdown" | "raw";
  /** Its own name, which stays when cells move. */
  readonly id: string;
  /** Tags and other remarks. */
  readonly metadata: { readonly tags?: readonly string[] } & Readonly<Record<string, unknown>>;
  /** The text of the cell. */
  readonly source: string;
  /** What it showed; code cells only. */
  readonly outputs?: readonly Output[];
  /** Its number in the run; code cells only. */
  readonly execution_count?: number | null;
}

/** One output of a code cell, as the format has it; texts are joined. */
export type Output =
  | {
    readonly output_type: "stream";
    readonly name: string;
    readonly text: string;
  }
  | {
    readonly output_type: "display_data" | "execute_result";
    readonly data: Readonly<Record<string, unknown>>;
    readonly metadata: Readonly<Record<string, unknown>>;
    readonly execution_count?: number | null;
  }
  | {
    readonly output_type: "error";
    readonly ename: string;
    readonly evalue: string;
    readonly traceback: readonly string[];
  };

/** The kernelspec that our notebooks name; `deno task kernel` installs it. */
export const KERNELSPEC = {
  display_name: "Laminate notebooks (Deno)",
  language: "typescript",
  name: "laminate-notebooks",
} as const;

const LANGUAGE = {
  file_extension: ".ts",
  mimetype: "text/x.typescript",
  name: "typescript",
} as const;

/** Reads the text of an .ipynb file; refuses what is not a notebook with cell ids. */
export function parseNotebook(text: string, name: string): Notebook {
  const refuse = (why: string): never => {
    throw new Error(`${name} is not a notebook that can be run: ${why}`);
  };
  let raw: Record<string, unknown>;
  try {
    raw = JSON.parse(text);
  } catch (error) {
    return refuse(error instanceof Error ? error.message : String(error));
  }
  if (raw?.nbformat !== 4 || !Array.isArray(raw.cells)) return refuse("it is not of format 4");
  if (!(Number(raw.nbformat_minor) >= 5)) return refuse("its format is older than 4.5");
  const cells = raw.cells.map((cell, i) =>
    joinTexts(cell as RawCell, () => refuse(`cell ${i + 1} lacks an id, a type or its source`))
  );
  if (new Set(cells.map(({ id }) => id)).size < cells.length) {
    return refuse("two cells share an id");
  }
  return {
    cells,
    metadata: { kernelspec: KERNELSPEC, language_info: LANGUAGE, ...(raw.metadata ?? {}) },
    nbformat: 4,
    nbformat_minor: Number(raw.nbformat_minor),
  };
}

/** A cell as JSON has it: texts may be lists of lines. */
type RawCell = Record<string, unknown> & { outputs?: Record<string, unknown>[] };

function joinTexts(cell: RawCell, refuse: () => never): Cell {
  const types = ["code", "markdown", "raw"];
  if (typeof cell?.id !== "string" || !types.includes(String(cell.cell_type))) return refuse();
  if (typeof cell.source !== "string" && !Array.isArray(cell.source)) return refuse();
  const outputs = cell.outputs?.map((output) => ({
    ...output,
    ...("text" in output ? { text: joined(output.text) } : {}),
    ...("data" in output ? { data: mapValues(output.data as object, joined) } : {}),
  }));
  return {
    ...cell,
    metadata: cell.metadata ?? {},
    source: joined(cell.source),
    ...(outputs === undefined ? {} : { outputs }),
  } as unknown as Cell;
}

function joined(text: unknown): unknown {
  return Array.isArray(text) && text.every((line) => typeof line === "string")
    ? text.join("")
    : text;
}

function mapValues(object: object, change: (value: unknown) => unknown): Record<string, unknown> {
  return Object.fromEntries(Object.entries(object).map(([key, value]) => [key, change(value)]));
}

/** The text of the .ipynb file: the same notebook gives the same bytes on every machine. */
export function writeNotebook(notebook: Notebook): string {
  const cells = notebook.cells.map((cell) => ({
    ...cell,
    source: lines(cell.source),
    ...(cell.cell_type === "code"
      ? {
        outputs: (cell.outputs ?? []).map(splitTexts),
        execution_count: cell.execution_count ?? null,
      }
      : {}),
  }));
  return JSON.stringify(sorted({ ...notebook, cells }), null, 1) + "\n";
}

function splitTexts(output: Output): Record<string, unknown> {
  if (output.output_type === "stream") return { ...output, text: lines(output.text) };
  if (output.output_type === "error") return { ...output };
  return {
    ...output,
    data: mapValues(output.data, (value) => typeof value === "string" ? lines(value) : value),
  };
}

/** A text as the lines of the file, each with its line end: a change shows line by line. */
function lines(text: string): string[] {
  return text === "" ? [] : text.split(/(?<=\n)/);
}

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).sort(([a], [b]) => a < b ? -1 : 1).map(([k, v]) => [k, sorted(v)]),
  );
}
