import { type Exercise, judgeAnswer } from "../judge_answer.ts";

/** Gives each exercise of a page its box: Enter or the button judges what stands in it. */
export function enlivenExercises(root: ParentNode): void {
  for (const place of root.querySelectorAll<HTMLElement>("[data-exercise]")) {
    const question: Exercise = JSON.parse(place.dataset.exercise ?? "{}");
    const judgement = place.querySelector(".judgement")!;
    const form = document.createElement("form");
    const label = document.createElement("label");
    label.textContent = "Your answer with its unit ";
    const box = document.createElement("input");
    Object.assign(box, { type: "text", autocomplete: "off", spellcheck: false });
    const button = document.createElement("button");
    button.textContent = "Check";
    label.append(box);
    form.append(label, button);
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      const { verdict, text } = judgeAnswer(question, box.value);
      judgement.textContent = text;
      place.dataset.verdict = verdict;
    });
    place.insertBefore(form, judgement);
  }
}
