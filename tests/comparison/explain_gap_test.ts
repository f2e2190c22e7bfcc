import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { explainGap, type Gap } from "../../lib/comparison/mod.ts";
import { assertClose } from "../close.ts";

const INPUTS = {
  "face modulus": { value: 20, u: 1, reading: "long span" },
  "core shear modulus": { value: 27, u: 3, reading: "short span" },
  width: { value: 60, u: 0.2, reading: "callipers" },
};

/** Compliances at a long and two short spans, as a beam's, in plain units. */
const predict: Gap["predict"] = ({ "face modulus": E, "core shear modulus": G, width: b }) => [
  1e4 / (E! * b!) + 1e3 / (G! * b!),
  3e3 / (E! * b!) + 7e2 / (G! * b!),
  1e3 / (E! * b!) + 5e2 / (G! * b!),
];

function gapFrom(changed: Readonly<Record<string, number>>): Gap {
  const values = Object.fromEntries(
    Object.entries(INPUTS).map(([name, { value }]) => [name, value]),
  );
  const measured = predict({ ...values, ...changed }).map((value) => ({ value, u: 0.01 * value }));
  return { measured, inputs: INPUTS, predict };
}

Deno.test("the planted error comes first, with its value", () => {
  for (
    const [name, value] of [["core shear modulus", 18], ["face modulus", 16], [
      "width",
      48,
    ]] as const
  ) {
    const { significant, explanations: [first] } = explainGap(gapFrom({ [name]: value }));
    assert(significant, `a ${name} of ${value} must show`);
    assertEquals(first!.input, name);
    assertClose(first!.needed.value, value, { relative: 1e-3 });
    assertClose(first!.misfit, 0, { absolute: 1e-4 });
  }
});

Deno.test("one linear measurement: the closed form, by hand", () => {
  // m = 12 ± 0.5 of p = x + y, x = 10 ± 2, y = 0 ± 1: V = 0.25 + 4 + 1, χ² = 4/5.25; freeing x
  // leaves nothing, asks for 12 and knows it to √(0.25 + 1).
  const { misfit, significant, explanations } = explainGap({
    measured: [{ value: 12, u: 0.5 }],
    inputs: { x: { value: 10, u: 2, reading: "" }, y: { value: 0, u: 1, reading: "" } },
    predict: ({ x, y }) => [x! + y!],
  });
  assertClose(misfit, 4 / 5.25, { relative: 1e-10 });
  assertEquals(significant, false);
  const x = explanations.find(({ input }) => input === "x")!;
  assertClose([x.needed.value, x.needed.u, x.shift], [12, Math.sqrt(1.25), 1], { relative: 1e-9 });
  // Both act alike: equal evidence, and the smaller shift stands first.
  assertEquals(explanations.map(({ input }) => input), ["x", "y"]);
  assertClose(explanations[1]!.evidence, x.evidence, { relative: 1e-9 });
});

Deno.test("two linear measurements: evidence from the 2 × 2 matrix, by hand", () => {
  // p = (x, x + y), um = 1, ux = 2, uy = 3; r = (1, 5). V = [5 4; 4 14], det 54.
  // χ² = (14·1 − 2·4·5 + 5·25)/54 = 99/54. Freed y: V = [5 4; 4 5], s = (0, 1):
  // a = (−4·1 + 5·5)/5 = 4.2 and χ² = (5 − 2·4·5 + 125)/9 − (21/9)²/(5/9) = 0.2.
  const { misfit, explanations } = explainGap({
    measured: [{ value: 1, u: 1 }, { value: 5, u: 1 }],
    inputs: { x: { value: 0, u: 2, reading: "" }, y: { value: 0, u: 3, reading: "" } },
    predict: ({ x, y }) => [x!, x! + y!],
  });
  assertClose(misfit, 99 / 54, { relative: 1e-9 });
  const y = explanations.find(({ input }) => input === "y")!;
  assertClose(y.needed.value, 4.2, { relative: 1e-9 });
  assertClose(y.misfit, 0.2, { relative: 1e-8 });
  assertClose(y.evidence, Math.sqrt(99 / 54 - 0.2), { relative: 1e-8 });
});

Deno.test("a small gap is no gap", () => {
  const { significant, misfit, explanations } = explainGap(gapFrom({ "face modulus": 20.5 }));
  assertEquals(significant, false);
  assert(misfit < 1);
  for (const { evidence } of explanations) assert(evidence < 1);
});

Deno.test("an input that does not bring the spans together is not enough", () => {
  const { explanations } = explainGap(gapFrom({ "core shear modulus": 12 }));
  assertEquals(explanations.find(({ input }) => input === "width")?.verdict, "not enough");
});

Deno.test("verdicts go by the distance in standard uncertainties", () => {
  const verdictAt = (value: number) =>
    explainGap({
      measured: [{ value, u: 0.1 }],
      inputs: { x: { value: 10, u: 1, reading: "" } },
      predict: ({ x }) => [x!],
    }).explanations[0]!.verdict;
  assertEquals([11, 13, 15].map(verdictAt), ["likely", "possible", "far-fetched"]);
});

Deno.test("an input that the measurements do not feel has no evidence against it", () => {
  const { explanations } = explainGap({
    measured: [{ value: 12, u: 0.5 }],
    inputs: { x: { value: 10, u: 1, reading: "" }, colour: { value: 1, u: 1, reading: "" } },
    predict: ({ x }) => [x!],
  });
  const last = explanations.at(-1)!;
  assertEquals([last.input, last.evidence, last.verdict], ["colour", 0, "not enough"]);
});

Deno.test("a value that the prediction refuses ends the search, not the program", () => {
  const { explanations: [only] } = explainGap({
    measured: [{ value: 1.4, u: 0.01 }],
    inputs: { fraction: { value: 0.8, u: 0.1, reading: "" } },
    predict: ({ fraction }) => {
      if (fraction! > 1) {
        throw new InputError("predict", [{ argument: "fraction", value: fraction, wanted: "≤ 1" }]);
      }
      return [fraction!];
    },
  });
  assertClose(only!.needed.value, 0.8, { relative: 1e-9 });
});

Deno.test("what cannot be meant is refused by name", () => {
  const refused = (change: Partial<Gap>, message: string) =>
    assertThrows(() => explainGap({ ...gapFrom({}), ...change }), InputError, message);
  refused({ measured: [] }, "measured");
  refused({ measured: [{ value: 1, u: 0 }] }, "uncertainty of measured value 1");
  refused({ measured: [{ value: 1, u: 1 }] }, "must return 1 values");
  refused({ inputs: { width: { value: 60, u: 0, reading: "" } } }, "must have an uncertainty");
});
