import { checksFor } from "../check/mod.ts";
import { propagate, type Uncertain, updateParameters } from "../statistics/mod.ts";
import { checkGap } from "./_gap_checks.ts";
import type { Gap, SuspectInput } from "./explain_gap.ts";

const check = checksFor("say which reading would tell");

/** A reading that could be taken. */
export interface PlannedReading {
  /** What would be read, such as "the slope at a span of 1 m". */
  readonly reading: string;
  /** Standard uncertainty that it would have [SI]. */
  readonly u: number;
  /** What it would be for any values of the gap's inputs [SI]. */
  readonly predict: (inputs: Readonly<Record<string, number>>) => number;
}

/** What a reading would say of two explanations. */
export interface ReadingPower {
  /** The reading. */
  readonly reading: string;
  /** What to expect if the first explanation is right; u of the reading included [SI]. */
  readonly ifFirst: Uncertain;
  /** What to expect if the second is right [SI]. */
  readonly ifSecond: Uncertain;
  /** How far both lie apart, in standard deviations of what would be read [1]. */
  readonly evidence: number;
  /** "tells" from 3 on, "hints" from 1.5 on, "does not tell" below. */
  readonly verdict: "tells" | "hints" | "does not tell";
}

/** How wide an input is taken that is free to be wrong, in its own standard uncertainties [1]. */
const FREED = 30;

/**
 * Which reading would tell two explanations of a gap apart? Each in turn is taken for right: its
 * input is freed and fitted to what was measured, the other inputs within their ranges; then each
 * planned reading is predicted. Where the two predictions lie farthest apart, the reading tells.
 *
 * Formula: with mA, sA and mB, sB the reading to be expected under either, u its own uncertainty:
 * |mA − mB|/√((sA² + sB²)/2 + u²)
 *
 * Range: as `explainGap`; the expected evidence, not a promise: the reading itself decides.
 *
 * Source: optimal design between two models, Atkinson and Fedorov, Biometrika 62 (1975), from
 * memory; the update as `updateParameters`.
 *
 * @param gap Measured values, inputs and prediction, as for `explainGap`.
 * @param between Names of the two inputs that would explain the gap.
 * @param readings Readings that could be taken.
 * @returns Each reading with its expected evidence, the strongest first.
 * @throws {InputError} If a name is no input with an uncertainty, both are the same, there is no
 * reading, or one has no uncertainty.
 *
 * @example A long span would tell the faces from the core, another reading at the same span not
 * ```ts
 * import { readingsThatTell } from "@laminate/notebooks/comparison";
 * import { assertEquals } from "@std/assert";
 *
 * const slope = (bending: number, shear: number) =>
 *   ({ faces, core }: Readonly<Record<string, number>>) => bending / faces! + shear / core!;
 * const powers = readingsThatTell(
 *   {
 *     measured: [{ value: 1.2, u: 0.01 }],
 *     inputs: {
 *       faces: { value: 1, u: 0.2, reading: "" },
 *       core: { value: 1, u: 0.2, reading: "" },
 *     },
 *     predict: (inputs) => [slope(0.5, 0.5)(inputs)],
 *   },
 *   ["faces", "core"],
 *   [
 *     { reading: "the same again", u: 0.01, predict: slope(0.5, 0.5) },
 *     { reading: "a long span", u: 0.01, predict: slope(2, 0.5) },
 *   ],
 * );
 * assertEquals(powers[0]?.reading, "a long span");
 * assertEquals(powers[1]?.verdict, "does not tell");
 * ```
 */
export function readingsThatTell(
  gap: Gap,
  between: readonly [string, string],
  readings: readonly PlannedReading[],
): readonly ReadingPower[] {
  check.object("gap", gap);
  checkGap(check, gap);
  const [first, second] = check.list("names", between, 2) as readonly [string, string];
  for (const name of [first, second]) {
    if (!(gap.inputs[name] !== undefined && gap.inputs[name].u > 0)) {
      check.refuse("explanation", name, "must be an input with an uncertainty");
    }
  }
  if (first === second) check.refuse("second explanation", second, "must differ from the first");
  check.list("readings", readings).forEach((planned, i) => {
    check.shape(`reading ${i + 1}`, planned, { reading: "text", predict: "function" });
    check.positive(`uncertainty of ${planned.reading}`, planned.u);
  });
  const [one, other] = [first, second].map((name) => expectedIf(gap, name));
  return readings
    .map(({ reading, u, predict }): ReadingPower => {
      const [a, b] = [one!(predict), other!(predict)];
      const evidence = Math.abs(a.value - b.value) /
        Math.sqrt((a.u ** 2 + b.u ** 2) / 2 + u ** 2);
      return {
        reading,
        ifFirst: { value: a.value, u: Math.hypot(a.u, u) },
        ifSecond: { value: b.value, u: Math.hypot(b.u, u) },
        evidence: check.result("evidence", evidence),
        verdict: evidence >= 3 ? "tells" : evidence >= 1.5 ? "hints" : "does not tell",
      };
    })
    .toSorted((a, b) => b.evidence - a.evidence);
}

/** What to expect of any reading where one input was wrong and the measurements have corrected it. */
function expectedIf(gap: Gap, freed: string): (predict: PlannedReading["predict"]) => Uncertain {
  const entries = Object.entries(gap.inputs);
  const fixed = Object.fromEntries(entries.map(([name, { value }]) => [name, value]));
  const prior = Object.fromEntries(
    entries.filter(([, { u }]) => u > 0).map(([name, { value, u }]: [string, SuspectInput]) => [
      name,
      { value, u: name === freed ? FREED * u : u },
    ]),
  );
  const { parameters, correlations } = updateParameters(prior, {
    predict: (values) =>
      Object.fromEntries(
        gap.predict({ ...fixed, ...values }).map((value, i) => [String(i), value]),
      ),
    observed: Object.fromEntries(gap.measured.map((measured, i) => [String(i), measured])),
  });
  return (predict) => {
    const { value, u } = propagate(
      (values: Readonly<Record<string, number>>) => predict({ ...fixed, ...values }),
      parameters,
      { correlations },
    );
    return { value, u };
  };
}
