import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { moduliByDirection, stackOfCode } from "../../lib/laminate/mod.ts";
import { assertClose } from "../close.ts";

const lamina = {
  name: "glass ply",
  E1: 40e9,
  E2: 10e9,
  G12: 4e9,
  nu12: 0.28,
  G13: 4e9,
  G23: 3e9,
  density: 1900,
  alpha1: 7e-6,
  alpha2: 25e-6,
};
const ply = { lamina, thickness: 0.25e-3 };

Deno.test("moduli by direction follow the transformed compliance of a single ply", () => {
  const { anglesDeg, membraneFree, flexuralFree } = moduliByDirection([{ ...ply, angleDeg: 30 }]);
  assertEquals(anglesDeg.length, 72);
  anglesDeg.forEach((angleDeg, i) => {
    const [c, s] = [angleDeg - 30].flatMap((a) => [
      Math.cos(a * Math.PI / 180),
      Math.sin(a * Math.PI / 180),
    ]) as [number, number];
    // Jones (1999), section 2.6, from memory: 1/Ex of a ply off its axes.
    const expected = 1 /
      (c ** 4 / 40e9 + s ** 4 / 10e9 + (1 / 4e9 - 2 * 0.28 / 40e9) * c * c * s * s);
    assertClose(membraneFree[i]!, expected, { relative: 1e-11 });
    assertClose(flexuralFree[i]!, expected, { relative: 1e-11 });
  });
});

Deno.test("a quasi-isotropic laminate is a circle in the plane, not in bending", () => {
  const { membraneFree, membraneHeldFlat, flexuralFree } = moduliByDirection(
    stackOfCode("[0/+-45/90]s", { ply }),
    16,
  );
  for (const value of membraneFree) assertClose(value, membraneFree[0]!, { relative: 1e-11 });
  assertClose(membraneHeldFlat[3]!, membraneFree[3]!, { relative: 1e-11 });
  assert(Math.max(...flexuralFree) > 1.5 * Math.min(...flexuralFree));
});

Deno.test("an odd or small number of directions is refused", () => {
  for (const steps of [6, 9, 1e6, NaN]) {
    assertThrows(() => moduliByDirection([{ ...ply, angleDeg: 0 }], steps), InputError, "steps");
  }
});
