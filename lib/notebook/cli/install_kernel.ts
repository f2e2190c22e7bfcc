import { join } from "node:path";
import { writeWhole } from "../runner/files.ts";
import { KERNELSPEC } from "../runner/notebook_file.ts";

const HELP = `Tells Jupyter and VS Code how to run this project's notebooks.

  deno task kernel [--to FOLDER]

  --to FOLDER   Jupyter's data folder, if it is not the usual one
  --help        this text
`;

/** What decides where the kernel goes and how it is started. */
export interface Machine {
  /** Operating system, as Deno names it. */
  readonly os: typeof Deno.build.os;
  /** Version of Deno, for machines that fetch it through Node. */
  readonly version: string;
  /** Value of an environment variable. */
  readonly env: (name: string) => string | undefined;
}

/** Jupyter's folder for what a user installs. */
export function dataFolder({ os, env }: Machine): string {
  const set = env("JUPYTER_DATA_DIR");
  if (set) return set;
  if (os === "windows") return join(env("APPDATA") ?? "", "jupyter");
  const home = env("HOME") ?? "";
  if (os === "darwin") return join(home, "Library", "Jupyter");
  return join(env("XDG_DATA_HOME") || join(home, ".local", "share"), "jupyter");
}

/**
 * The kernelspec: interrupts as messages, since the kernel dies of the signal, and no colour codes
 * in text.
 *
 * @param command What starts Deno: `deno`, or `npx` with its arguments.
 * @returns The content of kernel.json.
 */
export function kernelspec(command: readonly string[]): string {
  const spec = {
    argv: [...command, "jupyter", "--kernel", "--conn", "{connection_file}"],
    display_name: KERNELSPEC.display_name,
    env: { NO_COLOR: "1" },
    interrupt_mode: "message",
    language: KERNELSPEC.language,
  };
  return JSON.stringify(spec, null, 1) + "\n";
}

/** `deno` where it is installed; through npx else, since npx's own copy may go any day. */
export async function denoCommand({ os, version, env }: Machine): Promise<string[]> {
  const [separator, name] = os === "windows" ? [";", "deno.exe"] : [":", "deno"];
  for (const folder of (env("PATH") ?? "").split(separator)) {
    if (folder === "" || /_npx|node_modules/.test(folder)) continue;
    const isFile = await Deno.stat(join(folder, name)).then((info) => info.isFile, () => false);
    if (isFile) return ["deno"];
  }
  return ["npx", "-y", `deno@${version}`];
}

async function main(args: readonly string[]): Promise<number> {
  const machine: Machine = {
    os: Deno.build.os,
    version: Deno.version.deno,
    env: (name) => Deno.env.get(name),
  };
  const [flag, to] = args;
  if (flag === "--help" || flag === "-h") {
    console.log(HELP);
    return 0;
  }
  if (flag !== undefined && (flag !== "--to" || to === undefined || args.length > 2)) {
    console.error(HELP);
    return 2;
  }
  const file = join(to ?? dataFolder(machine), "kernels", KERNELSPEC.name, "kernel.json");
  await writeWhole(file, kernelspec(await denoCommand(machine)));
  console.log(`Installed the kernel "${KERNELSPEC.display_name}":\n  ${file}
Open a notebook of this project in Jupyter or VS Code and choose that kernel.`);
  return 0;
}

if (import.meta.main) Deno.exit(await main(Deno.args));
