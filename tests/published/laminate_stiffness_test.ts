/**
 * Stiffness of laminas and laminates against printed examples. All figures are from memory of the
 * publication named, unless marked otherwise; the tolerance is half of the last digit printed, a
 * little more where the book carried rounded figures on.
 */
import {
  complianceInvariants,
  engineeringConstants,
  laminateStiffness,
  minorPoissonRatio,
  reducedCompliance,
  reducedStiffness,
  rotatedCompliance,
  rotatedExpansion,
  rotatedStiffness,
  solidCompliance,
  solidStiffness,
  stiffnessInvariants,
  strainToPly,
  stressToPly,
  thermalExpansion,
} from "../../lib/laminate/mod.ts";
import { assertClose } from "../close.ts";
import { GRAPHITE_EPOXY, stackOf } from "../laminate/laminas.ts";

/** Compares named figures, each with its own absolute tolerance: [printed, tolerance]. */
function assertPrinted(
  actual: object,
  printed: Readonly<Record<string, readonly [number, number]>>,
  unit = 1,
): void {
  const figures = actual as Readonly<Record<string, number>>;
  for (const [name, [value, tolerance]] of Object.entries(printed)) {
    assertClose(figures[name]! / unit, value, { absolute: tolerance }, name);
  }
}

const GPa = 1e9;

/** A lamina of which a book gives only the four constants of its plane. */
function inGPa(E1: number, E2: number, nu12: number, G12: number): typeof GRAPHITE_EPOXY {
  return { ...GRAPHITE_EPOXY, E1: E1 * GPa, E2: E2 * GPa, nu12, G12: G12 * GPa };
}

Deno.test("graphite/epoxy lamina: S, Q, minor Poisson ratio (Kaw 2006, example 2.6)", () => {
  assertPrinted(reducedCompliance(GRAPHITE_EPOXY), {
    S11: [0.5525e-11, 5e-16],
    S12: [-0.1547e-11, 5e-16],
    S22: [0.9709e-10, 5e-15],
    S66: [0.1395e-9, 5e-14],
  });
  assertPrinted(reducedStiffness(GRAPHITE_EPOXY), {
    Q11: [181.8, 0.05],
    Q12: [2.897, 5e-4],
    Q22: [10.35, 5e-3],
    Q66: [7.17, 7.2e-9],
  }, GPa);
  assertClose(minorPoissonRatio(GRAPHITE_EPOXY), 0.01593, { absolute: 5e-6 });
  const { S11, S12, S22, S66 } = reducedCompliance(GRAPHITE_EPOXY);
  const [s1, s2, t12] = [2e6, -3e6, 4e6];
  assertClose((S11 * s1 + S12 * s2) * 1e6, 15.69, { absolute: 0.005 });
  assertClose((S12 * s1 + S22 * s2) * 1e6, -294.4, { absolute: 0.05 });
  assertClose(S66 * t12 * 1e6, 557.9, { absolute: 0.05 });
});

Deno.test("graphite/epoxy at 60°: S̄ and Q̄ (Kaw 2006, example 2.7)", () => {
  assertPrinted(rotatedCompliance(GRAPHITE_EPOXY, 60), {
    S11: [0.8053e-10, 5e-15],
    S12: [-0.7878e-11, 5e-16],
    S16: [-0.3234e-10, 5e-15],
    S22: [0.3475e-10, 5e-15],
    S26: [-0.4696e-10, 5e-15],
    S66: [0.1141e-9, 5e-14],
  });
  assertPrinted(rotatedStiffness(GRAPHITE_EPOXY, 60), {
    Q11: [23.65, 5e-3],
    Q12: [32.46, 5e-3],
    Q16: [20.05, 5e-3],
    Q22: [109.4, 0.05],
    Q26: [54.19, 5e-3],
    Q66: [36.74, 5e-3],
  }, GPa);
});

