import { assertEquals, assertThrows } from "@std/assert";
import { assertClose } from "../close.ts";
import { InputError } from "../../lib/check/mod.ts";
import {
  entrainedAir,
  filmFromTrial,
  puttyDensity,
  puttyForVolume,
  puttyFromResin,
  type PuttyIngredients,
  puttyModulusRange,
  type PuttyRecipe,
  puttyStiffness,
  recipeForDensity,
  stiffestRecipe,
} from "../../lib/filler/mod.ts";

// Expected figures of this file: exact fractions (Python's fractions), printed as doubles.

const parts = [
  { mass: 100, density: 1147 },
  { mass: 22, density: 215 },
  { mass: 3, density: 2200 },
];

Deno.test("density of a putty of three parts with air", () => {
  const density = puttyDensity({ parts, airFraction: 0.07, airDensity: 1.2 });
  assertClose(density, 609.1271483908274, { relative: 1e-14 });
  assertClose(puttyDensity({ parts, airFraction: 0 }), 654.8851057965886, { relative: 1e-14 });
});

Deno.test("air follows from a measured density, and a wrong one shows as less than none", () => {
  const air = (measuredDensity: number): number =>
    entrainedAir({ parts, measuredDensity, airDensity: 1.2 });
  assertClose(air(600), 0.08396260723992623, { relative: 1e-13 });
  assertClose(air(500), 0.23694146374628458, { relative: 1e-13 });
  assertEquals(air(660) < 0, true);
});

const light: PuttyIngredients = {
  resinDensity: 1147,
  filler: { particleDensity: 215, bulkDensity: 128, packing: 0.62 },
  airFraction: 0.06,
  airDensity: 1.2,
};

Deno.test("recipe for a target density", () => {
  const recipe = recipeForDensity(640, light);
  assertClose(recipe.fillerMassFraction, 0.15798481325930283, { relative: 1e-13 });
  assertClose(recipe.fillerPerResin, 0.18762703541112621, { relative: 1e-13 });
  assertClose(recipe.fillerVolumeFraction, 0.5002419870331477, { relative: 1e-13 });
  assertClose(recipe.density, 640, { relative: 1e-13 });
  assertEquals(recipe.notes.length, 0);
});

Deno.test("filler, cup and putty for the resin in hand", () => {
  const batch = puttyFromResin(recipeForDensity(640, light), 0.18);
  assertClose(batch.fillerMass, 0.033772866374002716, { relative: 1e-13 });
  assertClose(batch.fillerCupVolume, 0.0002638505185468962, { relative: 1e-13 });
  assertClose(batch.puttyVolume, 0.00033405768519896415, { relative: 1e-13 });
  assertClose(batch.puttyMass, 0.21379691852733704, { relative: 1e-13 });
  // What the putty weighs beyond its parts is the air in it, 24 mg.
  assertClose(batch.puttyMass - 0.18 - batch.fillerMass, 2.4052153334325417e-5, {
    absolute: 1e-15,
  });
});

Deno.test("as stiff as can be stirred: coated spheres packed close", () => {
  const recipe = stiffestRecipe({ particleDiameter: 55e-6, filmThickness: 1.5e-6 }, light);
  assertClose(recipe.fillerVolumeFraction, 0.5286835253597933, { relative: 1e-13 });
  assertClose(recipe.density, 615.0829371027922, { relative: 1e-13 });
  assertClose(recipe.fillerPerResin, 0.21026074492546146, { relative: 1e-13 });
  assertEquals(recipe.notes.length, 0);
});

Deno.test("a film of none is the closest packing, and is said to hardly stir", () => {
  const recipe = stiffestRecipe({ particleDiameter: 55e-6, filmThickness: 0 }, light);
  assertClose(recipe.fillerVolumeFraction, 0.62, { relative: 1e-15 });
  assertEquals(recipe.notes, [
    "The filler is within a tenth of its closest packing: this hardly stirs.",
  ]);
});

Deno.test("more filler than packs is noted, and refused where there is no room for it", () => {
  // φ = 0.64: (1 − 0.06)(0.36 × 1147 + 0.64 × 215) + 0.06 × 1.2 = 517.5608 kg/m³
  const dry = recipeForDensity(517.5608, light);
  assertClose(dry.fillerVolumeFraction, 0.64, { relative: 1e-13 });
  assertEquals(dry.notes.length, 1);
  assertEquals(dry.notes[0]?.includes("dry and weak"), true);
  assertThrows(() => recipeForDensity(400, light), InputError, "must not be above the closest");
});

Deno.test("the film comes back from a trial batch", () => {
  const recipe = stiffestRecipe({ particleDiameter: 55e-6, filmThickness: 1.5e-6 }, light);
  const film = filmFromTrial({
    resinMass: 0.2,
    fillerMass: 0.2 * recipe.fillerPerResin,
    resinDensity: 1147,
    filler: light.filler,
    particleDiameter: 55e-6,
  });
  assertClose(film, 1.5e-6, { relative: 1e-12 });
});

