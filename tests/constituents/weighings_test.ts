import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import {
  burnOff,
  fibreMassFraction,
  fibreVolumeFraction,
  laminateDensity,
  layerContents,
  LAYUP_PROCESSES,
  matrixVolumeFraction,
  mixtureOfLayers,
  panelWeighing,
  partBalance,
  plyThickness,
  resinRatio,
  uncertainBurnOff,
  uncertainFibreAndLaminate,
  uncertainFibreAndResin,
  uncertainPanelWeighing,
  uncertainThicknessContents,
  USUAL_BANDS,
  usualFibreFraction,
  voidFractionFromThickness,
} from "../../lib/constituents/mod.ts";
import { assertClose } from "../close.ts";

const TIGHT = { relative: 1e-12 };

// Expected figures by an independent program in exact fractions.
Deno.test("five plies with voids hold what exact fractions say", () => {
  const layer = layerContents({
    arealWeight: 0.29,
    fibreDensity: 2560,
    fibreVolumeFraction: 0.42,
    voidFraction: 0.02,
    resinDensity: 1150,
    plies: 5,
  });
  assertClose(layer.thickness, 0.0013485863095238095, TIGHT);
  assertClose(layer.fibrePerArea, 1.45, TIGHT);
  assertClose(layer.resinPerArea, 0.8684895833333334, TIGHT);
  assertClose(layer.fibreMassFraction, 0.6254071661237784, TIGHT);
  assertClose(layer.resinRatio, 0.5989583333333334, TIGHT);
  assertClose(layer.density, 1719.2, TIGHT);
});

const specimen = {
  massSpecimen: 3.127e-3,
  massFibre: 1.986e-3,
  massInAir: 3.125e-3,
  massInWater: 1.421e-3,
  waterDensity: 997.0479,
  fibreDensity: 2560,
  resinDensity: 1180,
};

Deno.test("a burn-off whose voids come out negative says so", () => {
  const contents = burnOff(specimen);
  assertClose(contents.density, 1828.5062720070423, TIGHT);
  assertClose(contents.fibreMassFraction, 0.6351135273425008, TIGHT);
  assertClose(contents.fibreVolumeFraction, 0.4536363547587027, TIGHT);
  assertClose(contents.resinVolumeFraction, 0.5654213591735283, TIGHT);
  // The difference from one of two fractions near one half each: two digits are lost.
  assertClose(contents.voidFraction, -0.01905771393223099, { relative: 1e-11 });
});

Deno.test("one weighing for specimen and air leaves less uncertainty in the fibre fraction", () => {
  const milligram = (value: number) => ({ value, u: 1e-6 });
  const exact = (value: number) => ({ value, u: 0 });
  const uncertain = {
    massSpecimen: milligram(specimen.massSpecimen),
    massFibre: milligram(specimen.massFibre),
    massInAir: milligram(specimen.massInAir),
    massInWater: milligram(specimen.massInWater),
    waterDensity: exact(specimen.waterDensity),
    fibreDensity: exact(specimen.fibreDensity),
    resinDensity: exact(specimen.resinDensity),
  };
  // By hand: Vf = mf a ρw/(ms (a − b) ρf), so that the relative sensitivities are 1 for mf,
  // −1 for ms, −b/(a − b) for a and b/(a − b) for b; with r = 1 those of ms and a add.
  const { massInAir: a, massInWater: b, massSpecimen: ms, massFibre: mf } = specimen;
  const Vf = burnOff(specimen).fibreVolumeFraction;
  const [forA, forB, forMs, forMf] = [-b / (a - b) / a, 1 / (a - b), -1 / ms, 1 / mf];
  const apart = Vf * 1e-6 * Math.hypot(forA, forB, forMs, forMf);
  const together = Vf * 1e-6 * Math.hypot(forA + forMs, forB, forMf);
  assertClose(uncertainBurnOff(uncertain).fibreVolumeFraction.u, apart, { relative: 1e-8 });
  assertClose(uncertainBurnOff(uncertain, 1).fibreVolumeFraction.u, together, { relative: 1e-8 });
});

