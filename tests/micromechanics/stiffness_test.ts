import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import {
  crossedLamina,
  hashinHillBounds,
  isotropicFibre,
  longitudinalModulus,
  majorPoissonRatio,
  mixThermalExpansion,
  mixThermalExpansionVariant,
  randomLamina,
  shearModulusHalpinTsai,
  shearModulusInverse,
  transverseModulusHalpinTsai,
  transverseModulusInverse,
  type TwoPhase,
} from "../../lib/micromechanics/mod.ts";
import { assertClose } from "../close.ts";

const GPa = 1e9;
const TIGHT = { relative: 1e-12 };

const scaled = (fibre: TwoPhase["fibre"]): TwoPhase["fibre"] => ({
  E1: fibre.E1 * GPa,
  E2: fibre.E2 * GPa,
  G12: fibre.G12 * GPa,
  nu12: fibre.nu12,
  G23: fibre.G23 * GPa,
});

const resin = { E: 3.2 * GPa, nu: 0.35, alpha: 65e-6 };
const glass: TwoPhase = {
  fibre: isotropicFibre({ E: 85 * GPa, nu: 0.2 }),
  resin: { E: 3.4 * GPa, nu: 0.3 },
  fibreVolumeFraction: 0.7,
};
const carbon = {
  fibre: {
    ...scaled({ E1: 230, E2: 15, G12: 15, nu12: 0.2, G23: 7 }),
    alpha1: -0.5e-6,
    alpha2: 12e-6,
  },
  resin,
  fibreVolumeFraction: 0.55,
};
const aramid = {
  fibre: {
    ...scaled({ E1: 124, E2: 5.5, G12: 2.9, nu12: 0.35, G23: 2.1 }),
    alpha1: -3.5e-6,
    alpha2: 60e-6,
  },
  resin,
  fibreVolumeFraction: 0.4,
};

// Expected figures by an independent program in exact fractions, from the equations as published.
Deno.test("rules of mixtures and Halpin-Tsai agree with exact fractions", () => {
  const expected = [
    [glass, 60.52, 0.23, 10.365853658536585, 4.013220018885741, 20.2, 6.168004175637764],
    [
      carbon,
      127.94,
      0.2675,
      5.640423031727379,
      2.40180135101326,
      7.378672032193159,
      3.2825821292502337,
    ],
    [
      aramid,
      51.52,
      0.35,
      3.8427947598253276,
      1.5523586483773837,
      4.004371584699453,
      1.6634948306336408,
    ],
  ] as const;
  for (const [mix, E1, nu12, E2inverse, G12inverse, E2, G12] of expected) {
    assertClose(longitudinalModulus(mix) / GPa, E1, TIGHT);
    assertClose(majorPoissonRatio(mix), nu12, TIGHT);
    assertClose(transverseModulusInverse(mix) / GPa, E2inverse, TIGHT);
    assertClose(shearModulusInverse(mix) / GPa, G12inverse, TIGHT);
    assertClose(transverseModulusHalpinTsai(mix) / GPa, E2, TIGHT);
    assertClose(shearModulusHalpinTsai(mix) / GPa, G12, TIGHT);
  }
});

Deno.test("bounds of Hashin and Hill agree with exact fractions", () => {
  const expected = [
    [glass, {
      planeStrainBulk: [11.654403567447046, 30.517999562984812],
      E1: [60.528537401951404, 60.553948269303916],
      nu12: [0.20547736782046405, 0.22383298259039602],
      G12: [6.168004175637764, 19.980950723292334],
      G23: [5.267040234466944, 16.344298481427053],
    }],
    [carbon, {
      planeStrainBulk: [5.630947647884163, 5.909376717490327],
      E1: [127.96145189110486, 128.0060044716625],
      nu12: [0.25319780693677085, 0.26285169238651224],
      G12: [3.2825821292502337, 6.674795403819129],
      G23: [2.5411061285500747, 3.070008281503777],
    }],
    [aramid, {
      planeStrainBulk: [3.9885231477926726, 3.988586703830204],
      E1: [51.52, 51.52],
      nu12: [0.35, 0.35],
      G12: [1.6634948306336408, 1.7331112398609503],
      G23: [1.4699524427150887, 1.4784574391310845],
    }],
  ] as const;
  for (const [mix, figures] of expected) {
    const bounds = hashinHillBounds(mix);
    for (const [name, [low, high]] of Object.entries(figures)) {
      const unit = name === "nu12" ? 1 : GPa;
      const range = bounds[name as keyof typeof bounds];
      assertClose([range.low / unit, range.high / unit], [low, high], TIGHT, name);
    }
  }
});

