import { join } from "@std/path";
import { ROOT } from "../../lib/notebook/cli/project.ts";
import type { Notebook } from "../../lib/notebook/runner/notebook_file.ts";
import { notebookOf } from "./_fixtures.ts";

/** The program behind `deno task notebooks`. */
export const PROGRAM = join(ROOT, "lib/notebook/cli/notebooks.ts");
/** The import of a cell that answers. */
export const SHOW = 'import { answer } from "@laminate/notebooks/notebook";';
/** A first cell that names a part. */
export const PART: readonly [string, string] = ['let part = "data/a";', "parameters"];

/** Notebook cells that give an answer about the part. */
export const good = (): Notebook =>
  notebookOf("# Title of good", PART, SHOW, "answer(`Part ${part} is light.`);");

/** The smallest part that can be read. */
export async function writePart(
  folder: string,
  files: Readonly<Record<string, string>> = {},
): Promise<void> {
  await Deno.mkdir(folder, { recursive: true });
  const layup = "layup,layer,material,resin,angle_deg\n" +
    "sole,1,glass twill 200,epoxy laminating slow,0\n";
  for (const [name, text] of Object.entries({ "layup.csv": layup, ...files })) {
    await Deno.writeTextFile(join(folder, name), text);
  }
}

/** How a command ended. */
export interface Ended {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs the command on the notebooks of a folder. */
export async function command(folder: string, ...args: readonly string[]): Promise<Ended> {
  const { code, stdout, stderr } = await new Deno.Command(Deno.execPath(), {
    args: [
      "run",
      "--quiet",
      "-A",
      PROGRAM,
      "--from",
      folder,
      "--out",
      join(folder, "out"),
      ...args,
    ],
    env: { NO_COLOR: "1", INIT_CWD: folder },
    stdin: "null",
  }).output();
  const decoder = new TextDecoder();
  return { code, out: decoder.decode(stdout), err: decoder.decode(stderr) };
}

/** A page of a run. */
export const read = (folder: string, name: string): Promise<string> =>
  Deno.readTextFile(join(folder, "out", `${name}.html`));

/** What a folder holds. */
export const names = (folder: string): string[] =>
  [...Deno.readDirSync(folder)].map(({ name }) => name).sort();
