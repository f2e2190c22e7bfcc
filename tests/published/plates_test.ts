import { transverseShearStress } from "../../lib/laminate/mod.ts";
import type { Lamina, Ply, Stack } from "../../lib/materials/mod.ts";
import {
  allEdges,
  type EdgeSupport,
  isotropicPanel,
  levyPanel,
  navierPanel,
  type Panel,
  panelBuckling,
  panelFrequencies,
  type PanelLoad,
  type PanelPoint,
  type PanelStiffness,
  panelStiffness,
  plyStresses,
  ritzPanel,
} from "../../lib/sandwich/mod.ts";
import { assertClose } from "../close.ts";

/** D = 1, ν = 0.3, unit side along x: results are the tables' coefficients. */
const thin = isotropicPanel({ E: 10.92, nu: 0.3, thickness: 1, density: 1 }, "rigid");
const uniform: readonly PanelLoad[] = [{ kind: "uniform", pressure: 1 }];

function plate(width: number, edge: EdgeSupport, stiffness: PanelStiffness = thin): Panel {
  return { length: 1, width, stiffness, edges: allEdges(edge), loads: uniform };
}

function middleOf(width: number): PanelPoint {
  return levyPanel(plate(width, "simple")).at(0.5, width / 2);
}

// S. Timoshenko, S. Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. (1959), table 8, ν 0.3:
// w = α q a⁴/D, M = β q a². Partly read, the rest from memory. Printed digits; the last entry of
// My at b/a = 5 is printed 0.0375 (the strip's value), exact 0.03775.
Deno.test("Timoshenko, table 8: simply supported, uniform load", () => {
  const table = [
    [1.0, 0.00406, 0.0479, 0.0479],
    [1.5, 0.00772, 0.0812, 0.0498],
    [2.0, 0.01013, 0.1017, 0.0464],
    [3.0, 0.01223, 0.1189, 0.0406],
    [4.0, 0.01282, 0.1235, 0.0384],
    [5.0, 0.01297, 0.1246, 0.0375],
  ] as const;
  for (const [width, w, Mx, My] of table) {
    const middle = middleOf(width);
    assertClose(middle.deflection, w, { absolute: 5.5e-6 }, `w at ${width}`);
    assertClose(middle.Mx, Mx, { absolute: 5.5e-5 }, `Mx at ${width}`);
    assertClose(middle.My, My, { absolute: width === 5 ? 2.6e-4 : 5.5e-5 }, `My at ${width}`);
  }
});

// The same book: edge forces and corner of the square, Qx = 0.338 q a, corner force
// 2 Mxy = 0.065 q a². From memory.
Deno.test("Timoshenko, table 8: shear force and twisting moment at the rim of the square", () => {
  const { at } = levyPanel(plate(1, "simple"));
  assertClose(at(0, 0.5).Qx, 0.338, { absolute: 5e-4 });
  assertClose(at(0.5, 0).Qy, 0.338, { absolute: 5e-4 });
  assertClose(-2 * at(0, 0).Mxy, 0.065, { absolute: 5e-4 });
});

// W. C. Young, R. G. Budynas, Roark's Formulas for Stress and Strain, 7th ed., table 11.4 case 1a:
// stress β q b²/t², deflection α q b⁴/(E t³), b the shorter side. Read. Some entries carry the
// errors of Timoshenko's table: tolerances as large as those (α at 1.4 printed 0.0770 for 0.07737).
Deno.test("Roark, table 11.4: simply supported, uniform load", () => {
  const table = [
    [1.0, 0.2874, 0.0444, 8.4e-5, 5e-5],
    [1.2, 0.3762, 0.0616, 1.2e-4, 1.1e-4],
    [1.4, 0.4530, 0.0770, 3.1e-4, 3.8e-4],
    [1.6, 0.5172, 0.0906, 1.8e-4, 1.3e-4],
    [1.8, 0.5688, 0.1017, 2.9e-4, 5e-5],
    [2.0, 0.6102, 0.1110, 1.1e-4, 4.1e-4],
    [3.0, 0.7134, 0.1335, 2.5e-4, 8.4e-5],
    [4.0, 0.7410, 0.1400, 2.6e-4, 5e-5],
    [5.0, 0.7476, 0.1417, 1.5e-4, 6e-5],
  ] as const;
  for (const [width, beta, alpha, betaLimit, alphaLimit] of table) {
    const { deflection, Mx } = middleOf(width);
    assertClose(6 * Mx, beta, { absolute: betaLimit }, `β at ${width}`);
    assertClose(10.92 * deflection, alpha, { absolute: alphaLimit }, `α at ${width}`);
  }
});

