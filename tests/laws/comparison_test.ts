import { assert, assertEquals } from "@std/assert";
import fc from "fast-check";
import {
  allowedModuli,
  besidePrediction,
  chordSlope,
  faceAndCore,
  hysteresis,
  jointRegion,
  moduliOfPairs,
  multiSpanThreePoint,
  oneSpan,
  readBendingTest,
  rigiditiesFromTests,
  sectionModuli,
  straightness,
  withoutMachine,
} from "../../lib/comparison/mod.ts";
import {
  beamCompliance,
  beamLoadCases,
  fourPoint,
  rigidityFromNote,
  sandwichSection,
  stripFrequency,
} from "../../lib/sandwich/mod.ts";
import { assertClose } from "../close.ts";

const RUNS = { seed: 20261125, numRuns: 200 };
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** A sandwich beam of any make. */
const beams = fc.record({
  width: number(0.02, 0.2),
  top: number(2e-4, 3e-3),
  bottom: number(2e-4, 3e-3),
  core: number(3e-3, 4e-2),
  E: number(5e9, 1e11),
  ratio: number(0.5, 2),
  coreE: number(0, 2e8),
  G: number(3e6, 3e8),
}).map(({ width, top, bottom, core, E, ratio, coreE, G }) =>
  sandwichSection({
    width,
    topFace: { thickness: top, E },
    bottomFace: { thickness: bottom, E: ratio * E },
    core: { thickness: core, E: coreE, G },
  })
);

Deno.test("two spans and back: any beam's moduli are those it was made of", () => {
  fc.assert(
    fc.property(beams, number(0.3, 1.2), number(2, 12), (section, long, shorter) => {
      const tests = [long, long / shorter].map((span) => ({
        loadCase: beamLoadCases.threePoint,
        span,
        compliance: beamCompliance(beamLoadCases.threePoint, { ...section, span }).total,
      }));
      const found = rigiditiesFromTests(tests);
      // An error of 1e-16 in each slope grows by what the tests amplify it.
      const relative = 1e-13 * Math.max(found.flexuralAmplification, found.shearAmplification, 1);
      assertClose(found.flexuralRigidity, section.flexuralRigidity, { relative });
      assertClose(found.shearStiffness, section.shearStiffness as number, { relative });
      const byLine = multiSpanThreePoint(tests);
      assertClose(byLine.flexuralRigidity, section.flexuralRigidity, { relative: 10 * relative });
      const { beam, faceE, coreG } = sectionModuli(section);
      const moduli = faceAndCore(found, beam);
      assertClose(moduli.coreG.value, coreG, { relative: 10 * relative });
      assertClose(moduli.faceE.value, faceE, { relative: 1e-9 + 100 * relative });
    }),
    RUNS,
  );
});

Deno.test("a test's strip holds the true pair, and its edges lie in order", () => {
  fc.assert(
    fc.property(beams, number(0.1, 1), number(0.001, 0.05), (section, span, share) => {
      const loadCase = fourPoint(0.4);
      const { total } = beamCompliance(loadCase, { ...section, span });
      const { beam, faceE, coreG } = sectionModuli(section);
      const [strip] = allowedModuli(
        { loadCase, span, compliance: { value: total, u: share * total } },
        beam,
        [faceE],
      );
      assert(strip!.low! <= coreG * (1 + 1e-9));
      assert(strip!.high === null || strip!.high >= coreG * (1 - 1e-9));
    }),
    RUNS,
  );
});

Deno.test("a single span's pairs all bend alike, and its bounds are below every one", () => {
  fc.assert(
    fc.property(number(0.1, 2), number(1e-7, 1e-3), number(0, 0.9), (span, compliance, r) => {
      const loadCase = fourPoint(r);
      const told = oneSpan({ loadCase, span, compliance });
      for (const { flexuralRigidity, shearStiffness } of told.pairs) {
        const beam = { span, flexuralRigidity, shearStiffness };
        assertClose(beamCompliance(loadCase, beam).total, compliance, { relative: 1e-12 });
        assert(flexuralRigidity > told.leastFlexuralRigidity);
        assert(shearStiffness > told.leastShearStiffness);
      }
    }),
    RUNS,
  );
});

Deno.test("a wider level takes in a narrower region", () => {
  fc.assert(
    fc.property(number(0.001, 0.02), number(0.1, 0.9), (share, level) => {
      const rigidities = rigiditiesFromTests([0.8, 0.2].map((span) => {
        const compliance = span ** 3 / (48 * 728) + span / (4 * 45375);
        return {
          loadCase: beamLoadCases.threePoint,
          span,
          compliance,
          uCompliance: share * compliance,
        };
      }));
      const [narrow, wide] = [level, 0.95].map((each) => jointRegion(rigidities, { level: each }));
      assert(wide!.flexuralRigidity.low <= narrow!.flexuralRigidity.low);
      assert(wide!.shearStiffness.high! >= narrow!.shearStiffness.high!);
      assertEquals(narrow!.edge!.length, 72);
    }),
    RUNS,
  );
});

