import { checksFor } from "../check/mod.ts";
import { randomGenerator } from "../numeric/mod.ts";

const check = checksFor("spread sample points");

/** The first primes: one base a dimension. */
const PRIMES = [
  2,
  3,
  5,
  7,
  11,
  13,
  17,
  19,
  23,
  29,
  31,
  37,
  41,
  43,
  47,
  53,
  59,
  61,
  67,
  71,
  73,
  79,
  83,
  89,
  97,
  101,
  103,
  107,
  109,
  113,
  127,
  131,
  137,
  139,
  149,
  151,
  157,
  163,
  167,
  173,
];

/**
 * Points that fill a cube evenly: Halton's sequence, its digits shuffled by a seed, so that
 * repeats with other seeds show how sure a result is.
 *
 * Formula: coordinate d of point i: Σ π(digit k of i in base p) p^(−k−1), p the d-th prime, π a
 * shuffle of its own for each digit
 *
 * Range: 1 to 40 dimensions, up to 10⁶ points; better than random points for smooth functions of few of them.
 *
 * Source: J. H. Halton, Numer. Math. 2 (1960) 84; shuffled digits as A. B. Owen, "A randomized
 * Halton algorithm in R" (2017); from memory.
 *
 * @param count Number of points.
 * @param dimensions Number of coordinates of each.
 * @param seed Whole number, 0 or above.
 * @returns Coordinates above 0 and below 1, all of the first point, then of the next [1].
 * @throws {InputError} If a number is not whole or there are more than 40 dimensions.
 *
 * @example
 * ```ts
 * import { evenPoints } from "@laminate/notebooks/study";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const points = evenPoints(1024, 2, 1);
 * let mean = 0;
 * for (let i = 0; i < 1024; i++) mean += points[2 * i]! / 1024;
 * assertAlmostEquals(mean, 0.5, 0.001);
 * ```
 */
export function evenPoints(count: number, dimensions: number, seed: number): Float64Array {
  check.count("number of points", count, 1);
  check.within("number of points", count, { min: 1, max: 1_000_000 });
  check.count("dimensions", dimensions, 1);
  check.within("dimensions", dimensions, { min: 1, max: PRIMES.length });
  check.count("seed", seed);
  const random = randomGenerator(seed);
  const points = new Float64Array(count * dimensions);
  for (let d = 0; d < dimensions; d++) {
    const base = PRIMES[d] as number;
    // Digits until a double has no more; the last ones only scatter the point inside its cell.
    const digits = Math.ceil(53 * Math.LN2 / Math.log(base));
    const shuffles = Array.from({ length: digits }, () => shuffle(base, () => random.uniform()));
    for (let i = 0; i < count; i++) {
      let rest = i;
      let weight = 1;
      let value = 0;
      for (const places of shuffles) {
        weight /= base;
        value += weight * (places[rest % base] as number);
        rest = Math.floor(rest / base);
      }
      points[i * dimensions + d] = Math.min(Math.max(value, 2 ** -53), 1 - 2 ** -53);
    }
  }
  return points;
}

/** 0 to base − 1 in random order. */
function shuffle(base: number, uniform: () => number): readonly number[] {
  const places = Array.from({ length: base }, (_, i) => i);
  for (let i = base - 1; i > 0; i--) {
    const j = Math.floor(uniform() * (i + 1));
    [places[i], places[j]] = [places[j] as number, places[i] as number];
  }
  return places;
}
