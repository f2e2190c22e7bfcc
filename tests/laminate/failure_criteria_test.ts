import { InputError } from "../../lib/check/mod.ts";
import {
  describeFailureMode,
  type FailureVerdict,
  glassPuckSlopes,
  hashin,
  knockDownStrengths,
  linearStrainAllowables,
  maximumStrain,
  maximumStress,
  type PlyStress,
  puck,
  tsaiHill,
  tsaiHillTensile,
  tsaiWu,
  tsaiWuCoefficients,
} from "../../lib/laminate/mod.ts";
import { assertClose } from "../close.ts";
import { assertEquals, assertThrows } from "@std/assert";

const strengths = { Xt: 800e6, Xc: 600e6, Yt: 40e6, Yc: 120e6, S: 60e6 };
const withShear = { ...strengths, S23: 50e6 };
const at = (sigma1: number, sigma2: number, tau12: number): PlyStress => ({
  sigma1: sigma1 * 1e6,
  sigma2: sigma2 * 1e6,
  tau12: tau12 * 1e6,
});
const exact = { relative: 1e-14 };

function assertVerdict(
  { ratio, index, mode }: FailureVerdict,
  expected: { ratio: number; index: number; mode: FailureVerdict["mode"] },
): void {
  assertClose(ratio!, expected.ratio, exact, "ratio");
  assertClose(index, expected.index, exact, "index");
  assertEquals(mode, expected.mode);
}

Deno.test("maximum stress takes the nearest limit", () => {
  assertVerdict(maximumStress(at(400, 10, -40), strengths), {
    ratio: 1.5,
    index: 2 / 3,
    mode: "12",
  });
  assertVerdict(maximumStress(at(-500, 10, 0), strengths), {
    ratio: 1.2,
    index: 5 / 6,
    mode: "1c",
  });
});

Deno.test("maximum strain takes the nearest limit of mechanical strain", () => {
  const allowables = { e1t: 0.02, e1c: 0.015, e2t: 0.004, e2c: 0.012, g12: 0.015 };
  const strain = { epsilon1: -0.005, epsilon2: 0.001, gamma12: 0.012 };
  assertVerdict(maximumStrain(strain, allowables), { ratio: 1.25, index: 0.8, mode: "12" });
});

Deno.test("Tsai–Hill takes X by the sign of σ1 also in the product", () => {
  // (−300/600)² − (−300)(20)/600² + (20/40)² + (30/60)² = 1/4 + 1/60 + 1/4 + 1/4 = 23/30
  const index = 23 / 30;
  const ratio = 1 / Math.sqrt(index);
  assertVerdict(tsaiHill(at(-300, 20, 30), strengths), { ratio, index, mode: "1c" });
  // With the tensile strengths: 9/64 + 3/320 + 1/4 + 1/4 = 13/20; the largest share is 20/40.
  const tensile = tsaiHillTensile(at(-300, 20, 30), strengths);
  assertVerdict(tensile, { ratio: 1 / Math.sqrt(0.65), index: 0.65, mode: "2t" });
});

Deno.test("Tsai–Wu counts F12 twice and takes the positive root", () => {
  // F2 = 1/40 − 1/120 = 1/60, F22 = 1/4800: with σ2 = −30, R²·900/4800 − R/2 = 1, so R = 4.
  assertVerdict(tsaiWu(at(0, -30, 0), strengths), {
    ratio: 4,
    index: 900 / 4800 - 0.5,
    mode: "2c",
  });
  const { F12, F11, F22 } = tsaiWuCoefficients(strengths);
  assertClose(F12, -0.5 * Math.sqrt(F11 * F22), exact);
  // f = F1σ1 + F2σ2 + F11σ1² + F22σ2² + 2F12σ1σ2 with σ1 = 240, σ2 = 12 (MPa):
  // −0.1 + 0.2 + 0.12 + 0.03 − 2880/√(480000·4800) = 0.25 − 0.06 = 0.19
  assertClose(tsaiWu(at(240, 12, 0), strengths).index, 0.19, exact);
  assertClose(tsaiWu(at(240, 12, 0), strengths, 0).index, 0.25, exact);
});

Deno.test("Hashin has four conditions", () => {
  // (400/800)² + (30/60)² = 1/2
  const fibre = hashin(at(400, 0, 30), withShear);
  assertVerdict(fibre, { ratio: Math.SQRT2, index: Math.SQRT1_2, mode: "1t" });
  assertVerdict(hashin(at(400, 0, 30), withShear, 0), { ratio: 2, index: 0.5, mode: "1t" });
  assertVerdict(hashin(at(-300, 0, 15), withShear), { ratio: 2, index: 0.5, mode: "1c" });
  // (24/40)² + (48/60)² = 1
  assertVerdict(hashin(at(0, 24, 48), withShear), { ratio: 1, index: 1, mode: "2t" });
  // (−75/100)² + (1.44 − 1)(−75/120) + (42.75/60)²: 0.5625 − 0.275 + 0.50765625 = 0.79515625 at
  // R = 1; the root of 1.07015625 R² − 0.275 R = 1 is R = 1.103666….
  const a = 1.07015625;
  const ratio = (0.275 + Math.sqrt(0.275 ** 2 + 4 * a)) / (2 * a);
  assertVerdict(hashin(at(0, -75, 42.75), withShear), { ratio, index: 1 / ratio, mode: "2c" });
});

