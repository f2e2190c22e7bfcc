import { checksFor } from "../check/mod.ts";
import type { BeamLoadCase } from "../sandwich/mod.ts";
import type { Uncertain } from "../statistics/mod.ts";
import { LOAD_CASE } from "./_shape.ts";

const check = checksFor("separate bending from shear");

/** A bending test, reduced to its slope. */
export interface ComplianceTest {
  /** How the beam was held and loaded. */
  readonly loadCase: BeamLoadCase;
  /** Support span [m]. */
  readonly span: number;
  /** Deflection over total load [m/N]. */
  readonly compliance: number;
  /** Standard uncertainty of the compliance; 0 if left out [m/N]. */
  readonly uCompliance?: number;
  /** Standard uncertainty of the span; 0 if left out [m]. */
  readonly uSpan?: number;
}

/** What all tests of a beam share, so that it does not average out. */
export interface SharedByTests {
  /** Compliance of the machine, in every measured compliance; 0 if left out [m/N]. */
  readonly machine?: Uncertain;
  /** Standard uncertainty of gauge and weights, as a share of every compliance; 0 if left out [1]. */
  readonly uScale?: number;
}

/** Flexural rigidity and shear stiffness that a set of tests shows. */
export interface Rigidities {
  /** Flexural rigidity D [N·m²]. */
  readonly flexuralRigidity: number;
  /** Its standard uncertainty [N·m²]. */
  readonly uFlexuralRigidity: number;
  /** Shear stiffness S; negative where the tests contradict the beam formula [N]. */
  readonly shearStiffness: number;
  /** Its standard uncertainty [N]. */
  readonly uShearStiffness: number;
  /** Correlation of the two, which the same readings determine [1]. */
  readonly correlation: number;
  /** Per cent of error in D for one per cent in each compliance, independent [1]. */
  readonly flexuralAmplification: number;
  /** Per cent of error in S for one per cent in each compliance, independent [1]. */
  readonly shearAmplification: number;
  /** Measured minus fitted compliance of each test; zeros for two tests [m/N]. */
  readonly residuals: readonly number[];
  /** Remarks on the result, empty where there is nothing to say. */
  readonly notes: readonly string[];
  /** Where the equations come from. */
  readonly source: string;
}

/** Amplification from which the loadings count as too much alike. */
const TOO_ALIKE = 5;

/**
 * Flexural rigidity and shear stiffness from bending tests at two or more spans or loadings.
 *
 * Two tests are solved exactly; more are fitted by least squares, weighted by their
 * uncertainties if every test has one and evenly in relative terms otherwise. A negative
 * stiffness is returned as computed, with a note: clipping it would hide the error.
 *
 * Formula: C − Cm = kb L³/D + ks L/S for each test, solved for 1/D and 1/S;
 * u²(C) = uC² + (∂C/∂L uL)², independent; the machine's u and the scale's common to all
 *
 * Range: loadings that differ in L² kb/ks. With an amplification above 5 the notes warn.
 *
 * Source: ASTM D7250 (simultaneous solution), from memory; JCGM 100:2008, 5.1 (propagation).
 *
 * @param tests Two tests or more: load case, span [m], compliance [m/N], uncertainties.
 * @param shared The machine's compliance [m/N] and what is common to all tests.
 * @returns D [N·m²] and S [N] with standard uncertainties, correlation and residuals.
 * @throws {InputError} If there are fewer than two tests, a span or compliance is not above 0, the
 * machine leaves nothing of one, or all loadings are alike.
 *
 * @example
 * ```ts
 * import { rigiditiesFromTests } from "@laminate/notebooks/comparison";
 * import { beamLoadCases } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const loadCase = beamLoadCases.threePoint;
 * const compliance = (L: number) => L ** 3 / (48 * 728) + L / (4 * 45375);
 * const { flexuralRigidity, shearStiffness } = rigiditiesFromTests([
 *   { loadCase, span: 0.8, compliance: compliance(0.8) },
 *   { loadCase, span: 0.2, compliance: compliance(0.2) },
 * ]);
 * assertAlmostEquals(flexuralRigidity, 728, 1e-9);
 * assertAlmostEquals(shearStiffness, 45375, 1e-7);
 * ```
 */
