import { checksFor, InputError } from "../check/mod.ts";
import { type Dimension, readQuantity, showQuantity } from "../quantity/mod.ts";

const check = checksFor("judge the answer");

/** A slip that learners make, and what to say to it. */
export interface UsualMistake {
  /** What they then answer, over the right answer [1]. */
  readonly factor: number;
  /** What went wrong, in a sentence that helps without giving the number away. */
  readonly because: string;
}

/** A question with a number for an answer. */
export interface Exercise {
  /** The question, with all figures that it takes. */
  readonly question: string;
  /** The right answer [SI]. */
  readonly answer: number;
  /** What kind of quantity it is. */
  readonly dimension: Dimension;
  /** How far an answer may be off and still count as right; 0.03 if left out [1]. */
  readonly tolerance?: number;
  /** Mistakes of this very question, such as full for half the span. */
  readonly mistakes?: readonly UsualMistake[];
  /** A first step, for those whose number is none of the usual mistakes. */
  readonly hint?: string;
  /** How it is worked out, shown to those who got it. */
  readonly solution: string;
}

/** What is said to a learner's answer. */
export interface Judgement {
  /** Right; a mistake that many make; no number with a unit; else just not right. */
  readonly verdict: "right" | "usual mistake" | "cannot be read" | "not right";
  /** What to tell the learner. */
  readonly text: string;
}

/** Slips that any question knows: of decimal signs, of inches, of sides and halves. */
const SLIPS: readonly UsualMistake[] = [
  { factor: 10, because: "ten times too large: look at the decimal point." },
  { factor: 0.1, because: "ten times too small: look at the decimal point." },
  { factor: 2, because: "twice too large: both sides for one, or the whole for a half?" },
  { factor: 0.5, because: "half of it: one side for both, or a half for the whole?" },
];

const PER_CENT: readonly UsualMistake[] = [
  { factor: 100, because: "a hundred times too large: per cent? Then write the % sign behind it." },
  { factor: 0.01, because: "a hundred times too small: it is per cent already." },
];

/** Slips of units, by the kind of the answer. */
const SLIPS_OF: { readonly [kind in Dimension]?: readonly UsualMistake[] } = {
  length: [
    ...thousand("mm for m"),
    { factor: 100, because: "a hundred times too large: cm for m?" },
    { factor: 0.01, because: "a hundred times too small: m for cm?" },
    { factor: 25.4, because: "25.4 times too large: inches in the place of millimetres?" },
    { factor: 1 / 25.4, because: "25.4 times too small: millimetres in the place of inches?" },
  ],
  mass: thousand("g for kg"),
  volume: thousand("mL for L"),
  force: thousand("N for kN"),
  "bending compliance": thousand("mm/kN for mm/N"),
  ratio: PER_CENT,
  strain: PER_CENT,
};

/** The small unit typed in the place of the large one, and the other way round. */
function thousand(units: string): readonly UsualMistake[] {
  const [small, large] = units.split(" for ");
  return [
    { factor: 1000, because: `a thousand times too large: ${small} for ${large}?` },
    { factor: 1e-3, because: `a thousand times too small: ${large} for ${small}?` },
  ];
}

/**
 * Judges a learner's number with its unit, and tells a usual mistake from a slip of the pen.
 *
 * @param exercise The question, its answer [SI] and its own usual mistakes.
 * @param text What the learner wrote, such as "45 %" or "1/4 in".
 * @returns The verdict and what to say; the right number stays untold until it is found.
 * @throws {InputError} If the exercise itself cannot be meant.
 *
 * @example
 * ```ts
 * import { judgeAnswer } from "@laminate/notebooks/notebook";
 * import { assertEquals } from "@std/assert";
 *
 * const exercise = {
 *   question: "Four cloths of 200 g/m² on half a square metre: how heavy is the cloth?",
 *   answer: 0.4,
 *   dimension: "mass",
 *   mistakes: [{ factor: 0.25, because: "that is one cloth: four lie in the part." }],
 *   solution: "4 × 200 g/m² × 0.5 m² = 400 g",
 * } as const;
 * assertEquals(judgeAnswer(exercise, "400 g").verdict, "right");
 * assertEquals(judgeAnswer(exercise, "0.1 kg").text, "Not yet: that is one cloth: four lie in the part.");
 * assertEquals(judgeAnswer(exercise, "400").verdict, "cannot be read");
 * ```
 */
export function judgeAnswer(exercise: Exercise, text: string): Judgement {
  check.object("exercise", exercise);
  const { answer, dimension, tolerance = 0.03, mistakes = [], hint, solution } = exercise;
  if (check.finite("answer of the exercise", answer) === 0) {
    check.refuse("answer of the exercise", answer, "must not be 0: nothing can be near it");
  }
  check.within("tolerance", tolerance, { min: 1e-6, max: 0.5 });
  for (const mistake of check.list("mistakes", mistakes, 0)) {
    check.finite("factor of a mistake", check.object("mistake", mistake).factor);
  }
  const given = readAnswer(text, dimension);
  if (typeof given === "string") return { verdict: "cannot be read", text: given };
  const near = (factor: number): boolean =>
    Math.abs(given - factor * answer) <= tolerance * Math.abs(factor * answer);
  if (near(1)) {
    return {
      verdict: "right",
      text: `Right: ${showQuantity(answer, dimension)}. ${solution}`,
    };
  }
  const slips = [...mistakes, ...SLIPS_OF[dimension] ?? [], ...SLIPS];
  const slip = slips.find(({ factor }) => near(factor));
  if (slip !== undefined) return { verdict: "usual mistake", text: `Not yet: ${slip.because}` };
  const size = Math.abs(given) > Math.abs(answer) ? "large" : "small";
  return {
    verdict: "not right",
    text: `Not yet: that is too ${size}.${hint === undefined ? "" : ` ${hint}`}`,
  };
}

/** A learner's number [SI], or what to ask for. */
function readAnswer(text: string, dimension: Dimension): number | string {
  const plain = dimension === "count" && typeof text === "string"
    ? text.replace(/\s*(times|×|x)\s*$/i, "")
    : text;
  try {
    return readQuantity(plain, dimension);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    if (dimension === "count") return "A plain number, please, such as 4.";
    const [fault] = error.faults;
    return `A ${dimension} with its unit, please: the text ${fault?.wanted ?? ""}.`;
  }
}
