import { checksForShowing, objectOf, textOf, valueText } from "./_html.ts";
import type { Displayed } from "./display.ts";
import { table } from "./table.ts";

/** One input that an answer rests on. */
export interface Input {
  /** What it is, in words. */
  readonly name: string;
  /** Its value: a number in `unit`, or a text that carries its own unit. */
  readonly value: number | string;
  /** Unit of the value, as it is written. */
  readonly unit?: string;
  /** Where it came from: a file, a catalogue row, a measurement, an assumption. */
  readonly source: string;
}

/**
 * The inputs that an answer rests on, with units and where each came from.
 *
 * @param list The inputs, in reading order.
 * @param options Caption above the list.
 * @returns A value for the last line of a notebook cell.
 * @throws {InputError} If there is no input, a value is not finite, or a text is blank.
 *
 * @example
 * ```ts
 * import { consoleDisplay, inputs } from "@laminate/notebooks/notebook";
 * import { assertEquals } from "@std/assert";
 *
 * const shown = inputs([{ name: "Span", value: 400, unit: "mm", source: "load_tests.csv" }]);
 * assertEquals(
 *   shown[consoleDisplay](),
 *   "Inputs used\nInput  Value   From\nSpan   400\u00a0mm  load_tests.csv",
 * );
 * ```
 */
export function inputs(
  list: readonly Input[],
  options: { readonly caption?: string } = {},
): Displayed {
  const check = checksForShowing("inputs");
  const { caption = "Inputs used" } = objectOf(check, "options", options);
  const rows = check.list("inputs", list).map((input) => {
    const { name, source } = objectOf(check, "input", input);
    return {
      name: textOf(check, "name", name),
      value: valueText(check, name, input),
      source: textOf(check, `source of ${name}`, source),
    };
  });
  return table(rows, {
    caption,
    columns: [
      { key: "name", heading: "Input" },
      { key: "value", heading: "Value" },
      { key: "source", heading: "From" },
    ],
  });
}
