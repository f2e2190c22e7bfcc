import { checksFor } from "../check/mod.ts";
import type { LayupRecord } from "../records/mod.ts";
import {
  beamCompliance,
  type BeamLoadCase,
  type BeamSection,
  sectionFromStack,
} from "../sandwich/mod.ts";
import { type Propagated, propagateTogether, type Uncertain } from "../statistics/mod.ts";
import { type KnownOfPart, layupModel, type PredictionInput } from "./layup_inputs.ts";
import { LOAD_CASE, MEASURED } from "./_shape.ts";

const check = checksFor("predict a bending test");

/** A bending test that is to be predicted. */
export interface PlannedTest {
  /** Its name. */
  readonly test: string;
  /** How the beam is held and loaded. */
  readonly loadCase: BeamLoadCase;
  /** Support span [m]. */
  readonly span: Uncertain;
}

/** A beam cut from a lay-up, and how it is tested. */
export interface PlannedBeam {
  /** The lay-up schedule, materials filled in. */
  readonly layup: LayupRecord;
  /** Width of the beam [m]. */
  readonly width: Uncertain;
  /** The tests. */
  readonly tests: readonly PlannedTest[];
  /** What was weighed or measured of the part [SI]. */
  readonly known?: KnownOfPart;
}

/** What a lay-up schedule says of a beam's tests. */
export interface PredictedBending {
  /** Deflection over total load of each test, with its budget [m/N]. */
  readonly compliances: readonly Propagated<string>[];
  /** The section at the middle of every input. */
  readonly section: BeamSection;
  /** Inputs of the prediction by name. */
  readonly inputs: Readonly<Record<string, PredictionInput>>;
  /** The compliances as a pure function of the inputs, in the order of the tests [m/N]. */
  readonly predict: (values: Readonly<Record<string, number>>) => readonly number[];
  /** The section as a pure function of the same inputs. */
  readonly sectionAt: (values: Readonly<Record<string, number>>) => BeamSection;
  /** Where the equations come from. */
  readonly source: string;
}

const WIDTH = "width of the beam";

/**
 * Deflection per load of a beam cut from a lay-up, with the uncertainty of every material, of
 * the fibre fraction and of the test set-up carried through.
 *
 * Formula: cloth, resin and Vf → plies → section D, S → C = kb L³/D + ks L/S; u by propagation
 *
 * Range: a stack with one core; a solid laminate is refused.
 *
 * Source: as `curedPly`, `sectionFromStack`; ASTM D7250 (deflection), JCGM 100:2008, 5.1.
 *
 * @param beam Lay-up, width and span with standard uncertainties [m], what is known of the part.
 * @returns Compliances [m/N] with budgets, section, inputs and the prediction as a function.
 * @throws {InputError} If there is no test, or the lay-up makes no sandwich beam.
 *
 * @example
 * ```ts
 * import { predictBending } from "@laminate/notebooks/comparison";
 * import { InputError } from "@laminate/notebooks/check";
 * import { assertThrows } from "@std/assert";
 *
 * const layup = { name: "empty", layers: [] };
 * assertThrows(
 *   () => predictBending({ layup, width: { value: 0.06, u: 0 }, tests: [] }),
 *   InputError,
 *   "tests",
 * );
 * ```
 */
export function predictBending(beam: PlannedBeam): PredictedBending {
  check.object("beam", beam);
  const { layup, width, tests, known } = beam;
  check.list("tests", tests);
  check.shape("tests", tests, [{ test: "text", loadCase: LOAD_CASE, span: MEASURED }]);
  check.shape("width", width, MEASURED);
  const model = layupModel(layup, known);
  const spanName = ({ test }: PlannedTest): string => `span of ${test}`;
  const inputs: Readonly<Record<string, PredictionInput>> = {
    ...model.inputs,
    [WIDTH]: {
      ...width,
      dimension: "length",
      source: "measured",
      reading: "measure the width with callipers",
    },
    ...Object.fromEntries(tests.map((test) => [spanName(test), {
      ...test.span,
      dimension: "length" as const,
      source: "measured",
      reading: "measure the distance between the supports",
    }])),
  };
  const sectionAt = (values: Readonly<Record<string, number>>): BeamSection =>
    sectionFromStack(model.stack(values), { width: values[WIDTH]! });
  const predict = (values: Readonly<Record<string, number>>): readonly number[] => {
    const section = sectionAt(values);
    return tests.map((test) =>
      beamCompliance(test.loadCase, { ...section, span: values[spanName(test)]! }).total
    );
  };
  const { results } = propagateTogether(
    (values: Readonly<Record<string, number>>) =>
      Object.fromEntries(predict(values).map((value, i) => [String(i), value])),
    inputs,
  );
  const middles = Object.fromEntries(
    Object.entries(inputs).map(([name, { value }]) => [name, value]),
  );
  return {
    compliances: tests.map((_, i) => results[String(i)]!),
    section: sectionAt(middles),
    inputs,
    predict,
    sectionAt,
    source: "cured plies by micromechanics; exact section; C = kb L³/D + ks L/S (ASTM D7250)",
  };
}
