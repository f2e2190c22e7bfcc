import { checksFor } from "../check/mod.ts";

const check = checksFor("compute the standard atmosphere");

/** Constants of the standard atmosphere; exact by definition. */
const GRAVITY = 9.80665;
const GAS_CONSTANT_OF_AIR = 287.05287;
const SEA_LEVEL_TEMPERATURE = 288.15;
const LAPSE_RATE = 0.0065;
const TROPOPAUSE = 11_000;
const CEILING = 20_000;
const FLOOR = -5_000;
const EARTH_RADIUS = 6_356_766;

/** Pressure of the standard atmosphere at sea level [Pa]. */
export const STANDARD_PRESSURE = 101_325;

/** Air of the standard atmosphere at an altitude. */
export interface Air {
  /** Temperature [K]. */
  readonly temperature: number;
  /** Pressure [Pa]. */
  readonly pressure: number;
  /** Density [kg/m³]. */
  readonly density: number;
}

/**
 * Air of the standard atmosphere at a geopotential altitude.
 *
 * Formula: up to 11 km T = T0 − L H, p = p0 (T/T0)^(g0/(R L)); above T = T11,
 * p = p11 exp(−g0 (H − 11 km)/(R T11)); ρ = p/(R T); g0 9.80665, R 287.05287, T0 288.15, p0 101325,
 * L 0.0065
 *
 * Range: −5 to 20 km. The day's weather moves the pressure by a few per cent.
 *
 * Source: ISO 2533:1975.
 *
 * @param altitude Geopotential altitude; from a map's (geometric) one by `geopotentialAltitude` [m].
 * @returns Temperature [K], pressure [Pa], density [kg/m³].
 * @throws {InputError} If the altitude is outside the range.
 *
 * @example
 * ```ts
 * import { standardAtmosphere } from "@laminate/notebooks/shop";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(standardAtmosphere(1000).pressure, 89874.6, 0.05);
 * ```
 */
export function standardAtmosphere(altitude: number): Air {
  check.within("altitude", altitude, { min: FLOOR, max: CEILING, unit: "m" });
  const inTroposphere = Math.min(altitude, TROPOPAUSE);
  const temperature = SEA_LEVEL_TEMPERATURE - LAPSE_RATE * inTroposphere;
  const atTropopause = STANDARD_PRESSURE *
    (temperature / SEA_LEVEL_TEMPERATURE) ** (GRAVITY / (GAS_CONSTANT_OF_AIR * LAPSE_RATE));
  const above = altitude - inTroposphere;
  const pressure = atTropopause *
    Math.exp(-GRAVITY * above / (GAS_CONSTANT_OF_AIR * temperature));
  return { temperature, pressure, density: pressure / (GAS_CONSTANT_OF_AIR * temperature) };
}

/**
 * Geopotential altitude of a height above the sea.
 *
 * Formula: H = R z/(R + z), R 6356766 m
 *
 * Range: −5 km to 20 km; the two differ by 0.04 % of the pressure at 4.4 km.
 *
 * Source: ISO 2533:1975.
 *
 * @param height Height above the sea, as on a map [m].
 * @returns Geopotential altitude [m].
 * @throws {InputError} If the height is outside the range.
 *
 * @example
 * ```ts
 * import { geopotentialAltitude } from "@laminate/notebooks/shop";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(geopotentialAltitude(5000), 4996.07, 0.01);
 * ```
 */
export function geopotentialAltitude(height: number): number {
  check.within("height", height, { min: FLOOR, max: CEILING, unit: "m" });
  return EARTH_RADIUS * height / (EARTH_RADIUS + height);
}
