import { checksFor } from "../check/mod.ts";
import { lowestModes } from "./_lowest_modes.ts";
import type { Panel } from "./panel.ts";
import { condensedPanel, shapeOf } from "./_ritz_condensed.ts";
import { massMatrix } from "./_ritz_system.ts";

const check = checksFor("compute the panel's natural frequencies");
const checkTap = checksFor("compare the tap test");

/** One way in which a panel rings. */
export interface PanelMode {
  /** Natural frequency [Hz]. */
  readonly frequency: number;
  /** Shape at x, y [m]: largest value 1 [1]. */
  shape(x: number, y: number): number;
}

/** Square of a frequency below this share of the highest found: the whole panel moves. */
const WHOLE_BODY = 1e-7;

/**
 * Natural frequencies of a panel, the lowest first.
 *
 * Formula: K v = (2πf)² M v, M = ∫ m w² dA and beams' ∫ m w² ds; rotations without mass, as
 * beside deflection
 *
 * Range: as `ritzPanel`; small amplitude, no air around it (air lowers a light panel by some per
 * cent). One-way supports count if preloaded. Loads do not count.
 *
 * Source: Ritz's method; A. W. Leissa, Vibration of Plates (1969) for what to expect.
 *
 * @param panel The panel; `massPerArea` of its stiffness above 0.
 * @param options How many (6 if not given), degree of the polynomials (12).
 * @returns Frequencies [Hz] with shapes, movements of the whole panel left out.
 * @throws {InputError} If the panel or its mass cannot be meant.
 *
 * @example A thin square panel on simple supports: 2πf a² √(m/D) = 2π²
 * ```ts
 * import { allEdges, isotropicPanel, panelFrequencies } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const stiffness = isotropicPanel({ E: 10.92, nu: 0.3, thickness: 1, density: 1 }, "rigid");
 * const panel = { length: 1, width: 1, stiffness, edges: allEdges("simple"), loads: [] };
 * const [first] = panelFrequencies(panel);
 * assertAlmostEquals(2 * Math.PI * first!.frequency, 2 * Math.PI ** 2, 1e-4);
 * ```
 */
export function panelFrequencies(
  panel: Panel,
  options: {
    /** How many; 6 if not given. */
    readonly count?: number;
    /** Degree of the polynomials, 4 to 20; 12 if not given. */
    readonly degree?: number;
  } = {},
): readonly PanelMode[] {
  const { count: wanted = 6, degree = 12 } = check.object("options", options);
  check.count("count", wanted, 1);
  check.within("count", wanted, { min: 1, max: 40 });
  const { system, matrix, count } = condensedPanel(check, panel, degree);
  const m = check.positive("mass per area", panel.stiffness.massPerArea, "kg/m²");
  const mass = massMatrix(system, m);
  // Up to three movements of the whole panel come before its first sound.
  const found = lowestModes(check, { stiffness: matrix, mass, size: count }, wanted + 3);
  const highest = found.values.at(-1) ?? 0;
  const modes: PanelMode[] = [];
  for (let k = 0; k < found.values.length && modes.length < wanted; k++) {
    const square = found.values[k] ?? 0;
    if (square <= WHOLE_BODY * highest) continue;
    const frequency = check.result("frequency", Math.sqrt(square) / (2 * Math.PI), "Hz");
    const shape = shapeOf(system, found.vectors.slice(k * count, (k + 1) * count));
    modes.push(Object.freeze({ frequency, shape }));
  }
  return Object.freeze(modes);
}

/** A tapped panel beside its prediction. */
export interface TapComparison {
  /** Frequency measured over frequency predicted [1]. */
  readonly frequencyRatio: number;
  /** Stiffness over that predicted, if the mass is as weighed and predicted: ratio² [1]. */
  readonly stiffnessRatio: number;
  /** Relative standard uncertainty of the stiffness ratio, of all uncertainties given [1]. */
  readonly relativeUncertainty: number;
  /** What is not in that uncertainty because it was not given; empty where all was. */
  readonly notes: readonly string[];
}

