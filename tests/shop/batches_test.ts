import { assert, assertEquals, assertThrows } from "@std/assert";
import { assertClose } from "../close.ts";
import { InputError } from "../../lib/check/mod.ts";
import { type BatchTask, planBatches, runLayup, tryLayups } from "../../lib/shop/mod.ts";

/** Pot life 2000 s whatever the mass, laying 0.5 g/s: figures that can be followed by hand. */
const task: BatchTask = {
  totalMass: 1.8,
  resinPerArea: 0.25,
  layingRate: 0.002,
  rateSpread: 0.2,
  mixingTime: 200,
  sheet: { potLife: 2000, mass: 0.1, temperature: 293, massExponent: 0 },
  temperature: 293,
  usableShare: 0.8,
};

Deno.test("mark and largest pot by hand", () => {
  // q = 0.5 g/s; mark = 0.5 × 1.2 × 200 = 120 g. A slow crew lays 0.4 g/s: (120 + m)/0.4 = 1600 s
  // gives m = 520 g, but a pot holds 500 g at most: 4 pots of 450 g.
  const plan = planBatches(task);
  assertClose(plan.mark, 0.12, { relative: 1e-13 });
  assertClose(plan.largestUsable, 0.5, { relative: 1e-13 });
  assertClose(plan.batches.map(({ mass }) => mass), [0.45, 0.45, 0.45, 0.45], {
    relative: 1e-13,
  });
  // The plan keeps 1e-9 of the time in hand against rounding.
  assertClose(planBatches({ ...task, largestBatch: 1 }).largestUsable, 0.52, { relative: 1e-8 });
  assertEquals([plan.verdict, plan.notes.length], ["holds", 1]);
  assertClose(plan.spareMass, 0.45, { relative: 1e-13 });
});

Deno.test("timetable by hand", () => {
  const { batches, finishAt } = planBatches(task);
  // Opened every 900 s from 200 s on; mixing begins 120 g/0.5 g/s = 240 s earlier.
  assertClose(batches.map(({ openAt }) => openAt), [200, 1100, 2000, 2900], { relative: 1e-12 });
  assertClose(batches.map(({ mixAt }) => mixAt), [0, 860, 1760, 2660], { absolute: 1e-9 });
  assertClose(batches.map(({ readyAt }) => readyAt), [200, 1060, 1960, 2860], {
    relative: 1e-12,
  });
  assertClose(batches.map(({ useBefore }) => useBefore), [1600, 2460, 3360, 4260], {
    relative: 1e-12,
  });
  assertClose(finishAt, 3800, { relative: 1e-12 });
});

Deno.test("a small lay-up needs one pot and no mark", () => {
  const plan = planBatches({ ...task, totalMass: 0.3 });
  assertEquals([plan.batches.length, plan.mark, plan.notes.length], [1, 0, 0]);
  assertEquals(runLayup(plan, { factors: [1], interval: 60, mixBy: "mark" }).dryTime, 0);
});

Deno.test("pots are full but the last where equal ones would be below the mark", () => {
  // A pot of 0.15 kg at most, a mark of 0.12 kg: 0.31 kg is not 3 × 0.103 but 0.15, 0.15, 0.01.
  const plan = planBatches({ ...task, totalMass: 0.31, largestBatch: 0.15 });
  assertClose(plan.batches.map(({ mass }) => mass), [0.15, 0.15, 0.01], { relative: 1e-12 });
  assertEquals(plan.verdict, "holds");
  const trials = tryLayups(plan, { spread: 0.2, mixBy: "mark", randomRuns: 20, seed: 5 });
  assertEquals(trials.verdict, "holds");
});

Deno.test("a run followed by hand: fast crew, mixing by the clock, runs dry", () => {
  // 0.6 g/s: each pot of 450 g is empty after 750 s. The first at 950 s; the second is ready at
  // 1060 s (110 s dry), empty at 1810; the third ready at 1960 (150 dry), empty at 2710; the fourth
  // ready at 2860 (150 dry): done at 3610 s.
  const run = runLayup(planBatches(task), { factors: [1.2], interval: 600, mixBy: "clock" });
  assertClose(run.dryTime, 410, { relative: 1e-10 });
  assertClose(run.finishAt, 3610, { relative: 1e-10 });
  assertClose(run.tightest, -150, { relative: 1e-10 });
  assertEquals([run.discarded, run.missing, run.spareUsed], [0, 0, false]);
  const dry = run.events.filter(({ what }) => what === "dry").map(({ time }) => time);
  assertClose(dry, [950, 1810, 2710], { relative: 1e-10 });
});

