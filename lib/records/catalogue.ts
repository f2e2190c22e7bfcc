import { checksFor, type Fault, InputError } from "../check/mod.ts";
import type {
  Catalogued,
  Core,
  Fibre,
  Filler,
  Range,
  Reinforcement,
  Resin,
} from "../materials/mod.ts";
import {
  checkIsCatalogue,
  columnsOf,
  type MaterialTable,
  properties,
} from "./_catalogue_columns.ts";
import { checkTable } from "./table.ts";

/** The materials that a builder can choose from, each by its name. */
export interface Catalogue {
  /** Fibres, bare. */
  readonly fibres: ReadonlyMap<string, Fibre>;
  /** Resins, cured. */
  readonly resins: ReadonlyMap<string, Resin>;
  /** Cloths, mats and unidirectionals. */
  readonly reinforcements: ReadonlyMap<string, Reinforcement>;
  /** Cores. */
  readonly cores: ReadonlyMap<string, Core>;
  /** Filler powders. */
  readonly fillers: ReadonlyMap<string, Filler>;
}

const check = checksFor("read the materials catalogue");

/** The five tables of the catalogue: `fibres.csv` and so on. */
export const catalogueFiles: readonly string[] = Object.freeze([
  "fibres.csv",
  "resins.csv",
  "reinforcements.csv",
  "cores.csv",
  "fillers.csv",
]);

/** The catalogue's tables, and where they come from. */
export interface CatalogueSource {
  /** The tables by file name; one that is missing adds no rows. */
  readonly files: ReadonlyMap<string, Uint8Array | string>;
  /** Put before each file name in messages, such as `materials/`. */
  readonly prefix?: string;
  /** A catalogue to which the rows are added; a row of the same name takes its place. */
  readonly base?: Catalogue;
}

/** A catalogue, what is wrong with it, and what its reader should know. */
export interface CheckedCatalogue {
  /** The rows without fault. */
  readonly catalogue: Catalogue;
  /** What is wrong. */
  readonly faults: readonly Fault[];
  /** Rows that took another's place, and what was left out. */
  readonly notes: readonly string[];
}

/**
 * The catalogue from its tables.
 *
 * Each property stands under its own name with its unit, its usual range beside it
 * (`E1_GPa`, `E1_low_GPa`, `E1_high_GPa`).
 *
 * Range: moduli, strengths and densities above 0; shares from 0 to 1
 *
 * @param source The tables by name.
 * @returns The catalogue.
 * @throws {InputError} If anything in a table is wrong: all faults of all tables at once.
 *
 * @example
 * ```ts
 * import { catalogueFromFiles } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const files = new Map([[
 *   "fillers.csv",
 *   "name,kind,particleDensity_kg/m3,bulkDensity_kg/m3,packing,E_GPa,nu,source\n" +
 *   "glass bubbles,hollow sphere,150,90,0.6,1.2,0.2,from memory\n",
 * ]]);
 * assertEquals(catalogueFromFiles({ files }).fillers.get("glass bubbles")?.E, 1.2e9);
 * ```
 */
export function catalogueFromFiles(source: CatalogueSource): Catalogue {
  const { catalogue, faults } = checkCatalogue(source);
  if (faults.length > 0) throw new InputError("read the materials catalogue", faults);
  return catalogue;
}

/**
 * The catalogue as `catalogueFromFiles` reads it, with the faults instead of throwing them.
 *
 * @param source The tables by name.
 * @returns The rows without fault, the faults, and notes.
 *
 * @example
 * ```ts
 * import { checkCatalogue } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const { faults } = checkCatalogue({ files: new Map([["cores.csv", "name,kind\n"]]) });
 * assertEquals(faults[0]?.file, "cores.csv");
 * ```
 */
export function checkCatalogue(source: CatalogueSource): CheckedCatalogue {
  const faults: Fault[] = [];
  const notes: string[] = [];
  const { base, files } = check.object("source", source);
  if (base !== undefined) checkIsCatalogue(base);
  if (!(files instanceof Map)) return check.refuse("files", files, "must be a Map by file name");
  const gather: Gather = { source, faults, notes, places: new Map(), fibreNames: new Set() };
  const catalogue = {
    fibres: rowsOf<Fibre>("fibres", { ...gather, base: base?.fibres }),
    resins: rowsOf<Resin>("resins", { ...gather, base: base?.resins }),
    reinforcements: rowsOf<Reinforcement>("reinforcements", {
      ...gather,
      base: base?.reinforcements,
    }),
    cores: rowsOf<Core>("cores", { ...gather, base: base?.cores }),
    fillers: rowsOf<Filler>("fillers", { ...gather, base: base?.fillers }),
  };
  return { catalogue: crossChecked(catalogue, gather), faults, notes };
}

