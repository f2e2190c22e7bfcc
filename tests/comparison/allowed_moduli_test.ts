import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import {
  allowedModuli,
  jointRegion,
  type MeasuredBeam,
  moduliOfPairs,
  rigiditiesFromTests,
  sectionModuli,
} from "../../lib/comparison/mod.ts";
import {
  beamCompliance,
  beamLoadCases,
  sandwichSection,
  solidSectionFromStack,
} from "../../lib/sandwich/mod.ts";
import { assertClose } from "../close.ts";

const SECTION = sandwichSection({
  width: 0.075,
  topFace: { thickness: 0.0004, E: 20e9 },
  bottomFace: { thickness: 0.0005, E: 18e9 },
  core: { thickness: 0.01, E: 70e6, G: 27e6 },
});
const { beam, faceE, coreG } = sectionModuli(SECTION);
const { threePoint } = beamLoadCases;
const testAt = (span: number, u = 0) => {
  const { total } = beamCompliance(threePoint, {
    span,
    flexuralRigidity: SECTION.flexuralRigidity,
    shearStiffness: SECTION.shearStiffness,
  });
  return { loadCase: threePoint, span, compliance: { value: total, u: u * total } };
};

Deno.test("a section in the terms of tests: its moduli, its shape", () => {
  assertClose([faceE, coreG], [20e9, 27e6], { relative: 1e-12 });
  assertClose([beam.moduliRatio!, beam.coreE!], [0.9, 70e6], { relative: 1e-12 });
});

Deno.test("the true pair lies on the strip of every exact test", () => {
  for (const span of [0.1, 0.2, 0.5]) {
    const [at] = allowedModuli(testAt(span), beam, [20e9]);
    assertClose([at!.low!, at!.high!], [27e6, 27e6], { relative: 1e-10 });
  }
});

Deno.test("the strip's edges bend two uncertainties more and less than measured", () => {
  const test = testAt(0.2, 0.01);
  for (const { faceE: E, low, high } of allowedModuli(test, beam, [18e9, 20e9, 22e9])) {
    const bentBy = (G: number): number => {
      const section = sandwichSection({
        width: 0.075,
        topFace: { thickness: 0.0004, E },
        bottomFace: { thickness: 0.0005, E: 0.9 * E },
        core: { thickness: 0.01, E: 70e6, G },
      });
      return beamCompliance(threePoint, { ...section, span: 0.2 }).total / test.compliance.value;
    };
    assertClose([bentBy(low!), bentBy(high!)], [1.02, 0.98], { relative: 1e-10 });
  }
});

Deno.test("faces too soft for what was measured leave the core no modulus, just soft enough no end", () => {
  const [soft, fair] = allowedModuli(testAt(0.8, 0.02), beam, [15e9, 19.5e9]);
  assertEquals([soft!.low, soft!.high], [null, null]);
  assert(fair!.low !== null && fair!.high === null);
});

Deno.test("pairs of stiffness and pairs of moduli belong together", () => {
  const [pair] = moduliOfPairs([{
    flexuralRigidity: SECTION.flexuralRigidity,
    shearStiffness: SECTION.shearStiffness as number,
  }], beam);
  assertClose([pair!.faceE, pair!.coreG], [20e9, 27e6], { relative: 1e-10 });
  const region = jointRegion(rigiditiesFromTests([testAt(0.5, 0.01), testAt(0.15, 0.01)].map(
    ({ loadCase, span, compliance: { value, u } }) => ({
      loadCase,
      span,
      compliance: value,
      uCompliance: u,
    }),
  )));
  const edge = moduliOfPairs(region.edge!, beam);
  assert(Math.min(...edge.map((point) => point.faceE)) < 20e9);
  assert(Math.max(...edge.map((point) => point.coreG)) > 27e6);
});

Deno.test("what cannot be meant is refused by name", () => {
  const refused = (f: () => unknown, message: string) => assertThrows(f, InputError, message);
  refused(() => allowedModuli(testAt(0.2), beam, []), "face moduli");
  refused(() => allowedModuli(testAt(0.2), beam, [0]), "face modulus is 0 Pa");
  refused(() => allowedModuli({ ...testAt(0.2), span: -1 }, beam, [1]), "span is -1 m");
  const thin: MeasuredBeam = { ...beam, topThickness: { value: 0, u: 0 } };
  refused(() => allowedModuli(testAt(0.2), thin, [1e9]), "top face thickness is 0 m");
  refused(
    () => moduliOfPairs([{ flexuralRigidity: 1e-3, shearStiffness: 1 }], beam),
    "above the core's own",
  );
  const rigidities = rigiditiesFromTests([0.5, 0.15].map((length) => {
    const { loadCase, span, compliance } = testAt(length);
    return { loadCase, span, compliance: compliance.value, uCompliance: 1e-7 };
  }));
  refused(() => jointRegion(rigidities, { points: 1e9 }), "number of points is 1000000000");
  const lamina = {
    ...{ name: "cloth", E1: 20e9, E2: 20e9, G12: 4e9, nu12: 0.1, G13: 3e9, G23: 3e9 },
    ...{ density: 1800, alpha1: 15e-6, alpha2: 15e-6 },
  };
  const solid = solidSectionFromStack([{ lamina, thickness: 0.003, angleDeg: 0 }], 0.05);
  refused(() => sectionModuli(solid), "must be a sandwich");
});
