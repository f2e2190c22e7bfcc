import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import {
  allEdges,
  balancedFace,
  beamLoadCases,
  bendingStress,
  type CoreDesign,
  coreInPlace,
  coreShearStress,
  failureLoads,
  failureMap,
  failureModes,
  honeycombWrinklingStress,
  isotropicPanel,
  panelFailure,
  panelField,
  type PanelLoad,
  patchSpread,
  type SandwichDesign,
  type SandwichFailure,
  type SandwichFailureName,
  sandwichSection,
  solvePanel,
} from "../../lib/sandwich/mod.ts";
import { assertClose } from "../close.ts";

const face = balancedFace({
  thickness: 0.001,
  E: 20e9,
  nu: 0.12,
  tensile: 300e6,
  compressive: 220e6,
  shear: 40e6,
});
const foam: CoreDesign = {
  kind: "foam",
  thickness: 0.015,
  Ex: 60e6,
  Ey: 60e6,
  Ez: 70e6,
  Gx: 22e6,
  Gy: 22e6,
  shearX: 0.8e6,
  shearY: 0.8e6,
  compressive: 0.9e6,
  cellSize: 0,
};
const honeycomb: CoreDesign = {
  kind: "honeycomb",
  thickness: 0.015,
  Ex: 0,
  Ey: 0,
  Ez: 140e6,
  Gx: 40e6,
  Gy: 24e6,
  shearX: 1.2e6,
  shearY: 0.7e6,
  compressive: 2e6,
  cellSize: 0.0064,
};
const sandwich = (core: CoreDesign): SandwichDesign => ({ topFace: face, bottomFace: face, core });
const named = (modes: readonly SandwichFailure[], mode: SandwichFailureName): SandwichFailure => {
  const found = modes.find((entry) => entry.mode === mode);
  if (found === undefined) throw new Error(`no ${mode}`);
  return found;
};
const exact = { relative: 1e-12 };

Deno.test("bending: faces, wrinkling and core shear as the single formulas give them", () => {
  const design = sandwich(foam);
  const modes = failureModes(design, { Mx: 900, Qx: 4000 });
  const section = sandwichSection({
    width: 1,
    topFace: { thickness: 0.001, E: 20e9 },
    bottomFace: { thickness: 0.001, E: 20e9 },
    core: { thickness: 0.015, E: 60e6, G: 22e6 },
  });
  const stress = bendingStress(section, 900);
  assertClose(named(modes, "face tension").reserve, 300e6 / stress.bottomFace.outer, exact);
  assertEquals(named(modes, "face tension").where, "bottom face along x");
  assertClose(named(modes, "face compression").reserve, -220e6 / stress.topFace.outer, exact);
  const wrinkling = 0.5 * Math.cbrt(20e9 * 70e6 * 22e6);
  assertClose(named(modes, "wrinkling").reserve, -wrinkling / stress.topFace.centroid, exact);
  const tau = coreShearStress(section, 4000).max;
  assertClose(named(modes, "core shear").reserve, 0.8e6 / tau, exact);
  assertClose(named(modes, "core shear").demand, tau, exact);
  const reserves = modes.map(({ reserve }) => reserve);
  assertEquals(reserves, reserves.toSorted((a, b) => a - b));
});

Deno.test("the other way round, the other face", () => {
  const modes = failureModes(sandwich(foam), { My: -900 });
  assertEquals(named(modes, "wrinkling").where, "bottom face along y");
  assertEquals(named(modes, "face tension").where, "top face along y");
});

Deno.test("honeycomb: its own wrinkling, dimples, and L and W directions", () => {
  const modes = failureModes(sandwich(honeycomb), { Mx: 900 });
  const d = 0.016;
  const sigma = 900 / (0.001 * d);
  const wrinkling = 0.33 * Math.sqrt(20e9 * 140e6 * 0.001 / 0.015);
  // Centroid stress of faces 1/16 of d thick is 0.13 % below the thin form.
  assertClose(named(modes, "wrinkling").reserve, wrinkling / sigma, { relative: 2e-3 });
  const dimpling = 2 * 20e9 / (1 - 0.12 ** 2) * (1 / 6.4) ** 2;
  assertClose(named(modes, "dimpling").reserve, dimpling / sigma, { relative: 2e-3 });
  const along = named(failureModes(sandwich(honeycomb), { Qx: 1000 }), "core shear");
  const across = named(failureModes(sandwich(honeycomb), { Qy: 1000 }), "core shear");
  assertClose(along.reserve / across.reserve, 1.2 / 0.7, exact);
});

