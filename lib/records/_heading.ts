import { type Fault, InputError } from "../check/mod.ts";
import { type ColumnUnit, columnUnit, siUnits } from "../quantity/mod.ts";
import type { Column, Columns, NumberColumn } from "./column.ts";
import { type NearColumn, nearColumn } from "./_near_heading.ts";
import { readNumberCell } from "./number_cell.ts";

/** A heading of the file that names a column of the schema. */
export interface Match {
  /** Name of the column in the schema. */
  readonly name: string;
  /** What the column must hold. */
  readonly column: Column;
  /** The heading as it stands in the file. */
  readonly heading: string;
  /** Place of the column in the file, from 0. */
  readonly index: number;
  /** The unit in the heading, as written. */
  readonly suffix: string | undefined;
}

/** The heading row, understood. */
export interface Headings {
  /** Columns of the schema that the file has. */
  readonly matches: readonly Match[];
  /** Columns of the file that the schema does not know, by place. */
  readonly unknown: ReadonlyMap<number, string>;
  /** What is wrong with the row, without the lines. */
  readonly faults: readonly Fault[];
  /** Whether the row is no heading row at all: what follows cannot be read by it. */
  readonly hopeless: boolean;
}

const mostQuoted = 20;
const longestQuoted = 40;

/** Finds the columns of the schema in the heading row. */
export function readHeadings(cells: readonly string[], columns: Columns): Headings {
  const headings = cells.map((cell) => cell.trim());
  const figure = headings.find((heading) => "value" in readNumberCell(heading));
  if (figure !== undefined) {
    return hopeless({
      argument: "heading row",
      value: figure,
      wanted: `must hold headings, not figures: ${Object.keys(columns).join(", ")}`,
    });
  }
  const matches: Match[] = [];
  const unknown = new Map<number, string>();
  const faults: Fault[] = [];
  const taken = new Map<string, string>();
  headings.forEach((heading, index) => {
    const match = matchHeading(heading, columns);
    const key = match?.name ?? heading;
    const earlier = taken.get(key);
    if (earlier !== undefined && heading !== "") {
      faults.push({
        argument: "heading",
        value: heading,
        wanted: `must stand once: ${JSON.stringify(earlier)} is the same column`,
      });
      return;
    }
    taken.set(key, heading);
    if (match === undefined) unknown.set(index, heading);
    else matches.push({ ...match, heading, index });
  });
  const words = headings.length === 1 ? headings[0]!.split(/\s+/) : [];
  const setApartByBlanks = words.filter((word) => matchHeading(word, columns)).length > 1;
  if (setApartByBlanks || (matches.length === 0 && faults.length === 0)) {
    return hopeless({
      argument: "heading row",
      value: cells.join(",").trim(),
      wanted: setApartByBlanks
        ? "must have commas between the headings, and so each row between its cells: not blanks"
        : `must hold the headings ${Object.keys(columns).join(", ")}; ` +
          "take lines above the headings out",
    });
  }
  const free = Object.fromEntries(Object.entries(columns).filter(([name]) => !taken.has(name)));
  const meant = meantFor(unknown, free);
  for (const [name, column] of Object.entries(free)) {
    if (column.optional) continue;
    const [index, near] = [...meant].find(([, found]) => found.name === name) ?? [];
    faults.push(missing(name, column, { headings, index, near }));
    // One fault is enough for one slip.
    if (index !== undefined) unknown.delete(index);
  }
  return { matches, unknown, faults, hopeless: false };
}

function hopeless(fault: Fault): Headings {
  return { matches: [], unknown: new Map(), faults: [fault], hopeless: true };
}

/** The columns, of those that the file lacks, that unknown headings may have been meant for. */
function meantFor(
  unknown: ReadonlyMap<number, string>,
  free: Columns,
): ReadonlyMap<number, NearColumn> {
  const found = new Map<number, NearColumn>();
  for (const [index, heading] of unknown) {
    const near = meantHeading(heading, free);
    if (near !== undefined) found.set(index, near);
  }
  return found;
}

/** The column that an unknown heading was probably meant for, none if it is the builder's own. */
export function meantHeading(heading: string, free: Columns): NearColumn | undefined {
  if (heading.startsWith("x_") || heading.length > longestQuoted) return undefined;
  return nearColumn(
    heading,
    free,
    (column, unit) => column.kind === "number" && unit !== "" && "unit" in unitOf(column, unit),
  );
}

interface Missed {
  readonly headings: readonly string[];
  readonly index: number | undefined;
  readonly near: NearColumn | undefined;
}

function missing(name: string, column: Column, { headings, index, near }: Missed): Fault {
  const found = headings.slice(0, mostQuoted).map((heading) => heading.slice(0, longestQuoted));
  const rest = headings.length > mostQuoted ? ", …" : "";
  const meant = index === undefined || near === undefined
    ? "; the"
    : `: did you mean ${near.heading} where it says ${headings[index]}? The`;
  return {
    argument: `column ${name}`,
    value: undefined,
    wanted: `must be there${inUnit(column)}${meant} file has: ${found.join(", ")}${rest}`,
  };
}

function inUnit(column: Column): string {
  return column.kind === "number" && needsUnit(column)
    ? ` with its unit (${column.dimension})`
    : "";
}

/** Whether a number of this column means nothing without a unit. */
export function needsUnit(column: NumberColumn): boolean {
  return siUnits[column.dimension] !== "1";
}

type Found = Omit<Match, "heading" | "index">;

/** `span_mm`, `span [mm]`, `span (mm)` or `span`: the longest column name that fits. */
function matchHeading(heading: string, columns: Columns): Found | undefined {
  const bracket = /^(.*\S)\s*(?:\[([^\]]*)\]|\(([^)]*)\))$/.exec(heading);
  const plain = bracket?.[1] ?? heading;
  const inBrackets = bracket?.[2] ?? bracket?.[3];
  if (Object.hasOwn(columns, plain)) {
    const column = columns[plain]!;
    if (inBrackets === undefined || column.kind === "number") {
      return { name: plain, column, suffix: inBrackets };
    }
  }
  if (bracket !== null) return undefined;
  for (let cut = heading.length; (cut = heading.lastIndexOf("_", cut - 1)) > 0;) {
    const name = heading.slice(0, cut);
    const column = Object.hasOwn(columns, name) ? columns[name] : undefined;
    if (column?.kind === "number") return { name, column, suffix: heading.slice(cut + 1) };
  }
  return undefined;
}

/** The unit of a column, or what is wrong with it. */
export function unitOf(
  column: NumberColumn,
  written: string | undefined,
): { readonly unit: ColumnUnit } | { readonly wanted: string } {
  if (written === undefined || written === "") {
    if (!needsUnit(column)) return { unit: columnUnit("1", column.dimension) };
    const si = siUnits[column.dimension];
    return { wanted: `must end with its unit (${column.dimension}), such as _${si}` };
  }
  try {
    return { unit: columnUnit(written, column.dimension) };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { wanted: error.faults[0]?.wanted ?? "must be a unit" };
  }
}
