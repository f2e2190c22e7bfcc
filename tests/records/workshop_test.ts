import { InputError } from "@laminate/notebooks/check";
import { partFromFiles, type PartRecord, workshopInWords } from "@laminate/notebooks/records";
import { assertEquals, assertThrows } from "@std/assert";
import { assertClose } from "../close.ts";
import { catalogue, folder } from "./_folder.ts";

const read = (changes: Readonly<Record<string, string>>): PartRecord =>
  partFromFiles({ name: "demo", files: folder(changes), catalogue });
const faults = (changes: Readonly<Record<string, string>>): readonly string[] =>
  assertThrows(() => read(changes), InputError).faults.map(({ file, line, argument }) =>
    `${file} ${line} ${argument}`
  );

const HEAD = "resin,temperature_degC,laid_per_hour_m2,rate_spread,mixing_time_min,pot_life_min," +
  "pot_mass_g,sheet_temperature_degC,handling_time_h,full_cure_time_h,hardener_density_kg/m3,loss";

Deno.test("the workshop is read into SI, in °F, square feet and inches of mercury too", () => {
  const { workshop, notes } = read({
    "workshop.csv": HEAD.replace("degC", "degF").replace("hour_m2", "hour_ft2") +
      ",vacuum_inHg,altitude_ft,note\nsticky,68,36,0.3,4,40,100,25,10,168,980,0.15,23,1000,warm\n",
  });
  assertEquals(notes, []);
  const record = workshop![0]!;
  assertEquals([record.resin.name, record.rateSpread, record.loss, record.note], [
    ...["sticky", 0.3, 0.15, "warm"],
  ]);
  // 1 ft is 0.3048 m by definition; 1 inHg of 0 °C is 3386.389 Pa (NIST SP 811, 7 digits).
  assertClose(
    [record.temperature, record.laidPerHour, record.mixingTime, record.fullCureTime],
    [293.15, 36 * 0.3048 ** 2, 240, 604_800],
    { relative: 1e-13 },
  );
  assertClose(record.vacuum!, 23 * 3386.389, { relative: 1e-6 });
  assertClose(record.altitude!, 304.8, { relative: 1e-13 });
});

Deno.test("vacuum, altitude and both tables may be missing, without a note", () => {
  const part = read({ "workshop.csv": `${HEAD}\nsticky,18,3,0.3,4,40,100,25,10,168,980,0.15\n` });
  assertEquals([part.workshop![0]!.vacuum, part.workshop![0]!.altitude], [undefined, undefined]);
  assertEquals(part.notes, []);
  assertEquals([read({}).workshop, read({}).mounts, read({}).notes], [undefined, undefined, []]);
});

Deno.test("a resin told twice, an unknown one, a cure before handling and a slip of unit are named", () => {
  const rows =
    "\nsticky,18,3,0.3,4,40,100,25,10,9,980,0.15\nsticky,180,3,0.3,4,40,100,25,10,168,980,1\n" +
    "stocky,18,3,0.3,4,40,100,25,10,168,980,0.15\n";
  assertEquals(faults({ "workshop.csv": HEAD + rows }), [
    "workshop.csv 2 full_cure_time_h",
    "workshop.csv 3 temperature_degC",
    "workshop.csv 3 loss",
    "workshop.csv 4 resin",
  ]);
  const twice = "\nsticky,18,3,0.3,4,40,100,25,10,168,980,0.15".repeat(2);
  assertEquals(faults({ "workshop.csv": HEAD + twice }), ["workshop.csv 3 resin"]);
});

Deno.test("a workshop in words is the same record, and a bad word is named", () => {
  const { workshop } = read({
    "workshop.csv": `${HEAD}\nsticky,20,3,0.3,4,40,100,25,10,168,980,0.15\n`,
  });
  const words = {
    temperature: "68 °F",
    laidPerHour: "30000 cm²",
    rateSpread: 0.3,
    mixingTime: "240 s",
    potLife: "40 min",
    potMass: "0.1 kg",
    sheetTemperature: "25 °C",
    handlingTime: "10 h",
    fullCureTime: "168 h",
    hardenerDensity: "980 kg/m³",
    loss: 0.15,
  };
  const said = workshopInWords(catalogue.resins.get("sticky")!, words);
  assertEquals(Object.keys(said), Object.keys(workshop![0]!));
  for (const [name, value] of Object.entries(workshop![0]!)) {
    const other = said[name as keyof typeof said];
    if (typeof value === "number") assertClose(other as number, value, { relative: 1e-13 });
    else assertEquals(other, value);
  }
  const thin = workshopInWords(catalogue.resins.get("sticky")!, { ...words, thinLayerTime: "3 h" });
  assertEquals(thin.thinLayerTime, 10_800);
  for (
    const wrong of [{ potLife: "40 g" }, { thinLayerTime: "3 kg" }, { potMass: "" }, { loss: 2 }]
  ) {
    assertThrows(
      () => workshopInWords(catalogue.resins.get("sticky")!, { ...words, ...wrong }),
      InputError,
    );
  }
});

const MOUNTS = "mount,layup,place,added_plies,load_N,load_factor,fitting_factor,bolts," +
  "bolt_diameter_mm,hole_diameter_mm,width_mm,edge_distance_mm,washer_diameter_mm";

Deno.test("mounts are read into SI, with pull and potting where there are any", () => {
  const { mounts } = read({
    "mounts.csv": `${MOUNTS},pull_N,potting_diameter_mm\n` +
      "stay,sole,bolted bracket,5,900,3,1.15,2,6,6.5,80,25,24,250,22\n" +
      "eye,tray,spine,0,100,3,1,1,6,6.5,80,25,24,,\n",
  });
  const [stay, eye] = mounts!;
  assertEquals([stay!.layup.name, stay!.place, stay!.addedPlies, stay!.bolts], [
    ...["sole", "bolted bracket", 5, 2],
  ]);
  assertClose(
    [stay!.holeDiameter, stay!.width, stay!.pottingDiameter!, stay!.pull!],
    [0.0065, 0.08, 0.022, 250],
    { relative: 1e-14 },
  );
  assertEquals([eye!.pull, eye!.pottingDiameter], [undefined, undefined]);
});

Deno.test("holes too small, too many or too near the edge, and a factor below 1, are named", () => {
  const row = (change: (cells: string[]) => void): string => {
    const cells = "stay,sole,spine,5,900,3,1.15,2,6,6.5,80,25,24".split(",");
    change(cells);
    return `${MOUNTS}\n${cells.join(",")}\n`;
  };
  const change = (at: number, to: string) => faults({ "mounts.csv": row((c) => c[at] = to) });
  assertEquals(change(9, "5"), ["mounts.csv 2 hole_diameter_mm"]);
  assertEquals(change(10, "13"), ["mounts.csv 2 width_mm"]);
  assertEquals(change(11, "3"), ["mounts.csv 2 edge_distance_mm"]);
  assertEquals(change(12, "6.5"), ["mounts.csv 2 washer_diameter_mm"]);
  assertEquals(change(5, "0.9"), ["mounts.csv 2 load_factor"]);
  assertEquals(change(3, "1.5"), ["mounts.csv 2 added_plies"]);
  assertEquals(change(2, "somewhere"), ["mounts.csv 2 place"]);
  assertEquals(change(1, "sale"), ["mounts.csv 2 layup"]);
});
