import { checksFor } from "../check/mod.ts";
import { fitLine, type LineFit, propagate, type Uncertain } from "../statistics/mod.ts";

export type {
  FitParameter,
  LimitShape,
  LineFit,
  Uncertain,
  UncertainInput,
} from "../statistics/mod.ts";

const check = checksFor("read the pulled coupon");

/** A solid coupon that was pulled, with readings in the order taken. */
export interface PulledCoupon {
  /** Width [m]. */
  readonly width: Uncertain;
  /** Thickness [m]. */
  readonly thickness: Uncertain;
  /** Force of each reading [N]. */
  readonly force: ArrayLike<number>;
  /** Strain of each reading: elongation over gauge length [1]. */
  readonly strain: ArrayLike<number>;
  /** Strain across of each reading, negative in tension, if it was read [1]. */
  readonly strainAcross?: ArrayLike<number>;
}

/** Strains between which a slope is taken. */
export interface StrainWindow {
  /** Lower strain [1]. */
  readonly from: number;
  /** Upper strain [1]. */
  readonly to: number;
}

/** What a pulled coupon says. */
export interface CouponTension {
  /** Modulus along the pull, width and thickness counted [Pa]. */
  readonly modulus: Uncertain;
  /** Poisson ratio, −strain across over strain along; null where it was not read [1]. */
  readonly nu: Uncertain | null;
  /** Largest stress [Pa]. */
  readonly greatestStress: number;
  /** The line through the readings of the window: stress on strain. */
  readonly fit: LineFit;
  /** Remarks, empty where there is nothing to say. */
  readonly notes: readonly string[];
}

/** Window of ASTM D3039; ISO 527 has 0.0005 to 0.0025. */
const D3039: StrainWindow = { from: 0.001, to: 0.003 };
/** Fewest readings for a slope with its scatter [1]. */
const FEWEST = 3;

/**
 * Modulus and Poisson ratio of a solid coupon in tension: what to compare face moduli with.
 *
 * Formula: σ = F/(b h); E slope of σ on ε inside the window; ν = −slope of ε across on ε; u(E) with
 * those of width and thickness
 *
 * Range: strain read on the coupon itself (a dial gauge between two clips, a strain gauge). The
 * travel of the machine's head counts grips and frame too, and shows a modulus far too low.
 *
 * Source: ASTM D3039 (chord between strains of 0.001 and 0.003), ISO 527-4, from memory; JCGM 100.
 *
 * @param coupon Width, thickness [m], forces [N], strains [1].
 * @param window Strains of the straight part; 0.001 to 0.003 unless said [1].
 * @returns Modulus [Pa], Poisson ratio [1], largest stress [Pa], the line, remarks.
 * @throws {InputError} If lists differ in length, the window holds under three readings, or a
 * length is not above 0.
 *
 * @example
 * ```ts
 * import { couponTension } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const strain = [0, 0.001, 0.0015, 0.002, 0.003, 0.01];
 * const { modulus, greatestStress } = couponTension({
 *   width: { value: 0.025, u: 0 },
 *   thickness: { value: 0.002, u: 0 },
 *   force: strain.map((e) => 18e9 * e * 0.025 * 0.002),
 *   strain,
 * });
 * assertAlmostEquals(modulus.value / 1e9, 18, 1e-9);
 * assertAlmostEquals(greatestStress / 1e6, 180, 1e-9);
 * ```
 */
export function couponTension(coupon: PulledCoupon, window: StrainWindow = D3039): CouponTension {
  check.object("coupon", coupon);
  check.object("window", window);
  check.finite("lower strain", window.from);
  check.finite("upper strain", window.to);
  if (!(window.to > window.from)) {
    check.refuse("upper strain", window.to, "must be above the lower");
  }
  const { width, thickness } = coupon;
  for (const [name, side] of [["width", width], ["thickness", thickness]] as const) {
    check.object(name, side);
    check.positive(name, side.value, "m");
    check.nonNegative(`uncertainty of the ${name}`, side.u, "m");
  }
  const { force, strain, strainAcross } = listsOf(coupon);
  const area = width.value * thickness.value;
  const slack = 1e-9 * (window.to - window.from);
  const inside = strain.flatMap((value, i) =>
    value >= window.from - slack && value <= window.to + slack ? [i] : []
  );
  if (inside.length < FEWEST) {
    check.refuse("readings inside the window", inside.length, `must be ${FEWEST} or more`);
  }
  const x = inside.map((i) => strain[i]!);
  const fit = fitLine({ x, y: inside.map((i) => force[i]! / area) });
  const { value, u } = propagate(
    (values) => values.slope * area / (values.width * values.thickness),
    { slope: fit.slope, width, thickness },
  );
  const across = strainAcross === null
    ? null
    : fitLine({ x, y: inside.map((i) => -strainAcross[i]!) }).slope;
  return {
    modulus: { value: check.positive("modulus", value, "Pa"), u },
    nu: across === null ? null : { value: across.value, u: across.u },
    greatestStress: check.result("largest stress", Math.max(...force) / area, "Pa"),
    fit,
    notes: across !== null && across.value < 0
      ? ["The coupon grows wider as it is pulled: is the sign of the strain across right?"]
      : [],
  };
}

function listsOf({ force, strain, strainAcross }: PulledCoupon): {
  readonly force: readonly number[];
  readonly strain: readonly number[];
  readonly strainAcross: readonly number[] | null;
} {
  const numbers = (name: string, list: ArrayLike<number>): readonly number[] => {
    if (!(Array.isArray(list) || ArrayBuffer.isView(list))) {
      check.refuse(name, list, "must be a list of numbers");
    }
    return Array.from(list, (value, i) => check.finite(`${name} of reading ${i + 1}`, value));
  };
  const lists = {
    force: numbers("force", force),
    strain: numbers("strain", strain),
    strainAcross: strainAcross === undefined ? null : numbers("strain across", strainAcross),
  };
  for (const list of [lists.strain, lists.strainAcross]) {
    if (list !== null && list.length !== lists.force.length) {
      check.refuse(
        "number of strains",
        list.length,
        `must be that of forces, ${lists.force.length}`,
      );
    }
  }
  return lists;
}
