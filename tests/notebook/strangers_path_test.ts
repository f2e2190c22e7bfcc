import { assert, assertEquals } from "@std/assert";
import { join } from "@std/path";
import { NOTEBOOKS, ROOT } from "../../lib/notebook/cli/project.ts";
import { runFolder } from "../../lib/notebook/cli/run_folder.ts";
import { withFolder } from "./_fixtures.ts";

const DEMO = join(ROOT, "data/sole-panels");

type Rows = readonly (readonly string[])[];

/** How a spreadsheet program writes a table that it had opened. */
interface Saving {
  readonly name: string;
  readonly write: (rows: Rows) => string;
}

/** No cell of the demonstration part holds a comma, a quote or a line end. */
const plainRows = (text: string): Rows => text.trimEnd().split("\n").map((line) => line.split(","));

const decimalComma = (cell: string): string =>
  /^-?\d+\.\d+$/.test(cell) ? cell.replace(".", ",") : cell.includes(";") ? `"${cell}"` : cell;

const quoted = (cell: string): string => /^-?[\d.]*$/.test(cell) ? cell : `"${cell}"`;

/** Windows with a comma for the decimal point: byte order mark, semicolons, CRLF. */
const SEMICOLONS: Saving["write"] = (rows) =>
  "\ufeff" + rows.map((row) => row.map(decimalComma).join(";") + "\r\n").join("");

/** Every text in quotes, lines of Unix. */
const QUOTED: Saving["write"] = (rows) =>
  rows.map((row) => row.map(quoted).join(",") + "\n").join("");

/** Commas, every cell in quotes, CRLF, and the empty rows and columns that were once touched. */
const TOUCHED: Saving["write"] = (rows) =>
  [...rows, rows[0]!.map(() => "")]
    .map((row) => [...row, ""].map((cell) => `"${cell}"`).join(",") + "\r\n").join("");

const SAVINGS: readonly Saving[] = [
  { name: "weighings.csv", write: SEMICOLONS },
  { name: "layup.csv", write: QUOTED },
  { name: "load_tests.csv", write: TOUCHED },
];

/** A copy of the demonstration part, three of its tables saved again, some cells changed. */
async function copyPart(to: string, change: (name: string, rows: Rows) => Rows): Promise<void> {
  await Deno.mkdir(to);
  for await (const { name } of Deno.readDir(DEMO)) {
    if (!name.endsWith(".csv")) continue;
    const text = await Deno.readTextFile(join(DEMO, name));
    const saving = SAVINGS.find((each) => each.name === name);
    const saved = saving === undefined ? text : saving.write(change(name, plainRows(text)));
    await Deno.writeTextFile(join(to, name), saved);
  }
}

/** What two notebooks answer about a part. */
async function answers(folder: string, part: string): Promise<readonly string[]> {
  const names = ["1-after-weighing", "3-load-test"];
  const { entries } = await runFolder({
    ...{ folder: NOTEBOOKS, names, part, out: join(folder, "pages"), stored: "leave" },
    timeLimit: 60_000,
    print: () => {},
  });
  return entries.map(({ answer, failure }) => answer?.sentence ?? `failed: ${failure}`);
}

/** Changes the cell of a column in the row that begins with a name. */
function put(
  rows: Rows,
  place: { readonly row: string; readonly column: string },
  to: string,
): Rows {
  const column = rows[0]!.indexOf(place.column);
  const row = rows.findIndex(([first]) => first === place.row);
  assert(column >= 0 && row > 0, `${place.row}, ${place.column}`);
  return rows.with(row, rows[row]!.with(column, to));
}

Deno.test("the demonstration part, saved by spreadsheet programs, answers the same; three cells change it", async () => {
  await withFolder(async (folder) => {
    const own = await answers(folder, DEMO);
    assert(own[0]!.startsWith("11 of 14 weighings can be believed"), own[0]);
    assert(own[0]!.includes("panel 2 is resin-rich at (58.2 ± 1.2) %"), own[0]);
    assert(own[0]!.includes("panel 6 is DRY") && own[0]!.includes("panel 7"), own[0]);

    const saved = join(folder, "saved");
    await copyPart(saved, (_, rows) => rows);
    assertEquals(await answers(folder, saved), own);

    // Panel 7 in grams, panel 2 and panel 6 as the others are.
    const mended = join(folder, "mended");
    await copyPart(mended, (name, rows) => {
      if (name !== "weighings.csv") return rows;
      const column = "part_mass_g";
      return put(
        put(put(rows, { row: "panel 7", column }, "1012"), { row: "panel 2", column }, "1092.5"),
        { row: "panel 6", column },
        "1004",
      );
    });
    const [weighed, loaded] = await answers(folder, mended);
    // Two hatches stay known only roughly: their cores were not sealed.
    assert(weighed!.startsWith("12 of 14 weighings can be believed"), weighed);
    assert(!weighed!.includes("weighed again"), weighed);
    assert(!weighed!.includes("panel 2") && !weighed!.includes("DRY"), weighed);
    assertEquals(loaded, own[1]);
    const page = await Deno.readTextFile(join(folder, "pages", "1-after-weighing.html"));
    assert(page.includes("12 of 14 weighings can be believed"));
  });
});

Deno.test("a whole column in the wrong unit leaves nothing to believe, and says so", async () => {
  await withFolder(async (folder) => {
    const part = join(folder, "pounds");
    await copyPart(part, (name, rows) => {
      if (name !== "weighings.csv") return rows;
      const heading = rows[0]!.map((text) => text === "part_mass_g" ? "part_mass_lb" : text);
      return [heading, ...rows.slice(1)];
    });
    const [weighed] = await answers(folder, part);
    assertEquals(
      weighed,
      "0 of 14 weighings can be believed; all of them must be weighed again.",
    );
    const page = await Deno.readTextFile(join(folder, "pages", "1-after-weighing.html"));
    assert(
      page.includes("read in grams and written as ounces") || page.includes("below what"),
      "remarks",
    );
  });
});
