import * as Plot from "@observablehq/plot";
import { checksFor } from "../check/mod.ts";
import {
  type Axis,
  axisLabel,
  BLUE,
  checkCoordinate,
  checkPoints,
  drawFigure,
  type Finding,
  HALO,
  ORANGE,
} from "./_figure.ts";
import { AXIS, checkShape, type Fields } from "./_shape.ts";

const check = checksFor("draw the figure");

/** One part of a row of parts. */
export interface ControlPoint {
  /** Its name, on the axis. */
  readonly label: string;
  /** Its value [SI]. */
  readonly value: number;
  /** Interval of the value, drawn as a thin line [SI]. */
  readonly interval?: { readonly low: number; readonly high: number };
  /** Why it stands out; marks the point. */
  readonly remark?: string;
}

/** A stretch of parts made in one way, with the limits that hold for it. */
export interface ControlPhase {
  /** What is common to it, drawn above. */
  readonly label: string;
  /** Place of its first part, from 0. */
  readonly from: number;
  /** Place of its last part, from 0. */
  readonly to: number;
  /** Mean of the stretch; no line if left out [SI]. */
  readonly centre?: number;
  /** Limits within which chance keeps single parts; none if left out [SI]. */
  readonly limits?: { readonly low: number; readonly high: number };
  /** The range that is usual for it, drawn as a bar; none if left out [SI]. */
  readonly usual?: { readonly low: number; readonly high: number };
}

/** What goes into a control chart. */
export interface ControlChartData {
  /** The parts, in the order made. */
  readonly points: readonly ControlPoint[];
  /** Stretches of parts, in order; they must not overlap. */
  readonly phases: readonly ControlPhase[];
  /** Name and unit of the quantity. */
  readonly y: Axis;
}

const ENDS = { low: "number", high: "number" } as const;
const SHAPE: Fields = {
  points: [{ label: "words", value: "number", "interval?": ENDS, "remark?": "words" }],
  phases: [{
    label: "words",
    from: "number",
    to: "number",
    "centre?": "number",
    "limits?": ENDS,
    "usual?": ENDS,
  }],
  y: AXIS,
};

/**
 * Values of one part after another, with mean and limits of each stretch: is the crew getting better,
 * and which part stands out?
 *
 * Parts that stand out differ by symbol (a square) and by their remark, not by colour alone.
 *
 * @param data Points, stretches with their ranges, and the quantity; values [SI].
 * @param text The finding and the text alternative.
 * @returns A standalone SVG element.
 * @throws {InputError} If there is no point, a value is not finite or a stretch lies outside.
 *
 * @example
 * ```ts
 * import { controlChartFigure } from "@laminate/notebooks/charts";
 * import { assertEquals } from "@std/assert";
 *
 * const svg = controlChartFigure({
 *   points: [0.45, 0.44, 0.58].map((value, i) => ({ label: `panel ${i + 1}`, value })),
 *   phases: [{ label: "hand", from: 0, to: 2, centre: 0.49, limits: { low: 0.3, high: 0.68 } }],
 *   y: { name: "resin content", unit: { symbol: "%", perSI: 100 } },
 * }, { title: "Three panels scatter by chance", description: "45, 44 and 58 % of resin." });
 * assertEquals(svg.tagName, "svg");
 * ```
 */
