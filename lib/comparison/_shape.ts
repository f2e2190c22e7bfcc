/** What comes in by the doors of this room, told part by part. */
import type { Checks } from "../check/mod.ts";

/** Fields by name; a name that ends in `?` may be left out. */
export interface Fields {
  readonly [name: string]: Shape;
}

/**
 * What a part must be: a word for a plain value (a text is not blank, words may be), a list of one shape for a list of such entries,
 * `null` beside a shape where nothing may stand, `{ each: shape }` for fields of any name.
 */
export type Shape =
  | "text"
  | "words"
  | "number"
  | "positive"
  | "nonNegative"
  | "function"
  | "object"
  | readonly [Shape]
  | readonly [null, Shape]
  | { readonly each: Shape }
  | Fields;

/** A value with standard uncertainty. */
export const UNCERTAIN = { value: "number", u: "nonNegative" } as const;
/** A value above 0 with standard uncertainty. */
export const MEASURED = { value: "positive", u: "nonNegative" } as const;
/** A value with an interval. */
export const INTERVAL = { ...UNCERTAIN, low: "number", high: "number" } as const;
/** How a beam is held and loaded. */
export const LOAD_CASE = {
  equation: "text",
  deflection: { bending: "positive", shear: "positive" },
} as const;

/** Refuses what a part is not, by its name; returns it. */
export function checkShape<T>(check: Checks, where: string, value: T, shape: Shape): T {
  if (shape === "text") check.text(where, value as string);
  else if (shape === "words") {
    if (typeof value !== "string") check.refuse(where, value, "must be a text");
  } else if (shape === "number") check.finite(where, value as number);
  else if (shape === "positive") check.positive(where, value as number);
  else if (shape === "nonNegative") check.nonNegative(where, value as number);
  else if (shape === "function") {
    if (typeof value !== "function") check.refuse(where, value, "must be a function");
  } else if (shape === "object") check.object(where, value);
  else if (isList(shape)) {
    if (shape.length === 2) {
      return value === null ? value : checkShape(check, where, value, shape[1]);
    }
    check.list(where, value as readonly unknown[], 0)
      .forEach((entry, i) => checkShape(check, `entry ${i + 1} of ${where}`, entry, shape[0]));
  } else if (isEach(shape)) {
    for (const [name, entry] of Object.entries(check.object(where, value) as object)) {
      checkShape(check, `${name} of ${where}`, entry, shape.each);
    }
  } else checkFields(check, where, value, shape);
  return value;
}

function checkFields(check: Checks, where: string, value: unknown, shape: Fields): void {
  const fields = check.object(where, value) as Readonly<Record<string, unknown>>;
  for (const [key, of] of Object.entries(shape)) {
    const name = key.replace("?", "");
    if (name !== key && fields[name] === undefined) continue;
    checkShape(check, `${name} of ${where}`, fields[name], of);
  }
}

function isList(shape: Shape): shape is readonly [Shape] | readonly [null, Shape] {
  return Array.isArray(shape);
}

function isEach(shape: Fields | { readonly each: Shape }): shape is { readonly each: Shape } {
  return "each" in shape;
}
