import { checksFor } from "../check/mod.ts";
import { propagateTogether } from "../statistics/mod.ts";
import { amongInputs, rigidityOf, shapeOfSection, shearAreaOf } from "./_measured_section.ts";
import type { ModuliPair } from "./allowed_moduli.ts";
import { LOAD_CASE } from "./_shape.ts";
import { jointRegion, type JointRegionOptions } from "./joint_region.ts";
import type { TestedBeam } from "./measured_moduli.ts";
import type { PlannedTest } from "./predicted_bending.ts";

const check = checksFor("say which moduli the tests allow");

/**
 * Pairs of face modulus and core shear modulus that a beam's tests allow together, its uncertain
 * shape included.
 *
 * Formula: as `jointRegion`, an ellipse in 1/E and 1/G
 *
 * Range: as `jointRegion`.
 *
 * Source: as `jointRegion`.
 *
 * @param moduli Moduli with uncertainties and correlation, from `measuredModuli`.
 * @param options Level, and number of points.
 * @returns Points on the edge in order around it [Pa]; null where the region has no end.
 * @throws {InputError} As `jointRegion`.
 *
 * @example
 * ```ts
 * import { measuredModuliRegion } from "@laminate/notebooks/comparison";
 * import { assertEquals } from "@std/assert";
 *
 * const edge = measuredModuliRegion({
 *   faceE: { value: 20e9, u: 6e8 },
 *   coreG: { value: 25e6, u: 5e5 },
 *   correlation: 0,
 * }, { points: 36 });
 * assertEquals(edge?.length, 36);
 * ```
 */
export function measuredModuliRegion(
  moduli: {
    /** Face modulus [Pa]. */
    readonly faceE: { readonly value: number; readonly u: number };
    /** Core shear modulus [Pa]. */
    readonly coreG: { readonly value: number; readonly u: number };
    /** Correlation of the two [1]. */
    readonly correlation: number;
  },
  options: JointRegionOptions = {},
): readonly ModuliPair[] | null {
  const { faceE, coreG, correlation } = check.object("moduli", moduli);
  check.object("face modulus", faceE);
  check.object("core shear modulus", coreG);
  const { edge } = jointRegion({
    ...{ flexuralRigidity: faceE.value, uFlexuralRigidity: faceE.u },
    ...{ shearStiffness: coreG.value, uShearStiffness: coreG.u, correlation },
  }, options);
  return edge?.map(({ flexuralRigidity, shearStiffness }) => ({
    faceE: flexuralRigidity,
    coreG: shearStiffness,
  })) ?? null;
}

/**
 * What a beam's uncertain shape and spans add to each test's deflection at given moduli: strips of
 * `allowedModuli`, which take the shape as exact, become as wide as they are known with it.
 *
 * Formula: C = kb L³/D(E, shape) + ks L/(G b d²/c); u by propagation over shape and span
 *
 * Range: as `measuredModuli`; near the moduli given.
 *
 * Source: as `measuredModuli`.
 *
 * @param beam The prediction, and correlations of its inputs.
 * @param tests The tests, as they were given to `predictBending`.
 * @param moduli The moduli at which it is wanted, best those measured [Pa].
 * @returns Standard uncertainty of each test's compliance from shape and span [m/N].
 * @throws {InputError} If a modulus is not above 0, or a test was not predicted.
 *
 * @example
 * ```ts
 * import { beamEvidence, predictBending, shapeSpread } from "@laminate/notebooks/comparison";
 * import { readPart } from "@laminate/notebooks/records";
 * import { assert } from "@std/assert";
 *
 * const { loadTests, weighings } = await readPart("data/sole-panels");
 * const { beam, correlations } = beamEvidence(
 *   loadTests!.filter(({ specimen }) => specimen === "beam 1"),
 *   weighings!.find(({ part }) => part === "beam 1"),
 * );
 * const predicted = predictBending(beam);
 * const moduli = { faceE: 20e9, coreG: 26e6 };
 * const spread = shapeSpread({ predicted, correlations }, beam.tests, moduli);
 * assert(spread.every((u, i) => 0 < u && u < predicted.compliances[i]!.u));
 * ```
 */
export function shapeSpread(
  beam: Omit<TestedBeam, "rigidities">,
  tests: readonly PlannedTest[],
  moduli: ModuliPair,
): readonly number[] {
  const { predicted, correlations = [] } = check.object("beam", beam);
  const { inputs, sectionAt } = check.shape("prediction", predicted, {
    inputs: "object",
    sectionAt: "function",
  });
  const shared = amongInputs(check, correlations, inputs);
  const { faceE, coreG } = check.object("moduli", moduli);
  check.positive("face modulus", faceE, "Pa");
  check.positive("core shear modulus", coreG, "Pa");
  check.shape("tests", tests, [{ test: "text", loadCase: LOAD_CASE }]);
  const spans = check.list("tests", tests).map(({ test }) => `span of ${test}`);
  const unknown = spans.find((name) => inputs[name] === undefined);
  if (unknown !== undefined) check.refuse("tests", unknown, "must be tests of the prediction");
  const { results } = propagateTogether(
    (values: Readonly<Record<string, number>>) => {
      const shape = shapeOfSection(sectionAt(values));
      const [D, S] = [rigidityOf(faceE, shape), coreG * shearAreaOf(shape)];
      return Object.fromEntries(tests.map(({ loadCase: { deflection } }, i) => {
        const span = values[spans[i]!]!;
        return [String(i), deflection.bending * span ** 3 / D + deflection.shear * span / S];
      }));
    },
    inputs,
    { correlations: shared },
  );
  return tests.map((_, i) => results[String(i)]!.u);
}
