import { checksForShowing, escapeHtml, objectOf, textOf } from "./_html.ts";
import { type Displayed, displayed } from "./display.ts";
import { startValues } from "./live/live_model.ts";
import { liveModels } from "./live/models.ts";

/** What a live figure starts from. */
export interface LiveStart {
  /** What stays fixed on the page, such as rows of the catalogue. */
  readonly settings: Readonly<Record<string, unknown>>;
  /** Values of sliders that start elsewhere than usual. */
  readonly values?: Readonly<Record<string, number>>;
}

/**
 * A figure that the reader moves with sliders once it is a page; in a notebook, and in a page
 * without scripts, it stands still at its start.
 *
 * "resin-ratio" wants the settings `fibreDensity` and `resinDensity` [kg/m³]; "sandwich-span" the
 * catalogue rows `reinforcement`, `fibre`, `resin` and `core`, and the `width` of the strip [m];
 * "repeated-readings" two or three `readings` [m] and `what` they are of.
 *
 * @param name Which figure: "resin-ratio", "sandwich-span" or "repeated-readings".
 * @param start Settings and starting values.
 * @returns A value for the last line of a notebook cell.
 * @throws {InputError} If there is no such figure, a value is for no slider or outside its range,
 * or a setting cannot be meant.
 *
 * @example
 * ```ts
 * import { consoleDisplay, liveFigure } from "@laminate/notebooks/notebook";
 * import { assertEquals } from "@std/assert";
 *
 * const shown = liveFigure("resin-ratio", {
 *   settings: { fibreDensity: 2560, resinDensity: 1150 },
 *   values: { content: 50 },
 * });
 * assertEquals(shown[consoleDisplay]().startsWith("400 g of resin in the part"), true);
 * ```
 */
export function liveFigure(name: string, start: LiveStart): Displayed {
  const check = checksForShowing("live figure");
  textOf(check, "name", name);
  const model = liveModels.get(name) ??
    check.refuse("name", name, `must be one of: ${[...liveModels.keys()].join(", ")}`);
  const { settings, values: given = {} } = objectOf(check, "start", start);
  objectOf(check, "settings", settings);
  for (const [key, value] of Object.entries(objectOf(check, "values", given))) {
    const control = model.controls.find((each) => each.name === key) ??
      check.refuse(key, value, `must be one of: ${model.controls.map((c) => c.name).join(", ")}`);
    check.within(control.label, value, { min: control.min, max: control.max });
  }
  const values = { ...startValues(model), ...given };
  const { sentence, picture } = model.view(values, { settings, readings: {} });
  const data = (key: string, value: unknown): string =>
    ` data-${key}="${escapeHtml(JSON.stringify(value))}"`;
  return displayed({
    "text/plain": sentence,
    "text/html":
      `<div class="live" data-live="${name}"${data("settings", settings)}${
        data("values", values)
      }>\n<p class="live-answer">${escapeHtml(sentence)}</p>\n` +
      `<figure>\n${picture.outerHTML}\n</figure>\n</div>`,
  });
}
