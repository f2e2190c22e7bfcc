import { assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import {
  dimplingStress,
  halfPlaneWrinklingFactor,
  wrinklingFactors,
  wrinklingStress,
} from "../../lib/sandwich/mod.ts";
import { assertClose } from "../close.ts";

const moduli = { faceE: 27e9, coreE: 64e6, coreG: 8e6 };
const face = { faceE: 20e9, faceNu: 0.3, thickness: 0.0004, cellSize: 0.005 };

Deno.test("wrinkling is k times the cube root of the three moduli", () => {
  // 27e9 · 64e6 · 8e6 = (3e3 · 4e2 · 2e2)³
  assertClose(wrinklingStress(moduli, wrinklingFactors.design), 0.5 * 2.4e8, { relative: 1e-14 });
  assertClose(wrinklingStress(moduli, wrinklingFactors.theory), 0.91 * 2.4e8, { relative: 1e-14 });
  assertClose(wrinklingStress(moduli, wrinklingFactors.energy), 0.825 * 2.4e8, { relative: 1e-14 });
});

Deno.test("dimpling goes with the square of thickness over cell", () => {
  assertClose(dimplingStress(face), 2 * 20e9 / 0.91 * 0.0064, { relative: 1e-14 });
});

Deno.test("a face that cannot be meant is refused", () => {
  assertThrows(
    () => wrinklingStress({ ...moduli, coreE: 0 }, 0.5),
    InputError,
    "core modulus is 0",
  );
  assertThrows(() => wrinklingStress(moduli, 0), InputError, "wrinkling factor is 0");
  assertThrows(() => halfPlaneWrinklingFactor(0.6), InputError, "Poisson ratio of the core is 0.6");
  assertThrows(() => dimplingStress({ ...face, cellSize: 0 }), InputError, "cell size is 0 m");
  assertThrows(
    () => dimplingStress({ ...face, faceNu: 1 }),
    InputError,
    "Poisson ratio of the face",
  );
  assertThrows(
    () => dimplingStress(undefined as unknown as typeof face),
    InputError,
    "face is missing",
  );
});
