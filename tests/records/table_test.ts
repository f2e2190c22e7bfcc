import { InputError } from "@laminate/notebooks/check";
import {
  checkColumns,
  checkTable,
  choiceColumn,
  type Columns,
  noteColumn,
  numberColumn,
  optional,
  readColumns,
  readTable,
  textColumn,
} from "@laminate/notebooks/records";
import { assert, assertEquals, assertThrows } from "@std/assert";

const columns = {
  part: textColumn(),
  resin: textColumn({ names: new Set(["slow", "fast"]), wanted: "must be slow or fast" }),
  branch: choiceColumn("up", "down"),
  layer: numberColumn("count", { min: 1, max: 9, whole: true }),
  span: numberColumn("length", { min: 0.1, max: 2 }),
  thickness: optional(numberColumn("length", { above: 0 })),
};
const HEAD = "part,resin,branch,layer,span_mm,thickness_mm\n";
const GOOD = "P1,slow,up,1,400,\n";

/** What is said of a row that stands behind another, and of the same row standing first. */
function refused(row: string): readonly string[] {
  const first = checkTable(`${HEAD}${row}\n`, { columns }).faults;
  const later = checkTable(`${HEAD}${GOOD}${row}\n`, { columns }).faults;
  const said = later.map(({ argument, value, wanted }) => `${argument} ${value}: ${wanted}`);
  assertEquals(first.map(({ argument, value, wanted }) => `${argument} ${value}: ${wanted}`), said);
  assertEquals(later.map(({ line }) => line), said.map(() => 3));
  return said;
}

Deno.test("a good row gives a value of its kind for each column", () => {
  const { rows } = readTable(`${HEAD}${GOOD}P2,fast,down,9,"2000",1.5\n`, { columns });
  assertEquals(rows, [
    { part: "P1", resin: "slow", branch: "up", layer: 1, span: 0.4, thickness: undefined },
    { part: "P2", resin: "fast", branch: "down", layer: 9, span: 2, thickness: 0.0015 },
  ]);
});

Deno.test("a cell is refused alike in the first row and in a later one", () => {
  assertEquals(refused("=A1,slow,up,1,400,"), ["part =A1: must be the text itself, not a formula"]);
  assertEquals(refused(",slow,up,1,400,"), ["part : must not be empty"]);
  assertEquals(refused("P1,honey,up,1,400,"), ["resin honey: must be slow or fast"]);
  assertEquals(refused("P1,slow,Up,1,400,"), ["branch Up: must be one of: up, down"]);
  assertEquals(refused("P1,slow,up,1.5,400,"), [
    "layer 1.5: must be a whole number, 1 or above and 9 or below",
  ]);
  assertEquals(refused("P1,slow,up,0,400,"), [
    "layer 0: must be a whole number, 1 or above and 9 or below",
  ]);
  assertEquals(refused("P1,slow,up,1,50,"), [
    "span_mm 50: must be 100 mm or above and 2000 mm or below",
  ]);
  assertEquals(refused("P1,slow,up,1,2001,"), [
    "span_mm 2001: must be 100 mm or above and 2000 mm or below",
  ]);
  assertEquals(refused("P1,slow,up,1,400,0"), ["thickness_mm 0: must be above 0"]);
  assertEquals(refused("P1,slow,up,1,1e308,"), [
    "span_mm 1e308: must be 100 mm or above and 2000 mm or below",
  ]);
});

Deno.test("a text that is guarded by an apostrophe is no formula", () => {
  const { rows } = readTable("part\n'=A1\n'=A1\n", { columns: { part: textColumn() } });
  assertEquals(rows, [{ part: "=A1" }, { part: "=A1" }]);
});

Deno.test("all faults come at once, in the order of the lines, and good rows are kept", () => {
  const source = `${HEAD}P1,slow,up,1,400,\n,honey,up,1,400,\nP3,slow,up\nP4,slow,up,1,x,y\n`;
  const { table, faults, namesIn } = checkTable(source, { columns, file: "a.csv" });
  assertEquals(faults.map(({ line, argument }) => `${line} ${argument}`), [
    "3 part",
    "3 resin",
    "4 number of cells in the row",
    "5 span_mm",
    "5 thickness_mm",
  ]);
  assertEquals([table.rows.length, [...table.lines]], [1, [2]]);
  assertEquals([...namesIn("part") ?? []], ["P1", "P4"]);
  assertEquals(namesIn("layer"), undefined);
});

Deno.test("a units row may have a dash where there is no unit", () => {
  const only = { load: numberColumn("force"), layer: numberColumn("count"), note: noteColumn() };
  const { rows, notes } = readTable("load,layer,note\nkN,-,\n2,3,\n", {
    columns: only,
    file: "a.csv",
  });
  assertEquals(rows, [{ load: 2000, layer: 3, note: undefined }]);
  assertEquals(notes, ["a.csv: line 2 is read as the row of units"]);
});

