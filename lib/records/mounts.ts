import type { Fault } from "../check/mod.ts";
import { type BuildUpPlace, USUAL_PLIES } from "../joints/mod.ts";
import {
  choiceColumn,
  type Columns,
  type Filled,
  noteColumn,
  numberColumn,
  optional,
  type TextColumn,
  textColumn,
} from "./column.ts";
import type { LayupRecord, Layups } from "./layups.ts";
import { byLine, defined, layupColumn, type PartContext, type PartFile } from "./_part_file.ts";
import { checkTable } from "./table.ts";

/** A row of bolts through a part. */
export interface MountRecord {
  /** Its name. */
  readonly mount: string;
  /** The lay-up that it goes through, without the plies that are added. */
  readonly layup: LayupRecord;
  /** What kind of place it is, for a comparison with what is usual. */
  readonly place: BuildUpPlace;
  /** Plies added on each side, of the cloth that lies outside [1]. */
  readonly addedPlies: number;
  /** Largest load along the panel that is expected on the whole row [N]. */
  readonly load: number;
  /** Largest pull off the panel that is expected on one bolt; none if there is none [N]. */
  readonly pull?: number;
  /** Factor for loads beyond that [1]. */
  readonly loadFactor: number;
  /** Factor for a fitting that was computed and not tested [1]. */
  readonly fittingFactor: number;
  /** Bolts in the row [1]. */
  readonly bolts: number;
  /** Diameter of a bolt [m]. */
  readonly boltDiameter: number;
  /** Diameter of its hole [m]. */
  readonly holeDiameter: number;
  /** Width of the strip that carries [m]. */
  readonly width: number;
  /** From the centre of a hole to the edge in the direction of the load [m]. */
  readonly edgeDistance: number;
  /** Outer diameter of the washers [m]. */
  readonly washerDiameter: number;
  /** Diameter of the plugs of filled resin; none without [m]. */
  readonly pottingDiameter?: number;
  /** Remark. */
  readonly note?: string;
}

const size = numberColumn("length", { above: 0 });
const factor = numberColumn("ratio", { min: 1, max: 100 });
const PLACES = Object.keys(USUAL_PLIES) as BuildUpPlace[];

const columnsFor = (layup: Filled<TextColumn>) =>
  ({
    mount: textColumn(),
    layup,
    place: choiceColumn(...PLACES),
    added_plies: numberColumn("count", { min: 0, max: 100, whole: true }),
    load: numberColumn("force", { above: 0 }),
    pull: optional(numberColumn("force", { above: 0 })),
    load_factor: factor,
    fitting_factor: factor,
    bolts: numberColumn("count", { min: 1, max: 100, whole: true }),
    bolt_diameter: size,
    hole_diameter: size,
    width: size,
    edge_distance: size,
    washer_diameter: size,
    potting_diameter: optional(size),
    note: noteColumn(),
  }) as const;

/** The columns of its table. */
export const mountColumns: (layup: Filled<TextColumn>) => Columns = columnsFor;

const file = "mounts.csv";

/** Reads the mounts of a part. */
export function readMounts(
  content: Uint8Array | string,
  { decimal, layups, names }: Layups & Pick<PartContext, "decimal">,
): PartFile<readonly MountRecord[]> {
  const columns = columnsFor(layupColumn(names));
  const { table, faults: found } = checkTable(content, { file, columns, ...defined({ decimal }) });
  const faults: Fault[] = [...found];
  const records = table.rows.flatMap((row, i): MountRecord[] => {
    const refuse = (column: keyof typeof columns, wanted: string): void => {
      const value = table.written(column, row[column] as number);
      const argument = table.headings.get(column) ?? column;
      faults.push({ file, line: table.lines[i]!, argument, value, wanted });
    };
    if (row.hole_diameter < row.bolt_diameter) refuse("hole_diameter", "must take the bolt");
    if (row.width <= row.bolts * row.hole_diameter) refuse("width", "must be more than the holes");
    if (row.edge_distance <= row.hole_diameter / 2) {
      refuse("edge_distance", "must be more than half of the hole");
    }
    if (row.washer_diameter <= row.hole_diameter) {
      refuse("washer_diameter", "must be more than the hole");
    }
    const layup = layups.get(row.layup);
    if (layup === undefined) return [];
    return [defined({
      mount: row.mount,
      layup,
      place: row.place,
      addedPlies: row.added_plies,
      load: row.load,
      pull: row.pull,
      loadFactor: row.load_factor,
      fittingFactor: row.fitting_factor,
      bolts: row.bolts,
      boltDiameter: row.bolt_diameter,
      holeDiameter: row.hole_diameter,
      width: row.width,
      edgeDistance: row.edge_distance,
      washerDiameter: row.washer_diameter,
      pottingDiameter: row.potting_diameter,
      note: row.note,
    })];
  });
  return { content: Object.freeze(records), faults: byLine(faults), notes: table.notes };
}
