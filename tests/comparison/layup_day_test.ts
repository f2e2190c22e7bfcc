import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { type LayupDay, layupDay } from "../../lib/comparison/mod.ts";
import { readPart } from "../../lib/records/mod.ts";
import {
  dayCosts,
  type DayCostTask,
  type DayPlan,
  planDay,
  USUAL_PACES,
} from "../../lib/shop/mod.ts";
import { fairingSkim } from "../../lib/filler/mod.ts";
import { assertClose } from "../close.ts";

const { layups, workshop } = await readPart("data/sole-panels");
const day: LayupDay = {
  parts: {
    layup: layups.get("sole")!,
    count: 2,
    length: 1.2,
    width: 0.4,
    trim: 0.025,
    ramp: 0,
    mouldCoat: 0.05,
    peelPlySoak: 0.04,
  },
  workshop: workshop![0]!,
  stock: { rollWidth: 1.2, joinOverlap: 0.05, sheetLength: 1.22, sheetWidth: 0.81 },
  start: "18:00",
};
const plan = planDay(layupDay(day));
const box = (of: DayPlan, column: string): number =>
  of.boxes.find((entry) => entry.column === column)!.expected!;
const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

Deno.test("resin planned is that in cloth, core, coats and losses, and all of it is in the pots", () => {
  const { resin, pots, batches } = plan;
  // Two parts of 1.25 m × 0.45 m with four plies of 0.2 kg/m²: 0.9 kg of cloth. At a fibre volume
  // fraction of 0.4 each kilogram of fibre takes 0.6/0.4 × 1150/2550 kg of resin.
  const { fibre } = layups.get("sole")!.layers[0] as { fibre: { density: number } };
  const cloth = 0.9 * 1.5 * 1150 / fibre.density;
  // Foam drinks 0.15 kg/m² on both faces of 0.96 m²; mould and peel ply take 1.125 m² each.
  const core = 0.96 * 2 * 0.15;
  const [coat, peel] = [1.125 * 0.05, 1.125 * 0.04];
  assertClose(resin.inPart, cloth + core + coat, { relative: 1e-12 });
  assertClose(resin.total, (cloth + core + coat + peel) / 0.85, { relative: 1e-12 });
  assertClose(sum(resin.lines.map(({ mass }) => mass)), resin.total, { relative: 1e-12 });
  assertClose(sum(pots.map(({ mass }) => mass)), resin.total, { relative: 1e-12 });
  const poured = sum(pots.flatMap(({ resinMass, hardenerMass }) => [resinMass, hardenerMass]));
  assertClose(poured, resin.total, { relative: 1e-12 });
  assertClose(poured, resin.mix.resinMass + resin.mix.hardenerMass, { relative: 1e-12 });
  assertEquals(batches.verdict, "holds");
  // Crews 30 % faster and slower than planned, mixing by the mark, never run dry.
  assertEquals([plan.trialsByMark.failed, plan.trialsByMark.verdict], [0, "holds"]);
});

Deno.test("the day keeps the schedule's order, the air of its altitude and the core's strength", () => {
  const task = layupDay(day);
  assertEquals(task.layers, [
    ...["glass twill 200 at 0°", "glass twill 200 at 0°", "PVC foam 80, core"],
    ...["glass twill 200 at 0°", "glass twill 200 at 0°"],
  ]);
  assertEquals(task.cloths.map(({ pieces }) => pieces.length), [4]);
  // The low end of 1.04 to 1.56 MPa.
  assertEquals([task.cores[0]!.faces, task.bag!.coreStrength], [2, 1.04e6]);
  // The sheet's 180 min in a thin layer.
  assertEquals(task.crew.sheet.thinLayerTime, 10_800);
  // Standard air at 430 m: 101325 (1 − 0.0065 × 430/288.15)^5.25588 = 96266 Pa.
  assertClose(task.bag!.vacuum.outside, 96_266, { absolute: 5 });
  assertEquals(task.bag!.vacuum.gauge, -78_000);
});

Deno.test("without vacuum there is no bag and no peel ply; a mat may be turned, a UD may not", () => {
  const { vacuum: _, ...open } = day.workshop;
  const task = layupDay({ ...day, workshop: open });
  assertEquals(task.bag, undefined);
  assertEquals(task.coats.map(({ name }) => name), ["coat on the mould"]);
  const bracket = layupDay({ ...day, parts: { ...day.parts, layup: layups.get("bracket")! } });
  assertEquals(bracket.cloths.map(({ name, balanced }) => [name, balanced]), [
    ["glass mat 300", true],
    ["glass UD 500", false],
    ["glass biaxial 400", bracket.cloths[2]!.balanced],
  ]);
  assertEquals(bracket.cores, []);
});

