import { InputError } from "../check/mod.ts";
import { fitLine, robustLine, studentTQuantile } from "../statistics/mod.ts";
import type { LoadReadings } from "./_readings.ts";

/** A reading that does not fit the others. */
export interface DoubtfulReading {
  /** Its place among all readings, from 0 [1]. */
  readonly index: number;
  /** How far it lies from the line through the others [m]. */
  readonly offset: number;
}

/** Readings to be looked through. */
export interface Search {
  /** All readings of the test. */
  readonly test: LoadReadings;
  /** Places of those to be looked through, from 0. */
  readonly indices: readonly number[];
  /** Smallest step of the gauge [m]. */
  readonly resolution: number;
}

/**
 * Level of the test of each reading: in simulated good tests of 6 to 20 readings about one in a
 * hundred then has a reading called doubtful, a few less with a coarse gauge.
 */
const LEVEL = 0.006;
/** At most this share of the readings may be called doubtful [1]. */
const MOST_DOUBTFUL = 0.25;

/**
 * Readings that do not fit the others. A robust line tells which three quarters of the readings
 * agree best; the others are let in again one by one, the nearest first, while their distance from
 * the line through those inside is no more than scatter explains. So two slips cannot hide each
 * other, as they do where the worst of all is taken out first.
 */
export function findDoubtful({ test, indices, resolution }: Search): {
  readonly kept: readonly number[];
  readonly doubtful: readonly DoubtfulReading[];
} {
  const most = Math.floor(MOST_DOUBTFUL * indices.length);
  const ranked = rankedByAgreement({ test, indices, resolution });
  let kept = ranked.slice(0, ranked.length - most);
  let outside = ranked.slice(ranked.length - most);
  while (outside.length > 0) {
    const distances = outside
      .map((index) => distance(index, { test, indices: kept, resolution }))
      .toSorted((a, b) => a.t - b.t);
    const nearest = distances[0]!;
    const limit = studentTQuantile(1 - LEVEL / (2 * indices.length), kept.length - 2);
    if (nearest.t > limit) {
      return {
        kept: kept.toSorted((a, b) => a - b),
        doubtful: distances.reverse().map(({ index, offset }) => ({ index, offset })),
      };
    }
    kept = [...kept, nearest.index];
    outside = outside.filter((index) => index !== nearest.index);
  }
  return { kept: indices, doubtful: [] };
}

/** Places of the readings, the one nearest to the robust line first. */
function rankedByAgreement({ test, indices, resolution }: Search): readonly number[] {
  const residuals = residualsOf(pick(test, indices), resolution);
  return indices
    .map((index, i) => ({ index, size: Math.abs(residuals[i]!) }))
    .toSorted((a, b) => a.size - b.size)
    .map(({ index }) => index);
}

/** By the robust line; by least squares where most readings stand at one load, as in a hold. */
function residualsOf(
  readings: { readonly x: readonly number[]; readonly y: readonly number[] },
  resolution: number,
): readonly number[] {
  const plain = fitLine(readings).residuals;
  try {
    return robustLine(readings, { resolution }).residuals;
  } catch (error) {
    if (error instanceof InputError) return plain;
    throw error;
  }
}

/** Load and deflection of some readings, as x and y. */
export function pick(
  { load, deflection }: LoadReadings,
  indices: readonly number[],
): { readonly x: readonly number[]; readonly y: readonly number[] } {
  return { x: indices.map((i) => load[i]!), y: indices.map((i) => deflection[i]!) };
}

/** A reading's distance from the line through the others, in standard deviations of that. */
function distance(
  index: number,
  { test, indices, resolution }: Search,
): DoubtfulReading & { readonly t: number } {
  const others = pick(test, indices);
  const { slope, intercept, residualSd } = fitLine(others);
  const x = test.load[index]!;
  const offset = test.deflection[index]! - intercept.value - slope.value * x;
  const scatter = Math.max(residualSd, leastScatter(others.y, resolution));
  const count = others.x.length;
  const mean = others.x.reduce((sum, value) => sum + value, 0) / count;
  const spread = others.x.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const sd = scatter * Math.sqrt(1 + 1 / count + (x - mean) ** 2 / spread);
  return { index, offset, t: sd > 0 ? Math.abs(offset) / sd : 0 };
}

/** Rounding of the arithmetic, as a share of the largest deflection [1]. */
const ROUNDING = 1e-12;

/**
 * Scatter below which none is believed: a gauge cannot scatter less than its own steps
 * (rectangular, JCGM 100:2008, F.2.2.1).
 */
export function leastScatter(deflection: readonly number[], resolution: number): number {
  const largest = deflection.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  return Math.max(resolution / Math.sqrt(12), ROUNDING * largest);
}
