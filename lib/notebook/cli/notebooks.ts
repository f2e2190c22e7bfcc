import { join, resolve } from "node:path";
import { parseArgs } from "node:util";
import { InputError } from "../../check/mod.ts";
import { type SettingRecord, settingsFile } from "../../records/mod.ts";
import { isInProject, partFaultOf, pathForNotebooks } from "./part_folder.ts";
import { endProcessesOnSignal } from "../runner/processes.ts";
import { notebookNames, writeWhole } from "../runner/files.ts";
import { type FolderResult, type FolderRun, runFolder } from "./run_folder.ts";
import { NOTEBOOKS, ROOT } from "./project.ts";
import { readSettingsOf, settableIn, settingsTable, setValues } from "./settings.ts";
import type { SetValues } from "./settings.ts";

const HELP = `Runs the notebooks and writes a page for each.

  deno task notebooks [--part FOLDER] [--units US] [NAME ...]

  NAME                 which notebooks, such as 3-load-test; all if none is named
  --part FOLDER        the part folder with your own figures; each notebook names its own default
  --units metric|US    the units of answers, tables and figures
  --settings           writes ${settingsFile} into the part folder, with all that may be set
  --out FOLDER         where the pages go (default: out)
  --from FOLDER        where the notebooks are, inside the project (default: notebooks)
  --time-limit SECONDS longest time for one cell (default: 60)
  --store              put the fresh outputs into the notebooks
  --check              write nothing; fail if stored outputs differ from fresh ones
  --help               this text

Spans, loads, prices and the like stand in a notebook's first cell. ${settingsFile} in the part folder
sets them: columns notebook, name, value; a row without a notebook counts for each that has the name.

Ends with 0 if all went well, 1 if a cell failed, an input is wrong or outputs differ, 2 if the
command is wrong.
`;

/** A command line that cannot be meant. */
class UsageError extends Error {}

/** What a command line asks for. */
export type Command =
  | { readonly what: "help" }
  | { readonly what: "settings"; readonly folder: string; readonly part: string }
  | { readonly what: "run"; readonly run: FolderRun };

/** Reads a command line into what is to be done. */
export async function readCommand(
  args: readonly string[],
  from: string,
  print: (text: string) => void,
): Promise<Command> {
  const { values, positionals } = parse(args);
  if (values.help) return { what: "help" };
  checkTogether(values);
  const folder = values.from === undefined ? NOTEBOOKS : resolve(from, values.from);
  const found = await notebookNames(folder).catch(() => {
    throw new UsageError(`there is no folder ${folder}`);
  });
  if (found.length === 0) throw new UsageError(`there is no notebook in ${folder}`);
  if (!isInProject(folder)) {
    throw new UsageError(`--from: ${folder} must lie inside the project, ${ROOT}`);
  }
  const names = positionals.map((name) => name.replace(/^.*[\\/]/, "").replace(/\.ipynb$/, ""));
  const unknown = names.filter((name) => !found.includes(name));
  if (unknown.length > 0) {
    throw new UsageError(`no notebook ${unknown.join(", ")}; there are: ${found.join(", ")}`);
  }
  const part = values.part === undefined ? undefined : await partFolder(values.part, from);
  if (values.settings) return { what: "settings", folder, part: part! };
  const seconds = Number(values["time-limit"] ?? 60);
  if (!(seconds > 0 && seconds <= 86_400)) {
    throw new UsageError(`--time-limit is ${values["time-limit"]}, must be seconds above 0`);
  }
  const inputs = await inputsOf({ folder, found, part, units: values.units });
  const run: FolderRun = {
    folder,
    names: names.length > 0 ? names : found,
    asked: names.length > 0,
    ...(part === undefined ? {} : { part: pathForNotebooks(part, folder) }),
    ...inputs,
    ...(values.check ? {} : { out: resolve(from, values.out ?? join(ROOT, "out")) }),
    stored: values.store ? "store" : values.check ? "check" : "leave",
    timeLimit: seconds * 1000,
    print,
  };
  return { what: "run", run };
}

/** What cannot be meant together. */
function checkTogether(values: ReturnType<typeof parse>["values"]): void {
  const { part, units, settings, store, check } = values;
  if (part !== undefined && (store || check)) {
    throw new UsageError("what is stored belongs to the notebooks' own part: leave --part out");
  }
  if (units !== undefined && (store || check)) {
    throw new UsageError("what is stored is in the notebooks' own units: leave --units out");
  }
  if (store && check) throw new UsageError("--store and --check exclude each other");
  if (units !== undefined && units !== "metric" && units !== "US") {
    throw new UsageError(`--units is ${units}, must be metric or US`);
  }
  if (settings && part === undefined) {
    throw new UsageError("--settings writes into a part folder: name it with --part");
  }
}

interface ToSet {
  readonly folder: string;
  readonly found: readonly string[];
  readonly part: string | undefined;
  readonly units: string | undefined;
}

