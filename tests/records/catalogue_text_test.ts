import { assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import {
  type Catalogue,
  catalogueFromFiles,
  catalogueText,
  type MaterialTable,
} from "../../lib/records/mod.ts";
import { readCatalogue } from "../materials/catalogue.ts";

const TABLES: readonly MaterialTable[] = [
  "fibres",
  "resins",
  "reinforcements",
  "cores",
  "fillers",
];

/** Every figure to 12 digits, the rest as it is. */
function rounded(value: unknown): unknown {
  if (typeof value === "number") return Number(value.toPrecision(12));
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, entry]) => [key, rounded(entry)]));
}

Deno.test("the whole catalogue comes back as it was written", () => {
  const catalogue = readCatalogue();
  const files = new Map(
    TABLES.map((table) => [`${table}.csv`, catalogueText(table, [...catalogue[table].values()])]),
  );
  const back: Catalogue = catalogueFromFiles({ files });
  for (const table of TABLES) {
    assertEquals([...back[table].keys()], [...catalogue[table].keys()]);
    for (const [name, row] of catalogue[table]) {
      assertEquals(rounded(back[table].get(name)), rounded(row), `${table}: ${name}`);
    }
  }
});

Deno.test("what a cloth keeps of the modulus is written where it is given, and read back", () => {
  const { reinforcements } = readCatalogue();
  const [first, second] = [...reinforcements.values()];
  const own = {
    ...first!,
    stiffnessKept: 0.91,
    typical: { ...first!.typical, stiffnessKept: { low: 0.9, high: 0.92 } },
  };
  const text = catalogueText("reinforcements", [own, second!]);
  assertEquals(text.split("\n")[0]!.includes("stiffnessKept,stiffnessKept_low"), true);
  const back = catalogueFromFiles({
    files: new Map([["reinforcements.csv", text]]),
    base: readCatalogue(),
  }).reinforcements;
  assertEquals(back.get(own.name)!.stiffnessKept, 0.91);
  assertEquals(back.get(own.name)!.typical.stiffnessKept, { low: 0.9, high: 0.92 });
  assertEquals(back.get(second!.name)!.stiffnessKept, undefined);
});

Deno.test("rows that lack something, and no rows, are refused by name", () => {
  const { cores } = readCatalogue();
  const { density: _, ...bare } = cores.get("PVC foam 80")!;
  const refused = (table: MaterialTable, rows: readonly unknown[], message: string) =>
    assertThrows(() => catalogueText(table, rows as never), InputError, message);
  refused("cores", [bare], "density of PVC foam 80");
  refused("cores", [], "rows");
  refused("cores", [{ ...bare, density: NaN }], "density of PVC foam 80 is NaN");
  refused("cores", [{ ...cores.get("PVC foam 80")!, kind: 5 }], "kind of PVC foam 80");
  refused("colours" as MaterialTable, [bare], "table");
  assertThrows(
    () =>
      catalogueFromFiles({
        files: new Map([[
          "reinforcements.csv",
          "name,form,weave,fibre,arealWeight_g/m2,warpShare,fibreFraction,stiffnessKept,source\n" +
          "cloth,woven,twill,E-glass,200,0.5,0.4,1.3,guess\n",
        ]]),
        base: readCatalogue(),
      }),
    InputError,
    "stiffnessKept",
  );
});
