import type { Fault } from "../check/mod.ts";
import type { Core, Fibre, Reinforcement, Resin } from "../materials/mod.ts";
import { noteColumn, numberColumn, optional, type RowOf, textColumn } from "./column.ts";
import { defined, mustBeOneOf, type PartContext, type PartFile } from "./_part_file.ts";
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
  /** The schedules by name. */
  readonly layups: ReadonlyMap<string, LayupRecord>;
  /** Names, those of schedules with a fault included. */
  readonly names: ReadonlySet<string>;
}

const columns = {
  layup: textColumn(),
  layer: numberColumn("count", { min: 1, whole: true }),
  material: textColumn(),
  resin: optional(textColumn()),
  angle: numberColumn("angle", { min: -180, max: 180 }),
  thickness: optional(numberColumn("thickness", { above: 0 })),
  fibre_fraction: optional(numberColumn("ratio", { above: 0, max: 0.9 })),
  note: noteColumn(),
} as const;

type Row = RowOf<typeof columns>;
type Refuse = (column: keyof typeof columns, value: unknown, wanted: string) => void;

const file = "layup.csv";

/** Reads the lay-up schedules of a part. */
export function readLayups(
  content: Uint8Array | string,
  { catalogue, decimal }: PartContext,
): PartFile<Layups> {
  const checked = checkTable(content, { file, columns, ...defined({ decimal }) });
  const faults: Fault[] = [...checked.faults];
  const { rows, lines, headings, notes } = checked.table;
  const layups = new Map<string, LayerRecord[]>();
  // Where a row is bad, the count of its lay-up is not to be trusted.
  const countable = checked.faults.length === 0;
  const next = new Map<string, number>();
  rows.forEach((row, i) => {
    const refuse: Refuse = (column, value, wanted) => {
      const argument = headings.get(column) ?? column;
      faults.push({ file, line: lines[i]!, argument, value, wanted });
    };
    const expected = next.get(row.layup) ?? 1;
    next.set(row.layup, row.layer + 1);
    if (countable && row.layer !== expected) {
      refuse("layer", row.layer, `must be ${expected}: layers count from 1, mould side first`);
    }
    const layer = layerOf(row, catalogue, refuse);
    const layers = layups.get(row.layup) ?? [];
    if (layer !== undefined) layers.push(layer);
    layups.set(row.layup, layers);
  });
  const records = [...layups].map(([name, layers]): [string, LayupRecord] => [
    name,
    Object.freeze({ name, layers: Object.freeze(layers) }),
  ]);
  return {
    content: { layups: new Map(records), names: checked.namesIn("layup") },
    faults,
    notes,
  };
}

function layerOf(
  row: Row,
  catalogue: PartContext["catalogue"],
  refuse: Refuse,
): LayerRecord | undefined {
  const resin = row.resin === undefined ? undefined : catalogue.resins.get(row.resin);
  if (row.resin !== undefined && resin === undefined) {
    refuse("resin", row.resin, mustBeOneOf(catalogue.resins.keys(), "resin"));
  }
  const reinforcement = catalogue.reinforcements.get(row.material);
  const core = catalogue.cores.get(row.material);
  if (core !== undefined) return coreLayer(row, { core, resin }, refuse);
  if (reinforcement !== undefined) {
    const fibre = catalogue.fibres.get(reinforcement.fibre);
    return reinforcementLayer(row, { reinforcement, fibre, resin }, refuse);
  }
  const names = [...catalogue.reinforcements.keys(), ...catalogue.cores.keys()];
  refuse("material", row.material, mustBeOneOf(names, "reinforcement or core"));
  return undefined;
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
    refuse("thickness", `${row.thickness} m`, wanted);
  }
  if (row.resin === undefined) refuse("resin", undefined, "must be given for a reinforcement");
  if (resin === undefined || fibre === undefined) return undefined;
  const fibreFraction = row.fibre_fraction ?? reinforcement.fibreFraction;
  const kind = "reinforcement" as const;
  return defined({ kind, layer, reinforcement, fibre, resin, angleDeg, fibreFraction, note });
}
