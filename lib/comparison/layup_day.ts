import { checksFor } from "../check/mod.ts";
import { fibreMassFraction } from "../constituents/mod.ts";
import type { CoreLayer, LayupRecord, ReinforcementLayer, WorkshopRecord } from "../records/mod.ts";
import {
  type DayBag,
  type DayCloth,
  type DayCore,
  type DayTask,
  geopotentialAltitude,
  type ResinCoat,
  standardAtmosphere,
} from "../shop/mod.ts";
import { checkDay } from "./_layup_day_checks.ts";

const check = checksFor("plan the day of a lay-up");

/** Stock that parts are cut from. */
export interface ShopStock {
  /** Usable width of the cloth's roll [m]. */
  readonly rollWidth: number;
  /** Overlap where a piece wider than the roll is joined [m]. */
  readonly joinOverlap: number;
  /** Length of a core sheet [m]. */
  readonly sheetLength: number;
  /** Width of a core sheet [m]. */
  readonly sheetWidth: number;
}

/** What is made that day. */
export interface PartsOfDay {
  /** The schedule, materials filled in. */
  readonly layup: LayupRecord;
  /** Parts made at once, side by side [1]. */
  readonly count: number;
  /** Length of a finished part [m]. */
  readonly length: number;
  /** Width of a finished part [m]. */
  readonly width: number;
  /** Cloth beyond the finished part all around, trimmed after cure [m]. */
  readonly trim: number;
  /** Ramp on the core's edges; 0 for square edges [m]. */
  readonly ramp: number;
  /** Resin brushed on the mould before the first ply [kg/m²]. */
  readonly mouldCoat: number;
  /** Resin that peel ply soaks up and takes away [kg/m²]. */
  readonly peelPlySoak: number;
}

/** A day in the workshop on which a lay-up is made. */
export interface LayupDay {
  /** What is made. */
  readonly parts: PartsOfDay;
  /** Crew, resin and workshop. */
  readonly workshop: WorkshopRecord;
  /** What it is cut from. */
  readonly stock: ShopStock;
  /** Clock time at which the first pot is begun, hours and minutes. */
  readonly start: string;
}

/** Share of the pot life that a careful crew uses; common practice, no source. */
const USABLE_SHARE = 0.8;
/** Room between parts that lie side by side under one bag [m]. */
const BETWEEN = 0.05;

/**
 * The day's task for `planDay` from a lay-up schedule, the part's size and the workshop's record:
 * pieces of each cloth, core, resin at the schedule's fibre fraction, pots, bag and cure.
 *
 * Formula: fibre mass fraction as `fibreMassFraction`; air outside as `standardAtmosphere`; cores
 * wetted on the faces that touch plies; core strength under the bag at the low end of its range
 *
 * Range: flat rectangular parts, wet laid in one go; a bag if the workshop has a vacuum. Glue
 * between two cores on one another is not planned.
 *
 * Source: as the functions that it calls; bag margins and the usable share of the pot life: common
 * practice, no source.
 *
 * @param day Parts, workshop, stock and start.
 * @returns Task for `planDay`.
 * @throws {InputError} If the schedule has no ply, takes another resin than the workshop's, or a
 * figure cannot be meant.
 *
 * @example
 * ```ts
 * import { layupDay } from "@laminate/notebooks/comparison";
 * import { readPart } from "@laminate/notebooks/records";
 * import { planDay } from "@laminate/notebooks/shop";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { layups, workshop } = await readPart("data/sole-panels");
 * const plan = planDay(layupDay({
 *   parts: {
 *     layup: layups.get("sole")!, count: 1, length: 1.2, width: 0.4, trim: 0, ramp: 0,
 *     mouldCoat: 0, peelPlySoak: 0,
 *   },
 *   workshop: workshop![0]!,
 *   stock: { rollWidth: 1, joinOverlap: 0.05, sheetLength: 1.2, sheetWidth: 0.8 },
 *   start: "18:00",
 * }));
 * const cloth = plan.boxes.find(({ column }) => column === "dry_cloth_mass");
 * assertAlmostEquals(cloth!.expected!, 4 * 1.2 * 0.4 * 0.2, 1e-12);
 * ```
 */
