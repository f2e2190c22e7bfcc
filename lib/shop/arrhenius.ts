import { checksFor } from "../check/mod.ts";
import { gaussLegendre } from "../numeric/mod.ts";

const check = checksFor("compute the equivalent time of cure");

/** Molar gas constant, exact [J/(mol K)]. */
export const GAS_CONSTANT = 8.314462618;

/** How a resin's rate of cure depends on temperature. */
export interface CureRate {
  /** Activation energy; about 50 000 to 60 000 for epoxies [J/mol]. */
  readonly activationEnergy: number;
  /** Temperature at which the rate counts 1 [K]. */
  readonly referenceTemperature: number;
}

/**
 * Rate of cure at a temperature, over that at the reference.
 *
 * Formula: exp[−(Ea/R)(1/T − 1/T_ref)], R 8.314462618 J/(mol K)
 *
 * Range: temperatures above 0 K; one mechanism of cure.
 *
 * Source: S. Arrhenius 1889; any text on physical chemistry.
 *
 * @param temperature Temperature [K].
 * @param rate Activation energy [J/mol] and reference temperature [K].
 * @returns Rate over the reference rate [1].
 * @throws {InputError} If a temperature is not above 0 or the energy below 0.
 *
 * @example
 * ```ts
 * import { cureRateFactor } from "@laminate/notebooks/shop";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const factor = cureRateFactor(308, { activationEnergy: 50e3, referenceTemperature: 298 });
 * assertAlmostEquals(factor, 1.93, 0.005);
 * ```
 */
export function cureRateFactor(temperature: number, rate: CureRate): number {
  checkRate(rate);
  check.positive("temperature", temperature, "K");
  return check.result("rate", rateAt(temperature, rate));
}

/** Two temperatures and how much faster the warmer one is. */
export interface RatePair {
  /** The cooler temperature [K]. */
  readonly cooler: number;
  /** The warmer temperature [K]. */
  readonly warmer: number;
  /** Rate at the warmer over rate at the cooler [1]. */
  readonly ratio: number;
}

/**
 * Activation energy from two working or gel times of a resin's sheet.
 *
 * Formula: Ea = R ln(ratio)/(1/T1 − 1/T2)
 *
 * Range: ratio above 0. Doubling for ten degrees near room temperature is about 53 kJ/mol.
 *
 * Source: Arrhenius equation, solved.
 *
 * @param pair Two temperatures [K] and the ratio of rates [1].
 * @returns Activation energy [J/mol].
 * @throws {InputError} If an input is not above 0 or the temperatures are not in order.
 *
 * @example
 * ```ts
 * import { activationEnergy } from "@laminate/notebooks/shop";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(activationEnergy({ cooler: 298, warmer: 308, ratio: 2 }), 52.9e3, 50);
 * ```
 */
export function activationEnergy(pair: RatePair): number {
  const { cooler, warmer, ratio } = check.object("pair", pair);
  check.positive("cooler temperature", cooler, "K");
  check.positive("warmer temperature", warmer, "K");
  check.positive("ratio", ratio);
  if (!(warmer > cooler)) check.refuse("warmer temperature", warmer, `must be above ${cooler} K`);
  // 1/T1 − 1/T2 = (T2 − T1)/(T1 T2)
  const energy = GAS_CONSTANT * Math.log(ratio) * (cooler * warmer / (warmer - cooler));
  return check.result("activation energy", energy, "J/mol");
}

/** A log of temperature. */
export interface TemperatureLog {
  /** Times of the readings [s]. */
  readonly times: readonly number[];
  /** Temperatures at those times [K]. */
  readonly temperatures: readonly number[];
}

/** Time at the reference temperature that would cure as far. */
export interface EquivalentTime {
  /** With temperature straight between readings, integrated exactly: the one that counts [s]. */
  readonly exact: number;
  /** By the mean of the rates at both ends of each step; too long where steps are large [s]. */
  readonly trapezoid: number;
  /** At the rate of the mean temperature; too short [s]. */
  readonly atMeanTemperature: number;
  /** Length of the log [s]. */
  readonly duration: number;
  /** Mean temperature over time [K]. */
  readonly meanTemperature: number;
}

/** Each piece of a step spans at most this much of Ea/(R T): then 16 points are exact. */
const LARGEST_SPAN = 4;
/** Over more pieces than this the rate runs beyond the range of numbers anyhow. */
const MOST_PIECES = 250;
const RULE = gaussLegendre(16);

