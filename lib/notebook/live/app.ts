/**
 * Runs inside an exported page: gives each live figure its sliders and boxes, each exercise its
 * box. It is bundled into the page, so that it works from a file on disk; without it the still
 * figure stays.
 *
 * @module
 */
import { readQuantity } from "../../quantity/mod.ts";
import type { LiveControl, LiveModel, LiveReading } from "./live_model.ts";
import { enlivenExercises } from "./exercises.ts";
import { liveModels } from "./models.ts";

for (const place of document.querySelectorAll<HTMLElement>("[data-live]")) {
  const model = liveModels.get(place.dataset.live ?? "");
  if (model !== undefined) enliven(place, model);
}

enlivenExercises(document);

function enliven(place: HTMLElement, model: LiveModel): void {
  const settings = JSON.parse(place.dataset.settings ?? "{}");
  const start = JSON.parse(place.dataset.values ?? "{}");
  const sentence = place.querySelector(".live-answer")!;
  const figure = place.querySelector("figure")!;
  // Read out when it has settled, not at each step of a slider.
  sentence.setAttribute("aria-live", "polite");
  const values: Record<string, number> = {};
  const readings: Record<string, number | undefined> = {};
  const show = (): void => {
    const view = model.view(values, { settings, readings });
    sentence.textContent = view.sentence;
    figure.querySelector("svg")?.replaceWith(view.picture);
    const finding = figure.querySelector(".finding");
    if (finding) finding.textContent = view.picture.querySelector("title")?.textContent ?? "";
  };
  const sliders = document.createElement("div");
  sliders.className = "sliders";
  for (const control of model.controls) {
    values[control.name] = start[control.name] ?? control.value;
    sliders.append(slider(control, values, show));
  }
  for (const reading of model.readings) sliders.append(readingBox(reading, readings, show));
  place.insertBefore(sliders, place.firstChild);
  show();
}

function slider(
  { name, label, unit, min, max, step }: LiveControl,
  values: Record<string, number>,
  onMove: () => void,
): HTMLElement {
  const row = document.createElement("label");
  const text = document.createElement("span");
  text.textContent = label;
  const input = document.createElement("input");
  Object.assign(input, { type: "range", min, max, step, value: String(values[name]) });
  const output = document.createElement("output");
  const told = (): string => `${values[name]}${unit === "" ? "" : ` ${unit}`}`;
  const tell = (): void => {
    output.textContent = told();
    input.setAttribute("aria-valuetext", told());
  };
  input.addEventListener("input", () => {
    values[name] = Number(input.value);
    tell();
    onMove();
  });
  tell();
  row.append(text, input, output);
  return row;
}

/** A box for a reading of the learner's own; what cannot be read is said beside it. */
function readingBox(
  { name, label, dimension }: LiveReading,
  readings: Record<string, number | undefined>,
  onEntry: () => void,
): HTMLElement {
  const row = document.createElement("label");
  const text = document.createElement("span");
  text.textContent = label;
  const input = document.createElement("input");
  Object.assign(input, { type: "text", autocomplete: "off", spellcheck: false });
  const told = document.createElement("output");
  input.addEventListener("change", () => {
    readings[name] = undefined;
    told.textContent = "";
    try {
      if (input.value.trim() !== "") readings[name] = readQuantity(input.value, dimension);
    } catch {
      told.textContent = "with its unit, please";
    }
    onEntry();
  });
  row.append(text, input, told);
  return row;
}
