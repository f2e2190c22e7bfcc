import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { explainGap, type Gap } from "../../lib/comparison/mod.ts";
import { assertClose } from "../close.ts";

const INPUTS = {
  "face modulus": { value: 20, u: 1, reading: "long span" },
  "core shear modulus": { value: 27, u: 3, reading: "short span" },
  width: { value: 60, u: 0.2, reading: "callipers" },
};

/** Compliances at a long and a short span, as a beam's, in plain units. */
const predict: Gap["predict"] = ({ "face modulus": E, "core shear modulus": G, width: b }) => [
  1e4 / (E! * b!) + 1e3 / (G! * b!),
  1e3 / (E! * b!) + 5e2 / (G! * b!),
];

const inputsOf = (changed: Readonly<Record<string, number>>) => ({
  ...Object.fromEntries(Object.entries(INPUTS).map(([name, { value }]) => [name, value])),
  ...changed,
});

function gapFrom(changed: Readonly<Record<string, number>>): Gap {
  const measured = predict(inputsOf(changed)).map((value) => ({ value, u: 0.01 * value }));
  return { measured, inputs: INPUTS, predict };
}

Deno.test("the planted error comes first, with its value", () => {
  for (const [name, value] of [["core shear modulus", 20], ["face modulus", 17.5]] as const) {
    const { explanations, misfit } = explainGap(gapFrom({ [name]: value }));
    assert(misfit > 9, "the gap must be there to be explained");
    assertEquals(explanations[0]!.input, name);
    // The prior pulls the estimate a little towards the value used.
    assertClose(explanations[0]!.needed, value, { relative: 0.03 });
    assert(explanations[0]!.verdict === "likely" || explanations[0]!.verdict === "possible");
  }
});

Deno.test("the shift is the one of the linear problem where the model is linear", () => {
  // One measured value m ± um of p = x: δ = (m − x) u/(um² + u²), the normal posterior mean.
  const { explanations: [only] } = explainGap({
    measured: [{ value: 12, u: 0.5 }],
    inputs: { x: { value: 10, u: 2, reading: "" } },
    predict: ({ x }) => [x!],
  });
  assertClose(only!.shift, 2 * 2 / (0.25 + 4), { relative: 1e-7 });
  assertClose(only!.needed, 10 + 2 * only!.shift, { relative: 1e-12 });
});

Deno.test("an input that cannot bring both spans together is not enough", () => {
  const { explanations } = explainGap(gapFrom({ "core shear modulus": 12 }));
  const width = explanations.find(({ input }) => input === "width");
  assertEquals(width?.verdict, "not enough");
});

Deno.test("no gap: the shifts are small", () => {
  const { misfit, explanations } = explainGap(gapFrom({}));
  assertClose(misfit, 0, { absolute: 1e-12 });
  for (const { shift } of explanations) assertClose(shift, 0, { absolute: 1e-6 });
});

Deno.test("a shift that the prediction refuses explains nothing, and does not stop the search", () => {
  const { explanations: [only] } = explainGap({
    measured: [{ value: 0.9, u: 0.01 }],
    inputs: { fraction: { value: 0.8, u: 0.1, reading: "" } },
    predict: ({ fraction }) => {
      if (fraction! > 1) throw new InputError("predict", []);
      return [fraction!];
    },
  });
  assertClose(only!.needed, 0.9, { relative: 2e-3 });
});

Deno.test("what cannot be meant is refused by name", () => {
  const refused = (change: Partial<Gap>, message: string) =>
    assertThrows(() => explainGap({ ...gapFrom({}), ...change }), InputError, message);
  refused({ measured: [] }, "measured");
  refused({ measured: [{ value: 1, u: 0 }] }, "uncertainty of measured value 1");
  refused({ measured: [{ value: 1, u: 1 }] }, "must return 1 values");
  refused({ inputs: { width: { value: 60, u: 0, reading: "" } } }, "must have an uncertainty");
  refused({ inputs: { width: { value: NaN, u: 1, reading: "" } } }, "width is NaN");
});
