import { checksFor } from "../check/mod.ts";
import { fitLine } from "../statistics/mod.ts";
import { STANDARD_PRESSURE } from "./atmosphere.ts";

const check = checksFor("compute the leak");

/** Specific gas constant of dry air (ISO 2533) [J/(kg K)]. */
const GAS_CONSTANT_OF_AIR = 287.05287;

/** 0 °C, the temperature of a "standard" cubic centimetre here [K]. */
const STANDARD_TEMPERATURE = 273.15;

/** Absolute pressure in a bag after the pump was shut off. */
export interface LeakDown {
  /** Times of the readings [s]. */
  readonly times: readonly number[];
  /** Absolute pressures at those times [Pa]. */
  readonly pressures: readonly number[];
  /** Volume of bag, hoses and trap together [m³]. */
  readonly volume: number;
  /** Temperature of the air in it [K]. */
  readonly temperature: number;
}

/** How fast a bag leaks. */
export interface LeakRate {
  /** Rise of the pressure, from all readings by least squares [Pa/s]. */
  readonly rise: number;
  /** Its standard error; none with two readings [Pa/s]. */
  readonly riseStandardError?: number;
  /** Rise from the first and last reading alone [Pa/s]. */
  readonly riseOfEnds: number;
  /** Throughput Q = V dp/dt [Pa m³/s]. */
  readonly throughput: number;
  /** The same as air of 0 °C and 101325 Pa; 6e7 times that is in standard cm³/min [m³/s]. */
  readonly standardFlow: number;
  /** Mass of air that enters [kg/s]. */
  readonly massFlow: number;
}

/**
 * Leak of a bag from a leak-down test.
 *
 * Formula: dp/dt by least squares; Q = V dp/dt; standard flow Q/101325 × 273.15/T; mass Q/(R T)
 *
 * Range: rise small against the pressure outside, so that it stays straight; see `leakTimeConstant`
 * for the rest. A warming bag rises too: correct the readings with `pressureAtTemperature`.
 *
 * Source: ideal gas; vacuum technology, any text. Standard: 0 °C and 101325 Pa.
 *
 * @param test Times [s], absolute pressures [Pa], volume [m³], temperature [K].
 * @returns Rise [Pa/s], throughput [Pa m³/s], standard and mass flow.
 * @throws {InputError} If there are fewer than two readings, lists differ in length, or a pressure,
 * the volume or the temperature is not above 0.
 *
 * @example
 * ```ts
 * import { leakRate } from "@laminate/notebooks/shop";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const leak = leakRate({
 *   times: [0, 300, 600], pressures: [20e3, 21e3, 22e3], volume: 0.006, temperature: 293.15,
 * });
 * assertAlmostEquals(leak.throughput, 0.02, 1e-12);
 * ```
 */
export function leakRate(test: LeakDown): LeakRate {
  const { times, pressures, volume, temperature } = check.object("test", test);
  const last = checkReadings(times, pressures);
  check.positive("volume", volume, "m³");
  check.positive("temperature", temperature, "K");
  const span = times[last]! - times[0]!;
  const riseOfEnds = check.result("rise", (pressures[last]! - pressures[0]!) / span, "Pa/s");
  const slope = last === 1 ? undefined : fitLine({ x: times, y: pressures }).slope;
  const rise = slope?.value ?? riseOfEnds;
  const throughput = volume * rise;
  const standardFlow = throughput / STANDARD_PRESSURE * (STANDARD_TEMPERATURE / temperature);
  return check.results({
    rise,
    ...(slope === undefined ? {} : { riseStandardError: slope.u }),
    riseOfEnds,
    throughput,
    standardFlow,
    massFlow: throughput / (GAS_CONSTANT_OF_AIR * temperature),
  });
}

/** Two readings of a bag that leaks for long. */
export interface LongLeak {
  /** Absolute pressure at the first reading [Pa]. */
  readonly first: number;
  /** Absolute pressure at the second reading [Pa]. */
  readonly second: number;
  /** Time between them [s]. */
  readonly time: number;
  /** Pressure of the air outside [Pa]. */
  readonly outside: number;
}

/**
 * Time constant with which a leaking bag nears the pressure outside.
 *
 * Formula: p = p_a − (p_a − p0) e^(−t/τ), hence τ = t/ln[(p_a − p0)/(p_a − p1)]
 *
 * Range: p0 < p1 < p_a; leak in proportion to the pressure difference (a fine porous leak).
 *
 * Source: first-order balance.
 *
 * @param leak Two absolute pressures and the air outside [Pa], time between [s].
 * @returns Time constant τ [s].
 * @throws {InputError} If an input is not above 0 or the pressures are not in that order.
 *
 * @example
 * ```ts
 * import { leakTimeConstant } from "@laminate/notebooks/shop";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const leak = { first: 20e3, second: 60e3, time: 3600, outside: 100e3 };
 * assertAlmostEquals(leakTimeConstant(leak), 3600 / Math.LN2, 1e-9);
 * ```
 */
