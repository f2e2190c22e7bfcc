/**
 * A million Monte Carlo samples of ten inputs: weighing, fibre fraction, moduli, bending and shear
 * stiffness, deflection, quantiles. The baseline is the plainest program that does the same: an
 * object a sample, Box–Muller by Math.cos, a full sort. Figures are invented for timing.
 */
import { monteCarlo, monteCarloBatch, type NamedNumbers } from "@laminate/notebooks/statistics";

const AREA = 0.25;
const WIDTH = 0.075;
const TRIALS = 1_000_000;

const INPUTS = {
  fibreMass: { value: 0.240, u: 0.003 },
  laminateMass: { value: 0.400, u: 0.006 },
  fibreDensity: { value: 2540, u: 15 },
  resinDensity: { value: 1150, u: 8 },
  Ef: { value: 72e9, u: 1.5e9 },
  Em: { value: 3.2e9, u: 0.15e9 },
  core: { value: 0.015, u: 0.0002 },
  coreG: { value: 27e6, u: 1.5e6 },
  load: { value: 500, u: 3 },
  span: { value: 0.4, u: 0.0005 },
};

type Name = keyof typeof INPUTS;

function deflection(v: NamedNumbers<Name>): number {
  const fibre = v.fibreMass / v.fibreDensity;
  const volume = fibre + (v.laminateMass - v.fibreMass) / v.resinDensity;
  const Vf = fibre / volume;
  const face = volume / AREA / 2;
  const E1 = v.Ef * Vf + v.Em * (1 - Vf);
  const eta = (v.Ef / v.Em - 1) / (v.Ef / v.Em + 2);
  const E2 = (v.Em * (1 + 2 * eta * Vf)) / (1 - eta * Vf);
  const E = 0.5 * (E1 + E2);
  const d = v.core + face;
  const faces = E * face * (d * d / 2 + face * face / 6);
  const D = WIDTH * (faces + (2.6 * v.coreG * v.core ** 3) / 12);
  const S = (v.coreG * WIDTH * d * d) / v.core;
  return (v.load * v.span ** 3) / (48 * D) + (v.load * v.span) / (4 * S);
}

function fillDeflections(
  c: Readonly<Record<Name, Float64Array>>,
  target: Float64Array,
): void {
  const { fibreMass, laminateMass, fibreDensity, resinDensity, Ef, Em, core, coreG, load, span } =
    c;
  for (let i = 0; i < target.length; i++) {
    const fibre = fibreMass[i]! / fibreDensity[i]!;
    const volume = fibre + (laminateMass[i]! - fibreMass[i]!) / resinDensity[i]!;
    const Vf = fibre / volume;
    const face = volume / AREA / 2;
    const E1 = Ef[i]! * Vf + Em[i]! * (1 - Vf);
    const eta = (Ef[i]! / Em[i]! - 1) / (Ef[i]! / Em[i]! + 2);
    const E2 = (Em[i]! * (1 + 2 * eta * Vf)) / (1 - eta * Vf);
    const E = 0.5 * (E1 + E2);
    const d = core[i]! + face;
    const faces = E * face * (d * d / 2 + face * face / 6);
    const t = core[i]!;
    const D = WIDTH * (faces + (2.6 * coreG[i]! * t * t * t) / 12);
    const S = (coreG[i]! * WIDTH * d * d) / t;
    const L = span[i]!;
    target[i] = (load[i]! * L * L * L) / (48 * D) + (load[i]! * L) / (4 * S);
  }
}

/** The baseline: no library, no care for speed. */
function plainProgram(): number[] {
  let seed = 1;
  const uniform = (): number => {
    seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
    return (seed + 0.5) / 2 ** 32;
  };
  const normal = (): number =>
    Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
  const results = Array.from({ length: TRIALS }, () =>
    deflection(
      Object.fromEntries(
        Object.entries(INPUTS).map(([name, { value, u }]) => [name, value + u * normal()]),
      ) as NamedNumbers<Name>,
    ));
  results.sort((a, b) => a - b);
  return [0.025, 0.5, 0.975].map((p) => results[Math.round(p * (TRIALS - 1))]!);
}

Deno.bench("plain program: objects, Box–Muller, full sort", { baseline: true, n: 3 }, () => {
  plainProgram();
});

Deno.bench("monteCarlo, a million draws of ten inputs", { n: 5 }, () => {
  monteCarlo(deflection, INPUTS, { trials: TRIALS });
});

Deno.bench("monteCarloBatch, a million draws of ten inputs", { n: 10 }, () => {
  monteCarloBatch(fillDeflections, INPUTS, { trials: TRIALS });
});
