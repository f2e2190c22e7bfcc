// A general-purpose solver beside our plates: CalculiX (Debian package calculix-ccx), bricks of 20
// nodes, so that plate theory itself is tested too. Tolerances: see each case.
import type { Lamina, Stack } from "../../lib/materials/mod.ts";
import {
  allEdges,
  isotropicPanel,
  levyPanel,
  type Panel,
  panelStiffness,
  ritzPanel,
} from "../../lib/sandwich/mod.ts";
import { assertClose } from "../close.ts";
import { type BrickLayer, hasCalculix, solveBricks } from "./_calculix.ts";

const ready = await hasCalculix();
if (!ready) {
  console.warn("ccx cannot be run: comparison with CalculiX skipped (Debian: calculix-ccx)");
}
const compare = (name: string, fn: () => Promise<void>): void =>
  Deno.test({ name: `CalculiX: ${name}`, ignore: !ready, fn });

/** Constants of an isotropic layer. */
const isotropic = (E: number, nu: number): readonly number[] => {
  const G = E / 2 / (1 + nu);
  return [E, E, E, nu, nu, nu, G, G, G];
};

// Bricks this size are 0.3 % too stiff: 18 a side gave 0.76, 36 gave 0.35 % off in the middle.
compare("a thick sheet, one edge clamped, two simple, one free", async () => {
  const sheet = { E: 12e9, nu: 0.3, thickness: 0.012, density: 1800 };
  const wanted = [[0.18, 0.12], [0.18, 0.24], [0.084, 0.18]] as const;
  const solid = await solveBricks({
    length: 0.36,
    width: 0.24,
    nx: 30,
    ny: 20,
    layers: [{ thickness: 0.012, bricks: 2, constants: isotropic(12e9, 0.3) }],
    held: { x0: [2, 3], x1: [2, 3], y0: [1, 2, 3] },
    pressure: () => 5000,
    wanted,
  });
  const panel: Panel = {
    length: 0.36,
    width: 0.24,
    stiffness: isotropicPanel(sheet),
    edges: { x0: "simple", x1: "simple", y0: "clamped", y1: "free" },
    loads: [{ kind: "uniform", pressure: 5000 }],
  };
  const series = levyPanel(panel);
  const polynomials = ritzPanel(panel);
  wanted.forEach(([x, y], i) => {
    assertClose(series.at(x, y).deflection, solid[i]!, { relative: 0.008 }, `series at ${x}, ${y}`);
    assertClose(polynomials.at(x, y).deflection, solid[i]!, { relative: 0.008 });
  });
});

const glass: Lamina = {
  name: "glass cloth",
  E1: 22e9,
  E2: 18e9,
  G12: 4e9,
  nu12: 0.15,
  G13: 3e9,
  G23: 3e9,
  density: 1800,
  alpha1: 0,
  alpha2: 0,
};
const honeycomb: Lamina = {
  name: "honeycomb",
  E1: 2e5,
  E2: 2e5,
  G12: 1e5,
  nu12: 0.1,
  G13: 40e6,
  G23: 20e6,
  density: 48,
  alpha1: 0,
  alpha2: 0,
};
const bricks = (lamina: Lamina, E3: number): readonly number[] => {
  const { E1, E2, G12, G13, G23, nu12 } = lamina;
  return [E1, E2, E3, nu12, 0, 0, G12, G13, G23];
};
const face: BrickLayer = { thickness: 0.001, bricks: 1, constants: bricks(glass, 8e9) };
const core: BrickLayer = { thickness: 0.015, bricks: 3, constants: bricks(honeycomb, 1.2e8) };
const stack: Stack = [
  { lamina: glass, thickness: 0.001, angleDeg: 0 },
  { lamina: honeycomb, thickness: 0.015, angleDeg: 0 },
  { lamina: glass, thickness: 0.001, angleDeg: 0 },
];
const sandwich = { layers: [face, core, face], stiffness: panelStiffness(stack) };

