import { InputError } from "@laminate/notebooks/check";
import { partFromFiles, type PartRecord } from "@laminate/notebooks/records";
import { assert, assertEquals, assertThrows } from "@std/assert";
import { assertClose } from "../close.ts";
import { catalogue, folder, materials, tables } from "./_folder.ts";

type Changes = Parameters<typeof folder>[0];

const read = (changes: Changes = {}): PartRecord =>
  partFromFiles({ name: "demo", files: folder(changes), catalogue });

/** The faults of a folder, as `file line argument: value`. */
const faults = (changes: Changes): readonly string[] =>
  assertThrows(() => read(changes), InputError).faults.map(({ file, line, argument, value }) =>
    [file, line, `${argument}: ${value}`].filter((part) => part !== undefined).join(" ")
  );

const replaced = (from: string, to: string) => (text: string): string => {
  assert(text.includes(from), `the table has no ${from}`);
  return text.replace(from, to);
};

Deno.test("a part is read into typed records in SI", () => {
  const part = read();
  assertEquals([part.name, [...part.layups.keys()], part.notes], ["demo", ["sole", "tray"], []]);

  const [cloth, core, top] = part.layups.get("sole")!.layers;
  assert(cloth?.kind === "reinforcement" && core?.kind === "core");
  assertEquals([cloth.reinforcement.name, cloth.fibre.name, cloth.resin.name], [
    "weave 200",
    "glassy",
    "sticky",
  ]);
  assertEquals([cloth.fibreFraction, cloth.angleDeg, cloth.layer], [0.4, 0, 1]);
  assertEquals([core.core.name, core.thickness, core.angleDeg, core.resin], [
    "foamy",
    0.01,
    90,
    undefined,
  ]);
  assertEquals([top?.angleDeg, top?.note], [45, "bag side"]);

  const [sole, tray] = part.weighings!;
  assertEquals(sole?.layup, part.layups.get("sole"));
  assertEquals([sole?.partMass, sole?.coreMass], [
    { value: 0.31, u: 0.0005 },
    { value: 0.12, u: 0.0005 },
  ]);
  assertEquals(sole?.otherMass, { value: 0, u: 0 });
  assertEquals([tray?.otherMass.value, tray?.coreMass.value, tray?.thickness], [
    0.015,
    0,
    { value: 0.0007, u: 0 },
  ]);
  // 0.5 m × 0.4 m, u² = (0.4 × 0.0005)² + (0.5 × 0.0008)² = 2e-7.
  assertClose(sole!.area.value, 0.2, { relative: 1e-15 });
  assertClose(sole!.area.u, Math.sqrt(2e-7), { relative: 1e-14 });

  const [t1, t2] = part.loadTests!;
  assertEquals([t1?.test, t1?.loading, t1?.span, t1?.width, t1?.thickness], [
    "T1",
    "three-point",
    0.4,
    0.075,
    0.011,
  ]);
  assertEquals([[...t1!.load], [...t1!.deflection]], [[0, 50, 20], [0, 0.0005, 0.00025]]);
  assertEquals(t1?.branch, ["loading", "loading", "unloading"]);
  assertEquals(t1?.readingNotes, ["", "slipped", ""]);
  assertEquals([...t1!.lines], [2, 4, 5]);
  assertEquals([t2?.test, t2?.loading, [...t2!.load]], ["T2", "quarter-point", [0]]);

  const [b1, b2] = part.putty!;
  assertEquals([b1?.resin.name, b1?.filler.name, b1?.targetDensity], ["sticky", "light", 700]);
  assertEquals([b2?.cupVolume, b2?.cupFillerMass, b2?.resinMass, b2?.targetDensity], [
    0.00025,
    0.023,
    0.08,
    undefined,
  ]);
  assertEquals(part.fillets, [
    { corner: "bow", angleDeg: 90, length: 1.2, radius: 0.01, radiusLimit: 0.015 },
  ]);
});

