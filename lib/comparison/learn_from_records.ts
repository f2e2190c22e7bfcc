import { checksFor } from "../check/mod.ts";
import type { LayupProcess } from "../constituents/mod.ts";
import type { Reinforcement } from "../materials/mod.ts";
import type { LayupRecord, LoadTestRecord, WeighingRecord } from "../records/mod.ts";
import { checkLayup } from "./_layup_checks.ts";
import { type BeamEvidence, beamEvidence, type MeasuringCare } from "./beam_evidence.ts";
import { isAsLaid } from "./input_names.ts";
import { type LearnedFromBeams, learnFromBeams, type LearnOptions } from "./learn_materials.ts";
import {
  learnArealWeight,
  type LearnedArealWeight,
  type LearnedFibreFraction,
  learnFibreFraction,
  withArealWeight,
} from "./learned_cloth.ts";
import { type WeighedRecord, weighedRecord } from "./weighed_parts.ts";

const check = checksFor("learn from the records");

/** A crew's records. */
export interface CrewRecords {
  /** Its parts on the scale. */
  readonly weighings: readonly WeighingRecord[];
  /** Its bending tests. */
  readonly loadTests: readonly LoadTestRecord[];
}

/** What is to be learned from, and how. */
export interface RecordsOptions extends LearnOptions {
  /** The lay-up schedule; that of the first load test if left out. */
  readonly layup?: string;
  /** Parts that are not to teach: known mistakes, or one that is to be foretold. */
  readonly setAside?: readonly string[];
  /** How carefully beams were measured. */
  readonly care?: MeasuringCare;
}

/** A cloth as this crew has and lays it. */
export interface LearnedCloth {
  /** The cloth, as in the catalogue. */
  readonly cloth: Reinforcement;
  /** Its areal weight; null where no piece was weighed dry. */
  readonly arealWeight: LearnedArealWeight | null;
  /** The fibre fraction reached; null with under three weighed parts. */
  readonly fibreFraction: LearnedFibreFraction | null;
}

/** What a crew's records teach. */
export interface LearnedFromRecords extends LearnedFromBeams {
  /** The lay-up schedule, areal weights as learned. */
  readonly layup: LayupRecord;
  /** Each cloth of the schedule. */
  readonly cloths: readonly LearnedCloth[];
  /** The beams that taught. */
  readonly beams: readonly BeamEvidence[];
  /** Every part on the scale, weighed with the areal weights as learned. */
  readonly weighed: readonly WeighedRecord[];
  /** The first and the last day that the records name; null where they name none. */
  readonly days: { readonly from: string; readonly to: string } | null;
}

/**
 * Everything that a crew's records teach of its materials, in the order in which one rests on the
 * other: the areal weight of its rolls from cloth weighed dry, with that the fibre fraction of each
 * part from the scale, with that the moduli from the bending tests.
 *
 * Formula: as `learnArealWeight`, `learnFibreFraction` and `learnFromBeams`
 *
 * Range: tests of one lay-up schedule; other schedules' weighings teach of a cloth they share.
 *
 * Source: as those.
 *
 * @param records Weighings and load tests, from a part folder.
 * @param options Schedule, parts set aside, spreads and care.
 * @returns Areal weights, fibre fractions and moduli, with what they rest on.
 * @throws {InputError} If no test is left, or as `learnFromBeams`.
 *
 * @example
 * ```ts
 * import { learnFromRecords } from "@laminate/notebooks/comparison";
 * import { readPart } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const { weighings, loadTests } = await readPart("data/sole-panels");
 * const learned = learnFromRecords(
 *   { weighings: weighings!, loadTests: loadTests! },
 *   { setAside: ["beam 4"] },
 * );
 * assertEquals(learned.parts.map(({ part }) => part), ["beam 1", "beam 2", "beam 3"]);
 * ```
 */
export function learnFromRecords(
  records: CrewRecords,
  options: RecordsOptions = {},
): LearnedFromRecords {
  const { weighings, loadTests } = check.object("records", records);
  check.list("load tests", loadTests);
  check.shape("weighings", weighings, [{ part: "text", layup: "object" }]);
  check.shape("load tests", loadTests, [{ specimen: "text", layup: "object" }]);
  for (const { layup } of [...weighings, ...loadTests]) checkLayup(check, layup);
  const { setAside = [], care = {} } = check.object("options", options);
  check.shape("parts set aside", setAside, ["text"]);
  const named = options.layup ?? loadTests[0]!.layup.name;
  const tests = loadTests.filter(({ layup, specimen }) =>
    layup.name === named && !setAside.includes(specimen)
  );
  const schedule = check.list(`load tests of ${named} that may teach`, tests)[0]!.layup;
  const scales = weighings.filter(({ part }) => !setAside.includes(part));
  const weights = clothsOf(schedule).map((cloth) => ({
    cloth,
    arealWeight: learnArealWeight(scales, cloth),
  }));
  const relaid = (layup: LayupRecord): LayupRecord =>
    weights.reduce(
      (laid, { cloth, arealWeight }) =>
        arealWeight === null ? laid : withArealWeight(laid, cloth.name, arealWeight.after),
      layup,
    );
  const reweighed = weighings.map((record) => ({ ...record, layup: relaid(record.layup) }));
  const weighed = reweighed.map(weighedRecord);
  const beams = [...Map.groupBy(tests, ({ specimen }) => specimen)].map(([name, own]) =>
    beamEvidence(
      own.map((test) => ({ ...test, layup: relaid(test.layup) })),
      reweighed.find(({ part }) => part === name),
      care,
    )
  );
  const process = processOf(beams) ?? "bagged";
  const teaching = weighed.filter(({ record }) => !setAside.includes(record.part));
  const learned = learnFromBeams(beams, options);
  return {
    ...learned,
    notes: [...learned.notes, ...ownRowsAlready(schedule)],
    layup: relaid(schedule),
    cloths: weights.map(({ cloth, arealWeight }) => ({
      ...{ cloth, arealWeight },
      fibreFraction: learnFibreFraction(teaching, cloth, process),
    })),
    ...{ beams, weighed },
    days: daysOf(teaching),
  };
}

function clothsOf(layup: LayupRecord): readonly Reinforcement[] {
  const cloths = layup.layers.flatMap((layer) =>
    layer.kind === "core" ? [] : [layer.reinforcement]
  );
  return [...new Map(cloths.map((cloth) => [cloth.name, cloth])).values()];
}

/** Evidence that counts twice makes an uncertainty too small. */
function ownRowsAlready({ layers }: LayupRecord): readonly string[] {
  const own = layers.some((layer) => layer.kind === "reinforcement" && isAsLaid(layer.fibre));
  return own
    ? [
      "The materials learned from are own rows already: tests that they hold must not teach again. " +
      "Take the folder materials/ away, or set those parts aside.",
    ]
    : [];
}

/** How most of the beams were made. */
function processOf(beams: readonly BeamEvidence[]): LayupProcess | undefined {
  const made = beams.flatMap(({ weighed }) => weighed === null ? [] : [weighed.record.process]);
  const counted = [...Map.groupBy(made, (process) => process)];
  return counted.toSorted(([, a], [, b]) => b.length - a.length)[0]?.[0];
}

function daysOf(weighed: readonly WeighedRecord[]): LearnedFromRecords["days"] {
  const days = weighed.flatMap(({ record }) => record.date ?? []).toSorted();
  return days.length === 0 ? null : { from: days[0]!, to: days.at(-1)! };
}
