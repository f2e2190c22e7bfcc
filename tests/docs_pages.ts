/**
 * Writes documentation pages of the library from its comments, a section for each room:
 * `deno task docs [FOLDER]`.
 *
 * `deno doc --html` does the work. Left alone it gives many rooms no front page, names them in its
 * import lines as if they were packages, and its search loses the way on the page of a room.
 *
 * @module
 */
import { dirname, join, relative, resolve } from "node:path";
import { CONFIG, ROOT } from "../lib/notebook/cli/project.ts";

/** Where the pages go if no folder is named. */
const USUAL = join(ROOT, "out/docs");

/** A room, and the file that is its public face. */
interface Room {
  readonly name: string;
  readonly path: string;
}

/** Writes the pages into a folder, which `deno doc` clears first. */
async function writeDocs(out: string): Promise<readonly Room[]> {
  const config = JSON.parse(await Deno.readTextFile(CONFIG));
  const rooms = Object.entries(config.exports as Record<string, string>)
    .filter(([name]) => name !== ".")
    .map(([name, path]): Room => ({ name: name.replace("./", ""), path: join(ROOT, path) }));
  await Deno.mkdir(dirname(out), { recursive: true });
  const folder = await Deno.makeTempDir({ dir: dirname(out), prefix: "docs-" });
  try {
    const front = join(folder, "front.ts");
    await Deno.writeTextFile(front, await frontPage(rooms));
    const at = (path: string): string => `./${relative(folder, path).replaceAll("\\", "/")}`;
    const named = rooms.map(({ name, path }) => [`./${name}`, at(path)]);
    const exports = { ".": "./front.ts", ...Object.fromEntries(named) };
    const settings = join(folder, "deno.json");
    await Deno.writeTextFile(settings, JSON.stringify({ exports, imports: config.imports }));
    const { success, stderr } = await new Deno.Command(Deno.execPath(), {
      args: [
        // Comments need no package; looked up, one is now and then asked for at the registry.
        ...["doc", "--quiet", "--no-npm", "--html", `--name=${config.name}`, `--output=${out}`],
        ...[front, ...rooms.map(({ path }) => path)],
      ],
      // The exports that count are those of the settings found from here.
      cwd: folder,
      env: { NO_COLOR: "1" },
    }).output();
    const text = new TextDecoder().decode(stderr).trim();
    if (!success || text !== "") throw new Error(`deno doc says: ${text}`);
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
  for (const { name } of rooms) await nameInFull(join(out, name), name, `${config.name}/${name}`);
  await edit(join(out, "search.js"), (text) => text.replace(FROM_PAGE, FROM_SCRIPT));
  return rooms;
}

/** The module whose comment becomes the front page: what each room answers, with a link to it. */
async function frontPage(rooms: readonly Room[]): Promise<string> {
  const whole = await moduleComment(join(ROOT, "lib/mod.ts"));
  const list = await Promise.all(rooms.map(async ({ name, path }) => {
    const [answers] = (await moduleComment(path)).split("\n\n");
    return `- [${name}](./${name}/index.html): ${answers!.replaceAll("\n", " ")}`;
  }));
  const lines = [whole, ...list].join("\n").split("\n").map((line) => ` * ${line}`);
  return `/**\n${lines.join("\n")}\n *\n * @module\n */\nexport {};\n`;
}

/** What a module's comment says, before its tags. */
async function moduleComment(path: string): Promise<string> {
  const [, comment = ""] = (await Deno.readTextFile(path)).match(/^\/\*\*\n([^]*?)\*\//) ?? [];
  return comment.replaceAll(/^ \* ?/gm, "").split(/^@/m)[0]!;
}

/** Names a room in the import lines of its pages as a program has to. */
async function nameInFull(folder: string, name: string, full: string): Promise<void> {
  for await (const entry of Deno.readDir(folder)) {
    const path = join(folder, entry.name);
    if (entry.isDirectory) await nameInFull(path, name, full);
    else {await edit(path, (text) =>
        text.replaceAll(`from &quot;${name}&quot;`, `from &quot;${full}&quot;`));}
  }
}

async function edit(path: string, change: (text: string) => string): Promise<void> {
  const text = await Deno.readTextFile(path);
  const changed = change(text);
  if (changed !== text) await Deno.writeTextFile(path, changed);
}

/** How the search finds the pages: it counts on each page lying two folders deep. */
const FROM_PAGE = /"\.\.\/"\.repeat\([^;]*\)(?=;)/;
const FROM_SCRIPT = 'new URL(".", document.currentScript.src).href';

async function main(folder: string | undefined): Promise<number> {
  const out = folder === undefined ? USUAL : resolve(folder);
  if (folder !== undefined && await Deno.stat(out).then(() => true, () => false)) {
    console.error(`${out} is there already: name a new folder, since what is in it would go`);
    return 2;
  }
  const rooms = await writeDocs(out);
  console.log(`Documentation of ${rooms.length} rooms: ${join(out, "index.html")}`);
  return 0;
}

if (import.meta.main) Deno.exit(await main(Deno.args[0]));
