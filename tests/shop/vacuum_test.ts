import { assertEquals, assertThrows } from "@std/assert";
import { assertClose } from "../close.ts";
import { InputError } from "../../lib/check/mod.ts";
import {
  bagPressure,
  crushCheck,
  geopotentialAltitude,
  infusionCheck,
  leakRate,
  leakTimeConstant,
  pressureAfterLeak,
  pressureAtTemperature,
  pumpHolds,
  standardAtmosphere,
} from "../../lib/shop/mod.ts";

// Python's mpmath, 50 digits, from the formulas of ISO 2533 as the comment of the function has them.
Deno.test("standard atmosphere to the last digits", () => {
  for (
    const [altitude, pressure, density] of [
      [-1000, 113929.09247592043, 1.3469959785344912],
      [1000, 89874.562916219537, 1.1116425003060322],
      [11000, 22632.040095007799, 0.36391764810160345],
      [15000, 12044.552807152818, 0.19367345195634732],
      [20000, 5474.8774242810459, 0.088034684788686351],
    ] as const
  ) {
    const air = standardAtmosphere(altitude);
    assertClose([air.pressure, air.density], [pressure, density], { relative: 1e-13 });
  }
  assertClose(geopotentialAltitude(4400), 4396.9565328117518, { relative: 1e-14 });
});

Deno.test("a gauge reading becomes absolute and compaction pressure", () => {
  const bag = bagPressure({ gauge: -70_000, outside: 89_874.6 });
  assertClose(bag.absolute, 19_874.6, { relative: 1e-12 });
  assertClose(bag.shareOfOutside, 70_000 / 89_874.6, { relative: 1e-14 });
  assertClose(bag.shareOfStandard, 70_000 / 101_325, { relative: 1e-14 });
  assertEquals(bag.notes.length, 0);
  // 28.9 inHg of 3386.389 Pa each: 96.6 % of the standard atmosphere.
  assertEquals(bagPressure({ gauge: -28.9 * 3386.389, outside: 101_325 }).notes.length, 1);
  assertEquals(bagPressure({ gauge: -95_000, outside: 100_000 }).notes.length, 0);
  assertEquals(bagPressure({ gauge: -95_010, outside: 100_000 }).notes.length, 1);
});

Deno.test("the bag's force, and a core that crushes where only a ridge carries", () => {
  const core = { compaction: 80_000, bagArea: 1.5, coreStrength: 600_000, contactShare: 1 };
  const flat = crushCheck(core);
  assertClose([flat.force, flat.corePressure, flat.reserve], [120_000, 80_000, 7.5], {
    relative: 1e-14,
  });
  assertEquals(flat.verdict, "holds");
  assertEquals(crushCheck({ ...core, contactShare: 0.1 }).verdict, "fails");
});

const test = {
  times: [0, 60, 120, 300],
  pressures: [20100, 20350, 20600, 21500],
  volume: 0.0075,
  temperature: 294.15,
};

// Python's mpmath, 50 digits: least squares and its standard error; ideal gas.
Deno.test("leak rate from four readings", () => {
  const leak = leakRate(test);
  assertClose(leak.rise, 4.7023809523809524, { relative: 1e-12 });
  assertClose(leak.riseStandardError!, 0.15464739353293547, { relative: 1e-11 });
  assertClose(leak.riseOfEnds, 4.6666666666666667, { relative: 1e-14 });
  assertClose(leak.throughput, 0.035267857142857143, { relative: 1e-12 });
  assertClose(leak.standardFlow, 3.2321745972012022e-7, { relative: 1e-12 });
  assertClose(leak.standardFlow * 6e7, 19.393047583207213, { relative: 1e-12 });
  assertClose(leak.massFlow, 4.1768446891996905e-7, { relative: 1e-12 });
  // A clock that does not begin at 0 reads the same leak.
  const later = leakRate({ ...test, times: test.times.map((time) => time + 900) });
  assertClose([later.rise, later.riseOfEnds], [leak.rise, leak.riseOfEnds], { relative: 1e-12 });
});

Deno.test("two readings give a rise and no error", () => {
  const leak = leakRate({ ...test, times: [0, 300], pressures: [20100, 21500] });
  assertClose(leak.rise, 4.6666666666666667, { relative: 1e-14 });
  assertEquals(leak.riseStandardError, undefined);
});

