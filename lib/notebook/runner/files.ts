import { dirname, join } from "node:path";

/** Writes a file beside its place and moves it there, so that nobody reads half a file. */
export async function writeWhole(path: string, text: string): Promise<void> {
  const beside = `${path}.${crypto.randomUUID().slice(0, 8)}.tmp`;
  try {
    await Deno.mkdir(dirname(path), { recursive: true });
    await Deno.writeTextFile(beside, text);
    await Deno.rename(beside, path);
  } catch (error) {
    // Where even this fails, the first reason is the one to tell.
    await removeIfThere(beside).catch(() => {});
    const reason = error instanceof Error ? error.message : String(error);
    throw new Error(`cannot write ${path}: ${reason}`, { cause: error });
  }
}

/** Removes a file that may not be there. */
export async function removeIfThere(path: string): Promise<void> {
  try {
    await Deno.remove(path);
  } catch (error) {
    if (!(error instanceof Deno.errors.NotFound)) throw error;
  }
}

/** Names of the notebooks in a folder without their ending, in order: 2 comes before 10. */
export async function notebookNames(folder: string): Promise<string[]> {
  const names: string[] = [];
  for await (const { name, isFile } of Deno.readDir(folder)) {
    if (isFile && name.endsWith(".ipynb")) names.push(name.slice(0, -".ipynb".length));
  }
  return names.sort(new Intl.Collator("en", { numeric: true }).compare);
}

/** The file of a notebook. */
export function notebookFile(folder: string, name: string): string {
  return join(folder, `${name}.ipynb`);
}
