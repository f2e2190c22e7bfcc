import * as Plot from "@observablehq/plot";
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

/** A design by what it costs and what it gives. */
export interface FrontPoint {
  /** Across, such as mass [SI]. */
  readonly x: number;
  /** Up, such as deflection [SI]. */
  readonly y: number;
}

/** What goes into a front figure. */
export interface FrontData {
  /** The designs that will do; at most some thousand are worth drawing. */
  readonly designs: readonly FrontPoint[];
  /** Designs that were looked at and will not do, drawn as small crosses, and why not. */
  readonly ruledOut?: { readonly designs: readonly FrontPoint[]; readonly label: string };
  /** Those that no other design beats, in order of x; a named one has its name beside it. */
  readonly front: readonly (FrontPoint & { readonly label?: string })[];
  /** The design that was chosen. */
  readonly chosen?: FrontPoint & { readonly label: string };
  /** Largest y that is wanted [SI]. */
  readonly limit?: { readonly value: number; readonly label: string };
  /** Name and unit of the x axis. */
  readonly x: Axis;
  /** Name and unit of the y axis, drawn logarithmically. */
  readonly y: Axis;
}

// The axis of y is logarithmic.
const DESIGN = { x: "number", y: "positive" } as const;
const SHAPE: Fields = {
  designs: [DESIGN],
  "ruledOut?": { designs: [DESIGN], label: "words" },
  front: [{ ...DESIGN, "label?": "words" }],
  "chosen?": { ...DESIGN, label: "words" },
  "limit?": { value: "positive", label: "words" },
  x: AXIS,
  y: AXIS,
};

/**
 * A cloud of designs and its trade-off front: on the front, nothing is lighter and stiffer.
 *
 * @param data Designs, front and chosen point; values [SI], y above 0.
 * @param finding The finding and the text alternative.
 * @returns A standalone SVG element.
 * @throws {InputError} If there is no design or front, or a value is not finite.
 *
 * @example
 * ```ts
 * import { frontFigure } from "@laminate/notebooks/charts";
 * import { assertEquals } from "@std/assert";
 *
 * const svg = frontFigure({
 *   designs: [{ x: 1, y: 3 }, { x: 2, y: 1 }, { x: 3, y: 2 }],
 *   front: [{ x: 1, y: 3 }, { x: 2, y: 1 }],
 *   x: { name: "mass" },
 *   y: { name: "deflection" },
 * }, { title: "Two designs are worth building", description: "Three designs." });
 * assertEquals(svg.tagName, "svg");
 * ```
 */
export function frontFigure(data: FrontData, finding: Finding): SVGSVGElement {
  const { x, y, chosen, limit, ruledOut } = checkShape(data, SHAPE);
  const shown = (what: string, point: FrontPoint): FrontPoint => ({
    x: checkCoordinate(`${x.name} of ${what}`, point.x) * (x.unit?.perSI ?? 1),
    y: checkCoordinate(`${y.name} of ${what}`, point.y) * (y.unit?.perSI ?? 1),
  });
  const designs = checkPoints("designs", data.designs).map((point) => shown("a design", point));
  const front = checkPoints("front", data.front).map(({ label, ...point }) => ({
    ...shown(label ?? "the front", point),
    label,
  }));
  const crossed = (ruledOut?.designs ?? []).map((point) => shown("a design ruled out", point));
  const named = front.filter(({ label }) => label !== undefined);
  // Names of points far to the right stand left of them, so that none is cut off.
  const across = [...designs, ...crossed, ...front].map((point) => point.x);
  const turn = Math.min(...across) + 0.7 * (Math.max(...across) - Math.min(...across));
  const key = ruledOut === undefined ? [] : [`× ${ruledOut.label}`];
  const spot = chosen === undefined
    ? []
    : [{ ...shown(chosen.label, chosen), label: chosen.label }];
  const rule = limit === undefined ? [] : [{
    label: limit.label,
    at: checkCoordinate(limit.label, limit.value) * (y.unit?.perSI ?? 1),
  }];
  return drawFigure({
    height: 440,
    x: { label: axisLabel(x.name, x.unit), grid: true, nice: true, labelAnchor: "center" },
    y: {
      label: axisLabel(y.name, y.unit),
      type: "log",
      grid: true,
      tickFormat: (value: number) => String(value),
    },
    marks: [
      Plot.dot(crossed, { x: "x", y: "y", r: 2.6, symbol: "times", strokeOpacity: 0.45 }),
      Plot.dot(designs, { x: "x", y: "y", r: 2.6, fill: "currentColor", fillOpacity: 0.5 }),
      Plot.text(key, { text: (words: string) => words, frameAnchor: "top-right", dy: -14 }),
      Plot.ruleY(rule, { y: "at", strokeDasharray: "5,4" }),
      Plot.text(rule, {
        y: "at",
        text: "label",
        frameAnchor: "right",
        textAnchor: "end",
        dx: -4,
        dy: -9,
        ...HALO,
      }),
      Plot.line(front, { x: "x", y: "y", stroke: BLUE, strokeWidth: 2 }),
      Plot.dot(front, { x: "x", y: "y", r: 4, fill: BLUE }),
      [named.filter(({ x }) => x <= turn), named.filter(({ x }) => x > turn)].map((points, i) =>
        Plot.text(points, {
          x: "x",
          y: "y",
          text: "label",
          textAnchor: i === 0 ? "start" : "end",
          dx: i === 0 ? 10 : -4,
          dy: i === 0 ? -3 : -13,
          ...HALO,
        })
      ),
      Plot.dot(spot, {
        x: "x",
        y: "y",
        symbol: "star",
        r: 9,
        fill: ORANGE,
        stroke: "currentColor",
      }),
      Plot.text(spot, {
        x: "x",
        y: "y",
        text: "label",
        textAnchor: "start",
        dx: 13,
        dy: -10,
        fontWeight: "600",
        ...HALO,
      }),
    ],
  }, finding);
}
