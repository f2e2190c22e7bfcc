import { assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import {
  curvedPanel,
  filletMember,
  fourEdgePanel,
  layupDesign,
  layupStack,
  resizedPanel,
  variedLayup,
} from "../../lib/comparison/mod.ts";
import {
  allEdges,
  panelFailure,
  panelField,
  type PanelLoad,
  panelStiffness,
  solvePanel,
} from "../../lib/sandwich/mod.ts";
import { assertClose } from "../close.ts";
import { PLAIN } from "./_plain_sandwich.ts";
import { layupOf } from "./_layups.ts";

const LAYUP = layupOf(
  "glass twill 200",
  "glass twill 200",
  "PVC foam 80,,10",
  "glass twill 200",
  "glass twill 200",
);
const STACK = layupStack(LAYUP);
const DESIGN = layupDesign(LAYUP, STACK)!;
const MAKE = { stiffness: panelStiffness(STACK), design: DESIGN };

Deno.test("a curve adds the second moment of its arc", () => {
  const [rise, width] = [0.03, 0.4];
  // Nu is 0 in PLAIN, so that plate and beam agree: E A for a metre of width.
  const EA = 2 * 20e9 * 0.001 + 1e8 * 0.01;
  const count = 100_000;
  const heights = Array.from({ length: count }, (_, i) => {
    const share = (i + 0.5) / count - 0.5;
    return rise * (1 - 4 * share * share);
  });
  const mean = heights.reduce((sum, z) => sum + z, 0) / count;
  const square = heights.reduce((sum, z) => sum + (z - mean) ** 2, 0) / count;
  const plain = panelStiffness(PLAIN);
  const curved = curvedPanel(PLAIN, { rise, width });
  assertClose(curved.D11 - plain.D11, EA * square, { relative: 1e-8 });
  assertClose(curved.massPerArea / plain.massPerArea, 1 + 8 / 3 * 0.075 ** 2, { relative: 1e-12 });
});

Deno.test("a fillet of cloth alone is a thin quarter arc", () => {
  const [radius, t] = [0.02, 1e-6];
  const part = filletMember({
    radius,
    cornerDeg: 90,
    puttyDensity: 1,
    puttyModulus: 0,
    clothThickness: t,
    clothModulus: 20e9,
    clothArealMass: 1,
    overlap: 0,
  }, 0.01);
  // A quarter arc about (r, r): height r (1 − 2/π), I = r³ t (π/4 − 2/π). The cloth lies t/2 off.
  const close = { relative: 1e-4 };
  assertClose(part.E * part.area, 20e9 * t * radius * Math.PI / 2, close);
  assertClose(part.height, 0.01 + radius * (1 - 2 / Math.PI), close);
  assertClose(
    part.E * part.ownSecondMoment,
    20e9 * t * radius ** 3 * (Math.PI / 4 - 2 / Math.PI),
    close,
  );
});

const TASKS: readonly (readonly [string, readonly PanelLoad[]])[] = [
  ["a pressure", [{ kind: "uniform", pressure: 5000 }]],
  ["a heel", [{ kind: "patch", force: 1000, x: 0.3, y: 0.2, lengthX: 0.06, lengthY: 0.06 }]],
];

for (const [name, loads] of TASKS) {
  Deno.test(`the quick look under ${name} agrees with exact sine waves`, () => {
    const quick = fourEdgePanel(MAKE, { length: 0.6, width: 0.4, loads, waves: 99 });
    const solution = solvePanel({
      length: 0.6,
      width: 0.4,
      stiffness: MAKE.stiffness,
      edges: allEdges("simple"),
      loads,
    });
    // Every 15 and 10 mm: the middle and the rim of the heel are among them.
    const field = panelField(solution, { x: 41, y: 41 });
    const close = panelFailure(field, loads, DESIGN);
    assertClose(quick.deflection, field.largest("deflection").deflection, { relative: 2e-4 });
    for (const mode of ["face compression", "wrinkling", "face tension"]) {
      const reserve = (list: typeof close): number =>
        list.find((one) => one.mode === mode)!.reserve;
      assertClose(reserve(quick.failures), reserve(close), { relative: 2e-3 });
    }
    const shear = (list: typeof close): number =>
      list.find(({ mode }) => mode === "core shear")!.reserve;
    assertClose(shear(quick.failures), shear(close), { relative: 3e-3 });
    for (const [waves, relative] of [[25, 0.03], [49, 0.02]] as const) {
      const rough = fourEdgePanel(MAKE, { length: 0.6, width: 0.4, loads, waves });
      assertClose(shear(rough.failures), shear(close), { relative });
    }
  });
}

Deno.test("faces twice as thick are those of twice the plies", () => {
  const more = variedLayup(LAYUP, { pliesPerFace: 4, coreThickness: 0.015 });
  const stack = layupStack(more);
  const expected = { stiffness: panelStiffness(stack), design: layupDesign(more, stack)! };
  const sized = resizedPanel(STACK, DESIGN, {
    face: 2 * DESIGN.topFace.thickness,
    core: 0.015,
  });
  for (const key of ["D11", "D12", "D22", "D66", "massPerArea"] as const) {
    assertClose(sized.stiffness[key], expected.stiffness[key], { relative: 1e-12 });
  }
  for (const key of ["thickness", "Ex", "tensileX", "compressiveY"] as const) {
    assertClose(sized.design.topFace[key], expected.design.topFace[key], { relative: 1e-12 });
  }
  assertEquals(sized.design.core, expected.design.core);
});

Deno.test("what cannot be built is refused", () => {
  const refused = (run: () => unknown, words: string): void => {
    assertThrows(run, InputError, words);
  };
  refused(() => curvedPanel(STACK, { rise: 0.05, width: 0.4 }), "rise");
  refused(() => fourEdgePanel(MAKE, { length: 0.6, width: 0.4, loads: [], waves: 25 }), "loads");
  refused(
    () => fourEdgePanel(MAKE, { length: 0.6, width: 0.4, loads: TASKS[0]![1], waves: 0 }),
    "waves",
  );
  refused(() => resizedPanel(STACK, DESIGN, { face: 0, core: 0.01 }), "thickness of a face");
  refused(
    () => resizedPanel(STACK.toReversed().slice(3), DESIGN, { face: 0.001, core: 0.01 }),
    "stack",
  );
  const corner = {
    radius: 0.01,
    cornerDeg: 100,
    puttyDensity: 600,
    puttyModulus: 1e9,
    clothThickness: 2e-4,
    clothModulus: 18e9,
    clothArealMass: 0.4,
    overlap: 0.02,
  };
  refused(() => filletMember(corner, 0), "angle of the corner");
});
