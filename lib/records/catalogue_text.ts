import { checksFor } from "../check/mod.ts";
import type { Catalogued, Range } from "../materials/mod.ts";
import { type Dimension, fromSI } from "../quantity/mod.ts";
import { type MaterialTable, properties, wordsOf } from "./_catalogue_columns.ts";
import { tableText } from "./table_text.ts";

export type { MaterialTable };

const check = checksFor("write the materials");

/** Units in which the catalogue's tables are written; a ratio has none. */
const UNITS: Readonly<Partial<Record<Dimension, string>>> = {
  "density": "kg/m3",
  "modulus": "GPa",
  "stress": "MPa",
  "thermal expansion": "1e-6/K",
  "areal weight": "g/m2",
  "length": "mm",
};

/** Digits that are written: enough to come back the same but for the last few of a double. */
const DIGITS = 13;

type NamedRow = Catalogued<string> & Readonly<Record<string, unknown>>;

/**
 * Rows of the materials catalogue as the CSV text of their table, each range beside its property:
 * what `catalogueFromFiles`, or a part's folder `materials/`, reads back.
 *
 * Range: figures come back to 12 digits
 *
 * @param table Which table: "fibres", "resins", "reinforcements", "cores" or "fillers".
 * @param rows The rows.
 * @returns The text.
 * @throws {InputError} If there is no row, or a row lacks a figure that its table must have.
 *
 * @example
 * ```ts
 * import { catalogueFromFiles, catalogueText, readCatalogue } from "@laminate/notebooks/records";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { cores } = await readCatalogue();
 * const softer = { ...cores.get("PVC foam 80")!, shearModulusL: 25e6, source: "own tests" };
 * const files = new Map([["cores.csv", catalogueText("cores", [softer])]]);
 * const read = catalogueFromFiles({ files }).cores.get("PVC foam 80")!;
 * assertAlmostEquals(read.shearModulusL / 1e6, 25, 1e-12);
 * ```
 */
export function catalogueText(table: MaterialTable, rows: readonly Catalogued<string>[]): string {
  check.oneOf("table", table, Object.keys(properties) as MaterialTable[]);
  check.list("rows", rows).forEach((row, i) => check.object(`row ${i + 1}`, row));
  const named = rows as readonly NamedRow[];
  const columns = [
    plainColumn("name", named),
    ...wordsOf(table).map((word) => plainColumn(word, named)),
    ...Object.entries(properties[table]).flatMap(([name, { dimension, optional }]) => {
      const unit = table === "cores" && dimension === "modulus" ? "MPa" : UNITS[dimension];
      return propertyColumns(named, { name, dimension, optional, unit });
    }),
    plainColumn("source", named),
  ];
  return tableText({
    headings: columns.map(({ heading }) => heading),
    rows: named.map((_, i) => columns.map(({ cells }) => cells[i])),
  });
}

interface TextColumnOfRows {
  readonly heading: string;
  readonly cells: readonly (string | number | undefined)[];
}

function plainColumn(name: string, rows: readonly NamedRow[]): TextColumnOfRows {
  return {
    heading: name,
    cells: rows.map((row) => {
      const value = row[name];
      return typeof value === "string"
        ? value
        : check.refuse(`${name} of ${row.name}`, value, "must be a text");
    }),
  };
}

/** The property, then the two ends of its range where a row has one. */
function propertyColumns(
  rows: readonly NamedRow[],
  { name, dimension, optional, unit }: {
    readonly name: string;
    readonly dimension: Dimension;
    readonly optional: boolean;
    readonly unit: string | undefined;
  },
): readonly TextColumnOfRows[] {
  const heading = (end: string): string => `${name}${end}${unit === undefined ? "" : `_${unit}`}`;
  const shown = (row: Catalogued<string>, value: unknown): number | undefined => {
    if (value === undefined) return undefined;
    const figure = check.finite(`${name} of ${row.name}`, value as number);
    return rounded(unit === undefined ? figure : fromSI(figure, unit, dimension));
  };
  const ends = (end: keyof Range): readonly (number | undefined)[] =>
    rows.map((row) => shown(row, row.typical?.[name]?.[end]));
  const own = rows.map((row) => {
    if (row[name] === undefined && !optional) {
      check.refuse(`${name} of ${row.name}`, undefined, "must be given");
    }
    return shown(row, row[name]);
  });
  const [low, high] = [ends("low"), ends("high")];
  const ranged = low.some((value) => value !== undefined);
  return [
    ...(own.some((value) => value !== undefined) ? [{ heading: heading(""), cells: own }] : []),
    ...(ranged
      ? [{ heading: heading("_low"), cells: low }, { heading: heading("_high"), cells: high }]
      : []),
  ];
}

function rounded(value: number): number {
  return Number(value.toPrecision(DIGITS));
}
