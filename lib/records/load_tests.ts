import type { Fault } from "../check/mod.ts";
import {
  choiceColumn,
  type Columns,
  type Filled,
  noteColumn,
  numberColumn,
  type TextColumn,
  textColumn,
} from "./column.ts";
import type { LayupRecord, Layups } from "./layups.ts";
import { byLine, defined, layupColumn, type PartContext, type PartFile } from "./_part_file.ts";
import { checkColumns } from "./column_table.ts";

/** How a specimen was loaded. */
export type Loading = "three-point" | "quarter-point" | "third-point" | "cantilever";

/** Whether the load was rising or falling at a reading. */
export type Branch = "loading" | "unloading";

/** A load test: a specimen on its supports, and its readings. */
export interface LoadTestRecord {
  /** Its name. */
  readonly test: string;
  /** The specimen that was tested. */
  readonly specimen: string;
  /** The lay-up schedule that it was made to. */
  readonly layup: LayupRecord;
  /** Where the load stands. */
  readonly loading: Loading;
  /** Between the supports, or the free length of a cantilever [m]. */
  readonly span: number;
  /** Width of the specimen [m]. */
  readonly width: number;
  /** Thickness of the specimen, faces included [m]. */
  readonly thickness: number;
  /** Load of each reading, in the order in which they were read [N]. */
  readonly load: Float64Array;
  /** Deflection of each reading [m]. */
  readonly deflection: Float64Array;
  /** Branch of each reading. */
  readonly branch: readonly Branch[];
  /** Remark of each reading; empty text where there is none. */
  readonly readingNotes: readonly string[];
  /** Line of each reading in the file, from 1 [1]. */
  readonly lines: Uint32Array;
}

const columnsFor = (layup: Filled<TextColumn>) =>
  ({
    test: textColumn(),
    specimen: textColumn(),
    layup,
    loading: choiceColumn("three-point", "quarter-point", "third-point", "cantilever"),
    span: numberColumn("length", { above: 0 }),
    width: numberColumn("length", { above: 0 }),
    thickness: numberColumn("thickness", { above: 0 }),
    load: numberColumn("force"),
    deflection: numberColumn("length"),
    branch: choiceColumn("loading", "unloading"),
    note: noteColumn(),
  }) as const;

/** The columns of its table. */
export const loadTestColumns: (layup: Filled<TextColumn>) => Columns = columnsFor;

const file = "load_tests.csv";

/** What must be the same in each reading of a test. */
const constants = ["specimen", "layup", "loading", "span", "width", "thickness"] as const;

/** Reads the load tests of a part: readings of one test in the order of the rows. */
export function readLoadTests(
  content: Uint8Array | string,
  { decimal, layups, names }: Layups & Pick<PartContext, "decimal">,
): PartFile<readonly LoadTestRecord[]> {
  const columns = columnsFor(layupColumn(names));
  const { table, faults: found } = checkColumns(content, {
    file,
    columns,
    ...defined({ decimal }),
  });
  const faults: Fault[] = [...found];
  const cells = table.columns;
  const records: LoadTestRecord[] = [];
  for (const [test, rows] of rowsByTest(cells.test, table.count)) {
    const first = rows[0]!;
    for (const column of constants) {
      const shown = (row: number): string => {
        const value = cells[column][row]!;
        return typeof value === "number" ? table.written(column, value) : value;
      };
      const other = rows.find((row) => cells[column][row] !== cells[column][first]);
      if (other === undefined) continue;
      faults.push({
        file,
        line: table.lines[other]!,
        argument: table.headings.get(column) ?? column,
        value: shown(other),
        wanted: `must be the same in all of test ${test}: ` +
          `line ${table.lines[first]} has ${shown(first)}; mend the one that is wrong`,
      });
    }
    const layup = layups.get(cells.layup[first]!);
    if (layup === undefined) continue;
    records.push(Object.freeze({
      test,
      specimen: cells.specimen[first]!,
      layup,
      loading: cells.loading[first]!,
      span: cells.span[first]!,
      width: cells.width[first]!,
      thickness: cells.thickness[first]!,
      load: Float64Array.from(rows, (row) => cells.load[row]!),
      deflection: Float64Array.from(rows, (row) => cells.deflection[row]!),
      branch: Array.from(rows, (row) => cells.branch[row]!),
      readingNotes: Array.from(rows, (row) => cells.note[row] ?? ""),
      lines: Uint32Array.from(rows, (row) => table.lines[row]!),
    }));
  }
  return { content: Object.freeze(records), faults: byLine(faults), notes: table.notes };
}

function rowsByTest(tests: readonly string[], count: number): Map<string, number[]> {
  const groups = new Map<string, number[]>();
  let name: string | undefined;
  let rows: number[] = [];
  for (let row = 0; row < count; row++) {
    const test = tests[row]!;
    if (test !== name) {
      name = test;
      rows = groups.get(test) ?? [];
      groups.set(test, rows);
    }
    rows.push(row);
  }
  return groups;
}
