import { InputError } from "@laminate/notebooks/check";
import {
  type Columns,
  findDelimiter,
  noteColumn,
  numberColumn,
  optional,
  partFromFiles,
  readColumns,
  readNumberCell,
  readTable,
  tableText,
  textColumn,
} from "@laminate/notebooks/records";
import { assert, assertEquals } from "@std/assert";
import fc from "fast-check";
import Papa from "papaparse";
import { eachRow } from "../../lib/records/_rows.ts";
import { assertClose } from "../close.ts";
import { catalogue, folder, tables } from "../records/_folder.ts";

const runs = { seed: 20261125, numRuns: 300 } as const;
const many = { seed: 20261125, numRuns: 2000 } as const;

const columns = {
  name: textColumn(),
  load: numberColumn("force"),
  deflection: optional(numberColumn("length")),
  note: noteColumn(),
};

/** Texts as a table may hold them, awkward signs more often than not. */
const text = fc.string({
  unit: fc.oneof(
    fc.constantFrom(..."=+-@'\"#,;|\t\n \u00a0.0aé€😀＝\u2028"),
    fc.string({ unit: "grapheme", minLength: 1, maxLength: 1 }),
  ),
  maxLength: 12,
}).filter((value) => !/[\0\r\ufffd]/.test(value) && value.isWellFormed());
const trimmed = text.map((value) => value.trim());

const row = fc.record({
  name: trimmed.filter((value) => value !== ""),
  load: fc.double({ noNaN: true, noDefaultInfinity: true }).map((value) => value + 0),
  deflection: fc.option(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { nil: undefined }),
  note: fc.option(trimmed.filter((value) => value !== ""), { nil: undefined }),
});

Deno.test("a table that is written is read back the same", () => {
  fc.assert(
    fc.property(
      fc.array(row, { minLength: 1, maxLength: 8 }),
      fc.constantFrom("LF" as const, "CRLF" as const),
      fc.boolean(),
      (rows, lineEnd, byteOrderMark) => {
        const written = tableText({
          headings: ["name", "load_N", "deflection_m", "note"],
          rows: rows.map(({ name, load, deflection, note }) => [name, load, deflection, note]),
        }, { lineEnd, byteOrderMark });
        const bytes = new TextEncoder().encode(written);
        const plain = rows.map((cells) => ({ ...cells, deflection: plus0(cells.deflection) }));
        assertEquals(readTable(bytes, { columns }).rows, plain);
      },
    ),
    runs,
  );
});

const plus0 = (value: number | undefined): number | undefined =>
  value === undefined ? undefined : value + 0;

Deno.test("no cell that is written begins as a spreadsheet's formula", () => {
  fc.assert(
    fc.property(fc.array(text, { minLength: 1, maxLength: 3 }), (cells) => {
      const written = tableText({ headings: cells.map((_, i) => `x${i}`), rows: [cells] });
      // papaparse as the spreadsheet: what it sees as the content of each cell.
      const [, seen] = Papa.parse(written, { delimiter: ",", newline: "\n" }).data as string[][];
      for (const cell of seen ?? []) assert(!/^\s*[=+\-@＝＋－＠]|^[\t\r\n]/.test(cell), cell);
    }),
    many,
  );
});

const figure = fc.tuple(
  fc.constantFrom("", "-"),
  fc.bigInt({ min: 0n, max: 10n ** 20n }),
  fc.nat(20),
).map(([sign, digits, point]) => {
  const all = digits.toString().padStart(point + 1, "0");
  return sign + (point === 0 ? all : `${all.slice(0, -point)}.${all.slice(-point)}`);
});

Deno.test("a figure is read as the double nearest to it", () => {
  fc.assert(
    fc.property(fc.array(figure, { minLength: 2, maxLength: 6 }), (figures) => {
      const source = `load_N\n${figures.join("\n")}\n`;
      const only = { load: numberColumn("force") };
      const { columns: { load } } = readColumns(source, { columns: only });
      assertEquals([...load], figures.map((digits) => Number(digits) + 0));
      for (const digits of figures) assertEquals(readNumberCell(digits), { value: Number(digits) });
    }),
    many,
  );
});

const plainName = fc.string({ unit: fc.constantFrom(..."abcXYZ 09_"), minLength: 1, maxLength: 6 })
  .map((name) => name.trim()).filter((name) => name !== "");
