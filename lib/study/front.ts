import { checksFor } from "../check/mod.ts";

const check = checksFor("find the trade-off front");

/**
 * The trade-off front of candidates: those that no other beats, better in nothing worse in all.
 *
 * Formula: i is out if some j has all objectives ≤ and one <; of equal ones the first stays
 *
 * Range: any number of objectives; n log n for one or two, up to n² for more.
 *
 * Source: Pareto's order.
 *
 * @param objectives One list a objective, each with one number a candidate; less is better.
 * @returns Indices of the candidates on the front, the least of the first objective first.
 * @throws {InputError} If there is no objective, the lists differ in length or hold no numbers.
 *
 * @example
 * ```ts
 * import { tradeOffFront } from "@laminate/notebooks/study";
 * import { assertEquals } from "@std/assert";
 *
 * const mass = [3, 1, 2, 2];
 * const deflection = [1, 9, 4, 5];
 * assertEquals(tradeOffFront([mass, deflection]), [1, 2, 0]);
 * ```
 */
export function tradeOffFront(objectives: readonly ArrayLike<number>[]): readonly number[] {
  check.list("objectives", objectives);
  const count = objectives[0]?.length ??
    check.refuse("objective 1", objectives[0], "must be a list");
  objectives.forEach((list, k) => {
    if (!(list?.length === count)) {
      check.refuse(
        `length of objective ${k + 1}`,
        list?.length,
        `must be ${count}, as of the first`,
      );
    }
    for (let i = 0; i < count; i++) {
      check.finite(`objective ${k + 1}, candidate ${i + 1}`, list[i]!);
    }
  });
  const order = Array.from({ length: count }, (_, i) => i).sort((i, j) => {
    for (const list of objectives) if (list[i] !== list[j]) return list[i]! - list[j]!;
    return i - j;
  });
  // Sorted so, nobody can be beaten by a later one: compare with those kept.
  if (objectives.length <= 2) {
    const second = objectives[1] ?? objectives[0]!;
    let best = Infinity;
    const front = order.filter((i) => {
      const keep = second[i]! < best;
      if (keep) best = second[i]!;
      return keep;
    });
    return Object.freeze(objectives.length === 1 ? front.slice(0, 1) : front);
  }
  const front: number[] = [];
  for (const i of order) {
    if (!front.some((j) => objectives.every((list) => list[j]! <= list[i]!))) front.push(i);
  }
  return Object.freeze(front);
}
