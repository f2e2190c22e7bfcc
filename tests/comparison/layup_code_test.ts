import { assert, assertEquals, assertThrows } from "@std/assert";
import fc from "fast-check";
import { InputError } from "../../lib/check/mod.ts";
import { layupCode, layupStack } from "../../lib/comparison/mod.ts";
import { stackDifferences, stackOfCode } from "../../lib/laminate/mod.ts";
import type { LayupRecord } from "../../lib/records/mod.ts";
import { layupOf } from "./_layups.ts";

/** In what the stack of the schedule and that of its code differ, in either form of the code. */
function differences(layup: LayupRecord): readonly string[] {
  const stack = layupStack(layup);
  const { text, typed, materials } = layupCode(layup);
  return [text, typed].flatMap((code) =>
    stackDifferences(stack, stackOfCode(code, materials(stack)))
  );
}

const CASES: readonly (readonly [code: string, meanings: string, ...rows: string[]])[] = [
  ["[0/90]s", "ply", "glass UD 250, 0", "glass UD 250, 90", "glass UD 250, 90", "glass UD 250, 0"],
  [
    "[(0/90)₂/core|]s",
    "cloth core*",
    "glass twill 200",
    "glass twill 200",
    "PVC foam 80,,10",
    "glass twill 200",
    "glass twill 200",
  ],
  [
    "[mat/0/(±45)|]s",
    "mat* ply cloth",
    "glass mat 300",
    "glass UD 500, 0",
    "glass biaxial 400, 45",
    "glass UD 500, 180",
    "glass mat 300",
  ],
  // Two kinds of ply with one direction: both are named, the second of glass with a number.
  [
    "[0_carbon/90_glass/90_glass2]",
    "carbon* glass* glass2*",
    "carbon UD 150, 0",
    "glass UD 250, -90",
    "glass UD 500, 90",
  ],
  // Cores of two thicknesses, the second with its ribbon across.
  [
    "[(±45)/core/90_core2/(±45)]",
    "cloth core* core2*",
    "glass twill 200, 45",
    "PVC foam 80,,5",
    "aramid honeycomb 48 3 mm, 90, 8",
    "glass twill 200, -135",
  ],
  // The same cloth wetter on one side is another material.
  [
    "[(0/90)_glass/(0/90)_glass2]",
    "glass* glass2*",
    "glass twill 200, 0,, 0.45",
    "glass twill 200, 0,, 0.35",
  ],
];

Deno.test("a schedule and its orientation code give the same stack, cloth, mat and core included", () => {
  for (const [code, meanings, ...rows] of CASES) {
    const layup = layupOf(...rows);
    const { text, meanings: told } = layupCode(layup);
    assertEquals(text, code);
    assertEquals(told.map(({ sign, named }) => sign + (named ? "*" : "")).join(" "), meanings);
    assertEquals(differences(layup), [], code);
  }
});

Deno.test("any schedule and its code give the same stack", () => {
  const layer = fc.oneof(
    fc.tuple(
      fc.constantFrom("glass UD 250", "carbon UD 150", "glass twill 200", "glass biaxial 400"),
      fc.constantFrom(0, 30, 45, 90, -45, -90, 135, -180),
    ).map(([name, angle]) => `${name}, ${angle}`),
    fc.constantFrom("glass mat 300", "glass mat 450, 15", "PVC foam 80,,10", "PVC foam 80,,5"),
  );
  fc.assert(
    fc.property(fc.array(layer, { minLength: 0, maxLength: 7 }), (rows) => {
      assertEquals(differences(layupOf("glass twill 200, 0", ...rows)), []);
    }),
    { seed: 20261125, numRuns: 60 },
  );
});

Deno.test("a figure of a material that is no number is refused by its place, wherever it is used", () => {
  const sound = layupOf("glass twill 200");
  const [ply] = sound.layers;
  assert(ply?.kind === "reinforcement");
  const spoilt = (change: object): LayupRecord => ({ ...sound, layers: [{ ...ply, ...change }] });
  const cases = [
    [{ fibre: { ...ply.fibre, G23: NaN } }, "G23 of the fibre of the 0"],
    [{ resin: { ...ply.resin, typical: { E: {} } } }, "low end of the typical E"],
    [{ reinforcement: undefined }, "reinforcement of layer 1"],
    [{ kind: "veneer" }, "kind of layer 1"],
    [{ fibreFraction: "a lot" }, "fibre fraction of layer 1"],
  ] as const;
  for (const [change, words] of cases) {
    for (const use of [layupCode, layupStack]) {
      assertThrows(() => use(spoilt(change)), InputError, words);
    }
  }
});

Deno.test("a lay-up without layers and a stack of another lay-up are refused", () => {
  assertThrows(() => layupCode({ name: "empty", layers: [] }), InputError, "layers");
  assertThrows(() => layupCode(null as never), InputError, "lay-up");
  const one = layupOf("glass twill 200");
  const two = layupOf("glass twill 200", "glass twill 200");
  assertThrows(() => layupCode(two).materials(layupStack(one)), InputError, "2 layers");
});
