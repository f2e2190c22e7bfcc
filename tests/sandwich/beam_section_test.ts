import { assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import {
  type BeamMakeup,
  bendingStress,
  coreShearStress,
  coreThicknessLeft,
  sandwichSection,
} from "../../lib/sandwich/mod.ts";
import { assertClose } from "../close.ts";

/** Unequal thick faces. Expected figures: an independent script in exact fractions (Python). */
const unequal: BeamMakeup = {
  width: 0.06,
  bottomFace: { thickness: 0.003, E: 70e9 },
  core: { thickness: 0.018, E: 60e6, G: 22e6 },
  topFace: { thickness: 0.001, E: 21e9 },
};
const exact = { relative: 1e-12 };

Deno.test("a section with unequal thick faces agrees with exact fractions", () => {
  const section = sandwichSection(unequal);
  assertEquals(section.kind, "sandwich");
  assertClose(section.neutralAxis, -0.008641416752843847, exact, "neutral axis");
  assertClose(section.flexuralRigidity, 474.3479221302999, exact, "D");
  assertClose(section.thinFaceRigidity, 458.1818181818182, exact, "D thin");
  assertClose(section.centroidDistance, 0.02, exact, "d");
  assertClose(section.shearStiffness as number, 29333.333333333332, exact, "S");
  assertClose(section.axialStiffness, 13924800.0, exact, "EA");
  assertEquals(section.notes, []);
});

Deno.test("its stresses agree with exact fractions", () => {
  const section = sandwichSection(unequal);
  const stress = bendingStress(section, 37);
  assertClose(stress.bottomFace.outer, 18338291.798704155, exact);
  assertClose(stress.bottomFace.centroid, 10148100.973049356, exact);
  assertClose(stress.topFace.outer, -30535352.093269877, exact);
  assertClose(stress.topFace.centroid, -29716333.010704394, exact);
  assertClose(stress.bottomFace.thin, 10277777.777777778, exact);
  assertClose(stress.topFace.thin, -30833333.333333332, exact);
  assertClose(stress.layers[1]!.top, -82563.7540803969, exact);
  assertClose(stress.layers[1]!.bottom, 1678.2086977667616, exact);
});

Deno.test("its core shear agrees with exact fractions", () => {
  const shear = coreShearStress(sandwichSection(unequal), 250);
  assertClose(shear.simple, 250 / (0.06 * 0.02), exact);
  assertClose(shear.max, 205706.78248587967, exact);
  assertClose(shear.maxAt, -0.008641416752843847, exact);
  assertClose(shear.topInterface, 200786.0338561108, exact);
  assertClose(shear.bottomInterface, 205704.74945370315, exact);
});

Deno.test("without a core the section is the solid bar, and the bond line carries 1.5 V/A", () => {
  const face = { thickness: 0.004, E: 12e9 };
  const section = sandwichSection({
    width: 0.03,
    topFace: face,
    bottomFace: face,
    core: { thickness: 0, E: 0, G: 0 },
  });
  assertEquals(section.kind, "solid");
  assertEquals(section.shearStiffness, "rigid");
  assertEquals(section.notes.length, 1);
  assertClose(section.flexuralRigidity, 12e9 * 0.03 * 0.008 ** 3 / 12, exact);
  assertClose(coreShearStress(section, 100).max, 1.5 * 100 / (0.03 * 0.008), exact);
  assertClose(bendingStress(section, 5).topFace.outer, -6 * 5 / (0.03 * 0.008 ** 2), exact);
});

Deno.test("a thick face is remarked on, once", () => {
  const section = sandwichSection({ ...unequal, core: { thickness: 0.006, E: 0, G: 22e6 } });
  assertEquals(section.notes.length, 1);
});

Deno.test("a section that cannot be meant is refused", () => {
  const refused = (change: unknown, message: string): void => {
    assertThrows(
      () => sandwichSection(change as BeamMakeup),
      InputError,
      `Cannot compute the beam section: ${message}`,
    );
  };
  refused(undefined, "makeup is missing");
  refused({ ...unequal, topFace: undefined }, "top face is missing");
  refused({ ...unequal, width: 0 }, "width is 0 m, must be above 0");
  refused({ ...unequal, width: "0.1" }, 'width is "0.1", must be a finite number');
  refused({ ...unequal, bottomFace: { thickness: -1, E: 1 } }, "bottom face thickness is -1 m");
  refused({ ...unequal, topFace: { thickness: 1, E: NaN } }, "top face modulus is NaN Pa");
  refused({ ...unequal, core: { thickness: 1, E: -1, G: 1 } }, "core modulus is -1 Pa");
  refused({ ...unequal, core: { thickness: 1, E: 0, G: 0 } }, "core shear modulus is 0 Pa");
  refused({ ...unequal, width: 1e300, topFace: { thickness: 1e10, E: 1e10 } }, "flexural rigidity");
});

Deno.test("a moment or shear force that is no number is refused", () => {
  const section = sandwichSection(unequal);
  assertThrows(() => bendingStress(section, NaN), InputError, "moment is NaN N·m");
  assertThrows(() => coreShearStress(section, Infinity), InputError, "shear force is Infinity N");
});

Deno.test("what is left for the core; faces thicker than the part are refused", () => {
  assertClose(coreThicknessLeft(0.025, { top: 0.002, bottom: 0.003 }), 0.02, exact);
  assertThrows(
    () => coreThicknessLeft(0.01, { top: 0.012, bottom: 0.001 }),
    InputError,
    "a face cannot be thicker than the part",
  );
  assertThrows(
    () => coreThicknessLeft(0, { top: 1, bottom: 1 }),
    InputError,
    "thickness of the part",
  );
});
