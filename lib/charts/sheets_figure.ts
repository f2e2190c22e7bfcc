import * as Plot from "@observablehq/plot";
import { checksFor } from "../check/mod.ts";
import {
  BLUE,
  checkAtMost,
  checkCoordinate,
  checkPoints,
  drawFigure,
  type Finding,
  ORANGE,
  WIDTH,
} from "./_figure.ts";
import { checkShape, type Fields } from "./_shape.ts";

const check = checksFor("draw the figure");

/** A sheet that came out curved. */
export interface CurvedSheet {
  /** Its name, drawn below it. */
  readonly label: string;
  /** A second line below it, such as how far it is out of flat. */
  readonly remark?: string;
  /** Curvature −∂²w/∂x² [1/m]. */
  readonly kappaX: number;
  /** Curvature −∂²w/∂y² [1/m]. */
  readonly kappaY: number;
  /** Twist −2 ∂²w/∂x∂y [1/m]. */
  readonly kappaXY: number;
}

/** What goes into a figure of sheets. */
export interface SheetsData {
  /** At most three sheets, of one size. */
  readonly sheets: readonly CurvedSheet[];
  /** Size along x [m]. */
  readonly lengthX: number;
  /** Size along y [m]. */
  readonly lengthY: number;
}

/** How a step along y is drawn: aside and up, as seen from above at a slant. */
const SLANT = { x: 0.42, y: 0.5 };
/** Drawn height of the most curved sheet over its length. */
const TALL = 0.3;
const LINES_X = 9;
const LINES_Y = 7;
const MARGIN = 24;

const SHAPE: Fields = {
  sheets: [{
    label: "words",
    "remark?": "words",
    kappaX: "number",
    kappaY: "number",
    kappaXY: "number",
  }],
};

/**
 * Curved sheets on a table, side by side: what came off the mould. Heights are drawn larger than
 * they are, all by the same factor, which the figure states.
 *
 * @param data Sheets and their size [m], [1/m].
 * @param finding The finding and the text alternative.
 * @returns A standalone SVG element.
 * @throws {InputError} If there is no sheet, there are more than three, or a value is not finite
 * or a length not above 0.
 *
 * @example
 * ```ts
 * import { sheetsFigure } from "@laminate/notebooks/charts";
 * import { assertEquals } from "@std/assert";
 *
 * const svg = sheetsFigure({
 *   sheets: [{ label: "[0/90]", kappaX: 0.1, kappaY: -0.1, kappaXY: 0 }],
 *   lengthX: 0.5,
 *   lengthY: 0.4,
 * }, { title: "The cross-ply comes out as a saddle", description: "One sheet." });
 * assertEquals(svg.tagName, "svg");
 * ```
 */
