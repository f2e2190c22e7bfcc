import * as Plot from "@observablehq/plot";
import {
  type Axis,
  axisLabel,
  BLUE,
  checkAtMost,
  checkCoordinate,
  checkPoints,
  DASHES,
  drawFigure,
  type Finding,
  HALO,
  LETTER,
  ORANGE,
  WIDTH,
} from "./_figure.ts";
import { AXIS, checkShape, type Fields, POINT } from "./_shape.ts";

/** A point of a line [SI]. */
export interface LinePoint {
  /** Across [SI]. */
  readonly x: number;
  /** Up [SI]. */
  readonly y: number;
}

/** One line, named at its right end. */
export interface Line {
  /** Its name, drawn at its end. */
  readonly label: string;
  /** Two points or more, in order of x. */
  readonly points: readonly LinePoint[];
}

/** A value worth marking on an axis. */
export interface LineMark {
  /** Where [SI]. */
  readonly value: number;
  /** What it means. */
  readonly label: string;
}

/** What goes into a lines figure. */
export interface LinesData {
  /** At most four lines: more cannot be told apart without colour. */
  readonly lines: readonly Line[];
  /** Name and unit of the x axis. */
  readonly x: Axis;
  /** Name and unit of the y axis. */
  readonly y: Axis & { readonly fromZero?: boolean };
  /** Vertical lines, such as a limit. */
  readonly xMarks?: readonly LineMark[];
  /** Horizontal lines, such as a target. */
  readonly yMarks?: readonly LineMark[];
  /** Points to name, such as today's batch. */
  readonly spots?: readonly (LinePoint & { readonly label: string })[];
}

const SHAPE: Fields = {
  lines: [{ label: "words", points: [POINT] }],
  x: AXIS,
  y: AXIS,
  "xMarks?": [{ value: "number", label: "words" }],
  "yMarks?": [{ value: "number", label: "words" }],
  "spots?": [{ ...POINT, label: "words" }],
};

/**
 * One quantity against another, as up to four directly labelled lines.
 *
 * @param data Lines, marks and axes; values [SI].
 * @param text The finding and the text alternative.
 * @returns A standalone SVG element.
 * @throws {InputError} If there is no line, a line has under two points, a value is not finite,
 * or there are more than four lines.
 *
 * @example
 * ```ts
 * import { linesFigure } from "@laminate/notebooks/charts";
 * import { assertEquals } from "@std/assert";
 *
 * const svg = linesFigure({
 *   lines: [{ label: "right angle", points: [{ x: 0, y: 0 }, { x: 0.02, y: 0.05 }] }],
 *   x: { name: "fillet radius", unit: { symbol: "mm", perSI: 1000 } },
 *   y: { name: "mass per metre", unit: { symbol: "g/m", perSI: 1000 } },
 * }, { title: "A fillet's mass grows with its radius squared", description: "One line." });
 * assertEquals(svg.tagName, "svg");
 * ```
 */
