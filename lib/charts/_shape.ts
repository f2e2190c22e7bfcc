import { checksFor, type Fields, type Shape } from "../check/mod.ts";

export type { Fields };

const check = checksFor("draw the figure");

/** A display unit. */
export const UNIT: Shape = { symbol: "words", perSI: "positive" };
/** Name and unit of an axis. */
export const AXIS: Shape = { name: "words", "unit?": UNIT };
/** A point of a plot. */
export const POINT = { x: "number", y: "number" } as const;

/** Refuses data of which a part is missing or of the wrong kind, by its name; returns it. */
export function checkShape<T>(data: T, shape: Fields, argument = "data"): T {
  return check.shape(argument, data, shape);
}
