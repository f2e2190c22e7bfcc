import { assertEquals, assertThrows } from "@std/assert";
import { assertClose } from "../close.ts";
import { InputError } from "../../lib/check/mod.ts";
import {
  bentLap,
  bondReserve,
  doublerReach,
  ESTIMATED_KNOCK_DOWNS,
  type Lap,
  lapProfile,
  lapShear,
} from "../../lib/joints/mod.ts";

// Figures of this file: Python's mpmath, 40 digits, from the formulas as the definitions write
// them (plain hyperbolic functions), unless said otherwise.

const unequal: Lap = {
  modulus1: 70e9,
  thickness1: 0.002,
  modulus2: 20e9,
  thickness2: 0.003,
  adhesiveShearModulus: 1.1e9,
  adhesiveThickness: 0.0002,
  width: 0.025,
  overlap: 0.02,
  load: 1000,
};

Deno.test("unequal lap: the softer adherend's loaded end is the worse", () => {
  const found = lapShear(unequal);
  assertClose(found.decay, 361.873432227872944, { relative: 1e-14 });
  assertClose(found.atStart, 4357058.78857596825, { relative: 1e-13 });
  assertClose(found.atEnd, 10138712.2010949149, { relative: 1e-13 });
  assertClose(found.peak, 10138712.2010949149, { relative: 1e-13 });
  assertClose(found.mean, 2e6, { relative: 1e-15 });
  assertClose(found.concentration, 5.06935610054745745, { relative: 1e-13 });
  // A twentieth is left where e^(−λx) is: ln 20 over λ.
  assertClose(found.transferLength, 2.995732273553991 / 361.873432227872944, { relative: 1e-14 });
  assertClose(lapProfile(unequal, 3).shear[1]!, 388447.892636338893, { relative: 1e-13 });
  // Two places are the two ends.
  assertClose([...lapProfile(unequal, 2).shear], [found.atStart, found.atEnd], { relative: 1e-13 });
});

Deno.test("a lap of λl = 2098 neither overflows nor loses its ends", () => {
  const long: Lap = {
    ...unequal,
    modulus1: 20e9,
    thickness1: 0.001,
    modulus2: 20e9,
    thickness2: 0.001,
    adhesiveThickness: 0.0001,
    overlap: 2,
  };
  assertClose(lapShear(long).peak, 20976176.9634030309, { relative: 1e-13 });
  // In the middle 1e-448 of it: nothing a double can hold.
  assertEquals(lapProfile(long, 3).shear[1], 0);
});

Deno.test("a lap too short to be uneven carries evenly", () => {
  const short: Lap = {
    ...unequal,
    modulus2: 70e9,
    thickness1: 0.02,
    thickness2: 0.02,
    adhesiveShearModulus: 1e5,
    adhesiveThickness: 0.01,
    overlap: 0.001,
  };
  assertClose(lapShear(short).peak, 40000000.0476190476, { relative: 1e-14 });
  assertClose(lapShear({ ...short, load: 0 }).peak, 0, { absolute: 0 });
});

const bent = {
  modulus: 20e9,
  nu: 0.15,
  thickness: 0.002,
  adhesiveModulus: 3e9,
  adhesiveShearModulus: 1.1e9,
  adhesiveThickness: 0.0003,
  width: 0.025,
  overlap: 0.05,
  load: 2000,
};

// Shear from the differential equation τ‴ = (β/t)² τ′ and peel from σ⁗ + 4χ⁴σ = 0, each with the
// edge's pull, moment and shear force as boundary values, solved in Python's mpmath: not from the
// closed forms.
Deno.test("a lap that bends: edge moment, shear and peel", () => {
  const found = bentLap(bent);
  assertClose(found.edgeMomentFactor, 0.374900863925915384, { relative: 1e-13 });
  assertClose(found.edgeMoment, 29.9920691140732308, { relative: 1e-13 });
  assertClose(found.adherendStress, 84988103.6711098461, { relative: 1e-13 });
  assertClose(found.peakShear, 18944984.9312073957, { relative: 1e-12 });
  assertClose(found.peakPeel, 20163730.9665972448, { relative: 1e-12 });
});

// As above: u⁗ = −4χ⁴ u of the adherends' parting with moment and shear force at its edge, and τ‴ =
// (β/t)² τ′ with the edge's strain and the whole pull, two equations each in mpmath.
Deno.test("a short lap that bends: both ends are felt at each", () => {
  const table = [
    [0.0015, 0.945689459216438357, 60181805.4452340803, 14600426.3534316367],
    [0.003, 0.897012384236161897, 38912604.9233141653, 36652266.9447021098],
    [0.006, 0.813506890525969463, 31675658.9287546455, 45309658.4508518436],
    [0.012, 0.687049358062445337, 27780665.0710284003, 36951424.0413895906],
  ] as const;
  for (const [overlap, k, peakShear, peakPeel] of table) {
    const found = bentLap({ ...bent, overlap });
    assertClose(
      [found.edgeMomentFactor, found.peakShear, found.peakPeel],
      [k, peakShear, peakPeel],
      { relative: 1e-12 },
      `overlap ${overlap}`,
    );
  }
});

