import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import {
  beamEvidence,
  besidePrediction,
  measuredModuli,
  measuredModuliRegion,
  predictBending,
  type PredictionInput,
  rigiditiesFromTests,
  shapeSpread,
  type TestedBeam,
} from "../../lib/comparison/mod.ts";
import { readPart } from "../../lib/records/mod.ts";
import { beamLoadCases, sandwichSection } from "../../lib/sandwich/mod.ts";
import { assertClose } from "../close.ts";

// A beam of 24 mm with faces of 2 mm: E = 12 D/(b (h³ − c³)) with h³ − c³ = 5.824e-6 m³, so D = 728
// at b = 75 mm and E = 20 GPa. Faces t = w/(ρ V), and foretold E = 50 GPa V.
const input = (value: number, u: number): PredictionInput => ({
  ...{ value, u, dimension: "ratio", source: "given", reading: "none" },
});
const INPUTS = {
  "areal weight of cloth": input(2, 0.06),
  "fibre volume fraction": input(0.4, 0.02),
  "thickness": input(0.024, 5e-5),
  "span of long": input(0.8, 5e-4),
};
const sectionAt = (values: Readonly<Record<string, number>>) => {
  const V = values["fibre volume fraction"]!;
  const face = { thickness: values["areal weight of cloth"]! / (2500 * V), E: 50e9 * V };
  const core = { thickness: values["thickness"]! - 2 * face.thickness, E: 0, G: 25e6 };
  return sandwichSection({ width: 0.075, topFace: face, bottomFace: face, core });
};
const beam = (correlation: number, uD = 0): TestedBeam => {
  const { threePoint: loadCase } = beamLoadCases;
  const exact = rigiditiesFromTests([0.2, 0.8].map((span) => ({
    ...{ loadCase, span },
    compliance: span ** 3 / (48 * 728) + span / (4 * 45375),
  })));
  return {
    rigidities: { ...exact, uFlexuralRigidity: uD, uShearStiffness: 0, correlation: 0 },
    predicted: { inputs: INPUTS, sectionAt },
    correlations: [{
      between: ["fibre volume fraction", "areal weight of cloth"],
      coefficient: correlation,
    }],
  };
};
// d ln E/d ln t at held h is −6 c² t/(h³ − c³), d E/dh = −3 E (h² − c²)/(h³ − c³).
const byThickness = 6 * 0.02 ** 2 * 0.002 / 5.824e-6;
const byHeight = 3 * 20e9 * (0.024 ** 2 - 0.02 ** 2) / 5.824e-6;

Deno.test("a face's modulus is as uncertain as its thickness, fibre fraction and cloth going together", () => {
  for (const r of [0, 0.9]) {
    const { faceE, coreG, notes } = measuredModuli(beam(r, 7.28));
    // u(t)/t of w/(ρ V): 3 % of w, 5 % of V.
    const t = Math.sqrt(0.03 ** 2 + 0.05 ** 2 - 2 * r * 0.03 * 0.05);
    const u = Math.hypot(20e9 * byThickness * t, byHeight * 5e-5, 20e9 * 0.01);
    assertClose([faceE.value, faceE.u], [20e9, u], { relative: 1e-7 });
    assertClose(coreG.value, 25e6, { relative: 1e-9 });
    assert(notes[0]!.includes("E times t"));
  }
});

Deno.test("measured and foretold faces share their thickness, and are compared without it", () => {
  const { faces, core, predicted } = measuredModuli(beam(0));
  assertClose([predicted.faceE.value, predicted.faceE.u], [20e9, 0.05 * 20e9], { relative: 1e-7 });
  // ln(E/50 GPa V): slope of V is k − 1, of w is −k, k = −d ln E/d ln t; and the height.
  const u = Math.hypot((byThickness - 1) * 0.05, byThickness * 0.03, byHeight * 5e-5 / 20e9);
  assertClose([faces.ratio.value, faces.ratio.u], [1, u], { relative: 1e-6 });
  assertEquals(core.verdict, "agrees");
});

