import {
  firstPlyFailure,
  hashin,
  linearStrainAllowables,
  maximumStrain,
  maximumStress,
  type PlyStress,
  progressiveFailure,
  reducedCompliance,
  stackOfCode,
  stressToPly,
  tsaiHill,
  tsaiHillTensile,
  tsaiWu,
  tsaiWuCoefficients,
} from "../../lib/laminate/mod.ts";
import { assertClose } from "../close.ts";
import { assertEquals } from "@std/assert";

/**
 * Graphite/epoxy of S. W. Tsai and H. T. Hahn, Introduction to Composite Materials, Technomic
 * 1980, also used by A. K. Kaw, Mechanics of Composite Materials, 2nd ed., CRC Press 2006; all
 * figures of both from memory.
 */
const strengths = { Xt: 1500e6, Xc: 1500e6, Yt: 40e6, Yc: 246e6, S: 68e6 };
const lamina = {
  ...{ name: "graphite/epoxy", E1: 181e9, E2: 10.3e9, G12: 7.17e9, nu12: 0.28, strengths },
  ...{ G13: 7.17e9, G23: 3.4e9, density: 1600, alpha1: 0.02e-6, alpha2: 22.5e-6 },
};

/** σx 2, σy −3, τxy 4 MPa on a lamina at 60°: the ratio is then the largest S in MPa. */
const stress: PlyStress = stressToPly({ sigmaX: 2e6, sigmaY: -3e6, tauXY: 4e6 }, 60);
const printed = { absolute: 0.005 };

Deno.test("Kaw 2.13: maximum stress", () => {
  const { ratio, mode } = maximumStress(stress, strengths);
  assertClose(ratio!, 16.33, printed);
  assertEquals(mode, "12");
});

Deno.test("Kaw 2.16: maximum strain with linear allowables", () => {
  const allowables = linearStrainAllowables(lamina, strengths);
  assertClose(allowables.e1t, 8.287e-3, { absolute: 5e-7 });
  assertClose(allowables.e2t, 3.883e-3, { absolute: 5.1e-7 }); // 3.8835e-3: the book cuts
  assertClose(allowables.e2c, 2.388e-2, { absolute: 5e-6 });
  assertClose(allowables.g12, 9.484e-3, { absolute: 5e-7 });
  const { S11, S12, S22, S66 } = reducedCompliance(lamina);
  const { sigma1, sigma2, tau12 } = stress;
  const strain = {
    epsilon1: S11 * sigma1 + S12 * sigma2,
    epsilon2: S12 * sigma1 + S22 * sigma2,
    gamma12: S66 * tau12,
  };
  assertClose(maximumStrain(strain, allowables).ratio!, 16.33, printed);
});

Deno.test("Kaw 2.17: Tsai–Hill, tensile strengths and by sign", () => {
  assertClose(tsaiHillTensile(stress, strengths).ratio!, 10.94, printed);
  assertClose(tsaiHill(stress, strengths).ratio!, 16.06, printed);
});

Deno.test("Kaw 2.19: Tsai–Wu", () => {
  const { F1, F2, F11, F22, F66, F12 } = tsaiWuCoefficients(strengths);
  assertEquals(F1, 0);
  assertClose(F2, 2.093e-8, { absolute: 5.1e-12 });
  assertClose(F11, 4.444e-19, { absolute: 5e-23 });
  assertClose(F22, 1.0162e-16, { absolute: 6.2e-21 });
  assertClose(F66, 2.1626e-16, { absolute: 5e-21 });
  assertClose(F12, -3.36e-18, { absolute: 5e-22 });
  assertClose(tsaiWu(stress, strengths).ratio!, 22.39, printed);
});

Deno.test("Kaw 2.14 and 2.15: the sign of an off-axis shear matters", () => {
  const sheared = (tauXY: number): number =>
    maximumStress(stressToPly({ sigmaX: 0, sigmaY: 0, tauXY }, 60), strengths).ratio! / 1e6;
  assertClose(sheared(1), 136.0, { absolute: 1.4e-7 });
  assertClose(sheared(-1), 46.19, printed);
});

