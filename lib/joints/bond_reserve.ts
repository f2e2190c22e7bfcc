import { checksFor } from "../check/mod.ts";
import type { Verdict } from "./design_load.ts";

const check = checksFor("compute the reserve of the bond");

/** One reason why a bond made in the workshop is weaker than the adhesive's sheet says. */
export interface KnockDown {
  /** The reason. */
  readonly reason: string;
  /** What is left of the strength [1]. */
  readonly factor: number;
  /** Where the factor comes from: a test, a sheet, an estimate. */
  readonly source: string;
}

/** Knock-downs to start from where there is no test; estimates, to be replaced by own coupons. */
export const ESTIMATED_KNOCK_DOWNS: readonly KnockDown[] = [
  { reason: "hand-abraded surface", factor: 0.7, source: "estimate, no source" },
  { reason: "warm and wet", factor: 0.6, source: "estimate, no source" },
  { reason: "load that lasts or repeats", factor: 0.5, source: "estimate, no source" },
];

/** An adhesive's strength as printed, and what the workshop leaves of it. */
export interface Adhesive {
  /** Shear strength from the sheet or a coupon [Pa]. */
  readonly shearStrength: number;
  /** Tensile (peel) strength across the bond; none if not known [Pa]. */
  readonly peelStrength?: number;
  /** Knock-downs, all multiplied. */
  readonly knockDowns: readonly KnockDown[];
}

/** Peak stresses in a bond, from `lapShear` or `bentLap`, under the load with its factors. */
export interface BondStress {
  /** Largest shear [Pa]. */
  readonly peakShear: number;
  /** Largest peel; none if not computed [Pa]. */
  readonly peakPeel?: number;
}

/** What a good bond does not mend. */
const OWN_PEEL =
  "Only the adhesive is judged: a laminate may peel apart inside, under its first ply, before that.";

/** How much a bond has in hand. */
export interface BondReserve {
  /** What is left of the printed strength [1]. */
  readonly knockDown: number;
  /** Shear strength left over peak shear [1]. */
  readonly shearReserve: number;
  /** Peel strength left over peak peel; none where one of them is not known [1]. */
  readonly peelReserve?: number;
  /** Holds where both reserves are 1 or above; not known where the peel is not. */
  readonly verdict: Verdict;
  /** What to know about it. */
  readonly notes: readonly string[];
}

/**
 * Adhesive strength, knocked down for the workshop, over the peak stress in the bond.
 *
 * Formula: R = S Π factor/τ_peak, and the same in peel
 *
 * Range: elastic peaks against strength: safe for a brittle adhesive, too careful for a tough one.
 * Shear alone never says that a single lap holds: laps fail by peel. The laminate's own strength
 * across its plies is not judged; of a hand-laid laminate it is often below the adhesive's.
 *
 * Source: definition.
 *
 * @param adhesive Printed strength [Pa] and its knock-downs [1].
 * @param stress Peaks of shear and peel [Pa].
 * @returns Reserves [1] and verdict.
 * @throws {InputError} If a strength or stress is not above 0 or a factor not above 0 up to 1.
 *
 * @example
 * ```ts
 * import { bondReserve } from "@laminate/notebooks/joints";
 * import { assertAlmostEquals, assertEquals } from "@std/assert";
 *
 * const found = bondReserve({
 *   shearStrength: 20e6,
 *   knockDowns: [{ reason: "warm and wet", factor: 0.6, source: "estimate" }],
 * }, { peakShear: 6e6 });
 * assertAlmostEquals(found.shearReserve, 2, 1e-12);
 * assertEquals(found.verdict, "not known");
 * ```
 */
export function bondReserve(adhesive: Adhesive, stress: BondStress): BondReserve {
  const { shearStrength, peelStrength, knockDowns } = check.object("adhesive", adhesive);
  const { peakShear, peakPeel } = check.object("stress", stress);
  check.positive("shear strength", shearStrength, "Pa");
  check.positive("peak shear", peakShear, "Pa");
  let knockDown = 1;
  for (const entry of check.list("knock-downs", knockDowns, 0)) {
    const { reason, factor } = check.object("knock-down", entry);
    check.text("reason of a knock-down", reason);
    knockDown *= check.positive(`knock-down for ${reason}`, check.fraction(reason, factor));
  }
  const shearReserve = check.result("reserve", shearStrength * knockDown / peakShear);
  const notes = [
    ...(knockDowns.length === 0
      ? ["No knock-down: this is the strength of a laboratory coupon."]
      : []),
    OWN_PEEL,
  ];
  if (peelStrength === undefined || peakPeel === undefined) {
    return {
      knockDown,
      shearReserve,
      verdict: shearReserve < 1 ? "fails" : "not known",
      notes: [...notes, "Peel is not known, and laps usually fail by peel."],
    };
  }
  check.positive("peel strength", peelStrength, "Pa");
  check.positive("peak peel", peakPeel, "Pa");
  const peelReserve = check.result("reserve", peelStrength * knockDown / peakPeel);
  const verdict = Math.min(shearReserve, peelReserve) >= 1 ? "holds" : "fails";
  return { knockDown, shearReserve, peelReserve, verdict, notes };
}
