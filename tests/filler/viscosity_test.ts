import { assertEquals, assertThrows } from "@std/assert";
import { assertClose } from "../close.ts";
import { InputError } from "../../lib/check/mod.ts";
import {
  fillerForViscosity,
  recipeForDensity,
  relativeViscosity,
  stirVerdict,
} from "../../lib/filler/mod.ts";

Deno.test("viscosity with filler, where the power is a whole or half number", () => {
  // (1 − 0.45/0.6)^(−1.5) = 4^1.5 = 8; (1 − 0.3/0.6)^(−1.5) = √8.
  assertClose(relativeViscosity(0.45, { maximumPacking: 0.6 }), 8, { relative: 1e-13 });
  assertClose(relativeViscosity(0.3, { maximumPacking: 0.6 }), Math.sqrt(8), { relative: 1e-13 });
  assertClose(fillerForViscosity(8, { maximumPacking: 0.6 }), 0.45, { relative: 1e-13 });
  // Python's mpmath: 0.64(1 − 100^(−1/1.6))
  assertClose(fillerForViscosity(100, { maximumPacking: 0.64 }), 0.6040101551878176589, {
    relative: 1e-13,
  });
});

const filler = { particleDensity: 200, bulkDensity: 120, packing: 0.64 };

/** Recipe of a wanted filler by volume, without air, in resin of 1200 kg/m³. */
function recipeOf(share: number): ReturnType<typeof recipeForDensity> {
  return recipeForDensity(1200 - 1000 * share, { resinDensity: 1200, filler, airFraction: 0 });
}

Deno.test("a verdict has three states", () => {
  // At 0.45 of 0.6 the resin is 8 times thicker: 8 Pa s.
  const verdict = (thickestStirred: number): string =>
    stirVerdict(recipeOf(0.45), { maximumPacking: 0.6, resinViscosity: 1, thickestStirred })
      .verdict;
  assertEquals([verdict(20), verdict(10), verdict(6), verdict(3)], [
    "holds",
    "not known",
    "not known",
    "fails",
  ]);
});

Deno.test("at the maximum packing nothing stirs, and there is no viscosity to tell", () => {
  const found = stirVerdict(recipeOf(0.61), {
    maximumPacking: 0.6,
    resinViscosity: 1,
    thickestStirred: 1e6,
  });
  assertEquals(found.verdict, "fails");
  assertEquals(found.viscosity, undefined);
  assertEquals(found.notes.length, 1);
});

Deno.test("a resin already thicker than can be stirred takes no filler", () => {
  const found = stirVerdict(recipeOf(0.3), {
    maximumPacking: 0.6,
    resinViscosity: 100,
    thickestStirred: 50,
  });
  assertEquals([found.verdict, found.fillerLimit], ["fails", 0]);
});

Deno.test("viscosity refuses what cannot be", () => {
  assertThrows(
    () => relativeViscosity(0.64, { maximumPacking: 0.64 }),
    InputError,
    "must be below the maximum packing, 0.64",
  );
  assertThrows(
    () => relativeViscosity(-0.1, { maximumPacking: 0.64 }),
    InputError,
    "must be 0 or above",
  );
  assertThrows(
    () => fillerForViscosity(0.5, { maximumPacking: 0.64 }),
    InputError,
    "must be 1 or above",
  );
  assertThrows(
    () => relativeViscosity(0.1, undefined as never),
    InputError,
    "thickening is missing",
  );
});
