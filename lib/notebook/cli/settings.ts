import { join, resolve } from "node:path";
import { type Fault, InputError } from "../../check/mod.ts";
import { type Dimension, readNumber, readQuantity, siUnits } from "../../quantity/mod.ts";
import { readSettings, type SettingRecord, settingsFile, tableText } from "../../records/mod.ts";
import { notebookFile } from "../runner/files.ts";
import type { PlainValue, Setting } from "../runner/first_cell.ts";
import { parseNotebook } from "../runner/notebook_file.ts";
import { firstCellSettings } from "../runner/parameters.ts";

/** What is set in one notebook. */
export interface SetValues {
  /** The values by name. */
  readonly values: ReadonlyMap<string, NonNullable<Setting["value"]>>;
  /** What a page says of those that differ from the usual: names, values and where they were set. */
  readonly said: string;
}

type OwnValues = Map<string, NonNullable<Setting["value"]>>;
type Values = Map<string, OwnValues>;

/** What may be set, by notebook. */
export type Settable = ReadonlyMap<string, readonly Setting[]>;

/** The part folder itself is named in the command. */
const NOT_SET_HERE = "part";

/** The list in a first cell of what in it is the builder's own and not assumed; filled in here. */
const GIVEN = "given";

/** What the first cells of notebooks let one set. */
export async function settableIn(folder: string, names: readonly string[]): Promise<Settable> {
  const found = new Map<string, readonly Setting[]>();
  for (const name of names) {
    const text = await Deno.readTextFile(notebookFile(folder, name));
    const settings = readable(text, name);
    found.set(name, settings.filter((each) => each.name !== NOT_SET_HERE && each.name !== GIVEN));
  }
  return found;
}

/** A file that is no notebook sets nothing: its own run says what is wrong with it. */
function readable(text: string, name: string): readonly Setting[] {
  try {
    return firstCellSettings(parseNotebook(text, name));
  } catch {
    return [];
  }
}

/** Reads `settings.csv` of a part folder; no row if there is none. */
export async function readSettingsOf(partFolder: string): Promise<readonly SettingRecord[]> {
  const path = resolve(join(partFolder, settingsFile));
  let bytes: Uint8Array;
  try {
    bytes = await Deno.readFile(path);
  } catch (error) {
    if (error instanceof Deno.errors.NotFound) return [];
    throw error;
  }
  return readSettings(bytes);
}

const ACTION = "set the notebooks";

/** What is set in each notebook: a row that names the notebook counts before one that names none. */
export function setValues({ rows, settable, command }: {
  readonly rows: readonly SettingRecord[];
  readonly settable: Settable;
  /** What the command line sets, for all notebooks. */
  readonly command?: SettingRecord;
}): ReadonlyMap<string, SetValues> {
  const faults: Fault[] = [];
  const filed: Values = new Map();
  // For all notebooks first, so that a notebook's own row overwrites it.
  const inOrder = rows.toSorted((a, b) =>
    Number(a.notebook !== undefined) - Number(b.notebook !== undefined)
  );
  for (const row of inOrder) {
    const fault = takeRow(row, settable, filed);
    if (fault !== undefined) faults.push({ file: settingsFile, line: row.line, ...fault });
  }
  if (faults.length > 0) {
    throw new InputError(ACTION, faults.toSorted((a, b) => a.line! - b.line!));
  }
  const commanded: Values = new Map();
  if (command !== undefined) takeRow(command, settable, commanded);
  return new Map(
    [...settable].map(([notebook, settings]) => {
      const [own, asked] = [filed.get(notebook), commanded.get(notebook)];
      const given = changedIn(settings, own);
      const said = [
        sentence(`Settings from ${settingsFile}`, given, own),
        sentence("Settings from the command", changedIn(settings, asked), asked),
      ].filter((text) => text !== "").join(". ");
      const values: OwnValues = new Map([...own ?? [], ...asked ?? []]);
      if (given.length > 0) values.set(GIVEN, given);
      return [notebook, { values, said }];
    }),
  );
}

/** Names of what differs from what the first cell has. */
function changedIn(settings: readonly Setting[], set: OwnValues | undefined): readonly string[] {
  return settings.filter(({ name, value }) => {
    const now = set?.get(name);
    return now !== undefined && shown(now) !== shown(value);
  }).map(({ name }) => name);
}

function sentence(from: string, names: readonly string[], set: OwnValues | undefined): string {
  const changed = names.map((name) => `${name} = ${shown(set?.get(name))}`);
  return changed.length === 0 ? "" : `${from}: ${changed.join(", ")}`;
}

/** A value as a cell of `settings.csv` holds it. */
export function shown(value: Setting["value"]): string {
  return Array.isArray(value) ? value.join("; ") : String(value ?? "");
}

type Wrong = Pick<Fault, "argument" | "value" | "wanted">;

