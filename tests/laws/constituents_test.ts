import fc from "fast-check";
import { assert, assertEquals } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import {
  fibreFractionFromThickness,
  fibreMassFraction,
  fibreMassFractionFromRatio,
  fibreVolumeFraction,
  laminateDensity,
  layerContents,
  mixtureOfLayers,
  panelWeighing,
  partBalance,
  type PartWeighing,
  plyThickness,
  resinForFraction,
  resinRatio,
  voidFraction,
  voidFractionFromThickness,
  voidFreeDensity,
  weighPart,
} from "../../lib/constituents/mod.ts";
import { assertClose } from "../close.ts";

const SEEDED = { seed: 20261125, numRuns: 300 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const densities = fc.record({
  fibreDensity: between(900, 3000),
  resinDensity: between(1000, 1400),
});
const layer = fc.record({
  arealWeight: between(0.02, 2),
  fibreDensity: between(900, 3000),
  resinDensity: between(1000, 1400),
  fibreVolumeFraction: between(0.05, 0.7),
  voidFraction: between(0, 0.2),
  plies: fc.integer({ min: 1, max: 40 }),
});

Deno.test("mass fraction, volume fraction and ratio lead there and back", () => {
  fc.assert(
    fc.property(between(1e-3, 1), densities, (Vf, both) => {
      const W = fibreMassFraction(Vf, both);
      assertClose(fibreVolumeFraction(W, both), Vf, { relative: 1e-12 });
      assertClose(fibreMassFractionFromRatio(resinRatio(W)), W, { relative: 1e-12 });
    }),
    SEEDED,
  );
});

Deno.test("the two forms of density agree, and the void fraction is their gap", () => {
  fc.assert(
    fc.property(layer, (made) => {
      const { fibreVolumeFraction: Vf, voidFraction: Vv } = made;
      const density = laminateDensity(Vf, made, Vv);
      const voidFree = voidFreeDensity(fibreMassFraction(Vf, made, Vv), made);
      assertClose(voidFraction(density, voidFree), Vv, { absolute: 1e-13 });
    }),
    SEEDED,
  );
});

Deno.test("a planned layer, made and measured, gives back its fractions", () => {
  fc.assert(
    fc.property(layer, between(0.01, 10), (made, area) => {
      const { thickness, fibrePerArea, resinPerArea, density } = layerContents(made);
      assertClose(fibreFractionFromThickness({ ...made, thickness }), made.fibreVolumeFraction, {
        relative: 1e-12,
      });
      const measured = panelWeighing({
        ...made,
        mass: (fibrePerArea + resinPerArea) * area,
        massFibre: fibrePerArea * area,
        area,
        thickness,
      });
      assertClose(measured.voidFraction, made.voidFraction, { absolute: 1e-12 });
      assertClose(measured.fibreVolumeFraction, made.fibreVolumeFraction, { relative: 1e-12 });
      assertClose(measured.density, density, { relative: 1e-12 });
      const byThickness = voidFractionFromThickness({
        ...made,
        thickness,
        fibrePerArea,
        resinPerArea,
      });
      assertClose(byThickness, made.voidFraction, { absolute: 1e-12 });
    }),
    SEEDED,
  );
});

Deno.test("a mixture of layers is the layer itself, and splitting a layer changes nothing", () => {
  fc.assert(
    fc.property(layer, layer, (first, second) => {
      const alone = mixtureOfLayers([first]);
      const contents = layerContents(first);
      assertClose(alone.thickness, contents.thickness, { relative: 1e-15 });
      assertClose(alone.density, contents.density, { relative: 1e-12 });
      assertClose(alone.fibreVolumeFraction, first.fibreVolumeFraction, { relative: 1e-12 });
      const doubled = { ...first, plies: 2 * first.plies };
      const whole = mixtureOfLayers([doubled, second]);
      const split = mixtureOfLayers([first, second, first]);
      assertClose(Object.values(split), Object.values(whole), { relative: 1e-12 });
      const low = Math.min(first.fibreVolumeFraction, second.fibreVolumeFraction);
      const high = Math.max(first.fibreVolumeFraction, second.fibreVolumeFraction);
      assert(whole.fibreVolumeFraction >= low * (1 - 1e-12));
      assert(whole.fibreVolumeFraction <= high * (1 + 1e-12));
    }),
    SEEDED,
  );
});

Deno.test("thickness per cloth falls as the fibre fraction rises, in proportion to the cloth", () => {
  fc.assert(
    fc.property(layer, between(1.001, 1.4), (made, more) => {
      const thinner = plyThickness({
        ...made,
        fibreVolumeFraction: made.fibreVolumeFraction * more,
      });
      assertClose(thinner * more, plyThickness(made), { relative: 1e-12 });
    }),
    SEEDED,
  );
});

const exact = (value: number) => ({ value, u: 0 });
const part = fc.record({
  area: between(0.05, 5),
  coreMass: between(0, 4),
  uptake: between(0, 0.5),
  otherMass: between(0, 0.5),
  arealWeight: between(0.05, 1),
  fibreDensity: between(1400, 2700),
  resinDensity: between(1000, 1300),
  count: fc.integer({ min: 1, max: 12 }),
  fraction: between(0.2, 0.6),
});

Deno.test("a part made up to a fraction weighs in at that fraction, its surplus nothing", () => {
  fc.assert(
    fc.property(part, (made) => {
      const fibreMass = made.count * made.arealWeight * made.area;
      const fibreVolume = fibreMass / made.fibreDensity;
      const resin = resinForFraction(fibreVolume, made.fraction, made.resinDensity);
      const coreResin = made.uptake * made.area;
      const partMass = made.coreMass + coreResin + made.otherMass + fibreMass + resin;
      const balance = partBalance({
        ...made,
        partMass,
        coreResin,
        fibreMass,
        fibreVolume,
      });
      // A light laminate in a heavy part is a difference of large masses.
      const lost = 1e-14 * partMass / Math.min(resin, fibreMass);
      assertClose(balance.fibreVolumeFraction, made.fraction, { relative: 1e-12 + lost });
      const weighed = weighPart({
        partMass: exact(partMass),
        coreMass: exact(made.coreMass),
        coreUptake: exact(made.uptake),
        otherMass: exact(made.otherMass),
        area: exact(made.area),
        resinDensity: exact(made.resinDensity),
        layers: [{
          cloth: "cloth",
          fibre: "fibre",
          form: "woven",
          arealWeight: exact(made.arealWeight),
          fibreDensity: exact(made.fibreDensity),
          count: made.count,
        }],
        targetFibreVolumeFraction: made.fraction,
      });
      assertClose(weighed.fibreVolumeFraction!.value, made.fraction, { relative: 1e-12 + lost });
      assertClose(weighed.surplusResin.value, 0, { absolute: 1e-14 * partMass });
      assertClose(weighed.resinRatio.value, balance.resinRatio, { relative: 1e-12 + lost });
      assertEquals(weighed.resinRatio.u, 0);
    }),
    SEEDED,
  );
});

const uncertain = fc.record({ value: between(1e-4, 20), u: between(0, 0.05) });
const anyWeighing: fc.Arbitrary<PartWeighing> = fc.record({
  partMass: uncertain,
  coreMass: uncertain,
  otherMass: uncertain,
  area: fc.record({ value: between(0.01, 20), u: between(0, 0.01) }),
  resinDensity: fc.constant({ value: 1150, u: 10 }),
  layers: fc.array(
    fc.record({
      cloth: fc.constant("cloth"),
      fibre: fc.constant("fibre"),
      form: fc.constantFrom("woven", "mat", "stitched", "unidirectional"),
      arealWeight: fc.constant({ value: 0.3, u: 0.01 }),
      fibreDensity: fc.constant({ value: 2560, u: 20 }),
      count: fc.integer({ min: 1, max: 9 }),
    }),
    { minLength: 1, maxLength: 4 },
  ),
  process: fc.constantFrom("hand", "bagged", "infused"),
});

Deno.test("any weighing gets a verdict; a mistake gives its reason, never a number it cannot mean", () => {
  const seen = new Map<string, number>();
  fc.assert(
    fc.property(anyWeighing, (weighing) => {
      const result = weighPart(weighing);
      seen.set(result.verdict, (seen.get(result.verdict) ?? 0) + 1);
      if (result.verdict !== "plausible") assert(result.notes.length > 0);
      const { value, U } = result.laminateResin;
      if (value <= 0) assert(result.verdict !== "plausible");
      if (value + U <= 0) assertEquals(result.verdict, "mistake");
      for (const figure of [result.resinRatio, result.fibreVolumeFraction, result.surplusResin]) {
        if (figure !== null) assert(Number.isFinite(figure.value) && Number.isFinite(figure.u));
      }
    }),
    { ...SEEDED, numRuns: 600 },
  );
  assertEquals([...seen.keys()].sort(), ["doubtful", "mistake", "plausible"]);
});

Deno.test("numbers that are none never get through", () => {
  const odd = fc.constantFrom(NaN, Infinity, -Infinity, undefined, null, "0.5", [], {});
  fc.assert(
    fc.property(
      odd,
      fc.constantFrom("arealWeight", "fibreDensity", "resinDensity"),
      (bad, name) => {
        const layer = { arealWeight: 0.2, fibreDensity: 2560, resinDensity: 1200 };
        try {
          layerContents({ ...layer, fibreVolumeFraction: 0.4, [name]: bad });
          assert(false, `${name} ${bad} was taken`);
        } catch (error) {
          assert(error instanceof InputError, String(error));
        }
      },
    ),
    { ...SEEDED, numRuns: 60 },
  );
});