// R. L. Taylor, S. Govindjee, Commun. Numer. Meth. Eng. 20 (2004), accurate series for the clamped
// square, read: w 0.00126532, M centre 0.0229051, M edge −0.0513338. Ours by polynomials of degree
// 18; its edge moment swings around the exact one by 1e-4 of it.
Deno.test("Taylor and Govindjee: clamped square", () => {
  const { at } = ritzPanel(plate(1, "clamped"), 18);
  assertClose(at(0.5, 0.5).deflection, 0.00126532, { absolute: 8e-9 });
  assertClose(at(0.5, 0.5).Mx, 0.0229051, { absolute: 1e-7 });
  assertClose(at(0, 0.5).Mx, -0.0513338, { absolute: 6e-6 });
});

// Timoshenko and Woinowsky-Krieger (1959), table 35, ν 0.3, partly read, the rest from memory. The
// printed table is inaccurate: its centre moments differ by up to 1.1 % (0.0231 for 0.02291 at the
// square), the last digit of My at the edge at 1.9 and 2.0 and of w at 1.0 and 1.1 differ.
Deno.test("Timoshenko, table 35: clamped, uniform load", () => {
  const table = [
    [1.0, 0.00126, -0.0513, -0.0513, 0.0231, 0.0231],
    [1.1, 0.00150, -0.0581, -0.0538, 0.0264, 0.0231],
    [1.2, 0.00172, -0.0639, -0.0554, 0.0299, 0.0228],
    [1.3, 0.00191, -0.0687, -0.0563, 0.0327, 0.0222],
    [1.4, 0.00207, -0.0726, -0.0568, 0.0349, 0.0212],
    [1.5, 0.00220, -0.0757, -0.0570, 0.0368, 0.0203],
    [1.6, 0.00230, -0.0780, -0.0571, 0.0381, 0.0193],
    [1.7, 0.00238, -0.0799, -0.0571, 0.0392, 0.0182],
    [1.8, 0.00245, -0.0812, -0.0571, 0.0401, 0.0174],
    [1.9, 0.00249, -0.0822, -0.0571, 0.0407, 0.0165],
    [2.0, 0.00254, -0.0829, -0.0571, 0.0412, 0.0158],
  ] as const;
  for (const [width, w, edgeX, edgeY, Mx, My] of table) {
    const { at } = ritzPanel(plate(width, "clamped"), 16);
    const middle = at(0.5, width / 2);
    assertClose(middle.deflection, w, { absolute: 8.5e-6 }, `w at ${width}`);
    assertClose(at(0, width / 2).Mx, edgeX, { absolute: 1e-4 }, `edge Mx at ${width}`);
    assertClose(at(0.5, 0).My, edgeY, { absolute: 1.5e-4 }, `edge My at ${width}`);
    assertClose(middle.Mx, Mx, { absolute: 3e-4 }, `Mx at ${width}`);
    assertClose(middle.My, My, { absolute: 2e-4 }, `My at ${width}`);
  }
});

