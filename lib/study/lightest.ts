import { checksFor } from "../check/mod.ts";

const check = checksFor("choose the best that will do");

/** A limit that a figure has to keep. */
export interface FigureLimit {
  /** Name of the figure. */
  readonly figure: string;
  /** Largest value that will do [unit of the figure]. */
  readonly max?: number;
  /** Smallest value that will do [unit of the figure]. */
  readonly min?: number;
}

/** How a limit stands with the candidate chosen. */
export interface LimitState extends FigureLimit {
  /** Value of the figure [unit of the figure]. */
  readonly value: number;
  /** What is left to the limit as a share of it; 0 at the limit [1]. */
  readonly margin: number;
}

/** What was chosen and why. */
export interface BestChoice<T> {
  /** The candidate chosen; none if no candidate keeps all limits. */
  readonly chosen: T | undefined;
  /** Its place among the candidates; -1 if none. */
  readonly index: number;
  /** The limits with it, the tightest first; empty if none. */
  readonly limits: readonly LimitState[];
  /** How many candidates keep all limits. */
  readonly feasible: number;
  /** For each limit, how many candidates it alone rules out. */
  readonly ruledOut: readonly {
    /** The limit. */
    readonly limit: FigureLimit;
    /** How many candidates break it. */
    readonly breaking: number;
    /** How many candidates break it and no other. */
    readonly alone: number;
  }[];
}

/** A candidate as figures by name. */
export type Figures = Readonly<Record<string, number>>;

/**
 * The candidate with the least of one figure (the lightest, the cheapest) that keeps all limits,
 * with what stood in the way of lighter ones.
 *
 * Formula: least of the figure over those with min ≤ value ≤ max for every limit; of equal ones
 * the first
 *
 * Range: any list of candidates.
 *
 * Source: definition.
 *
 * @param candidates Candidates; `figuresOf` gives their figures.
 * @param figuresOf Figures of a candidate.
 * @param aim Figure to keep small, and limits.
 * @returns The choice, margins, and how many candidates each limit rules out.
 * @throws {InputError} If a figure is missing or no number, or a limit has neither min nor max.
 *
 * @example
 * ```ts
 * import { lightest } from "@laminate/notebooks/study";
 * import { assertEquals } from "@std/assert";
 *
 * const stacks = [{ mass: 3, bend: 2 }, { mass: 2, bend: 4 }, { mass: 1, bend: 9 }];
 * const aim = { least: "mass", limits: [{ figure: "bend", max: 5 }] };
 * assertEquals(lightest(stacks, (stack) => stack, aim).chosen, { mass: 2, bend: 4 });
 * ```
 */
export function lightest<T>(
  candidates: readonly T[],
  figuresOf: (candidate: T) => Figures,
  aim: {
    /** Figure to keep small. */
    readonly least: string;
    /** Limits to keep. */
    readonly limits: readonly FigureLimit[];
  },
): BestChoice<T> {
  check.list("candidates", candidates, 0);
  check.object("aim", aim);
  if (typeof figuresOf !== "function") {
    check.refuse("figuresOf", figuresOf, "must be a function of a candidate");
  }
  check.list("limits", aim.limits, 0);
  aim.limits.forEach(checkLimit);
  const figure = (figures: Figures, name: string, i: number): number =>
    check.finite(`${name} of candidate ${i + 1}`, figures[name] as number);
  const breaking = aim.limits.map(() => 0);
  const alone = aim.limits.map(() => 0);
  let [index, best, feasible] = [-1, Infinity, 0];
  candidates.forEach((candidate, i) => {
    const figures = check.object(`figures of candidate ${i + 1}`, figuresOf(candidate));
    const broken: number[] = [];
    aim.limits.forEach((limit, k) => {
      if (!keeps(limit, figure(figures, limit.figure, i))) broken.push(k);
    });
    for (const k of broken) breaking[k]! += 1;
    if (broken.length === 1) alone[broken[0]!]! += 1;
    if (broken.length > 0) return;
    feasible++;
    const value = figure(figures, aim.least, i);
    if (value < best) [index, best] = [i, value];
  });
  const chosen = index < 0 ? undefined : candidates[index];
  return Object.freeze({
    chosen,
    index,
    limits: chosen === undefined ? [] : limitStates(aim.limits, figuresOf(chosen)),
    feasible,
    ruledOut: aim.limits.map((limit, k) => ({
      limit,
      breaking: breaking[k] ?? 0,
      alone: alone[k] ?? 0,
    })),
  });
}

function checkLimit(limit: FigureLimit, k: number): void {
  check.object(`limit ${k + 1}`, limit);
  if (limit.max === undefined && limit.min === undefined) {
    check.refuse(`limit ${k + 1}`, limit.figure, "must have a min or a max");
  }
  if (limit.max !== undefined) check.finite(`max of ${limit.figure}`, limit.max);
  if (limit.min !== undefined) check.finite(`min of ${limit.figure}`, limit.min);
}

function keeps({ max, min }: FigureLimit, value: number): boolean {
  return (max === undefined || value <= max) && (min === undefined || value >= min);
}

function limitStates(limits: readonly FigureLimit[], figures: Figures): readonly LimitState[] {
  return limits.map((limit) => {
    const value = figures[limit.figure] ?? 0;
    const size = (bound: number): number => bound === 0 ? 1 : Math.abs(bound);
    const margins = [
      ...(limit.max === undefined ? [] : [(limit.max - value) / size(limit.max)]),
      ...(limit.min === undefined ? [] : [(value - limit.min) / size(limit.min)]),
    ];
    return { ...limit, value, margin: Math.min(...margins) };
  }).sort((a, b) => a.margin - b.margin);
}
