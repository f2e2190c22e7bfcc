import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { type ComplianceTest, rigiditiesFromTests } from "../../lib/comparison/mod.ts";
import { type BeamLoadCase, beamLoadCases, fourPoint } from "../../lib/sandwich/mod.ts";
import { assertClose } from "../close.ts";

const D = 728;
const S = 45375;
const { threePoint, fourPointQuarter } = beamLoadCases;

/** An exact test on a beam of rigidity D and shear stiffness S, by the handbook's coefficients. */
function exact(
  loadCase: BeamLoadCase,
  span: number,
  [kb, ks]: readonly [number, number],
): ComplianceTest {
  return { loadCase, span, compliance: kb * span ** 3 / D + ks * span / S };
}

const LONG = exact(threePoint, 0.8, [1 / 48, 1 / 4]);
const SHORT = exact(threePoint, 0.2, [1 / 48, 1 / 4]);
const QUARTER = exact(fourPointQuarter, 0.4, [11 / 768, 1 / 8]);

Deno.test("two exact tests give back rigidity and shear stiffness", () => {
  for (const pair of [[LONG, SHORT], [SHORT, LONG], [LONG, QUARTER]]) {
    const found = rigiditiesFromTests(pair);
    assertClose(found.flexuralRigidity, D, { relative: 1e-12 });
    assertClose(found.shearStiffness, S, { relative: 1e-12 });
    assertEquals(found.notes, []);
  }
});

Deno.test("many exact tests give back the same, with nothing left over", () => {
  const found = rigiditiesFromTests([
    LONG,
    SHORT,
    QUARTER,
    exact(threePoint, 0.5, [1 / 48, 1 / 4]),
  ]);
  assertClose(found.flexuralRigidity, D, { relative: 1e-12 });
  assertClose(found.shearStiffness, S, { relative: 1e-12 });
  assertClose(found.residuals, [0, 0, 0, 0], { absolute: 1e-18 });
});

Deno.test("the uncertainties of two tests come from the inverse of a 2 × 2 matrix, by hand", () => {
  const uLong = 0.01 * LONG.compliance;
  const uShort = 0.02 * SHORT.compliance;
  const found = rigiditiesFromTests([
    { ...LONG, uCompliance: uLong },
    { ...SHORT, uCompliance: uShort },
  ]);
  // [C1; C2] = [a b; c d] [1/D; 1/S]; the inverse is [d −b; −c a]/det.
  const [a, b] = [0.8 ** 3 / 48, 0.8 / 4];
  const [c, d] = [0.2 ** 3 / 48, 0.2 / 4];
  const det = a * d - b * c;
  const uFlexibility = Math.hypot(d * uLong, b * uShort) / det;
  const uShear = Math.hypot(c * uLong, a * uShort) / det;
  const covariance = -(d * c * uLong ** 2 + b * a * uShort ** 2) / det ** 2;
  assertClose(found.uFlexuralRigidity, uFlexibility * D ** 2, { relative: 1e-11 });
  assertClose(found.uShearStiffness, uShear * S ** 2, { relative: 1e-11 });
  assertClose(found.correlation, covariance / (uFlexibility * uShear), { relative: 1e-10 });
});

Deno.test("an uncertain span counts by the slope of the compliance", () => {
  const uSpan = 1e-3;
  const slope = 3 * 0.8 ** 2 / (48 * D) + 1 / (4 * S);
  const bySpan = rigiditiesFromTests([{ ...LONG, uSpan }, { ...SHORT, uCompliance: 1e-9 }]);
  const byCompliance = rigiditiesFromTests([
    { ...LONG, uCompliance: slope * uSpan },
    { ...SHORT, uCompliance: 1e-9 },
  ]);
  assertClose(bySpan.uFlexuralRigidity, byCompliance.uFlexuralRigidity, { relative: 1e-9 });
});

Deno.test("a negative shear stiffness is returned and remarked, not clipped", () => {
  const found = rigiditiesFromTests([LONG, { ...SHORT, compliance: 0.5 * 0.2 ** 3 / (48 * D) }]);
  assert(found.shearStiffness < 0);
  assert(found.notes[0]!.includes("negative"));
});

Deno.test("loadings that are alike are refused, nearly alike are remarked", () => {
  assertThrows(() => rigiditiesFromTests([LONG, LONG]), InputError, "must differ");
  const alike = rigiditiesFromTests([exact(threePoint, 0.4, [1 / 48, 1 / 4]), QUARTER]);
  assert(alike.notes[0]!.includes("much alike"));
});

Deno.test("what cannot be meant is refused by name", () => {
  const refused = (tests: readonly ComplianceTest[], message: string) =>
    assertThrows(() => rigiditiesFromTests(tests), InputError, message);
  refused([LONG], "tests");
  refused([LONG, { ...SHORT, span: 0 }], "span of test 2 is 0 m");
  refused([LONG, { ...SHORT, compliance: NaN }], "compliance of test 2 is NaN");
  refused([LONG, { ...SHORT, uSpan: -1 }], "uncertainty of the span of test 2");
});

Deno.test("a 1 % error grows as the tables of loadings say", () => {
  // Sandwich beam D 728 N·m², S 45375 N: worked by hand from the 2 × 2 inverse, two digits.
  const cases: readonly [ComplianceTest, ComplianceTest, number, number][] = [
    [SHORT, LONG, 1.4, 1.3],
    [SHORT, exact(fourPoint(1 / 3), 0.6, [23 / 1296, 1 / 6]), 1.6, 1.4],
    [exact(threePoint, 0.4, [1 / 48, 1 / 4]), SHORT, 3.5, 1.7],
    [exact(threePoint, 0.4, [1 / 48, 1 / 4]), QUARTER, 9.0, 8.8],
  ];
  for (const [one, two, bending, shear] of cases) {
    const found = rigiditiesFromTests([one, two]);
    assertClose(found.flexuralAmplification, bending, { absolute: 0.05 });
    assertClose(found.shearAmplification, shear, { absolute: 0.05 });
  }
});
