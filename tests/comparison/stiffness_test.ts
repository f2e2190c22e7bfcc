import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import {
  besidePrediction,
  faceAndCore,
  jointRegion,
  multiSpanThreePoint,
  oneSpan,
  rigiditiesFromTests,
} from "../../lib/comparison/mod.ts";
import { randomGenerator } from "../../lib/numeric/mod.ts";
import { beamCompliance, beamLoadCases } from "../../lib/sandwich/mod.ts";
import { holdRate } from "../../lib/statistics/mod.ts";
import { assertClose } from "../close.ts";

const [D, S] = [728, 45375];
const { threePoint } = beamLoadCases;
const compliance = (span: number): number => span ** 3 / (48 * D) + span / (4 * S);
const tests = (share: number, factors = [1, 1]) =>
  [0.8, 0.2].map((span, i) => ({
    loadCase: threePoint,
    span,
    compliance: compliance(span) * factors[i]!,
    uCompliance: share * compliance(span),
  }));

Deno.test("the joint region holds the true pair at its rate, where separate intervals do not say", () => {
  const { rate, u } = holdRate((random) => {
    const factors = [1 + 0.01 * random.normal(), 1 + 0.01 * random.normal()];
    const { edge } = jointRegion(rigiditiesFromTests(tests(0.01, factors)), { points: 90 });
    // Inside a polygon: a ray from the true pair crosses its edge an odd number of times.
    let crossings = 0;
    edge!.forEach((from, i) => {
      const to = edge![(i + 1) % edge!.length]!;
      const [y0, y1] = [from.shearStiffness - S, to.shearStiffness - S];
      if (y0 > 0 === y1 > 0) return;
      const x = from.flexuralRigidity + (to.flexuralRigidity - from.flexuralRigidity) * y0 /
          (y0 - y1);
      if (x > D) crossings++;
    });
    return crossings % 2 === 1;
  }, { trials: 2000, seed: 7 });
  assertClose(rate, 0.95, { absolute: 4 * u + 0.003 }, "a polygon of 90 sides is a little inside");
});

Deno.test("the region's extent is that of the ellipse: √(χ²) standard deviations", () => {
  const rigidities = rigiditiesFromTests(tests(0.01));
  const { edge, flexuralRigidity, notes } = jointRegion(rigidities, { points: 3600 });
  const reach = Math.sqrt(-2 * Math.log(0.05)) * rigidities.uFlexuralRigidity / D;
  assertClose(flexuralRigidity.low, D / (1 + reach), { relative: 1e-12 });
  assertClose(flexuralRigidity.high!, D / (1 - reach), { relative: 1e-12 });
  assertClose(Math.min(...edge!.map((pair) => pair.flexuralRigidity)), flexuralRigidity.low, {
    relative: 1e-6,
  });
  assertEquals(notes, []);
});

Deno.test("tests that hardly tell the shear stiffness set it no upper end", () => {
  const long = [0.8, 0.7].map((span) => ({
    loadCase: threePoint,
    span,
    compliance: compliance(span),
    uCompliance: 0.05 * compliance(span),
  }));
  const { edge, shearStiffness, notes } = jointRegion(rigiditiesFromTests(long));
  assertEquals([edge, shearStiffness.high], [null, null]);
  assert(notes[0]!.includes("no upper end"));
});

Deno.test("face and core: their uncertainty by hand, where only the face's thickness is uncertain", () => {
  const exactly = (value: number) => ({ value, u: 0 });
  const rigidities = rigiditiesFromTests(tests(0));
  const beam = {
    width: exactly(0.075),
    coreThickness: exactly(0.02),
    topThickness: { value: 0.002, u: 1e-5 },
  };
  const { faceE, coreG, notes } = faceAndCore(rigidities, beam);
  // dE/dt of 12 D/(b ((c + 2t)³ − c³)) and dG/dt of S c/(b (c + t)²).
  const slopeE = -20e9 * 6 * 0.024 ** 2 / (0.024 ** 3 - 0.02 ** 3);
  const slopeG = -2 * 25e6 / 0.022;
  assertClose([faceE.u, coreG.u], [-slopeE * 1e-5, -slopeG * 1e-5], { relative: 1e-8 });
  assert(notes[0]!.includes("trust E times t"));
});

Deno.test("face and core go against each other as D and S do", () => {
  const exactly = (value: number) => ({ value, u: 0 });
  const rigidities = rigiditiesFromTests(tests(0.01));
  const { correlation, faceE, coreG } = faceAndCore(rigidities, {
    width: exactly(0.075),
    coreThickness: exactly(0.02),
    topThickness: exactly(0.002),
  });
  assertClose(correlation, rigidities.correlation, { relative: 1e-6 });
  assertClose(faceE.u / faceE.value, rigidities.uFlexuralRigidity / D, { relative: 1e-6 });
  assertClose(coreG.u / coreG.value, rigidities.uShearStiffness / S, { relative: 1e-6 });
});

Deno.test("a core that helps more than all of D is refused", () => {
  const exactly = (value: number) => ({ value, u: 0 });
  assertThrows(
    () =>
      faceAndCore(rigiditiesFromTests(tests(0)), {
        width: exactly(0.075),
        coreThickness: exactly(0.02),
        topThickness: exactly(0.002),
        coreE: 20e9,
      }),
    InputError,
    "must be above the core's own",
  );
});

