import { checksForShowing, escapeHtml, objectOf, proseHtml, textOf } from "./_html.ts";
import { type Displayed, displayed } from "./display.ts";
import { type Exercise, judgeAnswer } from "./judge_answer.ts";

/**
 * A question for the learner, with a box to answer it in once it is a page; in a notebook the
 * answer is the second argument.
 *
 * @param question The question, its answer and its usual mistakes.
 * @param given The learner's answer with its unit; empty while there is none.
 * @returns A value for the last line of a notebook cell.
 * @throws {InputError} If the exercise cannot be meant.
 *
 * @example
 * ```ts
 * import { consoleDisplay, exercise } from "@laminate/notebooks/notebook";
 * import { assertEquals } from "@std/assert";
 *
 * const shown = exercise({
 *   question: "How many millimetres are a quarter of an inch?",
 *   answer: 0.00635,
 *   dimension: "length",
 *   solution: "25.4 mm / 4",
 * }, "6.35 mm");
 * assertEquals(
 *   shown[consoleDisplay](),
 *   "How many millimetres are a quarter of an inch?\nRight: 6.35 mm. 25.4 mm / 4",
 * );
 * ```
 */
export function exercise(question: Exercise, given = ""): Displayed {
  const check = checksForShowing("exercise");
  textOf(check, "question", objectOf(check, "exercise", question).question);
  textOf(check, "solution", question.solution);
  if (typeof given !== "string") check.refuse("answer", given, 'must be text, such as "45 %"');
  const judged = given.trim() === "" ? undefined : judgeAnswer(question, given);
  const invitation = "Write your answer with its unit.";
  return displayed({
    "text/plain": `${question.question}\n${judged?.text ?? invitation}`,
    "text/html": `<div class="exercise" data-exercise="${escapeHtml(JSON.stringify(question))}">` +
      `<p><strong>${proseHtml(question.question)}</strong></p>` +
      `<p class="judgement" role="status">${proseHtml(judged?.text ?? invitation)}</p></div>`,
  });
}
