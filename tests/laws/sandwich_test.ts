import fc from "fast-check";
import {
  allEdges,
  beamAlongSpan,
  beamLoadCases,
  type BeamMakeup,
  bendingStress,
  coreShearStress,
  deflectBeam,
  type EdgeSupport,
  levyPanel,
  type LineBeam,
  navierPanel,
  type PanelLoad,
  type PanelStiffness,
  type PointSupport,
  ritzPanel,
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

const edge: fc.Arbitrary<EdgeSupport> = fc.oneof(
  fc.constantFrom<EdgeSupport>("simple", "clamped", "free"),
  fc.record({ deflectionStiffness: between(1e3, 1e7), rotationStiffness: between(0, 1e5) }),
);
const load: fc.Arbitrary<PanelLoad> = fc.oneof(
  fc.record({ kind: fc.constant("uniform" as const), pressure: between(100, 5e3) }),
  fc.record({
    kind: fc.constant("linear" as const),
    along: fc.constantFrom("x" as const, "y" as const),
    atStart: between(-5e3, -100),
    atEnd: between(100, 5e3),
  }),
  fc.record({
    kind: fc.constant("patch" as const),
    force: between(10, 1000),
    x: between(0.1, 0.5),
    y: between(0.1, 0.3),
    lengthX: between(0.01, 0.19),
    lengthY: between(0.01, 0.19),
  }),
);
const support: fc.Arbitrary<PointSupport> = fc.record({
  name: fc.constant("mount"),
  x: between(0.03, 0.57),
  y: between(0.03, 0.37),
  stiffness: between(1e3, 1e7),
  oneWay: fc.boolean(),
  side: fc.constantFrom("far" as const, "near" as const),
  preload: fc.oneof(fc.constant(0), between(1, 200)),
  padX: between(0, 0.05),
  padY: between(0, 0.05),
});
const beam: fc.Arbitrary<LineBeam> = fc.record({
  name: fc.constant("beam"),
  along: fc.constantFrom("x", "y"),
  at: between(0, 0.4),
  bending: between(1, 1e3),
  shear: fc.oneof(fc.constant(0), between(1e3, 1e5)),
  massPerLength: fc.constant(0.1),
});
const stiffness: fc.Arbitrary<PanelStiffness> = fc.record({
  D11: between(500, 5e3),
  D12: between(-100, 300),
  D16: between(-150, 150),
  D22: between(500, 5e3),
  D26: between(-150, 150),
  D66: between(200, 1e3),
  shear: fc.record({ S44: between(2e4, 1e6), S45: between(-1e4, 1e4), S55: between(2e4, 1e6) }),
  massPerArea: fc.constant(4),
  notes: fc.constant([]),
});

Deno.test("reactions of any panel balance its loads, in force and in both moments, to 1e-9", () => {
  const arbitrary = fc.record({
    // One corner mount keeps every panel from flying off.
    edges: fc.record({
      x0: edge,
      x1: edge,
      y0: fc.constantFrom<EdgeSupport>("simple", "clamped"),
      y1: edge,
    }),
    loads: fc.array(load, { minLength: 1, maxLength: 3 }),
    supports: fc.array(support, { maxLength: 3 }),
    beams: fc.array(beam, { maxLength: 2 }),
    stiffness,
  });
  fc.assert(
    fc.property(arbitrary, (panel) => {
      const corner = { name: "corner", x: 0.6, y: 0.4, stiffness: 1e5, oneWay: false } as const;
      const { reactions } = ritzPanel({
        length: 0.6,
        width: 0.4,
        ...panel,
        supports: [...panel.supports, { ...corner, side: "far", preload: 0 }],
      }, 8);
      assertClose(reactions.imbalance, 0, { absolute: 1e-9 }, "force");
      assertClose(reactions.imbalanceX, 0, { absolute: 1e-9 }, "moment about x = 0");
      assertClose(reactions.imbalanceY, 0, { absolute: 1e-9 }, "moment about y = 0");
    }),
    { seed: 20261125, numRuns: 60 },
  );
});

Deno.test("work is exchanged evenly: a load at A moves B as the same load at B moves A", () => {
  fc.assert(
    fc.property(stiffness, edge, between(0.1, 0.5), between(0.1, 0.3), (s, free, x, y) => {
      const patch = (px: number, py: number): PanelLoad => ({
        kind: "patch",
        force: 100,
        x: px,
        y: py,
        lengthX: 1e-6,
        lengthY: 1e-6,
      });
      const panel = {
        length: 0.6,
        width: 0.4,
        stiffness: s,
        edges: { x0: "clamped", x1: free, y0: "simple", y1: free },
      } as const;
      const ab = ritzPanel({ ...panel, loads: [patch(x, y)] }, 8).at(0.35, 0.22).deflection;
      const ba = ritzPanel({ ...panel, loads: [patch(0.35, 0.22)] }, 8).at(x, y).deflection;
      assertClose(ba, ab, { relative: 1e-7, absolute: 1e-12 });
    }),
    { seed: 20261125, numRuns: 30 },
  );
});

/** Orthotropic plates from very soft to stiff shear, isotropic ones among them. */
const orthotropic: fc.Arbitrary<PanelStiffness> = fc.tuple(
  between(2, 4),
  fc.oneof(fc.constant(0), between(-1, 1)),
  between(-1.2, 0.2),
  between(-0.2, 0.7),
  between(0, 5),
  fc.oneof(fc.constant(0), between(-1, 1)),
).map(([d, ratio, twist, nu, s, sRatio]) => {
  const D11 = 10 ** d;
  const D22 = D11 * 10 ** ratio;
  const mean = Math.sqrt(D11 * D22);
  const isotropic = ratio === 0 && sRatio === 0;
  const S55 = D11 * 10 ** s;
  return {
    D11,
    D12: nu * mean,
    D16: 0,
    D22,
    D26: 0,
    D66: isotropic ? (1 - nu) / 2 * D11 : mean * 10 ** twist,
    shear: { S44: S55 * 10 ** sRatio, S45: 0, S55 },
    massPerArea: 1,
    notes: [],
  };
});
const patch = { kind: "patch", force: 100, x: 0.2, y: 0.1, lengthX: 0.06, lengthY: 0.08 } as const;

Deno.test("sine waves across agree with the double series for any orthotropic plate", () => {
  fc.assert(
    fc.property(orthotropic, (s) => {
      const panel = {
        length: 0.6,
        width: 0.4,
        stiffness: s,
        edges: allEdges("simple"),
        loads: [patch],
      };
      const a = levyPanel(panel).at(0.35, 0.22);
      const b = navierPanel(panel, 300).at(0.35, 0.22);
      // The double series' own tail at 300 terms.
      assertClose(b.deflection, a.deflection, { relative: 1e-4, absolute: 1e-6 * 100 / s.D11 });
      assertClose(b.Mx, a.Mx, { absolute: 0.02 });
      assertClose(b.My, a.My, { absolute: 0.02 });
      assertClose(b.Mxy, a.Mxy, { absolute: 0.02 });
    }),
    { seed: 20261125, numRuns: 80 },
  );
});

Deno.test("polynomials agree with sine waves across within what their change says", () => {
  fc.assert(
    fc.property(orthotropic, edge, edge, (s, y0, y1) => {
      const panel = {
        length: 0.6,
        width: 0.4,
        stiffness: s,
        edges: { x0: "simple", x1: "simple", y0, y1 },
        loads: [{ kind: "uniform", pressure: 1000 }],
      } as const;
      const a = levyPanel(panel).at(0.25, 0.17).deflection;
      const { at, change } = ritzPanel(panel, 10);
      assertClose(at(0.25, 0.17).deflection, a, { relative: 1e-5 + 20 * change });
    }),
    { seed: 20261125, numRuns: 80 },
  );
});