Deno.test("stiffness of a putty lies between its bounds' printed figures", () => {
  // Resin K 4, G 1 and filler K 2, G 1.5, shares 0.7 and 0.3: exact bounds 188/59, 74/23 (K),
  // 659/584, 162/143 (G), E from the pairs.
  const E = (K: number, G: number): number => 9 * K * G / (3 * K + G);
  const nu = (K: number, G: number): number => (3 * K - 2 * G) / (2 * (3 * K + G));
  const recipe: PuttyRecipe = {
    ...light,
    airFraction: 0,
    fillerVolumeFraction: 0.3,
    fillerMassFraction: 0.1,
    fillerPerResin: 0.1,
    density: 700,
    notes: [],
  };
  const solids = {
    resin: { E: E(4, 1), nu: nu(4, 1) },
    filler: { E: E(2, 1.5), nu: nu(2, 1.5) },
  };
  const { hashinShtrikman, voigtReuss, withoutAir } = puttyStiffness(recipe, solids);
  assertClose(hashinShtrikman.bulkModulus.low, 188 / 59, { relative: 1e-13 });
  assertClose(hashinShtrikman.bulkModulus.high, 74 / 23, { relative: 1e-13 });
  assertClose(hashinShtrikman.shearModulus.low, 659 / 584, { relative: 1e-13 });
  assertClose(hashinShtrikman.shearModulus.high, 162 / 143, { relative: 1e-13 });
  assertClose(hashinShtrikman.youngsModulus.low, 3.027852831039193, { relative: 1e-13 });
  assertClose(hashinShtrikman.youngsModulus.high, 3.041610284167794, { relative: 1e-13 });
  assertClose(voigtReuss.bulkModulus.low, 40 / 13, { relative: 1e-13 });
  assertClose(voigtReuss.bulkModulus.high, 3.4, { relative: 1e-13 });
  assertClose(voigtReuss.shearModulus.low, 10 / 9, { relative: 1e-13 });
  assertClose(voigtReuss.shearModulus.high, 1.15, { relative: 1e-13 });
  assertEquals(withoutAir, hashinShtrikman);
});

Deno.test("with air the lower bounds are nothing", () => {
  const solids = { resin: { E: 3e9, nu: 0.36 }, filler: { E: 2e9, nu: 0.25 } };
  const { hashinShtrikman, voigtReuss, withoutAir } = puttyStiffness(
    recipeForDensity(640, light),
    solids,
  );
  assertEquals(hashinShtrikman.youngsModulus.low, 0);
  assertEquals(voigtReuss.youngsModulus.low, 0);
  assertEquals(hashinShtrikman.youngsModulus.high < withoutAir.youngsModulus.high, true);
});

Deno.test("a putty's modulus has the width of its solids' ranges, and its air counts", () => {
  // ν = 0.2 throughout: both bounds with air are E (1 − a)/(1 + a); that of two solids at the low
  // end, by exact fractions of the bounds of resin 3 and filler 1 half and half, is 5/3 Pa, at the
  // high end, 4 and 2, it is 20/7 Pa: E* + low bound of shift E* is 1/(½/4 + ½/2) − 1 = 5/3 and
  // 1/(½/8 + ½/6) − 4 = 20/7.
  const recipe = { ...recipeForDensity(640, light), airFraction: 0.04, fillerVolumeFraction: 0.5 };
  const solids = {
    resin: { E: { low: 3, high: 4 }, nu: 0.2 },
    filler: { E: { low: 1, high: 2 }, nu: 0.2 },
  };
  const { low, high } = puttyModulusRange(recipe, solids);
  assertClose(low, 5 / 3 * 0.96 / 1.04, { relative: 1e-13 });
  assertClose(high, 20 / 7 * 0.96 / 1.04, { relative: 1e-13 });
  assertThrows(
    () => puttyModulusRange(recipe, { ...solids, filler: { E: { low: 2, high: 1 }, nu: 0.2 } }),
    InputError,
    "least modulus of the filler is 2, must not be above",
  );
  assertThrows(
    () => puttyModulusRange(recipe, { ...solids, resin: undefined as never }),
    InputError,
    "resin",
  );
});

Deno.test("putty refuses what cannot be", () => {
  assertThrows(() => puttyDensity({ parts: [], airFraction: 0 }), InputError, "a list of 1 or");
  assertThrows(() => puttyDensity({ parts, airFraction: 1 }), InputError, "must be below 1");
  assertThrows(
    () => puttyDensity({ parts: [{ mass: 0, density: 1 }], airFraction: 0 }),
    InputError,
    "must have a mass above 0 in all",
  );
  assertThrows(() => puttyDensity(undefined as never), InputError, "putty is missing");
  assertThrows(
    () => puttyDensity({ parts: [3 as never], airFraction: 0 }),
    InputError,
    "part is 3, must be an object",
  );
  assertThrows(
    () => recipeForDensity(2000, light),
    InputError,
    "must be between 202.2 and 1078 kg/m³",
  );
  assertThrows(
    () => entrainedAir({ parts: [{ mass: 1, density: 1 }], measuredDensity: 600 }),
    InputError,
    "must be above that of air",
  );
  assertThrows(
    () => stiffestRecipe({ particleDiameter: 0, filmThickness: 0 }, light),
    InputError,
    "particle diameter is 0 m",
  );
  assertThrows(() => puttyFromResin({} as PuttyRecipe, 1), InputError, "filler is missing");
  const recipe = recipeForDensity(640, light);
  assertThrows(() => puttyFromResin(recipe, -1), InputError, "mass of mixed resin is -1 kg");
  assertThrows(() => puttyForVolume(recipe, NaN), InputError, "volume of putty is NaN");
  assertThrows(
    () => puttyStiffness(recipe, { resin: { E: 3e9, nu: 0.5 }, filler: { E: 2e9, nu: 0.2 } }),
    InputError,
    "must be above -1 and below 0.5",
  );
});
