import { checksFor } from "../check/mod.ts";
import { parseNumber } from "./_number.ts";

/**
 * A number as people write it: `12.5`, `1 1/2`, `1-1/2`, `½`, `5.4e-6`, `−3`; with a decimal
 * comma or thousands only where they can mean one thing.
 *
 * `1,5` is 1.5, `0,500` is 0.5, `1.234,5` and `1,234.5` are 1234.5, `1,234,567` is a million and
 * more; `1,500` is refused, since it could be 1500 or 1.5. A single point is always a decimal
 * point.
 *
 * Formula: whole + numerator/denominator for a fraction
 *
 * Range: any finite double
 *
 * Source: common practice, no source
 *
 * @param text The number as text.
 * @returns The number it means [1].
 * @throws {InputError} If it is no number, not finite, or could be two numbers.
 *
 * @example
 * ```ts
 * import { readNumber } from "@laminate/notebooks/quantity";
 * import { InputError } from "@laminate/notebooks/check";
 * import { assertEquals, assertThrows } from "@std/assert";
 *
 * assertEquals(readNumber("1 1/2"), 1.5);
 * assertEquals(readNumber("1,5"), 1.5);
 * assertThrows(() => readNumber("1,500"), InputError, "could be 1500 or 1.5");
 * ```
 */
export function readNumber(text: string): number {
  const number = typeof text === "string" ? parseNumber(text) : { wanted: "must be text" };
  return "wanted" in number ? check.refuse("the number", text, number.wanted) : number.value;
}

const check = checksFor("read a number");
