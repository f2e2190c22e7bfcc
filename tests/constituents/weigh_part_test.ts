import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { type PartWeighing, weighPart } from "../../lib/constituents/mod.ts";
import { assertClose } from "../close.ts";

const kg = (value: number, u = 0.001) => ({ value, u });

/** Half a square metre of foam core, two twills on each face; resin one to one in the faces. */
const panel: PartWeighing = {
  partMass: kg(1.3),
  coreMass: kg(0.4),
  coreUptake: { value: 0.2, u: 0.04 },
  area: { value: 0.5, u: 0.002 },
  layers: [{
    cloth: "glass twill 200",
    fibre: "E-glass",
    form: "woven",
    arealWeight: { value: 0.2, u: 0.004 },
    fibreDensity: { value: 2560, u: 15 },
    count: 4,
  }],
  resinDensity: { value: 1150, u: 10 },
};

Deno.test("a sandwich panel gives ratio, fractions and surplus of the mass balance", () => {
  const part = weighPart(panel);
  assertEquals(part.verdict, "plausible");
  assertEquals(part.notes, []);
  // By hand: cloth 4 × 0.2 × 0.5 = 0.4; all resin 1.3 − 0.4 − 0.4 = 0.5, of which 0.1 in the core.
  assertClose(part.fibreMass.value, 0.4, { relative: 1e-12 });
  assertClose(part.resinMass.value, 0.5, { relative: 1e-12 });
  assertClose(part.laminateResin.value, 0.4, { relative: 1e-12 });
  assertClose(part.resinRatio.value, 1, { relative: 1e-12 });
  assertClose(part.fibreMassFraction!.value, 0.5, { relative: 1e-12 });
  const Vf = (0.4 / 2560) / (0.4 / 2560 + 0.4 / 1150);
  assertClose(part.fibreVolumeFraction!.value, Vf, { relative: 1e-12 });
  assertClose(part.laminateThickness!.value, (0.4 / 2560 + 0.4 / 1150) / 0.5, { relative: 1e-12 });
  // Middle of 0.30 to 0.45: 0.375, resin 1150 × 0.4/2560 × 0.625/0.375.
  assertClose(part.targetFibreVolumeFraction, 0.375, { relative: 1e-12 });
  assertClose(part.surplusResin.value, 0.4 - 1150 * 0.4 / 2560 / 0.6, { relative: 1e-10 });
});

Deno.test("the ratio's uncertainty is the square root of its parts, worked by hand", () => {
  const { resinRatio } = weighPart(panel);
  // r = (m − mc − q A)/(n w A) − 1: ∂r/∂m = 1/mf, ∂r/∂mc = −1/mf, ∂r/∂q = −A/mf,
  // ∂r/∂w = −(r + 1)/w, ∂r/∂A = −q/mf − (r + 1)/A.
  const parts = [0.001 / 0.4, 0.001 / 0.4, 0.04 * 0.5 / 0.4, 2 / 0.2 * 0.004];
  const byArea = (0.2 / 0.4 + 2 / 0.5) * 0.002;
  assertClose(resinRatio.u, Math.hypot(...parts, byArea), { relative: 1e-8 });
  assertClose(resinRatio.U, 2 * resinRatio.u, { relative: 1e-12 });
  assertEquals(resinRatio.budget[0]?.name, "core uptake");
  assertEquals(resinRatio.budget[1]?.name, "areal weight of glass twill 200");
});

Deno.test("masses of one scale share its error: the difference is known better", () => {
  const apart = weighPart(panel).resinMass.u;
  const together = weighPart({ ...panel, scaleCorrelation: 1 }).resinMass.u;
  const byCloth = Math.hypot(2 * 0.004, 0.8 * 0.002);
  assertClose(apart, Math.hypot(0.001, 0.001, byCloth), { relative: 1e-8 });
  assertClose(together, byCloth, { relative: 1e-8 });
});

Deno.test("cloth weighed dry replaces areal weight, its trim is left out", () => {
  const part = weighPart({
    ...panel,
    dryClothMass: kg(0.46),
    trimmedClothMass: kg(0.05),
    otherMass: kg(0.01),
  });
  assertClose(part.fibreMass.value, 0.41, { relative: 1e-12 });
  assertClose(part.resinMass.value, 1.3 - 0.4 - 0.01 - 0.41, { relative: 1e-12 });
  assertClose(part.resinMass.u, Math.hypot(...Array(5).fill(0.001)), { relative: 1e-8 });
});

Deno.test("each cloth is counted, a patch by its share of the area", () => {
  const [glass] = panel.layers;
  const carbon = {
    cloth: "carbon UD 150",
    fibre: "carbon",
    form: "unidirectional",
    arealWeight: { value: 0.15, u: 0.003 },
    fibreDensity: { value: 1780, u: 10 },
    count: 2,
    areaShare: 0.25,
  } as const;
  const part = weighPart({ ...panel, layers: [glass!, carbon] });
  assertClose(part.fibreMass.value, 0.4 + 2 * 0.25 * 0.15 * 0.5, { relative: 1e-12 });
  assertClose(
    part.fibreMass.u,
    Math.hypot(2 * 0.004, 0.25 * 0.003, (0.8 + 0.075) * 0.002),
    { relative: 1e-8 },
  );
});