// Timoshenko and Woinowsky-Krieger (1959), table 23, w = α P a²/D, from memory. Printed values are
// up to 0.26 % low (short series): exact 0.012668 at 1.1, 0.014867 at 1.4, 0.016934 at 3.
Deno.test("Timoshenko, table 23: force in the middle", () => {
  const table = [
    [1.0, 0.01160, 5e-6],
    [1.1, 0.01265, 1.9e-5],
    [1.2, 0.01353, 2.7e-5],
    [1.4, 0.01484, 2.8e-5],
    [1.6, 0.01570, 5e-6],
    [1.8, 0.01620, 1.5e-5],
    [2.0, 0.01651, 1.5e-5],
    [3.0, 0.01690, 3.5e-5],
  ] as const;
  for (const [width, alpha, limit] of table) {
    // A patch this small stands for a point: its deflection is 1e-5 lower.
    const side = { lengthX: 1e-3, lengthY: 1e-3 };
    const loads = [{ kind: "patch", force: 1, x: 0.5, y: width / 2, ...side }] as const;
    const { at } = levyPanel({ ...plate(width, "simple"), loads });
    assertClose(at(0.5, width / 2).deflection, alpha, { absolute: limit + 1e-6 }, `at ${width}`);
  }
});

// Timoshenko and Woinowsky-Krieger (1959), chapter 6, from memory: square, two opposite edges simply
// supported, the other two clamped 0.00192 q a⁴/D, edge −0.0697 q a²; or free 0.01309, at the middle
// of the free edge 0.01501 q a⁴/D, Mx 0.1225 and 0.1318 q a².
Deno.test("Timoshenko, chapter 6: two edges simple, two clamped or free", () => {
  const edges = (other: EdgeSupport): Panel["edges"] => ({
    ...allEdges(other),
    x0: "simple",
    x1: "simple",
  });
  const clamped = levyPanel({ ...plate(1, "simple"), edges: edges("clamped") });
  assertClose(clamped.at(0.5, 0.5).deflection, 0.00192, { absolute: 5e-6 });
  assertClose(clamped.at(0.5, 0).My, -0.0697, { absolute: 2e-4 });
  const free = levyPanel({ ...plate(1, "simple"), edges: edges("free") });
  assertClose(free.at(0.5, 0.5).deflection, 0.01309, { absolute: 5e-6 });
  assertClose(free.at(0.5, 0).deflection, 0.01501, { absolute: 5e-6 });
  assertClose(free.at(0.5, 0.5).Mx, 0.1225, { absolute: 1e-4 });
});

// The same chapter, from memory: square, two opposite edges simply supported, the other two on
// beams of E I = λ a D, uniform load, w in the middle over q a⁴/D. Its last digit is up to 1 off Lévy's
// series summed anew.
Deno.test("Timoshenko, chapter 6: two edges simple, two on beams", () => {
  const table = [[100, 0.00409], [30, 0.00416], [10, 0.00434], [2, 0.00529], [1, 0.00624], [
    0.5,
    0.00756,
  ]] as const;
  for (const [lambda, expected] of table) {
    const free = plate(1, "free");
    const bending = lambda * free.stiffness.D11;
    const beam = { along: "x", bending, shear: 1e5 * bending, massPerLength: 0 } as const;
    const { at } = ritzPanel({
      ...free,
      edges: { ...free.edges, x0: "simple", x1: "simple" },
      beams: [{ ...beam, name: "near", at: 0 }, { ...beam, name: "far", at: 1 }],
    });
    assertClose(at(0.5, 0.5).deflection, expected, { absolute: 1.5e-5 }, `lambda ${lambda}`);
  }
});

// A. W. Leissa, Vibration of Plates (1969), ω a² √(ρh/D), ν 0.3, from memory.
Deno.test("Leissa: frequencies of square plates", () => {
  const first = (edges: Panel["edges"]): number => {
    const panel = { ...plate(1, "free"), edges };
    return 2 * Math.PI * (panelFrequencies(panel, { count: 1 })[0]?.frequency ?? 0);
  };
  assertClose(first(allEdges("simple")), 19.74, { absolute: 0.005 });
  assertClose(first(allEdges("clamped")), 35.99, { absolute: 0.005 });
  assertClose(first({ ...allEdges("free"), x0: "clamped" }), 3.49, { absolute: 0.02 });
});

