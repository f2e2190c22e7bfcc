/**
 * Speed of the plate series and of the sweep of 32,000 strips, against plain nested loops.
 *
 * Yardsticks in C, timed on the machine where these were written, when it was idle: series
 * separated, terms to 99 on 50 × 50 places, 0.10 ms; sweep with front per span, merge sort,
 * 0.7 ms (library's sort 1.4 ms).
 */
import { allEdges, navierPanel, type Panel, ritzPanel } from "../../lib/sandwich/mod.ts";
import { type StripSweep, sweepStripDesigns } from "../../lib/study/mod.ts";

const stiffness = {
  D11: 2000,
  D12: 400,
  D16: 0,
  D22: 1600,
  D26: 0,
  D66: 450,
  shear: { S44: 6e5, S45: 0, S55: 6.5e5 },
  massPerArea: 4,
  notes: [],
};
const panel: Panel = {
  length: 0.6,
  width: 0.4,
  stiffness,
  edges: allEdges("simple"),
  loads: [{ kind: "uniform", pressure: 1e4 }],
};
const xs = Float64Array.from({ length: 50 }, (_, i) => 0.6 * (i + 0.5) / 50);
const ys = Float64Array.from({ length: 50 }, (_, i) => 0.4 * (i + 0.5) / 50);

Deno.bench({
  name: "series, terms to 99, field of 50 × 50",
  group: "series",
  baseline: true,
  fn: () => {
    navierPanel(panel, 99).deflectionGrid(xs, ys);
  },
});

/** The same double sum as one would write it down, a tenth of the places (for patience). */
Deno.bench({
  name: "series, plain double sum, a tenth of the field",
  group: "series",
  fn: () => {
    const { S44, S55 } = stiffness.shear;
    for (let at = 0; at < 2500; at += 10) {
      let w = 0;
      for (let m = 1; m < 100; m += 2) {
        for (let n = 1; n < 100; n += 2) {
          const [al, be] = [m * Math.PI / 0.6, n * Math.PI / 0.4];
          const s22 = 2000 * al * al + 450 * be * be + S55;
          const s33 = 450 * al * al + 1600 * be * be + S44;
          const s23 = 850 * al * be;
          const c = s22 * s33 - s23 * s23;
          const det = (S55 * al * al + S44 * be * be) * c -
            S55 * al * (S55 * al * s33 - S44 * be * s23) +
            S44 * be * (S55 * al * s23 - S44 * be * s22);
          w += 16e4 / (m * n * Math.PI ** 2) * c / det *
            Math.sin(al * xs[at / 50 | 0]!) * Math.sin(be * ys[at % 50]!);
        }
      }
      if (!(w > 0)) throw new Error("no deflection");
    }
  },
});

Deno.bench({
  name: "polynomials, degree 12, clamped",
  group: "polynomials",
  fn: () => {
    ritzPanel({ ...panel, edges: allEdges("clamped") }, 12);
  },
});

const sweep: StripSweep = {
  cloths: [[0.105, 0.42], [0.163, 0.45], [0.2, 0.47], [0.295, 0.44], [0.43, 0.4]].map(
    ([weight = 1, Vf = 1]) => ({
      thickness: weight / (2550 * Vf),
      massPerArea: weight + weight / (2550 * Vf) * (1 - Vf) * 1150,
      E: 0.5 * (72e9 * Vf + 3.2e9 * (1 - Vf)) + 4e9,
    }),
  ),
  plies: [1, 2, 3, 4, 5, 6, 7, 8],
  coreThicknesses: Array.from({ length: 40 }, (_, k) => 0.003 + 0.0007 * k),
  spans: Array.from({ length: 20 }, (_, s) => 0.3 + 0.06 * s),
  core: { density: 80, E: 70e6, Ez: 70e6, G: 27e6 },
  bondMass: 0.3,
  pressure: 5000,
  wrinklingFactor: 0.5,
  faceStrength: 150e6,
  coreStrength: 0.5e6,
};

Deno.bench({
  name: "sweep of 32,000 strips with front per span",
  group: "sweep",
  baseline: true,
  fn: () => {
    sweepStripDesigns(sweep);
  },
});

Deno.bench({
  name: "sweep of 32,000 strips, a record each, sorted per span",
  group: "sweep",
  fn: () => {
    for (const L of sweep.spans) {
      const found = [];
      for (const cloth of sweep.cloths) {
        for (const n of sweep.plies) {
          for (const c of sweep.coreThicknesses) {
            const t = n * cloth.thickness;
            const d = c + t;
            const D = cloth.E * t * d * d / 2 + cloth.E * t ** 3 / 6 + 70e6 * c ** 3 / 12;
            const S = 27e6 * d * d / c;
            const face = 5000 * L * L / 8 * cloth.E * (c / 2 + t) / D;
            const core = 2500 * L / d;
            const limit = Math.min(150e6, 0.5 * Math.cbrt(cloth.E * 70e6 * 27e6));
            const mass = 2 * n * cloth.massPerArea + 80 * c + 0.3;
            const w = 5 * 5000 * L ** 4 / 384 / D + 5000 * L * L / 8 / S;
            if (face <= limit && core <= 0.5e6) found.push({ mass, w });
          }
        }
      }
      found.sort((a, b) => a.mass - b.mass || a.w - b.w);
      let best = Infinity;
      found.filter(({ w }) => w < best && ((best = w), true));
    }
  },
});
