import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import type { Core, Fibre, Reinforcement, Resin } from "../../lib/materials/mod.ts";
import { curedPly } from "../../lib/micromechanics/mod.ts";
import {
  allEdges,
  levyPanel,
  panelFailure,
  panelField,
  solvePanel,
} from "../../lib/sandwich/mod.ts";
import {
  judgePanel,
  lightest,
  makePanel,
  panelCosts,
  type PanelRecipe,
  type PanelTask,
  sweep,
} from "../../lib/study/mod.ts";
import { assertClose } from "../close.ts";

const plain = { source: "invented", typical: {} };
const fibre: Fibre = {
  ...plain,
  name: "E-glass",
  kind: "glass",
  E1: 72e9,
  E2: 72e9,
  G12: 30e9,
  nu12: 0.2,
  G23: 30e9,
  density: 2550,
  alpha1: 5e-6,
  alpha2: 5e-6,
  tensileStrength: 1700e6,
  compressiveStrength: 1100e6,
};
const resin: Resin = {
  ...plain,
  name: "epoxy",
  kind: "epoxy",
  E: 3.2e9,
  nu: 0.35,
  density: 1150,
  alpha: 65e-6,
  beta: 0.33,
  tensileStrength: 68e6,
  compressiveStrength: 100e6,
  shearStrength: 45e6,
  hardenerPhr: 30,
};
const reinforcement: Reinforcement = {
  ...plain,
  name: "glass twill 200",
  form: "woven",
  weave: "twill",
  fibre: "E-glass",
  arealWeight: 0.2,
  warpShare: 0.5,
  fibreFraction: 0.42,
};
const core: Core = {
  ...plain,
  name: "foam 80",
  kind: "foam",
  density: 80,
  compressiveModulus: 90e6,
  inPlaneModulusL: 70e6,
  inPlaneModulusW: 70e6,
  nu: 0.3,
  shearModulusL: 27e6,
  shearModulusW: 27e6,
  compressiveStrength: 1.3e6,
  shearStrengthL: 1.1e6,
  shearStrengthW: 1.1e6,
  alpha: 40e-6,
  cellSize: 0,
  resinUptake: 0.15,
};
const recipe: PanelRecipe = {
  reinforcement,
  fibre,
  resin,
  fibreFraction: 0.42,
  pliesMould: 2,
  pliesBag: 2,
  core,
  coreThickness: 0.01,
};
const task: PanelTask = {
  length: 0.6,
  width: 0.4,
  edges: allEdges("simple"),
  loads: [
    { kind: "uniform", pressure: 2000 },
    { kind: "patch", force: 900, x: 0.3, y: 0.2, lengthX: 0.05, lengthY: 0.05 },
  ],
};

Deno.test("a recipe makes the stack, with the core's resin in the mass", () => {
  const { stack, massPerArea, design, notes } = makePanel(recipe);
  assertEquals(stack.map(({ lamina }) => lamina.name === "foam 80"), [
    false,
    false,
    true,
    false,
    false,
  ]);
  const ply = 0.2 + 0.2 / (2550 * 0.42) * 0.58 * 1150;
  assertClose(massPerArea, 4 * ply + 80 * 0.01 + 2 * 0.15, { relative: 1e-9 });
  const { lamina, thickness } = curedPly({
    reinforcement,
    fibre,
    resin,
    fibreVolumeFraction: 0.42,
  });
  assertClose(design.topFace.thickness, 2 * thickness, { relative: 1e-12 });
  assertClose(design.topFace.Ex, lamina.E1, { relative: 1e-9 });
  assertEquals(design.topFace.shearXY, lamina.strengths!.S);
  assertEquals(notes, []);
  assert(makePanel({ ...recipe, pliesBag: 1 }).notes.some((note) => note.includes("symmetric")));
});

Deno.test("a core that drinks resin without end is refused", () => {
  const core = { ...recipe.core, resinUptake: 1e308 };
  assertThrows(() => makePanel({ ...recipe, core }), InputError, "mass per area is Infinity");
});

