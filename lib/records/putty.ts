import type { Fault } from "../check/mod.ts";
import type { Filler, Resin } from "../materials/mod.ts";
import { noteColumn, numberColumn, optional, textColumn } from "./column.ts";
import { defined, mustBeOneOf, type PartContext, type PartFile } from "./_part_file.ts";
import { checkTable } from "./table.ts";

/** A batch of putty: the filler's cup weighed, and the resin that is there for it. */
export interface PuttyRecord {
  /** Its name. */
  readonly batch: string;
  /** The resin. */
  readonly resin: Resin;
  /** The filler. */
  readonly filler: Filler;
  /** Volume of the cup that was filled with filler [m³]. */
  readonly cupVolume: number;
  /** Mass of the filler in that cup [kg]. */
  readonly cupFillerMass: number;
  /** Mass of mixed resin in the batch [kg]. */
  readonly resinMass: number;
  /** Density that the putty should have, if one was set [kg/m³]. */
  readonly targetDensity?: number;
  /** Remark. */
  readonly note?: string;
}

const columns = {
  batch: textColumn(),
  resin: textColumn(),
  filler: textColumn(),
  cup_volume: numberColumn("volume", { above: 0 }),
  cup_filler_mass: numberColumn("mass", { above: 0 }),
  resin_mass: numberColumn("mass", { above: 0 }),
  target_density: optional(numberColumn("density", { above: 0 })),
  note: noteColumn(),
} as const;

const file = "putty.csv";

/** Reads the putty batches of a part. */
export function readPutty(
  content: Uint8Array | string,
  { catalogue, decimal }: PartContext,
): PartFile<readonly PuttyRecord[]> {
  const { table, faults: found } = checkTable(content, { file, columns, ...defined({ decimal }) });
  const faults: Fault[] = [...found];
  const records: PuttyRecord[] = [];
  table.rows.forEach((row, i) => {
    const refuse = (argument: "resin" | "filler", names: Iterable<string>): void => {
      const wanted = mustBeOneOf(names, argument);
      faults.push({ file, line: table.lines[i]!, argument, value: row[argument], wanted });
    };
    const resin = catalogue.resins.get(row.resin);
    const filler = catalogue.fillers.get(row.filler);
    if (resin === undefined) refuse("resin", catalogue.resins.keys());
    if (filler === undefined) refuse("filler", catalogue.fillers.keys());
    if (resin === undefined || filler === undefined) return;
    records.push(defined({
      batch: row.batch,
      resin,
      filler,
      cupVolume: row.cup_volume,
      cupFillerMass: row.cup_filler_mass,
      resinMass: row.resin_mass,
      targetDensity: row.target_density,
      note: row.note,
    }));
  });
  return { content: Object.freeze(records), faults, notes: table.notes };
}
