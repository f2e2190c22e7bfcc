import { checksFor } from "../check/mod.ts";

const check = checksFor("judge the pump");

/** A pump on a leaking bag. */
export interface PumpOnLeak {
  /** Throughput of the leak, from `leakRate` [Pa m³/s]. */
  readonly throughput: number;
  /** Volume flow that the pump draws at the pressures wanted [m³/s]. */
  readonly pumpFlow: number;
  /** Lowest absolute pressure that the pump reaches on a closed flange [Pa]. */
  readonly ultimatePressure: number;
  /** Highest absolute pressure that would do in the bag [Pa]. */
  readonly wantedPressure: number;
}

/** Whether a pump holds a bag. */
export interface PumpCheck {
  /** Absolute pressure at which pump and leak balance [Pa]. */
  readonly balancePressure: number;
  /** Share of the time that a pump switched by pressure runs; above 1 it cannot hold [1]. */
  readonly dutyShare: number;
  /** Holds: balance at or below the wanted pressure. */
  readonly verdict: "holds" | "fails";
}

/**
 * Whether a pump holds the pressure wanted against a leak.
 *
 * Formula: balance p = p_ult + Q/S; duty = Q/(S (p_wanted − p_ult))
 *
 * Range: flow S taken as constant over the pressures in question; leak as measured, which at a
 * lower pressure is slightly larger.
 *
 * Source: balance of throughputs; vacuum technology, any text.
 *
 * @param pump Leak [Pa m³/s], pump's flow [m³/s], its ultimate and the wanted pressure [Pa].
 * @returns Balance pressure [Pa], duty [1] and verdict.
 * @throws {InputError} If an input is outside its range or the wanted pressure not above the
 * ultimate one.
 *
 * @example
 * ```ts
 * import { pumpHolds } from "@laminate/notebooks/shop";
 * import { assertAlmostEquals, assertEquals } from "@std/assert";
 *
 * const found = pumpHolds({
 *   throughput: 0.02, pumpFlow: 1e-5, ultimatePressure: 5e3, wantedPressure: 20e3,
 * });
 * assertAlmostEquals(found.balancePressure, 7e3, 1e-9);
 * assertEquals(found.verdict, "holds");
 * ```
 */
export function pumpHolds(pump: PumpOnLeak): PumpCheck {
  const { throughput, pumpFlow, ultimatePressure, wantedPressure } = check.object("pump", pump);
  check.nonNegative("leak", throughput, "Pa m³/s");
  check.positive("flow of the pump", pumpFlow, "m³/s");
  check.nonNegative("ultimate pressure", ultimatePressure, "Pa");
  check.positive("wanted pressure", wantedPressure, "Pa");
  if (!(wantedPressure > ultimatePressure)) {
    check.refuse("wanted pressure", wantedPressure, `must be above ${ultimatePressure} Pa`);
  }
  const rise = throughput / pumpFlow;
  return {
    balancePressure: check.result("balance pressure", ultimatePressure + rise, "Pa"),
    dutyShare: check.result("duty", rise / (wantedPressure - ultimatePressure)),
    verdict: ultimatePressure + rise <= wantedPressure ? "holds" : "fails",
  };
}
