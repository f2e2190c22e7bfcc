import { assertEquals, assertThrows } from "@std/assert";
import { assertClose } from "../close.ts";
import { InputError } from "../../lib/check/mod.ts";
import {
  backingPlate,
  boltedReserve,
  type BoltRow,
  boltStresses,
  buildUpPlies,
  designLoad,
  holeGuidance,
  pottedInsert,
  pullThroughForce,
  smallestWasher,
  washerPressure,
} from "../../lib/joints/mod.ts";

const row: BoltRow = {
  load: 3300,
  boltCount: 3,
  boltDiameter: 0.006,
  holeDiameter: 0.0064,
  thickness: 0.0018,
  width: 0.09,
  edgeDistance: 0.0185,
};

// Exact fractions (Python's fractions): P/(n d t), P/((w − n d_h) t), P/(2 n e t), and e − d_h/2.
Deno.test("stresses around three bolts", () => {
  const { bearing, netTension, shearOut, shearOutFromRim } = boltStresses(row);
  assertClose(
    [bearing, netTension, shearOut, shearOutFromRim],
    [101851851.85185185, 25894538.60640301, 16516516.516516516, 19970951.343500365],
    { relative: 1e-14 },
  );
});

Deno.test("the smallest reserve decides, and a sudden mode is noted", () => {
  const strengths = { bearing: 203703703.7037037, netTension: 200e6, shearOut: 60e6 };
  const slow = boltedReserve(row, strengths);
  assertEquals([slow.mode, slow.verdict, slow.notes.length], ["bearing", "holds", 0]);
  assertClose(slow.reserve, 2, { relative: 1e-14 });
  const sudden = boltedReserve(row, { ...strengths, shearOut: 8258258.258258258 });
  assertEquals([sudden.mode, sudden.verdict, sudden.notes.length], ["shearOut", "fails", 1]);
  assertClose(sudden.reserve, 0.5, { relative: 1e-14 });
  // From the rim 18.5 − 3.2 mm are left of 18.5 mm.
  assertClose(sudden.shearOutFromRim, 0.5 * 15.3 / 18.5, { relative: 1e-13 });
  const torn = boltedReserve(row, { ...strengths, netTension: 25894538.60640301 });
  assertEquals([torn.mode, torn.verdict], ["netTension", "holds"]);
});

Deno.test("plies for the bolts are rounded up, but not for rounding", () => {
  // Bearing on one ply of 0.3 mm: 3300/(3 × 0.006 × 0.0003) = 611.1 MPa; over 203.7 MPa: 3 plies.
  const task = {
    ...row,
    plyThickness: 0.0003,
    pliesThere: 2,
    strengths: { bearing: 5500e6 / 27, netTension: 200e6, shearOut: 60e6 },
  };
  const exact = buildUpPlies(task);
  assertEquals([exact.plies, exact.pliesToAdd, exact.mode], [3, 1, "bearing"]);
  assertClose(exact.thicknesses.bearing, 0.0009, { relative: 1e-13 });
  // 3300/((0.09 − 3 × 0.0064) × 200e6) and 3300/(2 × 3 × (0.0185 − 0.0032) × 60e6) m
  assertClose(exact.thicknesses.netTension, 3300 / 0.0708 / 200e6, { relative: 1e-13 });
  assertClose(exact.thicknesses.shearOut, 3300 / 0.0918 / 60e6, { relative: 1e-13 });
  const more = buildUpPlies({ ...task, load: 3301 });
  assertEquals([more.plies, more.pliesToAdd], [4, 2]);
  assertEquals(buildUpPlies({ ...task, pliesThere: 6 }).pliesToAdd, 0);
  const strengths = { ...task.strengths, shearOut: 1e6 };
  assertEquals(buildUpPlies({ ...task, strengths }).mode, "shearOut");
  assertEquals(
    buildUpPlies({ ...task, strengths: { ...strengths, netTension: 1e5 } }).mode,
    "netTension",
  );
});

// e 10 mm, hole 6.5 mm: from the rim 6.75 mm, by hand 4900/(2 × 2 × 0.00675 × 65e6) = 2.79 mm, so
// 14 plies of 0.2 mm; from the centre 1.88 mm, 10 plies, with which the verdict would fail.
Deno.test("near an edge the plies asked for are those with which the verdict holds", () => {
  const near: BoltRow = {
    ...{ load: 4900, boltCount: 2, boltDiameter: 0.006, holeDiameter: 0.0065 },
    ...{ thickness: 0.0028, width: 0.08, edgeDistance: 0.01 },
  };
  const strengths = { bearing: 250e6, netTension: 150e6, shearOut: 65e6 };
  const { plies, mode } = buildUpPlies({
    ...{ ...near, strengths, plyThickness: 0.0002, pliesThere: 0 },
  });
  assertEquals([plies, mode], [14, "shearOut"]);
  assertEquals(boltedReserve(near, strengths).verdict, "holds");
  const thin = boltedReserve({ ...near, thickness: 0.0026 }, strengths);
  // From the centre it seems to hold: 65e6 × 2 × 2 × 0.01 × 0.0026 / 4900 = 1.38.
  assertClose(thin.reserves.shearOut, 65e6 * 4 * 0.01 * 0.0026 / 4900, { relative: 1e-13 });
  assertEquals([thin.verdict, thin.reserve > 1, thin.notes.length], ["fails", true, 2]);
});

