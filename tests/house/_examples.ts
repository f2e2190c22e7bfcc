/**
 * Arguments that can be meant, taken from the examples in the documentation and from the notebooks:
 * their code is run with every function of the library replaced by one that notes what it is called
 * with.
 *
 * @module
 */
import { join } from "@std/path";
import { parseNotebook } from "../../lib/notebook/runner/notebook_file.ts";
import type { DocFunction } from "./_doc.ts";
import type { Args } from "./_light.ts";
import { ROOT } from "./_source.ts";

/** Argument lists of calls that gave a result, by the name of the function. */
export type Calls = ReadonlyMap<string, readonly Args[]>;

type Noted = Map<string, Args[]>;

const IMPORT =
  /import\s+(type\s+)?(\{[^}]*\}|\*\s+as\s+\w+)\s+from\s+"@laminate\/notebooks(?:\/(\w+))?";?/g;

/** What the functions of the library are called with in the examples of some of them. */
export async function callsInExamples(functions: readonly DocFunction[]): Promise<Calls> {
  const calls: Noted = new Map();
  for (const { examples } of functions) {
    for (const example of examples) await runNoted(example, calls);
  }
  return calls;
}

/** What they are called with in the project's notebooks. */
export async function callsInNotebooks(): Promise<Calls> {
  const calls: Noted = new Map();
  const folder = join(ROOT, "notebooks");
  const names = [...Deno.readDirSync(folder)].map(({ name }) => name).toSorted();
  for (const name of names) {
    if (!name.endsWith(".ipynb")) continue;
    const { cells } = parseNotebook(Deno.readTextFileSync(join(folder, name)), name);
    const code = cells.filter((cell) => cell.cell_type === "code").map(({ source }) => source);
    // The demonstration part lies beside the notebooks' folder.
    await runNoted(code.join("\n").replaceAll('"../data', `"${join(ROOT, "data")}`), calls);
  }
  return calls;
}

async function runNoted(code: string, calls: Noted): Promise<void> {
  const rooms: Record<string, unknown> = {};
  for (const [, , , room = ""] of code.matchAll(IMPORT)) {
    rooms[room] ??= noting(await import(join(ROOT, "lib", room, "mod.ts")), calls);
  }
  Reflect.set(globalThis, "__laminateRooms", rooms);
  const ready = code.replace(
    IMPORT,
    (_, type, names: string, room = "") =>
      type === undefined
        ? `const ${withoutTypes(names)} = globalThis.__laminateRooms["${room}"];`
        : "",
  );
  // Code that fails is told by those steps of the gate that run it for its own sake.
  await import(`data:application/typescript,${encodeURIComponent(ready)}`).catch(() => {});
  Reflect.deleteProperty(globalThis, "__laminateRooms");
}

function withoutTypes(names: string): string {
  return names.replace(/^\*\s+as\s+/, "").replace(/\btype\s+\w+\s*,?/g, "").replace(/ as /g, ": ");
}

/** Most calls of one function that are kept. */
const MOST = 20;

function noting(
  module: Readonly<Record<string, unknown>>,
  calls: Noted,
): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(module).map(([name, value]) => {
      // A class is no call of ours.
      if (typeof value !== "function" || /^class\b/.test(String(value))) return [name, value];
      const noted = (...args: unknown[]): unknown => {
        const keep = (): void => {
          const known = calls.get(name) ?? [];
          calls.set(name, known);
          if (known.length < MOST) known.push(args);
        };
        const result = value(...args);
        // What is refused is no example of how to call it.
        if (result instanceof Promise) void result.then(keep, () => {});
        else keep();
        return result;
      };
      return [name, noted];
    }),
  );
}
