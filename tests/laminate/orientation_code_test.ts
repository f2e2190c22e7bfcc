import { InputError } from "../../lib/check/mod.ts";
import {
  codeOfLayers,
  layersOfCode,
  type OrientationCode,
  readOrientationCode,
  stackDifferences,
  stackOfCode,
  writeOrientationCode,
} from "../../lib/laminate/mod.ts";
import { assertEquals, assertThrows } from "@std/assert";

const angles = (text: string): number[] => layersOfCode(text).map((layer) => layer.angleDeg);

Deno.test("repeats come before the mirror, and a middle ply is not doubled", () => {
  assertEquals(angles("[0/90]"), [0, 90]);
  assertEquals(angles("[0/90]T"), [0, 90]);
  assertEquals(angles("[0/90]s"), [0, 90, 90, 0]);
  assertEquals(angles("[0/90]2s"), [0, 90, 0, 90, 90, 0, 90, 0]);
  assertEquals(angles("[0/90]_2"), [0, 90, 0, 90]);
  assertEquals(angles("[0/90|]s"), [0, 90, 0]);
  assertEquals(angles("[0/[45/-45]_2/90]s"), [0, 45, -45, 45, -45, 90, 90, -45, 45, -45, 45, 0]);
  assertEquals(angles("[[0/90]s/45]"), [0, 90, 90, 0, 45]);
});

Deno.test("typed and printed signs mean the same", () => {
  const printed = ["[±45/0₂/90]₂s", "[∓45/0]ₛ", "[0/9\u03050\u0305]s", "[−30°/60°]"];
  const typed = ["[+-45/0_2/90]2s", "[-+45/0]s", "[0/90|]s", "[-30/60]T"];
  printed.forEach((text, i) => assertEquals(layersOfCode(text), layersOfCode(typed[i]!), text));
  assertEquals(angles("[ +-45 / 0_2 ] _2s"), [
    45,
    -45,
    0,
    0,
    45,
    -45,
    0,
    0,
    0,
    0,
    -45,
    45,
    0,
    0,
    -45,
    45,
  ]);
  assertEquals(angles("[22.5/+45/.5]"), [22.5, 45, 0.5]);
});

Deno.test("cloths, named layers and hybrids", () => {
  assertEquals(layersOfCode("[(0/90)_2/core/(±45)_C/mat]"), [
    { kind: "cloth", angleDeg: 0 },
    { kind: "cloth", angleDeg: 0 },
    { kind: "layer", angleDeg: 0, material: "core" },
    { kind: "cloth", angleDeg: 45, material: "C" },
    { kind: "layer", angleDeg: 0, material: "mat" },
  ]);
  assertEquals(layersOfCode("[0_C_2/+-45_G]"), [
    { kind: "ply", angleDeg: 0, material: "C" },
    { kind: "ply", angleDeg: 0, material: "C" },
    { kind: "ply", angleDeg: 45, material: "G" },
    { kind: "ply", angleDeg: -45, material: "G" },
  ]);
  assertEquals(layersOfCode("[0_2_C]"), layersOfCode("[0_C_2]"));
  assertEquals(layersOfCode("[(0/90)/core|]s").map((layer) => layer.kind), [
    ...["cloth", "layer", "cloth"] as const,
  ]);
});

