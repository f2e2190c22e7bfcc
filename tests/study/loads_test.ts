import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { personLoad, speedPressure, vacuumOnMould, waterHead } from "../../lib/study/mod.ts";
import { assertClose } from "../close.ts";

Deno.test("speed: ½ρV²Cp with the standard atmosphere of ISO 2533", () => {
  // ISO 2533, printed: 1.225 kg/m³ at sea level; 79495.2 Pa and 275.15 K at 2000 m.
  const wind = { speed: 20, pressureCoefficient: 1.2 };
  assertClose(speedPressure(wind).load.pressure, 0.5 * 1.225 * 400 * 1.2, { relative: 1e-4 });
  const high = speedPressure({ ...wind, altitude: 2000 }).load.pressure;
  assertClose(high, 0.5 * 79495.2 / (287.05287 * 275.15) * 480, { relative: 1e-6 });
  const water = speedPressure({ ...wind, density: 1000, loadFactor: 2 });
  assertClose(water.load.pressure, 2 * 0.5 * 1000 * 400 * 1.2, { relative: 1e-12 });
  assertClose(speedPressure({ ...wind, pressureCoefficient: -0.8 }).load.pressure, -196, {
    relative: 1e-4,
  });
});

Deno.test("water, a person, a bag", () => {
  const head = { depthAtStart: 0.2, depthAtEnd: 0.6, along: "x", density: 1025 } as const;
  const { load } = waterHead(head);
  assertClose([load.atStart, load.atEnd], [2010.36325, 6031.08975], { relative: 1e-12 });
  const knee = { x: 0.3, y: 0.1, lengthX: 0.08, lengthY: 0.08 };
  const person = personLoad({ mass: 80, ...knee, loadFactor: 1.5 });
  assertClose(person.load.force, 1.5 * 80 * 9.80665, { relative: 1e-12 });
  assertEquals(person.load.kind, "patch");
  assertEquals(vacuumOnMould({ difference: 9e4, sealed: "front only" }).load.pressure, 0);
  assertEquals(vacuumOnMould({ difference: 9e4, sealed: "whole mould" }).load.pressure, 9e4);
});

Deno.test("every load carries its working and a caution", () => {
  const loads = [
    speedPressure({ speed: 1, pressureCoefficient: 1 }),
    waterHead({ depthAtStart: 0, depthAtEnd: 1, along: "y", density: 1000 }),
    personLoad({ mass: 1, x: 0, y: 0, lengthX: 1, lengthY: 1 }),
    vacuumOnMould({ difference: 1, sealed: "whole mould" }),
  ];
  for (const { working, caution } of loads) {
    assert(working.includes("="));
    assert(caution.includes("load factor") && caution.includes("licensed engineer"));
  }
});

Deno.test("loads that cannot be meant are refused", () => {
  const refused = (run: () => unknown, message: string): void => {
    assertThrows(run, InputError, message);
  };
  refused(() => speedPressure({ speed: -1, pressureCoefficient: 1 }), "speed is -1 m/s");
  refused(
    () => speedPressure({ speed: 1, pressureCoefficient: 1, loadFactor: 0.5 }),
    "load factor is 0.5, must be between 1 and 10",
  );
  refused(() => speedPressure(undefined as never), "flow is missing");
  refused(
    () => waterHead({ depthAtStart: 0, depthAtEnd: 1, along: "z" as "x", density: 1000 }),
    'along is "z"',
  );
  refused(
    () => personLoad({ mass: 0, x: 0, y: 0, lengthX: 1, lengthY: 1 }),
    "mass is 0 kg",
  );
  refused(
    () => vacuumOnMould({ difference: 2e5, sealed: "whole mould" }),
    "pressure difference is 200000 Pa",
  );
});

Deno.test("a working shows what a pocket calculator needs, and no digits of a conversion", () => {
  // 25 inHg of 3386.38864 Pa, 2 ft of 0.3048 m.
  assertEquals(
    vacuumOnMould({ difference: 25 * 3386.38864, sealed: "whole mould" }).working,
    "p = n Δp = 1 × 84660 Pa",
  );
  const depth = 2 * 0.3048;
  assertEquals(
    waterHead({ depthAtStart: depth, depthAtEnd: depth, along: "x", density: 1000 }).working,
    "p = n ρ g h = 1 × 1000 kg/m³ × 9.80665 m/s² × 0.6096 m",
  );
});