Deno.test("a folder with ten planted faults gets ten clear errors", () => {
  const error = assertThrows(() =>
    read({
      "layup.csv": (text) =>
        replaced("weave 200,sticky,45", "weave 220,sticky,45")(
          replaced("tray,2", "tray,3")(text),
        ),
      "weighings.csv": (text) =>
        replaced("310", "-310")(
          replaced("P1,sole,hand,2026-05-03,500", 'P1,soul,hand,2026-05-03,"1.234,5"')(text),
        ) + "P3,tray,waxed,,500,400,0.5,0.5,,,NaN,0.5,,\n",
      "load_tests.csv": (text) =>
        replaced("75,11,50", "75,11,=A1*2")(replaced("400,75,11,20", "410,75,11,20")(text)),
      "putty.csv": replaced("B2,sticky", "B2,honey"),
    }), InputError);
  assertEquals(error.message.split("\n"), [
    "Cannot read the part demo: 10 faults",
    '  layup.csv line 4: material is "weave 220", must be a known reinforcement or core: ' +
    "weave 200, foamy",
    '  layup.csv line 6: layer is "3", must be 2: layers count from 1, mould side first',
    '  weighings.csv line 2: layup is "soul", must be a known lay-up of layup.csv: sole, tray',
    '  weighings.csv line 2: length_mm is "1.234,5", must be written without thousands ' +
    "separators, such as 1234.5",
    '  weighings.csv line 2: part_mass_g is "-310", must be above 0',
    '  weighings.csv line 4: process is "waxed", must be one of: hand, bagged, infused',
    '  weighings.csv line 4: part_mass_g is "NaN", must be a finite number',
    '  load_tests.csv line 4: load_N is "=A1*2", must be the number itself, not a formula',
    '  load_tests.csv line 5: span_mm is "410 mm", must be the same in all of test T1: ' +
    "line 2 has 400 mm; mend the one that is wrong",
    '  putty.csv line 3: resin is "honey", must be a known resin: sticky',
  ]);
  assertEquals(error.faults.length, 10);
});

Deno.test("units may differ from file to file, and the order of columns is free", () => {
  const weighings = "scale_u_oz,part_mass_oz,core_mass_lb,width_in,length_in,process,layup,part\n" +
    "0.02,16,0.25,10,20,hand,sole,P1\n";
  const { weighings: [part] = [] } = read({ "weighings.csv": weighings });
  // International pound and inch: 0.45359237 kg, 0.0254 m.
  assertClose(part!.partMass.value, 0.45359237, { relative: 1e-15 });
  assertClose(part!.coreMass.value, 0.45359237 / 4, { relative: 1e-15 });
  assertClose(part!.area.value, 200 * 0.0254 ** 2, { relative: 1e-15 });
});

Deno.test("the fibre fraction of the schedule counts before the usual one", () => {
  const layup = "layup,layer,material,resin,angle_deg,fibre_fraction_%\n" +
    "a,1,weave 200,sticky,0,47\na,2,weave 200,sticky,0,\n";
  const part = partFromFiles({
    name: "demo",
    files: new Map([["layup.csv", layup]]),
    catalogue,
  });
  assertEquals(
    part.layups.get("a")?.layers.map((layer) =>
      layer.kind === "reinforcement" && layer.fibreFraction
    ),
    [0.47, 0.4],
  );
});

Deno.test("tables that are not there are undefined, and a note says so", () => {
  const part = partFromFiles({
    name: "demo",
    files: folder({
      "weighings.csv": undefined,
      "load_tests.csv": undefined,
      "putty.csv": undefined,
      "fillets.csv": undefined,
    }),
    catalogue,
  });
  assertEquals(
    [part.weighings, part.loadTests, part.putty, part.fillets],
    [undefined, undefined, undefined, undefined],
  );
  assertEquals(part.notes, [
    "there is no weighings.csv",
    "there is no load_tests.csv",
    "there is no putty.csv",
    "there is no fillets.csv",
  ]);
});

Deno.test("without layup.csv there is no part, and the other tables are checked all the same", () => {
  assertEquals(faults({ "layup.csv": undefined, "fillets.csv": replaced("1200", "-1") }), [
    "layup.csv: undefined",
    "fillets.csv 2 length_mm: -1",
  ]);
});

Deno.test("a file that is none of the tables, and rows left out, are noted", () => {
  const part = read({
    "weighing.csv": "part\nP9\n",
    "fillets.csv": (text) => `# measured at the slip\n${text}\n\n`,
  });
  assertEquals(part.notes, [
    'fillets.csv line 1: comment left out: "# measured at the slip"',
    "fillets.csv lines 4 to 5: 2 blank rows left out",
    "weighing.csv is not read: it is none of the known tables",
  ]);
});

