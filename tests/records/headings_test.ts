import { assert, assertEquals } from "@std/assert";
import {
  checkTable,
  dayColumn,
  noteColumn,
  numberColumn,
  optional,
  partFromFiles,
  textColumn,
} from "@laminate/notebooks/records";
import { InputError } from "@laminate/notebooks/check";
import { catalogue, folder } from "./_folder.ts";

const mass = numberColumn("mass", { above: 0 });
const columns = {
  part: textColumn(),
  part_mass: mass,
  core_mass: optional(mass),
  thickness: optional(numberColumn("thickness")),
  date: optional(dayColumn()),
  note: noteColumn(),
};

/** What is said of a heading row with one row below it. */
function said(headings: string): readonly string[] {
  const row = headings.split(",").map((_, i) => `${i + 1}`).join(",");
  const { faults } = checkTable(`# a comment\n${headings}\n${row}\n`, { columns });
  return faults.map(({ line, argument, wanted }) => `${line} ${argument}: ${wanted}`);
}

Deno.test("a heading that is nearly one of those asked for is one fault, on the line of the headings", () => {
  const meant: readonly (readonly [string, string])[] = [
    ["part_mas_g", "part_mass_g"],
    ["Part_Mass_oz", "part_mass_oz"],
    ["part mass (lb)", "part_mass_lb"],
    ["partmass_g", "part_mass_g"],
    // Of the masses only this one must be there.
    ["mass_g", "part_mass_g"],
  ];
  for (const [written, wanted] of meant) {
    assertEquals(said(`part,${written}`), [
      "2 column part_mass: must be there with its unit (mass): " +
      `did you mean ${wanted} where it says ${written}? The file has: part, ${written}`,
    ]);
  }
});

Deno.test("a column that may be missing is proposed too; one that is like none is not", () => {
  const [near] = said("part,part_mass_g,thicknes_mm");
  assert(near!.startsWith("2 column: did you mean thickness_mm? It must be one of part,"), near);
  // Words that no column has, and below it a column of one's own.
  for (const other of ["glue_mm", "colour", "weight_of_it"]) {
    const [fault, ...more] = said(`part,part_mass_g,${other}`);
    assert(fault!.startsWith("2 column: must be one of part, part_mass,"), fault);
    assertEquals(more, []);
  }
  assertEquals(said("part,part_mass_g,x_thicknes_mm"), []);
  // Far from every name: both are said, the one that lacks and the one that is too many.
  assertEquals(said("part,weight_g").map((fault) => fault.slice(0, 20)), [
    "2 column part_mass: ",
    "2 column: must be on",
  ]);
});

Deno.test("a day is written year-month-day: any other spelling is refused, and none is guessed", () => {
  const good = ["2026-04-18", "2024-02-29", "1999-12-31"];
  const bad = [
    ...["4/18/2026", "18/4/2026", "04-18-2026", "18.04.2026", "2026/04/18", "2026-4-18"],
    ...["2026-02-29", "2026-13-01", "2026-00-10", "2026-04-31", "46130", "2026-04-18T10:00", "May"],
  ];
  for (const date of good) {
    const { table, faults } = checkTable(`part,part_mass_g,date\nP1,1,${date}\n`, { columns });
    assertEquals([faults, table.rows[0]?.date], [[], date]);
  }
  // A first row and a later one go different ways through the reader.
  for (const date of bad) {
    const source = `part,part_mass_g,date\nP1,1,${date}\nP2,2,\nP3,3,${date}\n`;
    const { table, faults } = checkTable(source, { columns });
    assertEquals(faults.map(({ line, value }) => `${line} ${value}`), [`2 ${date}`, `4 ${date}`]);
    assert(faults.every(({ wanted }) => wanted.includes("such as 2026-04-18")));
    assertEquals(table.rows.map(({ part }) => part), ["P2"]);
  }
});

Deno.test("the weighings of a spreadsheet of the United States are refused, not sorted as text", () => {
  const files = folder({
    "weighings.csv": (text) =>
      text.replace(/(\d{4})-0?(\d+)-0?(\d+)/g, (_, year, month, day) => `${month}/${day}/${year}`),
  });
  let message = "";
  try {
    partFromFiles({ name: "demo", files, catalogue });
  } catch (error) {
    assert(error instanceof InputError);
    message = error.message;
  }
  assert(message.includes('weighings.csv line 2: date is "5/3/2026", must be written'), message);
  assert(message.includes('weighings.csv line 3: date is "5/4/2026", must be written'), message);
});
