import { checksFor } from "../check/mod.ts";
import { type FilletSchedule, filletSchedule, type Mix, splitMix } from "../filler/mod.ts";
import { type DayTimes, dayTimes } from "./_day_times.ts";
import { type WeighBox, weighBoxes } from "./_weigh_boxes.ts";
import { type BagPlan, planBag } from "./bagging.ts";
import { type Batch, type BatchPlan, planBatches } from "./batches.ts";
import {
  cautionsFor,
  GENERAL_CAUTION,
  type OperationCautions,
  type RiskyOperation,
} from "./cautions.ts";
import { clockAfter } from "./clock.ts";
import { type CoreList, cutCore } from "./core_sheets.ts";
import { type CurePlan, curePlan } from "./cure.ts";
import { cutFromRoll, type CutList } from "./cut_list.ts";
import type { DayBag, DayTask } from "./day_task.ts";
import { type LayupTrials, tryLayups } from "./layup_trials.ts";
import { type ExothermCheck, exothermCheck, type StandingPot } from "./pot_life.ts";
import { planResin, type ResinPlan, type ResinTask } from "./resin_plan.ts";
import { type BagPressure, bagPressure, type CrushCheck, crushCheck } from "./vacuum.ts";

export type { DayTimes, DrawnInTime } from "./_day_times.ts";
export type { WeighBox } from "./_weigh_boxes.ts";

const check = checksFor("plan the day");

/** Any number would do; a fixed one gives the same sheet each time. */
const TRIAL_SEED = 20261125;

/** One pot with clock times and what to weigh. */
export interface DayBatch extends Batch, Pick<Mix, "resinMass" | "hardenerMass"> {
  /** When to start mixing, at the rate expected. */
  readonly mixClock: string;
  /** When it is begun, at the rate expected. */
  readonly openClock: string;
  /** When it is empty, at the rate expected. */
  readonly emptyClock: string;
  /** When it must not be used any more. */
  readonly useBeforeClock: string;
}

/** Everything for the sheet of one lay-up day. */
export interface DayPlan extends DayTimes {
  /** Name of the part. */
  readonly part: string;
  /** What stands above the cautions. */
  readonly generalCaution: string;
  /** Cautions for the operations of the day. */
  readonly cautions: readonly OperationCautions[];
  /** What to cut from each roll. */
  readonly cloths: readonly CutList[];
  /** What to cut from core sheets. */
  readonly cores: readonly CoreList[];
  /** Layers in the order in which they are laid, mould side first. */
  readonly layers: readonly string[];
  /** Resin, line by line. */
  readonly resin: ResinPlan;
  /** Timetable of the pots. */
  readonly batches: BatchPlan;
  /** Lay-ups simulated with a crew faster and slower within its spread, mixing by the mark. */
  readonly trialsByMark: LayupTrials;
  /** The same with mixing by the clock alone. */
  readonly trialsByClock: LayupTrials;
  /** The pots with clock times and weighings. */
  readonly pots: readonly DayBatch[];
  /** Whether the largest pot is likely to heat itself. */
  readonly exotherm: ExothermCheck;
  /** Consumables and order of the bag; none without bag. */
  readonly bag?: BagPlan;
  /** Pressure of the bag; none without bag. */
  readonly pressure?: BagPressure;
  /** Force of the bag and whether it crushes the core; none without bag or core. */
  readonly crush?: CrushCheck;
  /** Times to handling and full cure. */
  readonly cure: CurePlan;
  /** Putty for the fillets; none without them. */
  readonly fillets?: FilletSchedule;
  /** Boxes to write weights in, with what is expected. */
  readonly boxes: readonly WeighBox[];
  /** All that is doubtful, from every part of the plan. */
  readonly notes: readonly string[];
}

/**
 * The plan of a lay-up day from plain inputs: what to cut, mix, bag and wait for, with clock times,
 * cautions and boxes for the weighings. Demoulding counts from the slowest crew, and the bag is held
 * against the gelling of the first cloth. The resin is that of the cloth as cut, so that the masses
 * of all its parts agree.
 *
 * Range: as the functions that it calls.
 *
 * Source: `cutFromRoll`, `cutCore`, `planResin`, `planBatches`, `tryLayups`, `exothermCheck`, `planBag`,
 * `bagPressure`, `crushCheck`, `curePlan`, `filletSchedule`, `cautionsFor`.
 *
 * @param task Part, start, cloths, cores, resin, crew, bag and fillets.
 * @returns The plan; nothing in it is text that only a printer understands.
 * @throws {InputError} If an input cannot be meant.
 *
 * @example
 * ```ts
 * import { planDay } from "@laminate/notebooks/shop";
 * import { assertAlmostEquals, assertEquals } from "@std/assert";
 *
 * const plan = planDay({
 *   part: "sole panel",
 *   start: "18:00",
 *   layers: ["200 g twill 0°", "foam 6 mm", "200 g twill 0°"],
 *   cloths: [{
 *     name: "200 g twill", rollWidth: 1.2, arealWeight: 0.2, balanced: true, joinOverlap: 0.05,
 *     fibreMassFraction: 0.5,
 *     pieces: [
 *       { name: "skin", shape: { length: 1.2, width: 0.6 }, angleDeg: 0, trim: 0.02, count: 2 },
 *     ],
 *   }],
 *   cores: [{
 *     name: "foam 6 mm", sheetLength: 1.2, sheetWidth: 0.8, thickness: 0.006, density: 80,
 *     turnable: true, faces: 2, resinUptake: 0.2,
 *     pieces: [{ name: "sole", length: 1.1, width: 0.5, rampLength: 0.02, count: 1 }],
 *   }],
 *   coats: [],
 *   resin: {
 *     lossFraction: 0.15, phr: 30, densities: { resinDensity: 1150, hardenerDensity: 980 },
 *   },
 *   crew: {
 *     layingRate: 0.1 / 60, rateSpread: 0.3, mixingTime: 240, temperature: 293, usableShare: 0.8,
 *     sheet: { potLife: 2400, mass: 0.1, temperature: 293 },
 *   },
 *   cure: { temperature: 293, handlingTime: 12 * 3600, fullCureTime: 7 * 86400 },
 * });
 * assertEquals(plan.pots[0]?.mixClock, "18:00");
 * const potted = plan.pots.reduce((sum, pot) => sum + pot.mass, 0);
 * assertAlmostEquals(potted, plan.resin.total, 1e-12);
 * ```
 */
