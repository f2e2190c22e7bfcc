import { intervalsFigure } from "../../charts/mod.ts";
import { fromReadings } from "../../statistics/mod.ts";
import type { LiveModel, LiveView } from "./live_model.ts";

/** Readings of one length by several people, and what it is. */
interface RepeatedReadingsSettings {
  /** What was measured. */
  readonly what: string;
  /** The page's own readings, which those of the learners replace [m]. */
  readonly readings: readonly number[];
}

const MM = { symbol: "mm", perSI: 1000 };

/** Three people measure one length: how well one knows it, and all together. */
export const repeatedReadingsModel: LiveModel = {
  name: "repeated-readings",
  controls: [],
  readings: [1, 2, 3].map((person) => ({
    name: `person${person}`,
    label: `Person ${person} reads`,
    dimension: "length",
  })),
  view(_values, { settings, readings }): LiveView {
    const { what, readings: given } = settings as unknown as RepeatedReadingsSettings;
    const entered = [1, 2, 3].flatMap((person) => readings[`person${person}`] ?? []);
    return entered.length === 1
      ? shown(what, given, " Put in a second reading to compare yours.")
      : shown(what, entered.length === 0 ? given : entered, "");
  },
};

function shown(what: string, values: readonly number[], remark: string): LiveView {
  const mean = fromReadings(values);
  // The mean of n readings is known √n times as well as one of them.
  const one = mean.u * Math.sqrt(values.length);
  const mm = (length: number): string => (1000 * length).toFixed(1);
  const sentence = `One reading of the ${what} is good to ± ${mm(one)} mm, ` +
    `the mean of ${values.length}, ${mm(mean.value)} mm, to ± ${mm(mean.u)} mm.${remark}`;
  const row = (label: string, value: number, u: number): {
    readonly label: string;
    readonly value: number;
    readonly low: number;
    readonly high: number;
  } => ({ label, value, low: value - 2 * u, high: value + 2 * u });
  const picture = intervalsFigure({
    rows: [
      ...values.map((value, i) => row(`person ${i + 1}`, value, one)),
      { ...row("all together", mean.value, mean.u), stands: true },
    ],
    x: { name: what, unit: MM },
  }, {
    title: one === 0
      ? "All read the same: look for a finer tape"
      : "Several people together know it better than one",
    description: sentence,
  });
  return { sentence, picture };
}
