import { assertEquals } from "@std/assert";
import { InputError } from "@laminate/notebooks/check";
import * as numeric from "@laminate/notebooks/numeric";
import * as statistics from "@laminate/notebooks/statistics";

/** What a slip of the pen, an empty cell or a wrong variable may put in an argument's place. */
const ODD: readonly unknown[] = [
  ...[undefined, null, "", "x", 0, -1, 1, 2.5, NaN, Infinity, true, 5n],
  ...[{}, [], [null], [{}], [1, 2, 3], ["a", 1], [[1, 2], [3]], (): number => 1],
  ...[{ x: [1, 2, 3], y: [1, 2, 4] }, { x: "abc", y: [1, 2, 3] }],
  ...[{ value: 1, u: 1 }, { a: { value: 1, u: 0.1 } }, { a: null }, { value: "1", u: -1 }],
];
const LAST: readonly unknown[] = [undefined, null, "x", {}, [], -1, NaN];

/** Whether a result holds a number that is none. */
function holdsNaN(result: unknown, depth = 0): boolean {
  if (typeof result === "number") return !Number.isFinite(result);
  if (typeof result !== "object" || result === null || depth > 3) return false;
  return Object.values(result).some((entry) => holdsNaN(entry, depth + 1));
}

/** What is wrong with the way a function takes odd arguments. */
function faultsOf(name: string, f: (...args: unknown[]) => unknown): string[] {
  const faults = new Set<string>();
  for (const first of ODD) {
    for (const second of ODD) {
      for (const third of LAST) {
        try {
          if (holdsNaN(f(first, second, third))) faults.add(`${name} returns NaN or Infinity`);
        } catch (error) {
          if (!(error instanceof InputError)) faults.add(`${name}: ${error}`);
        }
      }
    }
  }
  return [...faults];
}

Deno.test("odd arguments end in a result of numbers or in an InputError, never in another error", () => {
  const functions = Object.entries({ ...numeric, ...statistics }).filter(([, f]) =>
    typeof f === "function"
  );
  assertEquals(functions.length > 50, true);
  assertEquals(
    functions.flatMap(([name, f]) => faultsOf(name, f as (...args: unknown[]) => unknown)),
    [],
  );
});
