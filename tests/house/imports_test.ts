import { assertEquals } from "@std/assert";
import { dirname, join } from "@std/path";
import { ROOMS, ROOMS_WITH_DOORS, sourceFiles, withoutComments } from "./_source.ts";

const room = (path: string): string => path.split("/")[1]!;
const floor = (name: string): number => ROOMS.indexOf(name as typeof ROOMS[number]);

/** Each `from "…"` and `import("…")` of a file. */
function specifiers(text: string): readonly string[] {
  return [...withoutComments(text).matchAll(/(?:from|import)\s*\(?\s*"([^"]+)"/g)]
    .map((match) => match[1]!);
}

Deno.test("a room imports only from the rooms below it, through their mod.ts", () => {
  const offences: string[] = [];
  for (const { path, text } of sourceFiles("lib")) {
    if (path === "lib/mod.ts") continue;
    for (const specifier of specifiers(text)) {
      if (!specifier.startsWith(".")) continue;
      const [, target, ...inside] = join(dirname(path), specifier).split("/");
      if (target === room(path)) continue;
      const file = inside.join("/");
      if (file !== "mod.ts") offences.push(`${path}: ${specifier} is not the room's mod.ts`);
      if (!(floor(target!) < floor(room(path)))) {
        offences.push(`${path}: ${specifier} is not on a lower floor`);
      }
    }
  }
  assertEquals(offences, []);
});

Deno.test("every folder of lib is a room of the plan, with a mod.ts", () => {
  const files = sourceFiles("lib").map(({ path }) => path).filter((path) => path !== "lib/mod.ts");
  const rooms = [...new Set(files.map(room))];
  assertEquals(rooms.filter((name) => floor(name) < 0), []);
  assertEquals(rooms.filter((name) => !files.includes(`lib/${name}/mod.ts`)), []);
});

Deno.test("only records and notebook touch files, processes, network or the clock", () => {
  const offences = sourceFiles("lib")
    .filter(({ path }) => path !== "lib/mod.ts" && !ROOMS_WITH_DOORS.includes(room(path)))
    .flatMap(({ path, text }) => {
      const found = withoutComments(text).match(
        /\bDeno\.|\bDate\b|\bperformance\.|Math\.random|\bfetch\(|"node:/g,
      );
      return found === null ? [] : [`${path}: ${found.join(", ")}`];
    });
  assertEquals(offences, []);
});

Deno.test("only quantity imports mathjs, so that no formula waits for it", () => {
  const offences = sourceFiles("lib")
    .filter(({ path, text }) => room(path) !== "quantity" && specifiers(text).includes("mathjs"))
    .map(({ path }) => path);
  assertEquals(offences, []);
});

Deno.test("a source file keeps to one subject: at most 300 lines", () => {
  const long = sourceFiles("lib")
    .map(({ path, text }) => ({ path, lines: text.split("\n").length - 1 }))
    .filter(({ lines }) => lines > 300);
  assertEquals(long, []);
});