/**
 * Time at the reference temperature that cures as far as a log of temperatures did.
 *
 * Formula: ∫ exp[−(Ea/R)(1/T − 1/T_ref)] dt with T straight between readings
 *
 * Range: two readings or more, times increasing. Beside it the trapezoid of the rate and the rate
 * at the mean temperature, which are shortcuts in use and are off by up to 70 %.
 *
 * Source: Arrhenius equation; Gauss–Legendre quadrature on each step.
 *
 * @param log Times [s] and temperatures [K].
 * @param rate Activation energy [J/mol] and reference temperature [K].
 * @returns Equivalent time, exact and by both shortcuts [s].
 * @throws {InputError} If the lists differ in length, hold fewer than two readings, times do not
 * increase or a temperature is not above 0.
 *
 * @example Held at the reference, time is time
 * ```ts
 * import { equivalentTime } from "@laminate/notebooks/shop";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const log = { times: [0, 3600], temperatures: [298.15, 298.15] };
 * const rate = { activationEnergy: 53e3, referenceTemperature: 298.15 };
 * assertAlmostEquals(equivalentTime(log, rate).exact, 3600, 1e-9);
 * ```
 */
export function equivalentTime(log: TemperatureLog, rate: CureRate): EquivalentTime {
  checkRate(rate);
  const { times, temperatures } = check.object("log", log);
  checkLog(times, temperatures);
  let [exact, trapezoid, degreeSeconds] = [0, 0, 0];
  for (let i = 1; i < times.length; i++) {
    const step = times[i]! - times[i - 1]!;
    const [from, to] = [temperatures[i - 1]!, temperatures[i]!];
    exact += step * meanRate(from, to, rate);
    trapezoid += step * (rateAt(from, rate) + rateAt(to, rate)) / 2;
    degreeSeconds += step * (from + to) / 2;
  }
  const duration = times.at(-1)! - times[0]!;
  const meanTemperature = degreeSeconds / duration;
  return {
    exact: check.result("equivalent time", exact, "s"),
    trapezoid: check.result("equivalent time", trapezoid, "s"),
    atMeanTemperature: check.result(
      "equivalent time",
      duration * rateAt(meanTemperature, rate),
      "s",
    ),
    duration,
    meanTemperature,
  };
}

/** 1/T − 1/T_ref as one fraction, which keeps the digits of a small difference. */
function rateAt(temperature: number, { activationEnergy, referenceTemperature }: CureRate): number {
  const warmth = (temperature - referenceTemperature) / (temperature * referenceTemperature);
  return Math.exp(activationEnergy / GAS_CONSTANT * warmth);
}

/** Mean of the rate over a straight ramp; no difference of integrals, so no digits are lost. */
function meanRate(from: number, to: number, rate: CureRate): number {
  const span = rate.activationEnergy / GAS_CONSTANT * Math.abs(1 / from - 1 / to);
  const pieces = Math.max(1, Math.ceil(span / LARGEST_SPAN));
  if (!(pieces <= MOST_PIECES)) {
    check.refuse("temperature", to, `must not change so far from ${from} K at this energy`);
  }
  let mean = 0;
  for (let piece = 0; piece < pieces; piece++) {
    for (let point = 0; point < RULE.nodes.length; point++) {
      const along = (piece + (RULE.nodes[point]! + 1) / 2) / pieces;
      mean += RULE.weights[point]! / (2 * pieces) * rateAt(from + (to - from) * along, rate);
    }
  }
  return mean;
}

function checkRate(rate: CureRate): void {
  check.object("rate", rate);
  check.nonNegative("activation energy", rate.activationEnergy, "J/mol");
  check.positive("reference temperature", rate.referenceTemperature, "K");
}

function checkLog(times: readonly number[], temperatures: readonly number[]): void {
  check.list("times", times, 2);
  check.list("temperatures", temperatures, 2);
  if (times.length !== temperatures.length) {
    check.refuse("temperatures", temperatures, `must be ${times.length}, one for each time`);
  }
  times.forEach((time, i) => {
    check.finite("time", time, "s");
    if (i > 0 && !(time > times[i - 1]!)) check.refuse("time", time, "must come after the last");
  });
  for (const temperature of temperatures) check.positive("temperature", temperature, "K");
}
