import { assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import type { Lamina, Ply, Stack } from "../../lib/materials/mod.ts";
import {
  sandwichSection,
  sectionFromStack,
  solidSectionFromStack,
} from "../../lib/sandwich/mod.ts";
import { assertClose } from "../close.ts";

const rest = { density: 1800, alpha1: 1e-5, alpha2: 2e-5 };
const glass: Lamina = {
  name: "glass cloth",
  E1: 22e9,
  E2: 19e9,
  G12: 4e9,
  nu12: 0.15,
  G13: 3e9,
  G23: 2.5e9,
  ...rest,
};
const carbon: Lamina = {
  name: "carbon tape",
  E1: 120e9,
  E2: 8e9,
  G12: 4.5e9,
  nu12: 0.3,
  G13: 4.5e9,
  G23: 3e9,
  ...rest,
};
const core: Lamina = {
  name: "core",
  E1: 60e6,
  E2: 50e6,
  G12: 20e6,
  nu12: 0.3,
  G13: 30e6,
  G23: 18e6,
  ...rest,
};
const ply = (lamina: Lamina, thickness: number, angleDeg = 0): Ply => ({
  lamina,
  thickness,
  angleDeg,
});
const exact = { relative: 1e-12 };

Deno.test("with one ply a face, a stack is the plain sandwich, mould side at the bottom", () => {
  const stack = [ply(carbon, 0.001), ply(core, 0.02), ply(glass, 0.003, 90)];
  const section = sectionFromStack(stack, { width: 0.06 });
  const plain = sandwichSection({
    width: 0.06,
    bottomFace: { thickness: 0.001, E: 120e9 },
    core: { thickness: 0.02, E: 60e6, G: 30e6 },
    topFace: { thickness: 0.003, E: 19e9 },
  });
  assertClose(section.flexuralRigidity, plain.flexuralRigidity, exact);
  assertClose(section.neutralAxis, plain.neutralAxis, exact);
  assertClose(section.shearStiffness as number, plain.shearStiffness as number, exact);
  assertClose(section.axialStiffness, plain.axialStiffness, exact);
});

Deno.test("a core turned by 90° shears with its W modulus, by 45° with the mean", () => {
  for (const [angle, G] of [[0, 30e6], [90, 18e6], [45, 24e6]] as const) {
    const stack = [ply(glass, 0.001), ply(core, 0.02, angle), ply(glass, 0.001)];
    const { shearStiffness } = sectionFromStack(stack, { width: 0.1 });
    assertClose(shearStiffness as number, G * 0.1 * 0.021 ** 2 / 0.02, exact);
  }
});

Deno.test("a face of several plies counts as the laminate it is", () => {
  // [±45] of a cloth: Ex = (A11 − A12²/A22)/t with A of the pair, A16 and A26 cancel. By hand from
  // U1 to U4: Q̄11(45) = U1 − U3, Q̄12(45) = U4 + U3.
  const cloth: Lamina = { ...glass, E1: 20e9, E2: 20e9, nu12: 0.1 };
  const Q11 = 20e9 / 0.99;
  const Q12 = 2e9 / 0.99;
  const U1 = (6 * Q11 + 2 * Q12 + 4 * 4e9) / 8;
  const U3 = (2 * Q11 - 2 * Q12 - 4 * 4e9) / 8;
  const U4 = (2 * Q11 + 6 * Q12 - 4 * 4e9) / 8;
  const E = (U1 - U3) - (U4 + U3) ** 2 / (U1 - U3);
  const face = [ply(cloth, 0.0005, 45), ply(cloth, 0.0005, -45)];
  const section = sectionFromStack([...face, ply(core, 0.01), ...face], { width: 0.1 });
  const plain = sandwichSection({
    width: 0.1,
    bottomFace: { thickness: 0.001, E },
    core: { thickness: 0.01, E: 60e6, G: 30e6 },
    topFace: { thickness: 0.001, E },
  });
  assertClose(section.flexuralRigidity, plain.flexuralRigidity, exact);
});

Deno.test("a stiff ply counts where it lies", () => {
  const outside = sectionFromStack(
    [
      ply(carbon, 0.0005),
      ply(glass, 0.002),
      ply(core, 0.01),
      ply(glass, 0.002),
      ply(carbon, 0.0005),
    ],
    { width: 0.1 },
  );
  const inside = sectionFromStack(
    [
      ply(glass, 0.002),
      ply(carbon, 0.0005),
      ply(core, 0.01),
      ply(carbon, 0.0005),
      ply(glass, 0.002),
    ],
    { width: 0.1 },
  );
  assertClose(outside.axialStiffness, inside.axialStiffness, exact);
  // The carbon moves by 2 mm out from 5.25 mm, and the glass by 0.5 mm in from 6.5 mm. Modulus of
  // glass in there is within 1 % of its own (the faces' Poisson contraction differs a little).
  const moved = 0.1 * 2 * (120e9 * 0.0005 * (7.25 ** 2 - 5.25 ** 2) * 1e-6 +
    22e9 * 0.002 * (6 ** 2 - 6.5 ** 2) * 1e-6);
  assertClose(outside.flexuralRigidity - inside.flexuralRigidity, moved, { relative: 0.01 });
});

Deno.test("a solid laminate is cut in the middle, also through a ply", () => {
  const section = solidSectionFromStack([ply(glass, 0.001), ply(glass, 0.002)], 0.03);
  assertEquals(section.kind, "solid");
  assertClose(section.flexuralRigidity, 22e9 * 0.03 * 0.003 ** 3 / 12, exact);
  assertClose(section.neutralAxis, 0, { absolute: 1e-17 });
  assertClose([section.bottomThickness, section.topThickness], [0.0015, 0.0015], exact);
});

Deno.test("a stack that cannot be a sandwich is refused", () => {
  const refused = (stack: unknown, message: string, coreIndex?: number): void => {
    const strip = coreIndex === undefined ? { width: 0.1 } : { width: 0.1, coreIndex };
    assertThrows(() => sectionFromStack(stack as Stack, strip), InputError, message);
  };
  const face = ply(glass, 0.001);
  refused(undefined, "stack is missing, must be a list of 3 or more");
  refused([face, face], "stack is a list of 2, must be a list of 3 or more");
  refused([face, face, face], "must have a core inside");
  refused([ply(core, 0.01), face, face], "must have a core inside");
  refused([face, ply(core, 0.01), face], "core index is 0, must be a layer inside: 1 to 1", 0);
  refused([face, ply(core, 0.01), face], "core index is 2", 2);
  refused([face, ply(core, 0), face], "thickness of ply 2 is 0 m");
  refused([face, undefined, face], "ply 2 is missing");
  refused([face, { thickness: 1, angleDeg: 0 }, face], "lamina of ply 2 is missing");
  refused([face, ply({ ...core, G13: 0 }, 0.01), face], "G13 of ply 2 is 0 Pa");
  assertThrows(
    () => sectionFromStack([face, ply(core, 0.01), face], { width: -1 }),
    InputError,
    "width is -1 m",
  );
});
