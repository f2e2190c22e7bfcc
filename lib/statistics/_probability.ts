import type { Checks } from "../check/mod.ts";
import { incompleteGamma } from "./_special.ts";

/** Checks a probability that may be neither 0 nor 1. */
export function checkInside(check: Checks, probability: number, argument = "probability"): number {
  check.finite(argument, probability);
  return probability > 0 && probability < 1
    ? probability
    : check.refuse(argument, probability, "must be above 0 and below 1");
}

/** Beyond so many degrees of freedom the series take too long, and no reading tells. */
const MOST_DOF = 1e9;
/** Below it a distribution is nothing but its tails. */
const LEAST_DOF = 1e-3;

/** Checks degrees of freedom, whole or not. */
export function checkDof(
  check: Checks,
  argument: string,
  dof: number,
  max: number = MOST_DOF,
): number {
  check.positive(argument, dof);
  return check.within(argument, dof, { min: LEAST_DOF, max });
}

/** Below this chance, what is put together contradicts itself. */
export const CONFLICT = 0.01;

/** Probability of a chi-squared above x, which keeps its digits where it is small. */
export function chanceOfMore(chiSquared: number, dof: number): number {
  return incompleteGamma(dof / 2, chiSquared / 2).upper;
}