Deno.test("beam 3 of the demonstration: the faces are known to 3 %, not to 1 %", async () => {
  const { loadTests, weighings } = await readPart("data/sole-panels");
  const { beam, measured, correlations } = beamEvidence(
    loadTests!.filter(({ specimen }) => specimen === "beam 3"),
    weighings!.find(({ part }) => part === "beam 3"),
  );
  const rigidities = rigiditiesFromTests(
    beam.tests.map(({ loadCase, span }, i) => ({
      ...{ loadCase, span: span.value, uSpan: span.u },
      ...{ compliance: measured[i]!.value, uCompliance: measured[i]!.u },
    })),
    { uScale: 0.005 },
  );
  const { faceE } = measuredModuli({ rigidities, predicted: predictBending(beam), correlations });
  // By hand from the weighing (94.7 g, core 33.4 g, 650 × 75 mm ± 1 mm, cloth 200 ± 10/√3 g/m²,
  // glass 2540 to 2600, resin 1120 to 1190 kg/m³): t = (m_f/ρ_f + m_r/ρ_m)/A = 0.7103 mm ± 2.807 %,
  // r(V, w) = 0.8843; with D = 28.88 ± 0.17 N m², h and b as measured u(E) = 0.566 GPa.
  assertClose(correlations[0]!.coefficient, 0.8843, { absolute: 1e-4 });
  assertClose(faceE.u, 0.566e9, { relative: 0.01 });
});

Deno.test("cloth weighed dry does not go with the roll's areal weight, nor does a part not weighed", async () => {
  const { loadTests, weighings } = await readPart("data/sole-panels");
  const tests = loadTests!.filter(({ specimen }) => specimen === "beam 1");
  const scale = weighings!.find(({ part }) => part === "beam 1")!;
  const dry = { ...scale, dryClothMass: { value: 0.039, u: 1e-4 } };
  assertEquals(beamEvidence(tests).correlations, []);
  assertEquals(beamEvidence(tests, dry).correlations, []);
});

Deno.test("the region of the moduli is an ellipse in their inverses", () => {
  const moduli = {
    faceE: { value: 20e9, u: 6e8 },
    coreG: { value: 25e6, u: 5e5 },
    correlation: 0,
  };
  const edge = measuredModuliRegion(moduli, { points: 8 })!;
  // χ²(0.95, 2) = −2 ln 0.05 = 5.99146.
  const reach = Math.sqrt(5.991464547107979);
  assertClose([edge[0]!.faceE, edge[0]!.coreG], [20e9 / (1 + reach * 0.03), 25e6], {
    relative: 1e-12,
  });
  assertClose(edge[6]!.coreG, 25e6 / (1 - reach * 0.02), { relative: 1e-12 });
  assertEquals(measuredModuliRegion({ ...moduli, faceE: { value: 20e9, u: 1e10 } }), null);
});

Deno.test("an uncertain shape widens what a test allows, by the slope of the deflection", () => {
  const { predicted } = beam(0);
  const tests = [{
    test: "long",
    loadCase: beamLoadCases.threePoint,
    span: { value: 0.8, u: 5e-4 },
  }];
  const exact = Object.fromEntries(
    Object.entries(INPUTS).map(([name, given]) =>
      name.startsWith("span") ? [name, given] : [name, { ...given, u: 0 }]
    ),
  );
  const moduli = { faceE: 20e9, coreG: 25e6 };
  const [bySpan] = shapeSpread({ predicted: { inputs: exact, sectionAt } }, tests, moduli);
  assertClose(bySpan!, 5e-4 * (0.8 ** 2 / (16 * 728) + 1 / (4 * 45375)), { relative: 1e-7 });
  // At held moduli D goes with t as E went against it, S as b (h − t)²/(h − 2t) = 1 + 2.18 t/2 mm.
  const [all] = shapeSpread({ predicted }, tests, moduli);
  const at = (t: number, h: number) => {
    const c = h - 2 * t;
    const [D, S] = [20e9 * 0.075 * (h ** 3 - c ** 3) / 12, 25e6 * 0.075 * (h - t) ** 2 / c];
    return 0.8 ** 3 / (48 * D) + 0.8 / (4 * S);
  };
  const slopeT = (at(0.0020001, 0.024) - at(0.0019999, 0.024)) / 2e-7;
  const slopeH = (at(0.002, 0.0240001) - at(0.002, 0.0239999)) / 2e-7;
  const t = 0.002 * Math.hypot(0.03, 0.05);
  assertClose(all!, Math.hypot(bySpan!, slopeT * t, slopeH * 5e-5), { relative: 1e-6 });
});