Deno.test("lay-up: layers count on, cores have a thickness, reinforcements a resin", () => {
  const layup = (change: (text: string) => string) => faults({ "layup.csv": change });
  assertEquals(layup(replaced("sole,2", "sole,1")), [
    "layup.csv 3 layer: 1",
    "layup.csv 4 layer: 3",
  ]);
  assertEquals(layup(replaced("sole,1", "sole,0")), ["layup.csv 2 layer: 0"]);
  assertEquals(layup(replaced("sole,1", "sole,1.5")), ["layup.csv 2 layer: 1.5"]);
  assertEquals(layup(replaced("foamy,,90,10", "foamy,,90,")), [
    "layup.csv 3 thickness_mm: undefined",
  ]);
  assertEquals(layup(replaced("foamy,,90,10", "foamy,,90,0")), ["layup.csv 3 thickness_mm: 0"]);
  assertEquals(layup(replaced("sticky,45,", "sticky,45,0.2")), [
    "layup.csv 4 thickness_mm: 0.2 mm",
  ]);
  assertEquals(layup(replaced("sticky,45", ",45")), ["layup.csv 4 resin: undefined"]);
  assertEquals(layup(replaced("sticky,45", "sticky,181")), ["layup.csv 4 angle_deg: 181"]);
  assertEquals(
    layup(() => "layup,layer,material,angle_deg,thickness_mm,fibre_fraction\na,1,foamy,0,10,0.4\n"),
    [
      "layup.csv 2 fibre_fraction: 0.4",
      "weighings.csv 2 layup: sole",
      "weighings.csv 3 layup: tray",
      "load_tests.csv 2 layup: sole",
      "load_tests.csv 3 layup: sole",
      "load_tests.csv 4 layup: sole",
      "load_tests.csv 5 layup: sole",
    ],
  );
});

Deno.test("lay-up: a bad layer draws no fault on the layers behind it", () => {
  assertEquals(faults({ "layup.csv": replaced("sole,2", "sole,two") }), ["layup.csv 3 layer: two"]);
});

Deno.test("lay-up: a missing column is one fault, not one in each row and table", () => {
  assertEquals(faults({ "layup.csv": (text) => text.replace("layup,", "x_layup,") }), [
    "layup.csv 1 column layup: undefined",
  ]);
});

Deno.test("weighings: one size, one name, a core where the lay-up has one", () => {
  const weighings = (change: (text: string) => string) => faults({ "weighings.csv": change });
  assertEquals(weighings(replaced("P2", "P1")), ["weighings.csv 3 part: P1"]);
  assertEquals(weighings(replaced("120,,310", ",,310")), [
    "weighings.csv 2 core_mass_g: undefined",
  ]);
  assertEquals(weighings(replaced(",15,160", "3,15,160")), ["weighings.csv 3 core_mass_g: 3 g"]);
  assertEquals(weighings(replaced("2026-05-03,500,400", "2026-05-03,500,")), [
    "weighings.csv 2 width_mm: undefined",
    "weighings.csv 2 width_u_mm: 0.8 mm",
  ]);
  assertEquals(weighings(replaced("500,400,0.5", "500,400,500")), [
    "weighings.csv 2 length_u_mm: 500 mm",
  ]);
  assertEquals(weighings(replaced("310,0.5", "310,310")), ["weighings.csv 2 scale_u_g: 310 g"]);
  const head = "part,layup,process,area_m2,area_u_m2,length_mm,part_mass_g,scale_u_g\n";
  assertEquals(weighings(() => `${head}P1,tray,hand,0.2,0.001,500,160,0.5\n`), [
    "weighings.csv 2 length_mm: 500 mm",
  ]);
});

Deno.test("weighings: an area in place of length and width; one without _u is noted", () => {
  const head = "part,layup,process,area_m2,area_u_m2,part_mass_g,scale_u_g\n";
  const rows = "P1,tray,hand,0.2,0.001,160,0.5\nP2,tray,hand,0.3,,240,0.5\n";
  const { weighings, notes } = read({ "weighings.csv": head + rows });
  assertEquals(weighings?.map(({ area, length }) => [area.value, area.u, length]), [
    [0.2, 0.001, undefined],
    [0.3, 0, undefined],
  ]);
  assertEquals(notes, ["weighings.csv line 3: the area is counted as exact (no _u)"]);
});

Deno.test("load tests: what is constant in a test must agree", () => {
  const tests = (change: (text: string) => string) => faults({ "load_tests.csv": change });
  for (
    const [from, to, fault] of [
      ["S1,sole,three-point,400,75,11,20", "S2,sole,three-point,400,75,11,20", "specimen: S2"],
      ["sole,three-point,400,75,11,20", "tray,three-point,400,75,11,20", "layup: tray"],
      ["three-point,400,75,11,20", "third-point,400,75,11,20", "loading: third-point"],
      ["400,75,11,20", "400,74,11,20", "width_mm: 74 mm"],
      ["400,75,11,20", "400,75,12,20", "thickness_mm: 12 mm"],
    ] as const
  ) {
    assertEquals(tests(replaced(from, to)), [`load_tests.csv 5 ${fault}`]);
  }
  assertEquals(tests(replaced("20,0.25,unloading", "20,0.25,up")), ["load_tests.csv 5 branch: up"]);
  assertEquals(tests(replaced("400,75,11,0,0", "0,75,11,0,0")), ["load_tests.csv 2 span_mm: 0"]);
});

