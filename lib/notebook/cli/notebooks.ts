import { isAbsolute, join, relative, resolve } from "node:path";
import { parseArgs } from "node:util";
import { endProcessesOnSignal } from "../runner/processes.ts";
import { notebookNames } from "../runner/files.ts";
import { type FolderResult, type FolderRun, runFolder } from "./run_folder.ts";
import { NOTEBOOKS, ROOT } from "./project.ts";

const HELP = `Runs the notebooks and writes a page for each.

  deno task notebooks [--part FOLDER] [NAME ...]

  NAME                 which notebooks, such as resin_ratio; all if none is named
  --part FOLDER        the part folder with your own figures; each notebook names its own default
  --out FOLDER         where the pages go (default: out)
  --from FOLDER        where the notebooks are (default: notebooks)
  --time-limit SECONDS longest time for one cell (default: 60)
  --store              put the fresh outputs into the notebooks
  --check              write nothing; fail if stored outputs differ from fresh ones
  --help               this text

Ends with 0 if all went well, 1 if a cell failed or outputs differ, 2 if the command is wrong.
`;

/** A command line that cannot be meant. */
class UsageError extends Error {}

/** Reads a command line into what is to be done; undefined if help was asked for. */
export async function readCommand(
  args: readonly string[],
  from: string,
  print: (text: string) => void,
): Promise<FolderRun | undefined> {
  const { values, positionals } = parse(args);
  if (values.help) return undefined;
  const folder = values.from === undefined ? NOTEBOOKS : resolve(from, values.from);
  const found = await notebookNames(folder).catch(() => {
    throw new UsageError(`there is no folder ${folder}`);
  });
  if (found.length === 0) throw new UsageError(`there is no notebook in ${folder}`);
  const names = positionals.map((name) => name.replace(/^.*[\\/]/, "").replace(/\.ipynb$/, ""));
  const unknown = names.filter((name) => !found.includes(name));
  if (unknown.length > 0) {
    throw new UsageError(`no notebook ${unknown.join(", ")}; there are: ${found.join(", ")}`);
  }
  if (values.part !== undefined && (values.store || values.check)) {
    throw new UsageError("what is stored belongs to the notebooks' own part: leave --part out");
  }
  if (values.store && values.check) throw new UsageError("--store and --check exclude each other");
  const seconds = Number(values["time-limit"] ?? 60);
  if (!(seconds > 0 && seconds <= 86_400)) {
    throw new UsageError(`--time-limit is ${values["time-limit"]}, must be seconds above 0`);
  }
  return {
    folder,
    names: names.length > 0 ? names : found,
    ...(values.part === undefined ? {} : { part: await partFolder(values.part, from, folder) }),
    ...(values.check ? {} : { out: resolve(from, values.out ?? join(ROOT, "out")) }),
    stored: values.store ? "store" : values.check ? "check" : "leave",
    timeLimit: seconds * 1000,
    print,
  };
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
        help: { type: "boolean", short: "h" },
      },
    });
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error));
  }
}

/** A part folder as notebooks write it: from their own folder, or whole if it lies elsewhere. */
async function partFolder(part: string, from: string, notebooks: string): Promise<string> {
  const whole = resolve(from, part);
  const isFolder = await Deno.stat(whole).then((info) => info.isDirectory, () => false);
  if (!isFolder) throw new UsageError(`--part: there is no folder ${whole}`);
  const inside = relative(ROOT, whole);
  const isOurs = !inside.startsWith("..") && !isAbsolute(inside);
  const path = isOurs ? relative(notebooks, whole) : whole;
  return Deno.build.os === "windows" ? path.replaceAll("\\", "/") : path;
}

/** The answers and where to look, for the end of a run. */
export function summary(run: FolderRun, result: FolderResult): string {
  const { entries, stale, noIndex } = result;
  const lines = [""];
  for (const { name, title, answer, failure } of entries) {
    lines.push(`${title}`);
    if (failure !== undefined) lines.push(`  NO ANSWER: ${failure.split("\n")[0]}`);
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

async function main(): Promise<number> {
  const encoder = new TextEncoder();
  const print = (text: string): void => void Deno.stdout.writeSync(encoder.encode(text));
  try {
    // `deno task` works in the project's folder and says here where it was called.
    const from = Deno.env.get("INIT_CWD") ?? Deno.cwd();
    const run = await readCommand(Deno.args, from, print);
    if (run === undefined) {
      print(HELP);
      return 0;
    }
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