Deno.test("one roll in two entries is one uncertainty, not two", () => {
  const [glass] = panel.layers;
  const split = { ...panel, layers: [{ ...glass!, count: 2 }, { ...glass!, count: 2 }] };
  assertClose(weighPart(split).resinRatio.u, weighPart(panel).resinRatio.u, { relative: 1e-12 });
  assertEquals(weighPart(split).usualBand.low, weighPart(panel).usualBand.low);
});

/** The notes as one text, for words that must be in it. */
const said = (weighing: PartWeighing) => {
  const { verdict, notes } = weighPart(weighing);
  return { verdict, text: notes.join("\n") };
};

Deno.test("resin-rich and dry parts are called so, and are no mistakes", () => {
  const rich = said({ ...panel, partMass: kg(1.52) });
  assertEquals(rich.verdict, "plausible");
  assert(rich.text.startsWith("Resin-rich"), rich.text);
  const dry = said({ ...panel, partMass: kg(1.05), coreUptake: { value: 0.2, u: 0.01 } });
  assertEquals(dry.verdict, "plausible");
  assert(dry.text.startsWith("Dry"), dry.text);
  const between = said({ ...panel, partMass: kg(1.33) });
  assertEquals(between.verdict, "plausible");
  assert(between.text.startsWith("Just below"), between.text);
});

Deno.test("no resin left is a mistake, returned as it comes and with what would explain it", () => {
  const part = weighPart({ ...panel, partMass: kg(0.82) });
  assertEquals(part.verdict, "mistake");
  assertClose(part.laminateResin.value, -0.08, { relative: 1e-9 });
  assertClose(part.resinRatio.value, -0.2, { relative: 1e-9 });
  assert(part.notes.join("\n").includes("the core had not been on the scale"));
});

Deno.test("a part in ounces written as grams is found out", () => {
  const part = weighPart({ ...panel, partMass: kg(1.3 / 28.349523125, 1e-5) });
  assertEquals(part.verdict, "mistake");
  assertEquals(part.fibreVolumeFraction, null);
  assertEquals(part.laminateThickness, null);
  assert(part.notes.some((note) => note.includes("part mass was read in ounces")));
});

Deno.test("a slipped decimal point and a forgotten core are found out", () => {
  const point = said({ ...panel, partMass: kg(13) });
  assertEquals(point.verdict, "mistake");
  assert(point.text.includes("one place too far right"), point.text);
  const { coreMass: _core, coreUptake: _uptake, ...solid } = panel;
  const forgotten = said({ ...solid, partMass: kg(1.7) });
  assertEquals(forgotten.verdict, "mistake");
  assert(forgotten.text.includes("such as a core"), forgotten.text);
});

Deno.test("a layer too many or too few is offered as an explanation", () => {
  const dry = said({ ...panel, partMass: kg(0.88), coreUptake: { value: 0, u: 0 } });
  assertEquals(dry.verdict, "doubtful");
  assert(dry.text.includes("one layer less of glass twill 200"), dry.text);
});

Deno.test("a ratio known to a third only is doubtful, and the worst input is named", () => {
  const vague = said({ ...panel, area: { value: 0.5, u: 0.05 } });
  assertEquals(vague.verdict, "doubtful");
  assert(vague.text.includes("most of that from the area"), vague.text);
});

Deno.test("a scale too coarse for the part cannot tell, which is no mistake of the crew", () => {
  const coarse = said({ ...panel, partMass: kg(0.88, 0.05) });
  assertEquals(coarse.verdict, "doubtful");
  assert(coarse.text.includes("it cannot tell"), coarse.text);
});

Deno.test("weighings that cannot be computed are refused, once per kind", () => {
  const [glass] = panel.layers;
  const refuse = (change: object, words: string) =>
    assertThrows(() => weighPart({ ...panel, ...change } as PartWeighing), InputError, words);
  assertThrows(() => weighPart(undefined as never), InputError, "weighing is missing");
  refuse({ partMass: undefined }, "part mass is missing");
  refuse({ partMass: 1.3 }, "part mass is 1.3, must be an object");
  refuse({ partMass: kg(NaN) }, "part mass is NaN");
  refuse({ partMass: kg(1.3, -1) }, "uncertainty of part mass is -1 kg");
  refuse({ coreMass: kg(-0.4) }, "core mass is -0.4 kg");
  refuse({ layers: [] }, "layers is a list of 0");
  refuse({ layers: [{ ...glass, count: 1.5 }] }, "count of glass twill 200 is 1.5");
  refuse({ layers: [{ ...glass, form: "knit" }] }, 'form is "knit"');
  refuse({ layers: [glass, { ...glass, arealWeight: kg(0.3) }] }, "carry another name");
  refuse({ trimmedClothMass: kg(0.05) }, "was not weighed dry");
  refuse({ dryClothMass: kg(0.05), trimmedClothMass: kg(0.06) }, "less trimmed cloth mass");
  refuse({ process: "pressed" }, "must be one of: hand, bagged, infused");
  refuse({ targetFibreVolumeFraction: 40 }, "target fibre volume fraction is 40");
  refuse({ scaleCorrelation: 2 }, "scale correlation is 2");
});
