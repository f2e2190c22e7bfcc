import { noteColumn, numberColumn, optional, textColumn } from "./column.ts";
import { defined, type PartContext, type PartFile } from "./_part_file.ts";
import { checkTable } from "./table.ts";

/** A corner that is to be filled. */
export interface FilletRecord {
  /** Its name. */
  readonly corner: string;
  /** Angle between the panels on the filled side [deg]. */
  readonly angleDeg: number;
  /** Length of the corner [m]. */
  readonly length: number;
  /** Radius of the fillet [m]. */
  readonly radius: number;
  /** Largest radius that a rule allows, if there is one [m]. */
  readonly radiusLimit?: number;
  /** Remark. */
  readonly note?: string;
}

/** The columns of its table. */
export const columns = {
  corner: textColumn(),
  // Below half a degree from closed or flat there is no corner to fill.
  angle: numberColumn("angle", { min: 0.5, max: 179.5 }),
  length: numberColumn("length", { above: 0 }),
  radius: numberColumn("length", { above: 0 }),
  radius_limit: optional(numberColumn("length", { above: 0 })),
  note: noteColumn(),
} as const;

const file = "fillets.csv";

/** Reads the fillets of a part. */
export function readFillets(
  content: Uint8Array | string,
  { decimal }: Pick<PartContext, "decimal">,
): PartFile<readonly FilletRecord[]> {
  const { table, faults } = checkTable(content, { file, columns, ...defined({ decimal }) });
  const records = table.rows.map((row): FilletRecord =>
    defined({
      corner: row.corner,
      angleDeg: row.angle,
      length: row.length,
      radius: row.radius,
      radiusLimit: row.radius_limit,
      note: row.note,
    })
  );
  return { content: Object.freeze(records), faults, notes: table.notes };
}
