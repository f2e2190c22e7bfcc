/**
 * Small changes inside an argument list: a figure somewhat larger or smaller, or one place that
 * holds what cannot be meant.
 *
 * @module
 */
import fc, { type Arbitrary } from "fast-check";

/** What a place holds after a change. */
export interface Edit {
  /** Which place, counted round the places there are. */
  readonly at: number;
  /** The factor by which a figure is multiplied. */
  readonly scale?: number;
  /** What stands there instead. */
  readonly put?: unknown;
  /** What stands there instead of a text. */
  readonly text?: unknown;
}

/** Values that no quantity has, or hardly any. */
const HOSTILE: readonly unknown[] = [
  NaN,
  Infinity,
  -Infinity,
  -1,
  0,
  -0,
  5e-324,
  1e308,
  -1e308,
  1e-160,
  1e160,
  2 ** 53,
  0.5,
  -0.1,
  1e9,
  "5",
  undefined,
  null,
  true,
  [],
  [NaN],
  {},
];

/** What stands where a text should: a text is not computed with. */
const WRONG_TEXT: readonly unknown[] = ["", "no such word", undefined, null];

/** Figures a little off: a sound call stays sound. */
export const MILD: Arbitrary<readonly Edit[]> = fc.array(
  fc.record({ at: fc.nat(1e6), scale: fc.double({ min: 0.5, max: 2, noNaN: true }) }),
  { maxLength: 4 },
);

/** One to three places that hold what cannot be meant. */
export const SPOILING: Arbitrary<readonly Edit[]> = fc.array(
  fc.record({
    at: fc.nat(1e6),
    put: fc.constantFrom(...HOSTILE),
    text: fc.constantFrom(...WRONG_TEXT),
  }),
  { minLength: 1, maxLength: 3 },
);

type Path = readonly (string | number)[];

/** A copy with the changes; what is not changed is shared. */
export function edited<T extends object>(value: T, edits: readonly Edit[]): T {
  if (edits.length === 0) return value;
  const { figures, inside } = placesOf(value);
  return edits.reduce((now: unknown, edit) => {
    const among = "scale" in edit ? figures : inside;
    const place = among[edit.at % Math.max(among.length, 1)];
    return place === undefined ? now : changedAt(now, place.path, changed(place.holds, edit));
  }, value) as T;
}

function changed(old: unknown, { scale, put, text }: Edit): unknown {
  if (scale !== undefined) return scaled(old, scale);
  return typeof old === "string" ? text : put;
}

function scaled(old: unknown, factor: number): unknown {
  if (typeof old !== "number") return old;
  const by = old * factor;
  if (Number.isInteger(old)) return Math.abs(old) < 10 ? old : Math.round(by);
  return Math.abs(old) < 1 ? Math.max(-1, Math.min(1, by)) : by;
}

interface Placed {
  readonly path: Path;
  readonly holds: unknown;
}

interface Places {
  readonly figures: readonly Placed[];
  /** Every place but the argument list itself. */
  readonly inside: readonly Placed[];
}

/** Places of argument lists that come again and again. */
const known = new WeakMap<object, Places>();

function placesOf(value: object): Places {
  const found = known.get(value);
  if (found !== undefined) return found;
  const inside = placesIn(value).slice(1);
  const places = { figures: inside.filter(({ holds }) => typeof holds === "number"), inside };
  known.set(value, places);
  return places;
}

/** Deeper than any of our types nests. */
const DEEPEST = 9;
/** Of a long list this many entries stand for the rest. */
const ENTRIES = 6;

function placesIn(value: unknown, path: Path = []): Placed[] {
  const own = { path, holds: value };
  if (path.length > DEEPEST) return [own];
  if (Array.isArray(value) || value instanceof Float64Array) {
    return [
      own,
      ...Array.from(value.slice(0, ENTRIES)).flatMap((entry, i) => placesIn(entry, [...path, i])),
    ];
  }
  if (!isRecord(value)) return [own];
  return [
    own,
    ...Object.entries(value).flatMap(([key, entry]) => placesIn(entry, [...path, key])),
  ];
}

/** Whether it is a plain object. */
export function isRecord(value: unknown): value is Record<string, unknown> {
  if (typeof value !== "object" || value === null) return false;
  const prototype = Object.getPrototypeOf(value);
  return prototype === Object.prototype || prototype === null;
}

function changedAt(value: unknown, [first, ...rest]: Path, now: unknown): unknown {
  if (first === undefined) return now;
  if (isRecord(value)) return { ...value, [first]: changedAt(value[first], rest, now) };
  // An earlier change may have taken the place away.
  const isList = Array.isArray(value) || value instanceof Float64Array;
  if (!isList || !(Number(first) < value.length)) return value;
  return Array.isArray(value)
    ? value.with(Number(first), changedAt(value[Number(first)], rest, now))
    : value.with(Number(first), Number(now));
}

/** Freezes lists and plain objects, so that a function that changes what it was given is seen. */
export function frozen<T>(value: T): T {
  if (!Array.isArray(value) && !isRecord(value)) return value;
  if (Object.isFrozen(value)) return value;
  Object.freeze(value);
  for (const entry of Object.values(value)) frozen(entry);
  return value;
}
