import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import {
  beamLoadCases,
  couponModulus,
  couponStress,
  deflectBeam,
  rigidityFromHungWeight,
  rigidityFromNote,
  shearFromShortBeam,
  stripFrequency,
  type StripSupport,
  type TappedStrip,
} from "../../lib/sandwich/mod.ts";
import { propagate } from "../../lib/statistics/mod.ts";
import { assertClose } from "../close.ts";

const STRIP = { length: 0.65, mass: 0.103 } as const;
const [D, S] = [29, 22000];
const note = (support: StripSupport, shearStiffness: number | "rigid" = S): number =>
  stripFrequency({ ...STRIP, support }, { flexuralRigidity: D, shearStiffness });

/**
 * The strip's lowest note by cells that know nothing of the closed form: masses at nodes, each cell
 * bending and shearing; inverse iteration by integrating shear force, moment, slope and deflection,
 * of the free strip with its rigid motion taken out.
 */
function noteByElements(support: StripSupport, cells: number): number {
  const h = STRIP.length / cells;
  const mu = STRIP.mass / STRIP.length;
  const n = cells + 1;
  let w = Array.from(
    { length: n },
    (_, i) =>
      support === "simple"
        ? Math.sin(Math.PI * i / cells)
        : Math.cos(2 * Math.PI * (i / cells - 0.5)) + 0.2,
  );
  const massAt = (i: number): number => mu * h * (i === 0 || i === cells ? 0.5 : 1);
  let omega2 = 0;
  for (let round = 0; round < 60; round++) {
    if (support === "free") {
      const total = w.reduce((sum, _, i) => sum + massAt(i), 0);
      const mean = w.reduce((sum, value, i) => sum + massAt(i) * value, 0) / total;
      w = w.map((value) => value - mean);
    }
    const p = w.map((value, i) => massAt(i) * value);
    // Shear and moment from the loads p, from the left end: V at cells, M at nodes.
    const reaction = support === "simple" ? p.reduce((a, b) => a + b, 0) / 2 : 0;
    const V: number[] = [];
    const M: number[] = [0];
    let force = reaction;
    for (let i = 0; i < cells; i++) {
      force -= p[i]!;
      V.push(force);
      M.push(M[i]! + force * h);
    }
    // Slope of the section and deflection: θ' = −M/D, w' = θ + V/S, symmetric: θ = 0 in the middle.
    const middle = cells / 2;
    const theta = new Array<number>(n).fill(0);
    for (let i = middle; i < cells; i++) {
      theta[i + 1] = theta[i]! - (M[i]! + M[i + 1]!) / 2 * h / D;
    }
    const next = new Array<number>(n).fill(0);
    for (let i = middle; i < cells; i++) {
      next[i + 1] = next[i]! + ((theta[i]! + theta[i + 1]!) / 2 + V[i]! / S) * h;
    }
    for (let i = 0; i < middle; i++) next[i] = next[cells - i]!;
    const shift = support === "simple" ? next[0]! : 0;
    let moved = next.map((value) => value - shift);
    if (support === "free") {
      const total = w.reduce((sum, _, i) => sum + massAt(i), 0);
      const mean = moved.reduce((sum, value, i) => sum + massAt(i) * value, 0) / total;
      moved = moved.map((value) => value - mean);
    }
    const work = moved.reduce((sum, value, i) => sum + p[i]! * value, 0);
    const kinetic = moved.reduce((sum, value, i) => sum + massAt(i) * value * value, 0);
    omega2 = work / kinetic;
    const size = Math.sqrt(kinetic);
    w = moved.map((value) => value / size);
  }
  return Math.sqrt(omega2) / (2 * Math.PI);
}

Deno.test("the notes of a strip that shears are those of 800 cells", () => {
  for (const support of ["free", "simple"] as const) {
    const [coarse, fine] = [noteByElements(support, 400), noteByElements(support, 800)];
    // Errors fall as h²: one step of Richardson.
    assertClose(note(support), fine + (fine - coarse) / 3, { relative: 1e-7 }, support);
  }
});

Deno.test("shear only lowers a note, and without it the two forms meet", () => {
  for (const support of ["free", "simple"] as const) {
    assert(note(support) < note(support, "rigid"));
    assertClose(note(support, 1e15), note(support, "rigid"), { relative: 1e-9 });
    // Held by shear alone: ω = k √(S L/m) with k = π/L on supports, 2π/L free.
    const k = (support === "simple" ? 1 : 2) * Math.PI / STRIP.length;
    const limit = k * Math.sqrt(S * STRIP.length / STRIP.mass) / (2 * Math.PI);
    const stiff = stripFrequency({ ...STRIP, support }, {
      flexuralRigidity: 1e9,
      shearStiffness: S,
    });
    assertClose(stiff, limit, { relative: 1e-5 }, support);
  }
});

