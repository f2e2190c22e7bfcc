import type { Fault } from "../check/mod.ts";
import type { Resin } from "../materials/mod.ts";
import type { Catalogue } from "./catalogue.ts";
import { noteColumn, numberColumn, optional, textColumn } from "./column.ts";
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
    sheet_temperature: numberColumn("temperature", { min: 278, max: 473.15 }),
    handling_time: numberColumn("time", { above: 0 }),
    full_cure_time: numberColumn("time", { above: 0 }),
    hardener_density: numberColumn("density", { above: 0 }),
    loss: numberColumn("ratio", { min: 0, max: 0.9 }),
    vacuum: optional(numberColumn("pressure", { above: 0, max: 108_000 })),
    altitude: optional(numberColumn("length", { min: -450, max: 6000 })),
    note: noteColumn(),
  }) as const;

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
