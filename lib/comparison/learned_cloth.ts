import { checksFor } from "../check/mod.ts";
import type { LayupProcess } from "../constituents/mod.ts";
import type { Reinforcement } from "../materials/mod.ts";
import type { LayupRecord, WeighingRecord } from "../records/mod.ts";
import { type Pooled, poolGroups, type Uncertain, updateEstimate } from "../statistics/mod.ts";
import { checkFigures, checkLayup } from "./_layup_checks.ts";
import { MEASURED } from "./_shape.ts";
import { rangeOf, spread } from "./_spread.ts";
import type { WeighedRecord } from "./weighed_parts.ts";

const check = checksFor("learn the cloth");

/** Areal weight of a roll, before and after pieces of it were weighed dry. */
export interface LearnedArealWeight {
  /** As the catalogue has it [kg/m²]. */
  readonly before: Uncertain;
  /** With the pieces that were weighed [kg/m²]. */
  readonly after: Uncertain;
  /** The parts whose cloth was weighed dry. */
  readonly parts: readonly string[];
}

function checkCloth(cloth: Reinforcement): void {
  check.shape("cloth", cloth, {
    ...{ name: "text", arealWeight: "positive", fibreFraction: "positive" },
    typical: { each: "object" },
  });
  checkFigures(check, cloth, "cloth");
}

/** Scatter of the areal weight from piece to piece of one roll: common practice, no source [1]. */
const PIECE_TO_PIECE = 0.01;

/**
 * Areal weight of a roll from the pieces of it that were weighed dry.
 *
 * Formula: w = m/(n A) of each part; mean with u = √(Σ u²/k² + (0.01 w)²/k) of k parts; then as
 * `updateEstimate` with the catalogue's range as prior
 *
 * Range: parts whose lay-up has this cloth alone; others do not count. Pieces weighed on one scale
 * share its error: it is taken as small beside theirs.
 *
 * Source: JCGM 100:2008, 5.1; piece to piece 1 %, common practice, no source.
 *
 * @param records Parts on the scale.
 * @param cloth The cloth.
 * @returns Areal weight before and after, and the parts; null if no piece was weighed dry.
 * @throws {InputError} If the records are no list or the cloth no object.
 *
 * @example
 * ```ts
 * import { learnArealWeight } from "@laminate/notebooks/comparison";
 * import { readPart } from "@laminate/notebooks/records";
 * import { assert } from "@std/assert";
 *
 * const { weighings, catalogue } = await readPart("data/sole-panels");
 * const learned = learnArealWeight(weighings!, catalogue.reinforcements.get("glass twill 200")!);
 * assert(learned!.after.u < learned!.before.u / 4);
 * ```
 */
export function learnArealWeight(
  records: readonly WeighingRecord[],
  cloth: Reinforcement,
): LearnedArealWeight | null {
  check.list("records", records, 0).forEach((record, i) => {
    checkLayup(check, check.object(`record ${i + 1}`, record).layup);
    checkFigures(check, record, `record ${i + 1}`);
    check.shape(`area of record ${i + 1}`, record.area, MEASURED);
    if (record.dryClothMass !== undefined) {
      check.shape(`dry cloth of record ${i + 1}`, record.dryClothMass, MEASURED);
    }
  });
  checkCloth(cloth);
  const pieces = records.flatMap(({ part, layup, area, dryClothMass }) => {
    const plies = layup.layers.filter((layer) => layer.kind === "reinforcement");
    const alone = plies.every(({ reinforcement }) => reinforcement.name === cloth.name);
    if (dryClothMass === undefined || plies.length === 0 || !alone) return [];
    const value = dryClothMass.value / (plies.length * area.value);
    const share = Math.hypot(dryClothMass.u / dryClothMass.value, area.u / area.value);
    return [{ part, value, u: share * value }];
  });
  const count = pieces.length;
  if (count === 0) return null;
  const value = pieces.reduce((sum, piece) => sum + piece.value, 0) / count;
  const u = Math.hypot(
    Math.hypot(...pieces.map((piece) => piece.u)) / count,
    PIECE_TO_PIECE * value / Math.sqrt(count),
  );
  const before = { value: cloth.arealWeight, u: spread(cloth.typical.arealWeight) };
  check.positive("areal weight", check.result("areal weight", value, "kg/m²"), "kg/m²");
  check.result("uncertainty of the areal weight", u, "kg/m²");
  const after = before.u > 0 && u > 0 ? updateEstimate(before, [{ value, u }]) : { value, u };
  return {
    before,
    after: { value: after.value, u: after.u },
    parts: pieces.map(({ part }) => part),
  };
}

