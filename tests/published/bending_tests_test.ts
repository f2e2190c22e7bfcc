import { assert } from "@std/assert";
import {
  chordSlope,
  type ComplianceTest,
  faceAndCore,
  multiSpanThreePoint,
  rigiditiesFromTests,
  toeCompensation,
} from "../../lib/comparison/mod.ts";
import {
  couponDeflection,
  couponModulus,
  couponStrain,
  couponStress,
  couponTestSpeed,
  fourPoint,
  rigidityFromNote,
  sandwichSection,
  shearFromShortBeam,
  shortBeamStress,
  stripFrequency,
} from "../../lib/sandwich/mod.ts";
import { assertClose } from "../close.ts";

// Equations of ASTM D790, D6272, D7250, C393, E1876, ISO 178 from memory, each worked out anew; the
// records are exact: typed in as the formula they were made by.

/** A coupon of 20 GPa, 12.7 × 4 mm on 64 mm, whose load begins as a parabola up to twice the toe. */
const COUPON = { span: 0.064, width: 0.0127, thickness: 0.004 };
const SLOPE = 248046.875;
function record(toe: number): { load: number[]; deflection: number[] } {
  const deflection = Array.from({ length: 101 }, (_, i) => 2e-5 * i);
  const load = deflection.map((d) => d < 2 * toe ? SLOPE * d * d / (4 * toe) : SLOPE * (d - toe));
  return { load, deflection };
}
const modulusOf = (slope: number): number => couponModulus(COUPON, slope) / 1e6;

Deno.test("ASTM D790: slope and toe of an exact coupon", () => {
  assertClose(modulusOf(SLOPE), 20000, { relative: 1e-12 });
  for (const toe of [5e-5, 1e-4]) {
    const { toeDeflection, fit } = toeCompensation(record(toe), { from: 2e-4, to: 2e-3 });
    assertClose(toeDeflection, toe, { relative: 1e-10 });
    assertClose(modulusOf(fit.slope.value), 20000, { relative: 1e-11 });
  }
});

Deno.test("ISO 178: the chord between strains of 0.0005 and 0.0025, toe left in and taken out", () => {
  const [from, to] = [couponDeflection(COUPON, 0.0005), couponDeflection(COUPON, 0.0025)];
  const left = chordSlope(record(5e-5), { from, to });
  assertClose(modulusOf(left.slope.value), 19914, { absolute: 0.5 }, "toe left in");
  const straight = { from: 1e-4, to: 2e-3 };
  const out = chordSlope(record(5e-5), { from, to, straight });
  assertClose(modulusOf(out.slope.value), 20000, { relative: 1e-9 }, "toe taken out");
  assert(out.notes.length === 0, out.notes.join());
  // A long toe: the lower limit, 0.0853 mm beyond it, still lies where the curve is bent.
  const long = chordSlope(record(1e-4), { from, to, straight: { from: 2e-4, to: 2e-3 } });
  assertClose(modulusOf(long.slope.value), 19957, { absolute: 0.5 }, "inside the toe");
  assert(long.notes[0]!.includes("inside the toe"));
});

Deno.test("ASTM D790: what a line through zero and a line through everything would make of it", () => {
  const through = ({ load, deflection }: ReturnType<typeof record>): number =>
    load.reduce((sum, P, i) => sum + P * deflection[i]!, 0) /
    deflection.reduce((sum, d) => sum + d * d, 0);
  assertClose(modulusOf(through(record(5e-5))), 19254, { absolute: 0.5 });
  const { fit } = toeCompensation(record(1e-4), { from: 0, to: 2e-3 });
  assertClose(modulusOf(fit.slope.value), 19785, { absolute: 0.5 });
});

Deno.test("ASTM D790: stress, strain and speed", () => {
  const bar = { span: 0.1, width: 0.01, thickness: 0.003 };
  const { stress, corrected } = couponStress(bar, 100, 0.012);
  assertClose([stress / 1e6, corrected / 1e6], [166.667, 178.667], { absolute: 5e-4 });
  assertClose(couponStress(bar, 100, 0.009).corrected, stress, { relative: 1e-15 }, "small δ");
  // Outer strain 6 δ d/S²; speed Z S²/(6d), read in a public copy: 1.707 mm/min here.
  assertClose(couponStrain(COUPON, 1e-3), 6 * 1e-3 * 0.004 / 0.064 ** 2, { relative: 1e-14 });
  assertClose(couponTestSpeed(COUPON, 0.01 / 60) * 6e4, 0.01 * 64 ** 2 / 24, { relative: 1e-13 });
});

Deno.test("ASTM D6272: four-point coefficients as fractions", () => {
  // E = 23 S³m/(108 b d³) and 11 S³m/(64 b d³); ε = 108/23 and 48/11 δ d/S².
  const unit = { span: 1, width: 1, thickness: 1 };
  const cases = [[1 / 3, 23 / 108, 108 / 23], [1 / 2, 11 / 64, 48 / 11]] as const;
  for (const [loadSpanFraction, modulus, strain] of cases) {
    assertClose(couponModulus({ ...unit, loadSpanFraction }, 1), modulus, { relative: 1e-14 });
    assertClose(couponStrain({ ...unit, loadSpanFraction }, 1), strain, { relative: 1e-14 });
  }
});

/** Slopes [m/N] of an exact sandwich, b 75, t 2, c 20 mm, D 728 N·m², U 45375 N, at five loadings. */
const LOADINGS: readonly (readonly [span: number, loadSpan: number, atFullLoad: number])[] = [
  [0.4, 0, 2.017679290406563],
  [0.2, 0, 0.6654330517966881],
  [0.4, 0.2, 1.180542941906578],
  [0.6, 0.2, 3.73471225743953],
  [0.8, 0, 9.52986407531862],
];
const SANDWICH = LOADINGS.map(([span, loadSpan, deflection]): ComplianceTest => ({
  loadCase: fourPoint(loadSpan / span),
  span,
  // Deflections in mm at 500 N.
  compliance: deflection / 1000 / 500,
}));

