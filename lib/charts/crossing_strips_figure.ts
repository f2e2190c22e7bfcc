import * as Plot from "@observablehq/plot";
import {
  axisLabel,
  type AxisUnit,
  BLUE,
  checkAtMost,
  checkCoordinate,
  checkPoints,
  DASHES,
  drawFigure,
  type Finding,
  HALO,
  ORANGE,
} from "./_figure.ts";
import { checkShape, type Fields, POINT, UNIT } from "./_shape.ts";

/** A strip of a plane: what one measurement allows. */
export interface Strip {
  /** What was measured; drawn where the strip ends. */
  readonly label: string;
  /** Lower and upper edge over x, in order of x; parts outside the frame are cut off [SI]. */
  readonly edges: readonly { readonly x: number; readonly low: number; readonly high: number }[];
}

/** A place in the plane. */
export interface PlaneSpot {
  /** Across [SI]. */
  readonly x: number;
  /** Up [SI]. */
  readonly y: number;
  /** What it is. */
  readonly label: string;
  /** Half-lengths of a cross that shows how well it is known [SI]. */
  readonly reach?: { readonly x: number; readonly y: number };
}

/** What goes into a figure of crossing strips. */
export interface CrossingStripsData {
  /** One to three strips. */
  readonly strips: readonly Strip[];
  /** Edge of the region that all strips allow together, in order around it. */
  readonly region?: readonly { readonly x: number; readonly y: number }[];
  /** What the region is called. */
  readonly regionLabel?: string;
  /** Places to compare with, such as the prediction. */
  readonly spots?: readonly PlaneSpot[];
  /** Name, unit and ends of the axis across. */
  readonly x: PlaneAxis;
  /** Name, unit and ends of the axis up. */
  readonly y: PlaneAxis;
}

/** An axis with its ends. */
export interface PlaneAxis {
  /** Name of the quantity. */
  readonly name: string;
  /** Unit in which it is shown. */
  readonly unit?: AxisUnit;
  /** Least value shown [SI]. */
  readonly from: number;
  /** Greatest value shown [SI]. */
  readonly to: number;
}

const PLANE_AXIS = { name: "words", "unit?": UNIT, from: "number", to: "number" } as const;
const SHAPE: Fields = {
  strips: [{ label: "words", edges: [{ x: "number", low: "number", high: "number" }] }],
  "region?": [POINT],
  "regionLabel?": "words",
  "spots?": [{ ...POINT, label: "words", "reach?": POINT }],
  x: PLANE_AXIS,
  y: PLANE_AXIS,
};

/**
 * What each of a few measurements allows in a plane of two unknowns, as strips, and where they
 * cross: one measurement leaves a strip, two a spot.
 *
 * Strips are told apart by dash and label, the common region by its outline.
 *
 * @param data Strips, region, spots and axes; values [SI].
 * @param text The finding and the text alternative.
 * @returns A standalone SVG element.
 * @throws {InputError} If there is no strip or are more than three, or a value is not finite.
 *
 * @example
 * ```ts
 * import { crossingStripsFigure } from "@laminate/notebooks/charts";
 * import { assertEquals } from "@std/assert";
 *
 * const svg = crossingStripsFigure({
 *   strips: [{ label: "sum", edges: [{ x: 0, low: 9, high: 11 }, { x: 10, low: -1, high: 1 }] }],
 *   spots: [{ x: 5, y: 5, label: "predicted" }],
 *   x: { name: "faces", from: 0, to: 10 },
 *   y: { name: "core", from: 0, to: 10 },
 * }, { title: "One test leaves a strip", description: "Pairs that add up to 10." });
 * assertEquals(svg.tagName, "svg");
 * ```
 */
