import { assert } from "@std/assert";
import type { Lamina } from "../../lib/materials/mod.ts";
import {
  curedPly,
  curedStrengths,
  glassMatDefaults,
  parallelFibreLamina,
} from "../../lib/micromechanics/mod.ts";
import { fibreVolumeFraction } from "../../lib/constituents/mod.ts";
import { assertClose } from "../close.ts";
import { named, readCatalogue } from "../materials/catalogue.ts";

const { fibres, resins, reinforcements } = readCatalogue();
const GPa = 1e9, MPa = 1e6;

function ply(cloth: string, resinName: string, fibreVolumeFraction: number): Lamina {
  const reinforcement = named(reinforcements, cloth);
  return curedPly({
    reinforcement,
    fibre: named(fibres, reinforcement.fibre),
    resin: named(resins, resinName),
    fibreVolumeFraction,
  }).lamina;
}

/** Fails unless predicted over measured lies between the two. */
function ratio(predicted: number, measured: number, limits: readonly [number, number]): void {
  const found = predicted / measured;
  assert(
    found >= limits[0] && found <= limits[1],
    `predicted ${predicted} is ${found} of measured`,
  );
}

// P. D. Soden, M. J. Hinton, A. S. Kaddour, Compos. Sci. Technol. 58 (1998) 1011: measured laminae
// of laboratory quality, fibre volume fraction 0.60, from memory. E-glass in anhydride-cured epoxy:
// E1 45.6, E2 16.2, G12 5.83 GPa, ν12 0.278, α 8.6 and 26.4 µm/m/K, Xt 1280, Xc 800, Yt 40,
// Yc 145, S 73 MPa. High-strength carbon in epoxy: 138, 11, 5.5, 0.28, −1 and 26, 1500, 900,
// 27, 200, 80. The models are known to be low in E2 and G12; our estimates of strength are
// meant to be low for a good laboratory ply. The limits say by how much.
Deno.test("a laboratory ply of glass is as stiff as predicted along, stiffer across", () => {
  const mix = {
    fibre: named(fibres, "E-glass"),
    resin: named(resins, "epoxy hot cure"),
    fibreVolumeFraction: 0.6,
  };
  const lamina = parallelFibreLamina(mix);
  ratio(lamina.E1, 45.6 * GPa, [0.95, 1.05]);
  ratio(lamina.E2, 16.2 * GPa, [0.8, 1.05]);
  ratio(lamina.G12, 5.83 * GPa, [0.7, 1.05]);
  ratio(lamina.nu12, 0.278, [0.95, 1.05]);
  ratio(lamina.alpha1, 8.6e-6, [0.7, 1.1]);
  ratio(lamina.alpha2, 26.4e-6, [0.9, 1.3]);
  const form = { form: "unidirectional", weave: "none", warpShare: 1 } as const;
  const strengths = curedStrengths({ ...mix, reinforcement: form });
  ratio(strengths.Xt, 1280 * MPa, [0.6, 1]);
  ratio(strengths.Xc, 800 * MPa, [0.6, 1]);
  // Measured laminae carry cure stress in the Yt; ours counts it in a factor.
  ratio(strengths.Yt, 40 * MPa, [0.7, 1.2]);
  ratio(strengths.Yc, 145 * MPa, [0.5, 1]);
  ratio(strengths.S, 73 * MPa, [0.5, 1]);
});

Deno.test("a laboratory ply of carbon is as stiff as predicted along, stiffer across", () => {
  const mix = {
    fibre: named(fibres, "carbon standard modulus"),
    resin: named(resins, "epoxy hot cure"),
    fibreVolumeFraction: 0.6,
  };
  const lamina = parallelFibreLamina(mix);
  ratio(lamina.E1, 138 * GPa, [0.95, 1.05]);
  ratio(lamina.E2, 11 * GPa, [0.7, 1.05]);
  ratio(lamina.G12, 5.5 * GPa, [0.6, 1.05]);
  ratio(lamina.nu12, 0.28, [0.9, 1.05]);
  const form = { form: "unidirectional", weave: "none", warpShare: 1 } as const;
  const strengths = curedStrengths({ ...mix, reinforcement: form });
  ratio(strengths.Xt, 1500 * MPa, [0.6, 1]);
  ratio(strengths.Xc, 900 * MPa, [0.6, 1]);
  ratio(strengths.Yc, 200 * MPa, [0.4, 1]);
  ratio(strengths.S, 80 * MPa, [0.4, 1]);
});

