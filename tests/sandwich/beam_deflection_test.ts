import { assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import {
  beamAlongSpan,
  beamCompliance,
  type BeamLoadCase,
  beamLoadCases,
  type BeamLoading,
  deflectBeam,
  fourPoint,
} from "../../lib/sandwich/mod.ts";
import { assertClose } from "../close.ts";

const beam: BeamLoading = {
  totalLoad: 310,
  span: 0.73,
  flexuralRigidity: 190,
  shearStiffness: 21000,
};
const { totalLoad: P, span: L, flexuralRigidity: D } = beam;
const S = 21000;

/** Five-point Gauss–Legendre over pieces: exact for the polynomials of these diagrams. */
function integral(f: (x: number) => number, breaks: readonly number[]): number {
  const nodes = [0, 0.5384693101056831, 0.9061798459386640];
  const weights = [0.5688888888888889, 0.4786286704993665, 0.2369268850561891];
  let sum = 0;
  for (let i = 0; i + 1 < breaks.length; i++) {
    const half = (breaks[i + 1]! - breaks[i]!) / 2;
    const middle = (breaks[i + 1]! + breaks[i]!) / 2;
    nodes.forEach((node, k) => {
      const both = k === 0 ? f(middle) : f(middle + half * node) + f(middle - half * node);
      sum += weights[k]! * half * both;
    });
  }
  return sum;
}

type Diagram = (x: number) => { readonly M: number; readonly V: number };

/** Statics of simple supports under any point loads and an even load q. */
function simple(points: readonly (readonly [number, number])[], q: number): Diagram {
  const left = points.reduce((sum, [at, force]) => sum + force * (L - at) / L, q * L / 2);
  return (x) => {
    let M = left * x - q * x * x / 2;
    let V = left - q * x;
    for (const [at, force] of points) {
      if (x > at) {
        M -= force * (x - at);
        V -= force;
      }
    }
    return { M, V };
  };
}

/** Statics of a cantilever fixed at 0: what hangs beyond x. */
function cantilever(points: readonly (readonly [number, number])[], q: number): Diagram {
  return (x) => {
    let M = -q * (L - x) ** 2 / 2;
    let V = q * (L - x);
    for (const [at, force] of points) {
      if (x < at) {
        M -= force * (at - x);
        V += force;
      }
    }
    return { M, V };
  };
}

/** The unit-load theorem: δ = ∫ M m/D + V v/S dx. */
function unitLoad(load: Diagram, unit: Diagram, breaks: readonly number[]): readonly number[] {
  return [
    integral((x) => load(x).M * unit(x).M / D, breaks),
    integral((x) => load(x).V * unit(x).V / S, breaks),
  ];
}

interface Independent {
  readonly at: (x: number) => readonly number[];
  readonly diagram: Diagram;
}

function statics(loadCase: BeamLoadCase): Independent {
  const a = (1 - loadCase.loadSpanFraction) / 2 * L;
  const q = loadCase.load === "uniform" ? P / L : 0;
  const breaks = (x: number): readonly number[] => [0, a, L - a, L, x].sort((p, r) => p - r);
  if (loadCase.supports === "cantilever") {
    const diagram = cantilever(q === 0 ? [[L, P]] : [], q);
    return { diagram, at: (x) => unitLoad(diagram, cantilever([[x, 1]], 0), breaks(x)) };
  }
  const free = simple(q === 0 ? [[a, P / 2], [L - a, P / 2]] : [], q);
  // The end moments of a built-in beam take back the slope that simple supports would allow.
  const endMoment = loadCase.supports === "builtIn" ? -integral((x) => free(x).M, [0, L]) / L : 0;
  const diagram: Diagram = (x) => ({ M: free(x).M + endMoment, V: free(x).V });
  return { diagram, at: (x) => unitLoad(diagram, simple([[x, 1]], 0), breaks(x)) };
}

const cases = { ...beamLoadCases, narrow: fourPoint(0.21), wide: fourPoint(0.8) };

for (const [name, loadCase] of Object.entries(cases)) {
  Deno.test(`${name}: the closed forms agree with numerical integration`, () => {
    const { at, diagram } = statics(loadCase);
    const positions = [0.013, 0.14, 0.2, 0.3, 0.365, 0.41, 0.6, 0.72];
    for (const station of beamAlongSpan(loadCase, beam, positions)) {
      const [bending, shear] = at(station.position);
      assertClose(station.bending, bending!, { relative: 1e-12 }, "bending");
      assertClose(station.shear, shear!, { relative: 1e-12 }, "shear");
      const { M, V } = diagram(station.position);
      assertClose(station.moment, M, { relative: 1e-12, absolute: 1e-12 }, "moment");
      assertClose(station.shearForce, V, { relative: 1e-12, absolute: 1e-10 }, "shear force");
    }
  });

  Deno.test(`${name}: the coefficients agree with the curve along the span`, () => {
    const deflection = deflectBeam(loadCase, beam);
    const a = (1 - loadCase.loadSpanFraction) / 2 * L;
    const tip = loadCase.supports === "cantilever";
    const [reported, underLoad] = beamAlongSpan(loadCase, beam, [tip ? L : L / 2, tip ? L : a]);
    assertClose(deflection.bending, reported!.bending, { relative: 1e-13 });
    assertClose(deflection.shear, reported!.shear, { relative: 1e-13 });
    assertClose(deflection.total, deflection.bending + deflection.shear, { relative: 1e-15 });
    assertClose(deflection.atLoad.bending, underLoad!.bending, { relative: 1e-13 });
    assertClose(deflection.atLoad.shear, underLoad!.shear, { relative: 1e-13 });
    assertClose(beamCompliance(loadCase, beam).total * P, deflection.total, { relative: 1e-13 });
  });

  Deno.test(`${name}: the largest moment and shear force are those of the diagram`, () => {
    const positions = Array.from({ length: 1001 }, (_, i) => i / 1000 * L);
    const stations = beamAlongSpan(loadCase, beam, positions);
    const moment = stations.reduce((m, s) => Math.abs(s.moment) > Math.abs(m) ? s.moment : m, 0);
    const shear = stations.reduce((v, s) => Math.max(v, Math.abs(s.shearForce)), 0);
    assertClose(loadCase.moment * P * L, moment, { relative: 1e-12 });
    assertClose(loadCase.shearForce * P, shear, { relative: 1e-12 });
  });
}

Deno.test("a beam without a core bends and does not shear", () => {
  const deflection = deflectBeam(beamLoadCases.threePoint, { ...beam, shearStiffness: "rigid" });
  assertEquals(deflection.shear, 0);
  assertClose(deflection.total, P * L ** 3 / 48 / D, { relative: 1e-14 });
});

Deno.test("a span short for the thickness is noted where the thickness is known", () => {
  const notes = (loadCase: BeamLoadCase, share: number): number =>
    deflectBeam(loadCase, { ...beam, thickness: L / share }).notes.length;
  const { threePoint, cantileverTip } = beamLoadCases;
  assertEquals([notes(threePoint, 4.9), notes(threePoint, 5.1)], [1, 0]);
  assertEquals([notes(cantileverTip, 2.4), notes(cantileverTip, 2.6)], [1, 0]);
  assertEquals(deflectBeam(threePoint, beam).notes, []);
  assertThrows(
    () => deflectBeam(threePoint, { ...beam, thickness: 0 }),
    InputError,
    "thickness is 0",
  );
});

Deno.test("a result carries its inputs and its equation", () => {
  const deflection = deflectBeam(beamLoadCases.fourPointQuarter, beam);
  assertEquals(deflection.inputs, beam);
  assertEquals(deflection.equation, "11PL³/768D + PL/8S");
});

Deno.test("a beam that cannot be meant is refused", () => {
  const refused = (change: Partial<Record<keyof BeamLoading, unknown>>, message: string): void => {
    const loading = { ...beam, ...change } as BeamLoading;
    assertThrows(() => deflectBeam(beamLoadCases.threePoint, loading), InputError, message);
    assertThrows(() => beamAlongSpan(beamLoadCases.threePoint, loading, [0]), InputError, message);
  };
  refused({ span: 0 }, "span is 0 m, must be above 0");
  refused({ flexuralRigidity: -1 }, "flexural rigidity is -1 N·m², must be above 0");
  refused({ shearStiffness: Infinity }, "shear stiffness is Infinity N, must be a finite number");
  refused({ totalLoad: "20 kg" }, 'total load is "20 kg", must be a finite number');
  refused({ span: 1e200 }, "beyond the range of numbers");
});

Deno.test("a missing beam or load case, and a place off the span, are refused", () => {
  const none = undefined as unknown;
  assertThrows(() => deflectBeam(none as BeamLoadCase, beam), InputError, "load case is missing");
  assertThrows(
    () => beamCompliance(beamLoadCases.threePoint, none as BeamLoading),
    InputError,
    "beam is missing",
  );
  assertThrows(
    () => beamAlongSpan(beamLoadCases.threePoint, beam, [0, 0.74]),
    InputError,
    "position is 0.74 m, must be between 0 and 0.73 m",
  );
  assertThrows(() => fourPoint(1), InputError, "load span over support span is 1");
  const odd = { ...beamLoadCases.threePoint, supports: "builtIn", title: "odd" } as const;
  assertThrows(() => beamAlongSpan(odd, beam, [0]), InputError, 'load case is "odd"');
});