Deno.test("core shear both ways adds as a circle in shares of strength", () => {
  const x = named(failureModes(sandwich(honeycomb), { Qx: 3000 }), "core shear").reserve;
  const y = named(failureModes(sandwich(honeycomb), { Qy: 2000 }), "core shear").reserve;
  const both = named(failureModes(sandwich(honeycomb), { Qx: 3000, Qy: -2000 }), "core shear");
  assertClose(1 / both.reserve, Math.hypot(1 / x, 1 / y), exact);
  assertClose(both.limit / both.demand, both.reserve, exact);
});

Deno.test("compression in the plane: shared by the faces, and crimps at the shear stiffness", () => {
  const modes = failureModes(sandwich(foam), { compressionX: 50e3 });
  assertClose(named(modes, "face compression").demand, 50e3 / 0.002, exact);
  assertClose(named(modes, "crimping").limit, 22e6 * 0.016 ** 2 / 0.015, exact);
  assert(!modes.some(({ mode }) => mode === "face tension"));
});

Deno.test("a patch crushes the core below it, spread by the face, and punches", () => {
  const patch = { force: 700, lengthX: 0.04, lengthY: 0.06 };
  const modes = failureModes(sandwich(foam), { patch });
  const spread = patchSpread({
    faceE: 20e9,
    faceThickness: 0.001,
    coreE: 70e6,
    coreG: 22e6,
    coreThickness: 0.015,
  }, 0.04);
  assertClose(named(modes, "core crushing").demand, 700 / 0.0024 * spread, exact);
  assertClose(named(modes, "punching").demand, 700 / (0.2 * 0.016), exact);
});

Deno.test("the face on the core: agrees with its differential equation", () => {
  // D w'''' + K w = p on |x| < a/2, solved here by finite differences on a long beam.
  // A core without stiffness in shear: springs side by side.
  const springs = { coreE: 70e6, coreG: 1e-6, coreThickness: 0.015 };
  const design = { faceE: 20e9, faceThickness: 0.001, ...springs };
  const D = 20e9 * 1e-9 / 12;
  const K = 70e6 / 0.015;
  const h = 0.0002;
  const n = 401;
  // Symmetric half: x = i h, banded solve by Gauss–Seidel would be slow; use the Green's function.
  const lambda = (K / (4 * D)) ** 0.25;
  const green = (x: number): number =>
    lambda / (2 * K) * Math.exp(-lambda * x) * (Math.cos(lambda * x) + Math.sin(lambda * x));
  const a = 0.02;
  let w = 0;
  for (let i = 0; i < n; i++) {
    // Simpson over the patch of −a/2 to a/2 by symmetry.
    const x = i / (n - 1) * a / 2;
    const weight = i === 0 || i === n - 1 ? 1 : i % 2 === 1 ? 4 : 2;
    w += 2 * weight * green(x) * (a / 2 / (n - 1)) / 3;
  }
  // And the Green's function itself satisfies the equation away from the load.
  const fourth = (x: number): number =>
    [1, -4, 6, -4, 1].reduce((sum, c, i) => sum + c * green(x + (i - 2) * h), 0) / h ** 4;
  assertClose(D * fourth(0.01) + K * green(0.01), 0, { absolute: 1e-3 * K * green(0) });
  assertClose(patchSpread(design, a), K * w, { relative: 1e-8 });
});

Deno.test("small pads on a thick core press more gathered than on springs", () => {
  // Middle of a strip load on a face on an isotropic layer, plane strain, ν 0.3, base fixed and the
  // face not stretching: (2/π) ∫ k/(D ω⁴ + k) sin(ωa/2)/ω dω with k(ω) of the layer by transfer
  // matrices, computed in Python. Springs give 0.31, 0.45, 0.69, 0.92; 0.28, 0.43 and 0.19, 0.44.
  const layers: readonly (readonly [t: number, c: number, a: number, share: number])[] = [
    [0.0004, 0.02, 0.002, 0.5318],
    [0.0004, 0.02, 0.003, 0.7124],
    [0.0004, 0.02, 0.005, 0.9257],
    [0.0004, 0.02, 0.008, 1.026],
    [0.0016, 0.02, 0.005, 0.3606],
    [0.0016, 0.02, 0.008, 0.5368],
    [0.0016, 0.003, 0.002, 0.1947],
    [0.0016, 0.003, 0.005, 0.4594],
  ];
  for (const [t, c, a, share] of layers) {
    const found = patchSpread(
      { faceE: 20e9, faceThickness: t, coreE: 90e6, coreG: 90e6 / 2.6, coreThickness: c },
      a,
    );
    // What the Range of patchSpread says.
    assert(found > 0.95 * share && found < 1.09 * share, `${t} ${c} ${a}: ${found}`);
  }
});

