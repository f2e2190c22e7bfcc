import * as Plot from "@observablehq/plot";
import {
  type Axis,
  axisLabel,
  BLUE,
  checkCoordinate,
  checkPoints,
  clearOfLine,
  drawFigure,
  type Finding,
  HALO,
  labelMargin,
  ORANGE,
  WIDTH,
} from "./_figure.ts";
import { AXIS, checkShape, type Fields } from "./_shape.ts";

/** One bar. */
export interface Bar {
  /** What it stands for. */
  readonly label: string;
  /** Its length [SI]. */
  readonly value: number;
  /** Interval of the value, drawn over the bar's end [SI]. */
  readonly interval?: { readonly low: number; readonly high: number };
  /** Words beside the bar, such as the failure mode. */
  readonly remark?: string;
  /** True for bars that are to stand out: hatched by an outline and the second hue. */
  readonly stands?: boolean;
}

/** What goes into a bars figure. */
export interface BarsData {
  /** The bars, from the top. */
  readonly bars: readonly Bar[];
  /** Name and unit of the quantity. */
  readonly x: Axis;
  /** A value to compare with, drawn as a vertical line [SI]. */
  readonly limit?: { readonly value: number; readonly label: string };
}

const SHAPE: Fields = {
  bars: [{
    label: "words",
    value: "number",
    "interval?": { low: "number", high: "number" },
    "remark?": "words",
  }],
  x: AXIS,
  "limit?": { value: "number", label: "words" },
};

/**
 * Values side by side from zero, labelled, with a limit to compare with.
 *
 * @param data Bars, quantity and limit; values [SI].
 * @param finding The finding and the text alternative.
 * @returns A standalone SVG element.
 * @throws {InputError} If there is no bar or a value is not finite.
 *
 * @example
 * ```ts
 * import { barsFigure } from "@laminate/notebooks/charts";
 * import { assertEquals } from "@std/assert";
 *
 * const svg = barsFigure({
 *   bars: [{ label: "ply 1", value: 0.4, remark: "across the fibres" }],
 *   x: { name: "utilisation" },
 *   limit: { value: 1, label: "breaks" },
 * }, { title: "Ply 1 is used to 40 %", description: "One bar." });
 * assertEquals(svg.tagName, "svg");
 * ```
 */
export function barsFigure(data: BarsData, finding: Finding): SVGSVGElement {
  const { x, limit } = checkShape(data, SHAPE);
  const shown = (argument: string, value: number): number =>
    checkCoordinate(argument, value) * (x.unit?.perSI ?? 1);
  const bars = checkPoints("bars", data.bars).map((bar) => ({
    label: bar.label,
    remark: bar.remark ?? "",
    hue: bar.stands === true ? ORANGE : BLUE,
    outline: bar.stands === true ? "currentColor" : "none",
    value: shown(`value of ${bar.label}`, bar.value),
    low: shown(`lower end of ${bar.label}`, bar.interval?.low ?? bar.value),
    high: shown(`upper end of ${bar.label}`, bar.interval?.high ?? bar.value),
  }));
  const rule = limit === undefined
    ? []
    : [{ label: limit.label, at: shown(limit.label, limit.value) }];
  const longest = Math.max(...bars.map(({ remark }) => remark.length));
  const margins = {
    marginLeft: labelMargin(bars.map(({ label }) => label)),
    marginRight: 24 + 7 * longest,
  };
  const ends = [
    0,
    ...bars.flatMap(({ low, high, value }) => [low, high, value]),
    ...rule.map(({ at }) => at),
  ];
  const axis = {
    line: rule[0]?.at,
    span: Math.max(...ends) - Math.min(...ends),
    pixels: WIDTH - margins.marginLeft - margins.marginRight,
  };
  return drawFigure({
    height: 92 + 28 * bars.length,
    ...margins,
    x: {
      label: axisLabel(x.name, x.unit),
      grid: true,
      zero: true,
      nice: true,
      labelAnchor: "center",
    },
    y: { domain: bars.map(({ label }) => label), label: null, type: "band", padding: 0.28 },
    marks: [
      Plot.barX(bars, { x: "value", y: "label", fill: "hue", stroke: "outline", strokeWidth: 1.5 }),
      Plot.ruleX([0]),
      Plot.link(bars.filter(({ low, high }) => high > low), {
        x1: "low",
        x2: "high",
        y1: "label",
        y2: "label",
        strokeWidth: 1.8,
        marker: "tick",
      }),
      Plot.ruleX(rule, { x: "at", strokeDasharray: "5,4" }),
      Plot.text(bars, {
        x: ({ value, high, remark }: { value: number; high: number; remark: string }) =>
          clearOfLine(remark, { from: Math.max(value, high, 0), ...axis }),
        y: "label",
        text: "remark",
        textAnchor: "start",
        dx: 8,
        ...HALO,
      }),
      Plot.text(rule, { x: "at", text: "label", frameAnchor: "top", dy: -12 }),
    ],
  }, finding);
}