/**
 * A lay-up schedule with the areal weight of a cloth replaced, its range with it.
 *
 * Formula: range value ± √3 u, as the catalogue's ranges are read
 *
 * Range: any schedule; a cloth that it does not have changes nothing.
 *
 * Source: JCGM 100:2008, 4.3.7.
 *
 * @param layup The schedule.
 * @param cloth Name of the cloth.
 * @param arealWeight Its areal weight with uncertainty [kg/m²].
 * @returns The schedule so changed.
 * @throws {InputError} If the areal weight is not above 0.
 *
 * @example
 * ```ts
 * import { withArealWeight } from "@laminate/notebooks/comparison";
 * import { readPart } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const { layups } = await readPart("data/sole-panels");
 * const sole = withArealWeight(layups.get("sole")!, "glass twill 200", { value: 0.198, u: 1e-3 });
 * const [first] = sole.layers;
 * assertEquals(first?.kind === "reinforcement" && first.reinforcement.arealWeight, 0.198);
 * ```
 */
export function withArealWeight(
  layup: LayupRecord,
  cloth: string,
  arealWeight: Uncertain,
): LayupRecord {
  checkLayup(check, layup);
  check.shape("areal weight", arealWeight, MEASURED);
  const changed = (reinforcement: Reinforcement): Reinforcement => ({
    ...reinforcement,
    arealWeight: arealWeight.value,
    typical: { ...reinforcement.typical, arealWeight: rangeOf(arealWeight) },
  });
  return {
    ...layup,
    layers: layup.layers.map((layer) =>
      layer.kind === "reinforcement" && layer.reinforcement.name === cloth
        ? { ...layer, reinforcement: changed(layer.reinforcement) }
        : layer
    ),
  };
}

/** Fibre fraction that a crew reaches, over its parts. */
export interface LearnedFibreFraction {
  /** How the parts were made. */
  readonly process: LayupProcess;
  /** As the catalogue has it [1]. */
  readonly before: Uncertain;
  /** Over the parts: mean, spread, each part, and the next [1]. */
  readonly pooled: Pooled;
  /** The parts. */
  readonly parts: readonly string[];
}

/**
 * Fibre volume fraction that a crew reaches with a cloth and a process, from its weighed parts; and
 * what to expect of the next one.
 *
 * Formula: as `poolGroups`
 *
 * Range: three parts or more whose weighing is plausible and whose lay-up has this cloth alone.
 *
 * Source: as `poolGroups`.
 *
 * @param weighed Weighed parts, from `weighedRecord`.
 * @param cloth The cloth.
 * @param process The process.
 * @returns The fraction before and over the parts; null with under three parts.
 * @throws {InputError} If the parts are no list or the cloth no object.
 *
 * @example
 * ```ts
 * import { learnFibreFraction, weighedRecord } from "@laminate/notebooks/comparison";
 * import { readPart } from "@laminate/notebooks/records";
 * import { assert } from "@std/assert";
 *
 * const { weighings, catalogue } = await readPart("data/sole-panels");
 * const cloth = catalogue.reinforcements.get("glass twill 200")!;
 * const learned = learnFibreFraction(weighings!.map(weighedRecord), cloth, "bagged");
 * assert(learned!.pooled.mean.value > 0.43);
 * ```
 */
export function learnFibreFraction(
  weighed: readonly WeighedRecord[],
  cloth: Reinforcement,
  process: LayupProcess,
): LearnedFibreFraction | null {
  check.list("weighed parts", weighed, 0).forEach((entry, i) => {
    const { record, weighed } = check.object(`weighed part ${i + 1}`, entry);
    checkLayup(check, check.object(`record of weighed part ${i + 1}`, record).layup);
    const { verdict, fibreVolumeFraction } = check.object(`weighing of part ${i + 1}`, weighed);
    check.text(`verdict on part ${i + 1}`, verdict);
    check.shape(`fibre fraction of part ${i + 1}`, fibreVolumeFraction, [null, MEASURED]);
  });
  checkCloth(cloth);
  const parts = weighed.flatMap(({ record, weighed: { verdict, fibreVolumeFraction } }) => {
    const plies = record.layup.layers.filter((layer) => layer.kind === "reinforcement");
    const alone = plies.every(({ reinforcement }) => reinforcement.name === cloth.name);
    if (record.process !== process || verdict !== "plausible" || !alone) return [];
    if (fibreVolumeFraction === null || !(fibreVolumeFraction.u > 0)) return [];
    const { value, u } = fibreVolumeFraction;
    return [{ name: record.part, value, u }];
  });
  if (parts.length < 3) return null;
  return {
    process,
    before: { value: cloth.fibreFraction, u: spread(cloth.typical.fibreFraction) },
    pooled: poolGroups(parts),
    parts: parts.map(({ name }) => name),
  };
}
