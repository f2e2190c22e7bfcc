import {
  type BeamLoadCaseName,
  beamLoadCases,
  bendingStress,
  coreShearStress,
  deflectBeam,
  dimplingStress,
  fourPoint,
  halfPlaneWrinklingFactor,
  sandwichSection,
  wrinklingFactors,
  wrinklingStress,
} from "../../lib/sandwich/mod.ts";
import { assertClose } from "../close.ts";

// J. M. Gere (S. P. Timoshenko), Mechanics of Materials, chapter on composite beams, the sandwich
// beam example: printed figures, partly read, the rest from memory.
Deno.test("Gere: aluminium faces of 5 mm on a plastic core of 150 mm", () => {
  const face = { thickness: 0.005, E: 72e9 };
  const core = { thickness: 0.15, E: 0.8e9, G: 0.3e9 };
  const section = sandwichSection({ width: 0.2, topFace: face, bottomFace: face, core });
  // Printed: I of the faces 12.017e6 mm⁴, of the core 56.250e6 mm⁴.
  assertClose(section.flexuralRigidity, 72e9 * 12.017e-6 + 0.8e9 * 56.25e-6, { relative: 5e-5 });
  const stress = bendingStress(section, 3000);
  assertClose(stress.bottomFace.outer / 1e6, 19.0, { absolute: 0.05 }, "faces");
  assertClose(stress.layers[1]!.bottom / 1e6, 0.198, { absolute: 0.0005 }, "core");
  // The approximate theory there counts the faces alone at their outer surface: M h/(2 I faces).
  assertClose(3000 * 0.08 / 12.017e-6 / 1e6, 20.0, { absolute: 0.05 }, "faces alone");
  const hollow = sandwichSection({
    width: 0.2,
    topFace: face,
    bottomFace: face,
    core: { ...core, E: 0 },
  });
  assertClose(bendingStress(hollow, 3000).topFace.outer / 1e6, -20.0, { absolute: 0.05 });
});

// ASTM C393-62, C393-00 and D7250 (mid-span deflection equations); H. G. Allen, Analysis and Design
// of Structural Sandwich Panels (1969), chapter 2; handbooks for the cantilevers and built-in ends
// (Roark). From memory; rational coefficients.
Deno.test("ASTM, Allen, Roark: deflection coefficients", () => {
  const expected: Readonly<Record<BeamLoadCaseName, readonly [number, number]>> = {
    threePoint: [0.0208333333, 0.25],
    fourPointQuarter: [0.0143229167, 0.125],
    fourPointThird: [0.0177469136, 0.166666667],
    simplySupportedUniform: [0.0130208333, 0.125],
    cantileverTip: [0.333333333, 1],
    cantileverUniform: [0.125, 0.5],
    builtInUniform: [1 / 384, 0.125],
  };
  for (const [name, [bending, shear]] of Object.entries(expected)) {
    const { deflection } = beamLoadCases[name as BeamLoadCaseName];
    assertClose(deflection.bending, bending, { absolute: 4e-10 }, `${name}, bending`);
    assertClose(deflection.shear, shear, { absolute: 4e-10 }, `${name}, shear`);
  }
});

// H. G. Allen (1969), eq. 2.13; ASTM C393-00, G(D + c)²b/4c with D the total depth; ASTM D7250,
// G(D − t)²b/(D − 2t). Partly read, the rest from memory: 16537.5 N in all three spellings.
Deno.test("Allen, ASTM: shear stiffness in three spellings", () => {
  const face = { thickness: 0.001, E: 20e9 };
  const core = { thickness: 0.02, E: 0, G: 15e6 };
  const section = sandwichSection({ width: 0.05, topFace: face, bottomFace: face, core });
  assertClose(section.shearStiffness as number, 16537.5, { absolute: 1.7e-5 });
});

