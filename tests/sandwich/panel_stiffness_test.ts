import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import type { Lamina, Ply, Stack } from "../../lib/materials/mod.ts";
import { isotropicPanel, type PanelShear, panelStiffness } from "../../lib/sandwich/mod.ts";
import { assertClose } from "../close.ts";

const glass: Lamina = {
  name: "glass cloth",
  E1: 22e9,
  E2: 19e9,
  G12: 4e9,
  nu12: 0.15,
  G13: 3e9,
  G23: 2.5e9,
  density: 1800,
  alpha1: 1e-5,
  alpha2: 2e-5,
};
const honeycomb: Lamina = {
  ...glass,
  name: "honeycomb",
  E1: 1e5,
  E2: 1e5,
  G12: 1e5,
  nu12: 0,
  G13: 60e6,
  G23: 30e6,
  density: 48,
};
const ply = (lamina: Lamina, thickness: number, angleDeg = 0): Ply => ({
  lamina,
  thickness,
  angleDeg,
});
const shearOf = (stack: Stack, model = {}): PanelShear =>
  panelStiffness(stack, model).shear as PanelShear;
const exact = { relative: 1e-12 };

Deno.test("with a core, S is G d²/c, each way with its own modulus", () => {
  const stack = [ply(glass, 0.001), ply(honeycomb, 0.02), ply(glass, 0.002)];
  const factor = 0.0215 ** 2 / 0.02;
  const { S44, S45, S55 } = shearOf(stack);
  assertClose([S55, S44, S45], [60e6 * factor, 30e6 * factor, 0], exact);
  const turned = shearOf([stack[0]!, ply(honeycomb, 0.02, 90), stack[2]!]);
  assertClose([turned.S55, turned.S44, turned.S45], [30e6 * factor, 60e6 * factor, 0], exact);
  const askew = shearOf([stack[0]!, ply(honeycomb, 0.02, 45), stack[2]!]);
  assertClose([askew.S55, askew.S44, askew.S45], [45e6 * factor, 45e6 * factor, 15e6 * factor], {
    relative: 1e-12,
  });
});

/** Without Poisson's ratio, so that a strip by slices is the plate. */
const cloth: Lamina = { ...glass, nu12: 0 };
const foam: Lamina = { ...cloth, name: "foam", E1: 70e6, E2: 70e6, G13: 27e6, G23: 27e6 };

/** Shear stiffness of a strip by energy over thin slices: τ = Q S(z)/D, S = 1/∫ τ²/G dz. */
function bySlices(stack: Stack): number {
  const slices = stack.flatMap(({ lamina, thickness }) =>
    Array.from({ length: 4000 }, () => ({
      E: lamina.E1,
      G: lamina.G13,
      dz: thickness / 4000,
    }))
  );
  let [z, EA, ES] = [0, 0, 0];
  for (const { E, dz } of slices) {
    EA += E * dz;
    ES += E * (z + dz / 2) * dz;
    z += dz;
  }
  let D = 0;
  z = -ES / EA;
  for (const { E, dz } of slices) {
    D += E * ((z + dz) ** 3 - z ** 3) / 3;
    z += dz;
  }
  let [Q, compliance] = [0, 0];
  z = -ES / EA;
  for (const { E, G, dz } of slices) {
    const step = E * (z + dz / 2) * dz;
    compliance += (Q + step / 2) ** 2 / (D * D * G) * dz;
    Q += step;
    z += dz;
  }
  return 1 / compliance;
}

Deno.test("two sheets of foam, or a core with one skin, are soft in shear", () => {
  const skin = ply(cloth, 0.0004);
  const one = shearOf([skin, ply(foam, 0.01), skin]).S55;
  const stacks: readonly Stack[] = [
    [skin, ply(foam, 0.005), ply(foam, 0.005), skin],
    [skin, ply(foam, 0.005), ply(cloth, 0.0002), ply(foam, 0.005), skin],
    [skin, ply(foam, 0.01)],
  ];
  for (const stack of stacks) {
    const { S55 } = shearOf(stack);
    assertClose(S55, bySlices(stack), { relative: 1e-4 });
    assert(S55 < 1.05 * one);
    const { notes } = panelStiffness(stack);
    assert(notes.some((note) => note.includes("soft ones are inside")));
  }
  // Two sheets on each other are one core: within the 0.1 % by which G d²/c is high.
  assertClose(shearOf(stacks[0]!).S55, one, { relative: 1e-3 });
});