export function sheetsFigure(data: SheetsData, finding: Finding): SVGSVGElement {
  const sheets = checkPoints("sheets", checkShape(data, SHAPE).sheets);
  checkAtMost("sheets", sheets, 3);
  const size = {
    x: check.positive("length along x", data.lengthX, "m"),
    y: check.positive("length along y", data.lengthY, "m"),
  };
  const shapes = sheets.map((sheet) => shapeOf(sheet, size));
  const highest = Math.max(...shapes.map(({ gap }) => gap));
  const times = exaggeration(highest, size.x);
  const pitch = 1.12 * (size.x + SLANT.x * size.y);
  const drawn = shapes.map(({ lines, low }, i) => ({
    ...sheets[i]!,
    middle: i * pitch + (size.x + SLANT.x * size.y) / 2,
    outline: OUTLINE.map(([x, y]) => project({ x: x * size.x, y: y * size.y, z: 0 }, i * pitch)),
    lines: lines.map((line) =>
      line.map(({ x, y, z }) => project({ x, y, z: times * (z - low) }, i * pitch))
    ),
  }));
  const heights = times === 1 ? "heights as they are" : `heights drawn ${times} times as large`;
  const wide = 3 * pitch;
  const top = SLANT.y * size.y + Math.max(times * highest, 0.05 * size.x);
  const height = (WIDTH - 2 * MARGIN) * top / wide;
  // Fewer than three sheets stand in the middle.
  const aside = (3 - sheets.length) * pitch / 2;
  return drawFigure({
    width: WIDTH,
    height: height + 84,
    marginLeft: MARGIN,
    marginRight: MARGIN,
    marginTop: 14,
    marginBottom: 70,
    x: { domain: [-aside, wide - aside], axis: null },
    y: { domain: [0, top], axis: null },
    marks: [
      drawn.map(({ outline }) =>
        Plot.line(outline, { x: "x", y: "y", strokeDasharray: "3,4", strokeOpacity: 0.7 })
      ),
      drawn.map(({ lines }) =>
        lines.map((line, i) =>
          Plot.line(line, {
            x: "x",
            y: "y",
            stroke: i < LINES_Y ? BLUE : ORANGE,
            strokeWidth: 1.6,
          })
        )
      ),
      below(drawn, "label", { dy: 18, fontWeight: "600" }),
      below(drawn, "remark", { dy: 36 }),
      Plot.text([`${heights}; dashed: the table; x runs from left to right`], {
        frameAnchor: "bottom",
        dy: 60,
      }),
    ],
  }, finding);
}

/** A place on a sheet, from its front left corner and over the table [m]. */
interface Place {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** Corners of a sheet in order, as shares of its sides [1]. */
const OUTLINE = [[0, 0], [1, 0], [1, 1], [0, 1], [0, 0]] as const;

/** A sheet as lines along x, then lines along y, with its lowest place and its gap. */
function shapeOf(
  { label, kappaX, kappaY, kappaXY }: CurvedSheet,
  size: { readonly x: number; readonly y: number },
): { readonly lines: readonly (readonly Place[])[]; readonly low: number; readonly gap: number } {
  const curvatures = Object.entries({ kappaX, kappaY, kappaXY });
  const [kx, ky, kxy] = curvatures.map(([name, value]) =>
    checkCoordinate(`${name} of ${label}`, value)
  ) as [number, number, number];
  const place = (u: number, v: number): Place => {
    const [x, y] = [(u - 0.5) * size.x, (v - 0.5) * size.y];
    const z = -(kx * x * x + ky * y * y + kxy * x * y) / 2;
    return { x: u * size.x, y: v * size.y, z };
  };
  const steps = (count: number): readonly number[] =>
    Array.from({ length: count }, (_, i) => i / (count - 1));
  const fine = steps(25);
  const lines = [
    ...steps(LINES_Y).map((v) => fine.map((u) => place(u, v))),
    ...steps(LINES_X).map((u) => fine.map((v) => place(u, v))),
  ];
  const heights = lines.flatMap((line) => line.map(({ z }) => z));
  const low = Math.min(...heights);
  return { lines, low, gap: Math.max(...heights) - low };
}

/** The largest round factor with which the most curved sheet keeps its height. */
function exaggeration(gap: number, length: number): number {
  if (!(gap > 1e-9 * length)) return 1;
  const most = TALL * length / gap;
  const power = 10 ** Math.floor(Math.log10(most));
  const round = [5, 2, 1].find((step) => step * power <= most)! * power;
  return Number(round.toPrecision(1));
}

/** Where a place is drawn, the front left corner of its sheet at `left`. */
function project({ x, y, z }: Place, left: number): { readonly x: number; readonly y: number } {
  return { x: left + x + SLANT.x * y, y: SLANT.y * y + z };
}

function below<T extends { readonly middle: number }>(
  drawn: readonly T[],
  text: keyof T & string,
  style: { readonly dy: number; readonly fontWeight?: string },
): Plot.Markish {
  return Plot.text(drawn, { x: "middle", text, frameAnchor: "bottom", ...style });
}
