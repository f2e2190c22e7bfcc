import { assertEquals } from "@std/assert";
import { assertClose } from "../close.ts";
import {
  filletSection,
  hashinShtrikmanBounds,
  hollowRadiusRatio,
  isotropicModuli,
  largestRadius,
  relativeViscosity,
  SPHERE_PACKINGS,
  stiffestRecipe,
  stirVerdict,
} from "../../lib/filler/mod.ts";

// G. Mavko, T. Mukerji, J. Dvorkin, The Rock Physics Handbook (Cambridge), worked example of the
// Hashin-Shtrikman section, from memory. Printed to three digits, in GPa.
Deno.test("bounds of quartz, calcite and water are the handbook's", () => {
  const bounds = hashinShtrikmanBounds([
    { bulkModulus: 36e9, shearModulus: 45e9, fraction: 0.584 },
    { bulkModulus: 75e9, shearModulus: 31e9, fraction: 0.146 },
    { bulkModulus: 2.2e9, shearModulus: 0, fraction: 0.27 },
  ]);
  assertClose(bounds.bulkModulus.high, 26.9e9, { absolute: 0.05e9 });
  assertClose(bounds.bulkModulus.low, 7.10e9, { absolute: 0.005e9 });
  assertClose(bounds.shearModulus.high, 24.6e9, { absolute: 0.05e9 });
  assertClose(bounds.shearModulus.low, 0, { absolute: 1 });
});

// Densest packing after Kepler, and G. D. Scott, D. M. Kilgour, J. Phys. D 2 (1969) 863 for
// random packing, 0.6366 ± 0.0005; partly read, the rest from memory.
Deno.test("packings of equal spheres are the printed ones", () => {
  assertClose(SPHERE_PACKINGS.densest, 0.7405, { absolute: 5e-5 });
  assertClose(SPHERE_PACKINGS.simpleCubic, 0.5236, { absolute: 5e-5 });
  assertClose(SPHERE_PACKINGS.bodyCentred, 0.6802, { absolute: 5e-5 });
  assertClose(SPHERE_PACKINGS.random, 0.6366, { absolute: 5e-4 });
});

// N. Gupta and co-workers, table of microballoon radius ratios (e.g. J. Mater. Sci. 39, 2004),
// from memory; glass 2540 kg/m³.
Deno.test("radius ratios of hollow glass spheres are the printed ones", () => {
  for (const [density, ratio] of [[220, 0.970], [320, 0.956], [460, 0.936]] as const) {
    assertClose(hollowRadiusRatio(density, 2540), ratio, { absolute: 5e-4 });
  }
});

// R. M. Christensen, Mechanics of Composite Materials, dilute suspensions, and H. M. Smallwood,
// J. Appl. Phys. 15 (1944) 758: rigid spheres in an incompressible matrix stiffen it by 2.5 φ,
// voids soften it by 5/3 φ; from memory. The bounds touch these where the spheres are apart.
Deno.test("few spheres in an incompressible matrix change its shear modulus as published", () => {
  const matrix = { bulkModulus: 1e12, shearModulus: 1 };
  const few = 1e-6;
  const rigid = hashinShtrikmanBounds([
    { ...matrix, fraction: 1 - few },
    { bulkModulus: 1e12, shearModulus: 1e12, fraction: few },
  ]);
  // The next term of the series is 2.5 φ², hence 1e-5 on a coefficient at φ = 1e-6.
  assertClose((rigid.shearModulus.low - 1) / few, 2.5, { absolute: 1e-5 });
  const voids = hashinShtrikmanBounds([
    { ...matrix, fraction: 1 - few },
    { bulkModulus: 0, shearModulus: 0, fraction: few },
  ]);
  assertClose((1 - voids.shearModulus.high) / few, 1.6667, { absolute: 5e-5 });
});

// The same source for a compressible matrix: voids soften it by 15(1 − ν)/(7 − 5ν) φ.
Deno.test("few voids in a resin of Poisson ratio 0.35 soften it as published", () => {
  const few = 1e-6;
  const resin = isotropicModuli(3e9, 0.35);
  const { shearModulus } = hashinShtrikmanBounds([
    { ...resin, fraction: 1 - few },
    { bulkModulus: 0, shearModulus: 0, fraction: few },
  ]);
  const slope = (1 - shearModulus.high / resin.shearModulus) / few;
  assertClose(slope, 15 * 0.65 / (7 - 1.75), { absolute: 1e-5 });
});

// Machinery's Handbook, areas of plane figures: spandrel or fillet, A = 0.215 r² = 0.1075 c²; from
// memory. Exact are 0.21460 and 0.10730: the handbook halves the rounded 0.215.
Deno.test("area of a square corner's fillet is the handbook's", () => {
  const { area, chord } = filletSection(1, 90);
  assertClose(area, 0.215, { absolute: 5e-4 });
  assertClose(area / chord ** 2, 0.1075, { absolute: 2.1e-4 });
});

// common practice, no source: a limit of 1 inch is checked with a cylinder of 2 inch.
Deno.test("a radius limit of 1 inch is checked with a cylinder of 2 inch", () => {
  const { gaugeDiameter } = largestRadius({ cornerDeg: 90, limits: { radius: 0.0254 } });
  assertClose(gaugeDiameter, 0.0508, { relative: 1e-15 });
});

// A. Einstein, Ann. Phys. 19 (1906), corrected 34 (1911): 2.5; I. M. Krieger, T. J. Dougherty,
// Trans. Soc. Rheol. 3 (1959) 137; from memory.
Deno.test("few spheres thicken a liquid by 2.5 φ", () => {
  const few = 1e-8;
  const slope = (relativeViscosity(few, { maximumPacking: 0.64 }) - 1) / few;
  // Rounding of 1 + 2.5e-8 leaves 1e-8 of the slope, the next term 5e-8.
  assertClose(slope, 2.5, { absolute: 1e-6 });
});

// The same: (1 − 0.5/0.64)^(−1.6), printed 11.4.
Deno.test("spheres at half the volume thicken a liquid 11.4 times", () => {
  assertClose(relativeViscosity(0.5, { maximumPacking: 0.64 }), 11.4, { absolute: 0.05 });
});

// common practice, no source: putty is mixed until it can hardly be stirred and holds a peak. Spheres
// of 60 µm with half a µm of resin around each stand there: resin of 1 Pa s becomes as thick as
// peanut butter, some 100 to 250 Pa s (from memory), about the end of what a stick stirs.
Deno.test("putty as stiff as can be stirred stands at the limit of stirring", () => {
  const recipe = stiffestRecipe(
    { particleDiameter: 60e-6, filmThickness: 0.5e-6 },
    {
      resinDensity: 1150,
      filler: { particleDensity: 200, bulkDensity: 128, packing: 0.64 },
      airFraction: 0.03,
    },
  );
  assertEquals(recipe.notes.length, 1);
  const stirring = { maximumPacking: 0.64, resinViscosity: 1, thickestStirred: 150 };
  assertEquals(stirVerdict(recipe, stirring).verdict, "not known");
});
