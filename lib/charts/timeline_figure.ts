import * as Plot from "@observablehq/plot";
import { checksFor } from "../check/mod.ts";
import {
  BLUE,
  checkAtMost,
  checkPoints,
  drawFigure,
  type Finding,
  labelMargin,
  ORANGE,
} from "./_figure.ts";
import { checkShape, type Fields } from "./_shape.ts";

const check = checksFor("draw the figure");

/** A stretch of time. */
export interface TimelineSpan {
  /** What happens in it; spans of one name look alike and stand in the key. */
  readonly what: string;
  /** When it begins [s]. */
  readonly from: number;
  /** When it ends [s]. */
  readonly to: number;
}

/** One row of a timetable. */
export interface TimelineRow {
  /** What the row is for. */
  readonly label: string;
  /** Its stretches of time; a later one is drawn over an earlier one. */
  readonly spans: readonly TimelineSpan[];
  /** Words behind its last stretch. */
  readonly remark?: string;
}

/** What goes into a timetable. */
export interface TimelineData {
  /** The rows, from the top. */
  readonly rows: readonly TimelineRow[];
  /** Name of the time axis. */
  readonly x: string;
  /** How a time is written at the axis, such as a clock time. */
  readonly showTime: (seconds: number) => string;
}

/** Told apart without colour: filled, filled with an edge, and an edge alone. */
const LOOKS = [
  { fill: BLUE, stroke: "none" },
  { fill: ORANGE, stroke: "currentColor" },
  { fill: "none", stroke: "currentColor" },
] as const;

/** Steps of the time axis that a clock shows well [s]. */
const STEPS: readonly number[] = [60, 300, 600, 900, 1800, 3600, 7200, 14400, 21600, 43200, 86400];
const MOST_TICKS = 8;

const SHAPE: Fields = {
  rows: [{
    label: "words",
    spans: [{ what: "words", from: "number", to: "number" }],
    "remark?": "words",
  }],
  x: "words",
  showTime: "function",
};

/**
 * A timetable: rows of stretches of time under one another, with a key on top.
 *
 * @param data Rows with their stretches [s] and how a time is written.
 * @param finding The finding and the text alternative.
 * @returns A standalone SVG element.
 * @throws {InputError} If there is no row, a stretch ends before it begins, a time is not finite,
 * or there are more than three kinds of stretches.
 *
 * @example
 * ```ts
 * import { timelineFigure } from "@laminate/notebooks/charts";
 * import { assertEquals } from "@std/assert";
 *
 * const svg = timelineFigure({
 *   rows: [{ label: "pot 1", spans: [{ what: "mix", from: 0, to: 240 }] }],
 *   x: "time",
 *   showTime: (seconds) => `${seconds / 60} min`,
 * }, { title: "The first pot is ready after 4 minutes", description: "One pot." });
 * assertEquals(svg.tagName, "svg");
 * ```
 */
export function timelineFigure(data: TimelineData, finding: Finding): SVGSVGElement {
  const rows = checkPoints("rows", checkShape(data, SHAPE).rows);
  const spans = rows.flatMap(({ label, spans }) =>
    checkPoints(`spans of ${label}`, spans).map((span) => checkSpan(label, span))
  );
  const kinds = [...new Set(spans.map(({ what }) => what))];
  checkAtMost("kinds of spans", kinds, LOOKS.length);
  const start = Math.min(...spans.map(({ from }) => from));
  const end = Math.max(...spans.map(({ to }) => to));
  const keyStarts = kinds.map((_, i) =>
    kinds.slice(0, i).reduce((sum, { length }) => sum + 40 + 7 * length, 0)
  );
  const remarks = rows.flatMap(({ label, spans, remark }) =>
    remark === undefined ? [] : [{ label, remark, to: Math.max(...spans.map(({ to }) => to)) }]
  );
  const longest = Math.max(0, ...remarks.map(({ remark }) => remark.length));
  return drawFigure({
    height: 110 + 30 * rows.length,
    marginTop: 44,
    marginLeft: labelMargin(rows.map(({ label }) => label)),
    marginRight: 40 + 7 * longest,
    x: {
      domain: [start, end],
      label: data.x,
      labelAnchor: "center",
      grid: true,
      ticks: ticksBetween(start, end),
      tickFormat: data.showTime,
    },
    y: {
      domain: rows.map(({ label }) => label),
      label: null,
      type: "band",
      padding: 0.3,
    },
    marks: [
      kinds.map((kind, i) =>
        Plot.barX(spans.filter(({ what }) => what === kind), {
          x1: "from",
          x2: "to",
          y: "label",
          strokeWidth: 1.5,
          ...LOOKS[i]!,
        })
      ),
      kinds.map((kind, i) => {
        const place = { frameAnchor: "top-left", dy: -20 } as const;
        return [
          Plot.dot([kind], {
            ...place,
            dx: keyStarts[i]! + 8,
            symbol: "square",
            r: 6,
            ...LOOKS[i]!,
          }),
          Plot.text([kind], { ...place, dx: keyStarts[i]! + 20, textAnchor: "start" }),
        ];
      }),
      Plot.text(remarks, { x: "to", y: "label", text: "remark", textAnchor: "start", dx: 8 }),
    ],
  }, finding);
}

function checkSpan(label: string, span: TimelineSpan): TimelineSpan & { readonly label: string } {
  const { what, from, to } = check.object("span", span);
  check.text("what happens", what);
  check.finite(`beginning of ${what}`, from, "s");
  check.finite(`end of ${what}`, to, "s");
  if (!(from < to)) check.refuse(`end of ${what}`, to, `must be after its beginning, ${from} s`);
  return { label, what, from, to };
}

/** Round times from the start on, few enough to be read. */
function ticksBetween(start: number, end: number): readonly number[] {
  const step = STEPS.find((one) => (end - start) / one <= MOST_TICKS) ??
    Math.ceil((end - start) / MOST_TICKS / 86400) * 86400;
  const count = Math.floor((end - start) / step * (1 + 1e-9)) + 1;
  return Array.from({ length: count }, (_, i) => start + i * step);
}
