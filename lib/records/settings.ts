import { type Fault, InputError } from "../check/mod.ts";
import { noteColumn, optional, textColumn } from "./column.ts";
import { byLine, defined } from "./_part_file.ts";
import { checkTable } from "./table.ts";

/** A figure or word that a builder sets for the notebooks. */
export interface SettingRecord {
  /** The notebook that it is for; every one that has the name if left out. */
  readonly notebook?: string;
  /** What is set, as the notebook's first cell calls it. */
  readonly name: string;
  /** What it is set to, as written; empty text for nothing. */
  readonly value: string;
  /** Line of the file in which it stands, from 1 [1]. */
  readonly line: number;
}

/** The file of a part folder that sets the notebooks. */
export const settingsFile = "settings.csv";

/** Its columns. */
export const settingsColumns = {
  notebook: optional(textColumn()),
  name: textColumn(),
  value: optional(textColumn()),
  note: noteColumn(),
} as const;

/**
 * What a builder sets for the notebooks, from `settings.csv`: as texts, which only the notebooks'
 * first cells give a meaning.
 *
 * Range: a notebook and a name stand once together
 *
 * Source: none.
 *
 * @param content The file's bytes, or its text.
 * @returns The rows.
 * @throws {InputError} If anything is wrong: each fault has its line, column and value.
 *
 * @example
 * ```ts
 * import { readSettings } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const csv = "notebook,name,value\n2-choosing-a-layup,span,16 in\n,units,US\n";
 * assertEquals(readSettings(csv), [
 *   { notebook: "2-choosing-a-layup", name: "span", value: "16 in", line: 2 },
 *   { name: "units", value: "US", line: 3 },
 * ]);
 * ```
 */
export function readSettings(content: Uint8Array | string): readonly SettingRecord[] {
  const file = settingsFile;
  const { table, faults: found } = checkTable(content, { file, columns: settingsColumns });
  const faults: Fault[] = [...found];
  const seen = new Map<string, number>();
  const records = table.rows.map((row, i): SettingRecord => {
    const line = table.lines[i]!;
    const notebook = row.notebook?.replace(/\.ipynb$/, "");
    const key = JSON.stringify([notebook, row.name]);
    const earlier = seen.get(key);
    if (earlier === undefined) seen.set(key, line);
    else {
      const wanted = `must be set once for a notebook: line ${earlier} sets it too`;
      faults.push({ file, line, argument: "name", value: row.name, wanted });
    }
    return defined({ notebook, name: row.name, value: row.value ?? "", line });
  });
  if (faults.length > 0) throw new InputError("set the notebooks", byLine(faults));
  return Object.freeze(records);
}