// H. G. Allen (1969), eqs. 2.4 to 2.6, from memory: a term may be dropped at 1 % for
// d/t above 5.77 (the faces' own stiffness) and Ef t d²/(Ec c³) above 16.7 (the core's).
Deno.test("Allen: where a term is one per cent", () => {
  const face = { thickness: 1, E: 1 };
  const core = { thickness: 4.77, E: 0, G: 1 };
  const thick = sandwichSection({ width: 1, topFace: face, bottomFace: face, core });
  assertClose(thick.flexuralRigidity / thick.thinFaceRigidity - 1, 0.01, { relative: 2e-3 });
  const thinFace = { thickness: 1e-6, E: 1 };
  const E = 1e-6 / 16.7;
  const weak = sandwichSection({
    width: 1,
    topFace: thinFace,
    bottomFace: thinFace,
    core: { thickness: 1, E, G: 1 },
  });
  assertClose(weak.flexuralRigidity / weak.thinFaceRigidity - 1, 0.01, { relative: 3e-3 });
});

// Equations from memory of ASTM C393 and D7250, worked with b 75, c 20, depth 24, t 2 mm and
// P 2400 N: core shear P/((d + c) b), face stress P(S − L)/(2t(d + c)b), d the depth there.
Deno.test("ASTM C393: core shear and face stress of a test panel", () => {
  const face = { thickness: 0.002, E: 20e9 };
  const core = { thickness: 0.02, E: 0, G: 25e6 };
  const section = sandwichSection({ width: 0.075, topFace: face, bottomFace: face, core });
  assertClose(section.flexuralRigidity, 728, { relative: 1e-12 }, "E b (d³ − c³)/12");
  assertClose(
    section.shearStiffness as number,
    45375,
    { relative: 1e-12 },
    "G b (d − t)²/(d − 2t)",
  );
  assertClose(coreShearStress(section, 1200).simple / 1e6, 0.727273, { absolute: 5e-7 });
  const spans = [[0.15, 0, 27.2727], [0.3, 0.15, 27.2727], [0.3, 0.1, 36.3636]] as const;
  for (const [span, loadSpan, expected] of spans) {
    const moment = fourPoint(loadSpan / span).moment * 2400 * span;
    const { thin } = bendingStress(section, moment).bottomFace;
    assertClose(thin / 1e6, expected, { absolute: 5e-5 });
  }
});

// The general symmetric form, from memory of ASTM D7250: δ = P A/D + P B/U with
// A = (2S³ − 3SL² + L³)/96, B = (S − L)/4, S the support span and L the load span.
Deno.test("ASTM D7250: any load span", () => {
  const [S, L, D, U, P] = [0.56, 0.1, 728, 45375, 500] as const;
  const expected = P * (2 * S ** 3 - 3 * S * L ** 2 + L ** 3) / 96 / D + P * (S - L) / 4 / U;
  const loading = { totalLoad: P, span: S, flexuralRigidity: D, shearStiffness: U };
  assertClose(deflectBeam(fourPoint(L / S), loading).total, expected, { relative: 1e-12 });
});

// H. G. Allen (1969), chapter 8, face on a deep isotropic core, from memory: B1 in
// σ = B1 Ef^⅓ Ec^⅔ is 0.630, 0.575, 0.567 for ν 0, 0.25, 0.3; with Gc = Ec/2(1 + ν) the factor of
// (Ef Ec Gc)^⅓ is 0.794, 0.781, 0.780. Hoff and Mautner, J. Aero. Sci. 12 (1945) 285, from memory:
// 0.91 in theory, 0.5 in design.
Deno.test("Allen, Hoff and Mautner: wrinkling factors", () => {
  for (const [nu, B1, k] of [[0, 0.63, 0.794], [0.25, 0.575, 0.781], [0.3, 0.567, 0.78]] as const) {
    const factor = halfPlaneWrinklingFactor(nu);
    assertClose(factor, k, { absolute: 5e-4 });
    const coreG = 80e6 / (2 * (1 + nu));
    const stress = wrinklingStress({ faceE: 20e9, coreE: 80e6, coreG }, factor);
    assertClose(stress / (Math.cbrt(20e9) * Math.cbrt(80e6) ** 2), B1, { absolute: 5e-4 });
  }
  assertClose([wrinklingFactors.design, wrinklingFactors.theory], [0.5, 0.91], {});
});