Deno.test("another resin than the workshop's, no plies and no parts are refused", () => {
  const other = { ...day.workshop.resin, name: "another" };
  assertThrows(
    () => layupDay({ ...day, workshop: { ...day.workshop, resin: other } }),
    InputError,
    "one day, one resin",
  );
  const bare = { name: "foam", layers: [layups.get("sole")!.layers[2]!] };
  assertThrows(
    () => layupDay({ ...day, parts: { ...day.parts, layup: bare } }),
    InputError,
    "plies",
  );
  assertThrows(() => layupDay({ ...day, parts: { ...day.parts, count: 0 } }), InputError, "parts");
  assertThrows(() => layupDay(undefined as never), InputError, "day is missing");
  assertThrows(() => layupDay({ ...day, parts: undefined as never }), InputError, "parts");
});

const costTask: DayCostTask = {
  plan,
  parts: 2,
  hands: 3,
  trimmedShare: 1 - 1.2 * 0.4 / (1.25 * 0.45),
  finishedArea: 0.96,
  skim: fairingSkim({ area: 0.96, gaps: [0, 2e-4], excess: 2e-4, density: 700 }),
  paint: { volume: 2e-4, dryThickness: 1e-4, mass: 0.13 },
  coats: 2,
  prices: {
    ...{ clothPerArea: 8, corePerArea: 30, resinPerMass: 22, bagPerArea: 2.5, tapePerLength: 0.6 },
    ...{ smallThings: 12, paintPerVolume: 35_000 },
  },
  paces: USUAL_PACES,
  resinStray: { low: 0.9, high: 1.25 },
};

Deno.test("the masses of laying up are those that the sheet expects on the scale", () => {
  const { byOperation, forgotten, total } = dayCosts(costTask);
  const laid = byOperation.find(({ operation }) => operation === "laying up")!;
  assertClose(laid.mass.likely, box(plan, "part_mass"), { relative: 1e-12 });
  assertEquals(forgotten, []);
  // Trimmed 14.67 % of cloth 0.9 kg, its resin and the coat; the skim keeps 0.96 × 1e-4 × 700 kg.
  const onCloth = sum(
    plan.resin.lines.filter(({ where }) => where === "cloth" || where === "coat")
      .map(({ mass }) => mass),
  );
  const kept = laid.mass.likely - (1 - 0.48 / 0.5625) * (0.9 + onCloth) + 0.0672 + 0.13;
  assertClose(total.mass.likely, kept, { relative: 1e-12 });
});

Deno.test("ranges are in order, and hours of laying follow the crew's spread", () => {
  const { lines, total } = dayCosts(costTask);
  for (const { mass, cost, time } of [...lines, total]) {
    for (const range of [mass, cost, time]) {
      if (range !== undefined) assert(range.low <= range.likely && range.likely <= range.high);
    }
  }
  const laying = lines.find(({ item }) => item === "laying and wetting")!.time!;
  assertClose(laying.likely, 3 * plan.batches.finishAt, { relative: 1e-14 });
  assertClose(laying.high, laying.likely / 0.7, { relative: 1e-14 });
  assertClose(laying.low, laying.likely / 1.3, { relative: 1e-14 });
});

Deno.test("a part left as it is has no paint, and is told so", () => {
  const bare = dayCosts({ ...costTask, finishedArea: 0 });
  assertEquals(bare.forgotten, ["fairing skim", "sanding", "painting"]);
});

Deno.test("costs refuse what cannot be", () => {
  const refused = (change: Partial<DayCostTask>, words: string): void => {
    assertThrows(() => dayCosts({ ...costTask, ...change }), InputError, words);
  };
  refused({ parts: 0 }, "parts");
  refused({ hands: 1.5 }, "hands");
  refused({ trimmedShare: 2 }, "share trimmed off");
  refused({ finishedArea: -1 }, "area to be finished");
  refused({ resinStray: { low: 0.9, high: 0.9 } }, "most resin");
  refused({ prices: { ...costTask.prices, corePerArea: NaN } }, "corePerArea");
  refused({ paces: undefined as never }, "paces is missing");
});