Deno.test("graphite/epoxy at 60° under (2, −3, 4) MPa (Kaw 2006, example 2.7)", () => {
  const { S11, S12, S16, S22, S26, S66 } = rotatedCompliance(GRAPHITE_EPOXY, 60);
  const stress = { sigmaX: 2e6, sigmaY: -3e6, tauXY: 4e6 };
  const { sigmaX, sigmaY, tauXY } = stress;
  const strain = {
    epsilonX: S11 * sigmaX + S12 * sigmaY + S16 * tauXY,
    epsilonY: S12 * sigmaX + S22 * sigmaY + S26 * tauXY,
    gammaXY: S16 * sigmaX + S26 * sigmaY + S66 * tauXY,
  };
  assertPrinted(strain, {
    epsilonX: [0.5534e-4, 5e-9],
    epsilonY: [-0.3078e-3, 5e-8],
    gammaXY: [0.5328e-3, 5e-8],
  });
  assertPrinted(strainToPly(strain, 60), {
    epsilon1: [0.1367e-4, 5e-9],
    epsilon2: [-0.2662e-3, 5e-8],
    gamma12: [-0.5809e-3, 5e-8],
  });
  assertPrinted(stressToPly(stress, 60), {
    sigma1: [1.714, 5e-4],
    sigma2: [-2.714, 5e-4],
    tau12: [-4.165, 5e-4],
  }, 1e6);
  // The printed principal axes: turned by 29.00°, no shear is left.
  assertPrinted(stressToPly(stress, 29.00), {
    sigma1: [4.217, 5e-4],
    sigma2: [-5.217, 5e-4],
    tau12: [0, 1e-3],
  }, 1e6);
  assertPrinted(stressToPly(stress, 29.00 - 45), { tau12: [4.717, 5e-4] }, 1e6);
});

Deno.test("graphite/epoxy at 60° under shear of 2 MPa (Kaw 2006, example 2.8)", () => {
  const { S16, S26, S66 } = rotatedCompliance(GRAPHITE_EPOXY, 60);
  assertClose(S16 * 2e6 * 1e6, -64.68, { absolute: 0.005 });
  assertClose(S26 * 2e6 * 1e6, -93.92, { absolute: 0.005 });
  assertClose(S66 * 2e6 * 1e6, 228.3, { absolute: 0.05 });
});

Deno.test("graphite/epoxy at 60°: moduli (Kaw 2006, chapter 2)", () => {
  const { membraneFree } = engineeringConstants(stackOf(GRAPHITE_EPOXY, 1e-3, [60]));
  assertPrinted(membraneFree, { Ex: [12.42, 5e-3], Ey: [28.78, 5e-3], Gxy: [8.761, 5e-4] }, GPa);
  assertClose(membraneFree.nuxy, 0.0978, { absolute: 5e-5 });
});

Deno.test("invariants of graphite/epoxy (Kaw 2006, example 2.12; Tsai and Hahn 1980, table 3.2)", () => {
  assertPrinted(stiffnessInvariants(GRAPHITE_EPOXY), {
    U1: [76.37, 5e-3],
    U2: [85.73, 5e-3],
    U3: [19.71, 5e-3],
    U4: [22.61, 5e-3],
  }, GPa);
  // The sign of V3 is the formula's; its digits are the book's.
  assertPrinted(complianceInvariants(GRAPHITE_EPOXY), {
    V1: [0.5553e-10, 5e-15],
    V2: [-0.4578e-10, 5e-15],
    V3: [-0.4220e-11, 5e-16],
    V4: [-0.5767e-11, 5e-16],
  });
});