Deno.test("the same crew by the mark never waits", () => {
  // At the mark 120 g last exactly the 200 s of mixing.
  const run = runLayup(planBatches(task), { factors: [1.2], interval: 600, mixBy: "mark" });
  assertClose(run.dryTime, 0, { absolute: 1e-6 });
  assertClose(run.finishAt, 200 + 3000, { relative: 1e-9 });
});

Deno.test("a crew slower than planned lets a pot go off, and the spare is mixed", () => {
  // 0.25 g/s: after 1600 s of its age (1400 s of laying) a pot still holds 100 g.
  const run = runLayup(planBatches(task), { factors: [0.5], interval: 600, mixBy: "mark" });
  assert(run.discarded > 0.099);
  assertEquals(run.spareUsed, true);
  assert(run.events.some(({ what }) => what === "gone off"));
  const laid = 1.8 - run.missing;
  const poured = 4 * 0.45 + 0.45;
  assert(laid + run.discarded <= poured + 1e-9);
});

Deno.test("within the spread no crew runs dry, and by the clock alone some do", () => {
  const options = { spread: 0.3, randomRuns: 40, seed: 20261125 };
  const plan = planBatches({ ...task, rateSpread: 0.3 });
  assertEquals(plan.verdict, "holds");
  const byMark = tryLayups(plan, { ...options, mixBy: "mark" });
  assertEquals([byMark.runs, byMark.failed, byMark.verdict], [45, 0, "holds"]);
  const byClock = tryLayups(plan, { ...options, mixBy: "clock" });
  assertEquals(byClock.verdict, "fails");
  assert(byClock.worstDryTime > 0);
});

Deno.test("trials take crews slower and faster than planned: one wastes resin, the other runs dry", () => {
  // Planned for no spread: a mark of 0.5 g/s × 200 s = 100 g, four pots of 450 g. At 0.7 g/s a mark
  // lasts 142.86 s of the 200 s of mixing, three times. At 0.3 g/s a pot behind a mark of 333 s is
  // laid for 1267 s until it goes off: 380 g, and 70 g are thrown away.
  const plan = planBatches({ ...task, rateSpread: 0 });
  const slow = runLayup(plan, { factors: [0.6], interval: 300, mixBy: "mark" });
  assert(slow.discarded >= 0.07 && slow.dryTime >= 0);
  const trials = tryLayups(plan, { spread: 0.4, mixBy: "mark", randomRuns: 0, seed: 1 });
  assertEquals([trials.runs, trials.verdict], [5, "fails"]);
  assert(trials.worstDiscarded >= slow.discarded);
  assertClose(trials.tightest, -(200 - 100 / 0.7), { relative: 1e-9 });
  assert(trials.worstDryTime >= 3 * (200 - 100 / 0.7) - 1e-6);
});

Deno.test("a plan that cannot keep resin at hand says so, and the trials agree", () => {
  // Pot life 500 s, mixing 300 s: the mark is 180 g, and the largest pot that a slow crew empties
  // in time is none.
  const hopeless = planBatches({
    ...task,
    mixingTime: 300,
    sheet: { ...task.sheet, potLife: 500 },
  });
  assertEquals(hopeless.verdict, "fails");
  assert(hopeless.notes.some((note) => note.includes("run out")));
  const trials = tryLayups(hopeless, { spread: 0.2, mixBy: "mark", randomRuns: 5, seed: 1 });
  assertEquals(trials.verdict, "fails");
});

Deno.test("one pot is enough up to what a slow crew empties in time, a second begins there", () => {
  // The first pot waits for its own mixing: 200 + m/0.4 g/s = 1600 s at 560 g.
  const pots = (totalMass: number): number =>
    planBatches({ ...task, totalMass, largestBatch: 1 }).batches.length;
  assertEquals([pots(0.5599), pots(0.5601)], [1, 2]);
});

