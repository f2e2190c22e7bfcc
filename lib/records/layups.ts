import type { Fault } from "../check/mod.ts";
import type { Core, Fibre, Reinforcement, Resin } from "../materials/mod.ts";
import {
  type Columns,
  noteColumn,
  numberColumn,
  optional,
  type RowOf,
  textColumn,
} from "./column.ts";
import type { Catalogue } from "./catalogue.ts";
import { byLine, defined, known, type PartContext, type PartFile } from "./_part_file.ts";
import { checkTable } from "./table.ts";

/** A layer of reinforcement in a lay-up schedule. */
export interface ReinforcementLayer {
  /** What the layer is. */
  readonly kind: "reinforcement";
  /** Its place, mould side first, from 1 [1]. */
  readonly layer: number;
  /** The cloth, mat or unidirectional. */
  readonly reinforcement: Reinforcement;
  /** Its fibre. */
  readonly fibre: Fibre;
  /** The resin that wets it. */
  readonly resin: Resin;
  /** From x to the warp, positive towards y [deg]. */
  readonly angleDeg: number;
  /** Fibre volume fraction: of the schedule, or else the reinforcement's usual one [1]. */
  readonly fibreFraction: number;
  /** Remark of the schedule. */
  readonly note?: string;
}

/** A layer of core in a lay-up schedule. */
export interface CoreLayer {
  /** What the layer is. */
  readonly kind: "core";
  /** Its place, mould side first, from 1 [1]. */
  readonly layer: number;
  /** The core. */
  readonly core: Core;
  /** The resin that bonds it, if the schedule names one. */
  readonly resin?: Resin;
  /** From x to the core's L direction, positive towards y [deg]. */
  readonly angleDeg: number;
  /** Thickness of the core [m]. */
  readonly thickness: number;
  /** Remark of the schedule. */
  readonly note?: string;
}

/** One layer of a lay-up schedule. */
export type LayerRecord = ReinforcementLayer | CoreLayer;

/** A lay-up schedule. */
export interface LayupRecord {
  /** Its name, by which weighings and tests refer to it. */
  readonly name: string;
  /** The layers in the order in which they are laid: mould side first. */
  readonly layers: readonly LayerRecord[];
}

/** The lay-up schedules of a part, and every name that stands in the file. */
export interface Layups {
  /** The schedules by name; none if one has a fault, for it may lie in what is not read. */
  readonly layups: ReadonlyMap<string, LayupRecord>;
  /** Names, those of schedules with a fault included; none if they could not be read. */
  readonly names: ReadonlySet<string> | undefined;
}

const columnsFor = ({ reinforcements, cores, resins }: Catalogue) =>
  ({
    layup: textColumn(),
    layer: numberColumn("count", { min: 1, whole: true }),
    material: textColumn(known(namesOf(reinforcements, cores), "reinforcement or core")),
    resin: optional(textColumn(known(resins, "resin"))),
    angle: numberColumn("angle", { min: -180, max: 180 }),
    thickness: optional(numberColumn("thickness", { above: 0 })),
    fibre_fraction: optional(numberColumn("ratio", { above: 0, max: 0.9 })),
    note: noteColumn(),
  }) as const;

/** The columns of its table. */
export const layupColumns: (catalogue: Catalogue) => Columns = columnsFor;

const namesOf = (...tables: readonly ReadonlyMap<string, unknown>[]): ReadonlySet<string> =>
  new Set(tables.flatMap((table) => [...table.keys()]));

type Row = RowOf<ReturnType<typeof columnsFor>>;
type Refuse = (column: keyof Row, value: number | string | undefined, wanted: string) => void;

const file = "layup.csv";