Deno.test("a long leak: there and back", () => {
  const tau = leakTimeConstant({ first: 20e3, second: 80e3, time: 7200, outside: 100e3 });
  // (100 − 20)/(100 − 80) = 4
  assertClose(tau, 7200 / Math.log(4), { relative: 1e-14 });
  const bag = { start: 20e3, outside: 100e3, timeConstant: tau };
  assertClose(pressureAfterLeak(bag, 7200), 80e3, { relative: 1e-13 });
  assertClose(pressureAfterLeak(bag, 0), 20e3, { relative: 0 });
  // A leak of 1 Pa in 80 kPa: τ = t × 80e3 within 1e-5.
  const slow = leakTimeConstant({ first: 20e3, second: 20001, time: 10, outside: 100e3 });
  assertClose(slow, 10 / Math.log1p(1 / 79999), { relative: 1e-12 });
});

Deno.test("warmth is taken out of a leak test, and a pump is set against the leak", () => {
  const pressure = pressureAtTemperature({ pressure: 21_000, temperature: 300 }, 294);
  assertClose(pressure, 20_580, { relative: 1e-14 });
  const pump = {
    throughput: 0.04,
    pumpFlow: 2e-6,
    ultimatePressure: 5e3,
    wantedPressure: 20e3,
  };
  const weak = pumpHolds(pump);
  assertClose([weak.balancePressure, weak.dutyShare], [25e3, 4 / 3], { relative: 1e-14 });
  assertEquals(weak.verdict, "fails");
  const strong = pumpHolds({ ...pump, pumpFlow: 8e-6 });
  assertClose([strong.balancePressure, strong.dutyShare], [10e3, 1 / 3], { relative: 1e-14 });
  assertEquals(strong.verdict, "holds");
});

Deno.test("infusion: time by Darcy, three verdicts", () => {
  const part = {
    viscosity: 0.5,
    permeability: 2e-10,
    porosity: 0.5,
    pressure: 80e3,
    flowLength: 0.6,
    gelTime: 6000,
  };
  // 0.5 × 0.5 × 0.36/(2 × 2e-10 × 8e4) = 2812.5 s; reach 0.6 √(6000/2812.5)
  const found = infusionCheck(part);
  assertClose(found.fillTime, 2812.5, { relative: 1e-13 });
  assertClose(found.reach, 0.6 * Math.sqrt(6000 / 2812.5), { relative: 1e-13 });
  assertEquals(found.verdict, "holds");
  assertEquals(infusionCheck({ ...part, gelTime: 4000 }).verdict, "not known");
  assertEquals(infusionCheck({ ...part, gelTime: 2000 }).verdict, "fails");
  // Half of the gel time is 2812.5 s at 5625 s; and the gel time itself.
  assertEquals(infusionCheck({ ...part, gelTime: 5626 }).verdict, "holds");
  assertEquals(infusionCheck({ ...part, gelTime: 5624 }).verdict, "not known");
  assertEquals(infusionCheck({ ...part, gelTime: 2813 }).verdict, "not known");
  assertEquals(infusionCheck({ ...part, gelTime: 2812 }).verdict, "fails");
  // Above 1 Pa s a resin is for brush and roller.
  const notes = (viscosity: number): number => infusionCheck({ ...part, viscosity }).notes.length;
  assertEquals([notes(1), notes(1.01)], [0, 1]);
});

Deno.test("vacuum refuses what cannot be", () => {
  assertThrows(() => standardAtmosphere(25_000), InputError, "must be between -5000 and 20000 m");
  assertThrows(
    () => bagPressure({ gauge: 80e3, outside: 101325 }),
    InputError,
    "vacuum counts negative",
  );
  assertThrows(
    () => bagPressure({ gauge: -95e3, outside: 90e3 }),
    InputError,
    "absolute pressure cannot be below 0",
  );
  assertThrows(() => bagPressure(undefined as never), InputError, "vacuum is missing");
  assertThrows(() => leakRate({ ...test, times: [0] }), InputError, "a list of 2 or more");
  assertThrows(() => leakRate({ ...test, pressures: [1, 2] }), InputError, "must be 4 readings");
  assertThrows(
    () => leakRate({ ...test, times: [0, 60, 60, 300] }),
    InputError,
    "must come after the last",
  );
  assertThrows(
    () => leakTimeConstant({ first: 20e3, second: 100e3, time: 1, outside: 100e3 }),
    InputError,
    "must be below 100000 Pa",
  );
  assertThrows(
    () => pumpHolds({ throughput: 1, pumpFlow: 1, ultimatePressure: 5, wantedPressure: 5 }),
    InputError,
    "must be above 5 Pa",
  );
  assertThrows(
    () => pressureAtTemperature({ pressure: 1, temperature: 0 }, 290),
    InputError,
    "temperature is 0 K",
  );
});