Deno.test("Tsai and Hahn, tables 7.1 and 7.2: Tsai–Wu coefficients in 1/GPa and 1/GPa²", () => {
  type Printed = readonly [value: number, absolute: number];
  const cases: readonly {
    strengths: typeof strengths;
    F1?: Printed;
    F2: Printed;
    F11: Printed;
    F22: Printed;
    F66: Printed;
  }[] = [
    {
      strengths,
      F2: [20.93, 0.0051],
      F11: [0.444, 0.0005],
      F22: [101.6, 0.05],
      F66: [216.2, 0.065],
    },
    {
      strengths: { Xt: 1447e6, Xc: 1447e6, Yt: 51.7e6, Yc: 206e6, S: 93e6 },
      F2: [14.50, 0.013],
      F11: [0.477, 0.00062],
      F22: [93.89, 0.0051],
      F66: [115.6, 0.05],
    },
    {
      strengths: { Xt: 1062e6, Xc: 610e6, Yt: 31e6, Yc: 118e6, S: 72e6 },
      F1: [-0.697, 0.00074],
      F2: [23.78, 0.005],
      F11: [1.543, 0.00066],
      F22: [273.3, 0.075],
      F66: [192.9, 0.05],
    },
  ];
  for (const { strengths, F1, F2, F11, F22, F66 } of cases) {
    const found = tsaiWuCoefficients(strengths);
    if (F1 !== undefined) assertClose(found.F1 * 1e9, F1[0], { absolute: F1[1] }, "F1");
    assertClose(found.F2 * 1e9, F2[0], { absolute: F2[1] }, "F2");
    assertClose(found.F11 * 1e18, F11[0], { absolute: F11[1] }, "F11");
    assertClose(found.F22 * 1e18, F22[0], { absolute: F22[1] }, "F22");
    assertClose(found.F66 * 1e18, F66[0], { absolute: F66[1] }, "F66");
  }
  // F12 is printed for the first material alone: −3.36 1/GPa².
  assertClose(tsaiWuCoefficients(strengths).F12 * 1e18, -3.36, { absolute: 0.005 });
});

Deno.test("Hashin 1980: pure transverse compression gives Yc back, whatever S23 (from memory)", () => {
  for (const S23 of [50e6, 75e6, 123e6]) {
    const verdict = hashin({ sigma1: 0, sigma2: -246e6, tau12: 0 }, { ...strengths, S23 });
    assertClose(verdict.index, 1, { absolute: 1e-9 });
  }
});

Deno.test("Kaw chapter 5: first and last failure of [0/90]s under Nx (from memory)", () => {
  const stack = stackOfCode("[0/90]s", { ply: { lamina, thickness: 5e-3 } });
  const first = firstPlyFailure(stack, { Nx: 1 }, { criterion: "Tsai-Wu" });
  assertClose(first.ratio!, 7.468e6, { absolute: 500 });
  assertEquals(first.tied.map(({ layer }) => layer), [2, 2, 3, 3]);
  const limit = firstPlyFailure(stack, { Nx: 1 }, { criterion: "maximum stress" });
  assertClose(limit.ratio!, 7.486e6, { absolute: 500 });
  // With the 90° plies gone the 0° plies bear Xt on two plies of 5 mm: 1.5e7 N/m.
  const options = { criterion: "Tsai-Wu", loss: "whole ply" } as const;
  const last = progressiveFailure(stack, { Nx: 1 }, options);
  assertClose(last.firstRatio!, 7.468e6, { absolute: 500 });
  // A millionth of the lost stiffness stays in the sums, and E1 of the lost plies lies across.
  assertClose(last.lastRatio!, 1.5e7, { relative: 5e-6 });
  assertEquals(last.events.length, 2);
});
