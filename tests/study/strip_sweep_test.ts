import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import {
  beamLoadCases,
  bendingStress,
  coreShearStress,
  deflectBeam,
  sandwichSection,
  wrinklingStress,
} from "../../lib/sandwich/mod.ts";
import {
  stripChoice,
  type StripSweep,
  sweepStripDesigns,
  tradeOffFront,
} from "../../lib/study/mod.ts";
import { assertClose } from "../close.ts";

const sweep: StripSweep = {
  cloths: [
    { thickness: 1.0e-4, massPerArea: 0.17, E: 17e9 },
    { thickness: 2.2e-4, massPerArea: 0.33, E: 19e9 },
    { thickness: 3.1e-4, massPerArea: 0.49, E: 18e9 },
  ],
  plies: [1, 2, 3, 4],
  coreThicknesses: [0.004, 0.008, 0.012, 0.02],
  spans: [0.3, 0.6, 0.9, 1.2, 1.5],
  core: { density: 80, E: 70e6, Ez: 75e6, G: 27e6 },
  bondMass: 0.3,
  pressure: 4000,
  wrinklingFactor: 0.5,
  faceStrength: 150e6,
  coreStrength: 0.4e6,
};

Deno.test("the batch twin agrees with the plain functions, design by design", () => {
  const figures = sweepStripDesigns(sweep);
  assertEquals(figures.mass.length, 3 * 4 * 4 * 5);
  for (let i = 0; i < figures.mass.length; i++) {
    const { cloth, plies, core, span } = stripChoice(sweep, i);
    const ply = sweep.cloths[cloth]!;
    const n = sweep.plies[plies]!;
    const c = sweep.coreThicknesses[core]!;
    const L = sweep.spans[span]!;
    const face = { thickness: n * ply.thickness, E: ply.E };
    const section = sandwichSection({
      width: 1,
      topFace: face,
      bottomFace: face,
      core: { thickness: c, E: 70e6, G: 27e6 },
    });
    const { total } = deflectBeam(beamLoadCases.simplySupportedUniform, {
      ...section,
      totalLoad: 4000 * L,
      span: L,
    });
    assertClose(figures.deflection[i]!, total, { relative: 1e-12 });
    const stress = bendingStress(section, 4000 * L * L / 8).bottomFace.outer;
    assertClose(figures.faceStress[i]!, stress, { relative: 1e-12 });
    const { simple } = coreShearStress(section, 2000 * L);
    assertClose(figures.coreShear[i]!, simple, { relative: 1e-12 });
    const moduli = { faceE: ply.E, coreE: 75e6, coreG: 27e6 };
    assertClose(figures.wrinkling[i]!, wrinklingStress(moduli, 0.5), { relative: 1e-12 });
    assertClose(figures.mass[i]!, 2 * n * ply.massPerArea + 80 * c + 0.3, { relative: 1e-12 });
  }
});

Deno.test("the front of each span is the trade-off front of those that hold", () => {
  const { mass, deflection, faceStress, coreShear, wrinkling, onFront } = sweepStripDesigns(sweep);
  for (let s = 0; s < 5; s++) {
    const holding: number[] = [];
    for (let i = s; i < mass.length; i += 5) {
      const limit = Math.min(wrinkling[i]!, 150e6);
      if (faceStress[i]! <= limit && coreShear[i]! <= 0.4e6) holding.push(i);
    }
    const front = tradeOffFront([holding.map((i) => mass[i]!), holding.map((i) => deflection[i]!)])
      .map((k) => holding[k]!);
    const marked = [...onFront.keys()].filter((i) => i % 5 === s && onFront[i] === 1);
    assertEquals(marked, front.toSorted((a, b) => a - b));
    assert(front.length > 0 && front.length < holding.length);
  }
});

Deno.test("equals in mass: only the stiffest is on the front", () => {
  const equal = { ...sweep, cloths: [sweep.cloths[0]!, { ...sweep.cloths[0]!, E: 34e9 }] };
  const { onFront } = sweepStripDesigns({ ...equal, plies: [2], coreThicknesses: [0.01] });
  const half = onFront.length / 2;
  assertEquals(onFront.slice(0, half).reduce((a, b) => a + b, 0), 0);
  assert(onFront.slice(half).some((mark) => mark === 1));
});

Deno.test("sweeps that cannot be meant are refused", () => {
  const refused = (change: object, message: string): void => {
    assertThrows(() => sweepStripDesigns({ ...sweep, ...change }), InputError, message);
  };
  refused({ spans: [] }, "span is a list of 0");
  refused({ plies: [1, -1] }, "plies 2 is -1");
  refused({ cloths: undefined }, "cloths is missing");
  refused({ core: { ...sweep.core, G: 0 } }, "core shear modulus is 0 Pa");
  refused({ pressure: NaN }, "pressure is NaN Pa");
  assertThrows(() => stripChoice(sweep, 240), InputError, "place of the design is 240");
});
