import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { atLowEnd, layupAtLowEnd, layupDesign, layupStack } from "../../lib/comparison/mod.ts";
import type { Core } from "../../lib/materials/mod.ts";
import { failureModes, type SandwichDesign } from "../../lib/sandwich/mod.ts";
import { assertClose } from "../close.ts";
import { layupOf } from "./_layups.ts";

Deno.test("a face of one unidirectional ply keeps the ply's figures, turned by its angle", () => {
  const layup = layupOf("glass UD 250, 0", "PVC foam 80,,10", "glass UD 250, 90");
  const stack = layupStack(layup);
  const { E1, E2, nu12, strengths } = stack[0]!.lamina;
  const { bottomFace, topFace } = layupDesign(layup, stack)!;
  assertClose(
    [bottomFace.Ex, bottomFace.Ey, bottomFace.tensileX, bottomFace.compressiveY],
    [E1, E2, strengths!.Xt, strengths!.Yc],
    { relative: 1e-9 },
  );
  assertClose(
    [topFace.Ex, topFace.Ey, topFace.tensileX, topFace.compressiveY],
    [E2, E1, strengths!.Yt, strengths!.Xc],
    { relative: 1e-9 },
  );
  assertClose(topFace.nu, nu12 * Math.sqrt(E2 / E1), { relative: 1e-9 });
});

Deno.test("faces shear in their plane as their plies do, aslant by fibres", () => {
  const layup = layupOf("glass twill 200", "PVC foam 80,,10", "glass twill 200, 45");
  const stack = layupStack(layup);
  const { E1, nu12, strengths } = stack[0]!.lamina;
  const { bottomFace, topFace } = layupDesign(layup, stack)!;
  assertClose(bottomFace.shearXY, strengths!.S, { relative: 1e-9 });
  // At 45° a shear stress τ is σ1 = τ, σ2 = −τ in a balanced cloth, alike along 1 and 2: its
  // fibres' compression comes first.
  assert(nu12 < 1 && E1 > 0);
  assertClose(topFace.shearXY, Math.min(strengths!.Xc, strengths!.Yc), { relative: 1e-9 });
});

Deno.test("at the low end: strengths and a core's moduli, the rest stays", () => {
  const layup = layupOf("glass twill 200", "PVC foam 80,,10", "glass twill 200");
  const low = layupAtLowEnd(layup);
  const [usual, least] = [layup, low].map((one) => layupDesign(one, layupStack(one))!) as [
    SandwichDesign,
    SandwichDesign,
  ];
  // The catalogue's row: 0.88 to 1.1 to 1.32 MPa, 1.04 to 1.3, 72 to 90, 21.6 to 27.
  const { shearX, compressive, Ez, Gx } = least.core;
  assertClose([shearX, compressive, Ez, Gx], [0.88e6, 1.04e6, 72e6, 21.6e6], { relative: 1e-12 });
  assertEquals(least.topFace.Ex, usual.topFace.Ex);
  assert(least.topFace.tensileX < 0.9 * usual.topFace.tensileX);
  assert(least.topFace.shearXY < 0.9 * usual.topFace.shearXY);
  const refused = (material: unknown, words: string): void => {
    assertThrows(() => atLowEnd(material as Core), InputError, words);
  };
  refused(undefined, "material is missing");
  refused({ name: "foam" }, "ranges of the material is missing");
  refused({ shearStrengthL: 1, typical: { shearStrengthL: { low: 0 } } }, "low end of");
  refused({ shearStrengthL: 1, typical: { shearStrengthL: { low: 2 } } }, "between 0 and 1");
  refused({ resinUptake: Infinity, typical: {} }, "resinUptake is Infinity");
  assertThrows(() => layupAtLowEnd({} as never), InputError);
});

Deno.test("a core across, and one aslant, count with the right shear figures", () => {
  const figures = (angle: number): readonly number[] => {
    const row = `aramid honeycomb 48 3 mm, ${angle}, 12`;
    const layup = layupOf("glass twill 200", row, "glass twill 200");
    const { Gx, Gy, shearX, shearY } = layupDesign(layup, layupStack(layup))!.core;
    return [Gx, Gy, shearX, shearY];
  };
  // The catalogue's row: 42 and 25 MPa, 1.2 and 0.68 MPa.
  assertClose(figures(0), [42e6, 25e6, 1.2e6, 0.68e6], { relative: 1e-12 });
  assertClose(figures(-90), [25e6, 42e6, 0.68e6, 1.2e6], { relative: 1e-12 });
  assertClose(figures(30), [25e6, 25e6, 0.68e6, 0.68e6], { relative: 1e-12 });
});

Deno.test("core shear of the lay-up is that of the bent section", () => {
  const layup = layupOf("glass twill 200", "PVC foam 80,,10", "glass twill 200");
  const stack = layupStack(layup);
  const [E, t] = [stack[0]!.lamina.E1, stack[0]!.thickness];
  const [Ec, c, d] = [stack[1]!.lamina.E1, 0.01, 0.01 + t];
  const shear = failureModes(layupDesign(layup, stack)!, { Qx: 1000 })
    .find(({ mode }) => mode === "core shear")!;
  // By hand, V Q/D at the middle of the core; 1.1 MPa of the catalogue.
  const Q = E * t * d / 2 + Ec * c * c / 8;
  const D = E * t * d * d / 2 + E * t ** 3 / 6 + Ec * c ** 3 / 12;
  assertClose(shear.reserve, 1.1e6 / (1000 * Q / D), { relative: 1e-9 });
});

Deno.test("a lay-up that is no sandwich is told apart, and a wrong stack refused", () => {
  for (
    const rows of [
      ["glass twill 200", "glass twill 200"],
      ["PVC foam 80,,10", "glass twill 200"],
      ["glass twill 200", "PVC foam 80,,5", "glass mat 300", "PVC foam 80,,5", "glass twill 200"],
    ]
  ) {
    const layup = layupOf(...rows);
    assertEquals(layupDesign(layup, layupStack(layup)), null);
  }
  const layup = layupOf("glass twill 200", "PVC foam 80,,10", "glass twill 200");
  assertThrows(() => layupDesign(layup, layupStack(layup).slice(1)), InputError, "3 layers");
});
