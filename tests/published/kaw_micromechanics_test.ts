import { assertClose } from "../close.ts";
import {
  diameterToSpacing,
  fibreLoadShare,
  halpinTsaiEta,
  hashinHillBounds,
  hewittMalherbeXi,
  isotropicFibre,
  isotropicShearModulus,
  largestFibreFraction,
  longitudinalCompression,
  longitudinalModulus,
  longitudinalTension,
  majorPoissonRatio,
  mixMoistureExpansion,
  mixThermalExpansion,
  reuss,
  shearModulusHalpinTsai,
  shearModulusInverse,
  transverseModulusHalpinTsai,
  transverseModulusInverse,
  transverseStrengths,
  voigt,
} from "../../lib/micromechanics/mod.ts";
import { minorPoissonRatio } from "../../lib/laminate/mod.ts";

// A. K. Kaw, Mechanics of Composite Materials, 2nd ed., CRC Press 2006, chapter 3: one glass/epoxy
// runs through its examples. All values from memory; tolerances are half of the last printed digit
// unless a line says otherwise.
const GPa = 1e9, MPa = 1e6;
const fibre = isotropicFibre({ E: 85 * GPa, nu: 0.2 });
const resin = { E: 3.4 * GPa, nu: 0.3 };
const mix = { fibre, resin, fibreVolumeFraction: 0.7 };

Deno.test("Kaw example 3.3: modulus along the fibres and the fibres' share of the load", () => {
  assertClose(longitudinalModulus(mix) / GPa, 60.52, { relative: 1e-12 });
  assertClose(fibreLoadShare(mix), 0.9831, { absolute: 5e-5 });
});

Deno.test("Kaw examples 3.4 and 3.5: modulus across, Poisson ratios", () => {
  const E2 = transverseModulusInverse(mix);
  assertClose(E2 / GPa, 10.37, { absolute: 0.005 });
  const nu12 = majorPoissonRatio(mix);
  assertClose(nu12, 0.23, { relative: 1e-12 });
  // The book divides rounded moduli: 0.230 × 10.37 / 60.52.
  assertClose(minorPoissonRatio({ E1: 60.52 * GPa, E2, nu12, G12: 4e9 }), 0.03941, {
    absolute: 1.6e-5,
  });
});

Deno.test("Kaw example 3.6: shear moduli, the book's G12 from Gm rounded to 1.308", () => {
  assertClose(fibre.G12 / GPa, 35.42, { absolute: 0.005 });
  assertClose(isotropicShearModulus(resin) / GPa, 1.308, { absolute: 0.0005 });
  assertClose(shearModulusInverse(mix) / GPa, 4.014, { absolute: 0.0008 });
});

Deno.test("Kaw examples 3.7 and 3.8: Halpin and Tsai, then the exponent of Hewitt", () => {
  assertClose(halpinTsaiEta(85, 3.4, 2), 0.8889, { absolute: 5e-5 });
  assertClose(transverseModulusHalpinTsai(mix) / GPa, 20.2, { relative: 1e-12 });
  const Gm = isotropicShearModulus(resin);
  assertClose(halpinTsaiEta(fibre.G12, Gm, 1), 0.9288, { absolute: 5e-5 });
  // From rounded shear moduli in the book: 6.169 printed, 6.168 unrounded.
  assertClose(shearModulusHalpinTsai(mix) / GPa, 6.169, { absolute: 0.0011 });
  const xi = hewittMalherbeXi(0.7);
  assertClose(xi, 2.13, { absolute: 0.0005 });
  assertClose(halpinTsaiEta(fibre.G12, Gm, xi), 0.8928, { absolute: 6.2e-5 });
  assertClose(shearModulusHalpinTsai(mix, xi) / GPa, 8.13, { absolute: 0.0007 });
});

Deno.test("Kaw examples 3.9 and 3.10: concentric cylinders, fibre set in resin", () => {
  const bounds = hashinHillBounds(mix);
  assertClose(bounds.E1.low / GPa, 60.53, { absolute: 0.005 });
  // For this pair the fibre set in resin gives the upper bound of the Poisson ratio.
  assertClose(bounds.nu12.high, 0.2238, { absolute: 5e-5 });
});

Deno.test("Kaw example 3.13: tension along the fibres and critical fibre fractions", () => {
  const tension = longitudinalTension({
    fibre: { ...fibre, tensileStrength: 1550 * MPa },
    resin: { ...resin, tensileStrength: 72 * MPa },
    fibreVolumeFraction: 0.7,
  });
  assertClose(tension.strength / MPa, 1104, { absolute: 0.5 });
  assertClose(tension.fibreFailureStrain, 0.01823, { absolute: 5.4e-6 });
  assertClose(tension.resinFailureStrain, 0.02117, { absolute: 6.6e-6 });
  // The book rounds the strain to four digits before it takes a small difference.
  assertClose(tension.minimumFibreFraction, 0.006422, { absolute: 1.2e-5 });
  assertClose(tension.criticalFibreFraction, 0.006732, { absolute: 1.2e-5 });
});

