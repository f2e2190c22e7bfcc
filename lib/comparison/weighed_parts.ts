import { checksFor } from "../check/mod.ts";
import { type WeighedCloth, type WeighedPart, weighPart } from "../constituents/mod.ts";
import type { CoreLayer, LayupRecord, ReinforcementLayer, WeighingRecord } from "../records/mod.ts";
import { sectionFromStack, solidSectionFromStack } from "../sandwich/mod.ts";
import { propagate, type Propagated, type Uncertain } from "../statistics/mod.ts";
import { spread } from "./_spread.ts";
import { checkFigures, checkLayup } from "./_layup_checks.ts";
import { layupStack } from "./layup_inputs.ts";

const check = checksFor("read a part's weighing");

/** What a record of the scale says of a part, and what follows for the part. */
export interface WeighedRecord {
  /** The record. */
  readonly record: WeighingRecord;
  /** Resin ratio and fibre fractions with their uncertainty, and whether they can be believed. */
  readonly weighed: WeighedPart;
  /** Resin of the laminate over laminate mass; null where the masses leave no laminate [1]. */
  readonly resinContent: Uncertain | null;
  /** Density of the core, from its mass; null without a core, or sealed before weighing [kg/m³]. */
  readonly coreDensity: Propagated<"core mass" | "area" | "thickness"> | null;
  /** What the fibre fraction does, beside the one aimed at; null where there is none. */
  readonly effect: FractionEffect | null;
  /** Remarks of the weighing and on the core, empty where there is nothing to say. */
  readonly notes: readonly string[];
}

/** A part as weighed, relative to the same cloth with the resin that was aimed at. */
export interface FractionEffect {
  /** Flexural rigidity, as weighed over as aimed at [1]. */
  readonly stiffnessRatio: number;
  /** Thickness of the plies, as weighed over as aimed at [1]. */
  readonly plyThicknessRatio: number;
  /** Mass of the plies, as weighed over as aimed at [1]. */
  readonly plyMassRatio: number;
}

/** Coat that seals a foam, both faces, that a weighed core may carry: common practice [kg/m²]. */
const SEALING_COAT = 0.2;
/** Tolerance of a core sheet's thickness as a standard uncertainty: common practice [m]. */
const CORE_THICKNESS_U = 0.1e-3;

/**
 * What resin ratio did a part get? From its record on the scale and the materials of its lay-up.
 *
 * A core that was not sealed before it was weighed soaks up resin that the plies never saw; the
 * catalogue's uptake with its wide range then counts, and widens the answer.
 *
 * Formula: `weighPart`; u of a catalogue range (high − low)/√12; core density m/(A t), with the
 * core's own area where it was recorded
 *
 * Range: one core at most.
 *
 * Source: as `weighPart`; JCGM 100:2008, 4.3.7.
 *
 * @param record The record of the scale, materials filled in.
 * @returns Resin ratio, fractions, core density and their consequences, with remarks.
 * @throws {InputError} If the lay-up has no ply or more than one core.
 *
 * @example
 * ```ts
 * import { weighedRecord } from "@laminate/notebooks/comparison";
 * import { readPart } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const { weighings } = await readPart("data/sole-panels");
 * const mistaken = weighings!.map(weighedRecord).filter(({ weighed }) => weighed.verdict === "mistake");
 * assertEquals(mistaken.map(({ record }) => record.part), ["panel 7"]);
 * ```
 */
export function weighedRecord(record: WeighingRecord): WeighedRecord {
  check.object("record", record);
  checkFigures(check, record, "record");
  checkLayup(check, record.layup);
  const { layup } = record;
  const cores = layup.layers.filter((layer) => layer.kind === "core");
  if (cores.length > 1) check.refuse("cores", cores, "must be one at most to weigh the part");
  const core = cores[0];
  const resin = firstPly(layup).resin;
  const weighed = weighPart({
    partMass: record.partMass,
    area: record.area,
    layers: cloths(layup),
    resinDensity: { value: resin.density, u: spread(resin.typical.density) },
    process: record.process,
    otherMass: record.otherMass,
    ...(core === undefined ? {} : { coreMass: record.coreMass }),
    ...(core === undefined || record.coreSealed ? {} : { coreUptake: uptake(core) }),
    ...(core === undefined || record.coreArea === undefined ? {} : { coreArea: record.coreArea }),
    ...(record.dryClothMass === undefined ? {} : { dryClothMass: record.dryClothMass }),
  });
  const { fibreMassFraction, fibreVolumeFraction } = weighed;
  const coreDensity = core === undefined ? null : densityOfCore(record, core);
  return {
    record,
    weighed,
    resinContent: fibreMassFraction === null
      ? null
      : { value: 1 - fibreMassFraction.value, u: fibreMassFraction.u },
    coreDensity,
    effect: fibreVolumeFraction === null || weighed.verdict === "mistake"
      ? null
      : effectOf(layup, fibreVolumeFraction.value, weighed.targetFibreVolumeFraction),
    notes: [
      ...weighed.notes,
      ...(core === undefined || coreDensity === null ? [] : coreNotes(core, coreDensity, record)),
    ],
  };
}