Deno.test("ASTM D7250: every pair of loadings gives D and U, and all five together", () => {
  const sets = SANDWICH.flatMap((one, i) => SANDWICH.slice(i + 1).map((two) => [one, two]));
  for (const tests of [...sets, SANDWICH]) {
    const { flexuralRigidity, shearStiffness } = rigiditiesFromTests(tests);
    assertClose(flexuralRigidity, 728, { relative: 1e-11 });
    assertClose(shearStiffness, 45375, { relative: 1e-11 });
  }
  const threePoint = SANDWICH.filter(({ loadCase }) => loadCase.loadSpanFraction === 0);
  const line = multiSpanThreePoint(threePoint);
  assertClose(line.flexuralRigidity, 728, { relative: 1e-12 });
  assertClose(line.shearStiffness, 45375, { relative: 1e-12 });
});

Deno.test("ASTM D7250: face modulus 20 GPa and core shear modulus 25 MPa", () => {
  const exactly = (value: number) => ({ value, u: 0 });
  const { faceE, coreG } = faceAndCore(rigiditiesFromTests(SANDWICH), {
    width: exactly(0.075),
    coreThickness: exactly(0.02),
    topThickness: exactly(0.002),
  });
  assertClose([faceE.value / 1e9, coreG.value / 1e6], [20, 25], { relative: 1e-11 });
  // E = 12 D/(b (h³ − c³)), G = U (h − 2t)/((h − t)² b), h = 24 mm, in the standard's own spelling.
  assertClose(12 * 728 / (0.075 * (0.024 ** 3 - 0.02 ** 3)) / 1e9, 20, { relative: 1e-12 });
  assertClose(45375 * 0.02 / (0.022 ** 2 * 0.075) / 1e6, 25, { relative: 1e-12 });
});

Deno.test("ASTM D7250: unequal thin faces, E1t1E2t2(h + c)²b/4(E1t1 + E2t2), and Allen's exact D", () => {
  const [b, c, t1, t2, E] = [0.06, 0.02, 1e-5, 2e-5, 30e9];
  const thin = E * t1 * E * t2 * (2 * c + t1 + t2) ** 2 * b / (4 * (E * t1 + E * t2));
  const rigidities = { ...rigiditiesFromTests(SANDWICH), flexuralRigidity: thin };
  const exactly = (value: number) => ({ value, u: 0 });
  const beam = {
    width: exactly(b),
    coreThickness: exactly(c),
    topThickness: exactly(t1),
    bottomThickness: exactly(t2),
  };
  assertClose(faceAndCore(rigidities, beam).faceE.value, E, { relative: 1e-5 });
  const core = { thickness: c, E: 90e6, G: 25e6 };
  const { flexuralRigidity } = sandwichSection({
    width: b,
    topFace: { thickness: t1, E },
    bottomFace: { thickness: t2, E: 1.3 * E },
    core,
  });
  const helped = { ...beam, moduliRatio: 1.3, coreE: core.E };
  assertClose(faceAndCore({ ...rigidities, flexuralRigidity }, helped).faceE.value, E, {
    relative: 1e-10,
  });
});

Deno.test("ASTM C393: core shear and face stress; shear modulus with the faces known", () => {
  const section = { width: 0.075, coreThickness: 0.02, faceThickness: 0.002 };
  const cases = [[0.15, 0, 27.2727], [0.3, 0.15, 27.2727], [0.3, 0.1, 36.3636]] as const;
  for (const [span, loadSpan, face] of cases) {
    const beam = { ...section, span, loadSpanFraction: loadSpan / span };
    const stress = shortBeamStress(beam, 2400);
    assertClose([stress.coreShear / 1e6, stress.face / 1e6], [0.727273, face], { absolute: 5e-5 });
  }
  SANDWICH.forEach(({ span, loadCase, compliance }) => {
    const beam = { ...section, span, loadSpanFraction: loadCase.loadSpanFraction };
    assertClose(shearFromShortBeam(beam, compliance, 20e9).coreG, 25e6, { relative: 1e-11 });
  });
});

// R. D. Blevins, Formulas for Natural Frequency and Mode Shape (1979), table 8-1, from memory:
// λ1 4.73004074 free (half of its last digit is 2e-9 of λ²), π on simple supports. ASTM E1876, from memory: E = 0.9465 (m f²/b)(L³/t³) T1,
// T1 tends to 1 for a slender bar.
Deno.test("Blevins, ASTM E1876: notes of a bar", () => {
  const bar = { length: 0.3, mass: 0.07, support: "free" } as const;
  const D = 0.5;
  const stiffness = { flexuralRigidity: D, shearStiffness: "rigid" } as const;
  const note = (lambda: number): number =>
    lambda ** 2 / (2 * Math.PI) * Math.sqrt(D / (0.07 / 0.3 * 0.3 ** 4));
  assertClose(stripFrequency(bar, stiffness), note(4.73004074), { relative: 3e-9 });
  assertClose(stripFrequency({ ...bar, support: "simple" }, stiffness), note(Math.PI), {
    relative: 1e-14,
  });
  const [b, t, f] = [0.03, 0.002, 100];
  const E = 0.9465 * (0.07 * f ** 2 / b) * (0.3 / t) ** 3;
  assertClose(rigidityFromNote(bar, f) / (b * t ** 3 / 12), E, { relative: 1e-4 });
});
