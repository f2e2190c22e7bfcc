import { checksFor } from "../check/mod.ts";

const check = checksFor("try one input at a time");

/** The range of an input. */
export interface InputRange {
  /** Lower end [unit of the input]. */
  readonly low: number;
  /** Likely value [unit of the input]. */
  readonly base: number;
  /** Upper end [unit of the input]. */
  readonly high: number;
}

/** What one input does to the result. */
export interface InputEffect {
  /** Name of the input. */
  readonly name: string;
  /** Result with the input at its lower end [unit of the result]. */
  readonly atLow: number;
  /** Result with the input at its upper end [unit of the result]. */
  readonly atHigh: number;
  /** Distance between the two, a magnitude [unit of the result]. */
  readonly swing: number;
  /** Relative change of the result over relative change of the input, across its range [1]. */
  readonly elasticity: number;
}

/**
 * Which input matters, one at a time: each goes to both ends of its range while the others stay.
 *
 * Formula: swing = |f(high) − f(low)|; elasticity = (Δf/f)/(Δx/x) at the base
 *
 * Range: blind to inputs that only matter together: `varianceShares` sees those.
 *
 * Source: definition.
 *
 * @param ranges Range of each input.
 * @param model Result of the inputs' values.
 * @returns The base result, and inputs with the largest swing first.
 * @throws {InputError} If a range is not low ≤ base ≤ high or a result is no finite number.
 *
 * @example
 * ```ts
 * import { oneAtATime } from "@laminate/notebooks/study";
 * import { assertEquals } from "@std/assert";
 *
 * const ranges = { a: { low: 1, base: 2, high: 3 }, b: { low: 0, base: 5, high: 9 } };
 * const { effects } = oneAtATime(ranges, ({ a, b }) => 10 * a + b);
 * assertEquals(effects.map(({ name, swing }) => [name, swing]), [["a", 20], ["b", 9]]);
 * ```
 */
export function oneAtATime<K extends string>(
  ranges: Readonly<Record<K, InputRange>>,
  model: (values: Readonly<Record<K, number>>) => number,
): {
  /** Result with every input at its base [unit of the result]. */
  readonly base: number;
  /** What each input does, the largest swing first. */
  readonly effects: readonly InputEffect[];
} {
  check.object("ranges", ranges);
  if (typeof model !== "function") check.refuse("model", model, "must be a function of the inputs");
  const names = Object.keys(ranges) as K[];
  check.list("ranges", names);
  for (const name of names) checkRange(name, ranges[name]);
  const bases = Object.fromEntries(names.map((name) => [name, ranges[name].base])) as Record<
    K,
    number
  >;
  const run = (values: Readonly<Record<K, number>>): number =>
    check.result("result", model(values));
  const base = run(bases);
  const effects = names.map((name): InputEffect => {
    const { low, base: middle, high } = ranges[name];
    const atLow = run({ ...bases, [name]: low });
    const atHigh = run({ ...bases, [name]: high });
    const slope = high > low ? (atHigh - atLow) / (high - low) : 0;
    const elasticity = base === 0 ? 0 : slope * middle / base;
    return {
      name,
      atLow,
      atHigh,
      swing: check.result("swing", Math.abs(atHigh - atLow)),
      elasticity: check.result("elasticity", elasticity),
    };
  });
  return Object.freeze({ base, effects: effects.sort((a, b) => b.swing - a.swing) });
}

function checkRange(name: string, range: InputRange): void {
  check.object(name, range);
  check.finite(`low of ${name}`, range.low);
  check.finite(`base of ${name}`, range.base);
  check.finite(`high of ${name}`, range.high);
  if (!(range.low <= range.base && range.base <= range.high)) {
    check.refuse(`base of ${name}`, range.base, `must lie between ${range.low} and ${range.high}`);
  }
}
