import { checksFor } from "../check/mod.ts";
import { fitLine } from "../statistics/mod.ts";
import { checkReadings, type LoadReadings } from "./_readings.ts";

const check = checksFor("measure the hysteresis");

/** What a loading and an unloading say together. */
export interface Hysteresis {
  /** Place of the last loading reading, from 0 [1]. */
  readonly turn: number;
  /** Work done on the part while loading [J]. */
  readonly energyLoading: number;
  /** Work that came back while unloading [J]. */
  readonly energyUnloading: number;
  /** The difference [J]. */
  readonly energyLost: number;
  /** Area of the loop when its ends are joined by a straight line [J]. */
  readonly closedLoopArea: number;
  /** Lost work over work done; without a factor 2π or 4π [1]. */
  readonly lossRatio: number;
  /** Deflection that stayed: last reading less first [m]. */
  readonly residualDeflection: number;
  /** Slope of load on deflection over the loading readings [N/m]. */
  readonly stiffness: number;
}

/**
 * Work lost between loading and unloading, and what stayed bent.
 *
 * Formula: W = Σ (P_i + P_{i+1})/2 (δ_{i+1} − δ_i) along the path; lost = loading − unloading;
 * loss ratio = lost/loading; closed loop = lost + (P_last + P_first)/2 (δ_first − δ_last)
 *
 * Range: one loading and one unloading, in the order in which they were read.
 *
 * Source: trapezoidal rule; definition of the loss ratio without 2π or 4π, common practice, no
 * source.
 *
 * @param readings Load [N] and deflection [m] in order, loading first.
 * @param turn Place of the last loading reading, from 0 [1].
 * @returns Energies [J], loss ratio [1], residual deflection [m] and stiffness [N/m].
 * @throws {InputError} If there are under three loading readings or no unloading one, or no work
 * was done.
 *
 * @example
 * ```ts
 * import { hysteresis } from "@laminate/notebooks/comparison";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const loop = hysteresis({ load: [0, 5, 10, 5, 0], deflection: [0, 1, 2, 1.2, 0.1] }, 2);
 * assertAlmostEquals(loop.energyLoading, 10, 1e-12);
 * assertAlmostEquals(loop.energyUnloading, 8.75, 1e-12);
 * assertAlmostEquals(loop.lossRatio, 0.125, 1e-12);
 * ```
 */
export function hysteresis(readings: LoadReadings, turn: number): Hysteresis {
  const count = checkReadings(check, readings);
  check.within("turn", check.count("turn", turn), { min: 2, max: count - 2 });
  const { load, deflection } = readings;
  const work = (from: number, to: number): number => {
    let sum = 0;
    for (let i = from; i < to; i++) {
      sum += (load[i]! + load[i + 1]!) / 2 * (deflection[i + 1]! - deflection[i]!);
    }
    return sum;
  };
  const energyLoading = check.positive("work of loading", work(0, turn), "J");
  const energyUnloading = -work(turn, count - 1);
  const energyLost = energyLoading - energyUnloading;
  const last = count - 1;
  const closing = (load[last]! + load[0]!) / 2 * (deflection[0]! - deflection[last]!);
  const { slope } = fitLine({
    x: Array.from(deflection).slice(0, turn + 1),
    y: Array.from(load).slice(0, turn + 1),
  });
  return {
    turn,
    energyLoading,
    energyUnloading,
    energyLost,
    closedLoopArea: energyLost + closing,
    lossRatio: check.result("loss ratio", energyLost / energyLoading),
    residualDeflection: deflection[last]! - deflection[0]!,
    stiffness: slope.value,
  };
}