Deno.test("plies are compared with what is usual by the weight of their cloth", () => {
  const task = {
    ...{ ...row, load: 100, plyThickness: 0.0003, place: "bolted bracket" as const },
    strengths: { bearing: 200e6, netTension: 200e6, shearOut: 60e6 },
  };
  const notes = (pliesThere: number, plyArealWeight: number): readonly string[] =>
    buildUpPlies({ ...task, pliesThere, plyArealWeight }).notes;
  // 2 × 7 of 200 g/m² are 2.8 kg/m²: 28 plies of 100 g, 10 of 290 g.
  assertEquals([notes(14, 0.2), notes(28, 0.1), notes(10, 0.29)], [[], [], []]);
  assertEquals([notes(13, 0.2).length, notes(14, 0.1).length, notes(9, 0.29).length], [1, 1, 1]);
  assertThrows(
    () => buildUpPlies({ ...task, pliesThere: 2 }),
    InputError,
    "areal weight of a ply is missing",
  );
});

Deno.test("washers, plates and inserts", () => {
  const force = pullThroughForce({
    washerDiameter: 0.024,
    faceThickness: 0.0005,
    faceShearStrength: 40e6,
  });
  assertClose(force, 480 * Math.PI, { relative: 1e-14 });
  // 25.4² − 6.4² = 604.2 mm²: 400/(π/4 × 604.2e-6) Pa
  const washer = { holeDiameter: 0.0064, force: 400, coreStrength: 1.2e6 };
  const { pressure, reserve } = washerPressure(washer, 0.0254);
  assertClose(pressure, 1600 / (Math.PI * 604.2e-6), { relative: 1e-13 });
  assertClose(reserve, 1.2e6 * Math.PI * 604.2e-6 / 1600, { relative: 1e-13 });
  assertClose(smallestWasher(washer), Math.sqrt(4.096e-5 + 1600 / (1.2e6 * Math.PI)), {
    relative: 1e-14,
  });
  const plate = backingPlate({
    length: 0.08,
    width: 0.05,
    force: 2000,
    overhang: 0.02,
    plateStrength: 100e6,
    coreStrength: 1.25e6,
  });
  // p = 0.5 MPa; t = 0.02 √(1.5/100); reserve 2.5
  assertClose(plate.pressure, 0.5e6, { relative: 1e-14 });
  assertClose(plate.coreReserve, 2.5, { relative: 1e-14 });
  assertClose(plate.leastThickness, 0.02 * Math.sqrt(0.015), { relative: 1e-14 });
  // No overhang is longer than half of the plate, 40 mm.
  const wide = { length: 0.08, width: 0.05, force: 1, plateStrength: 1e8, coreStrength: 1e6 };
  assertEquals(backingPlate({ ...wide, overhang: 0.04 }).pressure, 250);
  assertThrows(() => backingPlate({ ...wide, overhang: 0.0401 }), InputError, "half of the plate");
  const insert = pottedInsert({
    pottingDiameter: 0.03,
    insertDiameter: 0.01,
    coreThickness: 0.012,
    coreShearStrength: 0.8e6,
    pottingDensity: 700,
  });
  assertClose(insert.pullOutForce, 288 * Math.PI, { relative: 1e-14 });
  assertClose(insert.pottingMass, Math.PI / 4 * 8e-4 * 0.012 * 700, { relative: 1e-13 });
});

Deno.test("a crowded layout is told off piece by piece", () => {
  const guidance = holeGuidance({
    material: "laminate",
    holeDiameter: 0.006,
    thickness: 0.001,
    edgeDistance: 0.018,
    sideDistance: 0.01,
    pitch: 0.02,
  });
  assertEquals(guidance.filter(({ kept }) => !kept).map(({ what }) => what), [
    "side distance",
    "pitch",
    "hole to thickness",
  ]);
  assertEquals(guidance.every(({ source }) => source.length > 10), true);
});

Deno.test("load factors multiply", () => {
  assertClose(designLoad(1200, { loadFactor: 2.5 }), 3000, { relative: 1e-15 });
  assertClose(designLoad(1200, { loadFactor: 2.5, fittingFactor: 1.2 }), 3600, {
    relative: 1e-15,
  });
});

Deno.test("bolted mounts refuse what cannot be", () => {
  assertThrows(() => boltStresses({ ...row, boltDiameter: 0.007 }), InputError, "the hole's");
  assertThrows(() => boltStresses({ ...row, width: 0.0192 }), InputError, "that of the holes");
  assertThrows(
    () => boltStresses({ ...row, edgeDistance: 0.003 }),
    InputError,
    "must be above half",
  );
  assertThrows(() => boltStresses({ ...row, boltCount: 0 }), InputError, "1 or above");
  assertThrows(() => boltStresses(undefined as never), InputError, "row is missing");
  assertThrows(
    () => boltedReserve({ ...row, load: 0 }, { bearing: 1, netTension: 1, shearOut: 1 }),
    InputError,
    "load is 0 N, must be above 0",
  );
  assertThrows(
    () => boltedReserve(row, { bearing: 1, netTension: 0, shearOut: 1 }),
    InputError,
    "netTension strength is 0 Pa",
  );
  assertThrows(() => designLoad(100, { loadFactor: 0.5 }), InputError, "must be 1 or above");
  assertThrows(
    () => washerPressure({ holeDiameter: 0.006, force: 1, coreStrength: 1 }, 0.006),
    InputError,
    "must be above the hole's",
  );
  assertThrows(
    () =>
      buildUpPlies({
        ...row,
        plyThickness: 0.0003,
        pliesThere: 2,
        strengths: { bearing: 1, netTension: 1, shearOut: 1 },
        place: "keel" as never,
      }),
    InputError,
    "must be one of: light skin",
  );
  assertThrows(
    () => holeGuidance({ material: "wood" } as never),
    InputError,
    "must be one of: laminate, metal",
  );
});
