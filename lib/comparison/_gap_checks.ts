import type { Checks } from "../check/mod.ts";
import { UNCERTAIN } from "./_shape.ts";
import type { Gap } from "./explain_gap.ts";

/** Refuses a gap of which a part is missing or no number. */
export function checkGap(check: Checks, { measured, inputs, predict }: Gap): void {
  check.list("measured", measured).forEach((entry, i) => {
    const { value, u } = check.object(`measured value ${i + 1}`, entry);
    check.finite(`measured value ${i + 1}`, value);
    check.positive(`uncertainty of measured value ${i + 1}`, u);
  });
  check.shape("inputs", inputs, { each: { ...UNCERTAIN, reading: "words" } });
  check.shape("prediction", predict, "function");
}
