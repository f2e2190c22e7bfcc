import { quantiles } from "../numeric/mod.ts";
import type { Readings } from "./line_fit.ts";

/** A line by its slope and a point on it. */
export interface Start {
  readonly slope: number;
  readonly x0: number;
  readonly y0: number;
}

/** Pairs grow with the square: beyond so many readings, evenly spaced ones give the start. */
const MOST = 400;

/**
 * Siegel's repeated medians: of each reading the median slope to all others, of these the median.
 * Nothing where more than half of the readings stand at one x.
 */
export function medianStart({ x, y }: Readings): Start | undefined {
  const places = evenly(x.length);
  const slopes: number[] = [];
  for (const i of places) {
    const toOthers: number[] = [];
    for (const j of places) {
      if (x[j]! !== x[i]!) toOthers.push((y[j]! - y[i]!) / (x[j]! - x[i]!));
    }
    if (toOthers.length >= (places.length - 1) / 2) slopes.push(quantiles(toOthers, [0.5])[0]!);
  }
  if (slopes.length < places.length / 2) return undefined;
  const [slope] = quantiles(slopes, [0.5]) as [number];
  const [x0] = quantiles(places.map((i) => x[i]!), [0.5]) as [number];
  const [y0] = quantiles(places.map((i) => y[i]! - slope * (x[i]! - x0)), [0.5]) as [number];
  return { slope, x0, y0 };
}

function evenly(count: number): number[] {
  const used = Math.min(count, MOST);
  return Array.from(
    { length: used },
    (_, i) => Math.round((i * (count - 1)) / Math.max(1, used - 1)),
  );
}