Deno.test("peel passes smoothly into the form for long laps", () => {
  // λ = 19.56 at an overlap of 50 mm, so that 20 is passed at 51.1155 mm.
  const handover = 0.05 * 20 / 19.56355725091609145730606873948362262263;
  const below = bentLap({ ...bent, overlap: handover * (1 - 1e-9) });
  const above = bentLap({ ...bent, overlap: handover * (1 + 1e-9) });
  assertClose(below.peakPeel, above.peakPeel, { relative: 1e-8 });
});

Deno.test("a bond holds only where its peel is known", () => {
  const knockDowns = [
    { reason: "warm and wet", factor: 0.6, source: "coupon" },
    { reason: "lasting load", factor: 0.5, source: "coupon" },
  ];
  const adhesive = { shearStrength: 30e6, knockDowns };
  assertEquals(bondReserve(adhesive, { peakShear: 4.5e6 }).verdict, "not known");
  assertEquals(bondReserve(adhesive, { peakShear: 10e6 }).verdict, "fails");
  // 30 MPa × 0.3 is 9 MPa: one stress just below it, one just above.
  assertEquals(bondReserve(adhesive, { peakShear: 8.99e6 }).verdict, "not known");
  assertEquals(bondReserve(adhesive, { peakShear: 9.01e6 }).verdict, "fails");
  const known = { ...adhesive, peelStrength: 20e6 };
  const held = bondReserve(known, { peakShear: 4.5e6, peakPeel: 3e6 });
  assertEquals(held.verdict, "holds");
  assertClose(held.knockDown, 0.3, { relative: 1e-14 });
  assertClose([held.shearReserve, held.peelReserve!], [2, 2], { relative: 1e-14 });
  assertEquals(bondReserve(known, { peakShear: 4.5e6, peakPeel: 7e6 }).verdict, "fails");
  assertEquals(bondReserve(known, { peakShear: 8.99e6, peakPeel: 5.99e6 }).verdict, "holds");
  assertEquals(bondReserve(known, { peakShear: 9.01e6, peakPeel: 5.99e6 }).verdict, "fails");
  assertEquals(bondReserve(known, { peakShear: 8.99e6, peakPeel: 6.01e6 }).verdict, "fails");
  const bare = bondReserve({ shearStrength: 30e6, knockDowns: [] }, { peakShear: 4.5e6 });
  // No knock-down, the laminate's own peel, peel not known.
  assertEquals(bare.notes.length, 3);
  assertEquals(held.notes.length, 1);
  assertEquals(held.notes[0]!.includes("laminate may peel apart inside"), true);
  // Estimates, no source, held here so that none changes by a slip: 0.7 × 0.6 × 0.5.
  const estimated = { shearStrength: 30e6, knockDowns: ESTIMATED_KNOCK_DOWNS };
  assertClose(bondReserve(estimated, { peakShear: 3.15e6 }).shearReserve, 2, { relative: 1e-14 });
});

Deno.test("a doubler reaches as far as its load needs and its taper asks", () => {
  const doubler = {
    plies: 4,
    plyThickness: 0.00023,
    modulus: 18e9,
    skinThickness: 0.00046,
    skinModulus: 20e9,
    resinShearModulus: 1.1e9,
    resinThickness: 0.0001,
    taperRatio: 25,
  };
  const found = doublerReach(doubler);
  assertClose(found.transferLength, 0.00219663452968474796, { relative: 1e-13 });
  assertClose(found.share, 0.642857142857142857, { relative: 1e-14 });
  assertClose(found.taperLength, 0.023, { relative: 1e-14 });
  assertClose(found.reach, 0.02519663452968474796, { relative: 1e-13 });
  assertEquals(found.notes.length, 0);
  assertEquals(doublerReach({ ...doubler, taperRatio: 20 }).notes.length, 0);
  assertEquals(doublerReach({ ...doubler, taperRatio: 19.9 }).notes.length, 1);
});

Deno.test("bonds refuse what cannot be", () => {
  assertThrows(() => lapShear({ ...unequal, overlap: 0 }), InputError, "overlap is 0 m");
  assertThrows(() => lapShear({ ...unequal, load: -1 }), InputError, "load is -1 N");
  assertThrows(() => lapProfile(unequal, 1), InputError, "number of places is 1");
  assertThrows(() => lapShear(null as never), InputError, "lap is null");
  assertThrows(() => bentLap({ ...bent, nu: 0.5 }), InputError, "must be from 0 to below 0.5");
  assertThrows(() => bentLap({ ...bent, load: 0 }), InputError, "load is 0 N");
  assertThrows(
    () => bondReserve({ shearStrength: 1, knockDowns: "none" as never }, { peakShear: 1 }),
    InputError,
    "knock-downs is",
  );
  assertThrows(
    () =>
      bondReserve(
        { shearStrength: 1, knockDowns: [{ reason: "cold", factor: 1.2, source: "" }] },
        { peakShear: 1 },
      ),
    InputError,
    "must be between 0 and 1",
  );
  assertThrows(() => doublerReach({} as never), InputError, "plies is missing");
});
