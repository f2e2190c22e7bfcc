import { checksFor, InputError } from "../check/mod.ts";

const check = checksFor("propagate the uncertainty");

/** A formula of several numbers with several results. */
export type VectorFunction = (values: readonly number[]) => readonly number[];

/** How each result answers to one input. */
export interface InputDerivatives {
  /** First derivative of each result; exactly 0 where it drowns in rounding. */
  readonly first: readonly number[];
  /** Each result with the input one u higher, then one u lower; missing where it is refused. */
  readonly atOneU: readonly (readonly number[] | undefined)[];
  /** Whether only one side of the value was accepted by the formula. */
  readonly oneSided: boolean;
  /** Whether the steps did not agree: a kink or a jump near the value. */
  readonly rough: boolean;
}

/** Share of the value that one step is, where the value is not near zero. */
const RELATIVE_STEP = 0.005;
/** Share of the uncertainty that one step is at least: a value of zero has no other scale. */
const UNCERTAINTY_STEP = 0.01;
/** How often a step is cut to a quarter before one side is tried; beyond, rounding takes over. */
const CUTS = 6;

/** Weights of finite differences of order 8 (Fornberg, Math. Comp. 51, 1988, from memory). */
const CENTRAL = { offsets: [-4, -3, -2, -1, 1, 2, 3, 4] };
const CENTRAL_8 = [1 / 280, -4 / 105, 1 / 5, -4 / 5, 4 / 5, -1 / 5, 4 / 105, -1 / 280];
const CENTRAL_6 = [0, -1 / 60, 3 / 20, -3 / 4, 3 / 4, -3 / 20, 1 / 60, 0];
const SIDE = { offsets: [0, 1, 2, 3, 4, 5, 6, 7, 8] };
const SIDE_8 = [-761 / 280, 8, -14, 56 / 3, -35 / 2, 56 / 5, -14 / 3, 8 / 7, -1 / 8];
const SIDE_6 = [-49 / 20, 6, -15 / 2, 20 / 3, -15 / 4, 6 / 5, -1 / 6, 0, 0];

/** Derivatives of a formula by one input, by differences of order 8 that watch each other. */
export function derivativesBy(
  f: VectorFunction,
  input: {
    readonly values: readonly number[];
    readonly index: number;
    readonly name: string;
    readonly u: number;
  },
): InputDerivatives {
  const { values, index, name, u } = input;
  const value = values[index]!;
  const step = Math.max(RELATIVE_STEP * Math.abs(value), UNCERTAINTY_STEP * u) || 1e-3;
  const at = (offset: number): readonly number[] | undefined =>
    tryAt(f, values.with(index, value + offset));
  let best: Stencil | undefined;
  for (const direction of [0, 1, -1] as const) {
    for (let cut = 0; cut <= CUTS; cut++) {
      const found = readStencil(at, step / 4 ** cut, direction);
      if (found === undefined) continue;
      if (best === undefined || found.disagreement < best.disagreement) best = found;
      if (found.disagreement < 1e-7) break;
    }
    if (best !== undefined) break;
  }
  return best === undefined
    ? check.refuse(name, value, "must leave room to vary it: the formula refuses both sides")
    : {
      first: best.first,
      atOneU: [at(u), at(-u)],
      oneSided: best.direction !== 0,
      rough: best.disagreement > 1e-5,
    };
}

/** Readings around a value with what they say. */
interface Stencil {
  readonly direction: 0 | 1 | -1;
  readonly first: readonly number[];
  /** Largest relative difference between the orders 8 and 6. */
  readonly disagreement: number;
}

function readStencil(
  at: (offset: number) => readonly number[] | undefined,
  h: number,
  direction: 0 | 1 | -1,
): Stencil | undefined {
  const readings: (readonly number[])[] = [];
  for (const offset of (direction === 0 ? CENTRAL : SIDE).offsets) {
    const reading = at((direction || 1) * offset * h);
    if (reading === undefined) return undefined;
    readings.push(reading);
  }
  const [high, low] = direction === 0 ? [CENTRAL_8, CENTRAL_6] : [SIDE_8, SIDE_6];
  let disagreement = 0;
  const first = readings[0]!.map((_, result) => {
    const [fine, coarse] = [weigh(readings, high, result), weigh(readings, low, result)];
    const rounding = roundingOf(readings, result);
    const gap = Math.abs(fine - coarse);
    if (gap > rounding) disagreement = Math.max(disagreement, gap / Math.abs(fine));
    return Math.abs(fine) <= rounding ? 0 : (fine / h) * (direction || 1);
  });
  return { direction, first, disagreement };
}

function weigh(
  readings: readonly (readonly number[])[],
  weights: readonly number[],
  result: number,
): number {
  return readings.reduce((sum, reading, i) => sum + weights[i]! * reading[result]!, 0);
}

/** What rounding in the formula can make of a difference: a few units in the last place. */
function roundingOf(readings: readonly (readonly number[])[], result: number): number {
  return 8 * Number.EPSILON * Math.max(...readings.map((reading) => Math.abs(reading[result]!)));
}

/** The formula's results, or nothing where it refuses the input. */
function tryAt(f: VectorFunction, values: readonly number[]): readonly number[] | undefined {
  try {
    return f(values);
  } catch (error) {
    if (error instanceof InputError) return undefined;
    throw error;
  }
}
