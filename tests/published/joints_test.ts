import { assertEquals } from "@std/assert";
import { assertClose } from "../close.ts";
import {
  bentLap,
  buildUpPlies,
  holeGuidance,
  lapShear,
  USUAL_PLIES,
} from "../../lib/joints/mod.ts";

const slender = {
  modulus: 70e9,
  nu: 0.33,
  thickness: 0.002,
  adhesiveModulus: 2.8e9,
  adhesiveShearModulus: 1e9,
  adhesiveThickness: 0.0002,
  width: 0.025,
};

// M. Goland, E. Reissner, J. Appl. Mech. 11 (1944) A17; the limit of long overlaps is quoted as
// 0.26 in most adhesive texts (R. D. Adams, W. C. Wake); from memory.
Deno.test("edge moment of a long lap is 0.26 of the rigid one, of a short lap all of it", () => {
  const long = bentLap({ ...slender, overlap: 2, load: 1e4 });
  assertClose(long.edgeMomentFactor, 0.26, { absolute: 0.005 });
  // tanh(uc) is uc here; below 3.5e-10 the rest of the factor is 1 − 2√2 uc.
  const short = bentLap({ ...slender, overlap: 1e-4, load: 1e-10 });
  assertClose(short.edgeMomentFactor, 1, { absolute: 1e-9 });
});

// O. Volkersen, Luftfahrtforschung 15 (1938) 41, and N. A. de Bruyne's joint factor; from memory:
// peak over mean √(D/2) coth √(D/2), D = G l²/(E t ta).
for (const [D, factor] of [[2, 1.31304], [8, 2.07463], [50, 5.00045]] as const) {
  Deno.test(`shear concentration of an equal lap with D = ${D}`, () => {
    const overlap = 0.02;
    const adhesiveThickness = 0.0002;
    const { concentration } = lapShear({
      modulus1: 70e9,
      thickness1: 0.002,
      modulus2: 70e9,
      thickness2: 0.002,
      adhesiveShearModulus: D * 70e9 * 0.002 * adhesiveThickness / overlap ** 2,
      adhesiveThickness,
      width: 0.025,
      overlap,
      load: 1000,
    });
    assertClose(concentration, factor, { absolute: 5e-6 });
  });
}

// Bearing specimen of ASTM D5961: hole 6 mm, width 36 mm, edge distance 18 mm; from memory.
Deno.test("the standard bearing specimen keeps the guidance for laminates", () => {
  const guidance = holeGuidance({
    material: "laminate",
    holeDiameter: 0.006,
    thickness: 0.004,
    edgeDistance: 0.018,
    sideDistance: 0.018,
  });
  assertEquals(guidance.map(({ kept }) => kept), [true, true, true]);
});

// EN 1993-1-8, table 3.3: e1 ≥ 1.2 d0, e2 ≥ 1.2 d0, p2 ≥ 2.4 d0; from memory.
Deno.test("metal brackets keep the code's smallest distances", () => {
  const kept = (edgeDistance: number, pitch: number): readonly boolean[] =>
    holeGuidance({
      material: "metal",
      holeDiameter: 0.01,
      thickness: 0.003,
      edgeDistance,
      sideDistance: 0.012,
      pitch,
    }).map((entry) => entry.kept);
  assertEquals(kept(0.012, 0.024), [true, true, true]);
  assertEquals(kept(0.0119, 0.0239), [false, true, false]);
});

// common practice, no source: one ply of 200 g/m² cloth each side of a 1/4 inch core is a usual
// light skin, doubled at a spine, four plies at loaded corners, about seven at a bolted bracket.
Deno.test("usual plies by place, and a build-up with fewer is remarked", () => {
  assertEquals(USUAL_PLIES, {
    "light skin": 1,
    "spine": 2,
    "loaded corner": 4,
    "bolted bracket": 7,
  });
  const task = {
    load: 500,
    boltCount: 2,
    boltDiameter: 0.006,
    holeDiameter: 0.0065,
    width: 0.06,
    edgeDistance: 0.02,
    strengths: { bearing: 200e6, netTension: 150e6, shearOut: 60e6 },
    plyThickness: 0.00023,
    place: "bolted bracket",
    plyArealWeight: 0.2,
  } as const;
  assertEquals(buildUpPlies({ ...task, pliesThere: 2 }).notes.length, 1);
  assertEquals(buildUpPlies({ ...task, pliesThere: 14 }).notes.length, 0);
});
