import { checksFor, type Fields } from "../check/mod.ts";
import {
  type GroupSpread,
  type GroupsUpdated,
  type PooledValue,
  type PredictiveCheck,
  predictiveCheck,
  type Uncertain,
  updateGroups,
} from "../statistics/mod.ts";
import { MEASURED } from "./_shape.ts";
import { anotherCore, type LearnedModel, learnedModel, type Subject } from "./_learned_model.ts";
import type { BeamEvidence } from "./beam_evidence.ts";
import { FIBRE_FRACTION } from "./input_names.ts";

const check = checksFor("learn from the beams");

/** What is thought of the crew beforehand. */
export interface LearnOptions {
  /** How much face moduli differ from part to part, as a share; 0.02 if left out [1]. */
  readonly faceSpread?: number;
  /** How much core shear moduli differ from sheet to sheet, as a share; 0.05 if left out [1]. */
  readonly coreSpread?: number;
  /** How well gauge and weights are known, as a share of every slope; 0.005 if left out [1]. */
  readonly uScale?: number;
  /** Whether the model is checked on its own data, which takes most of the time; yes if left out. */
  readonly checks?: boolean;
}

/** A modulus of the crew's own, in place of the catalogue's. */
export interface LearnedModulus {
  /** Name of its input in predictions. */
  readonly input: string;
  /** A fibre as this crew lays it, crimp counted in, or a core. */
  readonly kind: "fibre" | "core";
  /** As thought beforehand; of a fibre the uncertainty of its crimp is counted in [Pa]. */
  readonly before: Uncertain;
  /** Mean over the crew's parts [Pa]. */
  readonly mean: PooledValue;
  /** The next part's [Pa]. */
  readonly next: PooledValue;
  /** How much parts differ, as a share [1]. */
  readonly spread: GroupSpread;
  /** Share of the variance beforehand that the tests took away from the mean [1]. */
  readonly learned: number;
}

/** One part after the evidence of all. */
export interface LearnedPart {
  /** Its name. */
  readonly part: string;
  /** Its own moduli by input; a core that is another under its input's name too [Pa]. */
  readonly moduli: Readonly<Record<string, PooledValue>>;
  /** Its fibre fraction, from scale and tests together [1]. */
  readonly fibreFraction: PooledValue;
  /** Why its core is no evidence of the core in the schedule; null where it is. */
  readonly otherCore: string | null;
  /** Whether the others foretell its tests; null where there are no others, or without checks. */
  readonly foretold: ForetoldPart | null;
}

/** A part's tests beside what the other parts teach. */
export interface ForetoldPart {
  /** Weighted squares of the difference, and how many tests there are [1]. */
  readonly chiSquared: number;
  /** Probability of so large a difference by chance [1]. */
  readonly chance: number;
}

/** What a crew's beams teach. */
export interface LearnedFromBeams {
  /** Each modulus, fibres first. */
  readonly moduli: readonly LearnedModulus[];
  /** Each part. */
  readonly parts: readonly LearnedPart[];
  /**
   * Whether beams like these would come from what was learned; null without checks or with a single
   * test.
   */
  readonly check: PredictiveCheck | null;
  /** Probability of so large a difference between catalogue and tests by chance [1]. */
  readonly chance: number;
  /** What a reader should know, empty where there is nothing to say. */
  readonly notes: readonly string[];
}

const BEAM: Fields = {
  part: "text",
  otherCore: [null, "text"],
  tests: [{ test: "text" }],
  measured: [MEASURED],
  beam: { layup: "object", tests: ["object"] },
};

/** Beams whose chance is below this are called odd [1]. */
const ODD = 0.01;

/**
 * What a crew's bending tests and weighings teach together: the modulus of the fibre as laid, the
 * shear modulus of the core, each part's fibre fraction; and what to expect of the next part.
 *
 * Parts are pooled partially: each has its own faces and its own core sheet, drawn towards the crew's
 * mean by as much as parts are seen to differ. The catalogue's ranges are what was believed before.
 * Solved about the most probable values (Laplace) with the spreads summed over: these problems are
 * small and smooth, the answer is the same each time, and takes a moment where random walks take
 * minutes.
 *
 * Formula: as `updateGroups` on ln(E/E0), ln(G/G0); compliances as `predictBending`
 *
 * Range: one beam or more; with one the spread is what was thought. Both spans of a beam are needed
 * to tell its faces from its core. Learn from the catalogue's rows: own rows already hold tests.
 *
 * Source: as `updateGroups`; spreads of 2 and 5 % estimates of this project.
 *
 * @param beams Each beam's evidence, from `beamEvidence`.
 * @param options Spreads thought of, and how well gauge and weights are known.
 * @returns Moduli before and after, each part, and checks of the model.
 * @throws {InputError} If there is no beam, two have one name, or a figure is negative.
 *
 * @example
 * ```ts
 * import { beamEvidence, learnFromBeams } from "@laminate/notebooks/comparison";
 * import { readPart } from "@laminate/notebooks/records";
 * import { assert } from "@std/assert";
 *
 * const { loadTests, weighings } = await readPart("data/sole-panels");
 * const beams = ["beam 1", "beam 2"].map((name) =>
 *   beamEvidence(
 *     loadTests!.filter(({ specimen }) => specimen === name),
 *     weighings!.find(({ part }) => part === name),
 *   )
 * );
 * const core = learnFromBeams(beams).moduli.find(({ kind }) => kind === "core")!;
 * assert(core.mean.u < core.before.u / 2);
 * ```
 */