export function controlChartFigure(data: ControlChartData, text: Finding): SVGSVGElement {
  const { y } = checkShape(data, SHAPE);
  const shown = (argument: string, value: number): number =>
    checkCoordinate(argument, value) * (y.unit?.perSI ?? 1);
  const points = checkPoints("points", data.points).map((point, place) => ({
    place,
    label: point.label,
    remark: point.remark,
    value: shown(`value of ${point.label}`, point.value),
    low: shown(`lower end of ${point.label}`, point.interval?.low ?? point.value),
    high: shown(`upper end of ${point.label}`, point.interval?.high ?? point.value),
  }));
  const last = points.length - 1;
  const phases = data.phases.map((phase) => ({
    label: phase.label,
    from: inside(`start of ${phase.label}`, phase.from, last) - 0.45,
    to: inside(`end of ${phase.label}`, phase.to, last) + 0.45,
    centre: phase.centre === undefined ? undefined : shown(`mean of ${phase.label}`, phase.centre),
    low: phase.limits === undefined
      ? undefined
      : shown(`lower limit of ${phase.label}`, phase.limits.low),
    high: phase.limits === undefined
      ? undefined
      : shown(`upper limit of ${phase.label}`, phase.limits.high),
  }));
  const lines = phases.flatMap(({ from, to, centre, low, high }) =>
    [
      { name: "mean", at: centre, from, to, dash: "none" },
      { name: "limit", at: low, from, to, dash: "5,4" },
      { name: "limit", at: high, from, to, dash: "5,4" },
    ].filter((line): line is typeof line & { at: number } => line.at !== undefined)
  );
  // The names of the lines stand at the right end of the last stretch that has them.
  const end = Math.max(...lines.map(({ to }) => to), -Infinity);
  const noted = points.filter(({ remark }) => remark !== undefined);
  const longest = Math.max(...points.map(({ label }) => label.length));
  const bars = data.phases.flatMap(({ label, usual }, i) =>
    usual === undefined ? [] : [{
      ...{ from: phases[i]!.from, to: phases[i]!.to },
      low: shown(`usual range of ${label}`, usual.low),
      high: shown(`usual range of ${label}`, usual.high),
    }]
  );
  return drawFigure({
    height: 330 + 5 * longest,
    marginTop: 46,
    marginRight: 74,
    marginBottom: 24 + 5.4 * longest,
    x: {
      domain: [-0.6, last + 0.6],
      label: null,
      ticks: points.map(({ place }) => place),
      tickFormat: (place: number) => points[place]?.label ?? "",
      tickRotate: -42,
      tickSize: 0,
    },
    y: { label: axisLabel(y.name, y.unit), grid: true, nice: true },
    marks: [
      Plot.rect(bars, {
        x1: "from",
        x2: "to",
        y1: "low",
        y2: "high",
        fill: "currentColor",
        fillOpacity: 0.12,
      }),
      Plot.text(bars, {
        x: "to",
        y: "low",
        text: () => "usual",
        textAnchor: "end",
        dx: -5,
        dy: -9,
        fillOpacity: 0.8,
      }),
      Plot.ruleX(phases.slice(1), { x: "from", strokeOpacity: 0.5, dx: -1 }),
      Plot.text(phases, {
        x: (phase: { from: number; to: number }) => (phase.from + phase.to) / 2,
        text: "label",
        frameAnchor: "top",
        dy: -16,
        fontWeight: 600,
      }),
      lines.map(({ at, from, to, dash }) =>
        Plot.ruleY([at], { x1: from, x2: to, strokeDasharray: dash, strokeWidth: 1.6 })
      ),
      Plot.text(lines.filter(({ to }) => to === end), {
        x: "to",
        y: "at",
        text: "name",
        textAnchor: "start",
        dx: 6,
      }),
      Plot.line(points, { x: "place", y: "value", stroke: BLUE, strokeOpacity: 0.55 }),
      Plot.ruleX(points.filter(({ low, high }) => high > low), {
        x: "place",
        y1: "low",
        y2: "high",
        stroke: (point: { remark?: string }) => point.remark === undefined ? BLUE : ORANGE,
        strokeWidth: 1.6,
      }),
      Plot.dot(points.filter(({ remark }) => remark === undefined), {
        x: "place",
        y: "value",
        r: 4.5,
        fill: BLUE,
      }),
      Plot.dot(noted, { x: "place", y: "value", r: 6, fill: ORANGE, symbol: "square" }),
      Plot.text(noted, {
        x: "place",
        y: "value",
        text: "remark",
        textAnchor: "start",
        dx: 11,
        ...HALO,
      }),
    ],
  }, text);
}

function inside(argument: string, place: number, last: number): number {
  return check.within(argument, place, { min: 0, max: last });
}
