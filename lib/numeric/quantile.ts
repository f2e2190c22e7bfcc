import { checksFor } from "../check/mod.ts";
import { checkNumbers } from "./_matrix_check.ts";

const check = checksFor("find the quantiles");

/**
 * Quantiles of a list, found by selection: no full sort, and the list stays as it is.
 *
 * Formula: h = (n − 1) p; linear between the values of rank ⌊h⌋ and ⌊h⌋ + 1
 *
 * Range: any n above 0; p from 0 (smallest) to 1 (largest).
 *
 * Source: definition 7 of Hyndman and Fan, The American Statistician 50 (1996), from memory.
 *
 * @param values The list.
 * @param probabilities The shares p below the quantiles wanted, in any order [1].
 * @returns One quantile for each p, in the order asked [unit of the values].
 * @throws {InputError} If the list is empty, a value is not a finite number, or a share is outside
 * 0 to 1.
 *
 * @example
 * ```ts
 * import { quantiles } from "@laminate/notebooks/numeric";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(quantiles([3, 1, 2, 4, 5], [0.5, 0, 1, 0.125]), [3, 1, 5, 1.5]);
 * ```
 */
export function quantiles(
  values: ArrayLike<number>,
  probabilities: readonly number[],
): number[] {
  checkNumbers(check, "values", values);
  check.list("probabilities", probabilities, 0);
  probabilities.forEach((p, i) => check.fraction(`probability ${i}`, p));
  const work = Float64Array.from(values);
  const last = work.length - 1;
  const order = Array.from(probabilities.keys())
    .sort((i, j) => probabilities[i]! - probabilities[j]!);
  const result = new Array<number>(probabilities.length);
  let from = 0;
  for (const i of order) {
    const h = last * probabilities[i]!;
    const rank = Math.floor(h);
    const low = select(work, { from, to: last, rank });
    from = rank;
    if (h === rank) {
      result[i] = low;
      continue;
    }
    let high = Infinity;
    for (let j = rank + 1; j <= last; j++) if (work[j]! < high) high = work[j]!;
    result[i] = low + (h - rank) * (high - low);
  }
  return result;
}

/** Puts the value of this rank in its place, smaller ones before and larger ones after it. */
function select(
  values: Float64Array,
  { from, to, rank }: { from: number; to: number; rank: number },
): number {
  let low = from;
  let high = to;
  while (high > low) {
    const pivot = middleOfThree(values[low]!, values[(low + high) >> 1]!, values[high]!);
    let i = low;
    let j = high;
    while (i <= j) {
      while (values[i]! < pivot) i++;
      while (values[j]! > pivot) j--;
      if (i > j) break;
      const kept = values[i]!;
      values[i++] = values[j]!;
      values[j--] = kept;
    }
    if (rank <= j) high = j;
    else if (rank >= i) low = i;
    else break;
  }
  return values[rank]!;
}

function middleOfThree(a: number, b: number, c: number): number {
  return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
}