Deno.test("Q and U of four laminas (Tsai and Hahn 1980, tables 1.6, 1.7 and 3.2)", () => {
  const boron = inGPa(204, 18.5, 0.23, 5.59);
  assertPrinted(reducedStiffness(boron), {
    Q11: [204.98, 5e-3],
    Q22: [18.58, 9.4e-3],
    Q12: [4.275, 5.3e-4],
    Q66: [5.59, 5.6e-9],
  }, GPa);
  const carbon = inGPa(138, 8.96, 0.3, 7.1);
  assertPrinted(reducedStiffness(carbon), {
    Q11: [138.81, 5e-3],
    Q22: [9.013, 5e-4],
    Q12: [2.704, 5e-4],
  }, GPa);
  assertPrinted(stiffnessInvariants(carbon), {
    U1: [59.66, 5e-3],
    U2: [64.89, 9.5e-3],
    U3: [14.25, 5e-3],
    U4: [16.95, 6e-3],
    U5: [21.35, 5e-3],
  }, GPa);
  const glass = inGPa(38.6, 8.27, 0.26, 4.14);
  assertPrinted(reducedStiffness(glass), {
    Q11: [39.16, 7.5e-3],
    Q22: [8.392, 5e-4],
    Q12: [2.182, 5e-4],
  }, GPa);
  assertPrinted(stiffnessInvariants(glass), {
    U1: [20.45, 5e-3],
    U2: [15.38, 8.1e-3],
    U3: [3.33, 5e-3],
    U4: [5.51, 5e-3],
    U5: [7.47, 5e-3],
  }, GPa);
  const aramid = inGPa(76, 5.5, 0.34, 2.3);
  assertPrinted(reducedStiffness(aramid), {
    Q11: [76.64, 5e-3],
    Q22: [5.546, 5e-4],
    Q12: [1.886, 5e-4],
  }, GPa);
  assertPrinted(stiffnessInvariants(aramid), {
    U1: [32.44, 5e-3],
    U2: [35.55, 5e-3],
    U3: [8.65, 5e-3],
    U4: [10.54, 5e-3],
    U5: [10.95, 5e-3],
  }, GPa);
});

Deno.test("quasi-isotropic graphite/epoxy (Tsai and Hahn 1980, chapter 4; Kaw 2006, section 5.4)", () => {
  for (const half of [[0, 60, -60], [0, 90, 45, -45]]) {
    const stack = stackOf(GRAPHITE_EPOXY, 1e-4, [...half, ...half.toReversed()]);
    const { membraneFree } = engineeringConstants(stack);
    assertPrinted(membraneFree, { Ex: [69.68, 5e-3], Ey: [69.68, 5e-3], Gxy: [26.88, 5e-3] }, GPa);
    assertClose(membraneFree.nuxy, 0.296, { absolute: 5e-4 });
  }
});

Deno.test("A, B, D of [0/30/−45] (Kaw 2006, example 4.2)", () => {
  // The book's z points down and its first ply lies at −h/2: ours points up from the first ply.
  assertPrinted(laminateStiffness(stackOf(GRAPHITE_EPOXY, 5e-3, [0, 30, -45])), {
    A11: [1.739e9, 5e5],
    A12: [3.884e8, 5e4],
    A16: [5.663e7, 5e3],
    A22: [4.533e8, 5e4],
    A26: [-1.141e8, 5e4],
    A66: [4.525e8, 5e4],
    B11: [-3.129e6, 500],
    B12: [9.855e5, 50],
    B16: [-1.072e6, 500],
    B22: [1.158e6, 500],
    B26: [-1.072e6, 500],
    B66: [9.855e5, 50],
    D11: [3.343e4, 5],
    D12: [6.461e3, 0.5],
    D16: [-5.240e3, 0.5],
    D22: [9.320e3, 0.5],
    D26: [-5.596e3, 0.5],
    D66: [7.663e3, 0.5],
  });
});

Deno.test("constants of [0/90/0] in the plane and in bending (Kaw 2006, example 4.4)", () => {
  const constants = engineeringConstants(stackOf(GRAPHITE_EPOXY, 5e-3, [0, 90, 0]));
  assertPrinted(constants.membraneFree, {
    Ex: [124.5, 0.05],
    Ey: [67.43, 5e-3],
    Gxy: [7.170, 7.2e-9],
  }, GPa);
  assertPrinted(constants.membraneFree, { nuxy: [0.04292, 5e-6], nuyx: [0.02323, 9.6e-6] });
  assertPrinted(constants.flexuralFree, { Ex: [175.0, 0.05], Gxy: [7.170, 7.2e-9] }, GPa);
});

