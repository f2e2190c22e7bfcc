import { checksFor } from "../check/mod.ts";

const check = checksFor("set up the bending load case");

/** Deflection over load: δ = P (bending L³/D + shear L/S), P the total load. */
export interface DeflectionCoefficients {
  /** Factor of P L³/D [1]. */
  readonly bending: number;
  /** Factor of P L/S [1]. */
  readonly shear: number;
}

/** How a beam is held and loaded, with the coefficients of its closed forms. */
export interface BeamLoadCase {
  /** What it is, for tables. */
  readonly title: string;
  /** How it is held. */
  readonly supports: "simple" | "cantilever" | "builtIn";
  /** Two equal point loads (or one), or a load spread evenly over the span. */
  readonly load: "points" | "uniform";
  /** Distance between the two point loads over the span; 0 for one load or a spread one [1]. */
  readonly loadSpanFraction: number;
  /** Deflection at mid-span, at the tip of a cantilever. */
  readonly deflection: DeflectionCoefficients;
  /** Deflection under a point load; where the load is spread, as `deflection`. */
  readonly deflectionAtLoad: DeflectionCoefficients;
  /** Moment of the largest magnitude over P L, sagging positive [1]. */
  readonly moment: number;
  /** Largest shear force over P [1]. */
  readonly shearForce: number;
  /** The deflection as a formula; q = P/L where the load is spread. */
  readonly equation: string;
}

/**
 * Four-point bending, symmetric, with any distance between the loads: half of the total load at
 * each of the two points.
 *
 * Formula: r = load span/span; mid-span (2 − 3r² + r³)/96 and (1 − r)/4; at the load, with
 * a = (1 − r)/2, a²(3 − 4a)/12 and a/2
 *
 * Range: r from 0 (three-point) to below 1.
 *
 * Source: beam theory with shear, ASTM D7250 (mid-span form), from memory; unit-load theorem.
 *
 * @param loadSpanFraction Distance between the loads over the support span [1].
 * @returns The load case.
 * @throws {InputError} If the fraction is outside 0 to 0.999.
 *
 * @example
 * ```ts
 * import { beamLoadCases, fourPoint } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(fourPoint(0.5).deflection.bending, 11 / 768, 1e-16);
 * assertAlmostEquals(beamLoadCases.threePoint.deflection.shear, 1 / 4, 1e-16);
 * ```
 */
export function fourPoint(loadSpanFraction: number): BeamLoadCase {
  check.within("load span over support span", loadSpanFraction, { min: 0, max: 0.999 });
  const r = loadSpanFraction;
  const a = (1 - r) / 2;
  return pointLoads(`four-point, load span ${r} of the span`, r, {
    deflection: { bending: (2 - 3 * r * r + r * r * r) / 96, shear: (1 - r) / 4 },
    deflectionAtLoad: { bending: a * a * (3 - 4 * a) / 12, shear: a / 2 },
    equation: "P(2L³ − 3L l² + l³)/96D + P(L − l)/4S, l the load span",
  });
}

function pointLoads(
  title: string,
  loadSpanFraction: number,
  rest: Pick<BeamLoadCase, "deflection" | "deflectionAtLoad" | "equation">,
): BeamLoadCase {
  return Object.freeze({
    title,
    supports: "simple",
    load: "points",
    loadSpanFraction,
    moment: (1 - loadSpanFraction) / 4,
    shearForce: 1 / 2,
    ...rest,
  });
}

function single(
  fields: Omit<BeamLoadCase, "loadSpanFraction" | "deflectionAtLoad">,
): BeamLoadCase {
  return Object.freeze({
    loadSpanFraction: 0,
    deflectionAtLoad: fields.deflection,
    ...fields,
  });
}

/** Name of one of the usual load cases. */
export type BeamLoadCaseName =
  | "threePoint"
  | "fourPointQuarter"
  | "fourPointThird"
  | "cantileverTip"
  | "cantileverUniform"
  | "simplySupportedUniform"
  | "builtInUniform";

/**
 * The usual load cases: three-point, four-point with loads at the quarter and the third points,
 * cantilevers (built in at x = 0), and loads spread evenly. P is the total load in all of them.
 */
export const beamLoadCases: Readonly<Record<BeamLoadCaseName, BeamLoadCase>> = Object.freeze({
  threePoint: pointLoads("three-point, load at mid-span", 0, {
    deflection: { bending: 1 / 48, shear: 1 / 4 },
    deflectionAtLoad: { bending: 1 / 48, shear: 1 / 4 },
    equation: "PL³/48D + PL/4S",
  }),
  fourPointQuarter: pointLoads("four-point, loads at the quarter points", 1 / 2, {
    deflection: { bending: 11 / 768, shear: 1 / 8 },
    deflectionAtLoad: { bending: 1 / 96, shear: 1 / 8 },
    equation: "11PL³/768D + PL/8S",
  }),
  fourPointThird: pointLoads("four-point, loads at the third points", 1 / 3, {
    deflection: { bending: 23 / 1296, shear: 1 / 6 },
    deflectionAtLoad: { bending: 5 / 324, shear: 1 / 6 },
    equation: "23PL³/1296D + PL/6S",
  }),
  cantileverTip: single({
    title: "cantilever, load at the tip",
    supports: "cantilever",
    load: "points",
    deflection: { bending: 1 / 3, shear: 1 },
    moment: -1,
    shearForce: 1,
    equation: "PL³/3D + PL/S",
  }),
  cantileverUniform: single({
    title: "cantilever, load spread evenly",
    supports: "cantilever",
    load: "uniform",
    deflection: { bending: 1 / 8, shear: 1 / 2 },
    moment: -1 / 2,
    shearForce: 1,
    equation: "qL⁴/8D + qL²/2S",
  }),
  simplySupportedUniform: single({
    title: "simply supported, load spread evenly",
    supports: "simple",
    load: "uniform",
    deflection: { bending: 5 / 384, shear: 1 / 8 },
    moment: 1 / 8,
    shearForce: 1 / 2,
    equation: "5qL⁴/384D + qL²/8S",
  }),
  builtInUniform: single({
    title: "built in at both ends, load spread evenly",
    supports: "builtIn",
    load: "uniform",
    deflection: { bending: 1 / 384, shear: 1 / 8 },
    moment: -1 / 12,
    shearForce: 1 / 2,
    equation: "qL⁴/384D + qL²/8S",
  }),
});