Deno.test("each fault is pointed at", () => {
  const cases: readonly [string, number, string][] = [
    ["", 1, "must be [: a code stands in square brackets"],
    ["0/90", 1, "must be [: a code stands in square brackets"],
    ["[]", 2, "must be an angle, a cloth such as (0/90), a material or ["],
    ["[0/9o]s", 5, "must be / before another ply, or ] after the last"],
    ["[0,90]s", 3, "must be / before another ply, or ] after the last"],
    ["[0/90", 6, "must be / before another ply, or ] after the last"],
    ["[0//90]", 4, "must be an angle"],
    ["[0/1.2.3]", 4, "must be an angle"],
    ["[0/135]", 4, "must begin an angle from -90 to 90: 135 is the same as -45"],
    ["[0/90]x", 7, "must be the end of the code"],
    ["[0/90]s2", 8, "the number stands before s"],
    ["[0/90]sT", 8, "must not be T behind s"],
    ["[[0/90]T/0]", 8, "must not be T inside the code"],
    ["[0/90]_", 8, "must have a number, s or T behind it"],
    ["[0/90]0s", 7, "must be a number from 1 to 1000"],
    ["[0_/90]", 4, "must be a number of plies or a material"],
    ["[0_2_3/90]", 5, "must not be a second number of plies"],
    ["[0_C_G/90]", 5, "must not name a second material"],
    ["[core_C]", 6, "must not be a second material"],
    ["[0_2C]", 5, "must be / before another ply"],
    ["[±45_2]s", 5, "could mean +-+- or ++--: write [±45]_2"],
    ["[±-45]s", 3, "its two signs are given"],
    ["[0/±45|]s", 7, "must not mark a pair as the middle ply"],
    ["[0|/90]s", 2, "must be the last in its bracket"],
    ["[0/90|]", 4, "its bracket must end in s alone"],
    ["[0/90|]2s", 4, "its bracket must end in s alone"],
    ["[0/90_2|]s", 8, "must be one ply to be the middle ply"],
    ["[0/90||]s", 7, "must not mark the middle ply twice"],
    ["[(0/45)]", 2, "begins a cloth whose directions do not cross at 90°"],
    ["[(±30)_2]", 2, "begins a cloth whose directions do not cross at 90°"],
    ["[(0)]", 4, "must be / and the cloth's second direction"],
    ["[(0/90]", 7, "must be ) after the cloth's two directions"],
    ["[[0]_1000]_2", 1, "begins more than 1000 plies"],
    ["[".repeat(21) + "0", 21, "must not open bracket 21"],
  ];
  for (const [text, character, message] of cases) {
    const error = assertThrows(() => readOrientationCode(text), InputError, message, text);
    const caret = error.message.split("\n").at(-1)!;
    assertEquals(caret, `  ${" ".repeat(character - 1)}^`, text);
    assertEquals(error.message.includes(`at character ${character} `), true, error.message);
  }
  assertThrows(() => readOrientationCode(["[0]"] as unknown as string), InputError, "must be text");
  assertThrows(() => readOrientationCode(`[${"0/".repeat(15000)}`), InputError, "20000 characters");
});

Deno.test("the largest code that is read, and angles up to the right one", () => {
  assertEquals(layersOfCode("[[0]_1000]").length, 1000);
  assertEquals(layersOfCode("[0_500]s").length, 1000);
  assertThrows(() => layersOfCode("[0_501]s"), InputError, "more than 1000 plies");
  assertEquals(layersOfCode("[".repeat(20) + "0" + "]".repeat(20)).length, 1);
  assertEquals(layersOfCode("[90/-90]").map((layer) => "angleDeg" in layer && layer.angleDeg), [
    ...[90, -90],
  ]);
  for (const angle of ["90.5", "-90.5"]) {
    assertThrows(() => readOrientationCode(`[${angle}]`), InputError, "from -90 to 90");
  }
});

Deno.test("the caret stands below the fault in a long code and below overlined print", () => {
  const error = assertThrows(
    () => readOrientationCode(`[${"45/".repeat(60)}9o]`),
    InputError,
    "at character 183",
  );
  const [, line, caret] = error.message.split("\n");
  assertEquals(line![caret!.length - 1], "o");
  const overlined = assertThrows(
    () => readOrientationCode("[0/9\u03050\u0305x]s"),
    InputError,
    "must be / before",
  );
  assertEquals(overlined.message.split("\n").at(-1), `  ${" ".repeat(5)}^`);
});

const lamina = {
  ...{ name: "ply", E1: 40e9, E2: 10e9, G12: 4e9, nu12: 0.28, G13: 4e9, G23: 3e9 },
  ...{ density: 1900, alpha1: 7e-6, alpha2: 25e-6 },
};
const ply = { lamina, thickness: 0.2e-3 };
const core = { lamina: { ...lamina, name: "core" }, thickness: 10e-3 };

