import { checksFor } from "../check/mod.ts";

const check = checksFor("compute the part's resin");

/** What stands on the scale and what is known to be in it. */
export interface PartMasses {
  /** Mass of the finished part [kg]. */
  readonly partMass: number;
  /** Mass of the core before lay-up; 0 for a solid part [kg]. */
  readonly coreMass: number;
  /** Film, peel ply, inserts, paint and the like that is on the scale too [kg]. */
  readonly otherMass: number;
  /** Resin that the core took up: part of the resin, not of the faces [kg]. */
  readonly coreResin: number;
  /** Dry mass of the fibre in the part, what was trimmed off left out [kg]. */
  readonly fibreMass: number;
  /** Volume of that fibre [m³]. */
  readonly fibreVolume: number;
  /** Density of the cured resin [kg/m³]. */
  readonly resinDensity: number;
}

/** How a part's mass divides. */
export interface PartBalance {
  /** All resin in the part, the core's share included; negative shows a mistake [kg]. */
  readonly resinMass: number;
  /** Resin in the laminate alone [kg]. */
  readonly laminateResin: number;
  /** Resin of the laminate over fibre, by mass [1]. */
  readonly resinRatio: number;
  /** Fibre mass over laminate mass [1]. */
  readonly fibreMassFraction: number;
  /** Fibre volume over laminate volume, void-free [1]. */
  readonly fibreVolumeFraction: number;
  /** Volume of fibre and resin of the laminate, void-free [m³]. */
  readonly laminateVolume: number;
}

/**
 * The weighing method for a part with or without core: what is left of the scale's reading when
 * core, leftovers and fibre are subtracted is resin. Nothing is clipped: a negative resin mass
 * comes out negative.
 *
 * Formula: mr = m − mcore − mother − mf; laminate: mr − mr,core; ratio = mr/mf;
 * W = mf/(mf + mr); Vf = Vfibre/(Vfibre + mr/ρm)
 *
 * Range: fibre and resin of the laminate together above 0 by mass and by volume.
 *
 * Source: mass balance; ASTM D3171 (form of the fractions), from memory.
 *
 * @param masses Masses [kg], fibre volume [m³] and resin density [kg/m³].
 * @returns Resin masses [kg], ratio and fractions [1], laminate volume [m³].
 * @throws {InputError} If a mass cannot be meant, or nothing is left for the laminate.
 *
 * @example A sandwich panel of one square metre
 * ```ts
 * import { partBalance } from "@laminate/notebooks/constituents";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const balance = partBalance({
 *   partMass: 2.6,
 *   coreMass: 0.8,
 *   otherMass: 0,
 *   coreResin: 0.2,
 *   fibreMass: 0.8,
 *   fibreVolume: 0.8 / 2560,
 *   resinDensity: 1150,
 * });
 * assertAlmostEquals(balance.resinMass, 1, 1e-12);
 * assertAlmostEquals(balance.resinRatio, 1, 1e-12);
 * assertAlmostEquals(balance.fibreMassFraction, 0.5, 1e-12);
 * ```
 */
export function partBalance(masses: PartMasses): PartBalance {
  check.object("masses", masses);
  const { partMass, coreMass, otherMass, coreResin, fibreMass, fibreVolume } = masses;
  check.positive("part mass", partMass, "kg");
  check.nonNegative("core mass", coreMass, "kg");
  check.nonNegative("other mass", otherMass, "kg");
  check.nonNegative("resin in the core", coreResin, "kg");
  check.positive("fibre mass", fibreMass, "kg");
  check.positive("fibre volume", fibreVolume, "m³");
  check.positive("resin density", masses.resinDensity, "kg/m³");
  const resinMass = partMass - coreMass - otherMass - fibreMass;
  const laminateResin = resinMass - coreResin;
  const laminateMass = check.positive(
    "mass left for the laminate",
    fibreMass + laminateResin,
    "kg",
  );
  const laminateVolume = check.positive(
    "volume left for the laminate",
    fibreVolume + laminateResin / masses.resinDensity,
    "m³",
  );
  return {
    resinMass,
    laminateResin,
    resinRatio: check.result("resin ratio", laminateResin / fibreMass),
    fibreMassFraction: check.result("fibre mass fraction", fibreMass / laminateMass),
    fibreVolumeFraction: check.result("fibre volume fraction", fibreVolume / laminateVolume),
    laminateVolume,
  };
}

/**
 * The resin that a laminate of known fibre holds at a fibre fraction aimed at: what could have
 * been left out is the difference.
 *
 * Formula: mr = ρm Vfibre (1 − Vf)/Vf
 *
 * Range: Vf above 0, up to 1.
 *
 * Source: mass balance.
 *
 * @param fibreVolume Volume of the fibre [m³].
 * @param fibreVolumeFraction Fibre fraction aimed at, Vf [1].
 * @param resinDensity Density of the cured resin [kg/m³].
 * @returns Mass of the resin [kg].
 * @throws {InputError} If an input is not above 0 or the fraction is above 1.
 *
 * @example
 * ```ts
 * import { resinForFraction } from "@laminate/notebooks/constituents";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(resinForFraction(0.001, 0.4, 1200), 1.8, 1e-12);
 * ```
 */
export function resinForFraction(
  fibreVolume: number,
  fibreVolumeFraction: number,
  resinDensity: number,
): number {
  check.positive("fibre volume", fibreVolume, "m³");
  check.positive("fibre volume fraction", fibreVolumeFraction);
  check.fraction("fibre volume fraction", fibreVolumeFraction);
  check.positive("resin density", resinDensity, "kg/m³");
  const share = (1 - fibreVolumeFraction) / fibreVolumeFraction;
  return check.result("resin mass", resinDensity * fibreVolume * share, "kg");
}
