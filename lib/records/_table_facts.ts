import { checksFor, type Fault, InputError } from "../check/mod.ts";
import { checkColumn } from "./_check_column.ts";
import type { Columns } from "./column.ts";
import { decodeText } from "./decode.ts";
import { describeLeftOut } from "./left_out.ts";
import { byLine } from "./_part_file.ts";
import { type Scan, scan } from "./_scan.ts";
import type { TableFacts, TableOptions } from "./table.ts";

const check = checksFor("read the table");

/** Of a table that could not be decoded. */
export const noFacts: TableFacts = {
  lines: new Uint32Array(),
  headings: new Map(),
  written: String,
  leftOut: [],
  notes: [],
};

/** Reads a table with all that is wrong with it, the encoding included. */
export function scanSource<C extends Columns>(
  source: string | Uint8Array,
  options: TableOptions<C>,
): Scan | { readonly decodeFaults: readonly Fault[] } {
  const { file, encoding, decimal, delimiter, skipLines } = check.object("options", options);
  if (delimiter !== undefined && !/^[^"#\r\n\w]$/.test(delimiter)) {
    check.refuse("delimiter", delimiter, "must be one sign that is no letter, digit, quote or #");
  }
  if (skipLines !== undefined) check.count("lines to skip", skipLines);
  for (const [name, column] of Object.entries(check.object("columns", options.columns))) {
    checkColumn(column, `column ${name}`);
  }
  check.oneOf("decimal sign", decimal ?? ".", [".", ","]);
  if (typeof source !== "string" && !(source instanceof Uint8Array)) {
    return check.refuse("source", source, "must be the bytes of a file, or its text");
  }
  try {
    return scan(
      typeof source === "string" ? source : decodeText(source, {
        ...(file === undefined ? {} : { file }),
        ...(encoding === undefined ? {} : { encoding }),
      }),
      options,
    );
  } catch (error) {
    if (error instanceof InputError) return { decodeFaults: error.faults };
    throw error;
  }
}

/** What is known of a table beside its cells. */
export function factsOf(read: Scan, file = "table"): TableFacts {
  return {
    lines: read.lines,
    headings: new Map([...read.fields].map(([name, field]) => [name, field.heading])),
    written(column, value): string {
      const field = read.fields.get(column);
      const unit = field?.kind === "number" ? field.unit : undefined;
      if (unit === undefined) return String(value);
      const figure = String(Number(unit.fromSI(value).toPrecision(12)));
      return unit.unit === "1" ? figure : `${figure} ${unit.unit}`;
    },
    leftOut: read.leftOut,
    notes: [
      ...read.notes.map((note) => `${file}: ${note}`),
      ...read.leftOut.map((part) => describeLeftOut(part, file)),
    ],
  };
}

/** The faults with their file, in the order of their lines. */
export function named(faults: readonly Fault[], file = "table"): readonly Fault[] {
  return byLine(faults.map((fault) => ({ file, ...fault })));
}
