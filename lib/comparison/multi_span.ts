import { checksFor } from "../check/mod.ts";
import { fitLine, type FitParameter } from "../statistics/mod.ts";

const check = checksFor("separate bending from shear by spans");

/** A three-point bending test, reduced to its slope. */
export interface SpanTest {
  /** Support span [m]. */
  readonly span: number;
  /** Deflection at mid-span over load [m/N]. */
  readonly compliance: number;
}

/** Flexural rigidity and shear stiffness from three-point tests at several spans. */
export interface MultiSpan {
  /** Flexural rigidity D [N·m²]. */
  readonly flexuralRigidity: number;
  /** Its standard uncertainty, from the scatter about the line; null for two spans [N·m²]. */
  readonly uFlexuralRigidity: number | null;
  /** Shear stiffness S; negative where the tests contradict the beam formula [N]. */
  readonly shearStiffness: number;
  /** Its standard uncertainty, from the scatter about the line; null for two spans [N]. */
  readonly uShearStiffness: number | null;
  /** Correlation of the two; null for two spans [1]. */
  readonly correlation: number | null;
  /** Slope of C/L on L², 1/48D [1/(N·m²)]. */
  readonly slope: FitParameter;
  /** Intercept, 1/4S [1/N]. */
  readonly intercept: FitParameter;
  /** C/L less the line, test by test [1/N]. */
  readonly residuals: readonly number[];
}

/**
 * Flexural rigidity and shear stiffness from three-point tests at several spans by one straight
 * line, each span counting alike: the picture that a workshop can draw by hand.
 *
 * `rigiditiesFromTests` takes uncertainties and any load case; this takes the scatter of the spans
 * about their line. A negative stiffness is returned as computed.
 *
 * Formula: C/L = (1/48D) L² + 1/4S; unweighted least squares of C/L on L²
 *
 * Range: two spans or more; u from three on. Long spans count much more than short ones in L².
 *
 * Source: ASTM D7250 (straight line through several spans), from memory.
 *
 * @param tests Span [m] and compliance [m/N] of each test.
 * @returns D [N·m²] and S [N] with standard uncertainties, correlation and residuals.
 * @throws {InputError} If there are fewer than two tests, a span or compliance is not above 0, or
 * all spans are alike.
 *
 * @example
 * ```ts
 * import { multiSpanThreePoint } from "@laminate/notebooks/comparison";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const test = (span: number) => ({
 *   span,
 *   compliance: span ** 3 / (48 * 728) + span / (4 * 45375),
 * });
 * const { flexuralRigidity } = multiSpanThreePoint([test(0.2), test(0.5), test(0.8)]);
 * assertAlmostEquals(flexuralRigidity, 728, 1e-9);
 * ```
 */
export function multiSpanThreePoint(tests: readonly SpanTest[]): MultiSpan {
  check.list("tests", tests, 2).forEach((test, i) => {
    check.object(`test ${i + 1}`, test);
    check.positive(`span of test ${i + 1}`, test.span, "m");
    check.positive(`compliance of test ${i + 1}`, test.compliance, "m/N");
  });
  const first = tests[0]!.span;
  if (tests.every(({ span }) => Math.abs(span - first) <= 1e-9 * first)) {
    check.refuse("spans", tests.map(({ span }) => span), "must differ");
  }
  const exact = tests.length === 2;
  // Two spans leave no scatter: then their line is drawn, and nothing said of its uncertainty.
  const { slope, intercept, correlation, residuals } = fitLine({
    x: tests.map(({ span }) => span * span),
    y: tests.map(({ span, compliance }) => compliance / span),
  }, exact ? { uY: 1 } : {});
  const flexuralRigidity = check.result("flexural rigidity", 1 / (48 * slope.value), "N·m²");
  const shearStiffness = check.result("shear stiffness", 1 / (4 * intercept.value), "N");
  return {
    flexuralRigidity,
    uFlexuralRigidity: exact ? null : Math.abs(flexuralRigidity) * relative(slope),
    shearStiffness,
    uShearStiffness: exact ? null : Math.abs(shearStiffness) * relative(intercept),
    // Both fall as their coefficient grows, so that the sign stays.
    correlation: exact ? null : correlation,
    slope: exact ? bare(slope) : slope,
    intercept: exact ? bare(intercept) : intercept,
    residuals,
  };
}

function relative({ value, u }: FitParameter): number {
  return u / Math.abs(value);
}

/** A coefficient without an interval. */
function bare({ value }: FitParameter): FitParameter {
  return { value, u: 0, low: value, high: value };
}