export function learnFromBeams(
  beams: readonly BeamEvidence[],
  options: LearnOptions = {},
): LearnedFromBeams {
  check.list("beams", beams);
  check.shape("beams", beams, [BEAM]);
  for (const { part, tests, measured, beam } of beams) {
    if (
      !(measured.length > 0 && measured.length === tests.length &&
        measured.length === beam.tests.length)
    ) {
      check.refuse(`slopes of ${part}`, measured.length, "must be one for each test");
    }
  }
  const { faceSpread = 0.02, coreSpread = 0.05, uScale = 0.005 } = check.object("options", options);
  check.nonNegative("spread of the faces", faceSpread);
  check.nonNegative("spread of the cores", coreSpread);
  check.positive("uncertainty of gauge and weights", uScale);
  const model = learnedModel(beams, { faceSpread, coreSpread, uScale });
  if (model.subjects.length === 0) {
    check.refuse("beams", beams.length, "must have a modulus with a range to be learned");
  }
  const updated = updateGroups(model.evidence);
  const moduli = model.subjects.map((subject) => modulusOf(subject, updated));
  const { checks = true } = options;
  const parts = beams.map((beam, j) => ({
    ...partOf(beam, { model, updated, j }),
    foretold: checks ? foretell(model, j) : null,
  }));
  const predictive = checks && updated.departures.length > 1
    ? predictiveCheck(updated.replicate, updated.departures, { trials: 500 })
    : null;
  return {
    moduli: moduli.toSorted((a, b) => (a.kind === "fibre" ? 0 : 1) - (b.kind === "fibre" ? 0 : 1)),
    ...{ parts, check: predictive, chance: updated.chance },
    notes: [
      ...updated.notes,
      ...(predictive?.notes ?? []),
      ...parts.flatMap(({ part, foretold }) =>
        foretold !== null && foretold.chance < ODD
          ? [`${part} is not what the other parts foretell: look at it before it teaches.`]
          : []
      ),
      ...beams.flatMap(({ part, otherCore }) =>
        otherCore === null ? [] : [`${part} teaches of the faces only. ${otherCore}`]
      ),
    ],
  };
}

function modulusOf(subject: Subject, { means, next, spreads }: GroupsUpdated): LearnedModulus {
  const { input, kind, before } = subject;
  const mean = outOfLogarithm(means[input]!, before.value);
  const prior = before.u / before.value;
  return {
    ...{ input, kind, before, mean },
    next: outOfLogarithm(next[input]!, before.value),
    spread: spreads[input]!,
    learned: Math.max(0, 1 - (means[input]!.u / prior) ** 2),
  };
}

/** A modulus whose logarithm over the catalogue's was learned. */
function outOfLogarithm({ value, u, low, high }: PooledValue, over: number): PooledValue {
  const middle = over * Math.exp(value);
  return { value: middle, u: middle * u, low: over * Math.exp(low), high: over * Math.exp(high) };
}

function partOf(
  { part, otherCore, beam }: BeamEvidence,
  { model, updated, j }: {
    readonly model: LearnedModel;
    readonly updated: GroupsUpdated;
    readonly j: number;
  },
): Omit<LearnedPart, "foretold"> {
  const { parameters } = updated.groups[j]!;
  const moduli = model.subjects.flatMap(({ input, before }) => {
    const own = parameters[anotherCore(input)] ?? parameters[input];
    return own === undefined ? [] : [[input, outOfLogarithm(own, before.value)] as const];
  });
  const known = beam.known?.fibreFraction;
  const bare = known ?? { value: 0, u: 0 };
  return {
    ...{ part, otherCore },
    moduli: Object.fromEntries(moduli),
    fibreFraction: parameters[FIBRE_FRACTION] ??
      { ...bare, low: bare.value, high: bare.value },
  };
}

/** One part's tests beside what all other parts teach of the next one. */
function foretell({ evidence }: LearnedModel, j: number): ForetoldPart | null {
  const others = evidence.groups.filter((_, i) => i !== j);
  if (others.length === 0) return null;
  const { next, common } = updateGroups({ ...evidence, groups: others });
  const { chiSquared, chance } = updateGroups({
    pooled: Object.fromEntries(
      Object.entries(next).map(([name, { value, u }]) => [name, { value, u, spread: 0 }]),
    ),
    common,
    groups: [evidence.groups[j]!],
  });
  return { chiSquared, chance };
}