Deno.test("a very small pad on a very thick core: as the integral has it", () => {
  // k = √(Ec Gc) ω: with ω₀³ = √(Ec Gc)/D the share is (2/π) (a/2) ∫ dω/(1 + (ω/ω₀)³), and the
  // integral ω₀ 2π/(3√3).
  const [faceE, t, coreE, coreG] = [20e9, 0.002, 60e6, 23e6];
  const w0 = Math.cbrt(Math.sqrt(coreE * coreG) / (faceE * t ** 3 / 12));
  const a = 1e-7;
  const found = patchSpread({ faceE, faceThickness: t, coreE, coreG, coreThickness: 1 }, a);
  assertClose(found, a / Math.PI * w0 * 2 * Math.PI / (3 * Math.sqrt(3)), { relative: 1e-4 });
});

Deno.test("twist shears the faces in their plane: stress as slices give it", () => {
  const [t1, t2, c, twist] = [0.001, 0.0025, 0.015, 30];
  const slices = 2000;
  const heights = [...[0, 1].keys()].flatMap((side) => {
    const t = side === 0 ? t2 : t1;
    return Array.from({ length: slices }, (_, i) => ({
      z: (side === 0 ? 0 : t2 + c) + t * (i + 0.5) / slices,
      dz: t / slices,
    }));
  });
  const axis = heights.reduce((sum, { z, dz }) => sum + z * dz, 0) / (t1 + t2);
  const J = heights.reduce((sum, { z, dz }) => sum + (z - axis) ** 2 * dz, 0);
  const design = {
    topFace: { ...face, thickness: t1 },
    bottomFace: { ...face, thickness: t2, shearXY: 30e6 },
    core: { ...foam, thickness: c },
  };
  const modes = failureModes(design, { Mxy: -twist }).filter(({ mode }) => mode === "face shear");
  const of = (side: string): SandwichFailure => modes.find(({ where }) => where.startsWith(side))!;
  const top = twist * (t1 + t2 + c - axis) / J;
  assertClose(of("top").demand, top, { relative: 1e-6 });
  assertClose(of("top").reserve, 40e6 / top, { relative: 1e-6 });
  assertClose(of("bottom").demand, twist * axis / J, { relative: 1e-6 });
  assertClose(of("bottom").limit, 30e6, exact);
  assertEquals(modes.length, 2);
});

Deno.test("a square panel under pressure: the corner's twist counts", () => {
  // Timoshenko and Woinowsky-Krieger (1959), table 8: corner force 0.065 q a², twice Mxy there;
  // ν 0.3.
  const sheet = { E: 20e9, nu: 0.3, thickness: 0.01, density: 1 };
  const stiffness = isotropicPanel(sheet, "rigid");
  const loads = [{ kind: "uniform", pressure: 4000 }] as const;
  const panel = { length: 0.5, width: 0.5, stiffness, edges: allEdges("simple"), loads };
  const found = panelFailure(panelField(solvePanel(panel), { x: 5, y: 5 }), loads, sandwich(foam));
  const shear = found.find(({ mode }) => mode === "face shear")!;
  const J = 0.016 ** 2 * 0.0005 + 2 * 0.001 ** 3 / 12;
  const stress = 0.0325 * 4000 * 0.25 * 0.0085 / J;
  assertClose(shear.demand, stress, { relative: 0.008 });
  assertEquals([shear.x % 0.5, shear.y % 0.5], [0, 0]);
});

Deno.test("beam: the load at which each way comes about, the least first", () => {
  const beam = {
    loadCase: beamLoadCases.fourPointThird,
    span: 0.45,
    width: 0.06,
    design: sandwich(foam),
    padLength: 0.02,
  };
  const loads = failureLoads(beam);
  const shear = loads.find(({ mode }) => mode === "core shear")!;
  const again = failureModes(beam.design, { Qx: shear.load / 2 / 0.06 });
  assertClose(named(again, "core shear").reserve, 1, exact);
  const crushing = loads.find(({ mode }) => mode === "core crushing")!;
  const patch = { force: crushing.load / 2, lengthX: 0.02, lengthY: 0.06 };
  assertClose(named(failureModes(beam.design, { patch }), "core crushing").reserve, 1, exact);
  assert(!loads.some(({ mode }) => mode === "punching"));
  assert(loads.every(({ source, scatter }) => source !== "" && scatter !== ""));
});

