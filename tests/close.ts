import { AssertionError } from "@std/assert";

/** How far a value may be from what is expected; both limits add up. */
export interface Tolerance {
  /** Share of the expected value. */
  readonly relative?: number;
  /** In the unit of the value. */
  readonly absolute?: number;
}

/** Numbers, or lists of numbers of one shape. */
export type Numbers = number | readonly Numbers[];

/**
 * Fails unless each number is close to the expected one. Refuses NaN and Infinity on either side,
 * and a tolerance of zero around zero has to be met exactly.
 */
export function assertClose(
  actual: Numbers,
  expected: Numbers,
  tolerance: Tolerance,
  what = "value",
): void {
  if (typeof expected !== "number" || typeof actual !== "number") {
    if (typeof expected === "number" || typeof actual === "number") {
      throw new AssertionError(`${what}: a number stands against a list`);
    }
    if (actual.length !== expected.length) {
      throw new AssertionError(`${what}: length ${actual.length}, expected ${expected.length}`);
    }
    expected.forEach((entry, i) => assertClose(actual[i]!, entry, tolerance, `${what}[${i}]`));
    return;
  }
  const { relative = 0, absolute = 0 } = tolerance;
  const limit = relative * Math.abs(expected) + absolute;
  if (!(Number.isFinite(expected) && Math.abs(actual - expected) <= limit)) {
    throw new AssertionError(
      `${what}: ${actual}, expected ${expected} within ${limit} (off by ${actual - expected})`,
    );
  }
}
