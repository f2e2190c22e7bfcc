import type { Checks } from "../check/mod.ts";
import type { FibreElastic, ResinElastic, TwoPhase } from "./two_phase.ts";

/** Shear modulus of an isotropic solid whose figures have passed. */
export const shearModulus = ({ E, nu }: ResinElastic): number => E / (2 * (1 + nu));

/** Refuses a resin that no elastic solid can be. */
export function checkResin(check: Checks, resin: ResinElastic): void {
  check.object("resin", resin);
  check.positive("resin modulus E", resin.E, "Pa");
  check.finite("resin Poisson ratio", resin.nu);
  if (!(resin.nu > -1 && resin.nu < 0.5)) {
    check.refuse("resin Poisson ratio", resin.nu, "must be above -1 and below 0.5");
  }
}

/** Refuses a fibre whose stiffness is not positive definite. */
export function checkFibre(check: Checks, fibre: FibreElastic): void {
  check.object("fibre", fibre);
  const { E1, E2, G12, nu12, G23 } = fibre;
  check.positive("fibre modulus E1", E1, "Pa");
  check.positive("fibre modulus E2", E2, "Pa");
  check.positive("fibre shear modulus G12", G12, "Pa");
  check.positive("fibre shear modulus G23", G23, "Pa");
  check.finite("fibre Poisson ratio nu12", nu12);
  // With moduli above 0, this is what a positive definite stiffness still asks for.
  if (!(fibreBulkCompliance(fibre) > 0)) {
    check.refuse(
      "fibre Poisson ratio nu12",
      nu12,
      "gives with E1, E2 and G23 a fibre that would push back less than nothing; " +
        "must keep 4/E2 - 1/G23 - 4 nu12²/E1 above 0",
    );
  }
}

/** 1/k of a fibre, k its plane-strain bulk modulus [1/Pa]. */
export const fibreBulkCompliance = ({ E1, E2, nu12, G23 }: FibreElastic): number =>
  4 / E2 - 1 / G23 - 4 * nu12 * nu12 / E1;

/** Refuses a mix with a phase or a fraction that cannot be meant. */
export function checkTwoPhase(check: Checks, mix: TwoPhase): TwoPhase {
  check.object("mix", mix);
  checkFibre(check, mix.fibre);
  checkResin(check, mix.resin);
  check.fraction("fibre volume fraction", mix.fibreVolumeFraction);
  return mix;
}
