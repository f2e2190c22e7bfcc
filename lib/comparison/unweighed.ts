import { checksFor } from "../check/mod.ts";

const check = checksFor("look for the specimens' weighings");

/**
 * Says which specimens have no weighing of their own name: their prediction then rests on the fibre
 * fraction of the schedule, and one letter in a name is enough for that.
 *
 * Formula: names compared as written; a near one differs by two letters at most, small and capital
 * letters, spaces and signs aside, with the same digits, and no specimen has it
 *
 * Range: names of one part folder.
 *
 * Source: E. Ukkonen, Information and Control 64 (1985) 100 (edit distance), from memory.
 *
 * @param specimens Names in the load tests.
 * @param weighed Names in the weighings.
 * @returns A remark for each specimen without a weighing, with the near name if there is one.
 * @throws {InputError} If a name is no text.
 *
 * @example
 * ```ts
 * import { unweighedRemarks } from "@laminate/notebooks/comparison";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(unweighedRemarks(["beam1"], ["beam 1", "beam 2"]), [
 *   '"beam1" has no row in weighings.csv: the scheduled fibre fraction is used. ' +
 *   'The nearest name there is "beam 1".',
 * ]);
 * ```
 */
export function unweighedRemarks(
  specimens: readonly string[],
  weighed: readonly string[],
): readonly string[] {
  check.shape("specimens", specimens, ["text"]);
  check.shape("weighed parts", weighed, ["text"]);
  const free = weighed.filter((name) => !specimens.includes(name));
  return [...new Set(specimens)].filter((name) => !weighed.includes(name)).map((name) => {
    const nearest = free.map((other) => ({ other, distance: distanceOf(name, other) }))
      .toSorted((a, b) => a.distance - b.distance)[0];
    const near = nearest !== undefined && nearest.distance <= MOST_LETTERS;
    return `"${name}" has no row in weighings.csv: the scheduled fibre fraction is used.` +
      (near ? ` The nearest name there is "${nearest.other}".` : "");
  });
}

/** Letters by which a slip of the pen changes a name. */
const MOST_LETTERS = 2;

/** Letters to change, add or drop between two names; without end where their digits differ. */
function distanceOf(a: string, b: string): number {
  const [from, to] = [a, b].map((name) => name.toLowerCase().replace(/[^\p{L}\p{N}]/gu, ""));
  const digits = (name: string): string => name.replace(/\P{N}/gu, "");
  if (digits(from!) !== digits(to!)) return Infinity;
  let row = Array.from({ length: to!.length + 1 }, (_, j) => j);
  for (const [i, letter] of [...from!].entries()) {
    const next = [i + 1];
    for (const [j, other] of [...to!].entries()) {
      next.push(
        Math.min(row[j + 1]! + 1, next[j]! + 1, row[j]! + (letter === other ? 0 : 1)),
      );
    }
    row = next;
  }
  return row.at(-1)!;
}
