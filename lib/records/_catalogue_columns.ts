import { checksFor } from "../check/mod.ts";
import type {
  CoreProperties,
  FibreProperties,
  FillerProperties,
  ReinforcementProperties,
  ResinProperties,
} from "../materials/mod.ts";
import type { Catalogue } from "./catalogue.ts";
import {
  choiceColumn,
  type Column,
  type Columns,
  type NumberColumn,
  numberColumn,
  optional,
  textColumn,
} from "./column.ts";

const check = checksFor("read the materials catalogue");

type Properties<Key extends string> = Readonly<Record<Key, NumberColumn>>;

const density = numberColumn("density", { above: 0 });
const modulus = numberColumn("modulus", { above: 0 });
const strength = numberColumn("stress", { above: 0 });
const expansion = numberColumn("thermal expansion");
const share = numberColumn("ratio", { min: 0, max: 1 });
const poisson = numberColumn("ratio", { above: -1, max: 0.5 });

const fibres: Properties<keyof FibreProperties> = {
  E1: modulus,
  E2: modulus,
  G12: modulus,
  nu12: numberColumn("ratio", { above: -1, max: 1 }),
  G23: modulus,
  density,
  alpha1: expansion,
  alpha2: expansion,
  tensileStrength: strength,
  compressiveStrength: strength,
};

const resins: Properties<keyof ResinProperties> = {
  E: modulus,
  nu: poisson,
  density,
  alpha: expansion,
  beta: numberColumn("ratio", { min: 0 }),
  tensileStrength: strength,
  compressiveStrength: strength,
  shearStrength: strength,
  hardenerPhr: numberColumn("ratio", { min: 0 }),
};

const reinforcements: Properties<keyof ReinforcementProperties> = {
  arealWeight: numberColumn("areal weight", { above: 0 }),
  warpShare: share,
  fibreFraction: numberColumn("ratio", { above: 0, max: 0.9 }),
  stiffnessKept: optional(numberColumn("ratio", { min: 0.1, max: 1 })),
};

const cores: Properties<keyof CoreProperties> = {
  density,
  compressiveModulus: modulus,
  inPlaneModulusL: numberColumn("modulus", { min: 0 }),
  inPlaneModulusW: numberColumn("modulus", { min: 0 }),
  nu: numberColumn("ratio", { above: -1, max: 1 }),
  shearModulusL: modulus,
  shearModulusW: modulus,
  compressiveStrength: strength,
  shearStrengthL: strength,
  shearStrengthW: strength,
  alpha: expansion,
  cellSize: numberColumn("length", { min: 0 }),
  resinUptake: numberColumn("areal weight", { min: 0 }),
};

const fillers: Properties<keyof FillerProperties> = {
  particleDensity: density,
  bulkDensity: density,
  packing: numberColumn("ratio", { above: 0, max: 1 }),
  E: modulus,
  nu: poisson,
};

const words = {
  fibres: { kind: choiceColumn("glass", "carbon", "aramid", "basalt", "flax", "polymer") },
  resins: { kind: choiceColumn("epoxy", "polyester", "vinylester") },
  reinforcements: {
    form: choiceColumn("unidirectional", "woven", "stitched", "mat"),
    weave: choiceColumn("none", "plain", "twill", "satin"),
    fibre: textColumn(),
  },
  cores: { kind: choiceColumn("foam", "honeycomb", "wood") },
  fillers: { kind: choiceColumn("hollow sphere", "solid sphere", "fume", "fibre", "mineral") },
} as const;

/** A table of the catalogue. */
export type MaterialTable = "fibres" | "resins" | "reinforcements" | "cores" | "fillers";

/** The properties of each table, as columns of figures. */
export const properties: Readonly<Record<MaterialTable, Readonly<Record<string, NumberColumn>>>> = {
  fibres,
  resins,
  reinforcements,
  cores,
  fillers,
};

/** Names of a table's columns that hold words. */
export function wordsOf(table: MaterialTable): readonly string[] {
  return Object.keys(words[table]);
}

/** The columns of a table: each property has its usual range beside it. */
export function columnsOf(table: MaterialTable): Columns {
  const columns: Record<string, Column> = { name: textColumn(), ...words[table] };
  for (const [name, column] of Object.entries(properties[table])) {
    columns[name] = column;
    columns[`${name}_low`] = optional(column);
    columns[`${name}_high`] = optional(column);
  }
  columns["source"] = { kind: "text", optional: false, free: true };
  return columns;
}

/** Refuses what is no catalogue. */
export function checkIsCatalogue(catalogue: Catalogue): void {
  check.object("catalogue", catalogue);
  for (const kind of ["fibres", "resins", "reinforcements", "cores", "fillers"] as const) {
    if (!(catalogue[kind] instanceof Map)) {
      check.refuse(kind, catalogue[kind], "must be a Map by name, as readCatalogue gives it");
    }
  }
}
