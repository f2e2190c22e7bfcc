import { checksFor } from "../check/mod.ts";

const check = checksFor("compute the fairing skim");

/** A surface to be faired with putty. */
export interface SkimmedSurface {
  /** Area to be faired [m²]. */
  readonly area: number;
  /** Gaps under a straight edge or thin batten at evenly spread points, low spots and high [m]. */
  readonly gaps: readonly number[];
  /** Putty laid on everywhere on top of the gaps, to be sanded off again [m]. */
  readonly excess: number;
  /** Density of the putty [kg/m³]. */
  readonly density: number;
}

/** Putty for fairing. */
export interface Skim {
  /** Mean depth of the gaps [m]. */
  readonly meanGap: number;
  /** Putty laid on [m³]. */
  readonly volumeApplied: number;
  /** Putty sanded off [m³]. */
  readonly volumeSanded: number;
  /** Mass laid on [kg]. */
  readonly massApplied: number;
  /** Mass turned to dust by sanding [kg]. */
  readonly massSanded: number;
  /** Mass that the part keeps, the one so easily forgotten [kg]. */
  readonly massKept: number;
}

/**
 * Putty for fairing a surface, what sanding takes off again, and what the part keeps.
 *
 * Formula: applied = A (mean gap + excess); sanded = A × excess; kept = applied − sanded
 *
 * Range: gaps read at points spread evenly over the area.
 *
 * Source: mass balance. Sanding dust of filler and cured glass harms the lungs: wear a respirator
 * as the products' safety sheets say.
 *
 * @param surface Area [m²], gaps [m], excess [m] and density [kg/m³].
 * @returns Volumes [m³] and masses [kg] laid on, sanded off and kept.
 * @throws {InputError} If the area or density is not above 0, or a gap or the excess below 0.
 *
 * @example
 * ```ts
 * import { fairingSkim } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const skim = fairingSkim({
 *   area: 2, gaps: [0, 0.0004, 0.0002], excess: 0.0003, density: 600,
 * });
 * assertAlmostEquals(skim.massKept, 2 * 0.0002 * 600, 1e-12);
 * assertAlmostEquals(skim.massSanded, 2 * 0.0003 * 600, 1e-12);
 * ```
 */
export function fairingSkim(surface: SkimmedSurface): Skim {
  const { area, gaps, excess, density } = check.object("surface", surface);
  check.positive("area", area, "m²");
  check.list("gaps", gaps);
  check.nonNegative("excess", excess, "m");
  check.positive("putty density", density, "kg/m³");
  let sum = 0;
  for (const gap of gaps) sum += check.nonNegative("gap", gap, "m");
  const meanGap = sum / gaps.length;
  const volumeSanded = area * excess;
  const volumeApplied = check.result("volume", area * meanGap + volumeSanded, "m³");
  const massApplied = check.result("mass", volumeApplied * density, "kg");
  const massSanded = volumeSanded * density;
  return {
    meanGap,
    volumeApplied,
    volumeSanded,
    massApplied,
    massSanded,
    massKept: area * meanGap * density,
  };
}
