/**
 * Makes heavy sound calls lighter, by size only and not by the clock, so that every run makes the
 * same calls: as many places to spoil, less to compute.
 *
 * @module
 */

/** An argument list. */
export type Args = readonly unknown[];

/** Sound calls of one function. */
export interface Sound {
  /** Called all the time. */
  readonly usual: readonly Args[];
  /** Called now and then: as the examples and notebooks do it. */
  readonly heavy: readonly Args[];
}

// deno-lint-ignore no-explicit-any
type Lightening = (...args: any[]) => Args;

/** Degree of polynomials that already has all there is to a panel. */
const DEGREE = 6;

/** What takes long is the caller's own formula: the first call, an example's, has a short one. */
const FORMULAS: readonly string[] = [
  ...["findRoot", "explainGap", "readingsThatTell", "sweep", "varianceShares"],
];

/** What a mild change doubles, the degree of polynomials, takes longer than a call may. */
const NEVER_HEAVY: readonly string[] = ["solvePanel"];

/** The same with less to compute. */
const LIGHT: Readonly<Record<string, Lightening>> = {
  monteCarlo: (formula, inputs, options) => [formula, inputs, { ...options, trials: 1000 }],
  monteCarloBatch: (formula, inputs, options) => [formula, inputs, { ...options, trials: 1000 }],
  ritzPanel: (panel) => [panel, DEGREE],
  solvePanel: (panel, ...rest) => rest.length === 0 ? [panel] : [panel, DEGREE],
  panelBuckling: (panel, forces) => [panel, forces, DEGREE],
  panelFrequencies: (panel, options) => [panel, { count: 2, ...options, degree: DEGREE }],
  panelField: (solution) => [solution, { x: 3, y: 3 }],
  judgePanel: (recipe, task) => [recipe, task, 3],
  varianceShares: (spreads, model, options) => [
    ...[spreads, model],
    { ...options, points: 32, repeats: 2 },
  ],
  learnFibreFraction: (weighed, ...rest) => [weighed.slice(0, 4), ...rest],
  learnArealWeight: (records, ...rest) => [records.slice(0, 4), ...rest],
  learnFromBeams: (beams, options) => [beams.slice(0, 1), { ...options, checks: false }],
  learnFromRecords: ({ weighings, loadTests, ...rest }, options) => {
    const { specimen } = loadTests[0];
    return [
      {
        ...rest,
        weighings: weighings.filter(({ part }: { part: string }) => part === specimen),
        loadTests: loadTests.filter((test: { specimen: string }) => test.specimen === specimen),
      },
      { ...options, checks: false },
    ];
  },
};

/** Most entries of a list that a figure is drawn of. */
const ENTRIES = 12;

/** Sound calls of a function, the heavy ones apart. */
export function soundCalls(name: string, calls: readonly Args[]): Sound {
  const known = FORMULAS.includes(name) ? calls.slice(0, 1) : calls;
  const lighter = LIGHT[name] ?? (name.endsWith("Figure") ? shortened : undefined);
  if (lighter === undefined) return { usual: known, heavy: [] };
  return {
    usual: known.map((args) => lighter(...args)),
    heavy: NEVER_HEAVY.includes(name) ? [] : known,
  };
}

function shortened(...args: Args): Args {
  return args.map(shorter);
}

function shorter(value: unknown): unknown {
  if (Array.isArray(value)) return value.slice(0, ENTRIES).map(shorter);
  const isRecord = typeof value === "object" && value !== null &&
    Object.getPrototypeOf(value) === Object.prototype;
  return isRecord
    ? Object.fromEntries(Object.entries(value).map(([key, entry]) => [key, shorter(entry)]))
    : value;
}