Deno.test("constants of [0/90]s in the plane and in bending (Kaw 2006, chapter 4)", () => {
  const constants = engineeringConstants(stackOf(GRAPHITE_EPOXY, 5e-3, [0, 90, 90, 0]));
  assertPrinted(constants.membraneFree, { Ex: [95.99, 5e-3] }, GPa);
  assertPrinted(constants.membraneFree, { nuxy: [0.0302, 5e-5] });
  assertPrinted(constants.flexuralFree, { Ex: [160.1, 0.05], Ey: [31.73, 5e-3] }, GPa);
});

Deno.test("expansion of [0/90/0] (Kaw 2006, example 4.6)", () => {
  const { membrane } = thermalExpansion(stackOf(GRAPHITE_EPOXY, 5e-3, [0, 90, 0]));
  assertClose(membrane.alphaX, 9.303e-7, { absolute: 5e-11 });
});

Deno.test("thermal and moisture expansion at 60° (Kaw 2006, example 2.20)", () => {
  assertPrinted(rotatedExpansion({ alpha1: 0.02e-6, alpha2: 22.5e-6 }, 60), {
    alphaX: [0.1688e-4, 1.7e-14],
    alphaY: [0.5640e-5, 5.7e-15],
    alphaXY: [-0.1947e-4, 5e-9],
  });
  assertPrinted(rotatedExpansion({ alpha1: 0, alpha2: 0.6 }, 60), {
    alphaX: [0.45, 4.5e-10],
    alphaY: [0.15, 1.5e-10],
    alphaXY: [-0.5196, 5e-5],
  });
});

Deno.test("stiffness of graphite/epoxy as a solid (Kaw 2006, example 2.5)", () => {
  const solid = { ...GRAPHITE_EPOXY, E3: 10.3e9, nu13: 0.27, nu23: 0.6, G23: 3e9, G13: 7e9 };
  assertPrinted(solidStiffness(solid), {
    C11: [185.0, 0.05],
    C12: [7.269, 9e-4],
    C13: [7.204, 5e-4],
    C22: [16.38, 5e-3],
    C23: [9.938, 1.5e-3],
    C33: [16.37, 5e-3],
  }, GPa);
});

Deno.test("carbon/polymer lamina: S and Q (Hyer 1998, chapter 4)", () => {
  const lamina = inGPa(155, 12.1, 0.248, 4.4);
  assertPrinted(reducedCompliance(lamina), {
    S11: [6.45, 5e-3],
    S12: [-1.600, 1.6e-9],
    S22: [82.6, 0.05],
    S66: [227, 0.5],
  }, 1e-12);
  assertPrinted(reducedStiffness(lamina), {
    Q11: [155.7, 0.05],
    Q12: [3.02, 5e-3],
    Q22: [12.16, 5e-3],
    Q66: [4.40, 4.4e-9],
  }, GPa);
});

Deno.test("cube of 60 mm pulled across the fibres by 100 kN (Hyer 1998, chapter 2; Voyiadjis and Kattan 2005, example 2.3)", () => {
  const { S12, S22, S23 } = solidCompliance({
    ...inGPa(155, 12.1, 0.248, 4.4),
    E3: 12.1e9,
    nu13: 0.248,
    nu23: 0.458,
    G23: 3.2e9,
    G13: 4.4e9,
  });
  const stress = 100e3 / 0.06 ** 2;
  assertClose([S12, S22, S23].map((s) => s * stress * 60), [-0.0027, 0.1377, -0.0631], {
    absolute: 5e-5,
  });
});

