import { assert, assertEquals } from "@std/assert";
import { join } from "@std/path";
import { checkCells } from "../../lib/notebook/cells/check_cells.ts";
import { unformatted } from "../../lib/notebook/cells/format_cells.ts";
import { CONFIG } from "../../lib/notebook/cli/project.ts";
import type { Notebook } from "../../lib/notebook/runner/notebook_file.ts";
import { notebookOf, withFolder, writeNotebooks } from "./_fixtures.ts";

const check = async (notebook: Notebook): Promise<string[]> =>
  (await checkCells([{ name: "demo", notebook }], { config: CONFIG }))
    .map(({ place, message }) => `${place}: ${message.split("\n")[0]}`);

Deno.test("types and lint are checked across cells, and a finding names its cell and line", async () => {
  const found = await check(notebookOf(
    "# Text between does not count",
    ['let part = "data/a";', "parameters"],
    'import { fibreVolumeFraction } from "@laminate/notebooks/constituents";\n\nconst unused = part;',
    'const share: string = fibreVolumeFraction("half", { fibreDensity: 2560, resinDensity: 1200 });',
    "await Promise.resolve(share);",
  ));
  assertEquals(found.map((line) => line.split(": ")[0]), [
    "demo, code cell 3, line 1",
    "demo, code cell 3, line 1",
    "demo, code cell 2, line 3",
  ]);
  assert(found[0]!.includes("TS2322") && found[1]!.includes("TS2345"), found.join("\n"));
  assert(found[2]!.includes("no-unused-vars"), found.join("\n"));
});

Deno.test("let is right in a parameters cell and nowhere else", async () => {
  assertEquals(
    await check(notebookOf(['let part = "a";', "parameters"], 'let other = "b";', "part + other;")),
    ["demo, code cell 2, line 1: prefer-const: `other` is never reassigned"],
  );
});

Deno.test("a name that is declared in two cells is found, as is code that does not parse", async () => {
  const twice = await check(notebookOf("const a = 1;", "const a = 2;", "a;"));
  assert(twice.some((line) => line.startsWith("demo, code cell 2, line 1:")), twice.join("\n"));
  const broken = await check(notebookOf("1;", "\nconst a: = 3;"));
  assertEquals(broken.length, 1);
  assert(/^demo, code cell 2, line 2: error: SyntaxError/.test(broken[0]!), broken[0]);
});

Deno.test("an import that is not to be had is found in its cell", async () => {
  const found = await check(notebookOf("1;", 'import { a } from "nowhere-to-be-had";', "a;"));
  assert(/^demo, code cell 2, line 1: .*nowhere-to-be-had/.test(found[0]!), found.join("\n"));
});

Deno.test("clean cells give no finding, and two notebooks are kept apart", async () => {
  const findings = await checkCells([
    { name: "one", notebook: notebookOf("const a = 1;", "a;") },
    { name: "two", notebook: notebookOf("const a = 1;", "a.nothing;") },
  ], { config: CONFIG });
  assertEquals(findings.map(({ place }) => place), ["two, code cell 2, line 1"]);
});

Deno.test("a notebook that deno fmt would change is found, a formatted one is not", async () => {
  await withFolder(async (folder) => {
    await writeNotebooks(folder, {
      good: notebookOf("# Title", "const a = 1;"),
      bad: notebookOf("# Title", "const a=1"),
    });
    // `deno fmt` leaves a notebook alone that does not say its language.
    const files = ["good", "bad"].map((name) => join(folder, `${name}.ipynb`));
    for (const file of files) {
      const text = await Deno.readTextFile(file);
      await Deno.writeTextFile(
        file,
        text.replace(
          '"metadata": {},\n "nbformat"',
          '"metadata": {"language_info": {"name": "typescript"}},\n "nbformat"',
        ),
      );
    }
    const before = await Deno.readTextFile(files[1]!);
    assertEquals(await unformatted(files, CONFIG), [files[1]]);
    assertEquals(await Deno.readTextFile(files[1]!), before, "it only looks");
  });
});