Deno.test("a stack takes its materials by kind and by key", () => {
  const carbon = { lamina: { ...lamina, name: "carbon" }, thickness: 0.15e-3 };
  const cloth = { lamina: { ...lamina, name: "cloth" }, thickness: 0.3e-3 };
  const stack = stackOfCode("[90/(±45)/core/0_C]", { ply, cloth, named: { core, C: carbon } });
  assertEquals(stack.map(({ lamina }) => lamina.name), ["ply", "cloth", "core", "carbon"]);
  assertEquals(stack.map(({ angleDeg }) => angleDeg), [90, 45, 0, 0]);
  assertEquals(stack.map(({ thickness }) => thickness), [0.2e-3, 0.3e-3, 10e-3, 0.15e-3]);
  assertThrows(() => stackOfCode("[0/(0/90)]", { ply }), InputError, "must be given as `cloth`");
  assertThrows(
    () => stackOfCode("[0_X]", { ply, named: { core } }),
    InputError,
    'material of layer 1 is "X", must be one of: core',
  );
  assertThrows(() => stackOfCode("[0_constructor]", { ply, named: { core } }), InputError, "core");
});

Deno.test("stacks are compared ply by ply", () => {
  const stack = stackOfCode("[0/90/core]", { ply, named: { core } });
  const other = stackOfCode("[45/-90]", { ply: { ...ply, thickness: 0.25e-3 } });
  assertEquals(stackDifferences(stack, stack), []);
  assertEquals(stackDifferences(stack, other), [
    "there are 2 plies, not 3",
    "ply 1 lies at 45°, not at 0°",
    "ply 1 is 0.25 mm thick, not 0.2 mm",
    "ply 2 is 0.25 mm thick, not 0.2 mm",
  ]);
  assertEquals(stackDifferences(stack, stackOfCode("[0/90/core]", { ply, named: { core: ply } })), [
    "ply 3 is of ply, not of core",
    "ply 3 is 0.2 mm thick, not 10 mm",
  ]);
  assertThrows(() => stackDifferences(stack, []), InputError, "must be a list of 1 or more");
});

Deno.test("a code is written short", () => {
  const short = (text: string): string => writeOrientationCode(codeOfLayers(layersOfCode(text)));
  assertEquals(short("[0/90/0/90/90/0/90/0]"), "[0/90]₂s");
  assertEquals(short("[0/0/0]"), "[0/0\u0305]s");
  assertEquals(short("[45/-45/0/0/90]"), "[±45/0₂/90]");
  assertEquals(short("[(45/-45)/core/(45/-45)]"), "[(±45)/core|]s");
  assertEquals(short("[45/-45/-45/45]"), "[±45]s");
  assertEquals(short("[-45/45/45]"), "[-45/45₂]");
});

Deno.test("what is no code taken apart is not written", () => {
  const code = readOrientationCode("[0/90]s");
  const bad = (change: object): OrientationCode => ({ ...code, ...change }) as OrientationCode;
  assertThrows(() => writeOrientationCode(bad({ entries: [] })), InputError, "list of 1 or more");
  assertThrows(() => writeOrientationCode(bad({ count: 0 })), InputError, "must be a whole number");
  assertThrows(() => layersOfCode(bad({ entries: [7] })), InputError, "entry of the code");
  assertThrows(
    () => layersOfCode(bad({ entries: [{ kind: "ply", angleDeg: NaN, count: 1, middle: false }] })),
    InputError,
    "angle is NaN",
  );
  for (const angleDeg of [90.01, -90.01]) {
    const ply = { kind: "ply", angleDeg, count: 1, middle: false };
    assertThrows(() => layersOfCode(bad({ entries: [ply] })), InputError, "between -90 and 90");
  }
  assertThrows(
    () => layersOfCode({ ...readOrientationCode("[0/90|]s"), symmetric: false }),
    InputError,
    "must be one ply, the last of a symmetric group",
  );
  assertThrows(() => codeOfLayers([]), InputError, "must be a list of 1 or more");
  assertThrows(
    () => codeOfLayers([{ kind: "ply", angleDeg: 0, material: "2 C" }]),
    InputError,
    "must be a key of letters",
  );
});
