import { InputError } from "@laminate/notebooks/check";
import {
  describeLeftOut,
  noteColumn,
  numberColumn,
  readColumns,
  readTable,
} from "@laminate/notebooks/records";
import { assert, assertEquals, assertThrows } from "@std/assert";
import { awkward } from "./torture.ts";

const columns = {
  load: numberColumn("force"),
  deflection: numberColumn("length"),
  note: noteColumn(),
};

for (const { what, source, options, rows, leftOut, faults, says } of awkward) {
  Deno.test(`CSV: ${what}`, () => {
    const all = { columns, file: "a.csv", ...options };
    if (faults === undefined) {
      const table = readTable(source, all);
      assertEquals(
        table.rows.map(({ load, deflection, note }) => [load, deflection, note]),
        rows!.map(([load, deflection, note]) => [load, deflection, note]),
      );
      assertEquals(table.leftOut.map(({ line, reason }) => `${line} ${reason}`), [
        ...leftOut ?? [],
      ]);
      for (const part of table.leftOut) {
        assert(table.notes.includes(describeLeftOut(part, "a.csv")));
      }
      const { columns: cells } = readColumns(source, all);
      assertEquals([...cells.load], rows!.map(([load]) => load));
      assertEquals([...cells.note], rows!.map((row) => row[2]));
    } else {
      const error = assertThrows(() => readTable(source, all), InputError, says);
      assertEquals(
        error.faults.map(({ line, argument, value }) => `${line} ${argument}: ${value}`),
        [...faults],
      );
      assert(error.faults.every(({ file, wanted }) => file === "a.csv" && wanted.length > 5));
    }
  });
}

Deno.test("the awkward files are more than 60", () => assert(awkward.length > 60));
