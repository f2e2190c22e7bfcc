import { join } from "node:path";
import { NOTEBOOKS, ROOT } from "../../lib/notebook/cli/project.ts";
import {
  type Cell,
  type Notebook,
  writeNotebook,
} from "../../lib/notebook/runner/notebook_file.ts";

/** A code cell, or a Markdown cell if the text begins with "#". */
export function cellOf(source: string, number: number, tags: readonly string[] = []): Cell {
  return {
    cell_type: source.startsWith("#") ? "markdown" : "code",
    id: `cell-${number}`,
    metadata: tags.length === 0 ? {} : { tags },
    source,
  };
}

/** A notebook of these cells; a pair is a cell with a tag. */
export function notebookOf(...cells: readonly (string | readonly [string, string])[]): Notebook {
  return {
    cells: cells.map((cell, i) =>
      typeof cell === "string" ? cellOf(cell, i + 1) : cellOf(cell[0], i + 1, [cell[1]])
    ),
    metadata: {},
    nbformat: 4,
    nbformat_minor: 5,
  };
}

/**
 * A folder for one test, below the project's folder so that a kernel in it finds deno.json; in
 * out/, which git and Deno's own tools pass over.
 */
export async function withFolder(use: (folder: string) => Promise<void>): Promise<void> {
  await Deno.mkdir(join(ROOT, "out"), { recursive: true });
  const folder = await Deno.makeTempDir({ dir: join(ROOT, "out"), prefix: "test-" });
  try {
    await use(folder);
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}

/** Writes notebooks into a folder, by name. */
export async function writeNotebooks(
  folder: string,
  notebooks: Readonly<Record<string, Notebook>>,
): Promise<void> {
  for (const [name, notebook] of Object.entries(notebooks)) {
    await Deno.writeTextFile(join(folder, `${name}.ipynb`), writeNotebook(notebook));
  }
}

/** Whether a process is there and has not ended. */
export async function isAlive(pid: number): Promise<boolean> {
  const status = await Deno.readTextFile(`/proc/${pid}/status`).catch(() => "");
  return status !== "" && !/^State:\s+Z/m.test(status);
}

/** Waits until something holds; false if it does not within the time. */
export async function until(
  holds: () => Promise<boolean> | boolean,
  milliseconds = 10_000,
): Promise<boolean> {
  const end = performance.now() + milliseconds;
  while (performance.now() < end) {
    if (await holds()) return true;
    await new Promise((resolve) => setTimeout(resolve, 25));
  }
  return false;
}

/**
 * Whether all these programs are installed; says which one is missing, so that a skipped test is
 * no silent one.
 */
export function installed(...programs: readonly string[]): boolean {
  const folders = (Deno.env.get("PATH") ?? "").split(":");
  const missing = programs.filter((program) =>
    !folders.some((folder) => {
      try {
        return Deno.statSync(join(folder, program)).isFile;
      } catch {
        return false;
      }
    })
  );
  if (missing.length > 0) console.log(`skipped: ${missing.join(", ")} is not installed`);
  return missing.length === 0;
}

/** The folders with notebooks that are kept: the project's own and the tests' fixtures. */
export function notebookFolders(): string[] {
  const folders = [NOTEBOOKS, join(ROOT, "tests/notebook/fixtures")];
  return folders.filter((folder) => {
    try {
      return [...Deno.readDirSync(folder)].some(({ name }) => name.endsWith(".ipynb"));
    } catch {
      return false;
    }
  });
}