// S. P. Timoshenko, J. M. Gere, Theory of Elastic Stability, 2nd ed. (1961), table 9-1 and chapter
// 9, from memory: k in N = k π² D/b².
Deno.test("Timoshenko and Gere: buckling in compression and shear", () => {
  const k = (panel: Panel, forces: { Nx: number; Ny: number; Nxy: number }): number =>
    panelBuckling(panel, forces).factor * panel.width ** 2 / Math.PI ** 2;
  const table = [
    [0.2, 27.0],
    [0.3, 13.2],
    [0.4, 8.41],
    [0.5, 6.25],
    [0.6, 5.14],
    [0.7, 4.53],
    [0.8, 4.20],
    [0.9, 4.04],
    [1.0, 4.00],
    [1.1, 4.04],
    [1.2, 4.13],
    [1.3, 4.28],
    [1.4, 4.47],
    [1.41, 4.49],
  ] as const;
  const press = { Nx: 1, Ny: 0, Nxy: 0 };
  for (const [ratio, expected] of table) {
    const found = k(plate(1 / ratio, "simple"), press);
    assertClose(found, expected, { absolute: ratio < 0.35 ? 0.06 : 0.0055 }, `at ${ratio}`);
  }
  // Sides along the load built in: least at a/b = 0.66.
  const built = { ...plate(1 / 0.66, "clamped") };
  const edges = { ...built.edges, x0: "simple", x1: "simple" } as const;
  assertClose(k({ ...built, edges }, press), 6.97, { absolute: 0.01 });
  const shear = { Nx: 0, Ny: 0, Nxy: 1 };
  assertClose(k(plate(1, "simple"), shear), 9.34, { absolute: 0.02 });
  // Long: 5.34 in the limit, 5.34 + 4 (b/a)² by the usual fit at a/b = 4, good to 2 %.
  assertClose(k(plate(0.25, "simple"), shear), 5.34 + 4 / 16, { relative: 0.02 });
});

/** The composite of the bench problems: 25, 1, 0.5, 0.2 times E2, ν 0.25. */
const ply: Lamina = {
  name: "bench ply",
  E1: 25,
  E2: 1,
  G12: 0.5,
  nu12: 0.25,
  G13: 0.5,
  G23: 0.2,
  density: 1,
  alpha1: 0,
  alpha2: 0,
};

function layers(thickness: number, ...angles: readonly number[]): Stack {
  return angles.map((angleDeg): Ply => ({
    lamina: ply,
    thickness: thickness / angles.length,
    angleDeg,
  }));
}

/** One sine wave each way: the first term of a uniform load of π²/16 has amplitude 1. */
function sineLoaded(stiffness: PanelStiffness, width = 1): (x: number, y: number) => PanelPoint {
  const loads = [{ kind: "uniform", pressure: Math.PI ** 2 / 16 }] as const;
  return navierPanel({ ...plate(width, "simple", stiffness), loads }, 1).at;
}