Deno.test("a panel's budget is that of products and quotients", () => {
  const { density, fibreVolumeFraction: Vf } = uncertainPanelWeighing({
    mass: { value: 1.7, u: 0.002 },
    massFibre: { value: 1, u: 0.01 },
    area: { value: 1, u: 0.005 },
    thickness: { value: 1e-3, u: 0.03e-3 },
    fibreDensity: { value: 2500, u: 0 },
    resinDensity: { value: 1250, u: 0 },
  });
  assertClose(density.u, 1700 * Math.hypot(0.002 / 1.7, 0.005, 0.03), { relative: 1e-8 });
  assertClose(Vf.u, 0.4 * Math.hypot(0.01, 0.005, 0.03), { relative: 1e-8 });
  assertEquals(Vf.budget[0]?.name, "thickness");
});

Deno.test("a panel weighed and measured: every fraction by hand", () => {
  // 1.7 kg over a litre, 1 kg of it glass of 2500: 0.4 L; 0.7 kg resin of 1250: 0.56 L; 0.04 L is air.
  const contents = panelWeighing({
    mass: 1.7,
    massFibre: 1,
    area: 0.5,
    thickness: 2e-3,
    fibreDensity: 2500,
    resinDensity: 1250,
  });
  assertClose(contents.density, 1700, TIGHT);
  assertClose(contents.fibreMassFraction, 1 / 1.7, TIGHT);
  assertClose([contents.fibreVolumeFraction, contents.resinVolumeFraction], [0.4, 0.56], TIGHT);
  assertClose(contents.voidFraction, 0.04, { relative: 1e-11 });
});

Deno.test("thickness and two-mass forms agree with the plain mass balance", () => {
  const exact = (value: number) => ({ value, u: 0 });
  const byThickness = uncertainThicknessContents({
    arealWeight: exact(0.29),
    plies: exact(5),
    fibreDensity: exact(2560),
    thickness: exact(1.4e-3),
    resinDensity: exact(1150),
  });
  const Vf = 5 * 0.29 / 2560 / 1.4e-3;
  assertClose(byThickness.fibreVolumeFraction.value, Vf, TIGHT);
  assertClose(byThickness.resinPerArea.value, 1150 * (1 - Vf) * 1.4e-3, TIGHT);
  const byMass = uncertainFibreAndResin({
    massFibre: exact(1.45),
    massResin: exact(byThickness.resinPerArea.value),
    fibreDensity: exact(2560),
    resinDensity: exact(1150),
  });
  assertClose(byMass.fibreVolumeFraction.value, Vf, TIGHT);
  assertClose(
    byMass.fibreMassFraction.value,
    byThickness.fibreMassFraction.value,
    TIGHT,
  );
});

Deno.test("a mat between two cloths: every figure of the mixture by hand", () => {
  // Cloth: 2 × 0.25 kg/m² of glass 2500 is 0.2 mm of solid glass; at Vf 0.4 half a millimetre, of it
  // 0.3 mm resin 1200: 0.36 kg/m². Mat: 0.3 kg/m² is 0.12 mm; at 0.2 it is 0.6 mm, 0.48 mm resin
  // 1100: 0.528 kg/m². Together 0.8 kg fibre, 0.888 kg resin, 1.1 mm.
  const mixture = mixtureOfLayers([
    {
      arealWeight: 0.25,
      fibreDensity: 2500,
      resinDensity: 1200,
      fibreVolumeFraction: 0.4,
      plies: 2,
    },
    { arealWeight: 0.3, fibreDensity: 2500, resinDensity: 1100, fibreVolumeFraction: 0.2 },
  ]);
  assertClose(mixture.thickness, 1.1e-3, TIGHT);
  assertClose(mixture.fibrePerArea, 0.8, TIGHT);
  assertClose(mixture.resinPerArea, 0.888, TIGHT);
  assertClose(mixture.massPerArea, 1.688, TIGHT);
  assertClose(mixture.fibreMassFraction, 0.8 / 1.688, TIGHT);
  assertClose(mixture.fibreVolumeFraction, 0.32 / 1.1, TIGHT);
  assertClose(mixture.resinRatio, 1.11, TIGHT);
  assertClose(mixture.density, 1.688 / 1.1e-3, TIGHT);
});