const plainRow = fc.record({
  name: plainName,
  load: fc.integer({ min: -9999, max: 9999 }).map((value) => value / 100),
  note: fc.option(plainName, { nil: undefined }),
});

Deno.test("delimiter, decimal sign, quotes and line ends change nothing", () => {
  const only = { name: textColumn(), load: numberColumn("force"), note: noteColumn() };
  fc.assert(
    fc.property(
      fc.array(plainRow, { minLength: 1, maxLength: 60 }),
      fc.constantFrom(",", ";", "\t", "|"),
      fc.boolean(),
      fc.boolean(),
      fc.constantFrom("\n", "\r\n", "\r"),
      (rows, delimiter, comma, quoted, lineEnd) => {
        const cells = [
          ["name", "load_N", "note"],
          ...rows.map(({ name, load, note }) => [
            name,
            comma ? String(load).replace(".", ",") : String(load),
            note ?? "",
          ]),
        ];
        const quote = (cell: string): string =>
          quoted || cell.includes(delimiter) ? `"${cell}"` : cell;
        const source = cells.map((row) => row.map(quote).join(delimiter)).join(lineEnd);
        // A comma file does not say that its commas are decimal: that must be told.
        const options = comma ? { columns: only, decimal: "," as const } : { columns: only };
        assertEquals(readTable(source, options).rows, rows);
        if (!quoted && delimiter !== ",") {
          assertEquals(findDelimiter(source.replaceAll(lineEnd, "\n")), delimiter);
        }
      },
    ),
    runs,
  );
});

Deno.test("a decimal comma is found out by itself, where a cell has one or two decimals", () => {
  const only = { name: textColumn(), load: numberColumn("force"), note: noteColumn() };
  const some = fc.array(plainRow, { minLength: 1, maxLength: 20 })
    .filter((rows) => rows.some(({ load }) => !Number.isInteger(load)));
  fc.assert(
    fc.property(some, fc.constantFrom(";", "\t", "|"), (rows, delimiter) => {
      const lines = rows.map(({ name, load, note = "" }) =>
        [name, String(load).replace(".", ","), note].join(delimiter)
      );
      const source = [["name", "load_N", "note"].join(delimiter), ...lines].join("\n");
      assertEquals(readTable(source, { columns: only }).rows, rows);
    }),
    runs,
  );
});

Deno.test("another unit in the heading is another scale of the same figures", () => {
  const only = { load: numberColumn("force") };
  const load = fc.double({ min: -1e5, max: 1e5, noNaN: true });
  // Newtons in each unit: exact by definition (pound 0.45359237 kg, gravity 9.80665 m/s²).
  const units = [["N", 1], ["kN", 1000], ["kgf", 9.80665], ["lbf", 4.4482216152605]] as const;
  fc.assert(
    fc.property(load, fc.constantFrom(...units), (value, [unit, newtons]) => {
      const { rows: [cells] } = readTable(`load_${unit}\n${value}\n`, { columns: only });
      assertClose(cells!.load, value * newtons, { relative: 1e-15 });
    }),
    runs,
  );
});

Deno.test("the order of columns is free", () => {
  fc.assert(
    fc.property(
      fc.array(plainRow, { minLength: 1, maxLength: 8 }),
      fc.shuffledSubarray([0, 1, 2], { minLength: 3, maxLength: 3 }),
      (rows, order) => {
        const only = { name: textColumn(), load: numberColumn("force"), note: noteColumn() };
        const cells = rows.map(({ name, load, note }) => [name, load, note]);
        const headings = ["name", "load_N", "note"];
        const written = tableText({
          headings: order.map((i) => headings[i]!),
          rows: cells.map((row) => order.map((i) => row[i])),
        });
        assertEquals(readTable(written, { columns: only }).rows, rows);
      },
    ),
    runs,
  );
});

/** Pieces of which awkward CSV is made. */
const scraps = fc.array(
  fc.constantFrom(
    ...'a 1 12.5 -3 0.1 , , , , \n \n \n ; " " "" # \' = \t é 😀 1,5 1e3 007'.split(" "),
    "a, b",
    '"a"',
    '"a\nb"',
    '"1"',
    " ",
  ),
  { maxLength: 40 },
).map((parts) => parts.join(""));

