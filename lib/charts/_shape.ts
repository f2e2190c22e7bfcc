import { checksFor } from "../check/mod.ts";

const check = checksFor("draw the figure");

/** Fields by name; a name that ends in `?` may be left out. */
export interface Fields {
  readonly [name: string]: Shape;
}

/**
 * What a part of a figure's data must be. `positive` is a number above 0; a list of one shape means
 * a list of such entries.
 */
export type Shape = "text" | "number" | "positive" | "function" | readonly [Shape] | Fields;

/** A display unit. */
export const UNIT: Shape = { symbol: "text", perSI: "positive" };
/** Name and unit of an axis. */
export const AXIS: Shape = { name: "text", "unit?": UNIT };
/** A point of a plot. */
export const POINT = { x: "number", y: "number" } as const;

/** Refuses data of which a part is missing or of the wrong kind, by its name; returns it. */
export function checkShape<T>(data: T, shape: Fields, argument = "data"): T {
  check.object(argument, data);
  checkFields("", data, shape);
  return data;
}

function checkPart(where: string, value: unknown, shape: Shape): void {
  if (shape === "text") {
    if (typeof value !== "string") check.refuse(where, value, "must be a text");
  } else if (shape === "function") {
    if (typeof value !== "function") check.refuse(where, value, "must be a function");
  } else if (shape === "number") check.finite(where, value as number);
  else if (shape === "positive") check.positive(where, value as number);
  else if (isList(shape)) {
    check.list(where, value as readonly unknown[], 0)
      .forEach((entry, i) => checkPart(`entry ${i + 1} of ${where}`, entry, shape[0]));
  } else checkFields(where, value, shape);
}

function checkFields(where: string, value: unknown, shape: Fields): void {
  const fields = check.object(where, value) as Record<string, unknown>;
  // Whoever reads the message knows a bar or a line by its label.
  const { label } = fields;
  const owner = typeof label === "string" && label !== "" ? label : where;
  for (const [key, of] of Object.entries(shape)) {
    const name = key.replace("?", "");
    if (name !== key && fields[name] === undefined) continue;
    checkPart(owner === "" ? name : `${name} of ${owner}`, fields[name], of);
  }
}

function isList(shape: Shape): shape is readonly [Shape] {
  return Array.isArray(shape);
}
