/** Right on the rim of a load, where two stretches of the exact solution meet. */
import { assert } from "@std/assert";
import { allEdges, isotropicPanel, levyPanel, navierPanel } from "../../lib/sandwich/mod.ts";
import { assertClose } from "../close.ts";

const SIDES = { length: 0.6, width: 0.4, edges: allEdges("simple") };
const STIFFNESS = isotropicPanel({ E: 20e9, nu: 0.2, thickness: 0.01, density: 1800 });
/** Its rims along y lie at 0.125 and 0.25: binary fractions, so that they are met exactly. */
const PATCH = { kind: "patch", force: 1000, x: 0.3, y: 0.1875, lengthX: 0.125, lengthY: 0.125 };

Deno.test("the rim of a patch is no jump in deflection or moment", () => {
  const loads = [PATCH as typeof PATCH & { readonly kind: "patch" }];
  const { at } = levyPanel({ ...SIDES, stiffness: STIFFNESS, loads });
  for (const rim of [0.125, 0.25]) {
    for (const x of [0.1, 0.2375, 0.3]) {
      const here = at(x, rim);
      for (const there of [at(x, rim - 1e-9), at(x, rim + 1e-9)]) {
        assertClose(here.deflection, there.deflection, { relative: 1e-6 });
        assertClose(here.Mx, there.Mx, { relative: 1e-6 });
        assertClose(here.My, there.My, { relative: 1e-6 });
      }
    }
  }
});

Deno.test("on the rim exact waves and the double series agree", () => {
  const loads = [PATCH as typeof PATCH & { readonly kind: "patch" }];
  const panel = { ...SIDES, stiffness: STIFFNESS, loads };
  const [exact, series] = [levyPanel(panel), navierPanel(panel, 99)];
  for (const rim of [0.125, 0.25]) {
    const there = series.at(0.3, rim).deflection;
    assert(there > 0);
    assertClose(exact.at(0.3, rim).deflection, there, { relative: 1e-5 });
  }
});