// MIL-HDBK-23A, from memory: 2 Ef/(1 − ν²) (t/s)², worked by hand: 2 · 70e9/0.91 · 0.01.
Deno.test("MIL-HDBK-23A: dimpling", () => {
  const face = { faceE: 70e9, faceNu: 0.3, thickness: 0.0005, cellSize: 0.005 };
  assertClose(dimplingStress(face) / 1e9, 1.538461538, { absolute: 1e-9 });
});

// L. J. Gibson, M. F. Ashby, Cellular Solids, 2nd ed. (1997), section 9.3, from memory: the lightest
// sandwich beam of given stiffness with a foam core whose Gc goes with its density squared has
// faces of 1/4 of the core's weight, and bends for 1/3 of its deflection. Found here by search.
Deno.test("Gibson and Ashby: minimum weight for stiffness", () => {
  const target = 1e-3;
  /** Deflections of a beam of thickness t, c and core density rho, all of 1 else. */
  const deflect = (
    t: number,
    c: number,
    rho: number,
  ): readonly [bending: number, shear: number] => {
    const face = { thickness: t, E: 1 };
    const core = { thickness: c, E: 0, G: rho * rho };
    const { thinFaceRigidity } = sandwichSection({
      width: 1,
      topFace: face,
      bottomFace: face,
      core,
    });
    // Thin faces: d and c are one, as in the book.
    const { bending, shear } = deflectBeam(beamLoadCases.threePoint, {
      totalLoad: 1,
      span: 1,
      flexuralRigidity: thinFaceRigidity * c * c / (c + t) ** 2,
      shearStiffness: rho * rho * c,
    });
    return [bending, shear];
  };
  /** Weights with the faces that just meet the target, from logarithms of c and rho. */
  const weigh = (
    logC: number,
    logRho: number,
  ): Readonly<Record<"faces" | "core" | "bent", number>> => {
    const [c, rho] = [Math.exp(logC), Math.exp(logRho)];
    let [low, high] = [-40, 20];
    for (let i = 0; i < 55; i++) {
      const middle = (low + high) / 2;
      const [bending, shear] = deflect(Math.exp(middle), c, rho);
      if (bending + shear > target) low = middle;
      else high = middle;
    }
    const t = Math.exp(high);
    const [bending, shear] = deflect(t, c, rho);
    return { faces: 2 * t, core: rho * c, bent: bending / (bending + shear) };
  };
  const weight = (c: number, rho: number): number => {
    const { faces, core } = weigh(c, rho);
    return faces + core;
  };
  const least = (f: (x: number) => number, from: number, to: number): number => {
    let [a, b] = [from, to];
    const g = (Math.sqrt(5) - 1) / 2;
    for (let i = 0; i < 40; i++) {
      const [p, q] = [b - g * (b - a), a + g * (b - a)];
      if (f(p) < f(q)) b = q;
      else a = p;
    }
    return (a + b) / 2;
  };
  const bestRho = (c: number): number => {
    // Below this density the core's shear alone is too much.
    const stiffest = Math.log(Math.sqrt(1 / (4 * target * Math.exp(c))));
    return least((rho) => weight(c, rho), stiffest + 1e-6, stiffest + 6);
  };
  const c = least((x) => weight(x, bestRho(x)), 0, 12);
  const { faces, core, bent } = weigh(c, bestRho(c));
  assertClose(faces / core, 0.25, { absolute: 0.005 });
  assertClose(bent, 1 / 3, { absolute: 5e-4 });
});
