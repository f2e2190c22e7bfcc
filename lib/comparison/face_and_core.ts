import { checksFor } from "../check/mod.ts";
import {
  type Correlation,
  type Propagated,
  propagateTogether,
  type Uncertain,
} from "../statistics/mod.ts";
import {
  coreRigidityOf,
  faceModulusOf,
  type SectionShape,
  shearAreaOf,
} from "./_measured_section.ts";
import type { Rigidities } from "./rigidities.ts";

const check = checksFor("tell face from core");

/** The measured shape of a sandwich beam. */
export interface MeasuredBeam {
  /** Width [m]. */
  readonly width: Uncertain;
  /** Thickness of the core [m]. */
  readonly coreThickness: Uncertain;
  /** Thickness of the top face (both faces, if the other is left out) [m]. */
  readonly topThickness: Uncertain;
  /** Thickness of the bottom face; that of the top, and the same error, if left out [m]. */
  readonly bottomThickness?: Uncertain;
  /** Modulus of the bottom face over that of the top; 1 if left out [1]. */
  readonly moduliRatio?: number;
  /** In-plane modulus of the core; 0 if left out, as for honeycomb [Pa]. */
  readonly coreE?: number;
}

/** Inputs of the moduli, by the words that a budget shows. */
export type FaceCoreInput =
  | "flexural rigidity"
  | "shear stiffness"
  | "width"
  | "core thickness"
  | "top face thickness"
  | "bottom face thickness";

/** Moduli of face and core, with how they go together. */
export interface FaceAndCore {
  /** Modulus of the top face [Pa]. */
  readonly faceE: Propagated<FaceCoreInput>;
  /** Shear modulus of the core [Pa]. */
  readonly coreG: Propagated<FaceCoreInput>;
  /** Correlation of the two [1]. */
  readonly correlation: number;
  /** Remarks, empty where there is nothing to say. */
  readonly notes: readonly string[];
}

/**
 * Face modulus and core shear modulus of a sandwich beam, from its flexural rigidity and shear
 * stiffness and its measured shape.
 *
 * Formula: equal faces E = 12 D/(b (h³ − c³)), G = S (h − 2t)/((h − t)² b), h = c + 2t; unequal
 * ones and a core that helps: the E at which the exact section has D; G = S c/(b d²) with
 * d = c + (t1 + t2)/2
 *
 * Range: narrow beams. The face's modulus is only as good as its thickness: 5 % of a thin face are
 * 5 % of E. What is well known is E times t. Of a weighed beam `measuredModuli` knows how well.
 *
 * Source: ASTM D7250 (equal faces), from memory; exact section as `sandwichSection`; JCGM 100:2008.
 *
 * @param rigidities D and S with uncertainties and correlation, from `rigiditiesFromTests`.
 * @param beam Width, core and faces as measured [m].
 * @returns E of the face and G of the core with budgets [Pa], and their correlation.
 * @throws {InputError} If D or S or a length is not above 0, or no face modulus gives so small a D.
 *
 * @example
 * ```ts
 * import { faceAndCore, rigiditiesFromTests } from "@laminate/notebooks/comparison";
 * import { beamLoadCases } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const test = (span: number) => ({
 *   loadCase: beamLoadCases.threePoint,
 *   span,
 *   compliance: span ** 3 / (48 * 728) + span / (4 * 45375),
 * });
 * const { faceE, coreG } = faceAndCore(rigiditiesFromTests([test(0.2), test(0.8)]), {
 *   width: { value: 0.075, u: 0 },
 *   coreThickness: { value: 0.02, u: 0 },
 *   topThickness: { value: 0.002, u: 0 },
 * });
 * assertAlmostEquals(faceE.value / 1e9, 20, 1e-9);
 * assertAlmostEquals(coreG.value / 1e6, 25, 1e-9);
 * ```
 */
export function faceAndCore(rigidities: Rigidities, beam: MeasuredBeam): FaceAndCore {
  check.object("rigidities", rigidities);
  const inputs = inputsOf(rigidities, beam);
  const { moduliRatio = 1, coreE = 0 } = beam;
  check.positive("ratio of the moduli", moduliRatio);
  check.nonNegative("core modulus", coreE, "Pa");
  const { results, correlations } = propagateTogether(
    (values: Values) => {
      const shape = shapeAt(values, { moduliRatio, coreE });
      return {
        faceE: faceModulus(values, shape),
        coreG: values["shear stiffness"]! / shearAreaOf(shape),
      };
    },
    inputs,
    { correlations: together(rigidities) },
  );
  const byThickness = results.faceE.budget
    .filter(({ name }) => name.includes("face thickness"))
    .reduce((sum, { share }) => sum + share, 0);
  return {
    faceE: results.faceE as Propagated<FaceCoreInput>,
    coreG: results.coreG as Propagated<FaceCoreInput>,
    correlation: correlations[0]!.coefficient,
    notes: byThickness > 0.5
      ? ["Most of the face modulus' uncertainty is the face's thickness: trust E times t instead."]
      : [],
  };
}

function inputsOf(
  rigidities: Rigidities,
  beam: MeasuredBeam,
): Readonly<Record<string, Uncertain>> {
  const { width, coreThickness, topThickness, bottomThickness } = check.object("beam", beam);
  const { flexuralRigidity, uFlexuralRigidity, shearStiffness, uShearStiffness } = rigidities;
  const inputs: Record<string, Uncertain> = {
    "flexural rigidity": { value: flexuralRigidity, u: uFlexuralRigidity },
    "shear stiffness": { value: shearStiffness, u: uShearStiffness },
    width,
    "core thickness": coreThickness,
    "top face thickness": topThickness,
    ...(bottomThickness === undefined ? {} : { "bottom face thickness": bottomThickness }),
  };
  for (const [name, input] of Object.entries(inputs)) {
    check.object(name, input);
    check.positive(name, input.value);
    check.nonNegative(`uncertainty of the ${name}`, input.u);
  }
  return inputs;
}

function together({ correlation }: Rigidities): readonly Correlation[] {
  check.within("correlation of D and S", correlation, { min: -1, max: 1 });
  return [{ between: ["flexural rigidity", "shear stiffness"], coefficient: correlation }];
}

type Values = Readonly<Record<string, number>>;

function shapeAt(
  values: Values,
  { moduliRatio, coreE }: { readonly moduliRatio: number; readonly coreE: number },
): SectionShape {
  const top = values["top face thickness"]!;
  return {
    ...{ moduliRatio, coreE, top },
    width: values["width"]!,
    core: values["core thickness"]!,
    bottom: values["bottom face thickness"] ?? top,
  };
}

/** The modulus of the top face at which the exact section is as stiff as measured. */
function faceModulus(values: Values, shape: SectionShape): number {
  const D = values["flexural rigidity"]!;
  return faceModulusOf(D, shape) ??
    check.refuse(
      "flexural rigidity",
      D,
      `must be above the core's own, ${coreRigidityOf(shape)} N·m²`,
    );
}