Deno.test("expansions agree with exact fractions, the variant under its own name", () => {
  for (
    const [mix, along, across, variant] of [
      [carbon, 0.23722057214319212, 45.9690434969517, 47.3440434969517],
      [aramid, -0.9472049689440993, 76.49152173913043, 85.38152173913043],
    ] as const
  ) {
    const heat = mixThermalExpansion(mix);
    // The fibre's pull and the resin's push nearly cancel along carbon: digits are lost there.
    assertClose(heat.along * 1e6, along, { relative: 1e-11 });
    assertClose(heat.across * 1e6, across, TIGHT);
    assertClose(mixThermalExpansionVariant(mix).across * 1e6, variant, TIGHT);
    assertClose(mixThermalExpansionVariant(mix).along, heat.along, TIGHT);
  }
});

// Exact fractions again: E1 40, E2 10, G12 4 GPa, ν12 0.28, α 7 and 30 µm/m/K.
const ply = {
  name: "ply",
  E1: 40 * GPa,
  E2: 10 * GPa,
  G12: 4 * GPa,
  nu12: 0.28,
  G13: 4 * GPa,
  G23: 3 * GPa,
  density: 1900,
  alpha1: 7e-6,
  alpha2: 30e-6,
  beta1: 7e-3,
  beta2: 30e-3,
};

Deno.test("a cloth of crossed strands agrees with exact fractions", () => {
  for (
    const [share, E1, E2, nu12, alpha1, alpha2, G13] of [
      [
        0.5,
        25.179926560587514,
        25.179926560587514,
        0.112,
        12.29496402877698,
        12.29496402877698,
        3.5,
      ],
      [
        0.7,
        31.198866198544096,
        19.121885734591544,
        0.14736842105263157,
        9.860871360726822,
        16.06892422052447,
        3.7,
      ],
    ] as const
  ) {
    const cloth = crossedLamina(ply, share);
    assertClose([cloth.E1 / GPa, cloth.E2 / GPa, cloth.nu12], [E1, E2, nu12], TIGHT);
    assertClose([cloth.alpha1 * 1e6, cloth.alpha2 * 1e6], [alpha1, alpha2], TIGHT);
    assertClose([cloth.beta1! * 1e3, cloth.beta2! * 1e3], [alpha1, alpha2], TIGHT);
    assertClose([cloth.G12 / GPa, cloth.G13 / GPa, cloth.G23 / GPa], [4, G13, 7 - G13], TIGHT);
  }
});

Deno.test("a ply of which the swelling is known one way only gives a cloth and a mat without", () => {
  const { beta1: _, beta2: __, ...dry } = ply;
  for (const known of [dry, { ...dry, beta1: 7e-3 }, { ...dry, beta2: 30e-3 }]) {
    for (const lamina of [crossedLamina(known, 0.5), randomLamina(known)]) {
      assertEquals([lamina.beta1, lamina.beta2], [undefined, undefined]);
      assertClose(lamina.alpha1, lamina.alpha2, TIGHT);
    }
  }
  // √(40/10) = 2 is the largest Poisson ratio that an elastic ply can have.
  assert(crossedLamina({ ...ply, nu12: 1.99 }, 0.5).E1 > 0);
  for (const nu12 of [2.01, -2.01]) {
    assertThrows(() => crossedLamina({ ...ply, nu12 }, 0.5), InputError, "1 - nu12² E2/E1");
  }
  for (const name of ["alpha1", "alpha2", "beta1", "beta2"]) {
    const spoilt = { ...ply, [name]: NaN };
    assertThrows(() => crossedLamina(spoilt, 0.5), InputError, `${name} is NaN`);
  }
});

Deno.test("a mat of the same strands agrees with exact fractions", () => {
  const mat = randomLamina(ply);
  assertClose(
    [mat.E1 / GPa, mat.E2 / GPa, mat.nu12, mat.G12 / GPa],
    [19.89412268609038, 19.89412268609038, 0.29841014814953204, 7.660954712362301],
    TIGHT,
  );
  assertClose([mat.alpha1 * 1e6, mat.alpha2 * 1e6], [12.29496402877698, 12.29496402877698], TIGHT);
  assertClose([mat.G13 / GPa, mat.G23 / GPa], [3.5, 3.5], TIGHT);
});

Deno.test("phases and fractions that cannot be are refused, with the reason", () => {
  const refuse = (mix: unknown, words: string) =>
    assertThrows(() => longitudinalModulus(mix as TwoPhase), InputError, words);
  refuse(undefined, "mix is missing");
  refuse({ ...glass, fibre: undefined }, "fibre is missing");
  refuse({ ...glass, fibreVolumeFraction: 70 }, "must be between 0 and 1");
  refuse({ ...glass, fibreVolumeFraction: NaN }, "must be a finite number");
  refuse({ ...glass, resin: { E: 0, nu: 0.3 } }, "resin modulus E is 0 Pa");
  refuse({ ...glass, resin: { E: 3e9, nu: 0.5 } }, "below 0.5");
  refuse({ ...glass, fibre: { ...glass.fibre, E2: "7e9" } }, 'fibre modulus E2 is "7e9"');
  refuse({ ...glass, fibre: { ...glass.fibre, G23: 1e9 } }, "must keep 4/E2");
});
