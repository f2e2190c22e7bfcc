import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import {
  allEdges,
  levyPanel,
  type LineBeam,
  navierPanel,
  type Panel,
  panelBuckling,
  panelFrequencies,
  type PanelLoad,
  type PanelStiffness,
  ritzPanel,
  solvePanel,
} from "../../lib/sandwich/mod.ts";
import { assertClose } from "../close.ts";
import { sandwich } from "./_panels.ts";

const openSides: Panel["edges"] = { x0: "simple", x1: "simple", y0: "free", y1: "free" };
const heel: PanelLoad = {
  kind: "patch",
  force: 800,
  x: 0.2,
  y: 0.15,
  lengthX: 0.08,
  lengthY: 0.06,
};
const uniform: PanelLoad = { kind: "uniform", pressure: 1e4 };
const beam = (at: number, bending: number, shear: number): LineBeam => ({
  name: `beam at ${at}`,
  along: "x",
  at,
  bending,
  shear,
  massPerLength: 0,
});
const panel = (beams: readonly LineBeam[], change: Partial<Panel> = {}): Panel => ({
  length: 0.6,
  width: 0.4,
  stiffness: sandwich,
  edges: openSides,
  loads: [heel],
  beams,
  ...change,
});

// Deflections in mm at (0.2, 0.15) under the heel, (0.3, 0.2), (0.3, 0), (0.45, 0.4), by a program
// of its own in Python: the same energy in sines along x (400 waves) and Legendre polynomials of
// degree 39 across, solved wave by wave.
const PLACES = [[0.2, 0.15], [0.3, 0.2], [0.3, 0], [0.45, 0.4]] as const;
const CASES: readonly (readonly [string, readonly LineBeam[], readonly number[]])[] = [
  ["at the edges", [beam(0, 300, 1.5e4), beam(0.4, 300, 1.5e4)], [
    7.6514,
    4.77561,
    3.84068,
    1.5006,
  ]],
  ["in the middle", [beam(0.2, 400, 2e4)], [7.19766, 4.3362, 6.07299, 1.67455]],
  ["three, unevenly", [beam(0.05, 200, 1e4), beam(0.13, 400, 2e4), beam(0.4, 300, 1.5e4)], [
    4.98331,
    3.41181,
    3.29445,
    1.06112,
  ]],
];

for (const [where, beams, expected] of CASES) {
  Deno.test(`beams ${where} hold the panel as sines along and polynomials across say`, () => {
    const { at } = ritzPanel(panel(beams), 18);
    PLACES.forEach(([x, y], i) => {
      // Right under the heel, on a core soft in shear, polynomials smooth patch and beam.
      const relative = i === 0 ? 2.5e-2 : 4e-3;
      assertClose(at(x, y).deflection * 1e3, expected[i]!, { relative }, `at ${x}, ${y}`);
    });
  });
}

Deno.test("the error falls with the degree", () => {
  const [, beams, expected] = CASES[0]!;
  const error = (degree: number): number =>
    Math.abs(ritzPanel(panel(beams), degree).at(0.3, 0.2).deflection * 1e3 / expected[1]! - 1);
  assert(error(8) > error(14) && error(14) > error(20));
  assert(error(20) < 1e-3);
});

Deno.test("beams along y are those along x of the panel swapped", () => {
  const [, beams] = CASES[2]!;
  const own = ritzPanel(panel(beams)).at(0.3, 0.2);
  const swapped = ritzPanel({
    length: 0.4,
    width: 0.6,
    stiffness: { ...sandwich, D11: 1.6e3, D22: 2e3, shear: { S44: 6.5e4, S45: 0, S55: 6e4 } },
    edges: { x0: "free", x1: "free", y0: "simple", y1: "simple" },
    loads: [{ ...heel, x: 0.15, y: 0.2, lengthX: 0.06, lengthY: 0.08 }],
    beams: beams.map((one) => ({ ...one, along: "y" as const })),
  }).at(0.2, 0.3);
  assertClose(
    [swapped.deflection, swapped.Mx, swapped.Qy],
    [own.deflection, own.My, own.Qx],
    { relative: 1e-9 },
  );
});

Deno.test("a beam that adds nothing leaves the plain panel, and no beam is sine waves again", () => {
  const plain = levyPanel(panel([])).at(0.3, 0.2).deflection;
  const weak = ritzPanel(panel([beam(0.2, 1e-9, 0)])).at(0.3, 0.2).deflection;
  assertClose(weak, ritzPanel(panel([])).at(0.3, 0.2).deflection, { relative: 1e-9 });
  // Polynomials of degree 12 smooth the patch.
  assertClose(weak, plain, { relative: 2e-3 });
  assertEquals(solvePanel(panel([])).method, "series");
  const stiffened = solvePanel(panel([beam(0.2, 400, 2e4)]));
  assertEquals(stiffened.method, "polynomials");
  assert(stiffened.notes.some((note) => note.includes("what the beam bears is not in them")));
});

Deno.test("a beam far stiffer than the panel carries a load along it like a beam alone", () => {
  // Simple ends, q over L: w = 5 q L⁴/(384 E I) + q L²/(8 G A), any text on strength of materials.
  const [EI, GA, q] = [1e6, 2e7, 5e3];
  const rail: PanelLoad = { kind: "line", along: "x", force: 0.6 * q, at: 0.2, from: 0, to: 0.6 };
  const { at } = ritzPanel(panel([beam(0.2, EI, GA)], { loads: [rail] }));
  const expected = 5 * q * 0.6 ** 4 / (384 * EI) + q * 0.6 ** 2 / (8 * GA);
  assertClose(at(0.3, 0.2).deflection, expected, { relative: 2e-3 });
});

