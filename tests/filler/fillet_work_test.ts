import { assertEquals, assertThrows } from "@std/assert";
import { assertClose } from "../close.ts";
import { InputError } from "../../lib/check/mod.ts";
import {
  type ClothedCorner,
  fairingSkim,
  filletSchedule,
  stiffenedCorner,
} from "../../lib/filler/mod.ts";

Deno.test("a schedule adds up corners of different angles", () => {
  const schedule = filletSchedule({
    places: [
      { name: "bulkhead", radius: 0.0254, cornerDeg: 90, length: 1.25, count: 4 },
      { name: "chine", radius: 0.0254, cornerDeg: 120, length: 2, count: 2 },
    ],
    density: 600,
    lossFraction: 0.2,
  });
  // Areas with 40 digits as in fillet_test.ts: 5 × 1.384…e-4 + 4 × 3.467…e-5 m³.
  const volume = 5 * 1.38452520902502249e-4 + 4 * 3.46783136053804573e-5;
  assertClose(schedule.volume, volume, { relative: 1e-13 });
  assertClose(schedule.mass, volume * 600, { relative: 1e-13 });
  assertClose(schedule.massToMix, volume * 750, { relative: 1e-13 });
  assertClose(schedule.volumeToMix, volume * 1.25, { relative: 1e-13 });
  assertEquals(schedule.lines.map(({ name, totalLength }) => [name, totalLength]), [
    ["bulkhead", 5],
    ["chine", 4],
  ]);
});

const corner: ClothedCorner = {
  radius: 0.02,
  cornerDeg: 75,
  puttyDensity: 600,
  puttyModulus: 1.5e9,
  clothThickness: 0.0006,
  clothModulus: 18e9,
  clothArealMass: 0.8,
  overlap: 0.035,
};

// Python's mpmath, 25 digits: the filling in polar coordinates about the centre of the arc, the
// cloth as a line run through by length.
Deno.test("a stiffened corner meets an integration done another way", () => {
  const found = stiffenedCorner(corner);
  assertClose(found.clothWidth, 0.1061021355775027073, { relative: 1e-13 });
  assertClose(found.axialStiffness, 1378059.573563538876, { relative: 1e-12 });
  assertClose(found.centroid, 0.02515397433021050929, { relative: 1e-12 });
  assertClose(found.rigidityAlongBisector, 213.2748637156682539, { relative: 1e-11 });
  assertClose(found.rigidityAcrossBisector, 593.4086362589035224, { relative: 1e-12 });
  assertClose(found.puttyMassPerMetre, 600 * 1.547710062176730911932845e-4, { relative: 1e-13 });
  assertClose(found.clothMassPerMetre, 0.8 * 0.1061021355775027073, { relative: 1e-13 });
});

Deno.test("fairing: gaps are kept, excess becomes dust", () => {
  // 3 m² with a mean gap of 0.25 mm and 0.2 mm to sand, 650 kg/m³: 0.4875 and 0.39 kg.
  const skim = fairingSkim({
    area: 3,
    gaps: [0, 0.0003, 0.0005, 0.0002],
    excess: 0.0002,
    density: 650,
  });
  assertClose(skim.meanGap, 0.00025, { relative: 1e-14 });
  assertClose(skim.massKept, 0.4875, { relative: 1e-14 });
  assertClose(skim.massSanded, 0.39, { relative: 1e-14 });
  assertClose(skim.massApplied, 0.8775, { relative: 1e-14 });
  assertClose(skim.volumeApplied, 0.00135, { relative: 1e-14 });
  assertClose(skim.volumeSanded, 0.0006, { relative: 1e-14 });
});

Deno.test("work on corners and surfaces refuses what cannot be", () => {
  const place = { name: "bulkhead", radius: 0.02, cornerDeg: 90, length: 1, count: 1 };
  assertThrows(
    () => filletSchedule({ places: [], density: 600, lossFraction: 0 }),
    InputError,
    "places is a list of 0",
  );
  assertThrows(
    () => filletSchedule({ places: [place], density: 600, lossFraction: 1 }),
    InputError,
    "loss is 1, must be below 1",
  );
  assertThrows(
    () => filletSchedule({ places: [null as never], density: 600, lossFraction: 0 }),
    InputError,
    "place is null",
  );
  assertThrows(
    () => stiffenedCorner({ ...corner, clothThickness: 0.03 }),
    InputError,
    "must be below the radius",
  );
  assertThrows(
    () => stiffenedCorner({ ...corner, puttyModulus: 0, clothModulus: 0 }),
    InputError,
    "give a modulus and a thickness",
  );
  assertThrows(
    () => fairingSkim({ area: 1, gaps: [0.1, "2" as never], excess: 0, density: 600 }),
    InputError,
    'gap is "2"',
  );
});