/** Nine straight readings with a little scatter of their own. */
const straightTests = fc.record({
  slope: number(1e-6, 1e-3),
  zero: number(-1e-3, 1e-3),
  scatter: fc.array(fc.integer({ min: -100, max: 100 }), { minLength: 9, maxLength: 9 }),
}).map(({ slope, zero, scatter }) => {
  const load = scatter.map((_, i) => 10 * i);
  return { load, deflection: load.map((P, i) => zero + slope * (P + 0.002 * scatter[i]!)) };
});

Deno.test("moving the gauge's zero moves no slope; a finer unit of load scales it", () => {
  fc.assert(
    fc.property(straightTests, number(-0.01, 0.01), ({ load, deflection }, shift) => {
      const branch = load.map(() => "loading" as const);
      const read = readBendingTest({ load, deflection, branch });
      const moved = readBendingTest({
        load,
        deflection: deflection.map((value) => value + shift),
        branch,
      });
      assertClose(moved.fit.slope.value, read.fit.slope.value, { relative: 1e-6 });
      assertEquals(moved.used, read.used);
      const halved = readBendingTest({ load: load.map((P) => P / 2), deflection, branch });
      assertClose(halved.fit.slope.value, 2 * read.fit.slope.value, { relative: 1e-9 });
    }),
    RUNS,
  );
});

Deno.test("the bend of two straight pieces is where they meet, wherever that is", () => {
  fc.assert(
    fc.property(number(20, 60), number(0.05, 3), (place, change) => {
      const load = Array.from({ length: 12 }, (_, i) => 8 * i);
      const deflection = load.map((P) => 1e-4 * (P + change * Math.max(0, P - place)));
      const { departure, toe } = straightness({ load, deflection });
      assertEquals(toe, null);
      assertClose(departure!.load.value, place, { relative: 1e-6 });
      assertClose(departure!.slopeChange.value, 1e-4 * change, { relative: 1e-6 });
    }),
    RUNS,
  );
});

Deno.test("the chord of a straight line is its slope, whatever the limits", () => {
  fc.assert(
    fc.property(number(0, 0.4), number(0.5, 1), number(1e3, 1e6), (from, to, slope) => {
      const deflection = [0, 0.3, 0.5, 0.7, 1];
      const chord = chordSlope({ deflection, load: deflection.map((d) => slope * d) }, {
        from,
        to,
      });
      assertClose(chord.slope.value, slope, { relative: 1e-12 });
    }),
    RUNS,
  );
});

Deno.test("subtracting a machine and adding it again changes nothing", () => {
  fc.assert(
    fc.property(number(1e-7, 1e-3), number(0, 0.9), (compliance, share) => {
      const machine = { value: share * compliance, u: 0 };
      const own = withoutMachine({ value: compliance, u: 0 }, machine);
      assertClose(own.value + machine.value, compliance, { relative: 1e-14 });
      assertClose(own.machineShare, share, { relative: 1e-12, absolute: 1e-15 });
    }),
    RUNS,
  );
});

Deno.test("measured and predicted changed over: the same distance, the other way", () => {
  fc.assert(
    fc.property(number(1, 9), number(1, 9), number(0.01, 1), (a, b, u) => {
      const there = besidePrediction({ value: a, u }, { value: b, u: 2 * u });
      const back = besidePrediction({ value: b, u: 2 * u }, { value: a, u });
      assertClose(there.z, -back.z, { relative: 1e-12, absolute: 1e-14 });
      assertEquals(there.verdict, back.verdict);
    }),
    RUNS,
  );
});

Deno.test("a loop walked along one line loses nothing, one that lags loses", () => {
  fc.assert(
    fc.property(number(0.01, 0.2), number(1e-5, 1e-3), (lag, slope) => {
      const load = [0, 1, 2, 3, 4, 3, 2, 1, 0];
      const path = (share: number) =>
        hysteresis({
          load,
          deflection: load.map((P, i) => slope * (P + (i > 4 ? share * P * (4 - P) : 0))),
        }, 4);
      assertClose(path(0).energyLost, 0, { absolute: 1e-15 });
      assert(path(lag).energyLost > 0);
    }),
    RUNS,
  );
});

Deno.test("pairs of stiffness map to moduli one to one, and a note gives back its rigidity", () => {
  fc.assert(
    fc.property(beams, number(0.2, 2), number(0.05, 5), (section, length, mass) => {
      const shearStiffness = section.shearStiffness as number;
      const { beam, faceE, coreG } = sectionModuli(section);
      const { flexuralRigidity } = section;
      const [pair] = moduliOfPairs([{ flexuralRigidity, shearStiffness }], beam);
      assertClose([pair!.faceE, pair!.coreG], [faceE, coreG], { relative: 1e-8 });
      for (const support of ["free", "simple"] as const) {
        const strip = { length, mass, support };
        const note = stripFrequency(strip, section);
        // Where shear leads, the note hardly knows the rigidity: its digits go with that share.
        const stiff = stripFrequency(strip, { ...section, shearStiffness: "rigid" });
        const relative = 1e-12 * (stiff / note) ** 4;
        assertClose(rigidityFromNote(strip, note, shearStiffness), flexuralRigidity, { relative });
      }
    }),
    RUNS,
  );
});
