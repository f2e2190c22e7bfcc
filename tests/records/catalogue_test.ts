import { InputError } from "@laminate/notebooks/check";
import { catalogueFromFiles, readCatalogue } from "@laminate/notebooks/records";
import { assert, assertEquals, assertThrows } from "@std/assert";
import { catalogue, materials } from "./_folder.ts";

const faults = (file: string, change: (text: string) => string): readonly string[] => {
  const files = new Map(Object.entries({ ...materials, [file]: change(materials[file]!) }));
  return assertThrows(() => catalogueFromFiles({ files }), InputError).faults
    .map((fault) => `${fault.file} ${fault.line} ${fault.argument}: ${fault.value}`);
};

Deno.test("a row of the catalogue is in SI, with its usual ranges and its source", () => {
  const fibre = catalogue.fibres.get("glassy")!;
  assertEquals(fibre, {
    name: "glassy",
    kind: "glass",
    source: "invented",
    E1: 70e9,
    E2: 70e9,
    G12: 28e9,
    nu12: 0.2,
    G23: 28e9,
    density: 2500,
    alpha1: 5e-6,
    alpha2: 5e-6,
    tensileStrength: 1.5e9,
    compressiveStrength: 1e9,
    typical: { E1: { low: 68e9, high: 72e9 } },
  });
  assert(Object.isFrozen(fibre) && Object.isFrozen(fibre.typical));
  assertEquals(catalogue.reinforcements.get("weave 200")?.arealWeight, 0.2);
  assertEquals(catalogue.cores.get("foamy")?.cellSize, 0);
});

Deno.test("what cannot be meant is refused with its place", () => {
  assertEquals(faults("fibres.csv", (text) => text.replace("68,72", "72,68")), [
    "fibres.csv 2 E1_low_GPa: 72 GPa",
  ]);
  assertEquals(faults("fibres.csv", (text) => text.replace("68,72", "68,")), [
    "fibres.csv 2 E1_high_GPa: undefined",
  ]);
  assertEquals(
    faults("fibres.csv", (text) => text.replace("glassy,glass,70", "glassy,glass,-70")),
    [
      "fibres.csv 2 E1_GPa: -70",
    ],
  );
  assertEquals(faults("fibres.csv", (text) => text + text.split("\n")[1] + "\n"), [
    "fibres.csv 3 name: glassy",
  ]);
  assertEquals(faults("resins.csv", (text) => text.replace("0.35", "0.6")), [
    "resins.csv 2 nu: 0.6",
  ]);
  assertEquals(faults("resins.csv", (text) => text.replace(",epoxy", ",honey")), [
    "resins.csv 2 kind: honey",
  ]);
  assertEquals(faults("resins.csv", (text) => text.replace(",invented", ",")), [
    "resins.csv 2 source: ",
  ]);
  assertEquals(faults("reinforcements.csv", (text) => text.replace("glassy", "glossy")), [
    "reinforcements.csv 2 fibre: glossy",
  ]);
  assertEquals(faults("reinforcements.csv", (text) => text.replace("plain", "none")), [
    "reinforcements.csv 2 weave: none",
  ]);
  assertEquals(faults("reinforcements.csv", (text) => text.replace("weave 200", "foamy")), [
    "reinforcements.csv 2 name: foamy",
  ]);
  assertEquals(faults("fillers.csv", (text) => text.replace("150,90", "90,150")), [
    "fillers.csv 2 bulkDensity: 150 kg/m³",
  ]);
});

Deno.test("the project's own catalogue is read, and each cloth has its fibre", async () => {
  const { fibres, resins, reinforcements, cores, fillers } = await readCatalogue();
  for (const { fibre } of reinforcements.values()) assert(fibres.has(fibre));
  for (const table of [fibres, resins, reinforcements, cores, fillers]) {
    for (const [name, row] of table) {
      assertEquals(row.name, name);
      assert(row.source.length > 5);
    }
  }
});
