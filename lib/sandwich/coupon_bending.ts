import { checksFor } from "../check/mod.ts";
import { fourPoint } from "./beam_load_cases.ts";

const check = checksFor("read the bent coupon");

/** A solid coupon on two supports. */
export interface BentCoupon {
  /** Distance between the supports, S [m]. */
  readonly span: number;
  /** Width, b [m]. */
  readonly width: number;
  /** Thickness, d [m]. */
  readonly thickness: number;
  /** Distance between the two loads over the span; 0, three-point, if left out [1]. */
  readonly loadSpanFraction?: number;
}

/** Stress in the outer surface of a coupon. */
export interface CouponStress {
  /** By the beam formula [Pa]. */
  readonly stress: number;
  /** With the term for large deflection, where it holds; else as `stress` [Pa]. */
  readonly corrected: number;
  /** Remarks, empty where there is nothing to say. */
  readonly notes: readonly string[];
}

interface Checked {
  readonly span: number;
  readonly width: number;
  readonly thickness: number;
  /** Of P S³/(E I) at mid-span, and of P S. */
  readonly bending: number;
  readonly moment: number;
}

function checked(coupon: BentCoupon): Checked {
  check.object("coupon", coupon);
  const { span, width, thickness, loadSpanFraction = 0 } = coupon;
  check.positive("span", span, "m");
  check.positive("width", width, "m");
  check.positive("thickness", thickness, "m");
  const { deflection, moment } = fourPoint(loadSpanFraction);
  return { span, width, thickness, bending: deflection.bending, moment };
}

/**
 * Modulus of a solid coupon in bending from the slope of load on deflection at mid-span.
 *
 * Formula: E = kb S³ m/(b d³/12); three-point S³ m/(4 b d³), loads at the third points
 * 23 S³ m/(108 b d³), at the quarter points 11 S³ m/(64 b d³)
 *
 * Range: thin coupons, S/d of 16 or more (32 to 60 for laminates that are soft in shear): shear is
 * not counted. Of a laminate it is the flexural modulus, which leans on the outer plies.
 *
 * Source: ASTM D790 and D6272, from memory. Tables that print 0.21 and 0.17 for 23/108 and 11/64
 * are 1.4 and 1.1 % low.
 *
 * @param coupon Span, width and thickness [m].
 * @param slope Load on deflection over the straight part, m [N/m].
 * @returns Flexural modulus [Pa].
 * @throws {InputError} If a length or the slope is not above 0.
 *
 * @example
 * ```ts
 * import { couponModulus } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const coupon = { span: 0.064, width: 0.0127, thickness: 0.004 };
 * assertAlmostEquals(couponModulus(coupon, 248046.875) / 1e9, 20, 1e-12);
 * ```
 */
export function couponModulus(coupon: BentCoupon, slope: number): number {
  const { span, width, thickness, bending } = checked(coupon);
  check.positive("slope", slope, "N/m");
  return check.result(
    "modulus",
    12 * bending * span ** 3 * slope / (width * thickness ** 3),
    "Pa",
  );
}

/** The deflection correction holds from so slender a coupon and so large a deflection on. */
const LARGE = { slenderness: 16, deflection: 0.1 };

/**
 * Stress in the outer surface of a solid coupon in bending.
 *
 * Formula: σ = 6 km P S/(b d²), three-point 3 P S/(2 b d²); for a deflection δ above 0.1 S in
 * three-point σ (1 + 6 (δ/S)² − 4 (d/S)(δ/S))
 *
 * Range: linear material; of a laminate it is the stress of a solid bar of the same bending moment.
 *
 * Source: ASTM D790, from memory.
 *
 * @param coupon Span, width and thickness [m].
 * @param load Total load [N].
 * @param deflection Deflection at mid-span, for the correction [m].
 * @returns Stress, plain and corrected [Pa], and remarks.
 * @throws {InputError} If a length is not above 0 or load or deflection is below 0.
 *
 * @example
 * ```ts
 * import { couponStress } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const coupon = { span: 0.1, width: 0.01, thickness: 0.003 };
 * const { stress, corrected } = couponStress(coupon, 100, 0.012);
 * assertAlmostEquals(stress / 1e6, 166.667, 1e-3);
 * assertAlmostEquals(corrected / 1e6, 178.667, 1e-3);
 * ```
 */
