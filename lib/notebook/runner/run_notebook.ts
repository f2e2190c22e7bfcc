import { type CellEnd, startKernel } from "./kernel.ts";
import type { Cell, Notebook, Output } from "./notebook_file.ts";
import { outputsOf } from "./outputs.ts";
import { hasTag } from "./parameters.ts";
import { endsInValue } from "./cell_value.ts";
import { LEFT_OUT, leftOutReason } from "../left_out.ts";

/** How a notebook is run. */
export interface RunOptions {
  /** The folder the kernel works in: the notebook's own. */
  readonly folder: string;
  /** Longest time for one cell [ms]. */
  readonly timeLimit: number;
  /** Told of each code cell before it runs: its number and how many there are. */
  readonly onCell?: (number: number, count: number) => void;
  /** Finds out why a cell could not be compiled, which the kernel does not tell. */
  readonly explain?: (cell: Cell, before: readonly Cell[]) => Promise<string>;
}

/** A cell that failed. */
export interface CellFailure {
  /** Its number among the code cells, as Jupyter shows it. */
  readonly number: number;
  /** Its first line, to find it by. */
  readonly firstLine: string;
  /** What went wrong. */
  readonly message: string;
  /** Whose matter it is: a wrong input, an input that is not there, or the program's. */
  readonly cause: "input" | "left out" | "program";
}

/** A notebook after its run. */
export interface NotebookRun {
  /** The notebook with fresh outputs; those after a failure are empty. */
  readonly notebook: Notebook;
  /** The first cell that failed, if one did. */
  readonly failure?: CellFailure;
}

/** Runs a notebook top to bottom on a kernel of its own. */
export async function runNotebook(notebook: Notebook, options: RunOptions): Promise<NotebookRun> {
  const code = notebook.cells.filter((cell) => cell.cell_type === "code");
  const fresh = new Map<string, Pick<Cell, "outputs" | "execution_count">>();
  let failure: CellFailure | undefined;
  const kernel = await startKernel({ folder: options.folder });
  try {
    for (const [i, cell] of code.entries()) {
      if (cell.source.trim() === "" || hasTag(cell, "skip-execution")) continue;
      options.onCell?.(i + 1, code.length);
      const { messages, end } = await kernel.execute(cell.source, options.timeLimit);
      const outputs = outputsOf(messages);
      fresh.set(cell.id, { outputs, execution_count: fresh.size + 1 });
      const message = await faultOf({ cell, end, outputs, before: code.slice(0, i), options });
      if (message === undefined) continue;
      const firstLine = cell.source.trim().split("\n")[0]!;
      failure = { number: i + 1, firstLine, message, cause: causeOf(end) };
      break;
    }
  } finally {
    await kernel.stop();
  }
  const cells = notebook.cells.map((cell) =>
    cell.cell_type === "code"
      ? { ...cell, ...(fresh.get(cell.id) ?? { outputs: [], execution_count: null }) }
      : cell
  );
  const done = { notebook: { ...notebook, cells } };
  return failure === undefined ? done : { ...done, failure };
}

function causeOf(end: CellEnd): CellFailure["cause"] {
  if (end.how !== "error") return "program";
  return end.name === "InputError" ? "input" : end.name === LEFT_OUT ? "left out" : "program";
}

interface Ended {
  readonly cell: Cell;
  readonly end: CellEnd;
  readonly outputs: readonly Output[];
  readonly before: readonly Cell[];
  readonly options: RunOptions;
}

/** What is wrong with how a cell ended, or undefined. */
async function faultOf(ended: Ended): Promise<string | undefined> {
  const { cell, end, outputs, options } = ended;
  const mayRaise = hasTag(cell, "raises-exception");
  switch (end.how) {
    case "time limit":
      return `it did not end within ${options.timeLimit / 1000} s`;
    case "kernel ended":
      return endedText(end.code, end.stderr);
    case "error":
      return mayRaise ? undefined : await errorText(ended, end);
    case "done":
      if (mayRaise) return "it is tagged raises-exception and raised none";
      return outputs.length === 0 && endsInValue(cell.source)
        ? "it ends in a value and shows nothing: NaN, Infinity, -0, a BigInt and undefined are " +
          "not shown by the kernel. End in a table, an answer or another display value; where " +
          "nothing is meant to show, put void before the value"
        : undefined;
  }
}

function endedText(code: number, stderr: string): string {
  const last = stderr.split("\n").filter((line) =>
    !/^(Warning "deno jupyter"|Download )/.test(line)
  );
  // 128 and the number of the signal; 9 is what a system short of memory sends.
  const killed = code === 137 ? ": it was killed, as a machine short of memory does" : "";
  return [`the kernel ended in it, exit code ${code}${killed}`, ...last].join("\n").trimEnd();
}

/** The kernel says "Execution failed" and no more of a cell that it could not compile. */
async function errorText(
  { cell, before, options, outputs }: Ended,
  { name, text, trace }: CellEnd & { how: "error" },
): Promise<string> {
  const sent = outputs.some(({ output_type }) => output_type === "error") || name === "Uncaught";
  if (!sent) return await options.explain?.(cell, before) ?? text;
  if (name === "Uncaught") return trace;
  // A wrong input says all that its owner needs; where in the program it was found helps nobody.
  if (name === LEFT_OUT) return leftOutReason(text);
  if (name === "InputError") return text;
  // What a cell itself refuses is a sentence; the frames behind it have no names.
  const frames = trace.match(/^ +at .*$/gm) ?? [];
  if (name === "Error" && frames.every((frame) => frame.includes("<anonymous>"))) return text;
  return trace.startsWith(name) ? trace : `${name}: ${text}\n${trace}`.trimEnd();
}
