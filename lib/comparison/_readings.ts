import type { Checks } from "../check/mod.ts";

/** Readings of a load test, in the order in which they were taken. */
export interface LoadReadings {
  /** Total load [N]. */
  readonly load: ArrayLike<number>;
  /** Deflection [m]. */
  readonly deflection: ArrayLike<number>;
}

/** Refuses lists of different length, or with what is no number; returns how many there are. */
export function checkReadings(check: Checks, readings: LoadReadings): number {
  check.object("readings", readings);
  const { load, deflection } = readings;
  checkArray(check, "load", load);
  checkArray(check, "deflection", deflection);
  if (load.length !== deflection.length) {
    check.refuse(
      "number of deflections",
      deflection.length,
      `must be that of loads, ${load.length}`,
    );
  }
  for (let i = 0; i < load.length; i++) {
    check.finite(`load of reading ${i + 1}`, load[i]!, "N");
    check.finite(`deflection of reading ${i + 1}`, deflection[i]!, "m");
  }
  return load.length;
}

/** A typed array is a list too. */
function checkArray(check: Checks, argument: string, values: ArrayLike<number>): void {
  if (!(Array.isArray(values) || ArrayBuffer.isView(values))) {
    check.refuse(argument, values, "must be a list of numbers");
  }
}