Deno.test("a comparison with what is shared taken out: r of 1 leaves only the difference of u", () => {
  const [measured, predicted] = [{ value: 1.2, u: 0.05 }, { value: 1, u: 0.02 }];
  assertClose(besidePrediction(measured, predicted, 1).z, 0.2 / 0.03, { relative: 1e-12 });
  // u² = 0.05² + 0.02² − 2 · 0.5 · 0.05 · 0.02 = 0.0019.
  assertClose(besidePrediction(measured, predicted, 0.5).z, 0.2 / Math.sqrt(0.0019), {
    relative: 1e-12,
  });
  assertThrows(() => besidePrediction(measured, predicted, 1.1), InputError, "correlation");
  assertThrows(
    () => besidePrediction({ value: 1, u: 0.02 }, predicted, 1),
    InputError,
    "uncertainty of the difference",
  );
});

Deno.test("moduli of what is no tested beam are refused", () => {
  const good = beam(0);
  const refuses = (changed: unknown, words: string) =>
    assertThrows(() => measuredModuli(changed as TestedBeam), InputError, words);
  refuses(null, "beam");
  refuses({ ...good, rigidities: undefined }, "rigidities");
  refuses({ ...good, predicted: undefined }, "prediction");
  refuses({ ...good, rigidities: { ...good.rigidities, flexuralRigidity: -1 } }, "rigidity");
  refuses({ ...good, rigidities: { ...good.rigidities, shearStiffness: 0 } }, "shear stiffness");
  const tests = [{ test: "other", loadCase: beamLoadCases.threePoint, span: { value: 1, u: 0 } }];
  assertThrows(
    () => shapeSpread(good, tests, { faceE: 20e9, coreG: 25e6 }),
    InputError,
    "must be tests of the prediction",
  );
  // A prediction or correlations with holes are refused by both, before anything asks them.
  const holes: readonly (readonly [object, string])[] = [
    [{ predicted: { ...good.predicted, inputs: null } }, "inputs of prediction is null"],
    [{ predicted: { ...good.predicted, sectionAt: 5 } }, "sectionAt of prediction"],
    [{ correlations: "none" }, "correlations is"],
    [{ correlations: [{ between: 3, coefficient: 0 }] }, "between of entry 1 of correlations"],
    [{ correlations: [null] }, "entry 1 of correlations is null"],
  ];
  for (const [change, words] of holes) {
    refuses({ ...good, ...change }, words);
    const spoilt = { ...good, ...change } as TestedBeam;
    assertThrows(
      () => shapeSpread(spoilt, tests, { faceE: 20e9, coreG: 25e6 }),
      InputError,
      words,
    );
  }
  assertThrows(
    () => shapeSpread(good, [{ test: "other" }] as never, { faceE: 20e9, coreG: 25e6 }),
    InputError,
    "loadCase of entry 1 of tests is missing",
  );
  assertThrows(() => shapeSpread(good, [], { faceE: 20e9, coreG: 25e6 }), InputError, "tests");
  assertThrows(() => shapeSpread(good, tests, { faceE: 0, coreG: 25e6 }), InputError, "modulus");
  assertThrows(
    () => measuredModuliRegion({ ...measuredModuli(beam(0, 1)), correlation: 2 }),
    InputError,
  );
});
