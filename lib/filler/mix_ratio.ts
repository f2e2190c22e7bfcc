import { checksFor } from "../check/mod.ts";
import { propagate, type Propagated, type UncertainInput } from "../statistics/mod.ts";

const check = checksFor("compute the mixing ratio");

/** Densities of the two liquids before they are mixed. */
export interface MixDensities {
  /** Density of the liquid resin [kg/m³]. */
  readonly resinDensity: number;
  /** Density of the liquid hardener [kg/m³]. */
  readonly hardenerDensity: number;
}

/**
 * Hardener by mass for 100 of resin, from the ratio by volume.
 *
 * Formula: phr = vhr ρh/ρr
 *
 * Range: any ratio of 0 or above.
 *
 * Source: mass balance; phr as the trade uses it.
 *
 * @param vhr Hardener volume for 100 volumes of resin [1].
 * @param densities Densities of the two liquids [kg/m³].
 * @returns Hardener mass for 100 mass of resin, phr [1].
 * @throws {InputError} If the ratio is below 0 or a density not above 0.
 *
 * @example
 * ```ts
 * import { phrFromVolumeRatio } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const phr = phrFromVolumeRatio(50, { resinDensity: 1160, hardenerDensity: 986 });
 * assertAlmostEquals(phr, 42.5, 1e-12);
 * ```
 */
export function phrFromVolumeRatio(vhr: number, densities: MixDensities): number {
  check.nonNegative("hardener volume for 100 of resin", vhr);
  return check.result("phr", vhr * densityRatio(densities));
}

/**
 * Hardener by volume for 100 of resin, from the ratio by mass.
 *
 * Formula: vhr = phr ρr/ρh
 *
 * Range: any ratio of 0 or above.
 *
 * Source: mass balance.
 *
 * @param phr Hardener mass for 100 mass of resin [1].
 * @param densities Densities of the two liquids [kg/m³].
 * @returns Hardener volume for 100 volumes of resin, vhr [1].
 * @throws {InputError} If the ratio is below 0 or a density not above 0.
 *
 * @example
 * ```ts
 * import { volumeRatioFromPhr } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const vhr = volumeRatioFromPhr(42.5, { resinDensity: 1160, hardenerDensity: 986 });
 * assertAlmostEquals(vhr, 50, 1e-12);
 * ```
 */
export function volumeRatioFromPhr(phr: number, densities: MixDensities): number {
  check.nonNegative("phr", phr);
  return check.result("vhr", phr / densityRatio(densities));
}

/** What to weigh or measure into the cup. */
export interface Mix {
  /** Resin without hardener [kg]. */
  readonly resinMass: number;
  /** Hardener [kg]. */
  readonly hardenerMass: number;
  /** Both [kg]. */
  readonly totalMass: number;
}

/** A mix with its volumes. */
export interface MeasuredMix extends Mix {
  /** Resin without hardener [m³]. */
  readonly resinVolume: number;
  /** Hardener [m³]. */
  readonly hardenerVolume: number;
  /** Both, as ideal volumes that add up [m³]. */
  readonly totalVolume: number;
  /** Hardener volume for 100 volumes of resin [1]. */
  readonly vhr: number;
  /** Density of the liquid mix [kg/m³]. */
  readonly density: number;
}

/**
 * Splits a mass of ready mix into resin and hardener.
 *
 * Formula: m_h = m phr/(100 + phr), m_r = m − m_h
 *
 * Range: any mass and ratio of 0 or above.
 *
 * Source: mass balance.
 *
 * @param totalMass Mass of mix that is wanted [kg].
 * @param phr Hardener mass for 100 mass of resin [1].
 * @returns Masses of resin and hardener [kg].
 * @throws {InputError} If the mass or the ratio is below 0.
 *
 * @example
 * ```ts
 * import { splitMix } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const mix = splitMix(0.5, 25);
 * assertAlmostEquals(mix.hardenerMass, 0.1, 1e-12);
 * assertAlmostEquals(mix.resinMass, 0.4, 1e-12);
 * ```
 */
export function splitMix(totalMass: number, phr: number): Mix {
  check.nonNegative("mass of mix", totalMass, "kg");
  check.nonNegative("phr", phr);
  const hardenerMass = check.result("hardener mass", totalMass * (phr / (100 + phr)), "kg");
  return { resinMass: totalMass - hardenerMass, hardenerMass, totalMass };
}

/**
 * Hardener for a mass of resin, with the volumes for a crew that measures in cups.
 *
 * Formula: m_h = m_r phr/100, V = m/ρ, vhr = 100 V_h/V_r
 *
 * Range: ideal volumes: shrinkage on mixing is left out (below 1 %, from memory).
 *
 * Source: mass balance.
 *
 * @param resinMass Resin without hardener [kg].
 * @param phr Hardener mass for 100 mass of resin [1].
 * @param densities Densities of the two liquids [kg/m³].
 * @returns Masses [kg] and volumes [m³] of both and of the mix.
 * @throws {InputError} If the mass or a density is not above 0, or the ratio below 0.
 *
 * @example
 * ```ts
 * import { measureMix } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const mix = measureMix(0.4, 25, { resinDensity: 1150, hardenerDensity: 1000 });
 * assertAlmostEquals(mix.hardenerMass, 0.1, 1e-12);
 * assertAlmostEquals(mix.vhr, 28.75, 1e-12);
 * ```
 */