export function couponStress(coupon: BentCoupon, load: number, deflection = 0): CouponStress {
  const { span, width, thickness, moment } = checked(coupon);
  check.nonNegative("load", load, "N");
  check.nonNegative("deflection", deflection, "m");
  const stress = check.result("stress", 6 * moment * load * span / (width * thickness ** 2), "Pa");
  if (!(deflection > LARGE.deflection * span)) return { stress, corrected: stress, notes: [] };
  const threePoint = (coupon.loadSpanFraction ?? 0) === 0;
  if (!(threePoint && span > LARGE.slenderness * thickness)) {
    return {
      stress,
      corrected: stress,
      notes: [
        "The deflection is above a tenth of the span, and the correction for that holds for slender " +
        "coupons in three-point bending only: the stress is rough.",
      ],
    };
  }
  const share = deflection / span;
  const factor = 1 + 6 * share ** 2 - 4 * thickness / span * share;
  return { stress, corrected: check.result("stress", stress * factor, "Pa"), notes: [] };
}

/**
 * Strain in the outer surface at mid-span of a solid coupon, from its deflection.
 *
 * Formula: ε = km d δ/(2 kb S²); three-point 6 δ d/S², third points 4.70, quarter points 4.36
 *
 * Range: as `couponModulus`.
 *
 * Source: ASTM D790 and D6272, from memory.
 *
 * @param coupon Span, width and thickness [m].
 * @param deflection Deflection at mid-span, from where the straight part meets zero load [m].
 * @returns Strain of the outer surface [1].
 * @throws {InputError} If a length is not above 0 or the deflection is not finite.
 *
 * @example
 * ```ts
 * import { couponStrain } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const coupon = { span: 0.064, width: 0.0127, thickness: 0.004 };
 * assertAlmostEquals(couponStrain(coupon, 0.001), 6 * 0.001 * 0.004 / 0.064 ** 2, 1e-15);
 * ```
 */
export function couponStrain(coupon: BentCoupon, deflection: number): number {
  check.finite("deflection", deflection, "m");
  return check.result("strain", strainPerDeflection(checked(coupon)) * deflection);
}

/**
 * Deflection at mid-span at which the outer surface of a coupon has a strain: the limits of a chord
 * modulus, say.
 *
 * Formula: δ = 2 kb S² ε/(km d); three-point ε S²/(6 d)
 *
 * Range: as `couponStrain`.
 *
 * Source: as `couponStrain`; ISO 178 (chord between strains of 0.0005 and 0.0025), from memory.
 *
 * @param coupon Span, width and thickness [m].
 * @param strain Strain of the outer surface [1].
 * @returns Deflection at mid-span [m].
 * @throws {InputError} If a length is not above 0 or the strain is not finite.
 *
 * @example
 * ```ts
 * import { couponDeflection } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const coupon = { span: 0.064, width: 0.0127, thickness: 0.004 };
 * assertAlmostEquals(couponDeflection(coupon, 0.0005) * 1000, 0.085333, 1e-6);
 * ```
 */
export function couponDeflection(coupon: BentCoupon, strain: number): number {
  check.finite("strain", strain);
  return check.result("deflection", strain / strainPerDeflection(checked(coupon)), "m");
}

function strainPerDeflection({ span, thickness, bending, moment }: Checked): number {
  return moment * thickness / (2 * bending * span ** 2);
}

/**
 * Speed of the load that strains the outer surface of a coupon at a rate.
 *
 * Formula: R = Z S²/(6 d) in three-point bending, Z the strain rate
 *
 * Range: as `couponStrain`.
 *
 * Source: ASTM D790, read in a public copy; Z 0.01 a minute for the usual procedure.
 *
 * @param coupon Span, width and thickness [m].
 * @param strainRate Strain of the outer surface a second, Z [1/s].
 * @returns Speed of the load [m/s].
 * @throws {InputError} If a length or the rate is not above 0.
 *
 * @example
 * ```ts
 * import { couponTestSpeed } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const coupon = { span: 0.064, width: 0.0127, thickness: 0.004 };
 * assertAlmostEquals(couponTestSpeed(coupon, 0.01 / 60) * 60_000, 1.70667, 1e-5);
 * ```
 */
export function couponTestSpeed(coupon: BentCoupon, strainRate: number): number {
  check.positive("strain rate", strainRate, "1/s");
  return check.result("speed", strainRate / strainPerDeflection(checked(coupon)), "m/s");
}
