import { checksFor } from "../check/mod.ts";
import { checkReadings } from "./_fit.ts";
import { fProbability } from "./fisher_f.ts";
import type { Readings } from "./line_fit.ts";

const check = checksFor("look for slipped readings");

/** One thing that went wrong between two readings. */
export interface Slip {
  /** One reading that is off, or all from there on: an instrument that slipped. */
  readonly kind: "reading" | "step";
  /** Place in the list, from 0: of the reading, or of the first after the step [1]. */
  readonly index: number;
  /** How far off: what was read less what belonged there [unit of y]. */
  readonly size: number;
  /** Standard uncertainty of the size [unit of y]. */
  readonly u: number;
  /** Probability of so large a slip anywhere by scatter alone, at most [1]. */
  readonly chance: number;
}

/** What may be said of the search. */
export interface SlipOptions {
  /** Largest chance at which a slip is told; 0.01 unless said [1]. */
  readonly chance?: number;
  /** Most slips to tell; 3 unless said [1]. */
  readonly most?: number;
}

/**
 * Slipped readings of a straight line: single ones that are off, and steps after which all are.
 *
 * Formula: of all single readings and steps the one that lowers the squares most, F = Δ/(SSE/ν);
 * its chance times the number of candidates (Bonferroni); again with it in the fit, while it tells
 *
 * Range: readings in the order taken, six or more, on a straight line. Several mistakes at once can
 * hide each other: look at `robustLine`, too.
 *
 * Source: Draper and Smith, Applied Regression Analysis (extra sum of squares), from memory.
 *
 * @param readings x and y, of one length, in the order taken.
 * @param options Chance allowed, and how many to tell.
 * @returns The slips, the surest first; the readings stay as they are.
 * @throws {InputError} If there are fewer than six readings, all at one x, or an entry is not a
 * finite number.
 *
 * @example The gauge slipped by 0.5 before the fifth reading
 * ```ts
 * import { findSlips } from "@laminate/notebooks/statistics";
 * import { assertEquals } from "@std/assert";
 *
 * const y = [0, 1.02, 1.99, 3.01, 4.49, 5.52, 6.5, 7.48];
 * const [slip] = findSlips({ x: [0, 1, 2, 3, 4, 5, 6, 7], y });
 * assertEquals([slip!.kind, slip!.index], ["step", 4]);
 * ```
 */
export function findSlips(readings: Readings, options: SlipOptions = {}): readonly Slip[] {
  const count = checkReadings(check, readings);
  if (count < 6) check.refuse("number of readings", count, "must be 6 or more");
  const { chance = 0.01, most = 3 } = check.object("options", options);
  check.fraction("chance", chance);
  check.count("most slips", most, 1);
  const basis = [unitVector(Float64Array.from({ length: count }, () => 1), [])];
  const along = unitVector(Float64Array.from(readings.x), basis);
  if (along === undefined) {
    check.refuse("x", readings.x, "must differ: all readings stand at one x");
  }
  basis.push(along);
  const slips: Slip[] = [];
  while (slips.length < most && count - basis.length >= 3) {
    const found = surest(readings, basis as Float64Array[]);
    if (found === undefined || !(found.slip.chance <= chance)) break;
    slips.push(found.slip);
    basis.push(found.direction);
  }
  return slips;
}

/** What is left of a vector beside the basis, of length 1; nothing where rounding is left. */
function unitVector(
  vector: Float64Array,
  basis: readonly (Float64Array | undefined)[],
): Float64Array | undefined {
  const whole = Math.sqrt(dot(vector, vector));
  // Twice, since once leaves rounding along the basis.
  for (const axis of [...basis, ...basis]) {
    const share = dot(vector, axis!);
    for (let i = 0; i < vector.length; i++) vector[i]! -= share * axis![i]!;
  }
  const length = Math.sqrt(dot(vector, vector));
  if (!(length > 1e-9 * whole)) return undefined;
  return vector.map((entry) => entry / length);
}

/** The candidate that lowers the squares most, with its direction beside the fit so far. */
function surest(
  { y }: Readings,
  basis: readonly Float64Array[],
): { slip: Slip; direction: Float64Array } | undefined {
  const count = y.length;
  const residual = Float64Array.from(y);
  for (const axis of [...basis, ...basis]) {
    const share = dot(residual, axis);
    for (let i = 0; i < count; i++) residual[i]! -= share * axis[i]!;
  }
  const squares = dot(residual, residual);
  let best:
    | { kind: Slip["kind"]; index: number; direction: Float64Array; lowered: number }
    | undefined;
  let candidates = 0;
  for (const kind of ["reading", "step"] as const) {
    // A step before the first or the last reading is one reading that is off.
    const [first, last] = kind === "reading" ? [0, count - 1] : [2, count - 2];
    for (let index = first; index <= last; index++) {
      const direction = unitVector(pattern(kind, index, count), basis);
      if (direction === undefined) continue;
      candidates++;
      const lowered = dot(residual, direction) ** 2;
      if (best === undefined || lowered > best.lowered) best = { kind, index, direction, lowered };
    }
  }
  // Rounding is left where the fit is exact: then nothing can have slipped.
  const rounding = 1e-28 * dot(Float64Array.from(y), Float64Array.from(y));
  if (best === undefined || !(squares > rounding)) return undefined;
  const { kind, index, direction, lowered } = best;
  const dof = count - basis.length - 1;
  const variance = Math.max(squares - lowered, rounding) / dof;
  const F = lowered / variance;
  const alone = fProbability(1 / F, { numerator: dof, denominator: 1 });
  const reach = dot(pattern(kind, index, count), direction);
  return {
    direction,
    slip: {
      ...{ kind, index },
      size: dot(residual, direction) / reach,
      u: Math.sqrt(variance) / Math.abs(reach),
      chance: Math.min(1, candidates * alone),
    },
  };
}

function pattern(kind: Slip["kind"], index: number, count: number): Float64Array {
  const vector = new Float64Array(count);
  if (kind === "reading") vector[index] = 1;
  else vector.fill(1, index);
  return vector;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