Deno.test("carbon/epoxy at 45°, and A and D of [45/−45]s (Gibson, chapters 2 and 7)", () => {
  const lamina = inGPa(138, 9, 0.3, 6.9);
  assertPrinted(reducedStiffness(lamina), {
    Q11: [138.8, 0.05],
    Q12: [2.72, 5e-3],
    Q22: [9.05, 5e-3],
    Q66: [6.9, 6.9e-9],
  }, GPa);
  assertPrinted(rotatedStiffness(lamina, 45), {
    Q11: [45.22, 5.1e-3],
    Q12: [31.42, 5.1e-3],
    Q16: [32.44, 5e-3],
    Q66: [35.6, 0.05],
  }, GPa);
  const stiffness = laminateStiffness(stackOf(lamina, 0.25e-3, [45, -45, -45, 45]));
  assertPrinted(stiffness, { A11: [45.22, 5.1e-3], A12: [31.42, 5.1e-3], A66: [35.6, 0.05] }, 1e6);
  assertPrinted(stiffness, {
    D11: [3.77, 5e-3],
    D12: [2.62, 5e-3],
    D16: [2.03, 5e-3],
    D66: [2.97, 5e-3],
  });
});

Deno.test("lamina under (50, 25, 40) MPa (Megson, 4th ed., example 25.2; partly read)", () => {
  const lamina = inGPa(120, 80, 0.3, 5);
  assertClose(minorPoissonRatio(lamina), 0.2, { absolute: 2e-10 });
  const { S11, S12, S22, S66 } = reducedCompliance(lamina);
  assertClose((S11 * 50 + S12 * 25) * 1e6, 3.54e-4, { absolute: 5e-7 });
  assertClose((S12 * 50 + S22 * 25) * 1e6, 1.88e-4, { absolute: 5.1e-7 });
  assertClose(S66 * 40 * 1e6, 80e-4, { absolute: 8e-12 });
});

Deno.test("carbon/epoxy at 45° (Mallick, 3rd ed., example 3.6)", () => {
  assertPrinted(rotatedStiffness(inGPa(133.44, 8.78, 0.26, 3.254), 45), {
    Q11: [40.11, 6.3e-3],
    Q12: [33.61, 5e-3],
    Q16: [31.30, 5e-3],
    Q66: [34.57, 5e-3],
  }, GPa);
});

Deno.test("E-glass/polyester: Q, Q̄ at −55°, [55/−55] (Barbero, examples 5.1, 5.3, 5.6; read)", () => {
  const lamina = inGPa(19.981, 11.389, 0.274, 3.789);
  assertPrinted(reducedStiffness(lamina), {
    Q11: [20.874, 5e-4],
    Q12: [3.260, 5e-4],
    Q22: [11.898, 5e-4],
    Q66: [3.789, 3.8e-9],
  }, GPa);
  assertPrinted(rotatedStiffness(lamina, -55), {
    Q11: [12.4016496, 5e-8],
    Q12: [5.70964889, 5e-9],
    Q16: [-1.21713152, 5e-9],
    Q22: [15.4716607, 5e-8],
    Q26: [-3.00026153, 5e-9],
    Q66: [6.23855472, 5e-9],
  }, GPa);
  const stiffness = laminateStiffness(stackOf(lamina, 0.635e-3, [55, -55]));
  assertPrinted(stiffness, {
    A11: [15.750095, 5e-7],
    A12: [7.2512541, 5e-8],
    A22: [19.649009, 5e-7],
    A66: [7.9229645, 5e-8],
  }, 1e6);
  assertPrinted(stiffness, { B16: [-0.49077786, 5e-9], B26: [-1.2097805, 5e-8] }, 1e3);
  assertPrinted(stiffness, {
    D11: [2.1169440, 5e-8],
    D12: [0.97462898, 5e-9],
    D22: [2.6409906, 5e-8],
    D66: [1.0649125, 5e-8],
  });
});
