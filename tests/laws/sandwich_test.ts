import fc from "fast-check";
import {
  beamAlongSpan,
  beamLoadCases,
  type BeamMakeup,
  bendingStress,
  coreShearStress,
  deflectBeam,
  sandwichSection,
} from "../../lib/sandwich/mod.ts";
import { assertClose } from "../close.ts";

const runs = { seed: 20261125, numRuns: 300 };
const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true });
const face = fc.record({ thickness: between(2e-4, 5e-3), E: between(5e9, 150e9) });
const makeup: fc.Arbitrary<BeamMakeup> = fc.record({
  width: between(0.02, 0.5),
  topFace: face,
  bottomFace: face,
  core: fc.record({
    thickness: between(2e-3, 5e-2),
    E: between(0, 3e8),
    G: between(5e6, 1e8),
  }),
});
const turned = (m: BeamMakeup): BeamMakeup => ({
  ...m,
  topFace: m.bottomFace,
  bottomFace: m.topFace,
});
const loadCase = fc.constantFrom(...Object.values(beamLoadCases));

Deno.test("a beam turned over is as stiff, and its neutral axis mirrored", () => {
  fc.assert(
    fc.property(makeup, (m) => {
      const section = sandwichSection(m);
      const other = sandwichSection(turned(m));
      const size = section.centroidDistance;
      assertClose(other.flexuralRigidity, section.flexuralRigidity, { relative: 1e-12 });
      assertClose(other.neutralAxis, -section.neutralAxis, { absolute: 1e-12 * size });
    }),
    runs,
  );
});

Deno.test("the stresses of a section carry no force and the whole moment", () => {
  fc.assert(
    fc.property(makeup, between(-500, 500), (m, moment) => {
      const section = sandwichSection(m);
      let force = 0;
      let lever = 0;
      let magnitude = 0;
      for (const { layer, bottom, top } of bendingStress(section, moment).layers) {
        // Linear stress over the layer: mean times thickness, and Simpson for the lever.
        const middle = (layer.bottom + layer.top) / 2;
        force += layer.thickness * (bottom + top) / 2;
        magnitude += layer.thickness * (Math.abs(bottom) + Math.abs(top));
        lever += layer.thickness *
          (layer.bottom * bottom + 2 * middle * (bottom + top) + layer.top * top) / 6;
      }
      assertClose(force, 0, { absolute: 1e-11 * magnitude + 1e-9 });
      assertClose(-lever * m.width, moment, { relative: 1e-10, absolute: 1e-12 });
    }),
    runs,
  );
});

Deno.test("with both faces alike, core shear integrates to the shear force", () => {
  fc.assert(
    fc.property(makeup, between(1, 5000), (m, force) => {
      // The shear flow over the whole depth is the force; faces carry what the core does not.
      const section = sandwichSection({ ...m, topFace: m.bottomFace });
      const shear = coreShearStress(section, force);
      const c = section.coreThickness;
      const t = section.topThickness;
      // Parabolas: exact by Simpson in the core; in a face from the interface to zero outside.
      const inCore = c * (shear.bottomInterface + 4 * shear.max + shear.topInterface) / 6;
      const E = m.bottomFace.E;
      const V = force / section.flexuralRigidity;
      const atFaceMiddle = V * E * (t / 2) * (c / 2 + 3 * t / 4);
      const inFaces = 2 * t * (shear.topInterface + 4 * atFaceMiddle) / 6;
      assertClose((inCore + inFaces) * m.width, force, { relative: 1e-10 });
    }),
    runs,
  );
});

Deno.test("thin faces on a weak core reach the thin-face forms", () => {
  fc.assert(
    fc.property(makeup, between(1, 100), (m, moment) => {
      const thin = (f: BeamMakeup["topFace"]): BeamMakeup["topFace"] => ({
        ...f,
        thickness: f.thickness * 1e-9,
      });
      const section = sandwichSection({
        ...m,
        topFace: thin(m.topFace),
        bottomFace: thin(m.bottomFace),
        core: { ...m.core, E: 0 },
      });
      assertClose(section.flexuralRigidity, section.thinFaceRigidity, { relative: 1e-9 });
      const { topFace, bottomFace } = bendingStress(section, moment);
      assertClose(topFace.outer, topFace.thin, { relative: 1e-4 });
      assertClose(bottomFace.centroid, bottomFace.thin, { relative: 1e-9 });
      const shear = coreShearStress(section, moment);
      assertClose(shear.max, shear.simple, { relative: 1e-4 });
    }),
    runs,
  );
});

Deno.test("as the core goes to nothing, the section goes to the solid bar", () => {
  fc.assert(
    fc.property(makeup, (m) => {
      const none = sandwichSection({ ...m, core: { ...m.core, thickness: 0 } });
      const little = sandwichSection({ ...m, core: { ...m.core, thickness: 1e-9 } });
      assertClose(little.flexuralRigidity, none.flexuralRigidity, { relative: 1e-4 });
    }),
    runs,
  );
});

Deno.test("deflection is linear in the load, and doubling the span multiplies by 8 and by 2", () => {
  const beam = fc.record({
    totalLoad: between(1e-3, 1000),
    span: between(0.1, 3),
    flexuralRigidity: between(1, 1e5),
    shearStiffness: between(100, 1e6),
  });
  fc.assert(
    fc.property(loadCase, beam, (c, b) => {
      const one = deflectBeam(c, b);
      const two = deflectBeam(c, { ...b, span: 2 * b.span });
      const more = deflectBeam(c, { ...b, totalLoad: 3 * b.totalLoad });
      assertClose(two.bending, 8 * one.bending, { relative: 1e-12 });
      assertClose(two.shear, 2 * one.shear, { relative: 1e-12 });
      assertClose(more.total, 3 * one.total, { relative: 1e-12 });
    }),
    runs,
  );
});

Deno.test("curvature is moment over D, and the slope by shear is shear force over S", () => {
  fc.assert(
    fc.property(loadCase, between(0.06, 0.94), (c, x) => {
      const kinks = [(1 - c.loadSpanFraction) / 2, (1 + c.loadSpanFraction) / 2];
      fc.pre(c.load === "uniform" || kinks.every((kink) => Math.abs(kink - x) > 0.011));
      const unit = { totalLoad: 1, span: 1, flexuralRigidity: 1, shearStiffness: 1 };
      const h = 0.01;
      const [a, b, d] = beamAlongSpan(c, unit, [x - h, x, x + h]);
      // Fourth derivatives are at most 1 here: the differences are exact to h²/12 and h²/6.
      const curvature = (a!.bending - 2 * b!.bending + d!.bending) / (h * h);
      assertClose(curvature, -b!.moment, { absolute: 1e-5 });
      assertClose((d!.shear - a!.shear) / (2 * h), b!.shearForce, { absolute: 1e-10 });
      assertClose((d!.moment - a!.moment) / (2 * h), b!.shearForce, { absolute: 1e-10 });
    }),
    runs,
  );
});
