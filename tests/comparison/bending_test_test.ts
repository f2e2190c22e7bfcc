import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { readBendingTest } from "../../lib/comparison/mod.ts";
import { randomGenerator } from "../../lib/numeric/mod.ts";
import { assertClose } from "../close.ts";

const LOADS = [0, 10, 20, 30, 40, 50, 60, 70, 80];
const up = LOADS.map(() => "loading" as const);

/** A straight test of 1e-4 m/N with scatter, and one reading off by `slip`. */
function readings(seed: number, slip = 0, at = 5): number[] {
  const random = randomGenerator(seed);
  return LOADS.map((load, i) =>
    2e-5 + 1e-4 * load + 6e-6 * random.normal() + (i === at ? slip : 0)
  );
}

Deno.test("an exact straight test gives its slope, and nothing is doubtful", () => {
  const deflection = LOADS.map((load) => 2e-5 + 1e-4 * load);
  const read = readBendingTest({ load: LOADS, deflection, branch: up, resolution: 1e-5 });
  assertClose(read.fit.slope.value, 1e-4, { relative: 1e-12 });
  assertClose(read.fit.intercept.value, 2e-5, { relative: 1e-9 });
  assertEquals([read.doubtful, read.hysteresis, read.notes], [[], null, []]);
});

Deno.test("a slipped reading is found, shown, and its size told", () => {
  for (let seed = 1; seed <= 50; seed++) {
    const at = seed % LOADS.length;
    const read = readBendingTest({
      load: LOADS,
      deflection: readings(seed, 4e-4, at),
      branch: up,
    });
    assertEquals(read.doubtful.map(({ index }) => index), [at]);
    assertClose(read.doubtful[0]!.offset, 4e-4, { absolute: 6e-5 });
    assertEquals(read.residuals.length, LOADS.length, "no reading may be dropped");
    assert(read.notes[0]!.includes(`Reading ${at + 1}`));
    assertEquals([read.fit.count, read.fitOfAll.count], [LOADS.length - 1, LOADS.length]);
  }
});

Deno.test("good readings are called doubtful about once in a hundred tests", () => {
  let alarms = 0;
  for (let seed = 1; seed <= 1000; seed++) {
    const read = readBendingTest({ load: LOADS, deflection: readings(seed), branch: up });
    if (read.doubtful.length > 0) alarms++;
  }
  // 1 % of 1000 by Bonferroni's bound: Poisson with mean 10 stays within 2 to 22.
  assert(alarms >= 2 && alarms <= 22, `${alarms} alarms in 1000 good tests`);
});

Deno.test("scatter below the gauge's step is no scatter", () => {
  // Rounded to 0.01 mm, eight readings fall on the line by luck; the ninth is one step off.
  const deflection = LOADS.map((load, i) => 1e-4 * load + (i === 4 ? 1e-5 : 0));
  const read = readBendingTest({ load: LOADS, deflection, branch: up, resolution: 1e-5 });
  assertEquals(read.doubtful, []);
});

Deno.test("what cannot be meant is refused by name", () => {
  const deflection = readings(1);
  const refused = (change: object, message: string) =>
    assertThrows(
      () => readBendingTest({ load: LOADS, deflection, branch: up, ...change }),
      InputError,
      message,
    );
  refused({ branch: up.slice(1) }, "number of branches");
  refused({ branch: up.with(3, "unloading" as never) }, "must not follow an unloading one");
  refused({ load: LOADS.map(() => 5) }, "spread of x");
  refused({ deflection: deflection.with(2, NaN) }, "deflection of reading 3 is NaN");
  refused({ resolution: -1 }, "resolution");
  assertThrows(
    () => readBendingTest({ load: [0, 1, 2], deflection: [0, 1, 2], branch: up.slice(0, 3) }),
    InputError,
    "number of loading readings is 3",
  );
});
