import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { layupStack, predictBending } from "../../lib/comparison/mod.ts";
import { readPart } from "../../lib/records/mod.ts";
import { beamLoadCases } from "../../lib/sandwich/mod.ts";
import { assertClose } from "../close.ts";

const part = await readPart("data/sole-panels");
const layup = part.layups.get("sole")!;
const beam = {
  layup,
  width: { value: 0.075, u: 2e-4 },
  tests: [
    { test: "long", loadCase: beamLoadCases.threePoint, span: { value: 0.5, u: 5e-4 } },
    { test: "short", loadCase: beamLoadCases.threePoint, span: { value: 0.15, u: 5e-4 } },
  ],
};

Deno.test("the predicted slope is bending and shear of thin faces, to their own accuracy", () => {
  const { compliances } = predictBending(beam);
  const [bottom, , core, top] = layupStack(layup);
  const face = 2 * bottom!.thickness;
  const d = core!.thickness + face;
  // Thin faces, and the foam's own bending with its in-plane 71 MPa.
  const D = 0.075 * (top!.lamina.E1 * face * d * d / 2 + 71e6 * core!.thickness ** 3 / 12);
  const S = 27e6 * 0.075 * d * d / core!.thickness;
  beam.tests.forEach(({ span: { value: L } }, i) =>
    // What is left out, the faces' own bending, is t²/3d², under 0.1 % here.
    assertClose(compliances[i]!.value, L ** 3 / (48 * D) + L / (4 * S), { relative: 0.002 })
  );
});

Deno.test("the shear modulus matters at the short span, the faces at the long one", () => {
  const { compliances: [long, short] } = predictBending(beam);
  const share = (of: typeof long, name: string): number =>
    of!.budget.find((line) => line.name === name)!.share;
  assert(share(short, "shear modulus of PVC foam 80") > 0.4);
  assert(share(long, "shear modulus of PVC foam 80") < 0.1);
  assert(share(long, "areal weight of glass twill 200") > 0.2);
});

Deno.test("a weighed part is predicted with its own fibre fraction, more narrowly", () => {
  const scheduled = predictBending(beam);
  const weighed = predictBending({ ...beam, known: { fibreFraction: { value: 0.45, u: 0.01 } } });
  assertEquals(weighed.inputs["fibre volume fraction"]!.value, 0.45);
  assertEquals(weighed.inputs["fibre volume fraction"]!.source, "weighed");
  assert(weighed.compliances[0]!.u <= scheduled.compliances[0]!.u);
});

Deno.test("the prediction as a function gives its own middle values", () => {
  const { compliances, inputs, predict } = predictBending(beam);
  const values = Object.fromEntries(
    Object.entries(inputs).map(([name, { value }]) => [name, value]),
  );
  assertClose(predict(values), compliances.map(({ value }) => value), { relative: 1e-15 });
});

Deno.test("no test, and a lay-up that makes no sandwich, are refused", () => {
  assertThrows(() => predictBending({ ...beam, tests: [] }), InputError, "tests");
  const solid = { name: "solid", layers: layup.layers.slice(0, 2) };
  assertThrows(() => predictBending({ ...beam, layup: solid }), InputError);
});
