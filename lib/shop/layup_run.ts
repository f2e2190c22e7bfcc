import { checksFor } from "../check/mod.ts";
import type { BatchPlan } from "./batches.ts";

const check = checksFor("simulate the lay-up");

/** How fast the crew lays, over the rate expected. */
export interface LayupPace {
  /** Factors on the rate expected, one after the other, then from the start again [1]. */
  readonly factors: readonly number[];
  /** How long each lasts, 1 s or more [s]. */
  readonly interval: number;
  /** Whether mixing follows the mark on the pot or the clock of the timetable. */
  readonly mixBy: "mark" | "clock";
}

/** Something that happened in a simulated lay-up. */
export interface LayupEvent {
  /** When, from the start of the first mixing [s]. */
  readonly time: number;
  /** What happened. */
  readonly what: "mixing" | "ready" | "opened" | "empty" | "gone off" | "dry" | "done";
  /** Which pot; the spare comes after the last. */
  readonly batch: number;
}

/** How a simulated lay-up went. */
export interface LayupRun {
  /** What happened, in order. */
  readonly events: readonly LayupEvent[];
  /** When the last resin was laid [s]. */
  readonly finishAt: number;
  /** Time for which the crew stood without resin, cloth wet [s]. */
  readonly dryTime: number;
  /** Resin thrown away because its pot passed its time [kg]. */
  readonly discarded: number;
  /** Whether the spare was mixed. */
  readonly spareUsed: boolean;
  /** Resin that was missing in the end [kg]. */
  readonly missing: number;
  /** Time by which the tightest pot was ready before it was needed; negative if it came late [s]. */
  readonly tightest: number;
}

/** A pot in the simulation. */
interface LivePot {
  readonly batch: number;
  readonly readyAt: number;
  readonly useBefore: number;
  left: number;
}

/** State of the simulation. */
interface Run {
  time: number;
  needed: number;
  nextBatch: number;
  mixing: LivePot | undefined;
  readonly ready: LivePot[];
  open: LivePot | undefined;
  dryTime: number;
  dry: boolean;
  discarded: number;
  emptiedAt: number | undefined;
  tightest: number;
  readonly events: LayupEvent[];
}

/** A lay-up of more steps than this is none. */
const MOST_STEPS = 100_000;

/** Below this share of the total, resin left is rounding. */
const CRUMB = 1e-12;

/**
 * Runs a lay-up with a crew that is faster or slower than expected, event by event.
 *
 * Formula: resin at hand falls with the pace; a pot is mixed at the mark (or by the clock), opened
 * when the one before is empty, thrown away past its time; the spare is mixed when the pots are all
 * begun and resin is missing
 *
 * Range: factors above 0, intervals of 1 s or more; one pot is mixed at a time.
 *
 * Source: balance of resin at hand.
 *
 * @param plan From `planBatches`.
 * @param pace The crew's pace and what mixing follows.
 * @returns Events, time without resin [s], resin thrown away [kg].
 * @throws {InputError} If the plan or the pace cannot be meant.
 *
 * @example A steady crew never runs dry
 * ```ts
 * import { planBatches, runLayup } from "@laminate/notebooks/shop";
 * import { assertEquals } from "@std/assert";
 *
 * const plan = planBatches({
 *   totalMass: 1.8, resinPerArea: 0.25, layingRate: 0.12 / 60, rateSpread: 0.3, mixingTime: 240,
 *   sheet: { potLife: 2400, mass: 0.1, temperature: 293 }, temperature: 293, usableShare: 0.8,
 * });
 * const run = runLayup(plan, { factors: [1], interval: 60, mixBy: "clock" });
 * assertEquals([run.dryTime, run.discarded, run.missing], [0, 0, 0]);
 * ```
 */
export function runLayup(plan: BatchPlan, pace: LayupPace): LayupRun {
  checkRun(plan, pace);
  const total = plan.task.totalMass;
  const flow = plan.task.layingRate * plan.task.resinPerArea;
  const run: Run = {
    time: 0,
    needed: total,
    nextBatch: 0,
    mixing: undefined,
    ready: [],
    open: undefined,
    dryTime: 0,
    dry: false,
    discarded: 0,
    emptiedAt: undefined,
    tightest: Infinity,
    events: [],
  };
  for (let step = 0; run.needed > CRUMB * total; step++) {
    if (step > MOST_STEPS) {
      check.refuse(
        "steps of the lay-up",
        step,
        "must not be so many: an interval or rate is too small",
      );
    }
    settle(run, plan, pace);
    if (stuck(run, plan)) break;
    advance(run, plan, { pace, flow });
  }
  tell(run, "done", run.open?.batch ?? run.nextBatch);
  return {
    events: run.events,
    finishAt: run.time,
    dryTime: run.dryTime,
    discarded: run.discarded,
    spareUsed: run.nextBatch > plan.batches.length,
    missing: run.needed > CRUMB * total ? run.needed : 0,
    tightest: run.tightest === Infinity ? 0 : run.tightest,
  };
}

