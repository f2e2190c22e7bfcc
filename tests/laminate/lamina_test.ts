/**
 * Formulas of one lamina. Expected figures to 1e-12 come from exact fractions (Python's
 * `fractions`), written there as Rᵀ Q R with the rotation matrix R of strain, not as the expanded
 * sums in fourth powers that the code uses; cos and sin are 4/5 and 3/5.
 */
import { assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import {
  complianceInvariants,
  reducedStiffness,
  rotatedCompliance,
  rotatedExpansion,
  rotatedStiffness,
  solidCompliance,
  solidStiffness,
  stiffnessInvariants,
  strainToLaminate,
  strainToPly,
  stressToLaminate,
  stressToPly,
} from "../../lib/laminate/mod.ts";
import { assertClose } from "../close.ts";
import { GLASS } from "./laminas.ts";

const EXACT = { relative: 1e-12 };
const SLOPE_3_4_DEG = Math.atan2(3, 4) * 180 / Math.PI;

Deno.test("rotated stiffness and compliance agree with exact fractions", () => {
  const { Q11, Q12, Q16, Q22, Q26, Q66 } = rotatedStiffness(GLASS, SLOPE_3_4_DEG);
  assertClose([Q11, Q12, Q16, Q22, Q26, Q66], [
    ...[21548695690.076794, 9100409805.654469, 8997061516.15256],
    ...[13275067477.798275, 5186301133.467759, 10132732084.602514],
  ], EXACT);
  const { S11, S12, S16, S22, S26, S66 } = rotatedCompliance(GLASS, SLOPE_3_4_DEG);
  assertClose([S11, S12, S16, S22, S26, S66], [
    ...[8.578357894736842e-11, -3.6309894736842103e-11, -5.758428070175439e-11],
    ...[1.0952626900584795e-10, -2.381922807017544e-11, 1.6201188304093567e-10],
  ], EXACT);
});

Deno.test("invariants are the means over all angles that they are called", () => {
  // Eight even angles average fourth powers of cos and sin exactly; the waves cos 2θ and cos 4θ are
  // what is left when the entry is weighted with twice the wave.
  const anglesDeg = [0, 1, 2, 3, 4, 5, 6, 7].map((i) => 22.5 * i);
  const mean = (of: (angleDeg: number) => number, wave = 0): number =>
    anglesDeg.reduce((sum, angleDeg) => {
      const weight = wave === 0 ? 1 : 2 * Math.cos(wave * angleDeg * Math.PI / 180);
      return sum + weight * of(angleDeg) / 8;
    }, 0);
  const { V1, V2, V3, V4, V5 } = complianceInvariants(GLASS);
  const S = (angleDeg: number) => rotatedCompliance(GLASS, angleDeg);
  assertClose([V1, V2, V3, V4, V5], [
    mean((angle) => S(angle).S11),
    mean((angle) => S(angle).S11, 2),
    mean((angle) => S(angle).S11, 4),
    mean((angle) => S(angle).S12),
    mean((angle) => S(angle).S66),
  ], EXACT);
  // S̄66 is 1/G12 at 0° and (1 + 2ν12)/E1 + 1/E2 at 45°, and V5 lies in the middle.
  assertClose(V5, (1 / 3.6e9 + 1.56 / 38e9 + 1 / 9e9) / 2, EXACT);
  const { U1, U2, U3, U4, U5 } = stiffnessInvariants(GLASS);
  const Q = (angleDeg: number) => rotatedStiffness(GLASS, angleDeg);
  assertClose([U1, U2, U3, U4, U5], [
    mean((angle) => Q(angle).Q11),
    mean((angle) => Q(angle).Q11, 2),
    mean((angle) => Q(angle).Q11, 4),
    mean((angle) => Q(angle).Q12),
    mean((angle) => Q(angle).Q66),
  ], EXACT);
});

Deno.test("at right angles and at 45° nothing is left of rounding", () => {
  const { Q11, Q22 } = reducedStiffness(GLASS);
  const across = rotatedStiffness(GLASS, 90);
  assertEquals([across.Q11, across.Q22, across.Q16, across.Q26], [Q22, Q11, 0, 0]);
  assertEquals(rotatedStiffness(GLASS, -270), across);
  assertEquals(rotatedStiffness(GLASS, 180).Q16, 0);
  const diagonal = rotatedStiffness(GLASS, 45);
  assertEquals(diagonal.Q11, diagonal.Q22);
  assertEquals(rotatedStiffness(GLASS, -45).Q16, -diagonal.Q16);
  assertEquals(rotatedStiffness(GLASS, 225), diagonal);
  assertEquals(rotatedStiffness(GLASS, 135), rotatedStiffness(GLASS, -45));
  assertEquals(rotatedStiffness(GLASS, 112).Q26, -rotatedStiffness(GLASS, -112).Q26);
});

Deno.test("rotation by 3-4-5: stress, strain and expansion in whole numbers", () => {
  // c² = 16/25, s² = 9/25, sc = 12/25: by hand.
  const stress = stressToPly({ sigmaX: 25e6, sigmaY: 50e6, tauXY: 75e6 }, SLOPE_3_4_DEG);
  assertClose([stress.sigma1, stress.sigma2, stress.tau12], [106e6, -31e6, 33e6], EXACT);
  const strain = strainToPly({ epsilonX: 25, epsilonY: 50, gammaXY: 75 }, SLOPE_3_4_DEG);
  assertClose([strain.epsilon1, strain.epsilon2, strain.gamma12], [70, 5, 45], EXACT);
  const { alphaX, alphaY, alphaXY } = rotatedExpansion({ alpha1: 25, alpha2: 50 }, SLOPE_3_4_DEG);
  assertClose([alphaX, alphaY, alphaXY], [34, 41, -24], EXACT);
  const back = stressToLaminate(stress, SLOPE_3_4_DEG);
  assertClose([back.sigmaX, back.sigmaY, back.tauXY], [25e6, 50e6, 75e6], EXACT);
  const strainBack = strainToLaminate(strain, SLOPE_3_4_DEG);
  assertClose([strainBack.epsilonX, strainBack.epsilonY, strainBack.gammaXY], [25, 50, 75], EXACT);
});

Deno.test("an isotropic solid has Lamé's constants", () => {
  // E = 5 GPa, ν = 1/4: λ = Eν/((1+ν)(1−2ν)) = 2 GPa, G = 2 GPa, by hand.
  const nu = { nu12: 0.25, nu13: 0.25, nu23: 0.25 };
  const solid = { E1: 5e9, E2: 5e9, E3: 5e9, ...nu, G12: 2e9, G13: 2e9, G23: 2e9 };
  const { C11, C12, C13, C22, C23, C33, C44 } = solidStiffness(solid);
  assertClose([C11, C22, C33, C12, C13, C23, C44], [6e9, 6e9, 6e9, 2e9, 2e9, 2e9, 2e9], EXACT);
});

Deno.test("Poisson ratios of a solid are possible together up to where its energy turns negative", () => {
  const possible = (solid: Parameters<typeof solidCompliance>[0]): boolean => {
    try {
      return solidCompliance(solid).S11 > 0;
    } catch {
      return false;
    }
  };
  const G = { G12: 2e9, G13: 2e9, G23: 2e9 };
  // All alike: 1 − 3ν² − 2ν³ = (1 + ν)²(1 − 2ν), so ν = ½.
  const alike = (nu: number) => ({
    ...{ E1: 5e9, E2: 5e9, E3: 5e9, nu12: nu, nu13: nu, nu23: nu, ...G },
  });
  assertEquals([possible(alike(0.4999)), possible(alike(0.5001))], [true, false]);
  // The determinant of [1/E1, −ν12/E1, −ν13/E1; …] with E1, E2, E3 = 40, 10, 5 and ν12 = 0.5,
  // ν13 = −0.8: 1 − 1/16 − 0.08 − ν²/2 + 0.1 ν is 0 at ν = 0.1 ± √(0.01 + 2 × 0.8575).
  const unlike = (nu23: number) => ({
    ...{ E1: 40e9, E2: 10e9, E3: 5e9, nu12: 0.5, nu13: -0.8, nu23, ...G },
  });
  const limit = Math.sqrt(1.725);
  assertEquals(
    [limit + 0.0999, limit + 0.1001, 0.1001 - limit, 0.0999 - limit].map((nu) =>
      possible(unlike(nu))
    ),
    [true, false, true, false],
  );
});

Deno.test("constants that no elastic material can have are refused", () => {
  const refused = (change: object, message: string): void => {
    assertThrows(() => reducedStiffness({ ...GLASS, ...change }), InputError, message);
  };
  refused({ E1: 0 }, "Cannot compute the stiffness of the lamina: E1 is 0 Pa, must be above 0");
  refused({ E2: NaN }, "E2 is NaN Pa");
  refused({ G12: "4e9" }, 'G12 is "4e9", must be a finite number');
  refused({ nu12: undefined }, "nu12 is missing");
  // √(38/9) = 2.0548
  refused({ nu12: 2.1 }, "nu12 is 2.1, must be between -2.05480");
  refused({ nu12: -2.1 }, "nu12 is -2.1");
  assertEquals(reducedStiffness({ ...GLASS, nu12: 2.05 }).Q11 > 0, true);
  assertThrows(() => reducedStiffness(undefined as never), InputError, "lamina is missing");
  assertThrows(() => stiffnessInvariants({ ...GLASS, E1: 1e308, E2: 1e308 }), InputError, "beyond");
  assertThrows(
    () => solidCompliance({ ...GLASS, E3: 9e9, nu13: 0.28, nu23: 0.99 }),
    InputError,
    "set of Poisson ratios nu12, nu13, nu23",
  );
});

Deno.test("angles and states that are no numbers are refused", () => {
  assertThrows(() => rotatedStiffness(GLASS, 361), InputError, "angle is 361 °");
  assertThrows(() => rotatedCompliance(GLASS, "45" as never), InputError, 'angle is "45"');
  assertThrows(() => rotatedExpansion({ alpha1: 1, alpha2: NaN }, 0), InputError, "alpha2 is NaN");
  const stress = { sigmaX: 1, sigmaY: 2, tauXY: Infinity };
  assertThrows(() => stressToPly(stress, 0), InputError, "tauXY is Infinity Pa");
  assertThrows(() => stressToLaminate(null as never, 0), InputError, "stress is null");
  const strain = { epsilon1: 0, epsilon2: 0, gamma12: 0 };
  assertThrows(() => strainToLaminate(strain, "30" as never), InputError, 'angle is "30"');
  assertThrows(() => strainToPly({} as never, 30), InputError, "epsilonX is missing");
});