interface Gather {
  readonly source: CatalogueSource;
  readonly faults: Fault[];
  readonly notes: string[];
  /** Where each row of this reading stands, for checks between tables. */
  readonly places: Map<object, { readonly file: string; readonly line: number }>;
  /** Names in the table of fibres, rows with a fault included. */
  readonly fibreNames: Set<string>;
}

function rowsOf<Row extends Catalogued<string>>(
  kind: MaterialTable,
  { source, faults, notes, places, fibreNames, base }: Gather & {
    readonly base: ReadonlyMap<string, Row> | undefined;
  },
): Map<string, Row> {
  const rows = new Map(base);
  const content = source.files.get(`${kind}.csv`);
  if (content === undefined) return rows;
  const file = `${source.prefix ?? ""}${kind}.csv`;
  const checked = checkTable(content, { file, columns: columnsOf(kind) });
  faults.push(...checked.faults);
  notes.push(...checked.table.notes);
  if (kind === "fibres") checked.namesIn("name")?.forEach((name) => fibreNames.add(name));
  const seen = new Map<string, number>();
  checked.table.rows.forEach((cells, i) => {
    const line = checked.table.lines[i]!;
    const name = String(cells.name);
    const earlier = seen.get(name);
    if (earlier !== undefined) {
      const wanted = `must stand once: line ${earlier} has it too`;
      faults.push({ file, line, argument: "name", value: name, wanted });
      return;
    }
    seen.set(name, line);
    if (rows.has(name)) notes.push(`${file} line ${line}: ${name} takes the catalogue's place`);
    const { written } = checked.table;
    const row = withRanges<Row>(cells, { kind, written }, (argument, value, wanted) => {
      const heading = checked.table.headings.get(argument) ?? argument;
      faults.push({ file, line, argument: heading, value, wanted });
    });
    places.set(row, { file, line });
    rows.set(name, row);
  });
  return rows;
}

type Written = (column: string, value: number) => string;
type Cells = Readonly<Record<string, string | number | undefined>>;

/** A row with its ranges gathered under `typical`. */
function withRanges<Row>(
  cells: Cells,
  { kind, written }: { readonly kind: MaterialTable; readonly written: Written },
  refuse: (argument: string, value: unknown, wanted: string) => void,
): Row & object {
  const row: Record<string, unknown> = {};
  for (const [name, value] of Object.entries(cells)) {
    if (!/_(?:low|high)$/.test(name) && value !== undefined) row[name] = value;
  }
  const typical: Record<string, Range> = {};
  for (const name of Object.keys(properties[kind])) {
    const low = cells[`${name}_low`];
    const high = cells[`${name}_high`];
    if (low === undefined && high === undefined) continue;
    if (typeof low !== "number" || typeof high !== "number") {
      const lacking = low === undefined ? "low" : "high";
      refuse(`${name}_${lacking}`, undefined, "must be given as the other end of the range is");
    } else if (!(low <= high)) {
      const end = written(`${name}_high`, high);
      refuse(`${name}_low`, written(`${name}_low`, low), `must not be above ${name}_high, ${end}`);
    } else typical[name] = Object.freeze({ low, high });
  }
  return Object.freeze({ ...row, typical: Object.freeze(typical) }) as unknown as Row & object;
}

function crossChecked(catalogue: Catalogue, { faults, places, fibreNames }: Gather): Catalogue {
  const refuse = (row: object, argument: string, value: string, wanted: string): void => {
    faults.push({ ...places.get(row), argument, value, wanted });
  };
  for (const row of catalogue.reinforcements.values()) {
    if (!catalogue.fibres.has(row.fibre) && !fibreNames.has(row.fibre)) {
      refuse(row, "fibre", row.fibre, `must be one of: ${[...catalogue.fibres.keys()].join(", ")}`);
    }
    if ((row.form === "woven") === (row.weave === "none")) {
      const wanted = row.form === "woven"
        ? "must be plain, twill or satin for a woven cloth"
        : `must be none for a form that is ${row.form}`;
      refuse(row, "weave", row.weave, wanted);
    }
    if (catalogue.cores.has(row.name)) {
      refuse(row, "name", row.name, "must differ from the names of the cores");
    }
  }
  for (const row of catalogue.fillers.values()) {
    if (!(row.bulkDensity <= row.particleDensity)) {
      const wanted = `must not be above the density of a particle, ${row.particleDensity} kg/m³`;
      refuse(row, "bulkDensity", `${row.bulkDensity} kg/m³`, wanted);
    }
  }
  return Object.freeze(catalogue);
}
