/** The grammar of the orientation code: a cursor that walks over the text once. */
import type {
  ClothEntry,
  GroupEntry,
  LayerEntry,
  OrientationCode,
  OrientationEntry,
  PairEntry,
  PlyEntry,
} from "./orientation_code.ts";
import { DEEPEST, MOST_PLIES, plyCount } from "./_orientation_code_check.ts";

/** What is wrong and where: `at` counts UTF-16 units from 0. */
export interface CodeFault {
  readonly at: number;
  readonly wanted: string;
}

const MOST_CHARACTERS = 20000;

const OVERLINE = "\u0305";
const lowered = "₀₁₂₃₄₅₆₇₈₉";

/** Leaves the walk; caught in `parseCode`, so that the grammar reads straight on. */
class Fault extends Error {
  constructor(readonly at: number, readonly wanted: string) {
    super(wanted);
  }
}

interface Cursor {
  readonly text: string;
  at: number;
}

/** The code, or its first fault. */
export function parseCode(text: string): OrientationCode | CodeFault {
  if (text.length > MOST_CHARACTERS) {
    return {
      at: MOST_CHARACTERS,
      wanted: `must be the end: ${MOST_CHARACTERS} characters at most`,
    };
  }
  const cursor: Cursor = { text, at: 0 };
  try {
    skip(cursor);
    if (peek(cursor) !== "[") fault(cursor, "must be [: a code stands in square brackets");
    const start = cursor.at;
    const { group, total } = readGroup(cursor, 1);
    skip(cursor);
    if (cursor.at < text.length) fault(cursor, "must be the end of the code");
    if (plyCount(group) > MOST_PLIES) {
      throw new Fault(start, `begins more than ${MOST_PLIES} plies`);
    }
    return { ...group, total };
  } catch (error) {
    if (error instanceof Fault) return { at: error.at, wanted: error.wanted };
    throw error;
  }
}

function fault(cursor: Cursor, wanted: string, at = cursor.at): never {
  throw new Fault(at, wanted);
}

function skip(cursor: Cursor): void {
  while (/\s/.test(cursor.text[cursor.at] ?? "")) cursor.at++;
}

/** The next character that is no space; "" at the end. */
function peek(cursor: Cursor): string {
  skip(cursor);
  return cursor.text[cursor.at] ?? "";
}

/** Takes the text if it follows here. */
function take(cursor: Cursor, pattern: RegExp): string | undefined {
  skip(cursor);
  const match = pattern.exec(cursor.text.slice(cursor.at));
  if (match === null) return undefined;
  cursor.at += match[0].length;
  return match[0];
}

function readGroup(cursor: Cursor, depth: number): { group: GroupEntry; total: boolean } {
  if (depth > DEEPEST) fault(cursor, `must not open bracket ${depth}: ${DEEPEST} at most`);
  cursor.at++;
  const entries: OrientationEntry[] = [];
  const starts: number[] = [];
  for (;;) {
    starts.push((skip(cursor), cursor.at));
    entries.push(readEntry(cursor, depth));
    const next = peek(cursor);
    if (next === "]") break;
    if (next !== "/") fault(cursor, "must be / before another ply, or ] after the last");
    cursor.at++;
  }
  cursor.at++;
  const tail = readTail(cursor, depth);
  const group: GroupEntry = {
    kind: "group",
    entries,
    count: tail.count,
    symmetric: tail.symmetric,
  };
  entries.forEach((entry, index) => {
    if (!("middle" in entry) || !entry.middle) return;
    if (index < entries.length - 1) {
      fault(cursor, "must be the last in its bracket to be the middle ply", starts[index]!);
    }
    if (!tail.symmetric || tail.count > 1) {
      fault(cursor, "is a middle ply, so its bracket must end in s alone", starts[index]!);
    }
  });
  return { group, total: tail.total };
}

/** What follows a closing bracket: `_2s`, `₂ₛ`, `s`, `3`, `T`. */
function readTail(
  cursor: Cursor,
  depth: number,
): { count: number; symmetric: boolean; total: boolean } {
  if (cursor.text[cursor.at] === "_" && !/[\d_sST]/.test(cursor.text[cursor.at + 1] ?? "")) {
    fault(cursor, "must have a number, s or T behind it", cursor.at + 1);
  }
  take(cursor, /^_/);
  const count = readCount(cursor) ?? 1;
  const symmetric = take(cursor, /^_?[sSₛ]/) !== undefined;
  if (symmetric && /^_?[\d₀-₉]/.test(cursor.text.slice(cursor.at))) {
    fault(cursor, "must be the end: the number stands before s, as in 2s (repeat, then mirror)");
  }
  const at = (skip(cursor), cursor.at);
  const total = take(cursor, /^_?[Tₜ]/) !== undefined;
  if (total && symmetric) fault(cursor, "must not be T behind s: T lists all plies", at);
  if (total && depth > 1) fault(cursor, "must not be T inside the code, only at its end", at);
  return { count, symmetric, total };
}

function readEntry(cursor: Cursor, depth: number): OrientationEntry {
  const next = peek(cursor);
  if (next === "[") return readGroup(cursor, depth + 1).group;
  if (next === "(") return readCloth(cursor);
  if (/\p{L}/u.test(next)) return readLayer(cursor);
  const first = readPairSign(cursor);
  if (first !== undefined) return readPair(cursor, first);
  const { angleDeg, overlined } = readAngle(cursor);
  return { kind: "ply", angleDeg, ...readMarks(cursor, overlined) } satisfies PlyEntry;
}

