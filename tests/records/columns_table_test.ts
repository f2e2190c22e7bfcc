import { assert, assertEquals } from "@std/assert";
import { partFiles, readCatalogue } from "@laminate/notebooks/records";
import { partColumns } from "../../lib/records/_part_columns.ts";
import { holds } from "./_columns_table.ts";

const PAGE = new URL("../../data/sole-panels/COLUMNS.md", import.meta.url);

/** The table under each heading: its rows, each as its cells. */
function tablesOf(text: string): ReadonlyMap<string, readonly (readonly string[])[]> {
  const sections = text.split(/^## `([^`]+)`$/m).slice(1);
  const tables = new Map<string, readonly (readonly string[])[]>();
  for (let i = 0; i < sections.length; i += 2) {
    const rows = sections[i + 1]!.split("\n").filter((line) => line.startsWith("|")).slice(2);
    tables.set(sections[i]!, rows.map((row) => row.split("|").slice(1, -1).map((c) => c.trim())));
  }
  return tables;
}

Deno.test("the table of columns names each column that the readers ask for, whether it is needed, and its words", async () => {
  const tables = tablesOf(await Deno.readTextFile(PAGE));
  const columns = partColumns(await readCatalogue());
  assertEquals([...tables.keys()], Object.keys(columns));
  for (const [file, asked] of Object.entries(columns)) {
    const wanted = Object.entries(asked).filter(([name]) => name !== "note");
    assert("note" in asked, `${file} takes notes, as the page says of all files`);
    assertEquals(
      tables.get(file)!.map(([name, needed, what]) => [name, needed, what]),
      wanted.map(([name, column]) => [
        `\`${name}\``,
        column.optional ? "" : "yes",
        holds(column),
      ]),
      `${file}: put the table in COLUMNS.md right`,
    );
    for (const [name, , , meaning] of tables.get(file)!) {
      assert(meaning!.length > 4, `${file} ${name} has no meaning`);
    }
  }
});

Deno.test("the table of columns has every file of a part folder but the materials", () => {
  const columns = Object.keys(partColumns({
    fibres: new Map(),
    resins: new Map(),
    reinforcements: new Map(),
    cores: new Map(),
    fillers: new Map(),
  }));
  const tables = partFiles.filter((file) => !file.startsWith("materials/"));
  assertEquals(columns.toSorted(), tables.toSorted());
});