Deno.test("map: thin faces wrinkle, thin cores shear; the load grows with both", () => {
  const beam = {
    loadCase: beamLoadCases.threePoint,
    span: 0.5,
    width: 0.06,
    design: sandwich(foam),
  };
  const map = failureMap(beam, [0.0002, 0.0005, 0.001, 0.003], [0.005, 0.01, 0.02]);
  assertEquals(map.modes[map.first[0]!], "wrinkling");
  assertEquals(map.modes[map.first[9]!], "core shear");
  for (let i = 0; i < 12; i++) {
    if (i % 3 > 0) assert(map.loads[i]! > map.loads[i - 1]!);
    if (i >= 3) assert(map.loads[i]! >= map.loads[i - 3]!);
  }
});

Deno.test("panel: each way at its worst place", () => {
  const loads: readonly PanelLoad[] = [
    { kind: "uniform", pressure: 3000 },
    { kind: "patch", force: 500, x: 0.3, y: 0.2, lengthX: 0.05, lengthY: 0.05 },
  ];
  const panel = {
    length: 0.6,
    width: 0.4,
    stiffness: {
      D11: 2600,
      D12: 312,
      D16: 0,
      D22: 2600,
      D26: 0,
      D66: 1140,
      shear: { S44: 3.7e5, S45: 0, S55: 3.7e5 },
      massPerArea: 5,
      notes: [],
    },
    edges: allEdges("simple"),
    loads,
  };
  const field = panelField(solvePanel(panel), { x: 9, y: 9 });
  const found = panelFailure(field, loads, sandwich(foam));
  const wrinkling = found.find(({ mode }) => mode === "wrinkling")!;
  assertClose([wrinkling.x, wrinkling.y], [0.3, 0.2], exact);
  assertEquals(wrinkling.where, "top face along y");
  const crushing = found.find(({ mode }) => mode === "core crushing")!;
  assertClose([crushing.x, crushing.y], [0.3, 0.2], exact);
  assertEquals(found.length, new Set(found.map(({ mode }) => mode)).size);
});

Deno.test("a core of the catalogue is laid with its L along x or y", () => {
  const core = {
    kind: "honeycomb",
    density: 48,
    compressiveModulus: 138e6,
    inPlaneModulusL: 2e5,
    inPlaneModulusW: 1e5,
    nu: 0.1,
    shearModulusL: 40e6,
    shearModulusW: 24e6,
    compressiveStrength: 2e6,
    shearStrengthL: 1.2e6,
    shearStrengthW: 0.7e6,
    alpha: 0,
    cellSize: 0.0032,
    resinUptake: 0,
  } as const;
  const along = coreInPlace(core, 0.01, "x");
  assertEquals([along.Gx, along.Gy, along.shearX, along.Ex], [40e6, 24e6, 1.2e6, 2e5]);
  const across = coreInPlace(core, 0.01, "y");
  assertEquals([across.Gx, across.Gy, across.shearX, across.Ex], [24e6, 40e6, 0.7e6, 1e5]);
});

Deno.test("designs and loads that cannot be meant are refused", () => {
  const refused = (change: object, message: string): void => {
    const design = { ...sandwich(foam), ...change } as SandwichDesign;
    assertThrows(() => failureModes(design, { Mx: 1 }), InputError, message);
  };
  refused({ core: undefined }, "core is missing");
  refused({ topFace: undefined }, "topFace is missing");
  refused({ topFace: { ...face, thickness: 0 } }, "thickness of the topFace is 0");
  refused({ topFace: { ...face, shearXY: undefined } }, "shearXY of the topFace is missing");
  refused({ core: { ...foam, shearX: -1 } }, "shearX of the core is -1");
  refused({ core: { ...foam, kind: "cardboard" } }, 'kind of the core is "cardboard"');
  assertThrows(() => failureModes(sandwich(foam), { Mx: NaN }), InputError, "Mx is NaN");
  assertThrows(() => failureModes(sandwich(foam), { Mxy: 1e308 }), InputError, "face shear");
  assertThrows(
    () => failureModes(sandwich(foam), { patch: { force: 1, lengthX: 0, lengthY: 1 } }),
    InputError,
    "side of the patch along x is 0 m",
  );
  assertThrows(
    () => balancedFace({ thickness: 1, E: 1, nu: 0, tensile: 0, compressive: 1, shear: 1 }),
    InputError,
    "tensile strength is 0 Pa",
  );
  assertThrows(
    () =>
      honeycombWrinklingStress(
        { faceE: 1, coreE: 1, faceThickness: 1, coreThickness: 0 },
        0.33,
      ),
    InputError,
    "core thickness is 0 m",
  );
  assertThrows(() => failureMap({} as never, [1], [1]), InputError, "design is missing");
});
