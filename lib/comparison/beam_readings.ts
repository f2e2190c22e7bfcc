import { checksFor } from "../check/mod.ts";
import type { Core } from "../materials/mod.ts";
import { coreShearModulusInput } from "./input_names.ts";
import type { PlannedReading } from "./planned_reading.ts";
import { type PlannedBeam, predictBending } from "./predicted_bending.ts";

const check = checksFor("plan a reading");

/**
 * Bending tests of the same beam as readings that could be taken: other spans, other loadings.
 *
 * Formula: as `predictBending`; u a share of the slope
 *
 * Range: as `predictBending`.
 *
 * Source: as `predictBending`.
 *
 * @param beam The beam, its tests those that could be made; names appear in the answer.
 * @param share Standard uncertainty of a slope so measured, over the slope; 0.01 unless said [1].
 * @returns One reading for each test.
 * @throws {InputError} As `predictBending`, or if the share is not above 0.
 *
 * @example
 * ```ts
 * import { bendingReadings } from "@laminate/notebooks/comparison";
 * import { readPart } from "@laminate/notebooks/records";
 * import { beamLoadCases } from "@laminate/notebooks/sandwich";
 * import { assertEquals } from "@std/assert";
 *
 * const { layups } = await readPart("data/sole-panels");
 * const planned = bendingReadings({
 *   layup: layups.get("sole")!,
 *   width: { value: 0.075, u: 2e-4 },
 *   tests: [{
 *     test: "three-point at 1 m",
 *     loadCase: beamLoadCases.threePoint,
 *     span: { value: 1, u: 5e-4 },
 *   }],
 * });
 * assertEquals(planned.map(({ reading }) => reading), ["three-point at 1 m"]);
 * ```
 */
export function bendingReadings(beam: PlannedBeam, share = 0.01): readonly PlannedReading[] {
  check.positive("share of the slope", share);
  const { tests } = check.object("beam", beam);
  return check.list("tests", tests).map((test) => {
    const { compliances: [compliance], inputs, predict } = predictBending({
      ...beam,
      tests: [test],
    });
    const own = Object.fromEntries(
      Object.entries(inputs).map(([name, { value }]) => [name, value]),
    );
    // The span of a test that is not made yet is no input of the gap: its u counts with the reading.
    const bySpan = compliance!.budget
      .filter(({ name }) => name.startsWith("span of "))
      .reduce((sum, { contribution }) => Math.hypot(sum, contribution), 0);
    return {
      reading: test.test,
      u: Math.hypot(share * compliance!.value, bySpan),
      predict: (values): number => predict({ ...own, ...values })[0]!,
    };
  });
}

/**
 * An input of the prediction, read directly: callipers for a thickness, the scale for a fibre
 * fraction.
 *
 * Formula: the input itself
 *
 * Range: any input of the gap.
 *
 * Source: none needed.
 *
 * @param input Name of the input.
 * @param u Standard uncertainty that the reading would have [unit of the input].
 * @param reading What to call it; "read <input>" unless said.
 * @returns The reading.
 * @throws {InputError} If the uncertainty is not above 0.
 *
 * @example
 * ```ts
 * import { directReading } from "@laminate/notebooks/comparison";
 * import { assertEquals } from "@std/assert";
 *
 * const callipers = directReading("thickness of PVC foam 80", 5e-5);
 * assertEquals(callipers.predict({ "thickness of PVC foam 80": 0.01 }), 0.01);
 * ```
 */
export function directReading(input: string, u: number, reading = `read ${input}`): PlannedReading {
  check.positive("uncertainty", u);
  return {
    reading,
    u,
    predict: (values): number =>
      values[input] ?? check.refuse("input", input, "must be one of the gap"),
  };
}

/** How the shear modulus of foam grows with its density, and how well one tells the other. */
export interface DensityLaw {
  /** Exponent of the density; 1.17 unless said [1]. */
  readonly exponent?: number;
  /** Standard uncertainty of a density so told, over the density; 0.06 unless said [1]. */
  readonly scatter?: number;
}

/**
 * Weighing the core sheet: a lighter foam is softer in shear, so its density tells of its modulus.
 *
 * Formula: ρ = ρ0 (G/G0)^(1/k)
 *
 * Range: foams of one family. k 1.17 is the slope of lg G on lg ρ over the catalogue's PVC foams of
 * 48 to 130 kg/m³, 0.06 an estimate of this project for foam to foam.
 *
 * Source: power law of foams, Gibson and Ashby, Cellular Solids, from memory (k 1 to 2).
 *
 * @param core The core of the lay-up, as in the catalogue.
 * @param law Exponent and scatter.
 * @returns The reading, a density [kg/m³].
 * @throws {InputError} If the exponent or the scatter is not above 0.
 *
 * @example
 * ```ts
 * import { coreDensityReading } from "@laminate/notebooks/comparison";
 * import { readCatalogue } from "@laminate/notebooks/records";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { cores } = await readCatalogue();
 * const { predict } = coreDensityReading(cores.get("PVC foam 80")!);
 * assertAlmostEquals(predict({ "shear modulus of PVC foam 80": 20e6 }), 61.90, 0.01);
 * ```
 */
export function coreDensityReading(core: Core, law: DensityLaw = {}): PlannedReading {
  check.object("core", core);
  const G0 = check.positive("shear modulus of the core", core.shearModulusL, "Pa");
  check.positive("density of the core", core.density, "kg/m³");
  const { exponent = 1.17, scatter = 0.06 } = check.object("law", law);
  check.positive("exponent", exponent);
  check.positive("scatter", scatter);
  const name = coreShearModulusInput(core);
  return {
    reading: `weigh the sheet of ${core.name}`,
    u: check.result("uncertainty", scatter * core.density, "kg/m³"),
    predict: (values): number => {
      const G = values[name] ?? check.refuse("input", name, "must be one of the gap");
      check.positive(name, G, "Pa");
      return check.result("density", core.density * (G / G0) ** (1 / exponent), "kg/m³");
    },
  };
}
