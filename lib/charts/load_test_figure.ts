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

/** One reading of a load test. */
export interface LoadTestPoint {
  /** Total load [N]. */
  readonly load: number;
  /** Deflection [m]. */
  readonly deflection: number;
  /** Whether the load was rising or falling. */
  readonly branch: "loading" | "unloading";
  /** True for a reading that does not fit the others; it is shown apart and named. */
  readonly doubtful?: boolean;
}

/** What goes into a load test figure. */
export interface LoadTestData {
  /** The readings, in the order in which they were taken. */
  readonly readings: readonly LoadTestPoint[];
  /** Fitted straight line: deflection at no load [m] and slope [m/N]. */
  readonly fitted: { readonly intercept: number; readonly slope: number };
  /** Predicted deflection per load with its 95 % limits [m/N]. */
  readonly predicted: { readonly slope: number; readonly low: number; readonly high: number };
  /** Unit of the load axis. */
  readonly loadUnit: AxisUnit;
  /** Unit of the deflection axis. */
  readonly deflectionUnit: AxisUnit;
}

const SHAPE: Fields = {
  readings: [{ load: "number", deflection: "number", branch: "words" }],
  fitted: { intercept: "number", slope: "number" },
  predicted: { slope: "number", low: "number", high: "number" },
  loadUnit: UNIT,
  deflectionUnit: UNIT,
};

/**
 * Readings of a bending test with the fitted line, beside the predicted line and its band.
 *
 * The predicted line starts where the fitted line crosses zero load, so that the seating of the
 * specimen does not look like a difference in stiffness.
 *
 * @param data Readings, fit and prediction [SI].
 * @param text The finding and the text alternative.
 * @returns A standalone SVG element.
 * @throws {InputError} If there are under two readings or a value is not finite.
 *
 * @example
 * ```ts
 * import { loadTestFigure } from "@laminate/notebooks/charts";
 * import { assertEquals } from "@std/assert";
 *
 * const svg = loadTestFigure({
 *   readings: [
 *     { load: 0, deflection: 0, branch: "loading" },
 *     { load: 50, deflection: 0.001, branch: "loading" },
 *   ],
 *   fitted: { intercept: 0, slope: 2e-5 },
 *   predicted: { slope: 1.9e-5, low: 1.7e-5, high: 2.1e-5 },
 *   loadUnit: { symbol: "N", perSI: 1 },
 *   deflectionUnit: { symbol: "mm", perSI: 1000 },
 * }, { title: "The beam bends as predicted", description: "Two readings." });
 * assertEquals(svg.tagName, "svg");
 * ```
 */
export function loadTestFigure(data: LoadTestData, text: Finding): SVGSVGElement {
  const { fitted, predicted, loadUnit, deflectionUnit } = checkShape(data, SHAPE);
  const readings = checkPoints("readings", data.readings, 2).map((reading, i) => ({
    ...reading,
    load: checkCoordinate(`load of reading ${i + 1}`, reading.load) * loadUnit.perSI,
    deflection: checkCoordinate(`deflection of reading ${i + 1}`, reading.deflection) *
      deflectionUnit.perSI,
  }));
  const highest = Math.max(...data.readings.map(({ load }) => load));
  const lineAt = (slope: number) => (load: number) => ({
    load: load * loadUnit.perSI,
    deflection: (fitted.intercept + checkCoordinate("slope", slope) * load) * deflectionUnit.perSI,
  });
  const ends = [0, 1.04 * highest];
  const [measuredLine, predictedLine] = [fitted.slope, predicted.slope].map((slope) =>
    ends.map(lineAt(slope))
  );
  const band = ends.map((load) => ({
    load: load * loadUnit.perSI,
    low: lineAt(predicted.low)(load).deflection,
    high: lineAt(predicted.high)(load).deflection,
  }));
  const sound = readings.filter(({ doubtful }) => doubtful !== true);
  const doubtful = readings.filter((reading) => reading.doubtful === true);
  // The two labels stand at the lines' ends; pushed apart where the ends nearly meet.
  const apart = measuredLine![1]!.deflection >= predictedLine![1]!.deflection ? -1 : 1;

  return drawFigure({
    height: 420,
    marginRight: 108,
    x: { label: axisLabel("load", loadUnit), grid: true, labelAnchor: "center" },
    y: { label: axisLabel("deflection", deflectionUnit), grid: true, nice: true },
    marks: [
      Plot.areaY(band, {
        x: "load",
        y1: "low",
        y2: "high",
        fill: "currentColor",
        fillOpacity: 0.14,
      }),
      Plot.line(predictedLine!, {
        x: "load",
        y: "deflection",
        strokeDasharray: "7,4",
        strokeWidth: 2,
      }),
      Plot.line(measuredLine!, { x: "load", y: "deflection", stroke: BLUE, strokeWidth: 2 }),
      Plot.dot(sound.filter(({ branch }) => branch === "loading"), {
        x: "load",
        y: "deflection",
        r: 4,
        fill: BLUE,
      }),
      Plot.dot(sound.filter(({ branch }) => branch === "unloading"), {
        x: "load",
        y: "deflection",
        r: 5,
        stroke: BLUE,
        strokeWidth: 1.6,
      }),
      Plot.dot(doubtful, {
        x: "load",
        y: "deflection",
        r: 8,
        symbol: "times",
        stroke: ORANGE,
        strokeWidth: 2.5,
      }),
      Plot.text(doubtful, {
        x: "load",
        y: "deflection",
        text: () => "doubtful reading",
        textAnchor: "end",
        dx: -12,
      }),
      Plot.text(measuredLine!.slice(-1), {
        x: "load",
        y: "deflection",
        text: () => "measured",
        textAnchor: "start",
        dx: 8,
        dy: 8 * apart,
      }),
      Plot.text(predictedLine!.slice(-1), {
        x: "load",
        y: "deflection",
        text: () => "predicted\n(band: 95 %)",
        textAnchor: "start",
        dx: 8,
        dy: -10 * apart,
      }),
      Plot.text([
        readings.some(({ branch }) => branch === "unloading")
          ? "● loading   ○ unloading"
          : "● loading",
      ], { frameAnchor: "bottom-right", dx: -6, dy: -8 }),
    ],
  }, text);
}