Deno.test("the largest pot where pot life falls with mass", () => {
  // (0.12 + m)/0.0004 = 1600 (m/0.1)^(−1/3): 0.31609 kg, by bisection in another program.
  const sheet = { potLife: 2000, mass: 0.1, temperature: 293 };
  const plan = planBatches({ ...task, totalMass: 3, largestBatch: 1, sheet });
  assertClose(plan.largestUsable, 0.3160901791990848, { relative: 1e-8 });
  assertEquals(plan.batches.length, 10);
});

Deno.test("from which pot life on a plan holds, and how the crew stands dry below it", () => {
  // A pot of the mark, 120 g behind 120 g, is laid by a slow crew in 600 s: 0.8 × 750 s.
  const withLife = (potLife: number) => planBatches({ ...task, sheet: { ...task.sheet, potLife } });
  assertEquals(withLife(751).verdict, "holds");
  const dry = withLife(749);
  assertEquals([dry.verdict, dry.mark], ["fails", 0]);
  // Mixed when the one before is empty: (599.2 − 200) s × 0.4 g/s = 159.68 g at most, 12 pots of
  // 150 g, each 200 s of mixing and 300 s of laying.
  assertClose(dry.largestUsable, 0.15968, { relative: 1e-8 });
  assertClose(dry.batches.map(({ mass }) => mass), Array(12).fill(0.15), { relative: 1e-12 });
  assertClose(dry.batches.map(({ mixAt }) => mixAt), [...Array(12).keys()].map((i) => 500 * i), {
    absolute: 1e-9,
  });
  assertClose(
    dry.batches.map(({ openAt }) => openAt),
    [...Array(12).keys()].map((i) => 500 * i + 200),
    {
      relative: 1e-12,
    },
  );
  assertClose(dry.finishAt, 6000, { relative: 1e-12 });
});

Deno.test("behind a pot smaller than the mark, mixing begins when that pot is begun", () => {
  // 0.15, 0.15 and 0.01 kg, then a mark of 0.12 kg: the second is mixed 240 s before the first is
  // empty (200 + 300 s), the third 240 s before the second is.
  const { batches, mark, spareMass, task: { layingRate, resinPerArea } } = planBatches({
    ...task,
    totalMass: 0.31,
    largestBatch: 0.15,
  });
  assertClose(mark / (layingRate * resinPerArea), 240, { relative: 1e-12 });
  assertEquals(batches.map(({ number }) => number), [1, 2, 3]);
  // The spare can stand for any pot: it is as large as the largest.
  assertClose(spareMass, 0.15, { relative: 1e-12 });
  assertClose(batches.map(({ mixAt }) => mixAt), [0, 260, 560], { relative: 1e-12 });
  assertClose(batches.map(({ emptyAt }) => emptyAt), [500, 800, 820], { relative: 1e-12 });
});

Deno.test("a thousand pots are the most", () => {
  const many = { ...task, largestBatch: 1e-3, mixingTime: 1e-3 };
  assertEquals(planBatches({ ...many, totalMass: 1 }).batches.length, 1000);
  assertThrows(() => planBatches({ ...many, totalMass: 1.0005 }), InputError, "must be 1000");
});

Deno.test("batches refuse what cannot be", () => {
  assertThrows(() => planBatches({ ...task, rateSpread: 1 }), InputError, "must be below 1");
  assertThrows(() => planBatches({ ...task, totalMass: 0 }), InputError, "mass of resin is 0 kg");
  assertThrows(
    () =>
      planBatches({
        ...task,
        mixingTime: 2000,
        sheet: { ...task.sheet, thinLayerTime: 2000 },
      }),
    InputError,
    "must be below the usable part of the pot life",
  );
  assertThrows(
    () => planBatches({ ...task, largestBatch: 1e-6 }),
    InputError,
    "must be 1000 at most",
  );
  const plan = planBatches(task);
  assertThrows(
    () => runLayup(plan, { factors: [0], interval: 60, mixBy: "mark" }),
    InputError,
    "factor is 0",
  );
  assertThrows(
    () => runLayup(plan, { factors: [1], interval: 0.1, mixBy: "mark" }),
    InputError,
    "must be 1 s or above",
  );
  assertThrows(
    () => runLayup(plan, { factors: [1], interval: 60, mixBy: "guess" as never }),
    InputError,
    "must be one of: mark, clock",
  );
  assertThrows(
    () => tryLayups(plan, { spread: 2, mixBy: "mark", randomRuns: 1, seed: 1 }),
    InputError,
    "spread is 2",
  );
});
