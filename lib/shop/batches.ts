import { checksFor } from "../check/mod.ts";
import { type Pot, potLife, type PotLifeSheet, USUAL_POT_LIMIT } from "./pot_life.ts";

const check = checksFor("plan the batches");

/** More pots than this are no lay-up. */
const MOST_POTS = 1000;
/** A hair less than all the usable time, so that rounding lets no pot go off. */
const SPARE_TIME = 1 - 1e-9;
/** A share of a pot that is rounding. */
const ROUNDING = 1e-12;

/** What is to be laid, by whom, with which resin. */
export interface BatchTask {
  /** Mixed resin that the lay-up takes, losses included [kg]. */
  readonly totalMass: number;
  /** Mixed resin that one square metre of laying takes, losses included [kg/m²]. */
  readonly resinPerArea: number;
  /** Area of cloth that the crew lays and wets in a time [m²/s]. */
  readonly layingRate: number;
  /** By how much the crew may be faster or slower, a share: 0.3 is ±30 % [1]. */
  readonly rateSpread: number;
  /** Time to weigh, mix and hand over a pot [s]. */
  readonly mixingTime: number;
  /** Pot life as the resin's sheet gives it. */
  readonly sheet: PotLifeSheet;
  /** Temperature of resin and workshop [K]. */
  readonly temperature: number;
  /** Share of the pot life after which a pot is not used any more [1]. */
  readonly usableShare: number;
  /** Largest mass in one pot; `USUAL_POT_LIMIT` if left out [kg]. */
  readonly largestBatch?: number;
}

/** One pot of the timetable; times count from the start of the first mixing. */
export interface Batch {
  /** Which one, from 1. */
  readonly number: number;
  /** Mixed resin [kg]. */
  readonly mass: number;
  /** When to start mixing it, at the rate expected [s]. */
  readonly mixAt: number;
  /** When it is ready [s]. */
  readonly readyAt: number;
  /** When the pot before it is empty and this one is begun, at the rate expected [s]. */
  readonly openAt: number;
  /** When it is empty, at the rate expected [s]. */
  readonly emptyAt: number;
  /** When it must not be used any more [s]. */
  readonly useBefore: number;
}

/** The timetable of the pots. */
export interface BatchPlan {
  /** The pots in order. */
  readonly batches: readonly Batch[];
  /** A spare of this mass, weighed out and not mixed [kg]. */
  readonly spareMass: number;
  /** Start the next mix when the pot in use is down to this; 0 with one pot or no hope [kg]. */
  readonly mark: number;
  /** Largest pot that is empty in time even if the crew is slow [kg]. */
  readonly largestUsable: number;
  /** When the last pot is empty, at the rate expected [s]. */
  readonly finishAt: number;
  /** Holds: with the mark, resin never runs out and no pot goes off within the spread. */
  readonly verdict: "holds" | "fails";
  /** What to know about it, and why it fails. */
  readonly notes: readonly string[];
  /** What it rests on. */
  readonly task: BatchTask;
}

/**
 * How many pots, how large, and when to mix each, so that resin never runs out with cloth wet.
 *
 * The mark is what keeps it so: the next mix starts when the pot in use is down to it, whatever the
 * clock says. The times are for the rate expected.
 *
 * Formula: q = rate × resin per area; mark = q(1 + s) t_mix; pots up to the mass m with
 * (mark + m)/(q(1 − s)) = usable share × pot life(m); as few and as equal as may be, none but the
 * last below the mark
 *
 * Range: spread s 0 to below 1. Fails where one pot is laid up faster than the next is mixed.
 *
 * Source: balance of resin at hand; pot life as `potLife`.
 *
 * @param task Resin to lay, laying rate, mixing time, pot life.
 * @returns Timetable, mark, spare and whether it holds.
 * @throws {InputError} If an input is outside its range.
 *
 * @example
 * ```ts
 * import { planBatches } from "@laminate/notebooks/shop";
 * import { assertEquals } from "@std/assert";
 *
 * const plan = planBatches({
 *   totalMass: 1.8, resinPerArea: 0.25, layingRate: 0.12 / 60, rateSpread: 0.3, mixingTime: 240,
 *   sheet: { potLife: 2400, mass: 0.1, temperature: 293 }, temperature: 293, usableShare: 0.8,
 * });
 * assertEquals(plan.batches.length, 6);
 * assertEquals(plan.verdict, "holds");
 * ```
 */
