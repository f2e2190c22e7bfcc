import { checksFor } from "../check/mod.ts";
import { normalQuantile } from "./normal.ts";
import { checkInside } from "./_probability.ts";
import { studentTQuantile } from "./student_t.ts";
import { checkUncertain, effectiveDof, LIMIT_DIVISOR } from "./_uncertain.ts";

const check = checksFor("state the uncertainty");

/** A value with its standard uncertainty. */
export interface Uncertain {
  /** Best estimate [any unit]. */
  readonly value: number;
  /** Standard uncertainty: one standard deviation [unit of the value]. */
  readonly u: number;
}

/** What is believed of a value between two limits. */
export type LimitShape = "rectangular" | "triangular" | "arcsine";

/** A value with uncertainty, as an input that may be drawn at random. */
export interface UncertainInput extends Uncertain {
  /** Degrees of freedom behind u; left out where u is as good as known [1]. */
  readonly dof?: number;
  /** How the value is spread; normal unless said, Student's t where there are dof. */
  readonly shape?: "normal" | LimitShape;
}

/**
 * Standard uncertainty of a value known to lie within a half-width on both sides.
 *
 * Formula: u = a/√3 where any place is as likely, a/√6 where the middle is likelier, a/√2 where the
 * value swings between its limits
 *
 * Range: half-width 0 or above.
 *
 * Source: JCGM 100:2008 (GUM), 4.3.7 and 4.3.9; H.1.3.4 for the arcsine.
 *
 * @param value Best estimate: the middle [any unit].
 * @param halfWidth Distance a from the middle to either limit [unit of the value].
 * @param shape What is believed between the limits; rectangular unless said.
 * @returns The value with its standard uncertainty and shape.
 * @throws {InputError} If the value is not a finite number, the half-width is negative or the shape
 * is not one of the three.
 *
 * @example A scale that shows whole grams
 * ```ts
 * import { fromHalfWidth } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(fromHalfWidth(0.412, 0.0005).u, 0.00028867513459481288, 1e-16);
 * ```
 */
export function fromHalfWidth(
  value: number,
  halfWidth: number,
  shape: LimitShape = "rectangular",
): UncertainInput {
  check.finite("value", value);
  check.nonNegative("half-width", halfWidth);
  check.oneOf("shape", shape, ["rectangular", "triangular", "arcsine"]);
  return { value, u: halfWidth / LIMIT_DIVISOR[shape], shape };
}

/**
 * Middle of a range with the standard uncertainty of a value that may lie anywhere in it.
 *
 * Formula: value = (low + high)/2, u = (high − low)/√12
 *
 * Range: high not below low.
 *
 * Source: JCGM 100:2008 (GUM), 4.3.7.
 *
 * @param range The two ends [any unit].
 * @returns The middle with its standard uncertainty, rectangular.
 * @throws {InputError} If an end is not a finite number or they are the wrong way round.
 *
 * @example
 * ```ts
 * import { fromRange } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const modulus = fromRange({ low: 70e9, high: 76e9 });
 * assertAlmostEquals(modulus.value / 1e9, 73, 1e-12);
 * assertAlmostEquals(modulus.u / 1e9, Math.sqrt(3), 1e-12);
 * ```
 */
export function fromRange(range: { readonly low: number; readonly high: number }): UncertainInput {
  const { low, high } = check.object("range", range);
  check.finite("low end", low);
  check.finite("high end", high);
  if (!(high >= low)) check.refuse("high end", high, `must not be below the low end ${low}`);
  return { value: low + (high - low) / 2, u: (high - low) / Math.sqrt(12), shape: "rectangular" };
}

/**
 * One uncertainty from several independent parts of it: scale, tare and repeat of one weighing.
 *
 * Formula: u² = Σ ui²; ν = u⁴/Σ(ui⁴/νi)
 *
 * Range: any number of parts, in the unit of the value; parts without dof count as known.
 *
 * Source: JCGM 100:2008 (GUM), 5.1.2 and G.4.1 (Welch–Satterthwaite).
 *
 * @param value Best estimate [any unit].
 * @param parts Standard uncertainty of each part [unit of the value], with dof where it has one.
 * @returns The value with the combined uncertainty, and dof where a part has one.
 * @throws {InputError} If the value is not a finite number, a u is negative or a dof not above 0.
 *
 * @example
 * ```ts
 * import { combineParts } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const mass = combineParts(0.412, [{ u: 3e-4, dof: 9 }, { u: 4e-4 }]);
 * assertAlmostEquals(mass.u, 5e-4, 1e-15);
 * assertAlmostEquals(mass.dof!, 9 * (5 / 3) ** 4, 1e-9);
 * ```
 */
export function combineParts(
  value: number,
  parts: readonly { readonly u: number; readonly dof?: number }[],
): UncertainInput {
  check.finite("value", value);
  check.list("parts", parts, 1);
  parts.forEach((part, i) => {
    check.object(`part ${i}`, part);
    check.nonNegative(`uncertainty of part ${i}`, part.u);
    if (part.dof !== undefined) check.positive(`degrees of freedom of part ${i}`, part.dof);
  });
  const u = check.result("combined uncertainty", Math.hypot(...parts.map((part) => part.u)));
  const dof = effectiveDof(u, parts.map(({ u, dof }) => ({ share: u, dof })));
  return { value, u, ...(dof === undefined ? {} : { dof }) };
}

/** An interval that should hold the true value at a stated rate. */
export interface Coverage {
  /** Multiple of u on each side [1]. */
  readonly factor: number;
  /** Half the length of the interval: factor times u [unit of the value]. */
  readonly U: number;
  /** Lower end [unit of the value]. */
  readonly low: number;
  /** Upper end [unit of the value]. */
  readonly high: number;
}

/**
 * Interval for a value at a level of confidence, with Student's t where u rests on few readings.
 *
 * Formula: value ± t(½ + level/2, ⌊ν⌋) u; the normal quantile where ν is not given
 *
 * Range: level above 0 and below 1; ν 1 or above, cut to a whole number before t is looked up.
 *
 * Source: JCGM 100:2008 (GUM), G.3 and G.4.1.
 *
 * @param uncertain The value with u and, where it has them, degrees of freedom.
 * @param level Share of such intervals that hold the truth; 0.95 unless said [1].
 * @returns Factor, half-length and ends.
 * @throws {InputError} If u is negative, the level is not inside 0 to 1 or dof is below 1.
 *
 * @example
 * ```ts
 * import { coverage } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(coverage({ value: 10, u: 1, dof: 16.75 }, 0.99).U, 2.92078162, 1e-8);
 * ```
 */
export function coverage(uncertain: UncertainInput, level = 0.95): Coverage {
  const { value, u, dof } = checkUncertain(check, "uncertain value", uncertain);
  checkInside(check, level, "level");
  if (dof !== undefined) check.within("degrees of freedom", dof, { min: 1, max: Number.MAX_VALUE });
  const factor = dof === undefined
    ? normalQuantile(0.5 + level / 2)
    : studentTQuantile(0.5 + level / 2, Math.floor(dof));
  const U = factor * u;
  return check.results({ factor, U, low: value - U, high: value + U });
}