export function layupDay(day: LayupDay): DayTask {
  checkDay(check, day);
  const { parts, workshop, stock, start } = day;
  const { layup, count, trim } = parts;
  const { plies, cores } = layersOf(layup, workshop);
  const cut = { length: parts.length + 2 * trim, width: parts.width + 2 * trim };
  const area = count * cut.length * cut.width;
  return {
    part: count === 1 ? layup.name : `${count} × ${layup.name}`,
    start,
    layers: layup.layers.map(inWords),
    cloths: clothsOf(plies, parts, stock),
    cores: cores.map((core): DayCore => ({
      name: core.core.name,
      ...{ sheetLength: stock.sheetLength, sheetWidth: stock.sheetWidth },
      thickness: core.thickness,
      density: core.core.density,
      turnable: core.core.kind === "foam",
      faces: facesWetted(core, layup),
      resinUptake: core.core.resinUptake,
      pieces: [{
        name: layup.name,
        length: parts.length,
        width: parts.width,
        rampLength: parts.ramp,
        count,
      }],
    })),
    coats: coatsOf(parts, { area, bagged: workshop.vacuum !== undefined }),
    resin: {
      lossFraction: workshop.loss,
      phr: workshop.resin.hardenerPhr,
      densities: {
        resinDensity: workshop.resin.density,
        hardenerDensity: workshop.hardenerDensity,
      },
    },
    crew: {
      layingRate: workshop.laidPerHour / 3600,
      rateSpread: workshop.rateSpread,
      mixingTime: workshop.mixingTime,
      temperature: workshop.temperature,
      usableShare: USABLE_SHARE,
      sheet: {
        potLife: workshop.potLife,
        mass: workshop.potMass,
        temperature: workshop.sheetTemperature,
        ...(workshop.thinLayerTime === undefined ? {} : { thinLayerTime: workshop.thinLayerTime }),
      },
    },
    cure: {
      temperature: workshop.sheetTemperature,
      handlingTime: workshop.handlingTime,
      fullCureTime: workshop.fullCureTime,
    },
    ...(workshop.vacuum === undefined ? {} : {
      bag: bagOf({
        ...{ length: cut.length, width: count * cut.width + (count - 1) * BETWEEN },
        height: layup.layers.reduce(
          (sum, one) => sum + (one.kind === "core" ? one.thickness : 0),
          0,
        ),
        gauge: -workshop.vacuum,
        outside: standardAtmosphere(geopotentialAltitude(workshop.altitude ?? 0)).pressure,
        strengths: cores.map(({ core }) =>
          core.typical.compressiveStrength?.low ?? core.compressiveStrength
        ),
      }),
    }),
    operations: ["demoulding"],
  };
}

interface Layers {
  readonly plies: readonly ReinforcementLayer[];
  readonly cores: readonly CoreLayer[];
}

function layersOf(layup: LayupRecord, { resin }: WorkshopRecord): Layers {
  const plies = layup.layers.filter((layer) => layer.kind === "reinforcement");
  const cores = layup.layers.filter((layer) => layer.kind === "core");
  check.list(`plies of ${layup.name}`, plies);
  for (const { layer, resin: own } of plies) {
    if (own.name !== resin.name) {
      check.refuse(
        `resin of layer ${layer}`,
        own.name,
        `must be the workshop's, ${resin.name}: one day, one resin`,
      );
    }
  }
  return { plies, cores };
}

function inWords(layer: ReinforcementLayer | CoreLayer): string {
  return layer.kind === "core"
    ? `${layer.core.name}, core`
    : `${layer.reinforcement.name} at ${layer.angleDeg}°`;
}

/** Plies of one cloth and one fibre fraction are cut from one roll. */
function clothsOf(
  plies: readonly ReinforcementLayer[],
  { count, length, width, trim }: PartsOfDay,
  { rollWidth, joinOverlap }: ShopStock,
): readonly DayCloth[] {
  const rollOf = ({ reinforcement, fibreFraction }: ReinforcementLayer): string =>
    `${reinforcement.name} ${fibreFraction}`;
  const rolls = [...new Set(plies.map(rollOf))];
  return rolls.map((roll) => {
    const own = plies.filter((ply) => rollOf(ply) === roll);
    const { reinforcement, fibre, resin, fibreFraction } = own[0]!;
    return {
      name: reinforcement.name,
      rollWidth,
      arealWeight: reinforcement.arealWeight,
      balanced: reinforcement.form === "mat" ||
        reinforcement.form === "woven" && reinforcement.warpShare === 0.5,
      joinOverlap,
      fibreMassFraction: fibreMassFraction(fibreFraction, {
        fibreDensity: fibre.density,
        resinDensity: resin.density,
      }),
      pieces: own.map(({ layer, angleDeg }) => ({
        name: `layer ${layer}`,
        shape: { length, width },
        angleDeg,
        trim,
        count,
      })),
    };
  });
}

/** Faces of a core that touch a ply; two cores on one another share a glue line instead. */
function facesWetted(core: CoreLayer, { layers }: LayupRecord): number {
  const at = layers.indexOf(core);
  return [layers[at - 1], layers[at + 1]].filter((next) => next?.kind === "reinforcement").length;
}

function coatsOf(
  { mouldCoat, peelPlySoak }: PartsOfDay,
  { area, bagged }: { readonly area: number; readonly bagged: boolean },
): readonly ResinCoat[] {
  return [
    ...(mouldCoat === 0
      ? []
      : [{ name: "coat on the mould", area, arealMass: mouldCoat, stays: true }]),
    ...(peelPlySoak === 0 || !bagged
      ? []
      : [{ name: "peel ply", area, arealMass: peelPlySoak, stays: false }]),
  ];
}

/** Margins of a flat bag taped to its table; common practice, no source. */
function bagOf(bag: {
  readonly length: number;
  readonly width: number;
  readonly height: number;
  readonly gauge: number;
  readonly outside: number;
  readonly strengths: readonly number[];
}): DayBag {
  const { length, width, height, gauge, outside, strengths } = bag;
  return {
    ...{ length, width, height },
    style: "on the mould",
    margin: 0.05,
    flange: 0.1,
    pleatShare: 0.15,
    pleats: 4,
    tapePerPleat: 0.15,
    spareShare: 0.1,
    vacuum: { gauge, outside },
    ...(strengths.length === 0 ? {} : { coreStrength: Math.min(...strengths) }),
  };
}