/** What the part folder says, or why it cannot be read. */
async function inputsOf(asked: ToSet): Promise<Pick<FolderRun, "settings" | "partFault">> {
  const partFault = asked.part === undefined ? undefined : await partFaultOf(asked.part);
  if (partFault !== undefined) return { partFault };
  try {
    return { settings: await settingsOf(asked) };
  } catch (error) {
    if (error instanceof InputError) return { partFault: error.message };
    throw error;
  }
}

/** What is set in each notebook: by the part folder, and by --units before that. */
async function settingsOf(
  { folder, found, part, units }: ToSet,
): Promise<ReadonlyMap<string, SetValues>> {
  const settable = await settableIn(folder, found);
  const rows = part === undefined ? [] : await readSettingsOf(part);
  if (units === undefined) return setValues({ rows, settable });
  // The command counts before the file, whose other rows are checked all the same.
  const kept = rows.filter(({ name }) => name !== "units");
  const named: SettingRecord = { name: "units", value: units, line: 0 };
  return setValues({ rows: kept, settable, command: named });
}

// deno-lint-ignore explicit-function-return-type -- the type follows from the options
function parse(args: readonly string[]) {
  try {
    return parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        part: { type: "string" },
        out: { type: "string" },
        from: { type: "string" },
        "time-limit": { type: "string" },
        store: { type: "boolean" },
        check: { type: "boolean" },
        units: { type: "string" },
        settings: { type: "boolean" },
        help: { type: "boolean", short: "h" },
      },
    });
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error));
  }
}

async function partFolder(part: string, from: string): Promise<string> {
  const whole = resolve(from, part);
  const isFolder = await Deno.stat(whole).then((info) => info.isDirectory, () => false);
  if (!isFolder) throw new UsageError(`--part: there is no folder ${whole}`);
  return whole;
}

/** Writes `settings.csv` with all that may be set, where there is none yet. */
async function writeSettings(folder: string, part: string): Promise<string> {
  const path = join(part, settingsFile);
  if (await Deno.stat(path).then(() => true, () => false)) {
    throw new UsageError(`${path} is there already: move it away to have a fresh one`);
  }
  await writeWhole(path, settingsTable(await settableIn(folder, await notebookNames(folder))));
  return path;
}

/** The answers and where to look, for the end of a run. */
export function summary(run: FolderRun, result: FolderResult): string {
  const { entries, stale, noIndex } = result;
  const lines = run.partFault === undefined ? [""] : ["", run.partFault, ""];
  for (const { name, title, answer, failure, leftOut } of entries) {
    // What is said above once is not said of each notebook.
    if (failure !== undefined && failure === run.partFault) continue;
    lines.push(`${title}`);
    if (leftOut !== undefined) {
      lines.push(`  left out: ${leftOut}`);
      continue;
    }
    if (failure !== undefined) lines.push(`  NO ANSWER: ${firstOf(failure)}`);
    else lines.push(`  ${answer?.sentence ?? "(this notebook states no answer)"}`);
    if (run.out !== undefined && failure === undefined) lines.push(`  ${join(run.out, name)}.html`);
  }
  if (noIndex !== undefined) lines.push("", `NO INDEX: ${noIndex}`);
  else if (run.out !== undefined) lines.push("", `All answers: ${join(run.out, "index.html")}`);
  for (const name of stale) {
    lines.push(
      `${name}: stored outputs differ from fresh ones; deno task notebooks:store renews them`,
    );
  }
  return lines.join("\n") + "\n";
}

/** The first line of a failure; of several faults the first one too. */
function firstOf(failure: string): string {
  const [first = "", second] = failure.split("\n");
  return / \d+ faults$/.test(first) && second !== undefined
    ? `${first}, the first: ${second.trim()}`
    : first;
}

async function main(): Promise<number> {
  const encoder = new TextEncoder();
  const print = (text: string): void => void Deno.stdout.writeSync(encoder.encode(text));
  try {
    // `deno task` works in the project's folder and says here where it was called.
    const from = Deno.env.get("INIT_CWD") ?? Deno.cwd();
    const command = await readCommand(Deno.args, from, print);
    if (command.what === "help") {
      print(HELP);
      return 0;
    }
    if (command.what === "settings") {
      const path = await writeSettings(command.folder, command.part);
      print(
        `${path}\nChange what is not so for your part, and take out what is: its usual value stays.\n`,
      );
      return 0;
    }
    const { run } = command;
    endProcessesOnSignal();
    const result = await runFolder(run);
    print(summary(run, result));
    const failed = result.entries.some(({ failure }) => failure !== undefined);
    return failed || result.stale.length > 0 || result.noIndex !== undefined ? 1 : 0;
  } catch (error) {
    if (!(error instanceof UsageError)) throw error;
    console.error(`${error.message}\ndeno task notebooks --help shows what there is.`);
    return 2;
  }
}

if (import.meta.main) Deno.exit(await main());