Deno.test("Puck tells three cracks apart", () => {
  // A: σ2 = 20, τ = 30: √(0.25 + (1 − 0.3·40/60)²·0.25) + 0.3·20/60 = √0.41 + 0.1
  const A = Math.sqrt(0.41) + 0.1;
  assertVerdict(puck(at(0, 20, 30), strengths), { ratio: 1 / A, index: A, mode: "A" });
  // B: σ2 = −16, τ = 30: (√(900 + 16) − 4)/60
  const B = (Math.sqrt(916) - 4) / 60;
  assertVerdict(puck(at(0, -16, 30), strengths), { ratio: 1 / B, index: B, mode: "B" });
  // C: RA = (60/0.5)(√2 − 1), p = 0.25 RA/60; σ2 = −80, τ = 30
  const p = 0.25 * 120 * (Math.SQRT2 - 1) / 60;
  const C = ((30 / (2 * (1 + p) * 60)) ** 2 + (80 / 120) ** 2) * 120 / 80;
  assertVerdict(puck(at(0, -80, 30), strengths), { ratio: 1 / C, index: C, mode: "C" });
  assertVerdict(puck(at(400, 0, 0), strengths), { ratio: 2, index: 0.5, mode: "1t" });
});

Deno.test("no stress never fails", () => {
  const verdicts = [
    maximumStress(at(0, 0, 0), strengths),
    tsaiHill(at(0, 0, 0), strengths),
    tsaiWu(at(0, 0, 0), strengths),
    hashin(at(0, 0, 0), withShear),
    puck(at(0, 0, 0), strengths),
  ];
  for (const verdict of verdicts) assertEquals(verdict, { ratio: null, index: 0, mode: null });
});

Deno.test("a stress too small to square still has its ratio", () => {
  const tiny = { sigma1: 0, sigma2: 1e-170, tau12: 0 };
  assertClose(tsaiWu(tiny, strengths).ratio!, 40e6 / 1e-170, { relative: 1e-14 });
});

Deno.test("strengths are knocked down together or one by one", () => {
  assertEquals(knockDownStrengths(strengths, 0.5), {
    ...{ Xt: 400e6, Xc: 300e6, Yt: 20e6, Yc: 60e6, S: 30e6 },
  });
  assertEquals(knockDownStrengths(strengths, { S: 0.5 }), { ...strengths, S: 30e6 });
  assertThrows(() => knockDownStrengths(strengths, 0), InputError, "must be above 0");
  assertThrows(() => knockDownStrengths(strengths, 1.2), InputError, "must be between 0 and 1");
  assertThrows(() => knockDownStrengths(strengths, { X: 1 } as object), InputError, "Xt, Xc, Yt");
  assertThrows(
    () => knockDownStrengths(strengths, "0.5" as unknown as number),
    InputError,
    "must be a finite number",
  );
});

Deno.test("each kind of bad input is refused", () => {
  const stress = at(1, 1, 1);
  assertThrows(
    () => maximumStress({ ...stress, sigma1: NaN }, strengths),
    InputError,
    "sigma1 is NaN",
  );
  assertThrows(
    () => tsaiWu(stress, { ...strengths, Yt: 0 }),
    InputError,
    "Yt is 0 Pa, must be above 0",
  );
  assertThrows(() => tsaiWu(stress, strengths, 1), InputError, "both excluded");
  assertThrows(() => tsaiWuCoefficients(strengths, -2), InputError, "must be between -1 and 1");
  assertThrows(() => hashin(stress, { ...strengths, S23: -1 }), InputError, "S23 is -1 Pa");
  assertThrows(() => hashin(stress, withShear, 2), InputError, "must be between 0 and 1");
  assertThrows(
    () => puck(stress, strengths, { ...glassPuckSlopes, tension: 1.6 }),
    InputError,
    "must be up to S/Yt = 1.5",
  );
  assertThrows(
    () => puck(stress, strengths, { ...glassPuckSlopes, compression: 0 }),
    InputError,
    "must be above 0",
  );
  assertThrows(
    () => maximumStrain({ epsilon1: 0, epsilon2: 0, gamma12: 0 }, undefined as never),
    InputError,
    "set of strain allowables is missing",
  );
  assertThrows(() => maximumStress(undefined as never, strengths), InputError, "stress is missing");
  assertThrows(
    () => linearStrainAllowables({ E1: 0, E2: 1, G12: 1, nu12: 0 }, strengths),
    InputError,
    "E1 is 0 Pa",
  );
});

Deno.test("each mode has words of its own", () => {
  const modes = ["1t", "1c", "2t", "2c", "12", "A", "B", "C"] as const;
  assertEquals(new Set(modes.map(describeFailureMode)).size, modes.length);
  assertThrows(() => describeFailureMode("3t" as "1t"), InputError, "must be one of: 12, 1t, 1c");
});