/** Takes a row for each notebook that it is for, or says what is wrong with it. */
function takeRow(
  { notebook, name, value }: SettingRecord,
  settable: Settable,
  values: Values,
): Wrong | undefined {
  if (notebook !== undefined && !settable.has(notebook)) {
    const wanted = `must be one of: ${[...settable.keys()].join(", ")}`;
    return { argument: "notebook", value: notebook, wanted };
  }
  if (name === NOT_SET_HERE) {
    return { argument: "name", value: name, wanted: "must be left out: it is named by --part" };
  }
  const meant = [...settable].flatMap(([each, settings]) => {
    const setting = settings.find((one) => one.name === name);
    return setting !== undefined && (notebook ?? each) === each ? [{ each, setting }] : [];
  });
  if (meant.length === 0) {
    return { argument: "name", value: name, wanted: wantedName(notebook, settable) };
  }
  const all = meant.map(({ each, setting }) => ({ each, read: readValue(setting, value) }));
  const anyFits = all.some(({ read }) => "value" in read);
  for (const { each, read } of all) {
    if ("wanted" in read) {
      const where = anyFits ? ` in ${each}; name the notebook that is meant` : "";
      return { argument: `value of ${name}`, value, wanted: `${read.wanted}${where}` };
    }
    const own: OwnValues = values.get(each) ?? new Map();
    values.set(each, own.set(name, read.value));
  }
  return undefined;
}

function wantedName(notebook: string | undefined, settable: Settable): string {
  if (notebook === undefined) {
    return "must be a name in the first cell of a notebook: --settings writes them all";
  }
  const names = settable.get(notebook)!.map(({ name }) => name);
  return names.length === 0
    ? `must be left out: nothing can be set in ${notebook}`
    : `must be one that ${notebook} has: ${names.join(", ")}`;
}

type Read = { readonly value: NonNullable<Setting["value"]> } | { readonly wanted: string };

/** A cell read as the kind of value that stands in the first cell. */
function readValue({ value: usual, words }: Setting, text: string): Read {
  if (usual === undefined) {
    return { wanted: "must be left out: this list can be changed in the notebook itself only" };
  }
  if (typeof usual === "object") return readList(usual, text);
  return words === undefined
    ? readPlain(usual, text)
    : words.includes(text)
    ? { value: text }
    : { wanted: `must be one of: ${words.map((word) => word || "(empty)").join(", ")}` };
}

function readList(usual: readonly PlainValue[], text: string): Read {
  const cells = text.trim() === "" ? [] : text.split(";").map((cell) => cell.trim());
  const [first] = usual;
  const anyText = typeof first === "string" && kindsOf(first).length === 0;
  if (cells.length === 0 && !anyText) {
    return { wanted: `must be a list with ; between, such as ${shown(usual)}` };
  }
  const values: PlainValue[] = [];
  for (const cell of cells) {
    const read = readPlain(first ?? "", cell);
    if ("wanted" in read) {
      return { wanted: `${read.wanted}, with ; between, as in ${shown(usual)}` };
    }
    values.push(read.value);
  }
  return { value: values };
}

function readPlain(
  usual: PlainValue,
  text: string,
): { readonly value: PlainValue } | { readonly wanted: string } {
  if (typeof usual === "boolean") {
    if (/^(?:true|yes)$/i.test(text)) return { value: true };
    return /^(?:false|no)$/i.test(text) ? { value: false } : { wanted: "must be true or false" };
  }
  if (typeof usual === "number") {
    return read(() => readNumber(text), `must be a plain number such as ${usual}`);
  }
  const kinds = kindsOf(usual);
  if (kinds.length === 0) return { value: text };
  const fits = kinds.some((kind) => "value" in read(() => readQuantity(text, kind), ""));
  return fits ? { value: text } : { wanted: `must be a ${kinds[0]} such as ${usual}` };
}

/** The kinds of quantity that a text may be; none if it is a name or empty. */
function kindsOf(text: string): readonly Dimension[] {
  return (Object.keys(siUnits) as Dimension[])
    .filter((kind) => "value" in read(() => readQuantity(text, kind), ""));
}

function read(
  act: () => number,
  wanted: string,
): { readonly value: number } | { readonly wanted: string } {
  try {
    return { value: act() };
  } catch (error) {
    if (error instanceof InputError) return { wanted };
    throw error;
  }
}

/** All that may be set, as a `settings.csv` with the usual values; what all have alike stands once. */
export function settingsTable(settable: Settable): string {
  const all = [...settable].filter(([, settings]) => settings.length > 0);
  const common = (all[0]?.[1] ?? []).filter((setting) =>
    all.every(([, settings]) =>
      settings.some(({ name, value }) =>
        name === setting.name && shown(value) === shown(setting.value)
      )
    )
  );
  const isCommon = new Set(common.map(({ name }) => name));
  const rowOf = (notebook: string, { name, value }: Setting) => [notebook, name, shown(value)];
  const own = all.flatMap(([notebook, settings]) =>
    settings.filter(({ name, value }) => value !== undefined && !isCommon.has(name))
      .map((setting) => rowOf(notebook, setting))
  );
  return tableText(
    {
      headings: ["notebook", "name", "value"],
      rows: [...common.map((setting) => rowOf("", setting)), ...own],
    },
    { byteOrderMark: true },
  );
}