export function rigiditiesFromTests(
  tests: readonly ComplianceTest[],
  shared: SharedByTests = {},
): Rigidities {
  check.list("tests", tests, 2).forEach(checkTest);
  const machine = checkShared(shared);
  const own = tests.map((test, i) => ({
    ...test,
    compliance: check.positive(
      `what the machine leaves of test ${i + 1}`,
      test.compliance - machine.value,
      "m/N",
    ),
  }));
  const rows = own.map(({ loadCase: { deflection }, span }) => ({
    bending: deflection.bending * span ** 3,
    shear: deflection.shear * span,
  }));
  const relative = own.some(({ uCompliance = 0, uSpan = 0 }) => uCompliance === 0 && uSpan === 0);
  const plain = solve(rows, own.map(({ compliance }) => ({ compliance, u: compliance })));
  // The span's share of u needs ∂C/∂L and so a first solution.
  const spread = own.map((test) => uncertainty(test, plain));
  const solution = relative
    ? plain
    : solve(rows, own.map(({ compliance }, i) => ({ compliance, u: spread[i]! })));
  const { uScale = 0 } = shared;
  const effects = [
    // Every reading a little too long: what was taken off as the machine's is not.
    tests.map(() => machine.u),
    tests.map(({ compliance }) => uScale * compliance),
  ];
  return conclude(own, { solution, spread, effects, rows });
}

function checkShared(shared: SharedByTests): Uncertain {
  const { machine = { value: 0, u: 0 }, uScale = 0 } = check.object("shared", shared);
  check.object("machine", machine);
  check.finite("compliance of the machine", machine.value, "m/N");
  check.nonNegative("uncertainty of the machine", machine.u, "m/N");
  check.nonNegative("uncertainty of the scale", uScale);
  return machine;
}

function checkTest(test: ComplianceTest, i: number): void {
  check.object(`test ${i + 1}`, test);
  const { span, compliance, uCompliance = 0, uSpan = 0, loadCase } = test;
  check.shape(`load case of test ${i + 1}`, loadCase, LOAD_CASE);
  check.positive(`span of test ${i + 1}`, span, "m");
  check.positive(`compliance of test ${i + 1}`, compliance, "m/N");
  check.nonNegative(`uncertainty of the compliance of test ${i + 1}`, uCompliance, "m/N");
  check.nonNegative(`uncertainty of the span of test ${i + 1}`, uSpan, "m");
}

interface Row {
  readonly bending: number;
  readonly shear: number;
}

interface Solution {
  /** 1/D [1/(N·m²)]. */
  readonly flexibility: number;
  /** 1/S [1/N]. */
  readonly shearFlexibility: number;
  /** Of each test's compliance on 1/D and 1/S. */
  readonly gains: readonly Row[];
}

/** Weighted least squares for two unknowns; for two tests it is their exact solution. */
function solve(
  rows: readonly Row[],
  data: readonly { readonly compliance: number; readonly u: number }[],
): Solution {
  const scaled = rows.map(({ bending, shear }, i) => ({
    bending: bending / data[i]!.u,
    shear: shear / data[i]!.u,
  }));
  // Orthogonalised (Gram–Schmidt) rather than by normal equations, which would square the
  // condition of loadings that are nearly alike.
  const length = Math.hypot(...scaled.map(({ bending }) => bending));
  const along = scaled.reduce((sum, { bending, shear }) => sum + bending * shear, 0) / length;
  const across = scaled.map(({ bending, shear }) => shear - along * bending / length);
  const distance = Math.hypot(...across);
  const size = Math.hypot(...scaled.map(({ shear }) => shear));
  if (!(distance > 1e-9 * size)) {
    check.refuse("tests", rows, "must differ: use another span or another loading");
  }
  const gains = scaled.map(({ bending }, i) => {
    const shear = across[i]! / (distance * distance * data[i]!.u);
    return { bending: bending / (length * length * data[i]!.u) - along / length * shear, shear };
  });
  const total = (part: keyof Row): number =>
    gains.reduce((sum, gain, i) => sum + gain[part] * data[i]!.compliance, 0);
  return { flexibility: total("bending"), shearFlexibility: total("shear"), gains };
}

