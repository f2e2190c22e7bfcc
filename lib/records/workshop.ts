import { checksFor, type Fault } from "../check/mod.ts";
import type { Resin } from "../materials/mod.ts";
import { type Dimension, readQuantity } from "../quantity/mod.ts";
import type { Catalogue } from "./catalogue.ts";
import { type Columns, noteColumn, numberColumn, optional, textColumn } from "./column.ts";
import { byLine, defined, known, type PartContext, type PartFile } from "./_part_file.ts";
import { checkTable } from "./table.ts";

/** How a crew works with a resin, and what the resin's sheet says of times. */
export interface WorkshopRecord {
  /** The resin. */
  readonly resin: Resin;
  /** Temperature of workshop and resin [K]. */
  readonly temperature: number;
  /** Area of cloth that the crew lays and wets in an hour [m²]. */
  readonly laidPerHour: number;
  /** By how much the crew may be faster or slower, a share [1]. */
  readonly rateSpread: number;
  /** Time to weigh and mix a pot [s]. */
  readonly mixingTime: number;
  /** Pot life on the sheet [s]. */
  readonly potLife: number;
  /** Mass for which the sheet gives it [kg]. */
  readonly potMass: number;
  /** Time until it gels in a thin layer, on the sheet; none if it is silent [s]. */
  readonly thinLayerTime?: number;
  /** Temperature for which the sheet gives its times [K]. */
  readonly sheetTemperature: number;
  /** Time until a part can be handled, on the sheet [s]. */
  readonly handlingTime: number;
  /** Time until full strength, on the sheet [s]. */
  readonly fullCureTime: number;
  /** Density of the hardener [kg/m³]. */
  readonly hardenerDensity: number;
  /** Resin lost over the edge, in cup, brush and roller, over resin mixed [1]. */
  readonly loss: number;
  /** What the gauge of the bag shows below the pressure outside; none without bag [Pa]. */
  readonly vacuum?: number;
  /** Height of the workshop above the sea; sea level if left out [m]. */
  readonly altitude?: number;
  /** Remark. */
  readonly note?: string;
}

/** A workshop in words, each quantity with its unit: what stands in for a missing `workshop.csv`. */
export interface WorkshopInWords {
  /** Temperature of workshop and resin, such as `18 °C`. */
  readonly temperature: string;
  /** Area of cloth that the crew lays and wets in an hour. */
  readonly laidPerHour: string;
  /** By how much the crew may be faster or slower, a share [1]. */
  readonly rateSpread: number;
  /** Time to weigh and mix a pot. */
  readonly mixingTime: string;
  /** Pot life on the sheet. */
  readonly potLife: string;
  /** Mass for which the sheet gives it. */
  readonly potMass: string;
  /** Time until it gels in a thin layer; none if the sheet is silent. */
  readonly thinLayerTime?: string;
  /** Temperature for which the sheet gives its times. */
  readonly sheetTemperature: string;
  /** Time until a part can be handled. */
  readonly handlingTime: string;
  /** Time until full strength. */
  readonly fullCureTime: string;
  /** Density of the hardener. */
  readonly hardenerDensity: string;
  /** Resin lost over resin mixed [1]. */
  readonly loss: number;
  /** What the gauge of the bag shows below the pressure outside; none without bag. */
  readonly vacuum?: string;
  /** Height above the sea. */
  readonly altitude?: string;
}

const check = checksFor("read the workshop");

/**
 * The record of a workshop from words, where a part folder has no `workshop.csv`.
 *
 * Each text is read with its unit into SI
 *
 * Range: as `readQuantity`.
 *
 * Source: none.
 *
 * @param resin The resin that is used.
 * @param words Each quantity as a text with its unit.
 * @returns The record.
 * @throws {InputError} If a text is no quantity of its kind.
 *
 * @example
 * ```ts
 * import { readCatalogue, workshopInWords } from "@laminate/notebooks/records";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { resins } = await readCatalogue();
 * const record = workshopInWords(resins.get("epoxy laminating slow")!, {
 *   temperature: "18 °C", laidPerHour: "3.6 m²", rateSpread: 0.3, mixingTime: "4 min",
 *   potLife: "40 min", potMass: "100 g", sheetTemperature: "25 °C", handlingTime: "10 h",
 *   fullCureTime: "168 h", hardenerDensity: "980 kg/m³", loss: 0.15,
 * });
 * assertAlmostEquals(record.temperature, 291.15, 1e-9);
 * ```
 */