Deno.test("usual bands rise with pressure and with how straight the fibres lie", () => {
  // Physics that any table of them must keep; the figures themselves are common practice.
  const forms = ["mat", "woven", "stitched", "unidirectional"] as const;
  for (const end of ["low", "high"] as const) {
    for (const form of forms) {
      const [hand, bagged, infused] = LAYUP_PROCESSES.map((process) => USUAL_BANDS[process][form]);
      assert(hand![end] < bagged![end] && bagged![end] < infused![end], form);
      // No cloth packs closer than fibres that touch in a square array.
      assert(0.1 < hand!.low && infused!.high < Math.PI / 4, form);
    }
    for (const process of LAYUP_PROCESSES) {
      const ends = forms.map((form) => USUAL_BANDS[process][form][end]);
      assertEquals(ends, ends.toSorted((a, b) => a - b), `${process} ${end}`);
    }
  }
});

Deno.test("what cannot be meant is refused, once per kind", () => {
  const densities = { fibreDensity: 2560, resinDensity: 1200 };
  const layer = { arealWeight: 0.2, fibreDensity: 2560, fibreVolumeFraction: 0.4 };
  const refused: readonly (readonly [() => unknown, string])[] = [
    [() => fibreVolumeFraction(50, densities), "a percentage is divided by 100"],
    [() => fibreVolumeFraction(0.5, undefined as never), "densities is missing"],
    [() => fibreVolumeFraction(0.5, { ...densities, resinDensity: 0 }), "resin density is 0 kg/m³"],
    [() => fibreMassFraction(0.7, densities, 0.4), "resin volume fraction is"],
    [() => fibreMassFraction(0, densities, 1), "laminate density is 0"],
    [() => resinRatio(0), "fibre mass fraction is 0"],
    [() => plyThickness({ ...layer, fibreVolumeFraction: 0 }), "fibre volume fraction is 0"],
    [() => plyThickness({ ...layer, arealWeight: "200" as never }), 'areal weight is "200"'],
    [() => mixtureOfLayers([]), "layers is a list of 0"],
    [() => mixtureOfLayers([undefined as never]), "contents is missing"],
    [() => burnOff({ ...specimen, massInWater: 4e-3 }), "mass in air less mass in water"],
    [() => burnOff({ ...specimen, massFibre: 4e-3 }), "fibre mass is 0.004 kg"],
    [() => panelWeighing(null as never), "panel is null"],
    [() => voidFractionFromThickness({} as never), "thickness is missing"],
    [() => partBalance({ ...balance, partMass: 0.5 }), "mass left for the laminate"],
    [() => usualFibreFraction("pressed" as never, []), "must be one of: hand, bagged, infused"],
    [() => uncertainFibreAndLaminate({} as never, 1.5), "must be between -1 and 1"],
    [() => uncertainFibreAndResin({} as never, -1.5), "must be between -1 and 1"],
    [() => uncertainPanelWeighing(undefined as never), "panel is missing"],
  ];
  for (const [call, words] of refused) assertThrows(call, InputError, words);
});

const balance = {
  partMass: 2.6,
  coreMass: 0.8,
  otherMass: 0,
  coreResin: 0.2,
  fibreMass: 0.8,
  fibreVolume: 0.8 / 2560,
  resinDensity: 1150,
};

Deno.test("fractions that fill the house exactly in binary are not refused", () => {
  assertClose(matrixVolumeFraction(0.7, 0.3), 0, { absolute: 1e-15 });
  assertEquals(matrixVolumeFraction(0.9, 0.1), 0);
  assertClose(laminateDensity(0.7, { fibreDensity: 2500, resinDensity: 1200 }, 0.3), 1750, TIGHT);
});