export function linesFigure(data: LinesData, text: Finding): SVGSVGElement {
  const { lines, x, y, xMarks = [], yMarks = [], spots = [] } = checkShape(data, SHAPE);
  checkPoints("lines", lines);
  checkAtMost("lines", lines, DASHES.length);
  const acrossOf = (argument: string, value: number): number =>
    checkCoordinate(argument, value) * (x.unit?.perSI ?? 1);
  const upOf = (argument: string, value: number): number =>
    checkCoordinate(argument, value) * (y.unit?.perSI ?? 1);
  const drawn = lines.map(({ label, points }, i) => ({
    label,
    dash: DASHES[i]!,
    hue: i % 2 === 0 ? BLUE : ORANGE,
    points: checkPoints(`points of ${label}`, points, 2).map((point) => ({
      x: acrossOf(`x of ${label}`, point.x),
      y: upOf(`y of ${label}`, point.y),
    })),
  }));
  const across = xMarks.map(({ value, label }) => ({ at: acrossOf(label, value), label }));
  const up = yMarks.map(({ value, label }) => ({ at: upOf(label, value), label }));
  const named = spots.map((spot) => ({
    label: spot.label,
    x: acrossOf(`x of ${spot.label}`, spot.x),
    y: upOf(`y of ${spot.label}`, spot.y),
  }));
  const marginRight = 16 + 7 * Math.max(...lines.map(({ label }) => label.length));
  const ends = [...drawn.flatMap(({ points }) => points), ...named];
  const perPixel = (along: "x" | "y", pixels: number): number => {
    const values = ends.map((end) => end[along]);
    return (Math.max(...values) - Math.min(...values)) / pixels;
  };
  const steps = stepsOf(named, {
    x: perPixel("x", WIDTH - 64 - marginRight),
    y: perPixel("y", 300),
  });

  return drawFigure({
    marginRight,
    x: { label: axisLabel(x.name, x.unit), grid: true, labelAnchor: "center" },
    y: {
      label: axisLabel(y.name, y.unit),
      grid: true,
      zero: y.fromZero ?? false,
      nice: true,
    },
    marks: [
      Plot.ruleX(across, { x: "at", strokeDasharray: "5,4" }),
      Plot.text(across, { x: "at", text: "label", frameAnchor: "top", dy: -10 }),
      Plot.ruleY(up, { y: "at", strokeDasharray: "5,4" }),
      Plot.text(up, {
        y: "at",
        text: "label",
        frameAnchor: "left",
        textAnchor: "start",
        dx: 6,
        dy: -8,
      }),
      drawn.map(({ points, dash, hue, label }) => [
        Plot.line(points, {
          x: "x",
          y: "y",
          stroke: hue,
          strokeWidth: 2.5,
          strokeDasharray: dash,
        }),
        Plot.text(points.slice(-1), {
          x: "x",
          y: "y",
          text: () => label,
          textAnchor: "start",
          dx: 8,
        }),
      ]),
      Plot.dot(named, { x: "x", y: "y", r: 5.5, symbol: "diamond", fill: "currentColor" }),
      named.map((spot, i) => [
        Plot.vector([spot], {
          x: "x",
          y: "y",
          length: steps[i]! * STEP,
          anchor: "start",
          shape: STEM,
          strokeWidth: 1,
        }),
        Plot.text([spot], { x: "x", y: "y", text: "label", dy: -RISE - steps[i]! * STEP, ...HALO }),
      ]),
    ],
  }, text);
}

/** How far above its point a name stands [px]. */
const RISE = 14;
/** Height of a step between names that would cover each other [px]. */
const STEP = 18;
/** A plain line from a point up to its name. */
const STEM = {
  draw(
    context: { moveTo(x: number, y: number): void; lineTo(x: number, y: number): void },
    length: number,
  ): void {
    context.moveTo(0, 0);
    context.lineTo(0, -length);
  },
};

/**
 * How many steps above its point each name stands, so that neighbours do not cover each other.
 * How many units go to a pixel is about right only, as the axes are made when they are drawn.
 */
function stepsOf(
  spots: readonly (LinePoint & { readonly label: string })[],
  perPixel: LinePoint,
): readonly number[] {
  const points = spots.map(({ x, y }) => ({ x: x / perPixel.x, y: y / perPixel.y, half: 6 }));
  const taken = [...points];
  return spots.map(({ label }, i) => {
    const half = LETTER * label.length / 2 + 4;
    const at = (step: number): LinePoint => ({
      x: points[i]!.x,
      y: points[i]!.y + RISE + step * STEP,
    });
    const covers = ({ x, y }: LinePoint): boolean =>
      taken.some((it) => Math.abs(it.x - x) < it.half + half && Math.abs(it.y - y) < RISE);
    let step = 0;
    while (step < 2 * spots.length && covers(at(step))) step++;
    taken.push({ ...at(step), half });
    return step;
  });
}
