import { assertClose } from "../close.ts";
import {
  fibreMassFraction,
  fibreVolumeFraction,
  laminateDensity,
  layerContents,
  plyThickness,
  uncertainFibreAndLaminate,
  voidFraction,
  voidFreeDensity,
} from "../../lib/constituents/mod.ts";

// A. K. Kaw, Mechanics of Composite Materials, 2nd ed., CRC Press 2006, example 3.1, from memory.
Deno.test("Kaw example 3.1: densities, mass fractions and volumes of 4 kg of glass/epoxy", () => {
  const densities = { fibreDensity: 2500, resinDensity: 1200 };
  const density = laminateDensity(0.7, densities);
  const W = fibreMassFraction(0.7, densities);
  assertClose(density, 2110, { relative: 1e-12 });
  assertClose(W, 0.8294, { absolute: 5e-5 });
  assertClose(1 - W, 0.1706, { absolute: 5e-5 });
  const litres = 4 / density * 1000;
  assertClose(litres, 1.896, { absolute: 0.0005 });
  assertClose(0.7 * litres, 1.327, { absolute: 0.0005 });
  assertClose(0.3 * litres, 0.5688, { absolute: 8.2e-5 });
  assertClose(4 * W, 3.318, { absolute: 0.0005 });
  // The book multiplies the rounded volume; unrounded 0.68246.
  assertClose(4 * (1 - W), 0.6826, { absolute: 1.4e-4 });
});

// J. F. Shackelford, Introduction to Materials Science for Engineers, example 14.1; partly read,
// the rest from memory.
Deno.test("Shackelford example 14.1: 70 % glass by volume is 84.3 % by mass", () => {
  const densities = { fibreDensity: 2540, resinDensity: 1100 };
  assertClose(100 * fibreMassFraction(0.7, densities), 84.3, { absolute: 0.05 });
  assertClose(laminateDensity(0.7, densities) / 1000, 2.11, { absolute: 0.005 });
});

// ISO 12215-5:2008, annex C, thickness of E-glass laminates per dry glass mass, from memory:
// t/w = (2.56/ψ − 1.36)/3.072 in mm per kg/m², ψ the glass mass fraction. It is the mass balance
// with 2.56 and 1.20 g/cm³, so that ours must agree to rounding.
Deno.test("ISO 12215-5 annex C: ply thickness of E-glass from its mass fraction", () => {
  const densities = { fibreDensity: 2560, resinDensity: 1200 };
  const thickness = (psi: number): number =>
    1000 * plyThickness({
      arealWeight: 1,
      fibreDensity: 2560,
      fibreVolumeFraction: fibreVolumeFraction(psi, densities),
    });
  const printed = [[0.3, 2.33507], [0.48, 1.2934], [0.5, 1.22396], [0.55, 1.07244]] as const;
  for (const [psi, t] of printed) assertClose(thickness(psi), t, { absolute: 5e-6 });
  for (let psi = 0.05; psi <= 0.95; psi += 0.05) {
    assertClose(thickness(psi), (2.56 / psi - 1.36) / 3.072, { relative: 1e-12 });
  }
  assertClose(thickness(0.3), 2.335, { absolute: 0.0005 });
  assertClose(thickness(0.5), 1.224, { absolute: 0.0005 });
});

// ASTM D2734: V = 100 (Td − Md)/Td, Td = 100/(R/D + r/d) with resin R and reinforcement r in per
// cent by mass; the form from memory. The figures are worked by hand: R 30, D 1.20, r 70, d 2.56:
// Td = 100/(25 + 27.34375) = 1.910447761...; Md 1.87 gives V 2.1171875.
Deno.test("ASTM D2734: void content from measured and theoretical density", () => {
  const theoretical = voidFreeDensity(0.7, { fibreDensity: 2560, resinDensity: 1200 });
  assertClose(theoretical / 1000, 100 / 52.34375, { relative: 1e-12 });
  assertClose(100 * voidFraction(1870, theoretical), 2.1171875, { relative: 1e-10 });
});

// Guide figures of the boat-building trade for a hand-laid mat, 0.30 glass by mass: ISO 12215-5
// tables 450 g/m² of mat at about 1.05 mm and a bit over 1 kg of resin per m²; from memory.
Deno.test("a 450 g mat by hand is about a millimetre thick and takes about a kilogram", () => {
  const densities = { fibreDensity: 2560, resinDensity: 1200 };
  const ply = layerContents({
    arealWeight: 0.45,
    fibreVolumeFraction: fibreVolumeFraction(0.3, densities),
    ...densities,
  });
  assertClose(ply.thickness, 1.05e-3, { absolute: 0.005e-3 });
  assertClose(ply.resinPerArea, 1.05, { absolute: 0.005 });
});

// Uncertainty of a fibre volume fraction by the law of propagation (JCGM 100:2008, 5.1.2 and
// 5.2.2), worked out by hand derivatives in an independent program: mf 0.812 ± 0.002,
// mc 1.407 ± 0.003 kg, ρf 2560 ± 15, ρm 1150 ± 10 kg/m³.
Deno.test("GUM: fibre fraction from two weighings, independent and on one scale", () => {
  const weighed = {
    massFibre: { value: 0.812, u: 0.002 },
    massLaminate: { value: 1.407, u: 0.003 },
    fibreDensity: { value: 2560, u: 15 },
    resinDensity: { value: 1150, u: 10 },
  };
  const { fibreVolumeFraction: Vf } = uncertainFibreAndLaminate(weighed);
  assertClose(Vf.value, 0.3800569800569801, { relative: 1e-12 });
  assertClose(Vf.u, 0.003065624491938862, { relative: 1e-9 });
  assertClose(Vf.U, 2 * 0.003065624491938862, { relative: 1e-9 });
  assertClose(Vf.sensitivity.massFibre, 0.6861539852992844, { relative: 1e-9 });
  assertClose(Vf.sensitivity.massLaminate, -0.3959893646503334, { relative: 1e-9 });
  assertClose(Vf.sensitivity.fibreDensity, -9.20365906120892e-5, { relative: 1e-9 });
  assertClose(Vf.sensitivity.resinDensity, 2.0488145388430294e-4, { relative: 1e-9 });
  const oneScale = uncertainFibreAndLaminate(weighed, 0.9).fibreVolumeFraction;
  assertClose(oneScale.u, 0.0025423589388819706, { relative: 1e-9 });
});
