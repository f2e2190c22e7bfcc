import { checksFor } from "../check/mod.ts";
import { propagate, type Propagated, type UncertainInput } from "../statistics/mod.ts";
import { halfTurn } from "./_corner.ts";

const check = checksFor("compute the radius from chord and sagitta");

/** A fillet measured with a chord laid across its hollow and a depth gauge in the middle. */
export interface GaugeReading {
  /** Length of the chord, both ends on the arc [m]. */
  readonly chord: UncertainInput;
  /** Depth of the hollow under the middle of the chord [m]. */
  readonly sagitta: UncertainInput;
  /** Largest radius that the rule allows [m]. */
  readonly limit: number;
  /** Angle between the panels on the filled side, to see whether the chord fits on the arc [deg]. */
  readonly cornerDeg?: number;
}

/** Whether a measured fillet keeps a rule. */
export interface GaugeVerdict {
  /** Radius with its uncertainty and where that comes from [m]. */
  readonly radius: Propagated<"chord" | "sagitta">;
  /** Holds: within the rule even with U (k = 2) added. Fails: beyond it even with U taken off. */
  readonly verdict: "holds" | "fails" | "not known";
  /** What is doubtful about it. */
  readonly notes: readonly string[];
}

/**
 * Radius of a fillet from a chord and its sagitta, and whether it keeps a rule's largest radius.
 *
 * Formula: r = c²/(8s) + s/2; holds if r + 2u ≤ limit, fails if r − 2u > limit
 *
 * Range: s up to c/2 (half a circle). A short chord makes u large: u(r)/r is nearly u(s)/s.
 *
 * Source: geometry of the circle; JCGM 100:2008 (GUM) 5.1.2; decision rule as ISO 14253-1, from
 * memory.
 *
 * @param reading Chord and sagitta with standard uncertainty, and the limit [m].
 * @returns Radius with uncertainty [m], verdict and notes.
 * @throws {InputError} If a length is not above 0 or the sagitta is above half of the chord.
 *
 * @example
 * ```ts
 * import { gaugeFillet } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals, assertEquals } from "@std/assert";
 *
 * const found = gaugeFillet({
 *   chord: { value: 0.030, u: 0.0002 },
 *   sagitta: { value: 0.005, u: 0.00005 },
 *   limit: 0.0254,
 * });
 * assertAlmostEquals(found.radius.value, 0.025, 1e-12);
 * assertEquals(found.verdict, "not known");
 * ```
 */
export function gaugeFillet(reading: GaugeReading): GaugeVerdict {
  const { chord, sagitta, limit, cornerDeg } = check.object("reading", reading);
  const c = check.positive("chord", check.object("chord", chord).value, "m");
  const s = check.positive("sagitta", check.object("sagitta", sagitta).value, "m");
  check.positive("limit", limit, "m");
  if (!(s <= c / 2)) {
    check.refuse("sagitta", s, `must not be above half of the chord, ${c / 2} m`);
  }
  const radius = propagate(
    (at) => at.chord ** 2 / (8 * at.sagitta) + at.sagitta / 2,
    { chord, sagitta },
  );
  const notes = [...radius.notes];
  if (cornerDeg !== undefined) {
    const arcChord = 2 * radius.value * Math.sin(halfTurn(check, cornerDeg));
    if (c > arcChord) {
      notes.push("The chord is longer than the arc is wide: its ends stood on the panels.");
    }
  }
  if (radius.value + radius.U <= limit) return { radius, verdict: "holds", notes };
  if (radius.value - radius.U > limit) return { radius, verdict: "fails", notes };
  notes.push(
    "The limit lies within the uncertainty: measure better, or lay in the gauge cylinder.",
  );
  return { radius, verdict: "not known", notes };
}
