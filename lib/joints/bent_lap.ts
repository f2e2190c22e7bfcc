import { checksFor } from "../check/mod.ts";

const check = checksFor("compute the bending of the lap");

/** A single lap of two equal adherends, free to bend. */
export interface BalancedLap {
  /** Modulus of both adherends along the load [Pa]. */
  readonly modulus: number;
  /** Poisson ratio of both adherends [1]. */
  readonly nu: number;
  /** Thickness of each adherend [m]. */
  readonly thickness: number;
  /** Young's modulus of the adhesive [Pa]. */
  readonly adhesiveModulus: number;
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

/** Stresses in a single lap that bends. */
export interface BentLap {
  /** Moment at the edge of the overlap over that of the undeformed joint, k [1]. */
  readonly edgeMomentFactor: number;
  /** Moment in the adherend at the edge of the overlap, per width [N]. */
  readonly edgeMoment: number;
  /** Largest tension in the adherend there, pull and bending [Pa]. */
  readonly adherendStress: number;
  /** Load over bonded area [Pa]. */
  readonly mean: number;
  /** Largest shear in the adhesive, at the ends [Pa]. */
  readonly peakShear: number;
  /** Largest peel in the adhesive, at the ends [Pa]. */
  readonly peakPeel: number;
}

/** Beyond this e^(−2λ) is below the rounding of 1. */
const LONG = 20;

/**
 * Shear and peel in a single lap of equal adherends whose ends bend out of line.
 *
 * Formula: k = 1/(1 + 2√2 tanh uc), u = √(3(1 − ν²)/2 · p/E)/t, c half of the overlap, p = P/(b t);
 * τ/τ_mean = ¼[(βc/t)(1 + 3k) coth(βc/t) + 3(1 − k)], β² = 8Ga t/(E ta);
 * peel = p (t/c)² [λ²(k/2)(sinh 2λ − sin 2λ) + λk′(cosh 2λ + cos 2λ)]/(sinh 2λ + sin 2λ),
 * λ = γc/t, γ⁴ = 6Ea t/(E ta), k′ = k (c/t) √(3(1 − ν²)p/E)
 *
 * Range: equal adherends, elastic adhesive much softer than they are; long free ends.
 *
 * Source: M. Goland, E. Reissner, J. Appl. Mech. 11 (1944) A17, from memory; the peel re-derived as
 * a beam on an elastic layer.
 *
 * @param lap Adherends, adhesive, sizes [m] and load [N].
 * @returns Edge moment, and peaks of shear and peel [Pa].
 * @throws {InputError} If a size, modulus or the load is not above 0, or ν not 0 to below 0.5.
 *
 * @example
 * ```ts
 * import { bentLap } from "@laminate/notebooks/joints";
 * import { assert } from "@std/assert";
 *
 * const { edgeMomentFactor } = bentLap({
 *   modulus: 20e9, nu: 0.15, thickness: 0.002, adhesiveModulus: 3e9,
 *   adhesiveShearModulus: 1.1e9, adhesiveThickness: 0.0003,
 *   width: 0.025, overlap: 0.05, load: 2000,
 * });
 * assert(edgeMomentFactor > 0.26 && edgeMomentFactor < 1);
 * ```
 */
export function bentLap(lap: BalancedLap): BentLap {
  checkLap(lap);
  const { modulus, nu, thickness, adhesiveThickness } = lap;
  const c = lap.overlap / 2;
  const pull = check.result("pull", lap.load / (lap.width * thickness), "Pa");
  const strain = (1 - nu ** 2) * pull / modulus;
  const edgeMomentFactor = 1 /
    (1 + 2 * Math.SQRT2 * Math.tanh(Math.sqrt(1.5 * strain) * c / thickness));
  const edgeMoment = edgeMomentFactor * pull * thickness ** 2 / 2;
  const mean = lap.load / (lap.width * lap.overlap);
  const softness = thickness / (modulus * adhesiveThickness);
  const shearLength = Math.sqrt(8 * lap.adhesiveShearModulus * softness) * c / thickness;
  const k = edgeMomentFactor;
  return {
    edgeMomentFactor,
    edgeMoment,
    adherendStress: check.result("stress", pull + 6 * edgeMoment / thickness ** 2, "Pa"),
    mean,
    peakShear: check.result(
      "peak shear",
      mean / 4 * (shearLength * (1 + 3 * k) / Math.tanh(shearLength) + 3 * (1 - k)),
      "Pa",
    ),
    peakPeel: check.result(
      "peak peel",
      pull * (thickness / c) ** 2 * peelFactor({
        peelLength: (6 * lap.adhesiveModulus * softness) ** 0.25 * c / thickness,
        k,
        edgeShear: k * c / thickness * Math.sqrt(3 * strain),
      }),
      "Pa",
    ),
  };
}

/** The bracket of the peel formula; for a long lap its ratios of hyperbolic functions are 1. */
function peelFactor(
  { peelLength, k, edgeShear }: {
    readonly peelLength: number;
    readonly k: number;
    readonly edgeShear: number;
  },
): number {
  const x = 2 * peelLength;
  const long = peelLength > LONG;
  const sum = Math.sinh(x) + Math.sin(x);
  const ofMoment = long ? 1 : (Math.sinh(x) - Math.sin(x)) / sum;
  const ofShear = long ? 1 : (Math.cosh(x) + Math.cos(x)) / sum;
  return peelLength ** 2 * k / 2 * ofMoment + peelLength * edgeShear * ofShear;
}

function checkLap(lap: BalancedLap): void {
  check.object("lap", lap);
  check.positive("modulus of the adherends", lap.modulus, "Pa");
  check.finite("Poisson ratio", lap.nu);
  if (!(lap.nu >= 0 && lap.nu < 0.5)) {
    check.refuse("Poisson ratio", lap.nu, "must be from 0 to below 0.5");
  }
  check.positive("thickness of the adherends", lap.thickness, "m");
  check.positive("modulus of the adhesive", lap.adhesiveModulus, "Pa");
  check.positive("shear modulus of the adhesive", lap.adhesiveShearModulus, "Pa");
  check.positive("thickness of the adhesive", lap.adhesiveThickness, "m");
  check.positive("width", lap.width, "m");
  check.positive("overlap", lap.overlap, "m");
  check.positive("load", lap.load, "N");
}