export function leakTimeConstant(leak: LongLeak): number {
  const { first, second, time, outside } = check.object("leak", leak);
  check.nonNegative("first pressure", first, "Pa");
  check.positive("second pressure", second, "Pa");
  check.positive("time", time, "s");
  check.positive("pressure outside", outside, "Pa");
  if (!(first < second)) check.refuse("second pressure", second, `must be above ${first} Pa`);
  if (!(second < outside)) check.refuse("second pressure", second, `must be below ${outside} Pa`);
  // ln[(pa − p0)/(pa − p1)] = ln[1 + (p1 − p0)/(pa − p1)] keeps the digits of a slow leak.
  return check.result(
    "time constant",
    time / Math.log1p((second - first) / (outside - second)),
    "s",
  );
}

/** A bag on its way to the pressure outside. */
export interface LeakingBag {
  /** Absolute pressure when the pump is shut off [Pa]. */
  readonly start: number;
  /** Pressure of the air outside [Pa]. */
  readonly outside: number;
  /** Time constant, from `leakTimeConstant` [s]. */
  readonly timeConstant: number;
}

/**
 * Absolute pressure in a leaking bag some time after the pump is shut off.
 *
 * Formula: p = p_a − (p_a − p0) e^(−t/τ)
 *
 * Range: as `leakTimeConstant`.
 *
 * Source: first-order balance.
 *
 * @param bag Pressure at the start and outside [Pa], time constant [s].
 * @param time Time since the pump was shut off [s].
 * @returns Absolute pressure [Pa].
 * @throws {InputError} If an input is outside its range.
 *
 * @example
 * ```ts
 * import { pressureAfterLeak } from "@laminate/notebooks/shop";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const bag = { start: 20e3, outside: 100e3, timeConstant: 3600 };
 * assertAlmostEquals(pressureAfterLeak(bag, 3600 * Math.LN2), 60e3, 1e-9);
 * ```
 */
export function pressureAfterLeak(bag: LeakingBag, time: number): number {
  const { start, outside, timeConstant } = check.object("bag", bag);
  check.nonNegative("pressure at the start", start, "Pa");
  check.positive("pressure outside", outside, "Pa");
  check.positive("time constant", timeConstant, "s");
  check.nonNegative("time", time, "s");
  if (!(start <= outside)) {
    check.refuse("pressure at the start", start, `must not be above ${outside} Pa`);
  }
  return start - (outside - start) * Math.expm1(-time / timeConstant);
}

/** A pressure read at one temperature, wanted at another. */
export interface WarmedPressure {
  /** Absolute pressure as read [Pa]. */
  readonly pressure: number;
  /** Temperature of the air in the bag when read [K]. */
  readonly temperature: number;
}

/**
 * Pressure that a closed bag would show at the temperature at which the test began.
 *
 * Formula: p × T0/T
 *
 * Range: closed volume that does not change; no vapour from the resin.
 *
 * Source: ideal gas.
 *
 * @param reading Absolute pressure [Pa] and temperature [K] as read.
 * @param referenceTemperature Temperature at the start of the test [K].
 * @returns Absolute pressure at that temperature [Pa].
 * @throws {InputError} If an input is not above 0.
 *
 * @example
 * ```ts
 * import { pressureAtTemperature } from "@laminate/notebooks/shop";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const pressure = pressureAtTemperature({ pressure: 21e3, temperature: 300 }, 290);
 * assertAlmostEquals(pressure, 20300, 1e-9);
 * ```
 */
export function pressureAtTemperature(
  reading: WarmedPressure,
  referenceTemperature: number,
): number {
  const { pressure, temperature } = check.object("reading", reading);
  check.positive("pressure", pressure, "Pa");
  check.positive("temperature", temperature, "K");
  check.positive("temperature at the start", referenceTemperature, "K");
  return check.result("pressure", pressure * (referenceTemperature / temperature), "Pa");
}

function checkReadings(times: readonly number[], pressures: readonly number[]): number {
  check.list("times", times, 2);
  check.list("pressures", pressures, 2);
  if (times.length !== pressures.length) {
    check.refuse("pressures", pressures, `must be ${times.length} readings, one for each time`);
  }
  times.forEach((time, i) => {
    check.finite("time", time, "s");
    if (i > 0 && !(time > times[i - 1]!)) check.refuse("time", time, "must come after the last");
  });
  for (const pressure of pressures) check.positive("pressure", pressure, "Pa");
  return times.length - 1;
}
