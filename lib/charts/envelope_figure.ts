import * as Plot from "@observablehq/plot";
import {
  type Axis,
  axisLabel,
  BLUE,
  checkAtMost,
  checkCoordinate,
  checkPoints,
  drawFigure,
  type Finding,
  HALO,
  ORANGE,
} from "./_figure.ts";
import { AXIS, checkShape, type Fields, POINT } from "./_shape.ts";

/** One closed curve: the loads at which one criterion says that a ply breaks. */
export interface EnvelopeCurve {
  /** Name of the criterion. */
  readonly label: string;
  /** Corner points in order around the origin [SI]. */
  readonly points: readonly { readonly x: number; readonly y: number }[];
}

/** What goes into an envelope figure. */
export interface EnvelopeData {
  /** At most six curves. */
  readonly curves: readonly EnvelopeCurve[];
  /** Name and unit of the load across. */
  readonly x: Axis;
  /** Name and unit of the load up. */
  readonly y: Axis;
  /** The load of the part, marked [SI]. */
  readonly load?: { readonly x: number; readonly y: number; readonly label: string };
}

const SYMBOLS = ["circle", "square", "triangle", "diamond", "star", "wye"] as const;

const SHAPE: Fields = {
  curves: [{ label: "words", points: [POINT] }],
  x: AXIS,
  y: AXIS,
  "load?": { ...POINT, label: "words" },
};

/**
 * Failure envelopes for two loads, criterion by criterion; inside all of them the stack holds.
 *
 * @param data Curves, axes and the part's load; values [SI].
 * @param finding The finding and the text alternative.
 * @returns A standalone SVG element.
 * @throws {InputError} If there is no curve, a curve has under four points, or a value is not
 * finite.
 *
 * @example
 * ```ts
 * import { envelopeFigure } from "@laminate/notebooks/charts";
 * import { assertEquals } from "@std/assert";
 *
 * const square = [{ x: 1, y: 1 }, { x: -1, y: 1 }, { x: -1, y: -1 }, { x: 1, y: -1 }];
 * const svg = envelopeFigure({
 *   curves: [{ label: "maximum stress", points: square }],
 *   x: { name: "Nx" },
 *   y: { name: "Ny" },
 * }, { title: "A square", description: "One envelope." });
 * assertEquals(svg.tagName, "svg");
 * ```
 */
export function envelopeFigure(data: EnvelopeData, finding: Finding): SVGSVGElement {
  const { x, y, load } = checkShape(data, SHAPE);
  const perSI = { x: x.unit?.perSI ?? 1, y: y.unit?.perSI ?? 1 };
  const shown = (label: string, point: { readonly x: number; readonly y: number }) => ({
    x: checkCoordinate(`${x.name} of ${label}`, point.x) * perSI.x,
    y: checkCoordinate(`${y.name} of ${label}`, point.y) * perSI.y,
  });
  const curves = checkPoints("curves", data.curves).map(({ label, points }, i) => {
    const all = checkPoints(`points of ${label}`, points, 4).map((point) => shown(label, point));
    return {
      label,
      hue: i % 2 === 0 ? BLUE : ORANGE,
      symbol: SYMBOLS[i]!,
      line: [...all, all[0]!],
      // Symbols stand apart along the curve, each curve's at places of its own.
      marks: all.filter((_, k) => k % 12 === (2 * i) % 12),
    };
  });
  checkAtMost("curves", curves, SYMBOLS.length);
  const spot = load === undefined ? [] : [{ ...shown(load.label, load), label: load.label }];
  const key = curves.map(({ label, symbol, hue }, i) => ({ label, symbol, hue, i }));
  return drawFigure({
    height: 480,
    marginRight: 170,
    x: { label: axisLabel(x.name, x.unit), grid: true, nice: true, labelAnchor: "center" },
    y: { label: axisLabel(y.name, y.unit), grid: true, nice: true },
    marks: [
      Plot.ruleX([0], { strokeOpacity: 0.5 }),
      Plot.ruleY([0], { strokeOpacity: 0.5 }),
      curves.map(({ line, marks, hue, symbol }) => [
        Plot.line(line, { x: "x", y: "y", stroke: hue, strokeWidth: 1.8 }),
        Plot.dot(marks, { x: "x", y: "y", symbol, stroke: hue, r: 4.5, strokeWidth: 1.6 }),
      ]),
      key.map(({ label, symbol, hue, i }) => [
        Plot.dot([{}], {
          frameAnchor: "top-right",
          symbol,
          stroke: hue,
          r: 4.5,
          strokeWidth: 1.6,
          dx: 18,
          dy: 14 + 22 * i,
        }),
        Plot.text([label], {
          frameAnchor: "top-right",
          textAnchor: "start",
          dx: 30,
          dy: 8 + 22 * i,
        }),
      ]),
      Plot.dot(spot, { x: "x", y: "y", symbol: "times", r: 7, strokeWidth: 2.5 }),
      Plot.text(spot, { x: "x", y: "y", text: "label", dy: -16, ...HALO }),
    ],
  }, finding);
}
