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

/** One measured value with its interval, drawn as a row. */
export interface IntervalRow {
  /** What was measured: the label of the row. */
  readonly label: string;
  /** The value [SI]. */
  readonly value: number;
  /** Lower end of the interval [SI]. */
  readonly low: number;
  /** Upper end of the interval [SI]. */
  readonly high: number;
  /** A word that stands beside the point, such as "too wet". */
  readonly remark?: string;
  /** Whether the row stands out; where it is not said, a row with a remark does. */
  readonly stands?: boolean;
}

/** A usual range that the rows are judged by, drawn as a bar on a row of its own. */
export interface IntervalBand {
  /** What the range is usual for. */
  readonly label: string;
  /** Lower end [SI]. */
  readonly low: number;
  /** Upper end [SI]. */
  readonly high: number;
}

/** What goes into an intervals figure. */
export interface IntervalsData {
  /** The measured rows, from the top. */
  readonly rows: readonly IntervalRow[];
  /** Usual ranges, drawn above the rows. */
  readonly bands?: readonly IntervalBand[];
  /** A value to compare with, drawn as a vertical line [SI]. */
  readonly reference?: { readonly value: number; readonly label: string };
  /** Name and unit of the quantity. */
  readonly x: Axis;
}

const SHAPE: Fields = {
  rows: [{ label: "words", value: "number", low: "number", high: "number", "remark?": "words" }],
  "bands?": [{ label: "words", low: "number", high: "number" }],
  "reference?": { value: "number", label: "words" },
  x: AXIS,
};

/**
 * Measured values with their intervals, row by row, beside the ranges that are usual.
 *
 * Rows that stand out differ by their symbol, a square, not by colour alone.
 *
 * @param data Rows, bands and the quantity's name and unit; values [SI].
 * @param text The finding and the text alternative.
 * @returns A standalone SVG element.
 * @throws {InputError} If there is no row, a value is not finite or a text is missing.
 *
 * @example
 * ```ts
 * import { intervalsFigure } from "@laminate/notebooks/charts";
 * import { assertEquals } from "@std/assert";
 *
 * const svg = intervalsFigure({
 *   rows: [{ label: "panel 1", value: 0.45, low: 0.43, high: 0.47 }],
 *   bands: [{ label: "usual, bagged", low: 0.35, high: 0.45 }],
 *   x: { name: "resin content by mass", unit: { symbol: "%", perSI: 100 } },
 * }, { title: "Panel 1 is a little wet", description: "One panel, 45 % resin." });
 * assertEquals(svg.tagName, "svg");
 * ```
 */
export function intervalsFigure(data: IntervalsData, text: Finding): SVGSVGElement {
  const { rows, bands = [], reference, x } = checkShape(data, SHAPE);
  checkPoints("rows", rows);
  const shown = (argument: string, value: number): number =>
    checkCoordinate(argument, value) * (x.unit?.perSI ?? 1);
  const points = rows.map((row) => ({
    label: row.label,
    remark: row.remark,
    stands: row.stands ?? row.remark !== undefined,
    value: shown(`value of ${row.label}`, row.value),
    low: shown(`lower end of ${row.label}`, row.low),
    high: shown(`upper end of ${row.label}`, row.high),
  }));
  const bars = bands.map((band) => ({
    label: band.label,
    low: shown(`lower end of ${band.label}`, band.low),
    high: shown(`upper end of ${band.label}`, band.high),
  }));
  const remarked = points.filter(({ remark }) => remark !== undefined);
  const compared = reference === undefined
    ? undefined
    : { label: reference.label, at: shown("reference", reference.value) };
  const labels = [...bars, ...points].map(({ label }) => label);
  const margins = {
    marginLeft: labelMargin(labels),
    marginRight: remarked.length > 0 ? 130 : 24,
  };
  const ends = [...bars, ...points].flatMap(({ low, high }) => [low, high]);
  const axis = {
    line: compared?.at,
    span: Math.max(...ends) - Math.min(...ends),
    pixels: WIDTH - margins.marginLeft - margins.marginRight,
  };

  return drawFigure({
    height: 96 + 26 * labels.length,
    ...margins,
    insetLeft: 10,
    insetRight: 10,
    x: { label: axisLabel(x.name, x.unit), grid: true, nice: true, labelAnchor: "center" },
    y: { domain: labels, label: null, type: "band", padding: 0.3 },
    marks: [
      Plot.barX(bars, {
        y: "label",
        x1: "low",
        x2: "high",
        fill: "currentColor",
        fillOpacity: 0.22,
        stroke: "currentColor",
        strokeOpacity: 0.5,
      }),
      compared === undefined ? null : [
        Plot.ruleX([compared.at], { strokeDasharray: "5,4" }),
        Plot.text([compared], {
          x: "at",
          text: "label",
          frameAnchor: "top",
          dy: -12,
        }),
      ],
      Plot.link(points, {
        x1: "low",
        x2: "high",
        y1: "label",
        y2: "label",
        stroke: ({ stands }: { stands: boolean }) => stands ? ORANGE : BLUE,
        strokeWidth: 2,
        marker: "tick",
      }),
      Plot.dot(points.filter(({ stands }) => !stands), {
        x: "value",
        y: "label",
        r: 5,
        fill: BLUE,
      }),
      Plot.dot(points.filter(({ stands }) => stands), {
        x: "value",
        y: "label",
        r: 6,
        fill: ORANGE,
        symbol: "square",
      }),
      Plot.text(remarked, {
        x: ({ high, value, remark = "" }: { high: number; value: number; remark?: string }) =>
          clearOfLine(remark, { from: Math.max(high, value), ...axis }),
        y: "label",
        text: "remark",
        textAnchor: "start",
        dx: 10,
        ...HALO,
      }),
    ],
  }, text);
}