/** A frequency, with the mass that goes with it. */
export interface TappedPanel {
  /** Frequency [Hz]. */
  readonly frequency: number;
  /** Standard uncertainty of the frequency; not counted if left out [Hz]. */
  readonly uncertainty?: number;
  /** Mass [kg]. */
  readonly mass?: number;
  /** Standard uncertainty of the mass; not counted if left out [kg]. */
  readonly massUncertainty?: number;
}

/**
 * What a tap test says of a panel's stiffness: it rings with the root of stiffness over mass.
 *
 * Formula: k measured/k predicted = (f measured/f predicted)² × m measured/m predicted;
 * relative u² = (2u(f)/f)² + (u(m)/m)², measured and predicted
 *
 * Range: the same mode on the same supports; a light panel rings some per cent lower in air.
 * Measured and predicted independent of each other. What comes without uncertainty counts as exact,
 * and a note says so.
 *
 * Source: f ∝ √(k/m); propagation by GUM (JCGM 100), first order.
 *
 * @param measured Frequency [Hz], and mass if weighed [kg], with their standard uncertainties.
 * @param predicted The same as predicted; a mass if the other is given.
 * @returns Ratios of frequency and of stiffness, and what their uncertainty leaves out [1].
 * @throws {InputError} If a frequency or mass is not above 0, an uncertainty is negative or only one
 * mass is given.
 *
 * @example
 * ```ts
 * import { compareTap } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const tap = compareTap({ frequency: 95, uncertainty: 1 }, { frequency: 100 });
 * assertAlmostEquals(tap.stiffnessRatio, 0.9025, 1e-12);
 * ```
 */
export function compareTap(measured: TappedPanel, predicted: TappedPanel): TapComparison {
  checkTap.object("measured", measured);
  checkTap.object("predicted", predicted);
  if ((measured.mass === undefined) !== (predicted.mass === undefined)) {
    checkTap.refuse("mass", measured.mass ?? predicted.mass, "must be given for both or neither");
  }
  const [own, foreseen] = [tapped("measured", measured), tapped("predicted", predicted)];
  const frequencyRatio = own.frequency / foreseen.frequency;
  const left = [...own.left, ...foreseen.left];
  return Object.freeze({
    frequencyRatio: checkTap.result("frequency ratio", frequencyRatio),
    stiffnessRatio: checkTap.result(
      "stiffness ratio",
      frequencyRatio ** 2 * own.mass / foreseen.mass,
    ),
    relativeUncertainty: checkTap.result("relative uncertainty", Math.hypot(own.u, foreseen.u)),
    notes: Object.freeze(
      left.length === 0 ? [] : [`The uncertainty leaves out that of: ${left.join(", ")}.`],
    ),
  });
}

interface Tapped {
  readonly frequency: number;
  readonly mass: number;
  /** What its uncertainties do to the stiffness, relative [1]. */
  readonly u: number;
  /** What counts as exact. */
  readonly left: readonly string[];
}

function tapped(
  whose: "measured" | "predicted",
  { frequency, uncertainty, mass, massUncertainty }: TappedPanel,
): Tapped {
  const f = checkTap.positive(`${whose} frequency`, frequency, "Hz");
  const m = mass === undefined ? 1 : checkTap.positive(`${whose} mass`, mass, "kg");
  const uf = checkTap.nonNegative(`uncertainty of the ${whose} frequency`, uncertainty ?? 0, "Hz");
  const um = checkTap.nonNegative(`uncertainty of the ${whose} mass`, massUncertainty ?? 0, "kg");
  return {
    frequency: f,
    mass: m,
    u: Math.hypot(2 * uf / f, um / m),
    left: [
      ...(uncertainty === undefined ? [`the ${whose} frequency`] : []),
      ...(massUncertainty === undefined && mass !== undefined ? [`the ${whose} mass`] : []),
    ],
  };
}
