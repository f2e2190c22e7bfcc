import type { Filler, Resin } from "../materials/mod.ts";
import { type Columns, noteColumn, numberColumn, optional, textColumn } from "./column.ts";
import type { Catalogue } from "./catalogue.ts";
import { defined, known, type PartContext, type PartFile } from "./_part_file.ts";
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

const columnsFor = ({ resins, fillers }: Catalogue) =>
  ({
    batch: textColumn(),
    resin: textColumn(known(resins, "resin")),
    filler: textColumn(known(fillers, "filler")),
    cup_volume: numberColumn("volume", { above: 0 }),
    cup_filler_mass: numberColumn("mass", { above: 0 }),
    resin_mass: numberColumn("mass", { above: 0 }),
    target_density: optional(numberColumn("density", { above: 0 })),
    note: noteColumn(),
  }) as const;

/** The columns of its table. */
export const puttyColumns: (catalogue: Catalogue) => Columns = columnsFor;

const file = "putty.csv";

/** Reads the putty batches of a part. */
export function readPutty(
  content: Uint8Array | string,
  { catalogue, decimal }: PartContext,
): PartFile<readonly PuttyRecord[]> {
  const columns = columnsFor(catalogue);
  const { table, faults } = checkTable(content, { file, columns, ...defined({ decimal }) });
  const records = table.rows.map((row): PuttyRecord =>
    defined({
      batch: row.batch,
      resin: catalogue.resins.get(row.resin)!,
      filler: catalogue.fillers.get(row.filler)!,
      cupVolume: row.cup_volume,
      cupFillerMass: row.cup_filler_mass,
      resinMass: row.resin_mass,
      targetDensity: row.target_density,
      note: row.note,
    })
  );
  return { content: Object.freeze(records), faults, notes: table.notes };
}