Deno.test("the note gives back the rigidity, and a note that shear forbids is refused", () => {
  for (const support of ["free", "simple"] as const) {
    const strip: TappedStrip = { ...STRIP, support };
    for (const shear of [S, 1e7, "rigid"] as const) {
      assertClose(rigidityFromNote(strip, note(support, shear), shear), D, { relative: 1e-9 });
    }
    assertThrows(
      () => rigidityFromNote(strip, 100 * note(support), S),
      InputError,
      "must be one that this shear stiffness allows",
    );
  }
});

Deno.test("one per cent of the note is two of the rigidity, one of the length three", () => {
  const { sensitivity, value } = propagate(
    ({ length, mass, frequency }) => rigidityFromNote({ length, mass, support: "free" }, frequency),
    {
      length: { value: 0.65, u: 1e-3 },
      mass: { value: 0.103, u: 1e-4 },
      frequency: { value: 100, u: 0.5 },
    },
  );
  assertClose(sensitivity.frequency * 100 / value, 2, { relative: 1e-8 });
  assertClose(sensitivity.length * 0.65 / value, 3, { relative: 1e-8 });
  assertClose(sensitivity.mass * 0.103 / value, 1, { relative: 1e-8 });
});

Deno.test("a hung weight at the tip is the cantilever's closed form, shear counted", () => {
  const { total } = deflectBeam(beamLoadCases.cantileverTip, {
    totalLoad: 5,
    span: 0.4,
    flexuralRigidity: D,
    shearStiffness: S,
  });
  const test = { load: 5, arm: 0.4, gaugeAt: 0.4, deflection: total };
  assertClose(rigidityFromHungWeight(test, S), D, { relative: 1e-12 });
});

Deno.test("load and gauge may change places: Maxwell's law", () => {
  const there = rigidityFromHungWeight({ load: 5, arm: 0.3, gaugeAt: 0.5, deflection: 1e-3 }, S);
  const back = rigidityFromHungWeight({ load: 5, arm: 0.5, gaugeAt: 0.3, deflection: 1e-3 }, S);
  assertClose(there, back, { relative: 1e-14 });
  // Beyond the load the strip is straight: 5 · 0.3² (3 · 0.5 − 0.3)/6 over what shear leaves.
  const bending = 1e-3 - 5 * 0.3 / S;
  assertClose(there, 5 * 0.09 * 1.2 / (6 * bending), { relative: 1e-13 });
});

Deno.test("a long span is remarked where the core's modulus is asked for", () => {
  const beam = { span: 0.8, width: 0.075, coreThickness: 0.02, faceThickness: 0.002 };
  const compliance = 0.8 ** 3 / (48 * 728) + 0.8 / (4 * 45375);
  const { notes, shearShare } = shearFromShortBeam(beam, compliance, 20e9);
  assertClose(shearShare, 0.8 / (4 * 45375) / compliance, { relative: 1e-11 });
  assert(notes[0]!.startsWith("Only 23 % of the deflection is shear"));
});

Deno.test("a large deflection in four-point bending is rough, and said to be", () => {
  const coupon = { span: 0.1, width: 0.01, thickness: 0.003, loadSpanFraction: 0.5 };
  const { stress, corrected, notes } = couponStress(coupon, 100, 0.012);
  assertEquals([corrected, notes.length], [stress, 1]);
  assertClose(stress, 3 * 100 * 0.1 / (4 * 0.01 * 0.003 ** 2), { relative: 1e-13 });
});

Deno.test("what cannot be meant is refused by name", () => {
  const strip = { ...STRIP, support: "free" } as const;
  const stiffness = { flexuralRigidity: D, shearStiffness: S };
  const refused = (f: () => unknown, message: string) => assertThrows(f, InputError, message);
  refused(() => stripFrequency({ ...strip, mass: 0 }, stiffness), "mass is 0 kg");
  refused(() => stripFrequency({ ...strip, support: "glued" as never }, stiffness), "support");
  refused(
    () => stripFrequency(strip, { ...stiffness, flexuralRigidity: NaN }),
    "flexural rigidity",
  );
  refused(() => rigidityFromNote(strip, -1), "frequency is -1 Hz");
  const test = { load: 5, arm: 0.3, gaugeAt: 0.5, deflection: 1e-5 };
  refused(() => rigidityFromHungWeight(test, S), "less that of shear");
  refused(() => rigidityFromHungWeight({ ...test, arm: 0 }), "arm is 0 m");
  refused(() => couponModulus({ span: 0, width: 1, thickness: 1 }, 1), "span is 0 m");
  const beam = { span: 0.2, width: 0.075, coreThickness: 0.02, faceThickness: 0.002 };
  refused(() => shearFromShortBeam(beam, 1e-8, 20e9), "less that of bending");
  refused(() => shearFromShortBeam(beam, NaN, 20e9), "compliance is NaN");
});