/** Does what is due at this moment: hand over, throw away, open, start to mix. */
function settle(run: Run, plan: BatchPlan, pace: LayupPace): void {
  if (run.mixing !== undefined && run.mixing.readyAt <= run.time) {
    tell(run, "ready", run.mixing.batch);
    run.ready.push(run.mixing);
    run.mixing = undefined;
  }
  if (run.open !== undefined && run.open.left <= CRUMB * plan.task.totalMass) {
    tell(run, "empty", run.open.batch);
    run.emptiedAt = run.time;
    run.open = undefined;
  }
  throwAway(run);
  while (run.open === undefined && run.ready.length > 0) openNext(run);
  if (mixIsDue(run, plan, pace)) startMixing(run, plan);
  const isDry = run.open === undefined && run.emptiedAt !== undefined;
  if (isDry && !run.dry) tell(run, "dry", run.nextBatch);
  run.dry = isDry;
}

function throwAway(run: Run): void {
  if (run.open === undefined || run.time < run.open.useBefore) return;
  tell(run, "gone off", run.open.batch);
  run.discarded += run.open.left;
  run.emptiedAt = run.time;
  run.open = undefined;
}

function openNext(run: Run): void {
  const pot = run.ready.shift()!;
  run.open = pot;
  if (run.emptiedAt !== undefined) {
    run.tightest = Math.min(run.tightest, run.emptiedAt - pot.readyAt);
  }
  tell(run, "opened", pot.batch);
  throwAway(run);
}

/** Whether the next pot (or, when all are begun and resin is missing, the spare) is to be mixed. */
function mixIsDue(run: Run, plan: BatchPlan, pace: LayupPace): boolean {
  if (run.mixing !== undefined || run.nextBatch > plan.batches.length) return false;
  const atHand = (run.open?.left ?? 0) + run.ready.reduce((sum, { left }) => sum + left, 0);
  if (run.nextBatch === plan.batches.length) {
    return atHand <= plan.mark && run.needed - atHand > CRUMB * plan.task.totalMass;
  }
  if (pace.mixBy === "clock") return run.time >= plan.batches[run.nextBatch]!.mixAt;
  return atHand <= plan.mark + CRUMB * plan.task.totalMass;
}

function startMixing(run: Run, plan: BatchPlan): void {
  const batch = plan.batches[run.nextBatch];
  const mould = batch ?? plan.batches.reduce((a, b) => b.mass > a.mass ? b : a);
  run.mixing = {
    batch: run.nextBatch + 1,
    readyAt: run.time + plan.task.mixingTime,
    useBefore: run.time + (mould.useBefore - mould.mixAt),
    left: batch?.mass ?? plan.spareMass,
  };
  run.nextBatch += 1;
  tell(run, "mixing", run.mixing.batch);
}

/** Nothing at hand, nothing being mixed, nothing left to mix. */
function stuck(run: Run, plan: BatchPlan): boolean {
  return run.open === undefined && run.mixing === undefined &&
    run.nextBatch > plan.batches.length;
}

/** Lets time pass until the next thing is due. */
function advance(
  run: Run,
  plan: BatchPlan,
  { pace, flow }: { readonly pace: LayupPace; readonly flow: number },
): void {
  const slot = Math.floor(run.time / pace.interval * (1 + 1e-15));
  const rate = flow * pace.factors[slot % pace.factors.length]!;
  let until = (slot + 1) * pace.interval;
  if (run.mixing !== undefined) until = Math.min(until, run.mixing.readyAt);
  const next = plan.batches[run.nextBatch];
  if (pace.mixBy === "clock" && next !== undefined && next.mixAt > run.time) {
    until = Math.min(until, next.mixAt);
  }
  if (run.open !== undefined) {
    const { left, useBefore } = run.open;
    const aboveMark = left + run.ready.reduce((sum, pot) => sum + pot.left, 0) - plan.mark;
    until = Math.min(until, run.time + left / rate, run.time + run.needed / rate, useBefore);
    if (aboveMark > CRUMB * plan.task.totalMass) {
      until = Math.min(until, run.time + aboveMark / rate);
    }
  }
  const step = until - run.time;
  if (run.open !== undefined) {
    run.open.left -= rate * step;
    run.needed -= rate * step;
  } else if (run.dry) {
    run.dryTime += step;
  }
  run.time = until;
}

function tell(run: Run, what: LayupEvent["what"], batch: number): void {
  run.events.push({ time: run.time, what, batch });
}

function checkRun(plan: BatchPlan, pace: LayupPace): void {
  check.object("plan", plan);
  check.nonNegative("mark", plan.mark, "kg");
  check.positive("mass of the spare", plan.spareMass, "kg");
  for (const batch of check.list("batches", plan.batches)) {
    check.positive("mass of a batch", check.object("batch", batch).mass, "kg");
    check.nonNegative("start of a mix", batch.mixAt, "s");
    check.finite("end of a batch", batch.useBefore, "s");
  }
  check.object("task of the plan", plan.task);
  check.positive("mass of resin", plan.task.totalMass, "kg");
  check.positive("laying rate", plan.task.layingRate, "m²/s");
  check.positive("resin per area", plan.task.resinPerArea, "kg/m²");
  check.positive("mixing time", plan.task.mixingTime, "s");
  const { factors, interval, mixBy } = check.object("pace", pace);
  for (const factor of check.list("factors", factors)) check.positive("factor", factor);
  check.finite("interval", interval, "s");
  if (!(interval >= 1)) check.refuse("interval", interval, "must be 1 s or above");
  check.oneOf("mixBy", mixBy, ["mark", "clock"]);
}
