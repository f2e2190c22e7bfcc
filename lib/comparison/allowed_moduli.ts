import { checksFor } from "../check/mod.ts";
import type { BeamLoadCase } from "../sandwich/mod.ts";
import type { Uncertain } from "../statistics/mod.ts";
import { LOAD_CASE, MEASURED } from "./_shape.ts";
import { faceModulusOf, rigidityOf, type SectionShape, shearAreaOf } from "./_measured_section.ts";
import type { MeasuredBeam } from "./face_and_core.ts";
import type { RigidityPair } from "./joint_region.ts";

const check = checksFor("say which moduli a test allows");

/** One bending test with its uncertainty. */
export interface OneCompliance {
  /** How the beam was held and loaded. */
  readonly loadCase: BeamLoadCase;
  /** Support span [m]. */
  readonly span: number;
  /** Deflection over total load [m/N]. */
  readonly compliance: Uncertain;
}

/** Core shear moduli that go with a face modulus. */
export interface AllowedModuli {
  /** Face modulus [Pa]. */
  readonly faceE: number;
  /** Least core shear modulus; no end (null) where bending alone bends it more than measured [Pa]. */
  readonly low: number | null;
  /** Greatest core shear modulus; no end (null) where bending alone may have done it [Pa]. */
  readonly high: number | null;
}

/**
 * Which pairs of face modulus and core shear modulus one bending test allows: a strip of the plane,
 * two standard uncertainties wide on both sides.
 *
 * Formula: G = ks L/[(C ± 2u − kb L³/D(E)) b d²/c], D(E) of the exact section
 *
 * Range: the beam's shape taken as exact; as `faceAndCore` for the rest.
 *
 * Source: ASTM D7250 (form of the deflection), from memory.
 *
 * @param test Load case, span [m], compliance with uncertainty [m/N].
 * @param beam Width, core and faces [m].
 * @param faceE Face moduli at which the strip is wanted [Pa].
 * @returns The strip, one entry for each face modulus.
 * @throws {InputError} If a figure is not above 0, or there is no face modulus.
 *
 * @example
 * ```ts
 * import { allowedModuli } from "@laminate/notebooks/comparison";
 * import { beamLoadCases } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const exactly = (value: number) => ({ value, u: 0 });
 * const beam = {
 *   width: exactly(0.075),
 *   coreThickness: exactly(0.02),
 *   topThickness: exactly(0.002),
 * };
 * const compliance = exactly(0.4 ** 3 / (48 * 728) + 0.4 / (4 * 45375));
 * const test = { loadCase: beamLoadCases.threePoint, span: 0.4, compliance };
 * const [strip] = allowedModuli(test, beam, [20e9]);
 * assertAlmostEquals(strip!.low! / 1e6, 25, 1e-9);
 * ```
 */
export function allowedModuli(
  test: OneCompliance,
  beam: MeasuredBeam,
  faceE: readonly number[],
): readonly AllowedModuli[] {
  check.object("test", test);
  check.shape("load case", test.loadCase, LOAD_CASE);
  check.shape("compliance", test.compliance, MEASURED);
  const { loadCase: { deflection }, span, compliance } = test;
  check.positive("span", span, "m");
  const shape = shapeOf(beam);
  const shearArea = shearAreaOf(shape);
  return check.list("face moduli", faceE).map((E): AllowedModuli => {
    const D = rigidityOf(check.positive("face modulus", E, "Pa"), shape);
    const at = (sign: number): number | null => {
      const left = compliance.value + 2 * sign * compliance.u -
        deflection.bending * span ** 3 / D;
      return left > 0
        ? check.result("shear modulus", deflection.shear * span / (left * shearArea), "Pa")
        : null;
    };
    return { faceE: E, low: at(1), high: at(-1) };
  });
}

/** A pair of moduli. */
export interface ModuliPair {
  /** Face modulus [Pa]. */
  readonly faceE: number;
  /** Core shear modulus [Pa]. */
  readonly coreG: number;
}

/**
 * Moduli of face and core for pairs of flexural rigidity and shear stiffness: the edge of a joint
 * region, say.
 *
 * Formula: as `faceAndCore`
 *
 * Range: as `faceAndCore`, the beam's shape taken as exact.
 *
 * Source: as `faceAndCore`.
 *
 * @param pairs Pairs of D [N·m²] and S [N].
 * @param beam Width, core and faces [m].
 * @returns Pairs of moduli [Pa], in order.
 * @throws {InputError} If a figure is not above 0, or the core alone has more than a D.
 *
 * @example
 * ```ts
 * import { moduliOfPairs } from "@laminate/notebooks/comparison";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const exactly = (value: number) => ({ value, u: 0 });
 * const [moduli] = moduliOfPairs([{ flexuralRigidity: 728, shearStiffness: 45375 }], {
 *   width: exactly(0.075),
 *   coreThickness: exactly(0.02),
 *   topThickness: exactly(0.002),
 * });
 * assertAlmostEquals(moduli!.faceE / 1e9, 20, 1e-9);
 * ```
 */
export function moduliOfPairs(
  pairs: readonly RigidityPair[],
  beam: MeasuredBeam,
): readonly ModuliPair[] {
  const shape = shapeOf(beam);
  const shearArea = shearAreaOf(shape);
  return check.list("pairs", pairs).map((pair) => {
    const { flexuralRigidity, shearStiffness } = check.object("pair", pair);
    check.positive("flexural rigidity", flexuralRigidity, "N·m²");
    check.positive("shear stiffness", shearStiffness, "N");
    const faceE = faceModulusOf(flexuralRigidity, shape) ??
      check.refuse("flexural rigidity", flexuralRigidity, "must be above the core's own");
    return {
      faceE: check.result("face modulus", faceE, "Pa"),
      coreG: check.result("shear modulus", shearStiffness / shearArea, "Pa"),
    };
  });
}

function shapeOf(beam: MeasuredBeam): SectionShape {
  const { width, coreThickness, topThickness, bottomThickness = topThickness } = check.object(
    "beam",
    beam,
  );
  const { moduliRatio = 1, coreE = 0 } = beam;
  const positive = (name: string, input: Uncertain): number =>
    check.positive(name, check.object(name, input).value, "m");
  return {
    width: positive("width", width),
    core: positive("core thickness", coreThickness),
    top: positive("top face thickness", topThickness),
    bottom: positive("bottom face thickness", bottomThickness),
    moduliRatio: check.positive("ratio of the moduli", moduliRatio),
    coreE: check.nonNegative("core modulus", coreE, "Pa"),
  };
}