Deno.test("as columns: figures in typed arrays, texts with their gaps", () => {
  const { columns: cells, count, lines, headings } = readColumns(
    `${HEAD}${GOOD}\nP2,fast,down,9,2000,1.5\n`,
    { columns: { ...columns, note: noteColumn() } },
  );
  assertEquals([count, [...lines]], [2, [2, 4]]);
  assertEquals(cells.span, Float64Array.of(0.4, 2));
  assertEquals(cells.layer, Float64Array.of(1, 9));
  assertEquals([[...cells.part], [...cells.branch], cells.note.length], [["P1", "P2"], [
    "up",
    "down",
  ], 2]);
  assertEquals(headings.get("span"), "span_mm");
  // Figures that may be missing would need a gap, which a typed array has not.
  assert(!("thickness" in cells));
});

Deno.test("rows of empty cells are blank rows, also where any cell may be empty", () => {
  const notes = { a: noteColumn(), b: noteColumn() };
  const source = "a,b\n1,\n,\n,2\n , \n,\n";
  const { rows, leftOut } = readTable(source, { columns: notes });
  assertEquals(rows, [{ a: "1", b: undefined }, { a: undefined, b: "2" }]);
  assertEquals(leftOut.map(({ line, lastLine }) => [line, lastLine]), [[3, 3], [5, 6]]);
  assertEquals(readColumns(source, { columns: notes }).columns.a, ["1", undefined]);
  const figures = { part: textColumn(), load: numberColumn("force") };
  const table = readColumns("part,load_N\nP1,1\nP2,2\n,\n", { columns: figures });
  assertEquals([[...table.columns.part], [...table.columns.load]], [["P1", "P2"], [1, 2]]);
});

Deno.test("as columns: rows with a fault are left out", () => {
  const { table, faults } = checkColumns(`${HEAD}${GOOD}P2,slow,up,1,x,\nP3,slow,up,2,500,\n`, {
    columns,
  });
  assertEquals(faults.length, 1);
  assertEquals([table.count, [...table.lines], [...table.columns.part]], [2, [2, 4], ["P1", "P3"]]);
  assertEquals([...table.columns.span], [0.4, 0.5]);
  assertThrows(() => readColumns(`${HEAD}x\n`, { columns }), InputError);
});

Deno.test("a long table tells how far it is, and names true lines", () => {
  const rows = Array.from({ length: 250_000 }, (_, i) => i % 1000 === 7 ? `"a\nb",${i}` : `a,${i}`);
  const only = { part: textColumn(), load: numberColumn("force") };
  const told: string[] = [];
  const { count, lines, columns: { load, part } } = readColumns(
    `part,load_N\n${rows.join("\n")}\n`,
    {
      columns: only,
      onProgress: ({ rows, share }) => void told.push(`${rows} ${share.toFixed(1)}`),
    },
  );
  assertEquals(told, ["100000 0.4", "200000 0.8"]);
  assertEquals(count, 250_000);
  assert(load.every((value, i) => value === i));
  assertEquals([part[6], part[7], part[8], part[1007]], ["a", "a\nb", "a", "a\nb"]);
  // Row i stands behind the headings, i rows and a line more for each quoted line end before it.
  assert(lines.every((line, i) => line === 2 + i + Math.floor((i + 992) / 1000)));
});

Deno.test("a hopeless file is not read to its end", () => {
  const source = `load_N\n${"x\n".repeat(150_000)}`;
  const error = assertThrows(
    () => readTable(source, { columns: { load: numberColumn("force") } }),
    InputError,
    "table lines 2, 3, 4, 5, 6 and 99996 more",
  );
  assertEquals(error.faults.length, 100_002);
  assertEquals(error.faults.at(-1)?.wanted, "must be mended before the rest is read");
});

Deno.test("what is no table and no column is refused by name", () => {
  const cases: readonly (readonly [() => unknown, string])[] = [
    [() => readTable(5 as never, { columns }), "source is 5"],
    [() => readTable(HEAD, undefined as never), "options is missing"],
    [() => readTable(HEAD, {} as never), "columns is missing"],
    [
      () => readTable(HEAD, { columns: { part: null } as unknown as Columns }),
      "column part is null",
    ],
    [() => readTable(HEAD, { columns, decimal: ";" as never }), "decimal sign"],
    [() => readTable(HEAD, { columns, delimiter: "::" }), "delimiter"],
    [() => readTable(HEAD, { columns, delimiter: '"' }), "delimiter"],
    [() => readTable(HEAD, { columns, skipLines: -1 }), "lines to skip"],
    [() => numberColumn("mood" as never), "dimension"],
    [() => numberColumn("length", { min: NaN }), "min is NaN"],
    [() => numberColumn("length", { whole: 1 as never }), "whole is 1"],
    [() => choiceColumn(), "words is a list of 0"],
    [() => choiceColumn("" as string), "word is"],
    [() => textColumn({ names: ["a"] as never, wanted: "x" }), "names is a list of 1"],
    [() => optional(undefined as never), "column is missing"],
  ];
  for (const [call, says] of cases) assertThrows(call, InputError, says);
});
