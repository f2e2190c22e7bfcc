import { checksFor } from "../check/mod.ts";
import { fitLine, type LineFit } from "../statistics/mod.ts";
import { checkReadings, type LoadReadings } from "./_readings.ts";

const check = checksFor("take the toe out");

/** A load test with the toe of its curve taken out. */
export interface ToeCompensated {
  /** Deflection at which the straight part, prolonged, meets zero load [m]. */
  readonly toeDeflection: number;
  /** The deflections counted from there, in the order of the readings [m]. */
  readonly deflection: readonly number[];
  /** The straight part: load on deflection [N/m]. */
  readonly fit: LineFit;
}

/**
 * Moves the zero of deflection to where the straight part of the curve meets zero load.
 *
 * A specimen seats itself at the start, and the curve begins with a toe. The slope of the
 * straight part is not touched by this; strains and chords counted from the first reading are.
 *
 * Formula: P = a + b δ over the window; toe = −a/b; δ' = δ − toe; δ' at a load P is P/b
 *
 * Range: a window on the straight part, three readings or more inside.
 *
 * Source: ASTM D790, annex on toe compensation, from memory.
 *
 * @param readings Load [N] and deflection [m].
 * @param window Lower and upper deflection of the straight part, both included [m].
 * @returns Toe [m], corrected deflections [m], and the fitted straight part.
 * @throws {InputError} If the window holds under three readings, or the slope there is not above
 * 0.
 *
 * @example
 * ```ts
 * import { toeCompensation } from "@laminate/notebooks/comparison";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const readings = { load: [0, 1, 10, 20, 30], deflection: [0, 0.5, 1.5, 2.5, 3.5] };
 * const { toeDeflection } = toeCompensation(readings, { from: 1.5, to: 3.5 });
 * assertAlmostEquals(toeDeflection, 0.5, 1e-12);
 * ```
 */
export function toeCompensation(
  readings: LoadReadings,
  window: { readonly from: number; readonly to: number },
): ToeCompensated {
  checkReadings(check, readings);
  check.object("window", window);
  check.finite("start of the window", window.from, "m");
  check.finite("end of the window", window.to, "m");
  const deflection = Array.from(readings.deflection);
  const inside = deflection.flatMap((value, i) =>
    value >= window.from && value <= window.to ? [i] : []
  );
  if (inside.length < 3) {
    check.refuse("readings inside the window", inside.length, "must be three or more");
  }
  const fit = fitLine({
    x: inside.map((i) => deflection[i]!),
    y: inside.map((i) => readings.load[i]!),
  });
  const slope = check.positive("slope of the straight part", fit.slope.value, "N/m");
  const toeDeflection = check.result("toe", -fit.intercept.value / slope, "m");
  return { toeDeflection, deflection: deflection.map((value) => value - toeDeflection), fit };
}
