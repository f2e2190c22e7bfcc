import * as Plot from "@observablehq/plot";
import {
  axisLabel,
  type AxisUnit,
  BLUE,
  checkAtMost,
  checkCoordinate,
  checkPoints,
  drawFigure,
  type Finding,
  HALO,
  ORANGE,
} from "./_figure.ts";
import { checkShape, type Fields, UNIT } from "./_shape.ts";

/** One lay-up that could be built. */
export interface Choice {
  /** Mass per area [kg/m²]. */
  readonly mass: number;
  /** Deflection under the reference load [m]. */
  readonly deflection: number;
  /** What differs along the line, such as "10 mm". */
  readonly label: string;
}

/** Lay-ups that differ in one thing only. */
export interface ChoiceSeries {
  /** What they share, such as "2 plies a side". */
  readonly label: string;
  /** The lay-ups, in order. */
  readonly choices: readonly Choice[];
}

/** What goes into a choice map. */
export interface ChoiceMapData {
  /** At most four series. */
  readonly series: readonly ChoiceSeries[];
  /** The lay-up of the schedule. */
  readonly chosen?: Choice;
  /** Largest deflection that is wanted [m]. */
  readonly limit?: number;
  /** Unit of mass per area. */
  readonly massUnit: AxisUnit;
  /** Unit of the deflection. */
  readonly deflectionUnit: AxisUnit;
}

const SYMBOLS = ["circle", "square", "triangle", "diamond"] as const;

// The axis of the deflection is logarithmic.
const CHOICE: Fields = { mass: "number", deflection: "positive", label: "words" };
const SHAPE: Fields = {
  series: [{ label: "words", choices: [CHOICE] }],
  "chosen?": CHOICE,
  "limit?": "positive",
  massUnit: UNIT,
  deflectionUnit: UNIT,
};

/**
 * Mass against deflection of the lay-ups that could be built: down and left is better.
 *
 * The deflection axis is logarithmic, since doubling a core divides the deflection.
 *
 * @param data The choices [SI].
 * @param text The finding and the text alternative.
 * @returns A standalone SVG element.
 * @throws {InputError} If there is no choice or a value is not finite.
 *
 * @example
 * ```ts
 * import { choiceMapFigure } from "@laminate/notebooks/charts";
 * import { assertEquals } from "@std/assert";
 *
 * const svg = choiceMapFigure({
 *   series: [{
 *     label: "1 ply a side",
 *     choices: [
 *       { mass: 1.2, deflection: 0.02, label: "5 mm" },
 *       { mass: 1.6, deflection: 0.005, label: "10 mm" },
 *     ],
 *   }],
 *   massUnit: { symbol: "kg/m²", perSI: 1 },
 *   deflectionUnit: { symbol: "mm", perSI: 1000 },
 * }, { title: "Core is cheaper than plies", description: "Two lay-ups." });
 * assertEquals(svg.tagName, "svg");
 * ```
 */
export function choiceMapFigure(data: ChoiceMapData, text: Finding): SVGSVGElement {
  const { massUnit, deflectionUnit, limit, chosen } = checkShape(data, SHAPE);
  const shown = ({ mass, deflection, label }: Choice): Choice => ({
    label,
    mass: checkCoordinate(`mass of ${label}`, mass) * massUnit.perSI,
    deflection: checkCoordinate(`deflection of ${label}`, deflection) * deflectionUnit.perSI,
  });
  const series = checkPoints("series", data.series).map(({ label, choices }, i) => ({
    label,
    choices: checkPoints(`choices of ${label}`, choices).map(shown),
    symbol: SYMBOLS[i]!,
    hue: i % 2 === 0 ? BLUE : ORANGE,
  }));
  checkAtMost("series", series, SYMBOLS.length);
  const star = chosen === undefined ? [] : [shown(chosen)];
  const rule = limit === undefined ? [] : [checkCoordinate("limit", limit) * deflectionUnit.perSI];
  return drawFigure({
    height: 460,
    marginTop: 60,
    marginRight: 110,
    x: { label: axisLabel("mass per area", massUnit), grid: true, labelAnchor: "center" },
    y: {
      label: axisLabel("deflection under the reference load", deflectionUnit),
      type: "log",
      grid: true,
      tickFormat: (value: number) => String(value),
    },
    marks: [
      Plot.ruleY(rule, { strokeDasharray: "5,4" }),
      Plot.text(rule, {
        y: (value: number) => value,
        text: () => "largest wanted",
        frameAnchor: "right",
        textAnchor: "end",
        dy: -8,
      }),
      series.map(({ label, choices, symbol, hue }) => [
        Plot.line(choices, { x: "mass", y: "deflection", stroke: hue, strokeWidth: 1.5 }),
        Plot.dot(choices, { x: "mass", y: "deflection", symbol, fill: hue, r: 5 }),
        Plot.text(choices, {
          x: "mass",
          y: "deflection",
          text: "label",
          textAnchor: "start",
          dx: 7,
          dy: -9,
          fontSize: 12,
        }),
        Plot.text(choices.slice(0, 1), {
          x: "mass",
          y: "deflection",
          text: () => label,
          textAnchor: "start",
          dx: 7,
          dy: -26,
          fontWeight: "600",
        }),
      ]),
      Plot.dot(star, { x: "mass", y: "deflection", r: 11, stroke: "currentColor", strokeWidth: 2 }),
      Plot.text(star, {
        x: "mass",
        y: "deflection",
        text: () => "the schedule",
        dy: 26,
        ...HALO,
        fontWeight: "600",
      }),
    ],
  }, text);
}
