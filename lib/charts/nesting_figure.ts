import * as Plot from "@observablehq/plot";
import { checksFor } from "../check/mod.ts";
import {
  axisLabel,
  type AxisUnit,
  BLUE,
  checkPoints,
  drawFigure,
  type Finding,
  HALO,
  WIDTH,
} from "./_figure.ts";
import { checkShape, type Fields, POINT, UNIT } from "./_shape.ts";

const check = checksFor("draw the figure");

/** A piece on a roll or a sheet. */
export interface NestedPiece {
  /** What stands in it: a number or a few letters. */
  readonly label: string;
  /** From the start of the roll or sheet [m]. */
  readonly fromStart: number;
  /** From its edge [m]. */
  readonly fromEdge: number;
  /** Size along the roll [m]. */
  readonly length: number;
  /** Size across the roll [m]. */
  readonly width: number;
  /** Sheet that it lies on, from 1; 1 if left out [1]. */
  readonly sheet?: number;
  /** Corners of the piece within its rectangle, where it does not fill it [m]. */
  readonly corners?: readonly { readonly x: number; readonly y: number }[];
}

/** What goes into a sketch of nesting. */
export interface NestingData {
  /** The pieces. */
  readonly pieces: readonly NestedPiece[];
  /** Length of the roll that is used, or of a sheet [m]. */
  readonly stockLength: number;
  /** Width of the roll or sheet [m]. */
  readonly stockWidth: number;
  /** Unit of the axes. */
  readonly unit: AxisUnit;
}

const MARGIN = { left: 64, right: 24, top: 30, bottom: 46 } as const;
/** Taller than this, a sketch pushes the words off the page [px]. */
const TALLEST = 120;
/** Gap between sheets, a share of their length. */
const GAP = 0.06;

const SHAPE: Fields = {
  pieces: [{
    label: "words",
    fromStart: "number",
    fromEdge: "number",
    length: "number",
    width: "number",
    "sheet?": "number",
    "corners?": [POINT],
  }],
  stockLength: "number",
  stockWidth: "number",
  unit: UNIT,
};

/**
 * Where pieces lie on a roll or on sheets, to scale: the roll runs from left to right, dashed where
 * a piece does not fill its rectangle.
 *
 * @param data Pieces and the roll or sheet [m].
 * @param finding The finding and the text alternative.
 * @returns A standalone SVG element.
 * @throws {InputError} If there is no piece, a size is not above 0 or a piece lies outside.
 *
 * @example
 * ```ts
 * import { nestingFigure } from "@laminate/notebooks/charts";
 * import { assertEquals } from "@std/assert";
 *
 * const svg = nestingFigure({
 *   pieces: [{ label: "1", fromStart: 0, fromEdge: 0, length: 0.9, width: 0.5 }],
 *   stockLength: 0.9,
 *   stockWidth: 1,
 *   unit: { symbol: "mm", perSI: 1000 },
 * }, { title: "Half of the roll is waste", description: "One piece." });
 * assertEquals(svg.tagName, "svg");
 * ```
 */
