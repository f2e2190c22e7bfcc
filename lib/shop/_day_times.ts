import { checksFor } from "../check/mod.ts";
import { USUAL_BAGGING } from "./bagging.ts";
import type { BatchPlan } from "./batches.ts";
import { clockAfter, fullHourAfter } from "./clock.ts";
import { curePlan } from "./cure.ts";
import type { DayTask } from "./day_task.ts";
import type { LayupTrials } from "./layup_trials.ts";
import { potLife } from "./pot_life.ts";

const check = checksFor("plan the day");

/** When the last resin is laid and what follows from it, with the slowest crew of its spread. */
export interface DayTimes {
  /** Clock time at which the slowest crew has laid the last resin. */
  readonly latestFinishClock: string;
  /** Clock time of the earliest demoulding after the slowest crew, up to the full hour. */
  readonly handleClock: string;
  /** A temperature that is easily two degrees Celsius lower, and the earliest demoulding then. */
  readonly colder: {
    /** The lower temperature [K]. */
    readonly temperature: number;
    /** Clock time of the earliest demoulding there, up to the full hour. */
    readonly handleClock: string;
  };
  /** Days after the start until full strength, after the slowest crew, up to the full day [1]. */
  readonly fullStrengthDays: number;
  /** Whether the bag is drawn before the first cloth gels; none without bag. */
  readonly drawn?: DrawnInTime;
}

/** Whether a bag still squeezes resin that flows. */
export interface DrawnInTime {
  /** Clock time at which the bag is under vacuum, as expected. */
  readonly clock: string;
  /** Clock time at which it is, with the slowest crew and the longest bagging. */
  readonly latestClock: string;
  /** Clock time at which the resin that was mixed first gels in a thin layer. */
  readonly gelClock: string;
  /** Holds: drawn before that at the latest. Not known where the sheet gives no such time. */
  readonly verdict: "holds" | "fails" | "not known";
  /** What to do about it. */
  readonly notes: readonly string[];
}

/** Thermometers and nights differ by this from what was planned [K]. */
const COLDER = 2;
const DAY = 86_400;

/** Times that follow from the end of the lay-up. */
export function dayTimes(task: DayTask, batches: BatchPlan, trials: LayupTrials): DayTimes {
  const { start, cure } = task;
  const { temperature } = task.crew;
  const latest = trials.latestFinish;
  const handled = (at: number): string =>
    fullHourAfter(start, latest + curePlan(cure, at).handlingTime);
  return {
    latestFinishClock: clockAfter(start, latest),
    handleClock: handled(temperature),
    colder: {
      temperature: temperature - COLDER,
      handleClock: handled(temperature - COLDER),
    },
    fullStrengthDays: Math.ceil((latest + curePlan(cure, temperature).fullCureTime) / DAY - 1e-9),
    ...(task.bag === undefined ? {} : { drawn: drawnInTime(task, { batches, latest }) }),
  };
}

/** Compares the bag with the time for which resin in a thin layer stays liquid. */
function drawnInTime(
  { start, bag, crew }: DayTask,
  { batches, latest }: { readonly batches: BatchPlan; readonly latest: number },
): DrawnInTime {
  const { likely, high } = bag?.baggingTime ?? USUAL_BAGGING;
  check.nonNegative("time to bag", likely, "s");
  if (!(high >= likely)) check.refuse("longest time to bag", high, `must not be below ${likely} s`);
  const { sheet, temperature } = crew;
  // A pot of hardly any resin: what a thin layer has, or, where the sheet is silent, surely has.
  const gelAt = potLife(sheet, { mass: 1e-9 * sheet.mass, temperature });
  const drawnAt = latest + high;
  const [latestClock, gelClock] = [clockAfter(start, drawnAt), clockAfter(start, gelAt)];
  const common = { clock: clockAfter(start, batches.finishAt + likely), latestClock, gelClock };
  if (drawnAt <= gelAt) return { ...common, verdict: "holds", notes: [] };
  if (sheet.thinLayerTime === undefined) {
    const note = `The bag is drawn by ${latestClock} at the latest. Whether the first cloth is ` +
      `still wet then is not known: look up the resin's time in a thin layer (its pot life ends ` +
      `at ${gelClock}).`;
    return { ...common, verdict: "not known", notes: [note] };
  }
  const note = `The first cloth gels about ${gelClock}, and a slow crew draws the bag by ` +
    `${latestClock} only: fewer parts, more hands or a slower hardener.`;
  return { ...common, verdict: "fails", notes: [note] };
}