Deno.test("fillets: an angle between closed and flat", () => {
  assertEquals(faults({ "fillets.csv": replaced("90", "0") }), ["fillets.csv 2 angle_deg: 0"]);
  assertEquals(faults({ "fillets.csv": replaced("90", "180") }), ["fillets.csv 2 angle_deg: 180"]);
});

Deno.test("a builder's own materials add rows and take the catalogue's place, with a note", () => {
  const own = materials["reinforcements.csv"]!.split("\n")[0]! +
    "\nweave 200,woven,plain,glassy,210,0.5,0.4,own scale\nmat 300,mat,none,glassy,300,0.5,0.2,own scale\n";
  const part = read({
    "materials/reinforcements.csv": own,
    "layup.csv": replaced("tray,2,weave 200", "tray,2,mat 300"),
  });
  assertEquals(part.notes, [
    "materials/reinforcements.csv line 2: weave 200 takes the catalogue's place",
  ]);
  assertEquals(part.catalogue.reinforcements.get("weave 200")?.arealWeight, 0.21);
  assertEquals(catalogue.reinforcements.get("weave 200")?.arealWeight, 0.2);
  const [, mat] = part.layups.get("tray")!.layers;
  assert(mat?.kind === "reinforcement");
  assertEquals(mat.reinforcement.name, "mat 300");
  assertEquals(
    faults({ "materials/reinforcements.csv": own.replace("300,mat,none", "300,mat,twill") }),
    [
      "materials/reinforcements.csv 3 weave: twill",
    ],
  );
});

Deno.test("saved again as some spreadsheets do, the tables give the same part", () => {
  // Byte order mark, semicolons, decimal commas, each cell quoted, CR LF, empty rows behind.
  const resave = (text: string): string =>
    text.trimEnd().split("\n").map((line) =>
      line.split(",").map((cell) => `"${cell.replace(/^(-?\d+)\.(\d+)$/, "$1,$2")}"`).join(";")
    ).join("\r\n");
  const resaved = Object.entries(tables).map(([file, text]): [string, Uint8Array] => [
    file,
    new TextEncoder().encode(`\ufeff${resave(text)}\r\n;;;\r\n;;;\r\n`),
  ]);
  const part = partFromFiles({ name: "demo", files: new Map(resaved), catalogue });
  const plain = read();
  assertEquals(part.weighings, plain.weighings);
  assertEquals(part.loadTests, plain.loadTests);
  assertEquals([part.putty, part.fillets, [...part.layups]], [
    plain.putty,
    plain.fillets,
    [...plain.layups],
  ]);
});

Deno.test("a core smaller than the part has columns of its own, and old files need none", () => {
  const head = "part,layup,process,length_mm,width_mm,length_u_mm,width_u_mm,core_mass_g," +
    "core_length_mm,core_width_mm,core_area_m2,part_mass_g,scale_u_g";
  const of = (cells: string, layup = "sole"): string =>
    `${head}\nP1,${layup},hand,500,400,1,1,${cells},310,0.5\n`;
  const { weighings: [part] = [] } = read({ "weighings.csv": of("100,450,350,") });
  assertClose(part!.coreArea!.value, 0.1575, { relative: 1e-14 });
  // u of the area is √(0.4² + 0.5²) × 1 mm × 1 m: the core's is as large a share.
  assertClose(part!.coreArea!.u, 0.1575 / 0.2 * 1e-3 * Math.hypot(0.4, 0.5), { relative: 1e-13 });
  const given = read({ "weighings.csv": of("100,,,0.2") }).weighings![0]!;
  assertEquals(given.coreArea, given.area);
  assertEquals(read({ "weighings.csv": of("100,,,") }).weighings![0]!.coreArea, undefined);
  const wrong = (cells: string, layup?: string): readonly string[] =>
    assertThrows(() => read({ "weighings.csv": of(cells, layup) }), InputError).faults
      .map(({ argument, wanted }) => `${argument} ${wanted}`);
  assertEquals(wrong("100,450,,"), ["core_width_mm must be given, and the core's other side too"]);
  assertEquals(wrong("100,450,350,0.1"), [
    "core_length_mm must be empty where the core's area is given",
  ]);
  assertEquals(wrong("100,501,400,"), [
    "core_length_mm must not make the core larger than the part",
  ]);
  assertEquals(wrong(",450,350,", "tray"), [
    "core_length_mm must be empty where no core is weighed",
  ]);
});