Deno.test("Kaw example 3.14: compression along the fibres by each mode", () => {
  assertClose(diameterToSpacing(0.7), 0.9441, { absolute: 5e-5 });
  const compression = longitudinalCompression({
    fibre,
    resin: { ...resin, tensileStrength: 72 * MPa },
    fibreVolumeFraction: 0.7,
  });
  // The book carries four digits through the chain; unrounded figures differ in the last.
  assertClose(compression.transverseFailureStrain, 0.001983, { absolute: 1.2e-6 });
  assertClose(compression.transverseFailureStrainEmpirical, 0.002373, { absolute: 9e-7 });
  assertClose(compression.splitting / MPa, 521.8, { absolute: 0.3 });
  // By hand: E1 = 60.52 GPa, ν12 = 0.23, 72/3400 × (1 − 0.7^⅓): 624.6 MPa.
  assertClose(
    compression.splittingEmpirical / MPa,
    60520 / 0.23 * 72 / 3400 * (1 - 0.7 ** (1 / 3)),
    { relative: 1e-12 },
  );
  assertClose(compression.shearBuckling / MPa, 4360, { absolute: 1.1 });
  assertClose(compression.extensionBuckling / MPa, 21350, { absolute: 0.6 });
});

Deno.test("Kaw examples 3.15 to 3.17: strengths where the resin decides", () => {
  const strengths = transverseStrengths({
    fibre,
    resin: {
      ...resin,
      tensileStrength: 72 * MPa,
      compressiveStrength: 102 * MPa,
      shearStrength: 34 * MPa,
    },
    fibreVolumeFraction: 0.7,
  });
  assertClose(strengths.tension / MPa, 20.56, { absolute: 0.007 });
  assertClose(strengths.compression / MPa, 29.15, { absolute: 0.015 });
  assertClose(strengths.shear / MPa, 9.469, { absolute: 0.0043 });
});

Deno.test("Kaw examples 3.18 and 3.19: expansion by heat (Schapery 1968) and by moisture", () => {
  const heat = mixThermalExpansion({
    fibre: { ...fibre, alpha1: 5e-6, alpha2: 5e-6 },
    resin: { ...resin, alpha: 63e-6 },
    fibreVolumeFraction: 0.7,
  });
  assertClose(heat.along * 1e6, 5.978, { absolute: 0.0005 });
  assertClose(heat.across * 1e6, 27.4, { absolute: 0.005 });
  const moisture = mixMoistureExpansion({
    fibre: { ...fibre, density: 2500 },
    resin: { ...resin, density: 1200, beta: 0.33 },
    fibreVolumeFraction: 0.7,
  });
  assertClose(moisture.along, 0.0326, { absolute: 5e-6 });
  assertClose(moisture.across, 0.7468, { absolute: 5e-5 });
});

// W. D. Callister, Materials Science and Engineering, composites chapter, example 16.2: glass and
// polyester, partly read, the rest from memory.
Deno.test("Callister example 16.2: modulus across glass in polyester", () => {
  const E = reuss({ fibre: 69, resin: 3.4, fibreVolumeFraction: 0.4 });
  assertClose(E, 5.5, { absolute: 0.05 });
});

// T. H. G. Megson, Aircraft Structures for Engineering Students, 4th ed., example 25.1: a bar
// 80 mm wide of 20 mm epoxy, 10 mm carbon, 20 mm epoxy, 500 mm long under 100 kN; partly read,
// the rest from memory.
Deno.test("Megson example 25.1: a bar of three layers in tension", () => {
  const fibreVolumeFraction = 10 / 50;
  const E = voigt({ fibre: 200e3, resin: 5e3, fibreVolumeFraction });
  const nu = voigt({ fibre: 0.3, resin: 0.2, fibreVolumeFraction });
  const strain = 100e3 / (80 * 50) / E;
  assertClose(E, 44000, { relative: 1e-12 });
  assertClose(nu, 0.22, { relative: 1e-12 });
  assertClose(strain * 500, 0.284, { absolute: 0.0005 });
  assertClose(nu * strain * 50, 0.006, { absolute: 0.0005 });
  assertClose(strain * 5e3, 2.84, { absolute: 0.005 });
  assertClose(strain * 200e3, 113.6, { absolute: 0.05 });
});

// P. K. Mallick, Fiber-Reinforced Composites, 3rd ed., CRC Press 2008, example 3.6, from memory;
// the carbon fibre is treated as isotropic there.
Deno.test("Mallick example 3.6: carbon/epoxy by rules of mixtures, and its reduced stiffness", () => {
  const carbon = {
    fibre: isotropicFibre({ E: 220 * GPa, nu: 0.2 }),
    resin: { E: 3.6 * GPa, nu: 0.35 },
    fibreVolumeFraction: 0.6,
  };
  const E1 = longitudinalModulus(carbon) / GPa;
  const E2 = transverseModulusInverse(carbon) / GPa;
  const nu12 = majorPoissonRatio(carbon);
  assertClose(E1, 133.4, { absolute: 0.05 });
  assertClose(E2, 8.78, { absolute: 0.005 });
  assertClose(nu12, 0.26, { relative: 1e-12 });
  // The book takes Gm as 1.33.
  assertClose(shearModulusInverse(carbon) / GPa, 3.254, { absolute: 0.0084 });
  const whole = 1 - nu12 * minorPoissonRatio({ E1, E2, nu12, G12: 3.254 });
  assertClose(E1 / whole, 134.03, { absolute: 0.0067 });
  assertClose(E2 / whole, 8.82, { absolute: 0.005 });
  assertClose(nu12 * E2 / whole, 2.29, { absolute: 0.005 });
});

// In most texts, e.g. R. M. Jones, Mechanics of Composite Materials, 2nd ed., chapter 3; from
// memory.
Deno.test("fibres touch at the printed fractions", () => {
  assertClose(largestFibreFraction("square"), 0.785, { absolute: 0.0005 });
  assertClose(largestFibreFraction("hexagonal"), 0.907, { absolute: 0.0005 });
});