Deno.test("a panel is judged as its own functions judge it", () => {
  const { figures, failures, make } = judgePanel(recipe, task);
  const { at } = levyPanel({ ...task, stiffness: make.stiffness });
  assertClose(figures.deflection, at(0.3, 0.2).deflection, { relative: 1e-12 });
  assertClose(figures.deflectionOverSide, figures.deflection / 0.4, { relative: 1e-12 });
  assertClose(figures.mass, figures.massPerArea * 0.24, { relative: 1e-12 });
  assertClose(figures.reserve, failures[0]!.reserve, { relative: 1e-15 });
});

Deno.test("a heel between the places of the grid: its middle and rim are looked at", () => {
  const loads = [
    { kind: "patch", force: 1324, x: 0.26, y: 0.17, lengthX: 0.06, lengthY: 0.06 },
  ] as const;
  const own = { length: 0.6, width: 0.4, edges: allEdges("simple"), loads };
  const { failures, make } = judgePanel(recipe, own);
  // Every 10 mm, so that the rim at 0.23, 0.29 and 0.14, 0.2 m is among them.
  const field = panelField(solvePanel({ ...own, stiffness: make.stiffness }), { x: 61, y: 41 });
  for (const { mode, reserve } of panelFailure(field, loads, make.design)) {
    const found = failures.find((one) => one.mode === mode)!;
    assert(found.reserve < 1.005 * reserve, `${mode}: ${found.reserve}, ${reserve}`);
  }
});

Deno.test("more core, less deflection; more plies, more mass", () => {
  const base = judgePanel(recipe, task).figures;
  const core2 = judgePanel({ ...recipe, coreThickness: 0.02 }, task).figures;
  const plies2 = judgePanel({ ...recipe, pliesMould: 4, pliesBag: 4 }, task).figures;
  assert(core2.deflection < 0.5 * base.deflection);
  assert(core2.mass < plies2.mass && core2.deflection < plies2.deflection);
});

Deno.test("sweep to the lightest that will do", async () => {
  const choices = { plies: [1, 2, 3], core: [0.005, 0.01, 0.015, 0.02] };
  const { points, faults } = await sweep(choices, ({ plies, core }) => {
    const own = { ...recipe, pliesMould: plies, pliesBag: plies, coreThickness: core };
    return judgePanel(own, task, 5).figures;
  });
  assertEquals(faults, []);
  const choice = lightest(points, ({ result }) => ({ ...result }), {
    least: "mass",
    limits: [{ figure: "deflectionOverSide", max: 1 / 150 }, { figure: "reserve", min: 1.5 }],
  });
  const chosen = choice.chosen!;
  for (const { result } of points) {
    const holds = result.deflectionOverSide <= 1 / 150 && result.reserve >= 1.5;
    assert(!holds || result.mass >= chosen.result.mass);
  }
  assert(choice.feasible > 0 && choice.feasible < points.length);
});

Deno.test("what a panel takes: materials with waste, hours", () => {
  const rates = {
    clothPrice: 8,
    resinPrice: 15,
    corePrice: 2000,
    timePerPly: 1200,
    timePerCore: 1800,
    waste: 0.2,
  };
  const { cost, time, resinMass } = panelCosts(recipe, 0.24, rates);
  // Resin of one ply 0.2/(2550 × 0.42) m × 0.58 × 1150 kg/m³.
  const resin = 0.24 * (4 * 0.2 / (2550 * 0.42) * 0.58 * 1150 + 0.3);
  assertClose(resinMass, 1.2 * resin, { relative: 1e-12 });
  assertClose(cost, 1.2 * (0.24 * 4 * 8 + resin * 15 + 0.24 * 0.01 * 2000), { relative: 1e-12 });
  assertClose(time, 0.24 * (4 * 1200 + 1800), { relative: 1e-12 });
  assertThrows(
    () => panelCosts(recipe, 0.24, { ...rates, waste: -1 }),
    InputError,
    "waste is -1, must be between 0 and 2",
  );
});

Deno.test("recipes that cannot be meant are refused", () => {
  const refused = (change: object, message: string): void => {
    assertThrows(() => judgePanel({ ...recipe, ...change }, task), InputError, message);
  };
  refused({ pliesBag: 0 }, "plies on the bag side is 0, must be a whole number, 1 or above");
  refused({ coreThickness: -0.01 }, "core thickness is -0.01 m");
  refused({ coreAlong: "z" }, 'direction of the core is "z"');
  refused({ fibreFraction: 0 }, "fibre volume fraction");
  assertThrows(() => judgePanel(recipe, undefined as never), InputError, "task is missing");
});
