import { join } from "node:path";
import { deno } from "./deno_command.ts";

/**
 * Which notebooks `deno fmt` would change. Its own `--check` calls every notebook unformatted
 * (2.9.6), so a copy is formatted and compared.
 *
 * @param files The notebooks.
 * @param config The project's deno.json.
 * @returns Those files that are not formatted.
 */
export async function unformatted(files: readonly string[], config: string): Promise<string[]> {
  if (files.length === 0) return [];
  const folder = await Deno.makeTempDir({ prefix: "laminate-format-" });
  try {
    const copies = files.map((file, i) => ({ file, copy: join(folder, `${i}.ipynb`) }));
    for (const { file, copy } of copies) await Deno.copyFile(file, copy);
    const { code, text } = await deno([
      ...["fmt", "--quiet", "--config", config],
      ...copies.map(({ copy }) => copy),
    ]);
    if (code !== 0) return [text.trim()];
    const found: string[] = [];
    for (const { file, copy } of copies) {
      if (await Deno.readTextFile(copy) !== await Deno.readTextFile(file)) found.push(file);
    }
    return found;
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}
