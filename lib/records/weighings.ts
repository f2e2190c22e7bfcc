import type { Fault } from "../check/mod.ts";
import { LAYUP_PROCESSES, type LayupProcess } from "../constituents/mod.ts";
import type { Uncertain } from "../statistics/mod.ts";
import {
  choiceColumn,
  type Columns,
  dayColumn,
  type Filled,
  noteColumn,
  numberColumn,
  optional,
  type RowOf,
  type TextColumn,
  textColumn,
} from "./column.ts";
import type { LayupRecord, Layups } from "./layups.ts";
import { byLine, defined, layupColumn, type PartContext, type PartFile } from "./_part_file.ts";
import { checkTable } from "./table.ts";

/**
 * A part on the scale. Each figure has its standard uncertainty, 0 where none was recorded (a
 * note of the part says so for the area).
 */
export interface WeighingRecord {
  /** Its name. */
  readonly part: string;
  /** The lay-up schedule it was made to. */
  readonly layup: LayupRecord;
  /** How it was made. */
  readonly process: LayupProcess;
  /** The day on which it was weighed: year-month-day. */
  readonly date?: string;
  /** Length, unless the area was recorded [m]. */
  readonly length?: Uncertain;
  /** Width, unless the area was recorded [m]. */
  readonly width?: Uncertain;
  /** Area, with its trim if that is weighed: as recorded, or length times width [m²]. */
  readonly area: Uncertain;
  /** Mass of the cut cloth, weighed dry [kg]. */
  readonly dryClothMass?: Uncertain;
  /** Mass of the core before lay-up; 0 for a solid part [kg]. */
  readonly coreMass: Uncertain;
  /** Area of the core where it was recorded; as large as the part if left out [m²]. */
  readonly coreArea?: Uncertain;
  /** Whether the core was sealed with resin before it was weighed: then it soaks up no more. */
  readonly coreSealed: boolean;
  /** Mass of film, inserts, paint and the like that is on the scale too [kg]. */
  readonly otherMass: Uncertain;
  /** Mass of the finished part [kg]. */
  readonly partMass: Uncertain;
  /** Thickness of the finished part [m]. */
  readonly thickness?: Uncertain;
  /** Remark. */
  readonly note?: string;
  /** Line of the file in which it stands, from 1 [1]. */
  readonly line: number;
}

const length = numberColumn("length", { above: 0 });
const area = numberColumn("area", { above: 0 });
const mass = numberColumn("mass", { above: 0 });
const someMass = numberColumn("mass", { min: 0 });
const thickness = numberColumn("thickness", { above: 0 });

const columnsFor = (layup: Filled<TextColumn>) =>
  ({
    part: textColumn(),
    layup,
    process: choiceColumn(...LAYUP_PROCESSES),
    date: optional(dayColumn()),
    length: optional(length),
    width: optional(length),
    length_u: optional(numberColumn("length", { min: 0 })),
    width_u: optional(numberColumn("length", { min: 0 })),
    area: optional(area),
    area_u: optional(numberColumn("area", { min: 0 })),
    dry_cloth_mass: optional(mass),
    core_mass: optional(someMass),
    core_length: optional(length),
    core_width: optional(length),
    core_area: optional(area),
    core_sealed: optional(choiceColumn("yes", "no")),
    other_mass: optional(someMass),
    part_mass: mass,
    scale_u: someMass,
    thickness: optional(thickness),
    thickness_u: optional(numberColumn("thickness", { min: 0 })),
    note: noteColumn(),
  }) as const;

/** The columns of its table. */
export const weighingColumns: (layup: Filled<TextColumn>) => Columns = columnsFor;

type Row = RowOf<ReturnType<typeof columnsFor>>;
type Refuse = (column: keyof Row, value: number | string | undefined, wanted: string) => void;

const file = "weighings.csv";

/** Reads the weighings of a part. */
export function readWeighings(
  content: Uint8Array | string,
  { decimal, layups, names }: Layups & Pick<PartContext, "decimal">,
): PartFile<readonly WeighingRecord[]> {
  const columns = columnsFor(layupColumn(names));
  const checked = checkTable(content, { file, columns, ...defined({ decimal }) });
  const faults: Fault[] = [...checked.faults];
  const { rows, lines, headings, written } = checked.table;
  const notes = [...checked.table.notes];
  const seen = new Map<string, number>();
  const records: WeighingRecord[] = [];
  rows.forEach((row, i) => {
    const line = lines[i]!;
    const refuse: Refuse = (column, value, wanted) => {
      const shown = typeof value === "number" ? written(column, value) : value;
      faults.push({ file, line, argument: headings.get(column) ?? column, value: shown, wanted });
    };
    const earlier = seen.get(row.part);
    if (earlier === undefined) seen.set(row.part, line);
    else refuse("part", row.part, `must be a name of its own: line ${earlier} has it too`);
    const layup = layups.get(row.layup);
    const size = sizeOf(row, refuse);
    checkUncertainties(row, refuse);
    if (layup === undefined || size === undefined) return;
    checkCore(row, layup, refuse);
    const coreArea = coreAreaOf(row, size, refuse);
    if (size.exact) notes.push(`${file} line ${line}: the area is counted as exact (no _u)`);
    records.push(recordOf(row, { layup, size, coreArea, line }));
  });
  return { content: Object.freeze(records), faults: byLine(faults), notes };
}