// J. N. Reddy, Mechanics of Laminated Composite Plates and Shells, 2nd ed. (2004), first-order
// table, and J. Appl. Mech. 51 (1984) 745, table 1; from memory. [0/90/90/0], k 5/6, sine load,
// w̄ = 100 w E2 h³/(q a⁴), σ̄ = σ h²/(q a²), τ̄ = τ h/(q a) from the strain, in the 90° plies. Two
// remembered digits recompute otherwise: w at 4 is 1.7095, τyz at 20 is 0.1087.
Deno.test("Reddy: cross-ply by first-order theory", () => {
  const table = [
    [4, 1.7100, 0.4059, 0.5765, 0.0308, 0.1398, 0.1963],
    [10, 0.6628, 0.4989, 0.3615, 0.0241, 0.1667, 0.1292],
    [20, 0.4912, 0.5273, 0.2957, 0.0221, 0.1749, 0.1091],
    [100, 0.4337, 0.5382, 0.2705, 0.0213, 0.1780, 0.1009],
  ] as const;
  for (const [slenderness, w, sx, sy, sxy, txz, tyz] of table) {
    const h = 1 / slenderness;
    const stack = layers(h, 0, 90, 90, 0);
    const stiffness = panelStiffness(stack, { core: "none" });
    const at = sineLoaded(stiffness);
    const name = `at a/h ${slenderness}`;
    assertClose(100 * at(0.5, 0.5).deflection * h ** 3, w, { absolute: 6e-4 }, `w ${name}`);
    const middle = plyStresses(stack, at(0.5, 0.5), "bag");
    assertClose(middle[0]!.bottom.stress.sigmaX * h * h, sx, { absolute: 6e-5 }, `sx ${name}`);
    assertClose(middle[1]!.bottom.stress.sigmaY * h * h, sy, { absolute: 9e-5 }, `sy ${name}`);
    const corner = plyStresses(stack, at(0, 0), "bag");
    assertClose(Math.abs(corner[0]!.bottom.stress.tauXY) * h * h, sxy, { absolute: 5e-5 }, name);
    const { S44, S55 } = stiffness.shear as Exclude<PanelStiffness["shear"], "rigid">;
    assertClose(0.2 * at(0, 0.5).Qx / S55 * h, txz, { absolute: 1.5e-4 }, `txz ${name}`);
    assertClose(0.5 * at(0.5, 0).Qy / S44 * h, tyz, { absolute: 4.5e-4 }, `tyz ${name}`);
  }
});

// The same, classical plate row: 0.4313.
Deno.test("Reddy: cross-ply by classical theory", () => {
  const stiffness = panelStiffness(layers(0.01, 0, 90, 90, 0), { core: "none" });
  const at = sineLoaded({ ...stiffness, shear: "rigid" });
  assertClose(100 * at(0.5, 0.5).deflection * 1e-6, 0.4313, { absolute: 5.5e-5 });
});

/** Pagano's sandwich: faces 0.1 h of the bench ply, core 0.8 h. */
function paganoSandwich(h: number): Stack {
  const core: Lamina = {
    ...ply,
    name: "bench core",
    E1: 0.04,
    E2: 0.04,
    G12: 0.016,
    nu12: 0.25,
    G13: 0.06,
    G23: 0.06,
  };
  const face: Ply = { lamina: ply, thickness: 0.1 * h, angleDeg: 0 };
  return [face, { lamina: core, thickness: 0.8 * h, angleDeg: 0 }, face];
}

// Reddy (2004): Pagano's sandwich by first-order theory with k 5/6 over all layers, from memory.
Deno.test("Reddy: sandwich by first-order theory, shear factor 5/6", () => {
  for (const [slenderness, expected] of [[4, 4.7666], [10, 1.5604], [100, 0.8852]] as const) {
    const h = 1 / slenderness;
    const at = sineLoaded(panelStiffness(paganoSandwich(h), { core: "none" }));
    assertClose(100 * at(0.5, 0.5).deflection * h ** 3, expected, { absolute: 6e-5 });
  }
});

// N. J. Pagano, J. Compos. Mater. 4 (1970) 20, exact elasticity, from memory: face stress at the
// surface σx h²/(q a²) and core shear τxz h/(q a). First-order theory with S = G d²/c is near for
// thin plates and misses the faces' own bending under short waves: 1 % at a/h 100, 15 % at 10.
Deno.test("Pagano: sandwich by elasticity", () => {
  for (
    const [slenderness, sx, txz, limit] of [[100, 1.098, 0.324, 0.01], [
      10,
      1.153,
      0.3,
      0.15,
    ]] as const
  ) {
    const h = 1 / slenderness;
    const stack = paganoSandwich(h);
    const at = sineLoaded(panelStiffness(stack));
    const face = plyStresses(stack, at(0.5, 0.5), "bag")[0]!.bottom.stress.sigmaX;
    assertClose(face * h * h, sx, { relative: limit }, `sx at ${slenderness}`);
    // Core shear by the simple form Q/d, d = 0.9 h.
    assertClose(at(0, 0.5).Qx / 0.9, txz, { relative: limit }, `txz at ${slenderness}`);
  }
});

