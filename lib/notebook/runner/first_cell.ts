/** A plain value that a first cell gives a name. */
export type PlainValue = string | number | boolean;

/** Something that a first cell sets, and where its value stands in the text. */
export interface Setting {
  /** Its name: that of the variable, and behind a point that of the field. */
  readonly name: string;
  /** The value; none if it is no plain one and no list of plain ones. */
  readonly value: PlainValue | readonly PlainValue[] | undefined;
  /** The words that may stand there, where the cell names them. */
  readonly words?: readonly string[];
  /** Where the value begins in the text. */
  readonly from: number;
  /** Where it ends. */
  readonly to: number;
}

const DECLARED = /^[ \t]*let[ \t]+(\w+)[ \t]*(?::([^=\n]*))?=/gm;

/** All that a first cell sets, in the order of its text. */
export function settingsOf(source: string): readonly Setting[] {
  return [...source.matchAll(DECLARED)].flatMap((match) => {
    const reader = { source, at: match.index + match[0].length, found: [] as Setting[] };
    const [, name, type = ""] = match;
    readValue(reader, name!);
    const words = wordsIn(type);
    return reader.found.map((each) =>
      each.name === name && words !== undefined ? { ...each, words } : each
    );
  });
}

interface Reader {
  readonly source: string;
  at: number;
  readonly found: Setting[];
}

const BLANK = /(?:\s|\/\/[^\n]*|\/\*[^]*?\*\/)*/y;
const TEXT = /"(?:[^"\\\n]|\\.)*"/y;
const NUMBER = /-?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?/iy;
const WORD = /[A-Za-z_$][\w$]*/y;
const AS_WORDS = /\s+as\s+((?:"[^"\n]*"\s*\|?\s*)+)/y;
const END = /(?=[ \t]*(?:as\s+const\s*)?(?:[;,}\]\n]|\/\/|\/\*|$))/y;

/** Reads a value and notes what may be set in it; false where it is no literal. */
function readValue(reader: Reader, name: string): boolean {
  take(reader, BLANK);
  const from = reader.at;
  const sign = reader.source[from];
  if (sign === "{") return readFields(reader, name);
  const read = sign === "[" ? readList(reader) : readPlain(reader);
  const to = reader.at;
  const words = read === undefined ? undefined : wordsIn(take(reader, AS_WORDS) ?? "");
  // Of a sum only the first number would be read.
  const value = take(reader, END) === undefined ? undefined : read;
  reader.found.push({ name, value, from, to, ...(words === undefined ? {} : { words }) });
  return value !== undefined;
}

function readPlain(reader: Reader): PlainValue | undefined {
  const text = take(reader, TEXT);
  if (text !== undefined) return JSON.parse(text) as string;
  const number = take(reader, NUMBER);
  if (number !== undefined) return Number(number);
  const word = take(reader, WORD);
  return word === "true" ? true : word === "false" ? false : undefined;
}

/** A list of plain values; any other ends the reading of this variable. */
function readList(reader: Reader): readonly PlainValue[] | undefined {
  const values: PlainValue[] = [];
  for (reader.at++;;) {
    take(reader, BLANK);
    if (skip(reader, "]")) return values;
    const value = readPlain(reader);
    if (value === undefined) return undefined;
    values.push(value);
    take(reader, BLANK);
    skip(reader, ",");
  }
}

function readFields(reader: Reader, name: string): boolean {
  for (reader.at++;;) {
    take(reader, BLANK);
    if (skip(reader, "}")) return true;
    const field = take(reader, WORD);
    take(reader, BLANK);
    if (field === undefined || !skip(reader, ":")) return false;
    if (!readValue(reader, `${name}.${field}`)) return false;
    take(reader, /\s+as\s+const/y);
    take(reader, BLANK);
    skip(reader, ",");
  }
}

function take(reader: Reader, pattern: RegExp): string | undefined {
  pattern.lastIndex = reader.at;
  const found = pattern.exec(reader.source)?.[0];
  if (found !== undefined) reader.at += found.length;
  return found;
}

function skip(reader: Reader, sign: string): boolean {
  const found = reader.source[reader.at] === sign;
  if (found) reader.at++;
  return found;
}

/** The words of a type such as `"metric" | "US"`. */
function wordsIn(type: string): readonly string[] | undefined {
  const words = [...type.matchAll(/"([^"\n]*)"/g)].map(([, word]) => word!);
  return words.length === 0 ? undefined : words;
}

/** The text of a first cell with some values replaced: by literals, whatever they hold. */
export function withValues(
  source: string,
  values: ReadonlyMap<string, NonNullable<Setting["value"]>>,
): string {
  let text = source;
  for (const { name, from, to } of settingsOf(source).toReversed()) {
    const value = values.get(name);
    if (value === undefined) continue;
    text = text.slice(0, from) + literal(value) + text.slice(to);
  }
  return text;
}

function literal(value: NonNullable<Setting["value"]>): string {
  return typeof value === "object" ? `[${value.map(literal).join(", ")}]` : JSON.stringify(value);
}
