import { join, resolve } from "node:path";
import { checkCells } from "../cells/check_cells.ts";
import { type IndexEntry, indexPage } from "../page/index_page.ts";
import { enlivened } from "../page/live_script.ts";
import { answerOf, notebookPage, titleOf } from "../page/notebook_page.ts";
import { notebookFile, removeIfThere, writeWhole } from "../runner/files.ts";
import { type Cell, type Notebook, parseNotebook, writeNotebook } from "../runner/notebook_file.ts";
import { partOf, withPart, withSettings } from "../runner/parameters.ts";
import { type CellFailure, type NotebookRun, runNotebook } from "../runner/run_notebook.ts";
import { sheetFor } from "./part_folder.ts";
import { CONFIG } from "./project.ts";
import type { SetValues } from "./settings.ts";

/** What is done with the notebooks of a folder. */
export interface FolderRun {
  /** Where the notebooks are. */
  readonly folder: string;
  /** Which ones, without ending, in order. */
  readonly names: readonly string[];
  /** Part folder to run on, as the notebooks write it; their own if there is none. */
  readonly part?: string;
  /** Whether the notebooks were asked for by name: then each must be able to take the part. */
  readonly asked?: boolean;
  /** What is set in the first cells, by notebook. */
  readonly settings?: ReadonlyMap<string, SetValues>;
  /** Why the part or its settings cannot be read, if that is so: then no notebook that reads one is run. */
  readonly partFault?: string;
  /** Where pages go; none are written if there is no such folder. */
  readonly out?: string;
  /** Puts the fresh outputs into the notebooks, or compares them with what is there. */
  readonly stored: "leave" | "store" | "check";
  /** Longest time for one cell [ms]. */
  readonly timeLimit: number;
  /** Takes progress and answers, piece by piece. */
  readonly print: (text: string) => void;
}

/** What came of it. */
export interface FolderResult {
  /** One entry a notebook, in order. */
  readonly entries: readonly IndexEntry[];
  /** Notebooks whose stored outputs differ from fresh ones; found only by `check`. */
  readonly stale: readonly string[];
  /** Why there is no index of the pages, where it could not be written. */
  readonly noIndex?: string;
}

/** Runs the notebooks of a folder one after the other, and writes what was asked for. */
export async function runFolder(run: FolderRun): Promise<FolderResult> {
  const entries: IndexEntry[] = [];
  const stale: string[] = [];
  for (const name of run.names) {
    const entry = await runOne(name, run, () => stale.push(name));
    entries.push(entry);
  }
  if (run.out === undefined) return { entries, stale };
  try {
    await writeWhole(join(run.out, "index.html"), indexPage(entries, run));
    return { entries, stale };
  } catch (error) {
    return { entries, stale, noIndex: error instanceof Error ? error.message : String(error) };
  }
}

async function runOne(name: string, run: FolderRun, onStale: () => void): Promise<IndexEntry> {
  const page = run.out === undefined ? undefined : join(run.out, `${name}.html`);
  run.print(`${name}: `);
  let title = name;
  try {
    const text = await Deno.readTextFile(notebookFile(run.folder, name));
    const stored = parseNotebook(text, `${name}.ipynb`);
    title = titleOf(stored, name);
    const started = performance.now();
    const { notebook, failure } = await runPart(name, stored, run);
    if (failure?.cause === "left out") {
      const leftOut = failure.message + await sheetFor(failure.message, partFolder(run));
      run.print(`left out: ${leftOut}\n`);
      if (page !== undefined) await removeIfThere(page);
      return { name, title, leftOut };
    }
    if (failure !== undefined) throw new Error(failureText(failure));
    const seconds = ((performance.now() - started) / 1000).toFixed(1);
    run.print(`done in ${seconds} s\n`);
    if (page !== undefined) {
      const warn = (reason: string): void =>
        run.print(`  its figures stand still: the page's program could not be made: ${reason}\n`);
      const said = run.settings?.get(name)?.said;
      await writeWhole(page, await enlivened(notebookPage(notebook, name, said), warn));
    }
    const fresh = writeNotebook(notebook);
    if (run.stored === "store" && fresh !== text) {
      await writeWhole(notebookFile(run.folder, name), fresh);
    }
    if (run.stored === "check" && fresh !== text) onStale();
    const answer = answerOf(notebook);
    return { name, title, ...(answer === undefined ? {} : { answer }) };
  } catch (error) {
    const failure = error instanceof Error ? error.message : String(error);
    // Of the part, which is the same for all, the end of the run speaks once.
    if (failure === run.partFault) run.print("not run\n");
    else run.print(`FAILED\n  ${name}, ${failure.replaceAll("\n", "\n    ")}\n`);
    // A page of an earlier run would read like today's answer.
    if (page !== undefined) await removeIfThere(page);
    return { name, title, failure };
  }
}

/** A wrong input says all that its owner needs; where in the program it was found helps nobody. */
function failureText({ number, firstLine, message, cause }: CellFailure): string {
  return cause === "input" ? message : `code cell ${number} (${firstLine}): ${message}`;
}

function partFolder({ part, folder }: FolderRun): string | undefined {
  return part === undefined ? undefined : resolve(folder, part);
}

async function runPart(name: string, stored: Notebook, run: FolderRun): Promise<NotebookRun> {
  const part = partOf(stored);
  if (part !== undefined && run.partFault !== undefined) throw new Error(run.partFault);
  // A lesson has no part: of all notebooks it runs as it is, asked for by name it cannot be meant.
  const same = run.part === undefined || run.part === part || (part === undefined && !run.asked);
  const placed = same ? stored : withPart(stored, run.part!);
  const notebook = withSettings(placed, run.settings?.get(name)?.values ?? new Map());
  return await runNotebook(notebook, {
    folder: run.folder,
    timeLimit: run.timeLimit,
    onCell: (number, count) =>
      run.print(number === count ? `${number} of ${count} ` : `${number} `),
    explain: (cell, before) => explainCell(name, cell, before),
  });
}

/** What the type checker says of a cell that the kernel could not compile. */
async function explainCell(name: string, cell: Cell, before: readonly Cell[]): Promise<string> {
  const notebook = { cells: [...before, cell], metadata: {}, nbformat: 4, nbformat_minor: 5 };
  const findings = await checkCells([{ name, notebook }], { config: CONFIG, lint: false });
  const found = findings.find((finding) => finding.cell === before.length + 1) ?? findings[0];
  return found === undefined
    ? "the kernel could not compile it, and gave no reason"
    : `${found.place.replace(/^.*, (?=line)/, "")}: ${found.message.replace(/^error: /, "")}`;
}
