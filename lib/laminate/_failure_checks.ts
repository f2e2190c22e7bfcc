/** What a failure criterion needs of its inputs, and what leaves it. */
import type { Checks } from "../check/mod.ts";
import type { LaminaStrengths } from "../materials/mod.ts";
import type { PuckSlopes } from "./failure_puck.ts";
import type { StrainAllowables } from "./failure_strengths.ts";
import type { Limits, State } from "./_failure_surface.ts";
import type { FailureVerdict } from "./failure_verdict.ts";
import type { PlyStress } from "./plane_state.ts";

/** Refuses strengths that are no positive magnitudes. */
export function checkStrengths(check: Checks, strengths: LaminaStrengths, where = ""): void {
  check.object(where === "" ? "set of strengths" : `${where}strengths`, strengths);
  for (const name of ["Xt", "Xc", "Yt", "Yc", "S"] as const) {
    check.positive(`${where}${name}`, strengths[name], "Pa");
  }
}

/** Refuses allowables that are no positive magnitudes. */
export function checkStrainAllowables(
  check: Checks,
  allowables: StrainAllowables,
  where = "",
): void {
  check.object(where === "" ? "set of strain allowables" : `${where}strain allowables`, allowables);
  for (const name of ["e1t", "e1c", "e2t", "e2c", "g12"] as const) {
    check.positive(`${where}${name}`, allowables[name]);
  }
}

/** Refuses a knock-down factor that is not above 0 and up to 1. */
export function checkFactor(check: Checks, factor: number, argument: string): number {
  check.positive(argument, factor);
  return check.within(argument, factor, { min: 0, max: 1 });
}

/** Strengths as limits of the components of stress. */
export function stressLimits({ Xt, Xc, Yt, Yc, S }: LaminaStrengths): Limits {
  return { tension1: Xt, compression1: Xc, tension2: Yt, compression2: Yc, shear: S };
}

/** Allowables as limits of the components of strain. */
export function strainLimits({ e1t, e1c, e2t, e2c, g12 }: StrainAllowables): Limits {
  return { tension1: e1t, compression1: e1c, tension2: e2t, compression2: e2c, shear: g12 };
}

/** A stress as a state, checked. */
export function stressState(check: Checks, stress: PlyStress): State {
  const { sigma1, sigma2, tau12 } = check.object("stress", stress);
  return [
    check.finite("sigma1", sigma1, "Pa"),
    check.finite("sigma2", sigma2, "Pa"),
    check.finite("tau12", tau12, "Pa"),
  ];
}

/** A verdict about to leave. */
export function checkedVerdict(check: Checks, verdict: FailureVerdict): FailureVerdict {
  if (verdict.ratio !== null) check.result("strength ratio", verdict.ratio);
  check.result("failure index", verdict.index);
  return verdict;
}

/** Refuses an interaction with which the surface would be open. */
export function checkInteraction(check: Checks, interaction: number): void {
  check.within("interaction", interaction, { min: -1, max: 1 });
  if (Math.abs(interaction) === 1) {
    check.refuse("interaction", interaction, "must be between -1 and 1, both excluded");
  }
}

/** Refuses slopes with which the curve would not close at Yt. */
export function checkSlopes(check: Checks, { Yt, S }: LaminaStrengths, slopes: PuckSlopes): void {
  check.object("set of slopes", slopes);
  check.positive("slope in compression", slopes.compression);
  check.nonNegative("slope in tension", slopes.tension);
  if (!(slopes.tension * Yt <= S)) {
    check.refuse("slope in tension", slopes.tension, `must be up to S/Yt = ${S / Yt}`);
  }
}