export function workshopInWords(resin: Resin, words: WorkshopInWords): WorkshopRecord {
  check.object("resin", resin);
  const { rateSpread, loss, thinLayerTime, vacuum, altitude } = check.object("words", words);
  const read = (name: Exclude<keyof WorkshopInWords, "rateSpread" | "loss">, kind: Dimension) =>
    readQuantity(check.text(name, words[name] as string), kind);
  return defined({
    resin,
    temperature: read("temperature", "temperature"),
    laidPerHour: read("laidPerHour", "area"),
    rateSpread: check.fraction("spread of the rate", rateSpread),
    mixingTime: read("mixingTime", "time"),
    potLife: read("potLife", "time"),
    potMass: read("potMass", "mass"),
    thinLayerTime: thinLayerTime === undefined ? undefined : read("thinLayerTime", "time"),
    sheetTemperature: read("sheetTemperature", "temperature"),
    handlingTime: read("handlingTime", "time"),
    fullCureTime: read("fullCureTime", "time"),
    hardenerDensity: read("hardenerDensity", "density"),
    loss: check.fraction("loss", loss),
    vacuum: vacuum === undefined ? undefined : read("vacuum", "pressure"),
    altitude: altitude === undefined ? undefined : read("altitude", "length"),
  });
}

const columnsFor = ({ resins }: Catalogue) =>
  ({
    resin: textColumn(known(resins, "resin")),
    // Below 5 °C and above 60 °C nobody lays up by hand: a slip of the unit.
    temperature: numberColumn("temperature", { min: 278, max: 333.15 }),
    laid_per_hour: numberColumn("area", { above: 0 }),
    rate_spread: numberColumn("ratio", { min: 0, max: 0.9 }),
    mixing_time: numberColumn("time", { above: 0 }),
    pot_life: numberColumn("time", { above: 0 }),
    pot_mass: numberColumn("mass", { above: 0 }),
    thin_layer_time: optional(numberColumn("time", { above: 0 })),
    sheet_temperature: numberColumn("temperature", { min: 278, max: 473.15 }),
    handling_time: numberColumn("time", { above: 0 }),
    full_cure_time: numberColumn("time", { above: 0 }),
    hardener_density: numberColumn("density", { above: 0 }),
    loss: numberColumn("ratio", { min: 0, max: 0.9 }),
    vacuum: optional(numberColumn("pressure", { above: 0, max: 108_000 })),
    altitude: optional(numberColumn("length", { min: -450, max: 6000 })),
    note: noteColumn(),
  }) as const;

/** The columns of its table. */
export const workshopColumns: (catalogue: Catalogue) => Columns = columnsFor;

const file = "workshop.csv";

/** Reads how the crew works with each resin. */
export function readWorkshop(
  content: Uint8Array | string,
  { catalogue, decimal }: PartContext,
): PartFile<readonly WorkshopRecord[]> {
  const columns = columnsFor(catalogue);
  const { table, faults: found } = checkTable(content, { file, columns, ...defined({ decimal }) });
  const faults: Fault[] = [...found];
  const seen = new Map<string, number>();
  const records = table.rows.map((row, i): WorkshopRecord => {
    const line = table.lines[i]!;
    const refuse = (column: keyof typeof columns, value: unknown, wanted: string): void => {
      faults.push({ file, line, argument: table.headings.get(column) ?? column, value, wanted });
    };
    const earlier = seen.get(row.resin);
    if (earlier === undefined) seen.set(row.resin, line);
    else refuse("resin", row.resin, `must stand once: line ${earlier} has it too`);
    if (row.full_cure_time < row.handling_time) {
      const full = table.written("full_cure_time", row.full_cure_time);
      refuse("full_cure_time", full, "must not be below the time to handling");
    }
    return defined({
      resin: catalogue.resins.get(row.resin)!,
      temperature: row.temperature,
      laidPerHour: row.laid_per_hour,
      rateSpread: row.rate_spread,
      mixingTime: row.mixing_time,
      potLife: row.pot_life,
      potMass: row.pot_mass,
      thinLayerTime: row.thin_layer_time,
      sheetTemperature: row.sheet_temperature,
      handlingTime: row.handling_time,
      fullCureTime: row.full_cure_time,
      hardenerDensity: row.hardener_density,
      loss: row.loss,
      vacuum: row.vacuum,
      altitude: row.altitude,
      note: row.note,
    });
  });
  return { content: Object.freeze(records), faults: byLine(faults), notes: table.notes };
}
