import { InputError } from "./input_error.ts";
import { checkShape, type Shape } from "./shape.ts";

/** The limits of a range check. */
export interface Limits {
  /** Smallest value accepted. */
  readonly min: number;
  /** Largest value accepted. */
  readonly max: number;
  /** Unit of the value and of the limits, for the message. */
  readonly unit?: string;
}

/**
 * The checks of one action: each returns the value it was given, or throws an `InputError`
 * that begins with the action.
 */
export interface Checks {
  /** Any finite number. */
  finite(argument: string, value: number, unit?: string): number;
  /** A finite number above zero. */
  positive(argument: string, value: number, unit?: string): number;
  /** A finite number, zero or above. */
  nonNegative(argument: string, value: number, unit?: string): number;
  /** A finite number between the limits, the limits included. */
  within(argument: string, value: number, limits: Limits): number;
  /** A share of a whole: 0 to 1, both included. */
  fraction(argument: string, value: number): number;
  /** A whole number, `min` or above. */
  count(argument: string, value: number, min?: number): number;
  /** One of a set of words. */
  oneOf<T extends string>(argument: string, value: T, choices: readonly T[]): T;
  /** A name or other words: text that is not empty. */
  text(argument: string, value: string): string;
  /** An object with named fields (no list, not missing), before its fields are read. */
  object<T>(argument: string, value: T): T;
  /** A list with at least `min` entries. */
  list<T>(argument: string, value: readonly T[], min?: number): readonly T[];
  /** A value with all its parts, before they are read: each is named where it is not as it must be. */
  shape<T>(argument: string, value: T, shape: Shape): T;
  /**
   * A computed number about to leave: finite inputs can still overflow.
   * Call it on results whose formula can leave the range of a double.
   */
  result(argument: string, value: number, unit?: string): number;
  /**
   * Computed figures about to leave together: each number in an object or list, at any depth, as
   * `result` by the name of its field.
   */
  results<T extends object>(figures: T): T;
  /** Refuses with a message of the caller's own. */
  refuse(argument: string, value: unknown, wanted: string): never;
}

/**
 * The checks for one action, made once and used by each function that does it.
 *
 * Each comparison is written so that `NaN` fails it.
 *
 * @param action What is being done, as it follows "Cannot" in a message.
 * @returns Checks that throw `InputError` naming the action, the argument, the value and what
 * would do.
 *
 * @example
 * ```ts
 * import { checksFor, InputError } from "@laminate/notebooks/check";
 * import { assertEquals, assertThrows } from "@std/assert";
 *
 * const check = checksFor("compute the ply thickness");
 * assertEquals(check.positive("areal weight", 0.2, "kg/m²"), 0.2);
 * assertThrows(
 *   () => check.positive("areal weight", -0.2, "kg/m²"),
 *   InputError,
 *   "Cannot compute the ply thickness: areal weight is -0.2 kg/m², must be above 0",
 * );
 * ```
 */
export function checksFor(action: string): Checks {
  const fail = (argument: string, value: unknown, wanted: string, unit?: string): never => {
    throw new InputError(action, [
      { argument, value, wanted, ...(unit === undefined ? {} : { unit }) },
    ]);
  };
  const finite = (argument: string, value: number, unit?: string): number =>
    Number.isFinite(value)
      ? value
      : fail(argument, value, "must be a finite number (not text, not empty)", unit);

  const result = (argument: string, value: number, unit?: string): number =>
    Number.isFinite(value) ? value : fail(
      argument,
      value,
      "beyond the range of numbers: an input is far too large or too small",
      unit,
    );
  const results = <T extends object>(figures: T, within = ""): T => {
    for (const [name, value] of Object.entries(figures)) {
      // An entry of a list is named by what the list is.
      const field = Array.isArray(figures) && within !== "" ? within : name;
      if (typeof value === "number") result(field, value);
      else if (typeof value === "object" && value !== null) results(value, field);
    }
    return figures;
  };

  const checks: Checks = {
    finite,
    positive(argument, value, unit): number {
      finite(argument, value, unit);
      return value > 0 ? value : fail(argument, value, "must be above 0", unit);
    },
    nonNegative(argument, value, unit): number {
      finite(argument, value, unit);
      return value >= 0 ? value : fail(argument, value, "must be 0 or above", unit);
    },
    within(argument, value, { min, max, unit }): number {
      finite(argument, value, unit);
      return value >= min && value <= max ? value : fail(
        argument,
        value,
        `must be between ${min} and ${max}${unit === undefined ? "" : ` ${unit}`}`,
        unit,
      );
    },
    fraction(argument, value): number {
      finite(argument, value);
      return value >= 0 && value <= 1
        ? value
        : fail(argument, value, "must be between 0 and 1 (a percentage is divided by 100)");
    },
    count(argument, value, min = 0): number {
      return Number.isSafeInteger(value) && value >= min
        ? value
        : fail(argument, value, `must be a whole number, ${min} or above`);
    },
    oneOf(argument, value, choices): typeof value {
      return choices.includes(value)
        ? value
        : fail(argument, value, `must be one of: ${choices.join(", ")}`);
    },
    text(argument, value): string {
      return typeof value === "string" && value.trim() !== ""
        ? value
        : fail(argument, value, "must be a word or more");
    },
    object(argument, value): typeof value {
      return typeof value === "object" && value !== null && !Array.isArray(value)
        ? value
        : fail(argument, value, "must be an object with named fields");
    },
    list(argument, value, min = 1): typeof value {
      return Array.isArray(value) && value.length >= min
        ? value
        : fail(argument, value, `must be a list of ${min} or more`);
    },
    shape: (argument, value, shape) => checkShape(checks, argument, { value, shape }),
    result,
    results: (figures) => results(figures),
    refuse(argument, value, wanted): never {
      return fail(argument, value, wanted);
    },
  };
  return checks;
}
