import { checksFor } from "../check/mod.ts";
import type { BeamLoadCase } from "../sandwich/mod.ts";
import { LOAD_CASE } from "./_shape.ts";
import type { RigidityPair } from "./joint_region.ts";
import type { ComplianceTest } from "./rigidities.ts";

const check = checksFor("say what one span tells");

/** What one bending test allows. */
export interface OneSpan {
  /** Least flexural rigidity: that of a beam that does not shear at all [N·m²]. */
  readonly leastFlexuralRigidity: number;
  /** Least shear stiffness: that of a beam that does not bend at all [N]. */
  readonly leastShearStiffness: number;
  /** Pairs of D and S that all bend as measured, from much D and little S to the contrary. */
  readonly pairs: readonly RigidityPair[];
  /** Share of shear in the deflection, if D and S are as predicted; null without them [1]. */
  readonly shearShare: number | null;
  /** A span that would tell face from core together with this one, same loading [m]. */
  readonly otherSpan: number;
  /** What that means, in plain words. */
  readonly words: readonly string[];
}

/** With this share of the deflection, bending or shear, a test speaks of that one alone [1]. */
const MOSTLY = 0.8;
/** How much shorter the second span should be where no prediction says better: common practice. */
const RULE = 3;

/**
 * What a single bending test can tell, and what it cannot: it gives one number for two unknowns.
 * Every pair of flexural rigidity and shear stiffness on one curve bends as much.
 *
 * Formula: 1/D = (C − ks L/S)/(kb L³); least D = kb L³/C, least S = ks L/C; shear and bending are
 * equal at L = √(ks D/(kb S))
 *
 * Range: one load case, small deflections.
 *
 * Source: ASTM D7250 (form of the deflection), from memory.
 *
 * @param test Load case, span [m] and compliance [m/N].
 * @param expected D and S as predicted, to say which of them the test mostly shows.
 * @returns Least D and S, pairs that fit, another span to test, and plain words.
 * @throws {InputError} If the span, the compliance or an expected stiffness is not above 0.
 *
 * @example
 * ```ts
 * import { oneSpan } from "@laminate/notebooks/comparison";
 * import { beamLoadCases } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const test = { loadCase: beamLoadCases.threePoint, span: 0.48, compliance: 2e-5 };
 * const { leastFlexuralRigidity, leastShearStiffness } = oneSpan(test);
 * assertAlmostEquals(leastFlexuralRigidity, 115.2, 1e-10);
 * assertAlmostEquals(leastShearStiffness, 6000, 1e-9);
 * ```
 */
export function oneSpan(
  test: Pick<ComplianceTest, "loadCase" | "span" | "compliance">,
  expected?: RigidityPair,
): OneSpan {
  check.object("test", test);
  const { loadCase, span, compliance } = test;
  const { deflection: { bending, shear } } = check.shape("load case", loadCase, LOAD_CASE);
  check.positive("span", span, "m");
  check.positive("compliance", compliance, "m/N");
  const leastFlexuralRigidity = check.result(
    "least flexural rigidity",
    bending * span ** 3 / compliance,
    "N·m²",
  );
  const leastShearStiffness = check.result("least shear stiffness", shear * span / compliance, "N");
  const pairs = SHARES.map((share): RigidityPair => ({
    flexuralRigidity: check.result("flexural rigidity", leastFlexuralRigidity / (1 - share)),
    shearStiffness: check.result("shear stiffness", leastShearStiffness / share),
  })).reverse();
  const shares = expected === undefined ? null : shareOfShear(loadCase, span, expected);
  const otherSpan = expected === undefined ? span / RULE : spanThatTells(loadCase, span, expected);
  return {
    ...{ leastFlexuralRigidity, leastShearStiffness, pairs, otherSpan },
    shearShare: shares,
    words: wordsOf(shares, span, otherSpan),
  };
}

/** Shares of shear in the deflection at which pairs are given. */
const SHARES = Array.from({ length: 37 }, (_, i) => (i + 1) / 38);

function shareOfShear(
  { deflection: { bending, shear } }: BeamLoadCase,
  span: number,
  expected: RigidityPair,
): number {
  check.object("expected", expected);
  const fromBending = bending * span ** 3 /
    check.positive("expected flexural rigidity", expected.flexuralRigidity, "N·m²");
  const fromShear = shear * span /
    check.positive("expected shear stiffness", expected.shearStiffness, "N");
  return check.result("share of shear", fromShear / (fromBending + fromShear));
}

/** The span on the other side at which the other stiffness makes `MOSTLY` of the deflection. */
function spanThatTells(
  { deflection: { bending, shear } }: BeamLoadCase,
  span: number,
  { flexuralRigidity, shearStiffness }: RigidityPair,
): number {
  const equal = Math.sqrt(shear * flexuralRigidity / (bending * shearStiffness));
  const stretch = Math.sqrt(MOSTLY / (1 - MOSTLY));
  return check.result("other span", span > equal ? equal / stretch : equal * stretch, "m");
}

function wordsOf(
  shearShare: number | null,
  span: number,
  otherSpan: number,
): readonly string[] {
  const cannot =
    "One span gives one number for two unknowns: stiffer faces on a softer core bend just as much.";
  const add = `Test the same beam at ${millimetres(otherSpan)} too, and the two can be told apart.`;
  if (shearShare === null) return [cannot, add];
  const percent = (share: number): string => `${(100 * share).toFixed(0)} %`;
  const tells = shearShare > 1 - MOSTLY
    ? shearShare < MOSTLY
      ? `At ${millimetres(span)} ${percent(shearShare)} of the deflection should be shear of the ` +
        "core and the rest bending of the faces: a gap can lie in either."
      : `At ${millimetres(span)} ${
        percent(shearShare)
      } of the deflection should be shear: the test ` +
        "speaks of the core and hardly of the faces."
    : `At ${millimetres(span)} only ${
      percent(shearShare)
    } of the deflection should be shear: the ` +
      "test speaks of the faces and hardly of the core.";
  return [cannot, tells, add];
}

function millimetres(length: number): string {
  return `${(1000 * length).toFixed(0)} mm`;
}