/** +1 for `±`, −1 for `∓`, nothing if no pair begins here. */
function readPairSign(cursor: Cursor): 1 | -1 | undefined {
  if (take(cursor, /^(?:±|\+[-−–])/) !== undefined) return 1;
  if (take(cursor, /^(?:∓|[-−–]\+)/) !== undefined) return -1;
  return undefined;
}

function readPair(cursor: Cursor, first: 1 | -1): PairEntry {
  if (/[-+−–±∓]/.test(peek(cursor))) fault(cursor, "must be the angle: its two signs are given");
  const { angleDeg, overlined } = readAngle(cursor);
  const at = cursor.at;
  const { material, count, middle } = readMarks(cursor, overlined);
  if (count > 1) {
    fault(
      cursor,
      `could mean +-+- or ++--: write [±${angleDeg}]_${count}, or the plies one by one`,
      at,
    );
  }
  if (middle) fault(cursor, "must not mark a pair as the middle ply: it is two plies", at);
  return {
    kind: "pair",
    angleDeg: first * angleDeg + 0,
    ...(material === undefined ? {} : { material }),
  };
}

function readCloth(cursor: Cursor): ClothEntry {
  const start = cursor.at;
  cursor.at++;
  const first = readPairSign(cursor);
  let angleDeg: number;
  let weftDeg: number;
  if (first !== undefined) {
    const size = readAngle(cursor).angleDeg;
    [angleDeg, weftDeg] = [first * size + 0, -first * size + 0];
  } else {
    angleDeg = readAngle(cursor).angleDeg;
    if (peek(cursor) !== "/") {
      fault(cursor, "must be / and the cloth's second direction, as in (0/90)");
    }
    cursor.at++;
    weftDeg = readAngle(cursor).angleDeg;
  }
  if (peek(cursor) !== ")") fault(cursor, "must be ) after the cloth's two directions");
  if (Math.abs(Math.abs(angleDeg - weftDeg) - 90) > 1e-9) {
    fault(
      cursor,
      "begins a cloth whose directions do not cross at 90°; a group of plies stands in square " +
        "brackets: [45/0]_2",
      start,
    );
  }
  cursor.at++;
  return { kind: "cloth", angleDeg, weftDeg, ...readMarks(cursor, false) };
}

function readLayer(cursor: Cursor): LayerEntry {
  const material = take(cursor, /^\p{L}[\p{L}\p{Nd}-]*/u)!;
  const at = cursor.at;
  const { material: second, ...marks } = readMarks(cursor, false);
  if (second !== undefined) fault(cursor, "must not be a second material for the layer", at);
  return { kind: "layer", material, ...marks };
}

/** An angle with its sign, and whether a digit of it is overlined. */
function readAngle(cursor: Cursor): { angleDeg: number; overlined: boolean } {
  const start = (skip(cursor), cursor.at);
  const text = take(cursor, /^[+−–-]?(?:[\d.]\u0305?)+/);
  const plain = text?.replace(/[−–]/g, "-").replaceAll(OVERLINE, "") ?? "";
  if (!/^[+-]?(?:\d+\.?\d*|\.\d+)$/.test(plain)) {
    fault(cursor, "must be an angle, a cloth such as (0/90), a material or [", start);
  }
  const angleDeg = Number(plain) + 0;
  if (!(Math.abs(angleDeg) <= 90)) {
    const same = angleDeg - 180 * Math.round(angleDeg / 180);
    fault(cursor, `must begin an angle from -90 to 90: ${angleDeg} is the same as ${same}`, start);
  }
  const degree = take(cursor, /^[°º]\u0305?/);
  return { angleDeg, overlined: text!.includes(OVERLINE) || (degree?.length ?? 0) > 1 };
}

interface Marks {
  readonly material?: string;
  readonly count: number;
  readonly middle: boolean;
}

/** Subscripts and the stroke of a middle ply, in any order, each once. */
function readMarks(cursor: Cursor, overlined: boolean): Marks {
  let material: string | undefined;
  let count: number | undefined;
  let middle = overlined;
  for (;;) {
    const at = (skip(cursor), cursor.at);
    const next = cursor.text[at] ?? "";
    if (next === "|") {
      if (middle) fault(cursor, "must not mark the middle ply twice");
      cursor.at++;
      middle = true;
    } else if (next === "_" && /\p{L}/u.test(cursor.text[at + 1] ?? "")) {
      if (material !== undefined) fault(cursor, "must not name a second material");
      material = take(cursor, /^_\p{L}[\p{L}\p{Nd}-]*/u)!.slice(1);
    } else if (next === "_" || lowered.includes(next) && next !== "") {
      if (count !== undefined) fault(cursor, "must not be a second number of plies");
      take(cursor, /^_/);
      count = readCount(cursor) ?? fault(cursor, "must be a number of plies or a material");
    } else break;
    if (middle && (count ?? 1) > 1) fault(cursor, "must be one ply to be the middle ply", at);
  }
  return { ...(material === undefined ? {} : { material }), count: count ?? 1, middle };
}

/** A whole number in digits or subscript digits, if one follows. */
function readCount(cursor: Cursor): number | undefined {
  const at = cursor.at;
  const text = take(cursor, /^(?:\d+|[₀-₉]+)/);
  if (text === undefined) return undefined;
  const count = Number(text.replace(/[₀-₉]/g, (sign) => String(lowered.indexOf(sign))));
  if (!(count >= 1 && count <= MOST_PLIES)) {
    fault(cursor, `must be a number from 1 to ${MOST_PLIES}`, at);
  }
  return count;
}
