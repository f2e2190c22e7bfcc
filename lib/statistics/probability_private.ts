import type { Checks } from "../check/mod.ts";

/** Checks a probability that may be neither 0 nor 1. */
export function checkInside(check: Checks, probability: number, argument = "probability"): number {
  check.finite(argument, probability);
  return probability > 0 && probability < 1
    ? probability
    : check.refuse(argument, probability, "must be above 0 and below 1");
}
