import * as Plot from "@observablehq/plot";
import {
  axisLabel,
  type AxisUnit,
  BLUE,
  checkCoordinate,
  checkPoints,
  drawFigure,
  type Finding,
  ORANGE,
} from "./_figure.ts";
import { checkShape, type Fields, UNIT } from "./_shape.ts";

/** A reading's distance from the fitted line. */
export interface Residual {
  /** Total load [N]. */
  readonly load: number;
  /** Reading minus line [m]. */
  readonly residual: number;
  /** True for a reading that does not fit the others. */
  readonly doubtful?: boolean;
}

/** What goes into a residuals figure. */
export interface ResidualsData {
  /** One entry a reading. */
  readonly residuals: readonly Residual[];
  /** What the gauge itself cannot tell apart, drawn as a band around zero [m]. */
  readonly resolution?: number;
  /** Unit of the load axis. */
  readonly loadUnit: AxisUnit;
  /** Unit of the residuals. */
  readonly deflectionUnit: AxisUnit;
}

const SHAPE: Fields = {
  residuals: [{ load: "number", residual: "number" }],
  "resolution?": "number",
  loadUnit: UNIT,
  deflectionUnit: UNIT,
};

/**
 * What the straight line leaves over, reading by reading.
 *
 * @param data Residuals and the gauge's resolution [SI].
 * @param text The finding and the text alternative.
 * @returns A standalone SVG element.
 * @throws {InputError} If there is no residual or a value is not finite.
 *
 * @example
 * ```ts
 * import { residualsFigure } from "@laminate/notebooks/charts";
 * import { assertEquals } from "@std/assert";
 *
 * const svg = residualsFigure({
 *   residuals: [{ load: 10, residual: 1e-5 }, { load: 20, residual: -1e-5 }],
 *   loadUnit: { symbol: "N", perSI: 1 },
 *   deflectionUnit: { symbol: "mm", perSI: 1000 },
 * }, { title: "The readings scatter like the gauge", description: "Two residuals." });
 * assertEquals(svg.tagName, "svg");
 * ```
 */
export function residualsFigure(data: ResidualsData, text: Finding): SVGSVGElement {
  const { resolution, loadUnit, deflectionUnit } = checkShape(data, SHAPE);
  const residuals = checkPoints("residuals", data.residuals).map((entry, i) => ({
    load: checkCoordinate(`load of reading ${i + 1}`, entry.load) * loadUnit.perSI,
    residual: checkCoordinate(`residual of reading ${i + 1}`, entry.residual) *
      deflectionUnit.perSI,
    doubtful: entry.doubtful ?? false,
  }));
  const half = resolution === undefined
    ? undefined
    : checkCoordinate("resolution", resolution) * deflectionUnit.perSI;
  return drawFigure({
    height: 260,
    marginRight: 120,
    x: { label: axisLabel("load", loadUnit), labelAnchor: "center" },
    y: { label: axisLabel("reading − line", deflectionUnit), grid: true, nice: true },
    marks: [
      half === undefined ? null : [
        Plot.rect([{}], {
          y1: -half,
          y2: half,
          fill: "currentColor",
          fillOpacity: 0.14,
        }),
        Plot.text(["gauge resolution"], {
          y: () => half,
          frameAnchor: "right",
          textAnchor: "start",
          dx: 8,
        }),
      ],
      Plot.ruleY([0]),
      Plot.ruleX(residuals, {
        x: "load",
        y1: 0,
        y2: "residual",
        stroke: (entry: { doubtful: boolean }) => entry.doubtful ? ORANGE : BLUE,
      }),
      Plot.dot(residuals.filter((entry) => !entry.doubtful), {
        x: "load",
        y: "residual",
        fill: BLUE,
        r: 3.5,
      }),
      Plot.dot(residuals.filter((entry) => entry.doubtful), {
        x: "load",
        y: "residual",
        symbol: "times",
        stroke: ORANGE,
        strokeWidth: 2.5,
        r: 7,
      }),
    ],
  }, text);
}