// Simple supports have no boundary layer: 0.07 % found.
compare("a honeycomb sandwich on four simple edges", async () => {
  // A quarter by symmetry.
  const solid = await solveBricks({
    length: 0.3,
    width: 0.2,
    nx: 15,
    ny: 10,
    layers: sandwich.layers,
    held: { x0: [2, 3], y0: [1, 3], x1: [1], y1: [2] },
    pressure: () => 4000,
    wanted: [[0.3, 0.2], [0.16, 0.1]],
  });
  const { at } = levyPanel({
    length: 0.6,
    width: 0.4,
    stiffness: sandwich.stiffness,
    edges: allEdges("simple"),
    loads: [{ kind: "uniform", pressure: 4000 }],
  });
  assertClose(at(0.3, 0.2).deflection, solid[0]!, { relative: 0.002 });
  assertClose(at(0.16, 0.1).deflection, solid[1]!, { relative: 0.002 });
});

// 0.2 % of the middle's deflection found.
compare("the same sandwich, free all round, on four pads", async () => {
  const pad = { x: 0.08, y: 0.06, side: 0.04, stiffness: 5e5 };
  const [x0, x1, y0, y1] = [0.06, 0.1, 0.04, 0.08];
  const solid = await solveBricks({
    length: 0.3,
    width: 0.2,
    nx: 15,
    ny: 10,
    layers: sandwich.layers,
    held: { x1: [1], y1: [2] },
    pressure: () => 4000,
    pads: [{ x0, x1, y0, y1, stiffness: pad.stiffness }],
    wanted: [[0.3, 0.2], [0, 0], [0.3, 0], [0.16, 0.1]],
  });
  const supports = [[0.08, 0.06], [0.52, 0.06], [0.08, 0.34], [0.52, 0.34]].map((
    [x = 0, y = 0],
    i,
  ) => ({
    name: `pad ${i + 1}`,
    x,
    y,
    stiffness: pad.stiffness,
    oneWay: false,
    side: "far" as const,
    preload: 0,
    padX: 0.04,
    padY: 0.04,
  }));
  const { at } = ritzPanel({
    length: 0.6,
    width: 0.4,
    stiffness: sandwich.stiffness,
    edges: allEdges("free"),
    loads: [{ kind: "uniform", pressure: 4000 }],
    supports,
  }, 18);
  [[0.3, 0.2], [0, 0], [0.3, 0], [0.16, 0.1]].forEach(([x = 0, y = 0], i) => {
    assertClose(at(x, y).deflection, solid[i]!, { absolute: 0.003 * solid[0]! }, `at ${x}, ${y}`);
  });
});

// Bricks 2 over the core and 20 a side are some per cent too coarse at the clamps and the patch's rim.
compare("the same sandwich, clamped all round, under a heel off the middle", async () => {
  const wanted = [[0.24, 0.16], [0.3, 0.2], [0.45, 0.3]] as const;
  const solid = await solveBricks({
    length: 0.6,
    width: 0.4,
    nx: 20,
    ny: 20,
    layers: [face, { ...core, bricks: 2 }, face],
    held: { x0: [1, 2, 3], x1: [1, 2, 3], y0: [1, 2, 3], y1: [1, 2, 3] },
    pressure: (x, y) =>
      Math.abs(x - 0.24) < 0.06 && Math.abs(y - 0.16) < 0.04 ? 800 / 0.12 / 0.08 : 0,
    wanted,
  });
  const { at } = ritzPanel({
    length: 0.6,
    width: 0.4,
    stiffness: sandwich.stiffness,
    edges: allEdges("clamped"),
    loads: [{ kind: "patch", force: 800, x: 0.24, y: 0.16, lengthX: 0.12, lengthY: 0.08 }],
  }, 18);
  wanted.forEach(([x, y], i) => {
    assertClose(at(x, y).deflection, solid[i]!, { relative: 0.03 }, `at ${x}, ${y}`);
  });
});
