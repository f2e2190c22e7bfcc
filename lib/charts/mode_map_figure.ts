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

/** What gives first at one pair of choices. */
export interface ModeCell {
  /** Across, such as face thickness: the middle of the cell [SI]. */
  readonly x: number;
  /** Up, such as core thickness: the middle of the cell [SI]. */
  readonly y: number;
  /** The failure mode. */
  readonly mode: string;
}

/** What goes into a mode map. */
export interface ModeMapData {
  /** A full grid of cells, evenly spaced both ways. */
  readonly cells: readonly ModeCell[];
  /** Name and unit of the x axis. */
  readonly x: Axis;
  /** Name and unit of the y axis. */
  readonly y: Axis;
  /** Every mode of the maps that are read side by side, so that each has one ground in all. */
  readonly modes?: readonly string[];
  /** The part as scheduled [SI]. */
  readonly chosen?: { readonly x: number; readonly y: number; readonly label: string };
}

/** Ground of each mode: hue and strength, told apart in grey too; the name stands in the area. */
const GROUNDS = [
  { fill: BLUE, opacity: 0.65 },
  { fill: ORANGE, opacity: 0.35 },
  { fill: "currentColor", opacity: 0.12 },
  { fill: BLUE, opacity: 0.28 },
  { fill: ORANGE, opacity: 0.75 },
  { fill: "currentColor", opacity: 0.45 },
];

const SHAPE: Fields = {
  cells: [{ ...POINT, mode: "words" }],
  x: AXIS,
  y: AXIS,
  "modes?": ["words"],
  "chosen?": { ...POINT, label: "words" },
};

/**
 * A map of what gives first over two choices, each area named where it is widest.
 *
 * @param data Cells, axes and the scheduled part; values [SI].
 * @param finding The finding and the text alternative.
 * @returns A standalone SVG element.
 * @throws {InputError} If there are under four cells, more than six modes, or a value is not
 * finite.
 *
 * @example
 * ```ts
 * import { modeMapFigure } from "@laminate/notebooks/charts";
 * import { assertEquals } from "@std/assert";
 *
 * const svg = modeMapFigure({
 *   cells: [1, 2].flatMap((x) => [1, 2].map((y) => ({ x, y, mode: x > y ? "core" : "face" }))),
 *   x: { name: "face" },
 *   y: { name: "core" },
 * }, { title: "Thin faces give first", description: "Four cells." });
 * assertEquals(svg.tagName, "svg");
 * ```
 */
export function modeMapFigure(data: ModeMapData, finding: Finding): SVGSVGElement {
  const { x, y, chosen } = checkShape(data, SHAPE);
  const [acrossSI, upSI] = [x.unit?.perSI ?? 1, y.unit?.perSI ?? 1];
  const cells = checkPoints("cells", data.cells, 4).map(({ mode, ...at }) => ({
    mode,
    x: checkCoordinate(`${x.name} of a cell`, at.x) * acrossSI,
    y: checkCoordinate(`${y.name} of a cell`, at.y) * upSI,
  }));
  const present = new Set(cells.map(({ mode }) => mode));
  const modes = [...new Set([...present, ...data.modes ?? []])].toSorted();
  checkAtMost("modes", modes, GROUNDS.length);
  const [dx, dy] = [spacing(cells.map((cell) => cell.x)), spacing(cells.map((cell) => cell.y))];
  const spot = chosen === undefined ? [] : [{
    label: chosen.label,
    x: checkCoordinate(`${x.name} of ${chosen.label}`, chosen.x) * acrossSI,
    y: checkCoordinate(`${y.name} of ${chosen.label}`, chosen.y) * upSI,
  }];
  return drawFigure({
    height: 440,
    x: { label: axisLabel(x.name, x.unit), labelAnchor: "center" },
    y: { label: axisLabel(y.name, y.unit) },
    marks: [
      modes.map((mode, i) =>
        Plot.rect(cells.filter((cell) => cell.mode === mode), {
          x1: (cell: { x: number }) => cell.x - dx / 2,
          x2: (cell: { x: number }) => cell.x + dx / 2,
          y1: (cell: { y: number }) => cell.y - dy / 2,
          y2: (cell: { y: number }) => cell.y + dy / 2,
          fill: GROUNDS[i]!.fill,
          fillOpacity: GROUNDS[i]!.opacity,
          shapeRendering: "crispEdges",
        })
      ),
      Plot.text([...present].map((mode) => heart(mode, cells, { dx, dy })), {
        x: "x",
        y: "y",
        text: "mode",
        fontWeight: "600",
        ...HALO,
      }),
      Plot.dot(spot, { x: "x", y: "y", symbol: "times", r: 8, strokeWidth: 2.5 }),
      Plot.text(spot, { x: "x", y: "y", text: "label", dy: -15, ...HALO }),
    ],
  }, finding);
}

interface Cell extends ModeCell {
  readonly mode: string;
}

/** Smallest distance between neighbours. */
function spacing(values: readonly number[]): number {
  const sorted = [...new Set(values)].toSorted((a, b) => a - b);
  const gaps = sorted.slice(1).map((value, i) => value - sorted[i]!).filter((gap) => gap > 1e-12);
  return gaps.length === 0 ? 1 : Math.min(...gaps);
}

/** The cell of a mode that is farthest from any other mode and from the frame: room for a name. */
function heart(
  mode: string,
  cells: readonly Cell[],
  { dx, dy }: { readonly dx: number; readonly dy: number },
): Cell {
  const own = cells.filter((cell) => cell.mode === mode);
  const others = cells.filter((cell) => cell.mode !== mode);
  const [xs, ys] = [cells.map((cell) => cell.x), cells.map((cell) => cell.y)];
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  const room = (cell: Cell): number =>
    Math.min(
      (cell.x - left) / dx / 2,
      (right - cell.x) / dx / 2,
      (cell.y - low) / dy,
      (high - cell.y) / dy,
      ...others.map((other) => Math.hypot((other.x - cell.x) / dx / 2, (other.y - cell.y) / dy)),
    );
  const rooms = own.map(room);
  const widest = Math.max(...rooms);
  const candidates = own.filter((_, i) => rooms[i]! >= widest - 1e-9);
  // Figures too far apart for a distance: the drawing refuses them.
  if (candidates.length === 0) return own[0]!;
  const middle = (along: "x" | "y"): number =>
    candidates.reduce((sum, cell) => sum + cell[along], 0) / candidates.length;
  const [mx, my] = [middle("x"), middle("y")];
  const off = (cell: Cell): number => Math.hypot((cell.x - mx) / dx / 2, (cell.y - my) / dy);
  return candidates.reduce((best, cell) => off(cell) < off(best) ? cell : best);
}
