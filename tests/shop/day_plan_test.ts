import { assert, assertEquals, assertThrows } from "@std/assert";
import { assertClose } from "../close.ts";
import { InputError } from "../../lib/check/mod.ts";
import { type DayTask, planDay } from "../../lib/shop/mod.ts";

const skin = { name: "skin", shape: { length: 1.2, width: 0.4 }, angleDeg: 0, trim: 0.025 };
const task: DayTask = {
  part: "sole panel 9",
  start: "18:30",
  layers: ["glass twill 200, 0°", "PVC foam 10 mm", "glass twill 200, 0°"],
  cloths: [{
    name: "glass twill 200",
    rollWidth: 1,
    arealWeight: 0.2,
    balanced: true,
    joinOverlap: 0.05,
    fibreMassFraction: 0.5,
    pieces: [{ ...skin, count: 4 }],
  }],
  cores: [{
    name: "PVC foam 80",
    sheetLength: 1.22,
    sheetWidth: 0.81,
    thickness: 0.01,
    density: 80,
    turnable: true,
    faces: 2,
    resinUptake: 0.15,
    pieces: [{ name: "sole", length: 1.2, width: 0.4, rampLength: 0.02, count: 1 }],
  }],
  coats: [
    { name: "peel ply", area: 0.6, arealMass: 0.05, stays: false },
    { name: "mould face", area: 0.5, arealMass: 0.08, stays: true },
  ],
  resin: { lossFraction: 0.15, phr: 30, densities: { resinDensity: 1150, hardenerDensity: 980 } },
  crew: {
    layingRate: 0.06 / 60,
    rateSpread: 0.3,
    mixingTime: 240,
    temperature: 293,
    usableShare: 0.8,
    largestBatch: 0.4,
    sheet: { potLife: 2400, mass: 0.1, temperature: 293 },
  },
  cure: { temperature: 293, handlingTime: 12 * 3600, fullCureTime: 7 * 86400 },
  bag: {
    length: 1.25,
    width: 0.45,
    height: 0.01,
    style: "on the mould",
    margin: 0.03,
    flange: 0.08,
    pleatShare: 0.2,
    pleats: 4,
    tapePerPleat: 0.15,
    spareShare: 0.1,
    vacuum: { gauge: -70_000, outside: 100_000 },
    coreStrength: 1.3e6,
  },
  fillets: {
    places: [{ name: "bearer", radius: 0.01, cornerDeg: 90, length: 3.2, count: 1 }],
    density: 650,
    lossFraction: 0.2,
  },
};

Deno.test("the masses of the day agree with one another", () => {
  const plan = planDay(task);
  const { resin, batches, pots, cloths, cores, boxes } = plan;
  // Cloth as cut 4 × 1.25 × 0.45 = 2.25 m² takes 0.45 kg; core 2 × 0.48 × 0.15 = 0.144; mould face
  // 0.04; peel ply 0.03; all over 0.85.
  assertClose(resin.total, 0.664 / 0.85, { relative: 1e-13 });
  assertClose(resin.inPart, 0.634, { relative: 1e-13 });
  const potted = pots.reduce((sum, { mass }) => sum + mass, 0);
  assertClose(potted, resin.total, { relative: 1e-12 });
  const poured = pots.reduce((sum, pot) => sum + pot.resinMass + pot.hardenerMass, 0);
  assertClose(poured, resin.total, { relative: 1e-12 });
  const lines = resin.lines.reduce((sum, { mass }) => sum + mass, 0);
  assertClose(lines, resin.total, { relative: 1e-12 });
  assertClose(batches.task.resinPerArea * 2.25, resin.total, { relative: 1e-13 });
  const box = (column: string): number => boxes.find((entry) => entry.column === column)!.expected!;
  assertClose(box("dry_cloth_mass"), 0.45, { relative: 1e-13 });
  assertClose(box("core_mass"), cores[0]!.mass, { relative: 1e-14 });
  assertClose(box("part_mass"), 0.45 + cores[0]!.mass + 0.634, { relative: 1e-13 });
  assertClose(cloths[0]!.pieceMass, 0.45, { relative: 1e-13 });
});

Deno.test("the day has clock times, cautions, bag, cure and fillets", () => {
  const plan = planDay(task);
  assertEquals(plan.pots[0]!.mixClock, "18:30");
  assertEquals(plan.pots[0]!.openClock, "18:34");
  assert(plan.handleClock.endsWith("(+1 day)"));
  assertEquals(plan.layers, task.layers);
  assertEquals(plan.cautions.map(({ operation }) => operation), [
    "cutting and drilling",
    "mixing resin",
    "mixing filler",
    "laying up",
    "bagging",
    "curing",
    "cleaning",
  ]);
  assertEquals(plan.batches.verdict, "holds");
  assertEquals([plan.trialsByMark.runs, plan.trialsByMark.verdict], [25, "holds"]);
  assertEquals(plan.trialsByClock.verdict, "fails");
  assertEquals(plan.crush?.verdict, "holds");
  assertClose(plan.pressure!.compaction, 70_000, { relative: 1e-14 });
  assertClose(plan.fillets!.volume, 3.2e-4 * (1 - Math.PI / 4), { relative: 1e-13 });
  assertEquals(JSON.parse(JSON.stringify(plan)), plan);
});

Deno.test("doubt anywhere in the day reaches its notes", () => {
  const doubtful = planDay({
    ...task,
    cure: { ...task.cure, temperature: 298 },
    bag: { ...task.bag!, coreStrength: 50_000 },
    cloths: [{ ...task.cloths[0]!, rollWidth: 0.3 }],
  });
  assert(doubtful.notes.some((note) => note.includes("crush the core")));
  assert(doubtful.notes.some((note) => note.includes("wider than the roll")));
  assert(doubtful.notes.some((note) => note.includes("rule of thumb")));
});

Deno.test("a day without core, bag and fillets has none in its plan", () => {
  const { bag: _, fillets: __, ...rest } = task;
  const plan = planDay({ ...rest, cores: [] });
  assertEquals([plan.bag, plan.crush, plan.fillets, plan.cores.length], [
    undefined,
    undefined,
    undefined,
    0,
  ]);
  assertEquals(plan.boxes.some(({ column }) => column === "core_mass"), false);
});

Deno.test("a day refuses what cannot be", () => {
  assertThrows(() => planDay({ ...task, start: "evening" }), InputError, "a time of day");
  assertThrows(() => planDay({ ...task, cloths: [] }), InputError, "cloths is a list of 0");
  assertThrows(() => planDay({ ...task, crew: undefined as never }), InputError, "crew is missing");
  assertThrows(() => planDay(undefined as never), InputError, "task is missing");
  assertThrows(() => planDay({ ...task, layers: [] }), InputError, "layers is a list of 0");
  assertThrows(
    () => planDay({ ...task, resin: undefined as never }),
    InputError,
    "resin is missing",
  );
});