// Ranges of handbooks for cloth laminates of wet lay-up to bagged quality (MIL-HDBK-17, Smith 1990
// Design of Marine Structures in Composite Materials, and makers' general tables): from memory.
Deno.test("plies of cloth lie in the handbooks' ranges of stiffness", () => {
  const inside = (value: number, low: number, high: number) =>
    assert(value / GPa >= low && value / GPa <= high, `${value / GPa} not in ${low} to ${high}`);
  const glass = ply("glass plain 200", "epoxy laminating slow", 0.45);
  inside(glass.E1, 18, 24);
  inside(glass.G12, 2.5, 5);
  assert(glass.nu12 > 0.1 && glass.nu12 < 0.2);
  const carbon = ply("carbon twill 200", "epoxy laminating slow", 0.5);
  inside(carbon.E1, 50, 65);
  inside(carbon.G12, 2.5, 5);
  assert(carbon.nu12 > 0.02 && carbon.nu12 < 0.1);
  inside(ply("aramid plain 170", "epoxy laminating slow", 0.45).E1, 22, 33);
  inside(ply("glass woven roving 600", "polyester isophthalic", 0.33).E1, 13, 18);
  inside(ply("glass UD 500", "epoxy laminating slow", 0.5).E1, 33, 40);
  inside(ply("flax twill 200", "epoxy laminating slow", 0.3).E1, 8, 14);
});

Deno.test("plies of cloth lie in the handbooks' ranges of strength, at their cautious end", () => {
  const inside = (value: number, low: number, high: number) =>
    assert(value / MPa >= low && value / MPa <= high, `${value / MPa} not in ${low} to ${high}`);
  const glass = ply("glass plain 200", "epoxy laminating slow", 0.45).strengths!;
  inside(glass.Xt, 250, 400);
  inside(glass.Xc, 150, 350);
  inside(glass.S, 30, 90);
  const carbon = ply("carbon twill 200", "epoxy laminating slow", 0.5).strengths!;
  inside(carbon.Xt, 400, 700);
  inside(carbon.Xc, 250, 550);
  const aramid = ply("aramid plain 170", "epoxy laminating slow", 0.45).strengths!;
  inside(aramid.Xt, 300, 500);
  inside(aramid.Xc, 60, 170);
  inside(ply("glass UD 500", "epoxy laminating slow", 0.5).strengths!.Xt, 600, 1000);
});

// ISO 12215-5:2008, annex C, default properties of hand-laid glass mat, table row at 0.30 by mass,
// from memory. Weak: formula and row share one memory.
Deno.test("the standard's formulas give its own row for a mat of 0.30", () => {
  const mat = glassMatDefaults(0.3);
  assertClose(mat.tensileStrength / MPa, 85, { absolute: 1e-9 });
  assertClose(mat.compressiveStrength / MPa, 117, { absolute: 1e-9 });
  assertClose(mat.flexuralStrength / MPa, 152, { absolute: 0.5 });
  assertClose(mat.E / MPa, 6400, { absolute: 1e-6 });
  assertClose(mat.shearStrength / MPa, 62, { absolute: 1e-9 });
  assertClose(mat.G / MPa, 2750, { absolute: 1e-6 });
  assertClose(mat.interlaminarShearStrength / MPa, 17.25, { absolute: 1e-9 });
});

// The same defaults beside our mat: a standard's minimum, so that our stiffness may lie above it
// by up to a third, as tests on mats do (6 to 9 GPa, Smith 1990, from memory).
Deno.test("a mat in polyester stands beside the standard's defaults", () => {
  for (const psi of [0.27, 0.3, 0.35]) {
    const Vf = fibreVolumeFraction(psi, { fibreDensity: 2560, resinDensity: 1200 });
    const mat = ply("glass mat 300", "polyester orthophthalic", Vf);
    const standard = glassMatDefaults(psi);
    ratio(mat.E1, standard.E, [1, 1.4]);
    ratio(mat.G12, standard.G, [0.9, 1.3]);
    ratio(mat.strengths!.Xt, standard.tensileStrength, [0.85, 1.15]);
    ratio(mat.strengths!.Xc, standard.compressiveStrength, [0.6, 1]);
    ratio(mat.strengths!.S, standard.shearStrength, [0.5, 1]);
  }
});