Deno.test("several spans by one line: slope, intercept and scatter by hand", () => {
  // C/L = 2, 3.1, 3.9 at L² = 1, 2, 3: slope 0.95, intercept 1.1, s² = Σr²/1 = 0.015.
  const found = multiSpanThreePoint([
    { span: 1, compliance: 2 },
    { span: Math.SQRT2, compliance: 3.1 * Math.SQRT2 },
    { span: Math.sqrt(3), compliance: 3.9 * Math.sqrt(3) },
  ]);
  assertClose(found.flexuralRigidity, 1 / (48 * 0.95), { relative: 1e-12 });
  assertClose(found.shearStiffness, 1 / (4 * 1.1), { relative: 1e-12 });
  const uSlope = Math.sqrt(0.015 / 2);
  const uIntercept = Math.sqrt(0.015 * (1 / 3 + 4 / 2));
  assertClose(found.uFlexuralRigidity!, uSlope / 0.95 * found.flexuralRigidity, {
    relative: 1e-10,
  });
  assertClose(found.uShearStiffness!, uIntercept / 1.1 * found.shearStiffness, { relative: 1e-10 });
  assertClose(found.correlation!, -2 * uSlope / uIntercept, { relative: 1e-10 });
});

Deno.test("two spans by one line have no scatter to tell; a negative stiffness comes as it is", () => {
  const two = multiSpanThreePoint([0.8, 0.2].map((span) => ({
    span,
    compliance: compliance(span),
  })));
  assertClose([two.flexuralRigidity, two.shearStiffness], [D, S], { relative: 1e-12 });
  assertEquals([two.uShearStiffness, two.correlation, two.slope.u], [null, null, 0]);
  const odd = multiSpanThreePoint([{ span: 1, compliance: 1 }, { span: 2, compliance: 9 }]);
  assert(odd.shearStiffness < 0);
  const refused = (list: readonly { span: number; compliance: number }[], message: string) =>
    assertThrows(() => multiSpanThreePoint(list), InputError, message);
  refused([{ span: 1, compliance: 1 }], "tests");
  refused([{ span: 1, compliance: 1 }, { span: 1, compliance: 2 }], "must differ");
  refused([{ span: 1, compliance: 1 }, { span: 2, compliance: 0 }], "compliance of test 2");
});

Deno.test("one span: every pair on its curve bends as measured, and the least values bound them", () => {
  const test = { loadCase: threePoint, span: 0.5, compliance: compliance(0.5) };
  const { pairs, leastFlexuralRigidity, leastShearStiffness, shearShare, otherSpan, words } =
    oneSpan(test, { flexuralRigidity: D, shearStiffness: S });
  for (const { flexuralRigidity, shearStiffness } of pairs) {
    const beam = { span: 0.5, flexuralRigidity, shearStiffness };
    assertClose(beamCompliance(threePoint, beam).total, test.compliance, { relative: 1e-12 });
    assert(flexuralRigidity > leastFlexuralRigidity && shearStiffness > leastShearStiffness);
  }
  assertClose(shearShare!, 0.5 / (4 * S) / compliance(0.5), { relative: 1e-12 });
  // Bending and shear are equal at √(12 D/S); half of that has a share of 4/5 of shear.
  assertClose(otherSpan, Math.sqrt(12 * D / S) / 2, { relative: 1e-12 });
  assert(words[0]!.includes("two unknowns") && words[1]!.includes("can lie in either"));
});

Deno.test("a short span is said to speak of the core, a long one of the faces", () => {
  const expected = { flexuralRigidity: D, shearStiffness: S };
  const said = (span: number): string =>
    oneSpan({ loadCase: threePoint, span, compliance: compliance(span) }, expected).words[1]!;
  assert(said(0.15).includes("of the core and hardly of the faces"));
  assert(said(1.5).includes("of the faces and hardly of the core"));
  const bare = oneSpan({ loadCase: threePoint, span: 0.6, compliance: 1e-5 });
  assertEquals([bare.shearShare, bare.words.length], [null, 2]);
  assertClose(bare.otherSpan, 0.2, { relative: 1e-12 });
});

Deno.test("beside its prediction: z, ratio and verdict by hand", () => {
  const beside = besidePrediction({ value: 90, u: 3 }, { value: 100, u: 4 });
  assertClose([beside.z, beside.ratio.value], [-2, 0.9], { relative: 1e-14 });
  assertClose(beside.ratio.u, Math.hypot(3, 3.6) / 100, { relative: 1e-14 });
  assertClose(beside.chance, 0.0455002638963584, { relative: 1e-12 }, "2 Φ(−2)");
  assertEquals(beside.verdict, "in doubt");
  assert(beside.words.startsWith("10 % below the prediction"));
  assertThrows(
    () => besidePrediction({ value: 1, u: 0 }, { value: 1, u: 0 }),
    InputError,
    "uncertainty of the difference",
  );
  const random = randomGenerator(3);
  let agrees = 0;
  for (let i = 0; i < 1000; i++) {
    const measured = { value: 100 + 5 * random.normal(), u: 3 };
    if (besidePrediction(measured, { value: 100, u: 4 }).verdict === "agrees") agrees++;
  }
  assertClose(agrees / 1000, 0.9545, { absolute: 0.02 }, "√(3² + 4²) = 5");
});
