import { checksForShowing, escapeHtml, objectOf, proseHtml, textOf } from "./_html.ts";
import { consoleDisplay, type Displayed, displayed, jupyterDisplay } from "./display.ts";
import { type Exercise, judgeAnswer, type Judgement } from "./judge_answer.ts";

/** A learner's prediction: what was asked, and what was answered before anything was measured. */
export interface LearnerPrediction extends Displayed {
  /** What was asked. */
  readonly question: Exercise;
  /** What the learner wrote; blank while there is nothing. */
  readonly given: string;
}

/**
 * A question to be answered before the crew weighs or loads. It takes the answer and keeps the
 * verdict back; `verdicts` gives it when both can stand side by side. On a page it has a box; in a
 * notebook the answer is the second argument.
 *
 * @param question The question, its answer and its usual mistakes.
 * @param given The learner's answer with its unit; empty while there is none.
 * @returns A value for the last line of a notebook cell, and for `verdicts`.
 * @throws {InputError} If the question cannot be meant.
 *
 * @example
 * ```ts
 * import { consoleDisplay, prediction } from "@laminate/notebooks/notebook";
 * import { assertEquals } from "@std/assert";
 *
 * const shown = prediction({
 *   question: "How many millimetres are a quarter of an inch?",
 *   answer: 0.00635,
 *   dimension: "length",
 *   solution: "25.4 mm / 4",
 * }, "6 mm");
 * assertEquals(
 *   shown[consoleDisplay](),
 *   "How many millimetres are a quarter of an inch?\nNoted: 6 mm. The verdict comes later.",
 * );
 * ```
 */
export function prediction(question: Exercise, given = ""): LearnerPrediction {
  const check = checksForShowing("prediction");
  textOf(check, "question", objectOf(check, "exercise", question).question);
  textOf(check, "solution", question.solution);
  if (typeof given !== "string") check.refuse("answer", given, 'must be text, such as "45 %"');
  const said = noted(question, given);
  const shown = displayed({
    "text/plain": `${question.question}\n${said}`,
    "text/html":
      `<div class="exercise prediction" data-exercise="${escapeHtml(JSON.stringify(question))}">` +
      `<p><strong>${proseHtml(question.question)}</strong></p>` +
      `<p class="judgement" role="status">${proseHtml(said)}</p></div>`,
  });
  return Object.freeze({
    question,
    given,
    [jupyterDisplay]: shown[jupyterDisplay],
    [consoleDisplay]: shown[consoleDisplay],
  });
}

/** What is said to a prediction when it is made: only whether it can be read. */
export function noted(question: Exercise, given: string): string {
  if (given.trim() === "") return "Write your prediction with its unit.";
  const { verdict, text } = judgeAnswer(question, given);
  return verdict === "cannot be read" ? text : `Noted: ${given.trim()}. The verdict comes later.`;
}

/**
 * The verdicts on predictions, side by side with what the learner wrote. On a page a button brings
 * them.
 *
 * @param predictions What `prediction` gave, in the order of the questions.
 * @returns A value for the last line of a notebook cell.
 * @throws {InputError} If there is no prediction.
 *
 * @example
 * ```ts
 * import { consoleDisplay, prediction, verdicts } from "@laminate/notebooks/notebook";
 * import { assertEquals } from "@std/assert";
 *
 * const inch = prediction({
 *   question: "How many millimetres are a quarter of an inch?",
 *   answer: 0.00635,
 *   dimension: "length",
 *   solution: "25.4 mm / 4",
 * }, "6.35 mm");
 * assertEquals(
 *   verdicts([inch])[consoleDisplay](),
 *   "Predicted and true\n1. You wrote 6.35 mm. Right: 6.35 mm. 25.4 mm / 4",
 * );
 * ```
 */
export function verdicts(predictions: readonly LearnerPrediction[]): Displayed {
  const check = checksForShowing("verdicts");
  const lines = check.list("predictions", predictions).map((each, i) => {
    const { question, given } = objectOf(check, `prediction ${i + 1}`, each);
    if (typeof given !== "string") check.refuse("answer", given, "must come from prediction()");
    return verdictOn(objectOf(check, "question", question), given).text;
  });
  const title = "Predicted and true";
  return displayed({
    "text/plain": [title, ...lines.map((line, i) => `${i + 1}. ${line}`)].join("\n"),
    "text/html": `<div class="verdicts" data-verdicts="all"><p><strong>${title}</strong></p>` +
      `<ol>${lines.map((line) => `<li>${proseHtml(line)}</li>`).join("")}</ol></div>`,
  });
}

/** The verdict on one prediction, and a line that says it beside what was written. */
export function verdictOn(
  question: Exercise,
  given: string,
): { readonly text: string; readonly verdict: Judgement["verdict"] | "none" } {
  if (given.trim() === "") return { text: "No prediction yet.", verdict: "none" };
  const { text, verdict } = judgeAnswer(question, given);
  return { text: `You wrote ${given.trim()}. ${text}`, verdict };
}