Deno.test("a solid laminate is no core: 5/6 G h of a sheet, and nothing to say", () => {
  const { shear, notes } = panelStiffness([ply(glass, 0.001), ply(glass, 0.003)]);
  assertClose((shear as PanelShear).S55, 5 / 6 * 3e9 * 0.004, { relative: 1e-9 });
  assertEquals(notes, []);
});

Deno.test("without a core, S is 5/6 Σ G t, or with another factor", () => {
  const stack = [ply(glass, 0.001), ply(glass, 0.001, 90), ply(glass, 0.001)];
  const { S55 } = shearOf(stack, { core: "none" });
  assertClose(S55, 5 / 6 * (2 * 3e9 + 2.5e9) * 0.001, exact);
  const whole = shearOf(stack, { core: "none", shearFactor: 1 });
  assertClose(whole.S55, (2 * 3e9 + 2.5e9) * 0.001, exact);
  assertClose(
    shearOf([ply(glass, 0.001), ply(honeycomb, 0.02), ply(glass, 0.001)], { core: "none" }).S55,
    5 / 6 * (2 * 3e9 * 0.001 + 60e6 * 0.02),
    exact,
  );
});

Deno.test("D and mass are those of the laminate, the core a ply like any other", () => {
  const face = 0.001;
  const core = 0.02;
  const { D11, D16, massPerArea, notes } = panelStiffness(
    [ply(glass, face), ply(honeycomb, core), ply(glass, face)],
  );
  const Q11 = 22e9 / (1 - 0.15 ** 2 * 19 / 22);
  const h = core + 2 * face;
  assertClose(D11, Q11 * (h ** 3 - core ** 3) / 12 + 1e5 * core ** 3 / 12, exact);
  assertEquals(D16, 0);
  assertClose(massPerArea, 2 * 1800 * face + 48 * core, exact);
  assertEquals(notes, []);
});

Deno.test("an unsymmetric stack bends about its own neutral axis, and says so", () => {
  // Without Poisson's ratio D − B²/A is the flexural rigidity about the neutral axis.
  const plain: Lamina = { ...glass, nu12: 0 };
  const stack = [ply(plain, 0.001), ply(honeycomb, 0.02), ply(plain, 0.003)];
  const { D11, notes } = panelStiffness(stack);
  const layers = [[22e9, -0.012, -0.011], [1e5, -0.011, 0.009], [22e9, 0.009, 0.012]] as const;
  const EA = layers.reduce((sum, [E, a, b]) => sum + E * (b - a), 0);
  const axis = layers.reduce((sum, [E, a, b]) => sum + E * (b * b - a * a) / 2, 0) / EA;
  const D = layers.reduce((sum, [E, a, b]) => sum + E * ((b - axis) ** 3 - (a - axis) ** 3) / 3, 0);
  assertClose(D11, D, { relative: 1e-11 });
  assertEquals(notes.length, 1);
});

Deno.test("an isotropic panel has the plate's D and Reissner's shear", () => {
  const sheet = { E: 70e9, nu: 0.3, thickness: 0.004, density: 2700 };
  const { D11, D12, D66, shear, massPerArea } = isotropicPanel(sheet);
  const D = 70e9 * 0.004 ** 3 / 12 / 0.91;
  assertClose([D11, D12, D66, massPerArea], [D, 0.3 * D, 0.35 * D, 10.8], exact);
  assertClose((shear as PanelShear).S44, 5 / 6 * 70e9 / 2.6 * 0.004, exact);
});

Deno.test("a stack or sheet that cannot be meant is refused", () => {
  const face = ply(glass, 0.001);
  const refused = (stack: unknown, model: object, message: string): void => {
    assertThrows(() => panelStiffness(stack as Stack, model), InputError, message);
  };
  refused([], {}, "stack is a list of 0, must be a list of 1 or more");
  refused([{ ...face, thickness: "1 mm" }], {}, 'thickness of ply 1 is "1 mm"');
  refused([face, ply(honeycomb, 0.01), face], { core: 0 }, "core index is 0");
  refused([face], { shearFactor: 0 }, "shear factor is 0");
  refused([face], { shearFactor: 1 }, 'shear factor is 1, must come with core "none"');
  assertThrows(
    () => isotropicPanel({ E: 70e9, nu: 0.6, thickness: 0.004, density: 2700 }),
    InputError,
    "Poisson ratio is 0.6, must be between -0.99 and 0.5",
  );
});