function firstPly(layup: LayupRecord): ReinforcementLayer {
  return layup.layers.find((layer) => layer.kind === "reinforcement") ??
    check.refuse("plies", layup.layers, "must be one or more");
}

/** The cloths of a lay-up, each counted. */
function cloths(layup: LayupRecord): readonly WeighedCloth[] {
  const counted = new Map<string, WeighedCloth & { readonly count: number }>();
  for (const layer of layup.layers) {
    if (layer.kind === "core") continue;
    const { reinforcement, fibre } = layer;
    counted.set(reinforcement.name, {
      cloth: reinforcement.name,
      fibre: fibre.name,
      form: reinforcement.form,
      arealWeight: {
        value: reinforcement.arealWeight,
        u: spread(reinforcement.typical.arealWeight),
      },
      fibreDensity: { value: fibre.density, u: spread(fibre.typical.density) },
      count: (counted.get(reinforcement.name)?.count ?? 0) + 1,
    });
  }
  return [...counted.values()];
}

/** Resin that both faces of the core soak up, with the catalogue's range [kg/m²]. */
function uptake({ core }: CoreLayer): Uncertain {
  return { value: 2 * core.resinUptake, u: 2 * spread(core.typical.resinUptake) };
}

function densityOfCore(
  { coreMass, area, coreArea }: WeighingRecord,
  { thickness }: CoreLayer,
): Propagated<"core mass" | "area" | "thickness"> | null {
  if (!(coreMass.value > 0)) return null;
  return propagate(
    (values) => values["core mass"] / (values.area * values.thickness),
    {
      "core mass": coreMass,
      area: coreArea ?? area,
      thickness: { value: thickness, u: CORE_THICKNESS_U },
    },
  );
}

/** Says so where the core is lighter or heavier than the catalogue's range. */
function coreNotes(
  { core, thickness }: CoreLayer,
  density: Uncertain,
  { coreSealed, coreArea }: WeighingRecord,
): readonly string[] {
  const range = core.typical.density;
  if (range === undefined) return [];
  const coat = coreSealed ? SEALING_COAT / thickness : 0;
  const figures = `the core weighed ${density.value.toFixed(0)} kg/m³` +
    `${coreSealed ? ", its sealing coat included" : ""}, where ${core.name} has ` +
    `${range.low.toFixed(0)} to ${range.high.toFixed(0)} kg/m³`;
  if (density.value + 2 * density.u < range.low) {
    return [
      `Light core: ${figures}. A lighter foam is softer in shear; check the sheet.`,
      ...(coreArea === undefined
        ? ["Was the core smaller than the part? Then write down core_length and core_width."]
        : []),
    ];
  }
  if (density.value - 2 * density.u > range.high + coat) {
    return [`Heavy core: ${figures}. Another sheet, or a wet one?`];
  }
  return [];
}

function effectOf(layup: LayupRecord, reached: number, aimed: number): FractionEffect {
  const [as, target] = [reached, aimed].map((value) => {
    const stack = layupStack(layup, { fibreFraction: { value, u: 0 } });
    const plies = stack.filter((_, i) => layup.layers[i]!.kind === "reinforcement");
    const section = plies.length === stack.length
      ? solidSectionFromStack(stack, 1)
      : sectionFromStack(stack, { width: 1 });
    return {
      rigidity: section.flexuralRigidity,
      thickness: plies.reduce((sum, ply) => sum + ply.thickness, 0),
      mass: plies.reduce((sum, { thickness, lamina }) => sum + thickness * lamina.density, 0),
    };
  });
  return {
    stiffnessRatio: as!.rigidity / target!.rigidity,
    plyThicknessRatio: as!.thickness / target!.thickness,
    plyMassRatio: as!.mass / target!.mass,
  };
}