// Pagano (1970), rectangular 0/90/0, b = 3a, and Pagano, J. Compos. Mater. 3 (1969) 398,
// cylindrical bending of 0/90/0; exact elasticity, thin plates, from memory.
Deno.test("Pagano: thin cross-ply plates by elasticity", () => {
  const thinPlate = panelStiffness(layers(0.01, 0, 90, 0), { core: "none" });
  assertClose(1e-4 * sineLoaded(thinPlate, 3)(0.5, 1.5).deflection, 0.508, { absolute: 0.003 });
  assertClose(1e-4 * sineLoaded(thinPlate, 1e4)(0.5, 5e3).deflection, 0.514, { absolute: 0.002 });
});

// Pagano (1970), square 0/90/0, and Pagano and Hatfield, AIAA J. 10 (1972) 931, [0/90/90/0], exact
// elasticity at a/h 100, where plate theory holds: σx h²/(q a²) at the surface, σy in the 90° ply,
// τxz h/(q a) by equilibrium. From memory. Printed to three digits; plate theory is 0.3 % off.
Deno.test("Pagano, Pagano and Hatfield: stresses of thin cross-ply plates by elasticity", () => {
  const table = [[[0, 90, 0], 0.539, 0.181, 0.395], [[0, 90, 90, 0], 0.539, 0.271, 0.339]] as const;
  for (const [angles, sx, sy, txz] of table) {
    const stack = layers(0.01, ...angles);
    const at = sineLoaded(panelStiffness(stack, { core: "none" }));
    const plies = plyStresses(stack, at(0.5, 0.5), "bag");
    assertClose(plies[0]!.bottom.stress.sigmaX * 1e-4, sx, { absolute: 0.002 }, "sx");
    assertClose(plies[1]!.bottom.stress.sigmaY * 1e-4, sy, { absolute: 0.002 }, "sy");
    const { Qx } = at(0, 0.5);
    const shear = transverseShearStress(stack, { Qx }).map(({ largestXZ }) => largestXZ);
    assertClose(Math.max(...shear) * 0.01, txz, { absolute: 0.004 }, "txz");
  }
});

// Pagano (1969), cylindrical bending of an unsymmetric two-ply laminate, fibres along x below and
// across above, exact elasticity, thin (a/h 100): w̄ 2.62, from memory. Reduced stiffness
// D − B A⁻¹ B frees the strain across as well, which the strip does not: 1 % apart.
Deno.test("Pagano: an unsymmetric strip by elasticity", () => {
  const at = sineLoaded(panelStiffness(layers(0.01, 0, 90), { core: "none" }), 1e4);
  assertClose(100 * at(0.5, 5e3).deflection * 1e-6, 2.62, { relative: 0.01 });
});

// Beam theory in the narrow limit: a strip between two simple supports with free sides bends with
// E I, not with the plate's D. Any handbook: 5 q L⁴/384 E I.
Deno.test("beam theory: a narrow strip", () => {
  const edges = { ...allEdges("free"), x0: "simple", x1: "simple" } as const;
  const narrow = levyPanel({ ...plate(0.01, "free"), edges });
  const EI = 10.92 / 12;
  // The supports hold the sides straight over a length like the width: 3 % of width over span.
  assertClose(narrow.at(0.5, 0.005).deflection, 5 / 384 / EI, { relative: 4e-4 });
  const ritz = ritzPanel({ ...plate(0.05, "free"), edges });
  assertClose(ritz.at(0.5, 0.025).deflection, 5 / 384 / EI, { relative: 2e-3 });
});
