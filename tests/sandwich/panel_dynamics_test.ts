import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import {
  allEdges,
  compareTap,
  isotropicPanel,
  navierPanel,
  type Panel,
  panelBuckling,
  panelField,
  panelFrequencies,
  plyStresses,
  solvePanel,
} from "../../lib/sandwich/mod.ts";
import { assertClose } from "../close.ts";
import { sandwich } from "./_panels.ts";

const panel: Panel = {
  length: 0.6,
  width: 0.4,
  stiffness: sandwich,
  edges: allEdges("simple"),
  loads: [{ kind: "uniform", pressure: Math.PI ** 2 / 16 }],
};

/** Deflection for a sine pressure of 1 with m and n waves, from a panel of one wave cut out. */
function softness(m: number, n: number, whole = panel): number {
  const cut = { ...whole, length: 0.6 / m, width: 0.4 / n };
  return navierPanel(cut, 1).at(0.3 / m, 0.2 / n).deflection;
}

Deno.test("simply supported: (2πf)² m = stiffness of the wave", () => {
  const expected = [[1, 1], [2, 1], [1, 2], [3, 1], [2, 2], [3, 2]]
    .map(([m = 1, n = 1]) => Math.sqrt(1 / softness(m, n) / 4) / (2 * Math.PI))
    .sort((a, b) => a - b);
  const found = panelFrequencies(panel, { count: 4, degree: 14 });
  assertClose(found.map(({ frequency }) => frequency), expected.slice(0, 4), { relative: 1e-5 });
  assertClose(found[0]!.shape(0.15, 0.1), Math.SQRT1_2 ** 2, { absolute: 1e-4 });
});

Deno.test("simply supported: buckling at stiffness of the wave over α²", () => {
  const alpha = Math.PI / 0.6;
  const stiff = { ...panel, stiffness: { ...sandwich, shear: { S44: 6e5, S45: 0, S55: 6.5e5 } } };
  const expected = Math.min(
    ...[1, 2, 3].map((m) => 1 / softness(m, 1, stiff) / (m * alpha) ** 2),
  );
  const { factor } = panelBuckling(stiff, { Nx: 1, Ny: 0, Nxy: 0 }, 14);
  assertClose(factor, expected, { relative: 1e-6 });
});

Deno.test("no compression above the shear stiffness: crimping", () => {
  // Short waves cost shear only: the load falls to S55 from above as the degree rises.
  const { factor } = panelBuckling(panel, { Nx: 1, Ny: 0, Nxy: 0 }, 14);
  assertClose(factor, 6.5e4, { relative: 3e-3 });
  assert(factor > 6.5e4);
});

Deno.test("shear of either sign buckles at the same load", () => {
  const plus = panelBuckling(panel, { Nx: 0, Ny: 0, Nxy: 1 }).factor;
  const minus = panelBuckling(panel, { Nx: 0, Ny: 0, Nxy: -1 }).factor;
  assertClose(minus, plus, { relative: 1e-9 });
});

Deno.test("a free panel rings without its movements as a whole", () => {
  // Square, free all round, ν 0.3, ω a² √(ρh/D) = 13.468, 19.596, 24.270: A. W. Leissa, J. Sound
  // Vib. 31 (1973) 257 has them 1 % high (13.489, 19.789, 24.432), later series agree on these;
  // from memory.
  const stiffness = isotropicPanel({ E: 10.92, nu: 0.3, thickness: 1, density: 1 }, "rigid");
  const free = { length: 1, width: 1, stiffness, edges: allEdges("free"), loads: [] };
  const found = panelFrequencies(free, { count: 3 }).map((mode) => 2 * Math.PI * mode.frequency);
  assertClose(found, [13.468, 19.596, 24.27], { relative: 1e-4 });
});

Deno.test("springs at points raise the frequency, a slack stay does not", () => {
  const mount = {
    name: "stay",
    x: 0.3,
    y: 0.2,
    stiffness: 1e5,
    oneWay: true,
    side: "far",
    preload: 0,
  } as const;
  const first = (supports: Panel["supports"] & object): number =>
    panelFrequencies({ ...panel, supports }, { count: 1 })[0]!.frequency;
  const alone = first([]);
  assertEquals(first([mount]), alone);
  assert(first([{ ...mount, preload: 50 }]) > 1.1 * alone);
});

