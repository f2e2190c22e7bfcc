/** Each slip of the pen that a doubtful weighing is held against: made on purpose, and found. */
import { assert, assertEquals } from "@std/assert";
import { type PartWeighing, weighPart } from "../../lib/constituents/mod.ts";

const exact = (value: number) => ({ value, u: 0 });

/**
 * Half a square metre, 0.8 kg core, 0.05 kg insert, four twills of 0.2 kg/m² weighed dry with 0.1 kg
 * of trim: 0.4 kg of glass, 0.4 kg of resin in the laminate and 0.1 kg in the core.
 * Vf = (0.4/2560)/(0.4/2560 + 0.4/1150) = 0.31, in the band of woven cloth by hand (0.30 to 0.45).
 */
const honest: PartWeighing = {
  partMass: exact(1.75),
  coreMass: exact(0.8),
  otherMass: exact(0.05),
  coreUptake: exact(0.2),
  area: exact(0.5),
  layers: [{
    cloth: "twill",
    fibre: "E-glass",
    form: "woven",
    arealWeight: exact(0.2),
    fibreDensity: exact(2560),
    count: 4,
  }],
  resinDensity: exact(1150),
};
const dry: PartWeighing = { ...honest, dryClothMass: exact(0.5), trimmedClothMass: exact(0.1) };

const notesOf = (weighing: PartWeighing): readonly string[] => {
  const { verdict, notes } = weighPart(weighing);
  assert(verdict !== "plausible", notes.join(" "));
  return notes;
};

// International avoirdupois pound 0.45359237 kg, ounce a sixteenth; foot 0.3048 m: by definition.
const OUNCE = 453.59237 / 16;
const SLIPS: readonly (readonly [string, number])[] = [
  ["was read in ounces and written as grams", 1 / OUNCE],
  ["was read in grams and written as ounces", OUNCE],
  ["was read in pounds and written as kilograms", 1 / 0.45359237],
  ["was read in kilograms and written as pounds", 0.45359237],
  ["was read in pounds and written as grams", 1 / 453.59237],
  ["was read in grams and written as pounds", 453.59237],
  ["has its decimal point one place too far right", 10],
  ["has its decimal point one place too far left", 0.1],
];

Deno.test("the honest weighing is believed", () => {
  assertEquals(weighPart(honest).verdict, "plausible");
  assertEquals(weighPart(dry).verdict, "plausible");
});

Deno.test("units and decimal point of each mass: the slip is named, and not its opposite", () => {
  // Less cloth than trim is refused before: almost no trim here.
  const hardlyTrimmed = { ...dry, dryClothMass: exact(0.4001), trimmedClothMass: exact(1e-4) };
  const masses = [
    ["part mass", "partMass", dry],
    ["core mass", "coreMass", dry],
    ["dry cloth mass", "dryClothMass", hardlyTrimmed],
  ] as const;
  for (const [words, field, weighing] of masses) {
    for (const [i, [says, factor]] of SLIPS.entries()) {
      const wrong = { ...weighing, [field]: exact(weighing[field]!.value * factor) };
      const notes = notesOf(wrong);
      const named = notes.filter((note) => note.startsWith(`It would fit if the ${words} `));
      assert(
        named.includes(`It would fit if the ${words} ${says}.`),
        `${says}: ${notes.join(" ")}`,
      );
      const [opposite] = SLIPS[i % 2 === 0 ? i + 1 : i - 1]!;
      assertEquals(named.some((note) => note.includes(opposite)), false);
    }
  }
});

Deno.test("the area: square feet, one half, both faces", () => {
  const byArea = (factor: number): readonly string[] =>
    notesOf({ ...honest, area: exact(0.5 * factor) });
  assert(byArea(1 / 0.3048 ** 2).some((note) => note.includes("square feet")));
  assert(byArea(1 / 2).some((note) => note.includes("half of what was laid up")));
  assert(byArea(2).some((note) => note.includes("counts both faces")));
});

Deno.test("the core: not on the scale, half of it weighed", () => {
  const off = notesOf({ ...honest, partMass: exact(1.75 - 0.8) });
  assert(off.includes("It would fit if the core had not been on the scale with the part."));
  const half = notesOf({ ...honest, coreMass: exact(0.4) });
  assert(half.includes("It would fit if only half of the core had been weighed."), half.join(" "));
});

Deno.test("a core that was not subtracted: how much would have to be in the part", () => {
  // Without the core: 1.75 − 0.05 − 0.4 = 1.3 kg would be resin. In the middle of the band,
  // Vf 0.375, it is 1150 × 0.4/2560 × 0.625/0.375 = 0.2995 kg: 1000.5 g are too much, or 1001.
  const { coreMass: _, coreUptake: __, ...solid } = honest;
  const notes = notesOf(solid);
  assert(notes.some((note) => note.includes("about 1001 g of something else")), notes.join(" "));
});

Deno.test("one layer more or less of a cloth is named, if it brings the part into the range", () => {
  const [twill] = honest.layers;
  const layersIn = (change: Partial<PartWeighing>): readonly string[] =>
    notesOf({ ...honest, ...change }).filter((note) => note.includes("one layer"));
  // 0.45 kg of laminate: four twills leave 50 g of resin, Vf 0.78; three leave 150 g, Vf 0.47.
  assertEquals(layersIn({ partMass: exact(1.4) }), [
    "It would fit with one layer less of twill.",
  ]);
  // 0.8 kg of laminate: one cloth of 0.4 kg/m² leaves 0.6 kg of resin, Vf 0.13; two 0.4 kg, 0.31.
  const heavy = { ...twill!, arealWeight: exact(0.4), count: 1 };
  assertEquals(layersIn({ layers: [heavy] }), ["It would fit with one layer more of twill."]);
  // A mat of 0.6 kg/m² that was not laid: Vf 0.76 with it, 0.31 without.
  const { count: _, ...mat } = {
    ...twill!,
    cloth: "mat",
    form: "mat",
    arealWeight: exact(0.6),
  } as const;
  assertEquals(layersIn({ layers: [twill!, mat] }), ["It would fit with one layer less of mat."]);
  // Cloth weighed dry does not depend on the count.
  assertEquals(layersIn({ partMass: exact(1.4), dryClothMass: exact(0.4) }), []);
});