Deno.test("rigid beams at the edges make simple supports of them", () => {
  const beams = [beam(0, 1e10, 1e11), beam(0.4, 1e10, 1e11)];
  const held = ritzPanel(panel(beams, { loads: [uniform] }), 14);
  const simple = levyPanel(panel([], { loads: [uniform], edges: allEdges("simple") }));
  assertClose(held.at(0.3, 0.2).deflection, simple.at(0.3, 0.2).deflection, { relative: 1e-4 });
  assertClose(held.at(0.1, 0.3).My, simple.at(0.1, 0.3).My, { relative: 1e-3 });
});

Deno.test("a rigid beam in the middle leaves two half panels held there", () => {
  const rigid = [beam(0.2, 1e10, 1e11)];
  const thin: PanelStiffness = { ...sandwich, shear: "rigid" };
  const half = (y1: "clamped" | "simple", stiffness: PanelStiffness, load: PanelLoad): number =>
    levyPanel({
      length: 0.6,
      width: 0.2,
      stiffness,
      edges: { ...openSides, y1 },
      loads: [load],
    }).at(0.3, 0.05).deflection;
  const whole = (stiffness: PanelStiffness, load: PanelLoad, degree: number) => {
    const { at, change } = ritzPanel(panel(rigid, { loads: [load], stiffness }), degree);
    return { deflection: at(0.3, 0.05).deflection, change };
  };
  // Alike on both sides the panel cannot turn over the beam; of opposite sign it turns freely.
  const even = half("clamped", thin, uniform);
  assertClose(whole(thin, uniform, 16).deflection, even, { relative: 2e-3 });
  const odd = half("simple", thin, { kind: "linear", along: "y", atStart: 1e4, atEnd: 0 });
  const pair: PanelLoad = { kind: "linear", along: "y", atStart: 1e4, atEnd: -1e4 };
  assertClose(whole(thin, pair, 16).deflection, odd, { relative: 2e-3 });
  // With a core soft in shear the panel bends sharply at the beam: polynomials get there slowly,
  // from the stiff side, and their change says so: the error is some five times of it.
  const soft = half("clamped", sandwich, uniform);
  for (const degree of [10, 16, 22]) {
    const { deflection, change } = whole(sandwich, uniform, degree);
    assert(deflection < soft && 1 - deflection / soft < 7 * change);
  }
});

Deno.test("many beams are a panel that is stiffer along", () => {
  const [EI, GA, mass] = [30, 1e3, 0.1];
  const count = 10;
  const pitch = 0.4 / count;
  const beams = Array.from(
    { length: count },
    (_, i) => ({ ...beam((i + 0.5) * pitch, EI, GA), massPerLength: mass }),
  );
  const spread: PanelStiffness = {
    ...sandwich,
    D11: 2e3 + EI / pitch,
    shear: { S44: 6e4, S45: 0, S55: 6.5e4 + GA / pitch },
    massPerArea: 4 + mass / pitch,
  };
  const wide: PanelLoad = { ...heel, lengthX: 0.2, lengthY: 0.2 };
  const single = ritzPanel(panel(beams, { loads: [wide] })).at(0.2, 0.15).deflection;
  const smooth = levyPanel(panel([], { loads: [wide], stiffness: spread })).at(0.2, 0.15);
  assertClose(single, smooth.deflection, { relative: 3e-3 });
  const tone = (p: Panel): number => panelFrequencies(p, { count: 1, degree: 10 })[0]!.frequency;
  const together = tone(panel(beams));
  assertClose(together, tone(panel([], { stiffness: spread })), { relative: 3e-3 });
  const massless = tone(panel(beams.map((one) => ({ ...one, massPerLength: 0 }))));
  assert(massless > 1.2 * together);
});

Deno.test("beams that cannot be meant are refused, and by methods that do not know them", () => {
  const good = beam(0.2, 400, 2e4);
  const wrongs: readonly (readonly [unknown, string])[] = [
    ["none", "beams"],
    [[undefined], "beam 1 is missing"],
    [[{ ...good, name: "" }], "name of beam 1"],
    [[{ ...good, along: "z" }], 'direction of beam "beam at 0.2" is "z"'],
    [[{ ...good, at: 0.5 }], "place of beam"],
    [[{ ...good, along: "y", at: 0.7 }], "place of beam"],
    [[{ ...good, bending: 0 }], "flexural rigidity of beam"],
    [[{ ...good, shear: -1 }], "shear stiffness of beam"],
    [[{ ...good, massPerLength: NaN }], "mass of beam"],
  ];
  for (const [beams, message] of wrongs) {
    for (const solve of [levyPanel, ritzPanel, solvePanel, panelFrequencies]) {
      const run = (): unknown => (solve as (p: Panel) => unknown)(panel(beams as LineBeam[]));
      assertThrows(run, InputError, message);
    }
  }
  const simple = panel([good], { edges: allEdges("simple") });
  assertThrows(() => levyPanel(simple), InputError, "must be none: use ritzPanel");
  assertThrows(() => navierPanel(simple), InputError, "must be none: use ritzPanel");
  const push = { Nx: 1, Ny: 0, Nxy: 0 };
  assertThrows(() => panelBuckling(simple, push), InputError, "share of the forces");
});
