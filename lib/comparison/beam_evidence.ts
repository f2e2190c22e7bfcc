import { checksFor, type Fields } from "../check/mod.ts";
import type { Loading, LoadTestRecord, WeighingRecord } from "../records/mod.ts";
import { type BeamLoadCase, beamLoadCases } from "../sandwich/mod.ts";
import type { Correlation, Propagated, Uncertain } from "../statistics/mod.ts";
import { type BendingTestRead, readBendingTest } from "./bending_test.ts";
import { FIBRE_FRACTION } from "./input_names.ts";
import type { KnownOfPart } from "./layup_inputs.ts";
import type { PlannedBeam } from "./predicted_bending.ts";
import { type WeighedRecord, weighedRecord } from "./weighed_parts.ts";

const check = checksFor("read the beam's tests");

/** How carefully a beam was measured: one standard uncertainty each. */
export interface MeasuringCare {
  /** Smallest step of the gauge; 0.01 mm if left out [m]. */
  readonly gaugeStep?: number;
  /** Of each span; 0.5 mm if left out [m]. */
  readonly uSpan?: number;
  /** Of the width; 0.2 mm if left out [m]. */
  readonly uWidth?: number;
  /** Of the thickness; 0.05 mm if left out [m]. */
  readonly uThickness?: number;
}

/** A beam's tests as read, with what is known of the beam. */
export interface BeamEvidence {
  /** Its name. */
  readonly part: string;
  /** Its tests. */
  readonly tests: readonly LoadTestRecord[];
  /** What each test says. */
  readonly read: readonly BendingTestRead[];
  /** Slope of each test with its own uncertainty; that of gauge and weights is not in it [m/N]. */
  readonly measured: readonly Uncertain[];
  /** The beam as it can be predicted, weighed fibre fraction and thickness included. */
  readonly beam: PlannedBeam;
  /**
   * How the weighed fibre fraction goes with each cloth's areal weight, both inputs of the beam's
   * prediction: heavier cloth than assumed is more fibre and less resin. Empty where the cloth was
   * weighed dry, or the part was not weighed.
   */
  readonly correlations: readonly Correlation[];
  /** Its weighing; null if there is none. */
  readonly weighed: WeighedRecord | null;
  /** Why its core is no evidence of the core in the schedule; null where it is. */
  readonly otherCore: string | null;
}

const TEST: Fields = {
  ...{ test: "text", specimen: "text", loading: "text" },
  ...{ span: "positive", width: "positive", thickness: "positive", layup: "object" },
};

const LOAD_CASES: Readonly<Record<Loading, BeamLoadCase>> = {
  "three-point": beamLoadCases.threePoint,
  "quarter-point": beamLoadCases.fourPointQuarter,
  "third-point": beamLoadCases.fourPointThird,
  "cantilever": beamLoadCases.cantileverTip,
};

/**
 * The load case of a record's loading.
 *
 * Formula: a table
 *
 * Range: the loadings that records know.
 *
 * Source: as `beamLoadCases`.
 *
 * @param loading How a specimen was loaded.
 * @returns The load case.
 * @throws {InputError} If the loading is not known.
 *
 * @example
 * ```ts
 * import { loadCaseOf } from "@laminate/notebooks/comparison";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(loadCaseOf("quarter-point").loadSpanFraction, 0.5);
 * ```
 */
export function loadCaseOf(loading: Loading): BeamLoadCase {
  check.oneOf("loading", loading, Object.keys(LOAD_CASES) as Loading[]);
  return LOAD_CASES[loading];
}

