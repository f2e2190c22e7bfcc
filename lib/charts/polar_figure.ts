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
  ORANGE,
  WIDTH,
} from "./_figure.ts";
import { AXIS, checkShape, type Fields } from "./_shape.ts";

/** A quantity that depends on the direction. */
export interface PolarCurve {
  /** Its name, drawn at its largest value. */
  readonly label: string;
  /** Values at even steps of the angle from 0 to below 360° [SI]. */
  readonly values: readonly number[];
}

/** What goes into a polar figure. */
export interface PolarData {
  /** At most four curves. */
  readonly curves: readonly PolarCurve[];
  /** Name and unit of the quantity. */
  readonly radius: Axis;
}

const SIZE = 460;
/** Directions with a label [deg]. */
const DIRECTIONS: readonly number[] = [0, 45, 90, 135, 180, 225, 270, 315];

const SHAPE: Fields = {
  curves: [{ label: "words", values: ["number"] }],
  radius: AXIS,
};

/**
 * A quantity by direction, such as the modulus of a stack: how far from the middle is how much.
 *
 * @param data Curves and the quantity; values [SI].
 * @param finding The finding and the text alternative.
 * @returns A standalone SVG element.
 * @throws {InputError} If there is no curve, a curve has under eight values, or a value is not
 * finite.
 *
 * @example
 * ```ts
 * import { polarFigure } from "@laminate/notebooks/charts";
 * import { assertEquals } from "@std/assert";
 *
 * const svg = polarFigure({
 *   curves: [{ label: "quasi-isotropic", values: Array(36).fill(20e9) }],
 *   radius: { name: "modulus", unit: { symbol: "GPa", perSI: 1e-9 } },
 * }, { title: "Equal in every direction", description: "A circle of 20 GPa." });
 * assertEquals(svg.tagName, "svg");
 * ```
 */
export function polarFigure(data: PolarData, finding: Finding): SVGSVGElement {
  const { curves, radius } = checkShape(data, SHAPE);
  checkPoints("curves", curves);
  checkAtMost("curves", curves, DASHES.length);
  const perSI = radius.unit?.perSI ?? 1;
  const drawn = curves.map(({ label, values }, i) => {
    const radii = checkPoints(`values of ${label}`, values, 8).map((value) =>
      checkCoordinate(`value of ${label}`, value) * perSI
    );
    const points = [...radii, radii[0]!].map((r, k) => polar(r, 360 * k / radii.length));
    return { label, radii, points, dash: DASHES[i]!, hue: i % 2 === 0 ? BLUE : ORANGE };
  });
  const largest = Math.max(...drawn.flatMap(({ points }) => points.map(({ r }) => r)));
  const rings = ringValues(largest);
  const edge = rings.at(-1)! * 1.12;
  const names = placeNames(drawn, edge);
  const margin = (WIDTH - SIZE) / 2;
  return drawFigure({
    width: WIDTH,
    height: SIZE,
    marginLeft: margin,
    marginRight: margin,
    marginTop: 8,
    marginBottom: 8,
    x: { domain: [-edge, edge], axis: null },
    y: { domain: [-edge, edge], axis: null },
    marks: [
      rings.map((ring) =>
        Plot.line(circle(ring), { x: "x", y: "y", stroke: "currentColor", strokeOpacity: 0.25 })
      ),
      Plot.link([0, 45, 90, 135], {
        x1: (angle: number) => polar(-rings.at(-1)!, angle).x,
        y1: (angle: number) => polar(-rings.at(-1)!, angle).y,
        x2: (angle: number) => polar(rings.at(-1)!, angle).x,
        y2: (angle: number) => polar(rings.at(-1)!, angle).y,
        strokeOpacity: 0.25,
      }),
      Plot.text(DIRECTIONS, {
        x: (angle: number) => polar(edge, angle).x,
        y: (angle: number) => polar(edge, angle).y,
        text: (angle: number) => `${angle}°`,
        fillOpacity: 0.75,
      }),
      drawn.map(({ points, dash, hue }) =>
        Plot.line(points, {
          x: "x",
          y: "y",
          stroke: hue,
          strokeWidth: 2.5,
          strokeDasharray: dash,
        })
      ),
      Plot.text(rings, {
        x: (ring: number) => polar(ring, 22.5).x,
        y: (ring: number) => polar(ring, 22.5).y,
        text: (ring: number) => String(ring),
        ...HALO,
      }),
      Plot.text(names, {
        x: "x",
        y: "y",
        text: "label",
        dy: -8,
        dx: 8,
        textAnchor: "start",
        fontWeight: "600",
        ...HALO,
      }),
      Plot.text([`distance from the middle: ${axisLabel(radius.name, radius.unit)}`], {
        frameAnchor: "bottom-right",
        textAnchor: "end",
        dx: margin - 8,
      }),
    ],
  }, finding);
}

interface PolarPoint {
  readonly x: number;
  readonly y: number;
  readonly r: number;
}

interface DrawnCurve {
  readonly label: string;
  readonly radii: readonly number[];
}

/** Room that a name takes [px]. */
const NAME = { height: 20, letter: 7.5 };

type Named = PolarPoint & { readonly label: string };

/** Each curve's name in turn, where it is clear of the directions and of the names before it. */
function placeNames(curves: readonly DrawnCurve[], edge: number): readonly Named[] {
  const perPixel = 2 * edge / SIZE;
  const directions = DIRECTIONS.map((angle) => ({ ...polar(edge, angle), label: `${angle}°` }));
  const placed: Named[] = [...directions];
  for (const curve of curves) {
    const others = curves.filter((other) => other !== curve);
    const clear = ({ x, y }: PolarPoint): boolean =>
      placed.every((name) => {
        const left = name.x < x ? name : curve;
        return Math.abs(name.y - y) >= NAME.height * perPixel ||
          Math.abs(name.x - x) >= NAME.letter * left.label.length * perPixel;
      });
    placed.push({ label: curve.label, ...placeForName(curve, others, clear) });
  }
  return placed.slice(directions.length);
}

/** Where a curve is farthest from the others, on the right half, off the labelled directions. */
function placeForName(
  curve: DrawnCurve,
  others: readonly DrawnCurve[],
  clear: (place: PolarPoint) => boolean,
): PolarPoint {
  const at = ({ radii }: DrawnCurve, angle: number): number =>
    radii[Math.round((angle + 360) % 360 * radii.length / 360) % radii.length]!;
  const room = (angle: number): number =>
    Math.min(...others.map((other) => Math.abs(at(curve, angle) - at(other, angle))));
  const places = Array.from({ length: 35 }, (_, i) => 5 * i - 85)
    .filter((angle) => angle % 45 !== 0)
    .toSorted((a, b) => room(b) - room(a) || Math.abs(a - 65) - Math.abs(b - 65))
    .map((angle) => polar(at(curve, angle), angle));
  return places.find(clear) ?? places[0]!;
}

function polar(r: number, angleDeg: number): PolarPoint {
  const angle = angleDeg * Math.PI / 180;
  return { x: r * Math.cos(angle), y: r * Math.sin(angle), r };
}

function circle(r: number): readonly PolarPoint[] {
  return Array.from({ length: 73 }, (_, i) => polar(r, 5 * i));
}

/** Three to five rings at round values, the last at or beyond the largest value. */
function ringValues(largest: number): readonly number[] {
  const raw = largest / 4;
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = [1, 2, 2.5, 5, 10].map((m) => m * power).find((s) => s >= raw)!;
  const count = Math.ceil(largest / step - 1e-9);
  return Array.from({ length: count }, (_, i) => Number(((i + 1) * step).toPrecision(6)));
}