export function planBatches(task: BatchTask): BatchPlan {
  const flow = checkTask(task);
  const { totalMass, rateSpread, mixingTime } = task;
  const neededMark = flow * (1 + rateSpread) * mixingTime;
  const single = largestPot(task, flow, 0);
  if (!(single > 0)) {
    check.refuse("mixing time", mixingTime, "must be below the usable part of the pot life");
  }
  // A hair above the largest pot is rounding, not a second pot.
  const alone = totalMass <= single * (1 + ROUNDING);
  const largest = alone ? single : largestPot(task, flow, neededMark);
  const holds = alone || largest >= neededMark;
  // Where it cannot hold, each pot is mixed when the one before is empty: the crew stands dry, but
  // no pot goes off.
  const mark = alone || !holds ? 0 : neededMark;
  const largestUsable = holds ? largest : single;
  const batches = timetable(task, flow, { sizes: potSizes(totalMass, largestUsable, mark), mark });
  return {
    batches,
    spareMass: Math.max(...batches.map(({ mass }) => mass)),
    mark,
    largestUsable,
    finishAt: batches.at(-1)!.emptyAt,
    verdict: holds ? "holds" : "fails",
    notes: batchNotes(holds, batches),
    task,
  };
}

/** Mass at which a pot, begun late behind a slow crew, is empty just in time; 0 if there is none. */
function largestPot(task: BatchTask, flow: number, mark: number): number {
  const slow = flow * (1 - task.rateSpread);
  const limit = Math.min(task.largestBatch ?? USUAL_POT_LIMIT, task.totalMass);
  // The first pot waits for its own mixing, a later one until the mark is used up.
  const wait = mark === 0 ? task.mixingTime : mark / slow;
  const late = (mass: number): boolean => wait + mass / slow > usableTime(task, mass) * SPARE_TIME;
  if (!late(limit)) return limit;
  let [fits, tooLarge] = [0, limit];
  // Halving 100 times exhausts the digits of a double; lateness grows with the mass.
  for (let step = 0; step < 100; step++) {
    const middle = (fits + tooLarge) / 2;
    if (middle > 0 && !late(middle)) fits = middle;
    else tooLarge = middle;
  }
  return fits;
}

/** Equal pots if they are above the mark, else full ones and a small last one. */
function potSizes(total: number, largest: number, mark: number): readonly number[] {
  const count = check.result("number of pots", Math.ceil(total / largest * (1 - ROUNDING)));
  if (!(count <= MOST_POTS)) {
    check.refuse(
      "number of pots",
      count,
      `must be ${MOST_POTS} at most: resin or crew cannot be meant`,
    );
  }
  if (total / count >= mark) return Array(count).fill(total / count);
  const sizes: number[] = Array(count - 1).fill(largest);
  return [...sizes, total - largest * (count - 1)];
}

function timetable(
  task: BatchTask,
  flow: number,
  { sizes, mark }: { readonly sizes: readonly number[]; readonly mark: number },
): readonly Batch[] {
  const lead = mark / flow;
  let openAt = task.mixingTime;
  return sizes.map((mass, index) => {
    // Behind a pot smaller than the mark there is no mixing before that pot is begun itself.
    const mixAt = index === 0 ? 0 : openAt - Math.min(lead, sizes[index - 1]! / flow);
    const batch = {
      number: index + 1,
      mass,
      mixAt,
      readyAt: mixAt + task.mixingTime,
      openAt: Math.max(openAt, mixAt + task.mixingTime),
      emptyAt: Math.max(openAt, mixAt + task.mixingTime) + mass / flow,
      useBefore: mixAt + usableTime(task, mass),
    };
    openAt = batch.emptyAt;
    return batch;
  });
}

function batchNotes(holds: boolean, batches: readonly Batch[]): readonly string[] {
  if (!holds) {
    return [
      "Resin will run out while each pot is mixed: a pot small enough to be empty in time is laid " +
      "up before the next is ready. Take a slower hardener, a cooler hour, a second mixer or a " +
      "smaller lay-up.",
    ];
  }
  return batches.length === 1 ? [] : [
    "Start each mix when the pot in use is down to the mark; the clock is for a crew as fast as " +
    "expected.",
  ];
}

function usableTime(task: BatchTask, mass: number): number {
  const pot: Pot = { mass, temperature: task.temperature };
  return task.usableShare * potLife(task.sheet, pot);
}

function checkTask(task: BatchTask): number {
  check.object("task", task);
  check.positive("mass of resin", task.totalMass, "kg");
  check.positive("resin per area", task.resinPerArea, "kg/m²");
  check.positive("laying rate", task.layingRate, "m²/s");
  check.fraction("spread of the rate", task.rateSpread);
  if (!(task.rateSpread < 1)) {
    check.refuse("spread of the rate", task.rateSpread, "must be below 1");
  }
  check.positive("mixing time", task.mixingTime, "s");
  check.positive("usable share", check.fraction("usable share", task.usableShare));
  check.positive("largest batch", task.largestBatch ?? USUAL_POT_LIMIT, "kg");
  potLife(task.sheet, { mass: task.totalMass, temperature: task.temperature });
  return check.result("flow of resin", task.layingRate * task.resinPerArea, "kg/s");
}