export function planDay(task: DayTask): DayPlan {
  check.object("task", task);
  check.text("name of the part", task.part);
  for (const layer of check.list("layers", task.layers)) check.text("layer", layer);
  const cloths = check.list("cloths", task.cloths).map(cutFromRoll);
  const cores = check.list("cores", task.cores, 0).map(cutCore);
  const resin = planResin(resinTask(task, { cloths, cores }));
  const clothArea = cloths.reduce((sum, { pieceArea }) => sum + pieceArea, 0);
  const batches = planBatches({
    ...check.object("crew", task.crew),
    totalMass: resin.total,
    resinPerArea: resin.total / clothArea,
  });
  const trials = { spread: batches.task.rateSpread, randomRuns: 20, seed: TRIAL_SEED };
  const trialsByMark = tryLayups(batches, { ...trials, mixBy: "mark" });
  const times = dayTimes(task, batches, trialsByMark);
  const pots = batches.batches.map((batch) => dayBatch(batch, task));
  const exotherm = exothermCheck(task.crew.sheet, largestPot(batches));
  const cure = curePlan(task.cure, task.crew.temperature);
  const bagged: Pick<DayPlan, "bag" | "pressure" | "crush"> = task.bag === undefined
    ? {}
    : bagOf(task.bag);
  const fillets = task.fillets === undefined ? undefined : filletSchedule(task.fillets);
  return {
    part: task.part,
    generalCaution: GENERAL_CAUTION,
    cautions: cautionsFor(operationsOf(task)),
    cloths,
    cores,
    layers: task.layers,
    resin,
    batches,
    trialsByMark,
    trialsByClock: tryLayups(batches, { ...trials, mixBy: "clock" }),
    pots,
    exotherm,
    ...bagged,
    cure,
    ...times,
    ...(fillets === undefined ? {} : { fillets }),
    boxes: weighBoxes({ cloths, cores, resin, pots }),
    notes: [
      ...cloths.flatMap(({ notes }) => notes),
      ...batches.notes,
      ...exotherm.notes,
      ...(bagged.pressure?.notes ?? []),
      ...(bagged.crush?.verdict === "fails" ? ["The bag would crush the core: less vacuum."] : []),
      ...(bagged.crush?.notes ?? []),
      ...(times.drawn?.notes ?? []),
      ...cure.notes,
    ],
  };
}

function resinTask(
  task: DayTask,
  { cloths, cores }: { readonly cloths: readonly CutList[]; readonly cores: readonly CoreList[] },
): ResinTask {
  return {
    cloths: task.cloths.map(({ name, arealWeight, fibreMassFraction }, i) => ({
      name,
      area: cloths[i]!.pieceArea,
      arealWeight,
      fibreMassFraction,
    })),
    cores: task.cores.map(({ name, faces, resinUptake }, i) => ({
      name,
      area: cores[i]!.footArea,
      faces,
      resinUptake,
    })),
    coats: task.coats,
    ...check.object("resin", task.resin),
  };
}

function dayBatch(batch: Batch, { start, resin }: DayTask): DayBatch {
  const { resinMass, hardenerMass } = splitMix(batch.mass, resin.phr);
  return {
    ...batch,
    resinMass,
    hardenerMass,
    mixClock: clockAfter(start, batch.mixAt),
    openClock: clockAfter(start, batch.openAt),
    emptyClock: clockAfter(start, batch.emptyAt),
    useBeforeClock: clockAfter(start, batch.useBefore),
  };
}

/** The largest pot, as long as it stands at the rate expected; `usableShare` minds a slow crew. */
function largestPot(
  { batches, mark, task }: BatchPlan,
): StandingPot {
  const mass = Math.max(...batches.map((batch) => batch.mass));
  const flow = task.layingRate * task.resinPerArea;
  return {
    mass,
    temperature: task.temperature,
    emptyAfter: (mark === 0 ? task.mixingTime : mark / flow) + mass / flow,
    ...(task.largestBatch === undefined ? {} : { massLimit: task.largestBatch }),
  };
}

function bagOf(bag: DayBag): { bag: BagPlan; pressure: BagPressure; crush?: CrushCheck } {
  const plan = planBag(bag);
  const pressure = bagPressure(bag.vacuum);
  if (bag.coreStrength === undefined || pressure.compaction === 0) return { bag: plan, pressure };
  const crush = crushCheck({
    compaction: pressure.compaction,
    bagArea: plan.tapedArea,
    coreStrength: bag.coreStrength,
    contactShare: bag.contactShare ?? 1,
  });
  return { bag: plan, pressure, crush };
}

function operationsOf(task: DayTask): readonly RiskyOperation[] {
  return [
    "cutting and drilling",
    "mixing resin",
    ...(task.fillets === undefined ? [] : ["mixing filler"] as const),
    "laying up",
    ...(task.bag === undefined ? [] : ["bagging"] as const),
    "curing",
    "cleaning",
    ...check.list("operations", task.operations ?? [], 0),
  ];
}
