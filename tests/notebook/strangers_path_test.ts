import { assert, assertEquals } from "@std/assert";
import { join } from "@std/path";
import { NOTEBOOKS, ROOT } from "../../lib/notebook/cli/project.ts";
import { readCommand } from "../../lib/notebook/cli/notebooks.ts";
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

/** The example of a settings.csv in the README. */
async function settingsOfReadme(): Promise<Rows> {
  const readme = await Deno.readTextFile(join(ROOT, "README.md"));
  const [, text] = readme.match(/```csv\n([^]*?)```/)!;
  return plainRows(text!.split("\n").map((line) => line.trim()).join("\n"));
}

/** What a notebook answers when the command is given as the README says. */
async function commanded(folder: string, ...args: readonly string[]): Promise<string> {
  const out = join(folder, "pages");
  const command = await readCommand(["--out", out, ...args], ROOT, () => {});
  assert(command.what === "run");
  const { entries: [entry] } = await runFolder(command.run);
  return entry!.answer?.sentence ?? `failed: ${entry!.failure}`;
}

Deno.test("the README's settings.csv, saved by a spreadsheet program, gives what the edited first cell gives", async () => {
  await withFolder(async (folder) => {
    const part = join(folder, "own");
    await copyPart(part, (_, rows) => rows);
    const rows = await settingsOfReadme();
    assert(rows.length > 5, `${rows.length}`);

    // The other way: the first cell edited by hand.
    const edited = join(folder, "edited");
    await Deno.mkdir(edited);
    const name = "2-choosing-a-layup";
    const text = await Deno.readTextFile(join(NOTEBOOKS, `${name}.ipynb`));
    const changes = [
      ['\\"US\\" = \\"metric\\"', '\\"US\\" = \\"US\\"'],
      ['let span = \\"400 mm\\"', 'let span = \\"16 in\\"'],
      ['let load = \\"800 N\\"', 'let load = \\"180 lbf\\"'],
    ] as const;
    for (const [from] of changes) assert(text.includes(from), from);
    const other = changes.reduce((all, [from, to]) => all.replace(from, to), text);
    await Deno.writeTextFile(join(edited, `${name}.ipynb`), other);
    const expected = await commanded(folder, "--from", edited, "--part", part);
    assert(expected.includes("180 lbf") && expected.includes("16 in"), expected);

    for (const write of [SEMICOLONS, QUOTED, TOUCHED]) {
      await Deno.writeTextFile(join(part, "settings.csv"), write(rows));
      assertEquals(await commanded(folder, "--part", part, name), expected);
      const page = await Deno.readTextFile(join(folder, "pages", `${name}.html`));
      assert(
        page.includes("Settings from settings.csv: units = US, span = 16 in, load = 180 lbf"),
        page.slice(0, 2000),
      );
    }
  });
});

Deno.test("dates that a spreadsheet wrote the American way are refused, with what would do", async () => {
  await withFolder(async (folder) => {
    const part = join(folder, "own");
    const american = (cell: string): string =>
      cell.replace(/^(\d{4})-0?(\d+)-0?(\d+)$/, "$2/$3/$1");
    await copyPart(
      part,
      (name, rows) => name === "weighings.csv" ? rows.map((row) => row.map(american)) : rows,
    );
    const said = await commanded(folder, "--part", part, "9-getting-better");
    assert(said.includes('weighings.csv line 2: date is "4/18/2026", must be written'), said);
    assert(said.includes("such as 2026-04-18"), said);
  });
});

Deno.test("what nobody recorded is said to be assumed, and no longer once settings.csv has it", async () => {
  await withFolder(async (folder) => {
    const part = join(folder, "own");
    await copyPart(part, (_, rows) => rows);
    for (const name of ["mounts.csv", "workshop.csv"]) await Deno.remove(join(part, name));
    const names = ["13-mould-under-vacuum", "14-day-sheet", "15-mounts-and-stays"];
    const asked = async (): Promise<readonly string[]> => {
      const said: string[] = [];
      for (const name of [...names, "16-bag-and-cure"]) {
        said.push(await commanded(folder, "--part", part, name));
      }
      return said;
    };
    const [mould, day, mount, bag] = await asked();
    assert(mould!.startsWith("With an assumed mould, "), mould);
    assert(day!.replace(/^DO NOT START, [^.]*\. /, "").startsWith("With an assumed workshop"), day);
    assert(mount!.startsWith("With an assumed mount (no mounts.csv)"), mount);
    const assumed = "With an assumed workshop at 18 °C, an assumed leak test and an assumed night";
    assert(bag!.startsWith(assumed), bag);
    const page = await Deno.readTextFile(join(folder, "pages", "16-bag-and-cure.html"));
    assertEquals(page.match(/ASSUMED, first cell<\/td>/g)!.length, 5, "marked in the inputs");

    const set = [
      "13-mould-under-vacuum,mould.plies,10",
      "14-day-sheet,workshopWithout.temperature,19 °C",
      "15-mounts-and-stays,mountWithout.load,800 N",
      "16-bag-and-cure,workshopWithout.temperature,19 °C",
      "16-bag-and-cure,leakTest.gauge,78 kPa; 75 kPa; 72 kPa; 69 kPa",
      "16-bag-and-cure,night.temperatures,19 °C; 18 °C; 14 °C; 16 °C",
    ];
    await Deno.writeTextFile(
      join(part, "settings.csv"),
      ["notebook,name,value", ...set, ""].join("\n"),
    );
    for (const said of await asked()) {
      assert(!/assumed|ASSUMED/.test(said) && !said.startsWith("failed"), said);
    }
    const after = await Deno.readTextFile(join(folder, "pages", "16-bag-and-cure.html"));
    assert(!after.includes("ASSUMED, first cell</td>"));
  });
});