export function nestingFigure(data: NestingData, finding: Finding): SVGSVGElement {
  checkShape(data, SHAPE);
  const stock = {
    length: check.positive("length of the stock", data.stockLength, "m"),
    width: check.positive("width of the stock", data.stockWidth, "m"),
  };
  const pieces = checkPoints("pieces", data.pieces).map((piece) => placed(piece, stock));
  const sheets = Math.max(...pieces.map(({ sheet }) => sheet));
  const total = stock.length * (sheets + GAP * (sheets - 1));
  const room = WIDTH - MARGIN.left - MARGIN.right;
  const scale = Math.min(room / total, TALLEST / stock.width);
  const { perSI } = data.unit;
  const shown = (value: number): number => value * perSI;
  const outlines = Array.from({ length: sheets }, (_, i) => ({
    x1: shown(sheetStart(i + 1, stock.length)),
    x2: shown(sheetStart(i + 1, stock.length) + stock.length),
    y1: 0,
    y2: shown(stock.width),
  }));
  const blanks = pieces.map(({ x, fromEdge, length, width, label }) => ({
    x1: shown(x),
    x2: shown(x + length),
    y1: shown(fromEdge),
    y2: shown(fromEdge + width),
    label,
  }));
  const edges = pieces.flatMap(({ corners }, i) =>
    corners.map(({ x, y }) => ({ x: shown(x), y: shown(y), i }))
  );
  return drawFigure({
    height: scale * stock.width + MARGIN.top + MARGIN.bottom,
    marginLeft: MARGIN.left,
    marginRight: WIDTH - MARGIN.left - scale * total,
    marginTop: MARGIN.top,
    marginBottom: MARGIN.bottom,
    x: {
      domain: [0, shown(total)],
      label: axisLabel(sheets > 1 ? "along the sheets" : "along", data.unit),
      labelAnchor: "center",
      // On a short roll there is room for its two ends alone.
      ticks: scale * total < 140 ? [0, shown(total)] : Math.round(scale * total / 90),
      tickFormat: (value: number) => String(Number(value.toPrecision(3))),
    },
    y: {
      domain: [0, shown(stock.width)],
      label: axisLabel("across", data.unit),
      ticks: Math.max(2, Math.round(scale * stock.width / 40)),
    },
    marks: [
      Plot.rect(blanks, {
        ...{ x1: "x1", x2: "x2", y1: "y1", y2: "y2" },
        fill: BLUE,
        fillOpacity: 0.18,
        stroke: "currentColor",
        strokeWidth: 1.2,
        strokeDasharray: "3,3",
      }),
      Plot.line(edges, { x: "x", y: "y", z: "i", curve: "linear-closed", strokeWidth: 1.8 }),
      Plot.rect(outlines, {
        ...{ x1: "x1", x2: "x2", y1: "y1", y2: "y2" },
        fill: "none",
        stroke: "currentColor",
        strokeWidth: 2.4,
      }),
      Plot.text(blanks, {
        x: ({ x1, x2 }: { x1: number; x2: number }) => (x1 + x2) / 2,
        y: ({ y1, y2 }: { y1: number; y2: number }) => (y1 + y2) / 2,
        text: "label",
        fontWeight: "600",
        fontSize: 15,
        ...HALO,
      }),
    ],
  }, finding);
}

function sheetStart(sheet: number, length: number): number {
  return (sheet - 1) * length * (1 + GAP);
}

/** A hair beyond the stock is rounding. */
const ROUNDING = 1e-6;

function placed(
  piece: NestedPiece,
  stock: { readonly length: number; readonly width: number },
): Required<NestedPiece> & { readonly x: number } {
  const { label, fromStart, fromEdge, length, width, sheet = 1 } = check.object("piece", piece);
  check.text("label of a piece", label);
  check.nonNegative(`place of ${label} along`, fromStart, "m");
  check.nonNegative(`place of ${label} across`, fromEdge, "m");
  check.positive(`length of ${label}`, length, "m");
  check.positive(`width of ${label}`, width, "m");
  check.count(`sheet of ${label}`, sheet, 1);
  check.within(`sheet of ${label}`, sheet, { min: 1, max: 1000 });
  if (!(fromStart + length <= stock.length * (1 + ROUNDING))) {
    check.refuse(`end of ${label}`, fromStart + length, `must be within ${stock.length} m`);
  }
  if (!(fromEdge + width <= stock.width * (1 + ROUNDING))) {
    check.refuse(`edge of ${label}`, fromEdge + width, `must be within ${stock.width} m`);
  }
  const x = sheetStart(sheet, stock.length) + fromStart;
  const own = piece.corners ?? [];
  const whole = [{ x: 0, y: 0 }, { x: length, y: 0 }, { x: length, y: width }, { x: 0, y: width }];
  const corners = (own.length === 0 ? whole : own).map((corner) => ({
    x: x + check.finite("x of a corner", check.object("corner", corner).x, "m"),
    y: fromEdge + check.finite("y of a corner", corner.y, "m"),
  }));
  return { label, fromStart, fromEdge, length, width, sheet, corners, x };
}
