import { checksFor } from "../check/mod.ts";

const check = checksFor("compute the putty density");

/** Air at 20 °C and standard pressure, dry (p/(R T)) [kg/m³]. */
export const AIR_DENSITY = 1.204;

/** One thing stirred into a putty. */
export interface PuttyPart {
  /** Mass, or parts by mass: only the proportions count [kg]. */
  readonly mass: number;
  /** Density; of a filler that of its particle, not of the powder in the cup [kg/m³]. */
  readonly density: number;
}

/** The parts of a putty and the air stirred in. */
export interface PuttyParts {
  /** Mixed resin, fillers and whatever else goes in. */
  readonly parts: readonly PuttyPart[];
  /** Air by volume of the finished putty [1]. */
  readonly airFraction: number;
  /** Density of that air; `AIR_DENSITY` if left out [kg/m³]. */
  readonly airDensity?: number;
}

/**
 * Density of a putty from its parts and the air stirred in.
 *
 * Formula: ρ = (1 − va) Σm/Σ(m/ρ) + va ρ_air
 *
 * Range: air fraction va by volume of the finished putty, 0 to below 1; volumes add up.
 *
 * Source: mass balance; fillers count with particle density.
 *
 * @param putty Masses [kg] and densities [kg/m³] of the parts, and the air [1].
 * @returns Density of the putty [kg/m³].
 * @throws {InputError} If a mass is below 0, all are 0, a density is not above 0, or the air is
 * not 0 to below 1.
 *
 * @example Equal masses of resin and light spheres
 * ```ts
 * import { puttyDensity } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const density = puttyDensity({
 *   parts: [{ mass: 1, density: 1200 }, { mass: 1, density: 200 }],
 *   airFraction: 0.1,
 *   airDensity: 1.2,
 * });
 * assertAlmostEquals(density, 0.9 * 2 / (1 / 1200 + 1 / 200) + 0.12, 1e-10);
 * ```
 */
export function puttyDensity(putty: PuttyParts): number {
  const { parts, airFraction, airDensity = AIR_DENSITY } = check.object("putty", putty);
  check.fraction("air fraction", airFraction);
  if (!(airFraction < 1)) check.refuse("air fraction", airFraction, "must be below 1");
  check.nonNegative("air density", airDensity, "kg/m³");
  const density = (1 - airFraction) * densityWithoutAir(parts) + airFraction * airDensity;
  return check.result("putty density", density, "kg/m³");
}

/** A putty whose density was measured. */
export interface MeasuredPutty {
  /** Mixed resin, fillers and whatever else went in. */
  readonly parts: readonly PuttyPart[];
  /** Density measured on a filled cup or a cured block [kg/m³]. */
  readonly measuredDensity: number;
  /** Density of air; `AIR_DENSITY` if left out [kg/m³]. */
  readonly airDensity?: number;
}

/**
 * Air stirred into a putty, from its measured density.
 *
 * Formula: va = (ρ₀ − ρ)/(ρ₀ − ρ_air), ρ₀ = Σm/Σ(m/ρ)
 *
 * Range: negative where the putty is denser than its parts allow: a wrong density or weighing, or
 * crushed spheres. It is not clipped, so that the error shows.
 *
 * Source: mass balance.
 *
 * @param putty Masses [kg], densities [kg/m³] and the measured density [kg/m³].
 * @returns Air by volume of the finished putty [1].
 * @throws {InputError} If a mass is below 0, all are 0, or a density is not above 0.
 *
 * @example
 * ```ts
 * import { entrainedAir } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const air = entrainedAir({
 *   parts: [{ mass: 1, density: 1200 }],
 *   measuredDensity: 1080.12,
 *   airDensity: 1.2,
 * });
 * assertAlmostEquals(air, 0.1, 1e-12);
 * ```
 */
export function entrainedAir(putty: MeasuredPutty): number {
  const { parts, measuredDensity, airDensity = AIR_DENSITY } = check.object("putty", putty);
  check.positive("measured density", measuredDensity, "kg/m³");
  check.nonNegative("air density", airDensity, "kg/m³");
  const solid = densityWithoutAir(parts);
  if (!(solid > airDensity)) {
    check.refuse("density of the parts", solid, `must be above that of air, ${airDensity} kg/m³`);
  }
  return check.result("air fraction", (solid - measuredDensity) / (solid - airDensity));
}

function densityWithoutAir(parts: readonly PuttyPart[]): number {
  check.list("parts", parts);
  let mass = 0;
  let volume = 0;
  for (const part of parts) {
    check.object("part", part);
    check.nonNegative("mass of a part", part.mass, "kg");
    check.positive("density of a part", part.density, "kg/m³");
    mass += part.mass;
    volume += part.mass / part.density;
  }
  if (!(mass > 0)) check.refuse("parts", mass, "must have a mass above 0 in all");
  return check.result("density of the parts", mass / volume, "kg/m³");
}
