import { assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { hysteresis, toeCompensation } from "../../lib/comparison/mod.ts";
import { assertClose } from "../close.ts";

Deno.test("the loop's energies are those of the trapezoids, by hand", () => {
  // Loading 0–2 in two steps of 1 with mean loads 2.5 and 7.5; back over 0.8 and 1.1 with mean
  // loads 7.5 and 2.5; the closing side lies at zero load.
  const loop = hysteresis({ load: [0, 5, 10, 5, 0], deflection: [0, 1, 2, 1.2, 0.1] }, 2);
  assertClose(loop.energyLoading, 10, { relative: 1e-14 });
  assertClose(loop.energyUnloading, 7.5 * 0.8 + 2.5 * 1.1, { relative: 1e-14 });
  assertClose(loop.energyLost, 1.25, { relative: 1e-13 });
  assertClose(loop.closedLoopArea, 1.25, { relative: 1e-13 });
  assertClose(loop.residualDeflection, 0.1, { relative: 1e-14 });
  assertClose(loop.stiffness, 5, { relative: 1e-14 });
});

Deno.test("a loop that ends under load is closed by a straight side", () => {
  // Ends at load 4: the side from (1.0, 4) back to (0, 0) adds (4 + 0)/2 · (0 − 1.0).
  const loop = hysteresis({ load: [0, 5, 10, 4], deflection: [0, 1, 2, 1] }, 2);
  assertClose(loop.energyLost, 10 - 7, { relative: 1e-14 });
  assertClose(loop.closedLoopArea, 3 - 2, { relative: 1e-14 });
});

Deno.test("an elastic specimen loses nothing", () => {
  const loop = hysteresis({ load: [0, 1, 2, 3, 2, 1, 0], deflection: [0, 1, 2, 3, 2, 1, 0] }, 3);
  assertClose([loop.energyLost, loop.lossRatio, loop.closedLoopArea], [0, 0, 0], {
    absolute: 1e-15,
  });
});

Deno.test("the toe is the crossing of the straight part with zero load", () => {
  // A coupon with a toe of 0.05 mm: load 248.046875 N/mm beyond 0.1 mm, quadratic before.
  const slope = 248.046875;
  const load = (d: number): number => d < 0.1 ? slope * d * d / 0.2 : slope * (d - 0.05);
  const deflection = Array.from({ length: 30 }, (_, i) => 0.02 * i);
  const readings = { load: deflection.map(load), deflection };
  const { toeDeflection, fit, deflection: moved } = toeCompensation(readings, {
    from: 0.1,
    to: 0.5,
  });
  assertClose(toeDeflection, 0.05, { relative: 1e-12 });
  assertClose(fit.slope.value, slope, { relative: 1e-12 });
  assertClose(moved[10]!, 0.15, { relative: 1e-12 });
});

Deno.test("what cannot be meant is refused by name", () => {
  const readings = { load: [0, 5, 10, 5], deflection: [0, 1, 2, 1] };
  assertThrows(() => hysteresis(readings, 3), InputError, "turn is 3");
  assertThrows(() => hysteresis({ ...readings, load: [0, 5] }, 2), InputError, "that of loads, 2");
  assertThrows(
    () => hysteresis({ ...readings, load: [0, NaN, 10, 5] }, 2),
    InputError,
    "load of reading 2 is NaN",
  );
  assertThrows(
    () => toeCompensation(readings, { from: 5, to: 6 }),
    InputError,
    "readings inside the window is 0",
  );
  assertThrows(
    () => toeCompensation({ load: [3, 2, 1], deflection: [0, 1, 2] }, { from: 0, to: 2 }),
    InputError,
    "slope of the straight part",
  );
});
