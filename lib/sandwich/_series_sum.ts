/** Terms below this share of their neighbours are gaps of a series that skips every other wave. */
const GAP = 1e-7;

/** Terms that the transformation uses; more only gathers rounding. */
const USED = 14;

/**
 * Sum of a slowly converging series: the plain sum of the first terms, the rest by Levin's u
 * transformation (D. Levin, Int. J. Comput. Math. B 3 (1973) 371, from memory), good for series
 * that alternate and for those that fall like a power.
 */
export function acceleratedSum(terms: ArrayLike<number>, count: number): number {
  const kept: number[] = [];
  for (let i = 0; i < count; i++) {
    const size = Math.abs(terms[i] ?? 0);
    const next = Math.max(Math.abs(terms[i - 1] ?? 0), Math.abs(terms[i + 1] ?? 0));
    if (size > GAP * next) kept.push(terms[i] as number);
  }
  let sum = 0;
  const start = Math.max(0, kept.length - USED);
  for (let i = 0; i < start; i++) sum += kept[i] as number;
  const tail = kept.slice(start);
  if (tail.length < 5) return tail.reduce((total, term) => total + term, sum);
  return sum + levin(tail, start);
}

/** Levin's u transformation of the sum of `terms`, the first of which is term `before` + 1. */
function levin(terms: readonly number[], before: number): number {
  const order = terms.length - 1;
  let partial = 0;
  let above = 0;
  let below = 0;
  let binomial = 1;
  for (let j = 0; j <= order; j++) {
    const term = terms[j] as number;
    partial += term;
    const place = before + j + 1;
    const weight = (j % 2 === 0 ? 1 : -1) * binomial *
      (place / (before + order + 1)) ** (order - 1) / (place * term);
    above += weight * partial;
    below += weight;
    binomial *= (order - j) / (j + 1);
  }
  return below === 0 || !Number.isFinite(above / below) ? partial : above / below;
}