interface Size {
  readonly length: Uncertain | undefined;
  readonly width: Uncertain | undefined;
  readonly area: Uncertain;
  readonly exact: boolean;
}

/** Length and width, or the area: one of the two ways, so that they cannot disagree. */
function sizeOf(row: Row, refuse: Refuse): Size | undefined {
  if (row.area !== undefined) {
    const surplus = row.length === undefined ? "width" : "length";
    if (row[surplus] !== undefined) {
      refuse(surplus, row[surplus], "must be empty where the area is given");
      return undefined;
    }
    const u = row.area_u ?? 0;
    return { length: undefined, width: undefined, area: { value: row.area, u }, exact: u === 0 };
  }
  if (row.length === undefined || row.width === undefined) {
    const lacking = row.length === undefined ? "length" : "width";
    refuse(lacking, undefined, "must be given, and the other side too, or else the area");
    return undefined;
  }
  const long = { value: row.length, u: row.length_u ?? 0 };
  const wide = { value: row.width, u: row.width_u ?? 0 };
  const u = Math.hypot(wide.value * long.u, long.value * wide.u);
  return {
    length: long,
    width: wide,
    area: { value: long.value * wide.value, u },
    exact: long.u === 0 || wide.u === 0,
  };
}

/** The core's own area, known as well as the part's: by one tape. */
function coreAreaOf(row: Row, { area }: Size, refuse: Refuse): Uncertain | undefined {
  const { core_length: long, core_width: wide, core_area: given } = row;
  const filled = (["core_length", "core_width", "core_area"] as const).find((name) =>
    row[name] !== undefined
  );
  if (filled === undefined) return undefined;
  if (row.core_mass === undefined || row.core_mass === 0) {
    refuse(filled, row[filled], "must be empty where no core is weighed");
    return undefined;
  }
  if (given !== undefined && filled !== "core_area") {
    refuse(filled, row[filled], "must be empty where the core's area is given");
    return undefined;
  }
  if (given === undefined && (long === undefined || wide === undefined)) {
    const lacking = long === undefined ? "core_length" : "core_width";
    refuse(lacking, undefined, "must be given, and the core's other side too");
    return undefined;
  }
  const value = given ?? long! * wide!;
  // A hair above the part's own area is rounding of a unit.
  if (!(value <= area.value * (1 + 1e-9))) {
    refuse(filled, row[filled], "must not make the core larger than the part");
    return undefined;
  }
  return { value: Math.min(value, area.value), u: value * area.u / area.value };
}

function checkUncertainties(row: Row, refuse: Refuse): void {
  for (const name of ["length", "width", "area", "thickness"] as const) {
    const u = row[`${name}_u`];
    if (u === undefined) continue;
    const value = row[name];
    if (value === undefined) refuse(`${name}_u`, u, `must be empty where there is no ${name}`);
    else if (!(u < value)) refuse(`${name}_u`, u, `must be below the ${name} itself`);
  }
  if (!(row.scale_u < row.part_mass)) {
    refuse("scale_u", row.scale_u, "must be below the mass of the part");
  }
}

function checkCore(row: Row, layup: LayupRecord, refuse: Refuse): void {
  const cored = layup.layers.some((layer) => layer.kind === "core");
  if (cored && row.core_mass === undefined) {
    refuse("core_mass", undefined, `must be given: lay-up ${layup.name} has a core`);
  }
  if (!cored && row.core_mass !== undefined && row.core_mass > 0) {
    const wanted = `must be 0 or empty: lay-up ${layup.name} has no core`;
    refuse("core_mass", row.core_mass, wanted);
  }
}

function recordOf(
  row: Row,
  { layup, size, coreArea, line }: {
    readonly layup: LayupRecord;
    readonly size: Size;
    readonly coreArea: Uncertain | undefined;
    readonly line: number;
  },
): WeighingRecord {
  // Nothing on the scale was not weighed: it adds no uncertainty.
  const weighed = (value: number | undefined): Uncertain | undefined =>
    value === undefined || value === 0 ? undefined : { value, u: row.scale_u };
  const nothing: Uncertain = { value: 0, u: 0 };
  const { part, process, date, note } = row;
  return defined({
    part,
    layup,
    process,
    date,
    length: size.length,
    width: size.width,
    area: size.area,
    dryClothMass: weighed(row.dry_cloth_mass),
    coreMass: weighed(row.core_mass) ?? nothing,
    coreArea,
    coreSealed: row.core_sealed === "yes",
    otherMass: weighed(row.other_mass) ?? nothing,
    partMass: { value: row.part_mass, u: row.scale_u },
    thickness: row.thickness === undefined
      ? undefined
      : { value: row.thickness, u: row.thickness_u ?? 0 },
    note,
    line,
  });
}