Deno.test("a tap test says how stiff the panel is", () => {
  const tap = compareTap(
    { frequency: 90, uncertainty: 0.9, mass: 1.1 },
    { frequency: 100, mass: 1 },
  );
  assertClose(tap.frequencyRatio, 0.9, { relative: 1e-15 });
  assertClose(tap.stiffnessRatio, 0.81 * 1.1, { relative: 1e-15 });
  assertClose(tap.relativeUncertainty, 0.02, { relative: 1e-14 });
  assertEquals(tap.notes, [
    "The uncertainty leaves out that of: the measured mass, the predicted frequency, the predicted mass.",
  ]);
  // (2 × 1 %)² + 1 %² measured, (2 × 3 %)² + 2 %² predicted: 0.0004 + 0.0001 + 0.0036 + 0.0004.
  const whole = compareTap(
    { frequency: 90, uncertainty: 0.9, mass: 1.1, massUncertainty: 0.011 },
    { frequency: 100, uncertainty: 3, mass: 1, massUncertainty: 0.02 },
  );
  assertClose(whole.relativeUncertainty, Math.sqrt(0.0045), { relative: 1e-14 });
  assertEquals(whole.notes, []);
  assertThrows(
    () => compareTap({ frequency: 90, uncertainty: -1 }, { frequency: 100 }),
    InputError,
    "uncertainty of the measured frequency",
  );
  assertThrows(
    () => compareTap({ frequency: 90, uncertainty: 1, mass: 1 }, { frequency: 100 }),
    InputError,
    "must be given for both or neither",
  );
  assertThrows(
    () => compareTap({ frequency: 0, uncertainty: 1 }, { frequency: 100 }),
    InputError,
    "measured frequency is 0 Hz",
  );
});

Deno.test("a field finds the largest of each amount", () => {
  const field = panelField(solvePanel(panel), { x: 7, y: 5 });
  assertEquals(field.points.length, 35);
  assertClose(field.largest("deflection").x, 0.3, { relative: 1e-12 });
  assertClose([field.largest("Qx").x % 0.6, field.largest("Qx").y], [0, 0.2], { absolute: 1e-12 });
  assertEquals(field.values("Mx").length, 35);
  assertThrows(
    () => panelField(solvePanel(panel), { x: 1, y: 5 }),
    InputError,
    "places along x is 1",
  );
});

Deno.test("a sagging panel pulls on the side away from its load", () => {
  const lamina = {
    name: "sheet",
    E1: 70e9,
    E2: 70e9,
    G12: 26e9,
    nu12: 0.3,
    G13: 26e9,
    G23: 26e9,
    density: 2700,
    alpha1: 0,
    alpha2: 0,
  };
  const stack = [{ lamina, thickness: 0.002, angleDeg: 0 }];
  const moments = { Mx: 2, My: 0, Mxy: 0 };
  const bag = plyStresses(stack, moments, "bag")[0]!;
  assertClose(bag.bottom.stress.sigmaX, 6 * 2 / 0.002 ** 2, { relative: 1e-12 });
  const mould = plyStresses(stack, moments, "mould")[0]!;
  assertClose(mould.top.stress.sigmaX, 6 * 2 / 0.002 ** 2, { relative: 1e-12 });
  assertThrows(() => plyStresses(stack, moments, "left" as "bag"), InputError, "loaded side");
});

Deno.test("forces and panels without buckling or mass are refused", () => {
  assertThrows(
    () => panelBuckling(panel, { Nx: 0, Ny: 0, Nxy: 0 }),
    InputError,
    "must not all be 0",
  );
  assertThrows(
    () => panelBuckling(panel, { Nx: -1, Ny: -1, Nxy: 0 }),
    InputError,
    "a panel that is only pulled stays flat",
  );
  assertThrows(
    () => panelFrequencies({ ...panel, stiffness: { ...sandwich, massPerArea: 0 } }),
    InputError,
    "mass per area is 0",
  );
});
