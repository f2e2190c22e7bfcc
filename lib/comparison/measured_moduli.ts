import { checksFor } from "../check/mod.ts";
import { type Correlation, type Propagated, propagateTogether } from "../statistics/mod.ts";
import {
  amongInputs,
  faceModulusOf,
  type SectionShape,
  shapeOfSection,
  shearAreaOf,
} from "./_measured_section.ts";
import { type BesidePrediction, besidePrediction } from "./beside_prediction.ts";
import { FIBRE_FRACTION } from "./input_names.ts";
import type { PredictedBending } from "./predicted_bending.ts";
import type { Rigidities } from "./rigidities.ts";
import { sectionModuli } from "./section_moduli.ts";

const check = checksFor("tell the moduli beside their prediction");

/** A beam's tests as solved, and the prediction that they are set beside. */
export interface TestedBeam {
  /** D and S of the beam, from `rigiditiesFromTests`. */
  readonly rigidities: Rigidities;
  /** What was predicted of the same beam, from `predictBending`. */
  readonly predicted: Pick<PredictedBending, "inputs" | "sectionAt">;
  /** Correlations of the prediction's inputs, from `beamEvidence`; none if left out. */
  readonly correlations?: readonly Correlation[];
}

/** Moduli of face and core that a beam's tests tell, beside those predicted. */
export interface MeasuredModuli {
  /** Modulus of the top face [Pa]. */
  readonly faceE: Propagated<string>;
  /** Shear modulus of the core [Pa]. */
  readonly coreG: Propagated<string>;
  /** Correlation of these two [1]. */
  readonly correlation: number;
  /** The same moduli as predicted [Pa]. */
  readonly predicted: { readonly faceE: Propagated<string>; readonly coreG: Propagated<string> };
  /** The faces beside their prediction; what both rest on counts once. */
  readonly faces: BesidePrediction;
  /** The core beside its prediction. */
  readonly core: BesidePrediction;
  /** Remarks, empty where there is nothing to say. */
  readonly notes: readonly string[];
}

/**
 * Face modulus and core shear modulus of a weighed and tested beam, with everything that the shape
 * rests on: no callipers reach a face of 0.4 mm, its thickness comes from cloth and weighed fibre
 * fraction, and the core is what two such faces leave of the beam.
 *
 * Measured and predicted moduli rest on the same thickness: more fibre in the face than assumed
 * makes both greater. What they share is counted once where they are compared.
 *
 * Formula: measured E at which the exact section has D, G = S c/(b d²), predicted as
 * `sectionModuli`, all of the shape at the prediction's inputs; u² = Σi Σj ci cj r u(xi) u(xj)
 *
 * Range: as `faceAndCore`, sandwich beams with one core. D and S independent of the shape: they are,
 * being of the beam as it stands.
 *
 * Source: as `faceAndCore`; JCGM 100:2008, 5.2.
 *
 * @param beam D and S, prediction and correlations of its inputs.
 * @returns Measured and predicted moduli with budgets [Pa], and how they compare.
 * @throws {InputError} If D or S is not above 0, or no face modulus gives so small a D.
 *
 * @example
 * ```ts
 * import {
 *   beamEvidence,
 *   measuredModuli,
 *   predictBending,
 *   rigiditiesFromTests,
 * } from "@laminate/notebooks/comparison";
 * import { readPart } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const { loadTests, weighings } = await readPart("data/sole-panels");
 * const { beam, correlations, measured } = beamEvidence(
 *   loadTests!.filter(({ specimen }) => specimen === "beam 3"),
 *   weighings!.find(({ part }) => part === "beam 3"),
 * );
 * const rigidities = rigiditiesFromTests(beam.tests.map(({ loadCase, span }, i) => ({
 *   loadCase,
 *   span: span.value,
 *   compliance: measured[i]!.value,
 *   uCompliance: measured[i]!.u,
 * })));
 * const told = measuredModuli({ rigidities, predicted: predictBending(beam), correlations });
 * assertEquals(told.faces.verdict, "agrees");
 * ```
 */
export function measuredModuli(beam: TestedBeam): MeasuredModuli {
  const { rigidities, predicted, correlations = [] } = check.object("beam", beam);
  check.object("rigidities", rigidities);
  const { inputs, sectionAt } = check.shape("prediction", predicted, {
    inputs: "object",
    sectionAt: "function",
  });
  check.positive("flexural rigidity", rigidities.flexuralRigidity, "N·m²");
  check.positive("shear stiffness", rigidities.shearStiffness, "N");
  const { results, correlations: between } = propagateTogether(
    (values: Readonly<Record<string, number>>) => {
      const section = sectionAt(values);
      const shape = shapeOfSection(section);
      const expected = sectionModuli(section);
      return {
        faceE: faceModulus(values[RIGIDITY]!, shape),
        coreG: values[SHEAR]! / shearAreaOf(shape),
        predictedE: expected.faceE,
        predictedG: expected.coreG,
      };
    },
    {
      ...inputs,
      [RIGIDITY]: { value: rigidities.flexuralRigidity, u: rigidities.uFlexuralRigidity },
      [SHEAR]: { value: rigidities.shearStiffness, u: rigidities.uShearStiffness },
    },
    {
      correlations: [
        ...amongInputs(check, correlations, inputs),
        { between: [RIGIDITY, SHEAR], coefficient: rigidities.correlation },
      ],
    },
  );
  const of = (a: keyof typeof results, b: keyof typeof results): number =>
    between.find(({ between: pair }) => pair.includes(a) && pair.includes(b))!.coefficient;
  const { faceE, coreG, predictedE, predictedG } = results;
  return {
    ...{ faceE, coreG, correlation: of("faceE", "coreG") },
    predicted: { faceE: predictedE, coreG: predictedG },
    faces: besidePrediction(faceE, predictedE, of("faceE", "predictedE")),
    core: besidePrediction(coreG, predictedG, of("coreG", "predictedG")),
    notes: byThickness(faceE) > 0.5
      ? [
        "Most of the face modulus' uncertainty is the face's thickness, from cloth and weighing: " +
        "E times t is known better, and it is what bends.",
      ]
      : [],
  };
}

const RIGIDITY = "flexural rigidity";
const SHEAR = "shear stiffness";

function faceModulus(D: number, shape: SectionShape): number {
  return faceModulusOf(D, shape) ??
    check.refuse("flexural rigidity", D, "must be above the core's own");
}

/** Share of cloth and fibre fraction in the variance. */
function byThickness({ budget }: Propagated<string>): number {
  return budget
    .filter(({ name }) => name === FIBRE_FRACTION || name.startsWith("areal weight of "))
    .reduce((sum, { share }) => sum + share, 0);
}