export function measureMix(resinMass: number, phr: number, densities: MixDensities): MeasuredMix {
  check.positive("resin mass", resinMass, "kg");
  const vhr = volumeRatioFromPhr(phr, densities);
  const hardenerMass = check.result("hardener mass", resinMass * (phr / 100), "kg");
  const resinVolume = resinMass / densities.resinDensity;
  const hardenerVolume = hardenerMass / densities.hardenerDensity;
  const totalMass = resinMass + hardenerMass;
  const totalVolume = check.result("volume", resinVolume + hardenerVolume, "m³");
  const density = check.result("density", totalMass / totalVolume, "kg/m³");
  return {
    resinMass,
    hardenerMass,
    totalMass,
    resinVolume,
    hardenerVolume,
    totalVolume,
    vhr,
    density,
  };
}

/** What a ratio read the wrong way does. */
export interface Misreading {
  /** What reaches the cup, hardener by mass for 100 of resin [1]. */
  readonly actualPhr: number;
  /** Actual over wanted, less 1: negative is too little hardener [1]. */
  readonly deviation: number;
}

/**
 * The error of measuring by volume a ratio that was meant by mass.
 *
 * The opposite slip (weighing a ratio meant by volume) gives 1/(1 + deviation) − 1.
 *
 * Formula: phr_actual = phr ρh/ρr; deviation = ρh/ρr − 1
 *
 * Range: any ratio of 0 or above.
 *
 * Source: mass balance.
 *
 * @param phr Ratio meant by mass, hardener for 100 of resin [1].
 * @param densities Densities of the two liquids [kg/m³].
 * @returns Ratio by mass that reaches the cup, and its deviation [1].
 * @throws {InputError} If the ratio is below 0 or a density not above 0.
 *
 * @example
 * ```ts
 * import { massRatioReadAsVolume } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const slip = massRatioReadAsVolume(30, { resinDensity: 1150, hardenerDensity: 966 });
 * assertAlmostEquals(slip.actualPhr, 25.2, 1e-12);
 * assertAlmostEquals(slip.deviation, -0.16, 1e-12);
 * ```
 */
export function massRatioReadAsVolume(phr: number, densities: MixDensities): Misreading {
  const actualPhr = phrFromVolumeRatio(check.nonNegative("phr", phr), densities);
  const { resinDensity, hardenerDensity } = densities;
  return { actualPhr, deviation: (hardenerDensity - resinDensity) / resinDensity };
}

/** A mix that has been poured and weighed. */
export interface WeighedMix {
  /** Resin in the cup [kg]. */
  readonly resin: UncertainInput;
  /** Hardener in the cup [kg]. */
  readonly hardener: UncertainInput;
  /** Hardener mass for 100 mass of resin that the resin's sheet asks for [1]. */
  readonly targetPhr: number;
}

/** How far a mix is off, and how to mend it. */
export interface MixCheck {
  /** Hardener mass for 100 mass of resin in the cup, with its uncertainty [1]. */
  readonly phr: Propagated<"resin" | "hardener">;
  /** Actual over target, less 1: negative is too little hardener [1]. */
  readonly deviation: number;
  /** Hardener to add; negative is too much hardener in the cup [kg]. */
  readonly hardenerToAdd: number;
  /** Resin to add instead; negative is too much resin in the cup [kg]. */
  readonly resinToAdd: number;
}

/**
 * Compares a weighed mix with the ratio that the resin's sheet asks for, before it is used.
 *
 * Formula: phr = 100 m_h/m_r; hardener to add phr_t m_r/100 − m_h; resin to add
 * 100 m_h/phr_t − m_r
 *
 * Range: the two weighings are independent; on one scale with a shared error of gain the ratio is
 * better than this says.
 *
 * Source: mass balance; JCGM 100:2008 (GUM) 5.1.2.
 *
 * @param mix The two weighings [kg] and the ratio wanted [1].
 * @returns Ratio in the cup with its uncertainty, deviation, and what would mend it.
 * @throws {InputError} If the hardener or an uncertainty is below 0, or the resin or target is not
 * above 0.
 *
 * @example
 * ```ts
 * import { checkMix } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const found = checkMix({
 *   resin: { value: 0.400, u: 0.001 },
 *   hardener: { value: 0.095, u: 0.001 },
 *   targetPhr: 25,
 * });
 * assertAlmostEquals(found.phr.value, 23.75, 1e-12);
 * assertAlmostEquals(found.hardenerToAdd, 0.005, 1e-12);
 * ```
 */
export function checkMix(mix: WeighedMix): MixCheck {
  const { resin, hardener, targetPhr } = check.object("mix", mix);
  const mr = check.positive("resin mass", check.object("resin", resin).value, "kg");
  const mh = check.nonNegative("hardener mass", check.object("hardener", hardener).value, "kg");
  check.positive("target phr", targetPhr);
  const phr = propagate((at) => 100 * (at.hardener / at.resin), { resin, hardener });
  return {
    phr,
    deviation: check.result("deviation", (phr.value - targetPhr) / targetPhr),
    hardenerToAdd: check.result("hardener to add", mr * (targetPhr / 100) - mh, "kg"),
    resinToAdd: check.result("resin to add", 100 * (mh / targetPhr) - mr, "kg"),
  };
}

function densityRatio(densities: MixDensities): number {
  const { resinDensity, hardenerDensity } = check.object("densities", densities);
  check.positive("resin density", resinDensity, "kg/m³");
  check.positive("hardener density", hardenerDensity, "kg/m³");
  return hardenerDensity / resinDensity;
}
