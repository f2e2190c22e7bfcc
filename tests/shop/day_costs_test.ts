/**
 * Each line of a day's masses, costs and hours from round figures, by hand. The ranges around what
 * is likely (a roll of cloth ±5 %, tape and film −10 to +40 % …) are common practice, no source.
 */
import { assertEquals } from "@std/assert";
import {
  type CostLine,
  dayCosts,
  type DayCostTask,
  type DayPlan,
  type ThreePoint,
  USUAL_PACES,
} from "../../lib/shop/mod.ts";
import { assertClose } from "../close.ts";

/** What `dayCosts` reads of a plan, in figures that no lay-up need have. */
const plan = {
  cloths: [
    { name: "twill", rollWidth: 1.2, rollLength: 2.5, pieceMass: 0.45, pieceArea: 2.25 },
    { name: "UD", rollWidth: 0.5, rollLength: 1, pieceMass: 0.15, pieceArea: 0.25 },
  ],
  cores: [{ name: "foam", footArea: 0.48, waste: 0.2, mass: 0.4 }],
  resin: {
    inPart: 0.6,
    total: 0.8,
    lines: [
      { where: "cloth", mass: 0.45 },
      { where: "cloth", mass: 0.1 },
      { where: "core", mass: 0.08 },
      { where: "coat", mass: 0.05 },
      { where: "loss", mass: 0.12 },
    ],
  },
  batches: { finishAt: 3000, spareMass: 0.2, task: { rateSpread: 0.25 } },
  bag: { layers: [{ area: 0.5 }, { area: 0.75 }], tapeLength: 4 },
  fillets: { mass: 0.03 },
} as unknown as DayPlan;

const pace = (low: number): ThreePoint => ({ low, likely: 2 * low, high: 5 * low });
const task: DayCostTask = {
  plan,
  parts: 2,
  hands: 3,
  trimmedShare: 0.1,
  finishedArea: 0.96,
  skim: {
    ...{ meanGap: 1e-4, volumeApplied: 3e-4, volumeSanded: 1e-4 },
    ...{ massApplied: 0.2, massSanded: 0.08, massKept: 0.12 },
  },
  paint: { volume: 2e-4, dryThickness: 1e-4, mass: 0.13 },
  coats: 2,
  prices: {
    ...{ clothPerArea: 8, corePerArea: 30, resinPerMass: 22, bagPerArea: 2.5, tapePerLength: 0.6 },
    ...{ smallThings: 12, paintPerVolume: 35_000 },
  },
  paces: {
    ...{ cutting: pace(300), bagging: pace(2000), trimming: pace(1000) },
    ...{ fairing: pace(500), sanding: pace(1500), painting: pace(400) },
  },
  resinStray: { low: 0.9, high: 1.25 },
};

type Figures = readonly [low: number, likely: number, high: number];

function assertLine(
  item: string,
  expected: { readonly mass?: Figures; readonly cost?: Figures; readonly time?: Figures },
): void {
  const line: CostLine = dayCosts(task).lines.find((entry) => entry.item === item)!;
  for (const what of ["mass", "cost", "time"] as const) {
    const [range, figures] = [line[what], expected[what]];
    assertEquals(range === undefined, figures === undefined, `${what} of ${item}`);
    if (range === undefined || figures === undefined) continue;
    const { low, likely, high } = range;
    assertClose([low, likely, high], figures, { relative: 1e-12 }, `${what} of ${item}`);
  }
}

Deno.test("cutting takes cloth and core, cloth is bought off the roll, core by the sheet", () => {
  // 2.25 + 0.25 + 0.48 = 2.98 m²
  assertLine("cutting cloth and core", { time: [894, 1788, 4470] });
  // 1.2 × 2.5 m² × 8
  assertLine("twill", { mass: [0.4275, 0.45, 0.4725], cost: [24, 24, 27.6] });
  assertLine("UD", { mass: [0.1425, 0.15, 0.1575], cost: [4, 4, 4.6] });
  // 0.48 m² are four fifths of what is bought: 0.6 m².
  assertLine("foam", { mass: [0.368, 0.4, 0.432], cost: [14.4, 18, 18] });
});

Deno.test("resin is bought with its losses, at worst with the spare; hands are paid to the last pot", () => {
  assertLine("resin and hardener", { mass: [0.54, 0.6, 0.75], cost: [17.6, 17.6, 22] });
  // 3 × 3000 s over 1.25 and over 0.75
  assertLine("laying and wetting", { time: [7200, 9000, 12_000] });
  assertLine("gloves, cups, blades", { cost: [9.6, 12, 18] });
});

Deno.test("the bag: its layers by area, its tape by length, one pace for all", () => {
  // (0.5 + 0.75) m² × 2.5 + 4 m × 0.6 = 3.125 + 2.4 = 5.525
  assertLine("bag materials and tape", {
    cost: [0.9 * 5.525, 5.525, 1.4 * 5.525],
    time: [2000, 4000, 10_000],
  });
  const { bag: _, ...open } = plan;
  const items = dayCosts({ ...task, plan: open }).lines.map(({ item }) => item);
  assertEquals(items.includes("bag materials and tape"), false);
});

Deno.test("trimming takes its share of cloth, its resin and the coat, and its time for each part", () => {
  // 0.1 × (0.45 + 0.15 + 0.45 + 0.1 + 0.05) kg
  assertLine("trimmed off again", { mass: [-0.12, -0.12, -0.12], time: [2000, 4000, 10_000] });
  assertLine("putty in fillets", { mass: [0.027, 0.03, 0.039] });
});

Deno.test("the usual paces are minutes in seconds: bagging 40, 60, 120; sanding 30, 60, 150", () => {
  assertEquals(USUAL_PACES.bagging, { low: 2400, likely: 3600, high: 7200 });
  assertEquals(USUAL_PACES.sanding, { low: 1800, likely: 3600, high: 9000 });
});

Deno.test("skim, dust and paint over the finished area", () => {
  assertLine("filler skim as spread", { mass: [0.14, 0.2, 0.32], time: [480, 960, 2400] });
  assertLine("sanded off again", { mass: [-0.104, -0.08, -0.056], time: [1440, 2880, 7200] });
  // 2e-4 m³ × 35 000; two coats on 0.96 m²
  assertLine("paint, dry", {
    mass: [0.104, 0.13, 0.182],
    cost: [7, 7, 10.5],
    time: [768, 1536, 3840],
  });
});
