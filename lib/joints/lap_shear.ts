import { checksFor } from "../check/mod.ts";

const check = checksFor("compute the shear in the lap");

/** A bonded single lap. Adherend 1 is loaded at x = 0, adherend 2 at x = overlap. */
export interface Lap {
  /** Modulus of adherend 1 along the load [Pa]. */
  readonly modulus1: number;
  /** Thickness of adherend 1 [m]. */
  readonly thickness1: number;
  /** Modulus of adherend 2 along the load [Pa]. */
  readonly modulus2: number;
  /** Thickness of adherend 2 [m]. */
  readonly thickness2: number;
  /** Shear modulus of the adhesive [Pa]. */
  readonly adhesiveShearModulus: number;
  /** Thickness of the adhesive [m]. */
  readonly adhesiveThickness: number;
  /** Width of the joint [m]. */
  readonly width: number;
  /** Length of the overlap [m]. */
  readonly overlap: number;
  /** Load on the whole width [N]. */
  readonly load: number;
}

/** Shear in the adhesive of a lap. */
export interface LapShear {
  /** Load over bonded area [Pa]. */
  readonly mean: number;
  /** Shear at x = 0, where adherend 1 is loaded [Pa]. */
  readonly atStart: number;
  /** Shear at x = overlap, where adherend 2 is loaded [Pa]. */
  readonly atEnd: number;
  /** The larger of the two ends [Pa]. */
  readonly peak: number;
  /** Peak over mean [1]. */
  readonly concentration: number;
  /** How fast the shear dies away from an end, λ [1/m]. */
  readonly decay: number;
  /** Length from an end in which 95 % of its share is handed over, ln 20/λ [m]. */
  readonly transferLength: number;
}

/**
 * Shear along the adhesive of a single lap by shear lag: no bending, no peel.
 *
 * Formula: λ² = (Ga/ta)(1/E1t1 + 1/E2t2);
 * τ(x) = (Ga P/(ta b λ))[cosh λ(l − x)/E1t1 + cosh λx/E2t2]/sinh λl; with equal adherends the peak
 * is (λl/2) coth(λl/2) times the mean
 *
 * Range: elastic adhesive; a single lap bends and peels too, see `bentLap`. For a double lap take
 * half of the load and half of the inner adherend's thickness.
 *
 * Source: O. Volkersen, Luftfahrtforschung 15 (1938) 41, from memory.
 *
 * @param lap Adherends, adhesive, sizes [m] and load [N].
 * @returns Mean, end and peak shear [Pa] with the length of transfer [m].
 * @throws {InputError} If a size or modulus is not above 0, or the load below 0.
 *
 * @example Equal adherends with (λl/2)² = D/2, D = 2
 * ```ts
 * import { lapShear } from "@laminate/notebooks/joints";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { concentration } = lapShear({
 *   modulus1: 70e9, thickness1: 0.002, modulus2: 70e9, thickness2: 0.002,
 *   adhesiveShearModulus: 280e6, adhesiveThickness: 0.0004,
 *   width: 0.025, overlap: 0.02, load: 1000,
 * });
 * assertAlmostEquals(concentration, 1.31304, 5e-6);
 * ```
 */
export function lapShear(lap: Lap): LapShear {
  const { mean, decay } = lapConstants(lap);
  const [atStart, atEnd] = [shearAt(lap, 0), shearAt(lap, lap.overlap)];
  const peak = check.result("peak shear", Math.max(atStart, atEnd), "Pa");
  // The concentration does not depend on the load, so that no load has one too.
  const unit = { ...lap, load: 1 };
  const unitPeak = Math.max(shearAt(unit, 0), shearAt(unit, lap.overlap));
  return {
    mean,
    atStart,
    atEnd,
    peak,
    concentration: check.result("concentration", unitPeak * lap.width * lap.overlap),
    decay,
    transferLength: check.result("transfer length", Math.log(20) / decay, "m"),
  };
}

/** Shear along a lap, ready to draw. */
export interface LapProfile {
  /** Places along the overlap, from 0 to its length [m]. */
  readonly positions: Float64Array;
  /** Shear in the adhesive there [Pa]. */
  readonly shear: Float64Array;
}

/**
 * Shear at evenly spaced places along a lap.
 *
 * Formula: τ(x) as in `lapShear`
 *
 * Range: 2 places or more.
 *
 * Source: Volkersen 1938, from memory.
 *
 * @param lap Adherends, adhesive, sizes [m] and load [N].
 * @param count Number of places, both ends included [1].
 * @returns Places [m] and shear there [Pa].
 * @throws {InputError} If an input is outside its range.
 *
 * @example
 * ```ts
 * import { lapProfile, lapShear } from "@laminate/notebooks/joints";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const lap = {
 *   modulus1: 70e9, thickness1: 0.002, modulus2: 20e9, thickness2: 0.003,
 *   adhesiveShearModulus: 1e9, adhesiveThickness: 0.0002,
 *   width: 0.025, overlap: 0.02, load: 1000,
 * };
 * const { shear } = lapProfile(lap, 5);
 * assertAlmostEquals(shear[4]!, lapShear(lap).atEnd, 1e-3);
 * ```
 */
export function lapProfile(lap: Lap, count: number): LapProfile {
  lapConstants(lap);
  check.count("number of places", count, 2);
  check.within("number of places", count, { min: 2, max: 1e5 });
  const positions = Float64Array.from(
    { length: count },
    (_, i) => lap.overlap * (i / (count - 1)),
  );
  return { positions, shear: positions.map((x) => shearAt(lap, x)) };
}

/** τ(x), its hyperbolic functions written with decaying exponentials, so that none overflows. */
function shearAt(lap: Lap, x: number): number {
  const { compliance1, compliance2, decay } = lapConstants(lap);
  const fromStart = decay * x;
  const toEnd = decay * (lap.overlap - x);
  const twiceSinh = -Math.expm1(-2 * decay * lap.overlap);
  const start = Math.exp(-fromStart) * (1 + Math.exp(-2 * toEnd)) / twiceSinh;
  const end = Math.exp(-toEnd) * (1 + Math.exp(-2 * fromStart)) / twiceSinh;
  // Ga/(ta λ) = λ/(sum of the compliances)
  const scale = lap.load / lap.width * decay / (compliance1 + compliance2);
  return check.result("shear", scale * (compliance1 * start + compliance2 * end), "Pa");
}

function lapConstants(
  lap: Lap,
): { compliance1: number; compliance2: number; decay: number; mean: number } {
  check.object("lap", lap);
  check.positive("modulus of adherend 1", lap.modulus1, "Pa");
  check.positive("modulus of adherend 2", lap.modulus2, "Pa");
  check.positive("thickness of adherend 1", lap.thickness1, "m");
  check.positive("thickness of adherend 2", lap.thickness2, "m");
  check.positive("shear modulus of the adhesive", lap.adhesiveShearModulus, "Pa");
  check.positive("thickness of the adhesive", lap.adhesiveThickness, "m");
  check.positive("width", lap.width, "m");
  check.positive("overlap", lap.overlap, "m");
  check.nonNegative("load", lap.load, "N");
  const compliance1 = 1 / (lap.modulus1 * lap.thickness1);
  const compliance2 = 1 / (lap.modulus2 * lap.thickness2);
  const bond = lap.adhesiveShearModulus / lap.adhesiveThickness;
  return {
    compliance1,
    compliance2,
    decay: check.result("decay", Math.sqrt(bond * (compliance1 + compliance2)), "1/m"),
    mean: check.result("mean shear", lap.load / (lap.width * lap.overlap), "Pa"),
  };
}
