import { type Exercise, judgeAnswer } from "../judge_answer.ts";
import { noted, verdictOn } from "../prediction.ts";

/** Gives each exercise of a page its box, and each place of verdicts its button. */
export function enlivenExercises(root: ParentNode): void {
  const predictions: (() => string)[] = [];
  for (const place of root.querySelectorAll<HTMLElement>("[data-exercise]")) {
    const question: Exercise = JSON.parse(place.dataset.exercise ?? "{}");
    const judgement = place.querySelector(".judgement")!;
    if (place.classList.contains("prediction")) {
      const box = addBox(
        place,
        { label: "Your prediction with its unit ", button: "Note it" },
        () => {
          judgement.textContent = noted(question, box.value);
        },
      );
      predictions.push(() => {
        const { text, verdict } = verdictOn(question, box.value);
        place.dataset.verdict = verdict;
        return text;
      });
    } else {
      const box = addBox(place, { label: "Your answer with its unit ", button: "Check" }, () => {
        const { verdict, text } = judgeAnswer(question, box.value);
        judgement.textContent = text;
        place.dataset.verdict = verdict;
      });
    }
  }
  for (const place of root.querySelectorAll<HTMLElement>("[data-verdicts]")) {
    const list = place.querySelector("ol")!;
    list.setAttribute("role", "status");
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = "Compare with what is true";
    button.addEventListener("click", () => {
      list.replaceChildren(...predictions.map((verdict) => {
        const line = document.createElement("li");
        line.textContent = verdict();
        return line;
      }));
    });
    place.insertBefore(button, list);
  }
}

/** A box with its button, before the judgement; Enter or the button hands it in. */
function addBox(
  place: HTMLElement,
  { label, button }: { readonly label: string; readonly button: string },
  onEntry: () => void,
): HTMLInputElement {
  const form = document.createElement("form");
  const name = document.createElement("label");
  name.textContent = label;
  const box = document.createElement("input");
  Object.assign(box, { type: "text", autocomplete: "off", spellcheck: false });
  const press = document.createElement("button");
  press.textContent = button;
  name.append(box);
  form.append(name, press);
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    onEntry();
  });
  place.insertBefore(form, place.querySelector(".judgement"));
  return box;
}