export function crossingStripsFigure(data: CrossingStripsData, text: Finding): SVGSVGElement {
  const { x, y, region = [], spots = [], regionLabel } = checkShape(data, SHAPE);
  checkPoints("strips", data.strips);
  checkAtMost("strips", data.strips, 3);
  const across = (argument: string, value: number): number =>
    checkCoordinate(argument, value) * (x.unit?.perSI ?? 1);
  const up = (argument: string, value: number): number =>
    checkCoordinate(argument, value) * (y.unit?.perSI ?? 1);
  const frame = {
    x: [across("start of the axis across", x.from), across("end of the axis across", x.to)],
    y: [up("start of the axis up", y.from), up("end of the axis up", y.to)],
  } as const;
  const clipped = (value: number): number => Math.min(Math.max(value, frame.y[0]), frame.y[1]);
  const strips = data.strips.map(({ label, edges }, i) => ({
    label,
    dash: DASHES[i]!,
    hue: i % 2 === 0 ? BLUE : ORANGE,
    edges: checkPoints(`edges of ${label}`, edges, 2).map((edge) => ({
      x: across(`x of ${label}`, edge.x),
      low: clipped(up(`lower edge of ${label}`, edge.low)),
      high: clipped(up(`upper edge of ${label}`, edge.high)),
    })).filter(({ x: place, low, high }) =>
      place >= frame.x[0] && place <= frame.x[1] && high > low
    ),
  })).filter(({ edges }) => edges.length > 1);
  const edge = region.map((point) => ({
    x: across("x of the region", point.x),
    y: up("y of the region", point.y),
  }));
  const named = spots.map((spot) => ({
    label: spot.label,
    x: across(`x of ${spot.label}`, spot.x),
    y: up(`y of ${spot.label}`, spot.y),
    reachX: across(`reach of ${spot.label}`, spot.reach?.x ?? 0),
    reachY: up(`reach of ${spot.label}`, spot.reach?.y ?? 0),
  }));
  const top = edge.reduce((high, point) => Math.max(high, point.y), -Infinity);
  return drawFigure({
    height: 420,
    marginRight: 150,
    x: {
      label: axisLabel(x.name, x.unit),
      domain: [...frame.x],
      grid: true,
      labelAnchor: "center",
    },
    y: { label: axisLabel(y.name, y.unit), domain: [...frame.y], grid: true },
    marks: [
      strips.map(({ edges, hue, dash }) => [
        Plot.areaY(edges, { x: "x", y1: "low", y2: "high", fill: hue, fillOpacity: 0.22 }),
        ["low", "high"].map((side) =>
          Plot.line(edges.filter((place) => inFrame(place[side as "low" | "high"], frame.y)), {
            x: "x",
            y: side,
            stroke: hue,
            strokeWidth: 1.8,
            strokeDasharray: dash,
          })
        ),
      ]),
      Plot.line(edge.length === 0 ? [] : [...edge, edge[0]!], {
        x: "x",
        y: "y",
        curve: "linear",
        strokeWidth: 2.5,
        stroke: "currentColor",
        fill: "currentColor",
        fillOpacity: 0.18,
      }),
      Plot.text(edge.filter(({ y: height }) => height === top).slice(0, 1), {
        x: "x",
        y: "y",
        text: () => regionLabel ?? "",
        dy: -12,
        ...HALO,
      }),
      Plot.ruleX(named.filter(({ reachY }) => reachY > 0), {
        x: "x",
        y1: (spot: { y: number; reachY: number }) => clipped(spot.y - spot.reachY),
        y2: (spot: { y: number; reachY: number }) => clipped(spot.y + spot.reachY),
        strokeWidth: 1.4,
      }),
      Plot.link(named.filter(({ reachX }) => reachX > 0), {
        x1: (spot: { x: number; reachX: number }) => Math.max(frame.x[0], spot.x - spot.reachX),
        x2: (spot: { x: number; reachX: number }) => Math.min(frame.x[1], spot.x + spot.reachX),
        y1: "y",
        y2: "y",
        strokeWidth: 1.4,
      }),
      Plot.dot(named, { x: "x", y: "y", r: 5.5, symbol: "diamond", fill: "currentColor" }),
      Plot.text(named, {
        x: "x",
        y: "y",
        text: "label",
        textAnchor: "start",
        dx: 9,
        dy: -10,
        ...HALO,
      }),
      labelsOf(strips, frame).map(({ label, x: place, y: height, anchor }) =>
        Plot.text([{ place, height }], {
          x: "place",
          y: "height",
          text: () => label,
          textAnchor: anchor,
          dx: anchor === "start" ? 6 : -6,
          lineWidth: 14,
          ...HALO,
        })
      ),
    ],
  }, text);
}

interface Edge {
  readonly x: number;
  readonly low: number;
  readonly high: number;
}

function inFrame(
  value: number,
  [from, to]: readonly [number, number] | readonly number[],
): boolean {
  return value > from! && value < to!;
}

interface StripLabel {
  readonly label: string;
  readonly x: number;
  readonly y: number;
  readonly anchor: "start" | "end";
}

/**
 * A strip is named where it leaves the frame on the right; one that stands upright near the top, the
 * first on its left side and further ones on their right, so that neighbours do not cover each other.
 */
function labelsOf(
  strips: readonly { readonly label: string; readonly edges: readonly Edge[] }[],
  frame: { readonly x: readonly number[]; readonly y: readonly number[] },
): readonly StripLabel[] {
  const [width, height] = [frame.x[1]! - frame.x[0]!, frame.y[1]! - frame.y[0]!];
  let upright = 0;
  return strips.map(({ label, edges }): StripLabel => {
    const last = edges.at(-1)!;
    if (last.x > frame.x[1]! - 0.02 * width) {
      return { label, x: frame.x[1]!, y: (last.low + last.high) / 2, anchor: "start" };
    }
    const y = frame.y[1]! - (0.05 + 0.07 * Math.max(0, upright - 1)) * height;
    const across = edges.filter(({ low, high }) => low <= y && y <= high);
    const sides = across.length === 0 ? edges : across;
    const first = upright++ === 0;
    const { x } = first ? sides[0]! : sides.at(-1)!;
    return { label, x, y, anchor: first ? "end" : "start" };
  });
}