/** Reads the lay-up schedules of a part. */
export function readLayups(
  content: Uint8Array | string,
  { catalogue, decimal }: PartContext,
): PartFile<Layups> {
  const columns = columnsFor(catalogue);
  const checked = checkTable(content, { file, columns, ...defined({ decimal }) });
  const faults: Fault[] = [...checked.faults];
  const { rows, lines, headings, notes, written } = checked.table;
  const schedules = new Map<string, LayerRecord[]>();
  const expect = layerCounter(checked.faults);
  rows.forEach((row, i) => {
    const line = lines[i]!;
    const refuse: Refuse = (column, value, wanted) => {
      const shown = typeof value === "number" ? written(column, value) : value;
      faults.push({ file, line, argument: headings.get(column) ?? column, value: shown, wanted });
    };
    const expected = expect(row, line);
    if (row.layer !== expected) {
      refuse("layer", row.layer, `must be ${expected}: layers count from 1, mould side first`);
    }
    const layers = schedules.get(row.layup) ?? [];
    const layer = layerOf(row, catalogue, refuse);
    if (layer !== undefined) layers.push(layer);
    schedules.set(row.layup, layers);
  });
  const layups = new Map(
    [...schedules].map(([name, layers]): [string, LayupRecord] => [
      name,
      Object.freeze({ name, layers: Object.freeze(layers) }),
    ]),
  );
  const names = checked.namesIn("layup");
  const sound = faults.length === 0 ? layups : new Map<string, LayupRecord>();
  return { content: { layups: sound, names }, faults: byLine(faults), notes };
}

/**
 * Tells which layer should come next in a lay-up: the one behind the last, or the row's own where
 * rows with a fault lie between, for one of those may be the one before it.
 */
function layerCounter(faults: readonly Fault[]): (row: Row, line: number) => number {
  const last = new Map<string, { readonly layer: number; readonly line: number }>();
  return (row, line) => {
    const { layer, line: from } = last.get(row.layup) ?? { layer: 0, line: 1 };
    last.set(row.layup, { layer: row.layer, line });
    const doubtful = faults.some((fault) => fault.line! > from && fault.line! < line);
    return doubtful ? row.layer : layer + 1;
  };
}

function layerOf(row: Row, catalogue: Catalogue, refuse: Refuse): LayerRecord | undefined {
  const resin = row.resin === undefined ? undefined : catalogue.resins.get(row.resin);
  const core = catalogue.cores.get(row.material);
  if (core !== undefined) return coreLayer(row, { core, resin }, refuse);
  const reinforcement = catalogue.reinforcements.get(row.material);
  // Of a name that neither has there is a fault already.
  if (reinforcement === undefined) return undefined;
  const fibre = catalogue.fibres.get(reinforcement.fibre);
  return reinforcementLayer(row, { reinforcement, fibre, resin }, refuse);
}

function coreLayer(
  row: Row,
  { core, resin }: { readonly core: Core; readonly resin: Resin | undefined },
  refuse: Refuse,
): CoreLayer | undefined {
  const { layer, angle: angleDeg, thickness, note } = row;
  if (row.fibre_fraction !== undefined) {
    refuse("fibre_fraction", row.fibre_fraction, "must be empty for a core");
  }
  if (thickness === undefined) {
    refuse("thickness", undefined, "must be given for a core");
    return undefined;
  }
  return defined({ kind: "core" as const, layer, core, resin, angleDeg, thickness, note });
}

function reinforcementLayer(
  row: Row,
  { reinforcement, fibre, resin }: {
    readonly reinforcement: Reinforcement;
    readonly fibre: Fibre | undefined;
    readonly resin: Resin | undefined;
  },
  refuse: Refuse,
): ReinforcementLayer | undefined {
  const { layer, angle: angleDeg, note } = row;
  if (row.thickness !== undefined) {
    const wanted = "must be empty for a reinforcement: it follows from the fibre fraction";
    refuse("thickness", row.thickness, wanted);
  }
  if (row.resin === undefined) refuse("resin", undefined, "must be given for a reinforcement");
  if (resin === undefined || fibre === undefined) return undefined;
  const fibreFraction = row.fibre_fraction ?? reinforcement.fibreFraction;
  const kind = "reinforcement" as const;
  return defined({ kind, layer, reinforcement, fibre, resin, angleDeg, fibreFraction, note });
}