/**
 * Everything that a beam's tests and its weighing say, ready to be compared and learned from.
 *
 * Formula: slopes by `readBendingTest`, u(C) √(ν/(ν − 2)) for few readings and no finer than the
 * gauge; fibre fraction by `weighedRecord` unless its verdict is "mistake"
 *
 * Range: tests of one specimen. A core that the weighing calls light or heavy is not the core of the
 * schedule: its tests still speak of the faces.
 *
 * Source: JCGM 101:2008, 6.4.9 (deviation of Student's t).
 *
 * @param tests The specimen's tests, from its records.
 * @param weighing The specimen on the scale, if it was weighed.
 * @param care How carefully it was measured.
 * @returns The evidence of one beam.
 * @throws {InputError} If there is no test, tests are of several specimens, or a test cannot be read.
 *
 * @example
 * ```ts
 * import { beamEvidence } from "@laminate/notebooks/comparison";
 * import { readPart } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const { loadTests, weighings } = await readPart("data/sole-panels");
 * const of = (name: string) => loadTests!.filter(({ specimen }) => specimen === name);
 * const weighing = weighings!.find(({ part }) => part === "beam 3");
 * assertEquals(beamEvidence(of("beam 3"), weighing).otherCore?.startsWith("Light core"), true);
 * ```
 */
export function beamEvidence(
  tests: readonly LoadTestRecord[],
  weighing?: WeighingRecord,
  care: MeasuringCare = {},
): BeamEvidence {
  check.shape("tests", tests, [TEST]);
  const first = check.list("tests", tests)[0]!;
  const { gaugeStep = 1e-5, uSpan = 5e-4, uWidth = 2e-4, uThickness = 5e-5 } = check.object(
    "care",
    care,
  );
  for (const [name, u] of Object.entries({ gaugeStep, uSpan, uWidth, uThickness })) {
    check.nonNegative(name, u, "m");
  }
  for (const test of tests) {
    if (test.specimen !== first.specimen) {
      check.refuse("specimen", test.specimen, `must be ${first.specimen} in all tests of one beam`);
    }
  }
  const weighed = weighing === undefined ? null : weighedRecord(weighing);
  const fraction = weighed === null || weighed.weighed.verdict === "mistake"
    ? null
    : weighed.weighed.fibreVolumeFraction;
  const known: KnownOfPart = {
    thickness: { value: first.thickness, u: uThickness },
    ...(fraction === null ? {} : { fibreFraction: { value: fraction.value, u: fraction.u } }),
  };
  const read = tests.map((test) => readBendingTest({ ...test, resolution: gaugeStep }));
  return {
    ...{ part: first.specimen, tests, read, weighed },
    measured: read.map((entry, i) => slopeOf(entry, tests[i]!, gaugeStep)),
    beam: {
      layup: weighing?.layup ?? first.layup,
      width: { value: first.width, u: uWidth },
      known,
      tests: tests.map(({ test, loading, span }) => ({
        test,
        loadCase: loadCaseOf(loading),
        span: { value: span, u: uSpan },
      })),
    },
    correlations: fraction === null ? [] : withArealWeights(fraction),
    otherCore: weighed?.notes.find((note) => /^(?:Light|Heavy) core/.test(note)) ?? null,
  };
}

/** Correlation of a weighed fibre fraction with the areal weights that it rests on. */
function withArealWeights({ u, budget }: Propagated<string>): readonly Correlation[] {
  return budget.flatMap(({ name, contribution }): readonly Correlation[] =>
    name.startsWith("areal weight of ") && contribution !== 0
      ? [{ between: [FIBRE_FRACTION, name], coefficient: contribution / u }]
      : []
  );
}

/** The slope, its u widened for few readings, and no finer than the gauge's steps. */
function slopeOf(
  { fit, used }: BendingTestRead,
  { load }: LoadTestRecord,
  gaugeStep: number,
): Uncertain {
  const loads = used.map((i) => load[i]!);
  const mean = loads.reduce((sum, value) => sum + value, 0) / loads.length;
  const spread = loads.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const few = fit.dof > 2 ? Math.sqrt(fit.dof / (fit.dof - 2)) : 3;
  const finest = gaugeStep / Math.sqrt(12 * spread);
  return { value: fit.slope.value, u: Math.max(few * fit.slope.u, finest) };
}