/** Standard uncertainty of a compliance, that of the span included. */
function uncertainty(test: ComplianceTest, { flexibility, shearFlexibility }: Solution): number {
  const { loadCase: { deflection }, span, uCompliance = 0, uSpan = 0 } = test;
  const slope = 3 * deflection.bending * span ** 2 * flexibility +
    deflection.shear * shearFlexibility;
  return Math.hypot(uCompliance, slope * uSpan);
}

function conclude(
  tests: readonly ComplianceTest[],
  { solution, spread, effects, rows }: {
    readonly solution: Solution;
    readonly spread: readonly number[];
    /** What one u of each shared input does to every compliance [m/N]. */
    readonly effects: readonly (readonly number[])[];
    readonly rows: readonly Row[];
  },
): Rigidities {
  const { flexibility, shearFlexibility, gains } = solution;
  const flexuralRigidity = check.result("flexural rigidity", 1 / flexibility, "N·m²");
  const shearStiffness = check.result("shear stiffness", 1 / shearFlexibility, "N");
  const commonOf = (part: keyof Row): readonly number[] =>
    effects.map((effect) => gains.reduce((sum, gain, i) => sum + gain[part] * effect[i]!, 0));
  const [commonBending, commonShear] = [commonOf("bending"), commonOf("shear")];
  const spreadOf = (part: keyof Row, common: readonly number[]): number =>
    Math.hypot(...gains.map((gain, i) => gain[part] * spread[i]!), ...common);
  const amplify = (part: keyof Row, rigidity: number): number =>
    Math.abs(rigidity) * Math.hypot(...gains.map((gain, i) => gain[part] * tests[i]!.compliance));
  const uBending = spreadOf("bending", commonBending);
  const uShear = spreadOf("shear", commonShear);
  const covariance = gains.reduce(
    (sum, { bending, shear }, i) => sum + bending * shear * spread[i]! ** 2,
    commonBending.reduce((sum, effect, k) => sum + effect * commonShear[k]!, 0),
  );
  const flexuralAmplification = amplify("bending", flexuralRigidity);
  const shearAmplification = amplify("shear", shearStiffness);
  return Object.freeze({
    flexuralRigidity,
    uFlexuralRigidity: check.result(
      "uncertainty of the flexural rigidity",
      uBending * flexuralRigidity ** 2,
      "N·m²",
    ),
    shearStiffness,
    uShearStiffness: check.result(
      "uncertainty of the shear stiffness",
      uShear * shearStiffness ** 2,
      "N",
    ),
    correlation: uBending > 0 && uShear > 0
      ? check.result("correlation", covariance / (uBending * uShear))
      : 0,
    flexuralAmplification: check.result("amplification", flexuralAmplification),
    shearAmplification: check.result("amplification", shearAmplification),
    residuals: Object.freeze(
      rows.map(({ bending, shear }, i) =>
        check.result(
          "residual",
          tests[i]!.compliance - bending * flexibility - shear * shearFlexibility,
        )
      ),
    ),
    notes: Object.freeze(remarks({
      flexuralRigidity,
      shearStiffness,
      amplification: Math.max(flexuralAmplification, shearAmplification),
    })),
    source: "ASTM D7250 (simultaneous solution), from memory",
  });
}

function remarks({ flexuralRigidity, shearStiffness, amplification }: {
  readonly flexuralRigidity: number;
  readonly shearStiffness: number;
  readonly amplification: number;
}): readonly string[] {
  const notes: string[] = [];
  if (flexuralRigidity < 0 || shearStiffness < 0) {
    notes.push(
      "A stiffness comes out negative: the tests contradict each other; check spans, widths and readings.",
    );
  }
  if (amplification > TOO_ALIKE) {
    notes.push(
      `The loadings are much alike: 1 % in each slope becomes ${
        amplification.toFixed(1)
      } % in the result; add a test at a very different span.`,
    );
  }
  return notes;
}