/** The rows as the plain scan and papaparse give them together, as long as no quote is broken. */
function rowsOf(source: string, plainFrom: number): string[][] | "broken" {
  const rows: string[][] = [];
  let broken = false;
  eachRow(`${source}\n`, { delimiter: ",", decimal: "." }, {
    comments(begin): number {
      let at = begin;
      while (source[at] === "#") at = (source.indexOf("\n", at) + 1) || source.length + 1;
      return at;
    },
    row: (cells) => void rows.push([...cells]),
    broken: () => void (broken = true),
    width: () => rows.length >= plainFrom ? 3 : 0,
    plainRow: () => false,
    done: () => broken,
  });
  return broken ? "broken" : rows;
}

Deno.test("the plain scan cuts rows as papaparse does", () => {
  fc.assert(
    fc.property(scraps, fc.nat(3), (scrap, plainFrom) => {
      const source = scrap.replace(/[\n ]+$/, "");
      const parsed = Papa.parse(source, { delimiter: ",", newline: "\n", comments: "#" });
      const rows = rowsOf(source, plainFrom);
      if (source === "") return;
      if (parsed.errors.length > 0) assertEquals(rows, "broken");
      else assertEquals(rows, parsed.data as string[][]);
    }),
    many,
  );
});

const anything = fc.oneof(
  scraps,
  scraps.map((scrap) => `name,load_N,note\n${scrap}`),
  fc.string({ unit: "binary", maxLength: 60 }),
  fc.uint8Array({ maxLength: 60 }),
);

/** Reads, or refuses by an `InputError` that says what and where. */
function tried(read: () => void): void {
  try {
    read();
  } catch (error) {
    assert(error instanceof InputError, String(error));
    assert(error.faults.length > 0 && error.faults.every(({ wanted }) => wanted.length > 0));
  }
}

Deno.test("whatever the file, it is read or refused, and no NaN leaves", () => {
  const schema: Columns = columns;
  fc.assert(
    fc.property(anything, (source) =>
      tried(() => {
        const { rows, lines } = readTable(source, { columns: schema, file: "x.csv" });
        assertEquals(rows.length, lines.length);
        for (const cells of rows) {
          for (const cell of Object.values(cells)) {
            assert(typeof cell !== "number" || Number.isFinite(cell));
          }
        }
      })),
    many,
  );
});

Deno.test("every line of a file is a row, left out by name, or a fault", () => {
  const line = fc.constantFrom(
    "a,1,x",
    "b,2.5,",
    "",
    ",,",
    "# c",
    "#x",
    '"q\nr",3,',
    "d,bad,",
    "e,1",
  );
  fc.assert(
    fc.property(fc.array(line, { minLength: 1, maxLength: 12 }), (lines) => {
      const only = { name: textColumn(), load: numberColumn("force"), note: noteColumn() };
      const source = `name,load_N,note\n${lines.join("\n")}\n`;
      const places = new Set<number>();
      tried(() => {
        const table = readTable(source, { columns: only });
        for (const at of table.lines) places.add(at);
        for (const { line, lastLine } of table.leftOut) {
          for (let at = line; at <= lastLine; at++) places.add(at);
        }
        // A quoted line end makes two lines of one row.
        const starts = lines.flatMap((text) => text.includes("\n") ? [true, false] : [true]);
        starts.forEach((start, i) => assertEquals(places.has(i + 2), start, `line ${i + 2}`));
      });
    }),
    runs,
  );
});

Deno.test("whatever becomes of a part's tables, they are read or refused", () => {
  const damage = fc.record({
    file: fc.constantFrom(...Object.keys(tables)),
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    cut: fc.nat(6),
    put: fc.constantFrom("", ",", "\n", '"', "=", "1,5", "-", "NaN", "\0", "x", ";", "#"),
  });
  fc.assert(
    fc.property(fc.array(damage, { minLength: 1, maxLength: 4 }), (damages) => {
      const files = new Map(folder());
      for (const { file, at, cut, put } of damages) {
        const table = files.get(file)!;
        const place = Math.floor(at * table.length);
        files.set(file, table.slice(0, place) + put + table.slice(place + cut));
      }
      tried(() => void partFromFiles({ name: "demo", files, catalogue }));
    }),
    { seed: 20261125, numRuns: 1000 },
  );
});
