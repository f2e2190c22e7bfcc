import { assert, assertEquals, assertThrows } from "@std/assert";
import { assertClose } from "../close.ts";
import { InputError } from "../../lib/check/mod.ts";
import {
  addUpCosts,
  cautionsFor,
  clockAfter,
  paintMass,
  RISKY_OPERATIONS,
  whatItAdds,
} from "../../lib/shop/mod.ts";

const exactly = (value: number): { low: number; likely: number; high: number } => ({
  low: value,
  likely: value,
  high: value,
});

Deno.test("estimates add up with a mean and an uncertainty", () => {
  const plan = addUpCosts([
    {
      item: "cloth",
      operation: "laying up",
      mass: exactly(0.8),
      cost: { low: 10, likely: 12, high: 20 },
      time: { low: 3600, likely: 5400, high: 9000 },
    },
    {
      item: "dust",
      operation: "sanding",
      mass: exactly(-0.1),
      time: { low: 0, likely: 0, high: 6 },
    },
  ]);
  assertClose(plan.total.mass.likely, 0.7, { relative: 1e-14 });
  assertClose(plan.total.mass.u, 0, { absolute: 0 });
  // (10 + 12 + 20)/3 = 14; (100 + 144 + 400 − 120 − 200 − 240)/18 = 84/18
  assertClose(plan.total.cost.mean, 14, { relative: 1e-14 });
  assertClose(plan.total.cost.u, Math.sqrt(84 / 18), { relative: 1e-13 });
  // Hours: (3600² + 5400² + 9000² − …)/18 = 1.26e6; and 36/18 = 2 for the dust.
  assertClose(plan.total.time.u, Math.sqrt(1260002), { relative: 1e-13 });
  assertEquals(plan.byOperation.map(({ operation }) => operation), ["laying up", "sanding"]);
  assertEquals(plan.forgotten, ["fairing skim", "painting"]);
});

Deno.test("a choice adds what the two plans differ by", () => {
  const base = addUpCosts([
    { item: "skin", operation: "laying up", mass: exactly(0.8), time: exactly(3600) },
    { item: "paint", operation: "painting", mass: exactly(0.3) },
  ]);
  const thicker = addUpCosts([
    { item: "skin", operation: "laying up", mass: exactly(1.1), time: exactly(4500) },
    { item: "second night", operation: "bagging", cost: exactly(15) },
    { item: "paint", operation: "painting", mass: exactly(0.3) },
  ]);
  const added = whatItAdds(thicker, base);
  assertClose([added.mass, added.cost, added.time], [0.3, 15, 900], { relative: 1e-13 });
  assertEquals(added.byOperation.map(({ operation }) => operation), ["laying up", "bagging"]);
});

Deno.test("paint: what is bought and what stays", () => {
  // 3 m² × 2 × 0.12 mm = 0.72 L wet, 0.9 L bought; 0.45 of it stays: 0.324 L × 1.4 kg/L.
  const paint = paintMass({
    area: 3,
    coats: 2,
    wetThickness: 0.12e-3,
    solidsByVolume: 0.45,
    dryDensity: 1400,
    lossFraction: 0.2,
  });
  assertClose([paint.volume, paint.mass, paint.dryThickness], [0.9e-3, 0.4536, 0.108e-3], {
    relative: 1e-13,
  });
});

Deno.test("every operation has its cautions, and the ones that matter are in", () => {
  const all = cautionsFor(RISKY_OPERATIONS);
  assertEquals(all.length, 11);
  assert(all.every(({ cautions }) => cautions.length >= 2));
  const said = all.flatMap(({ cautions }) => cautions).join(" ");
  for (
    const word of [
      "allergic",
      "for life",
      "respirator",
      "supplied air",
      "grinder",
      "pump",
      "solvent",
      "smoke",
    ]
  ) {
    assert(said.toLowerCase().includes(word), `nothing is said of: ${word}`);
  }
});

Deno.test("clock times pass midnight and round to the minute", () => {
  assertEquals(clockAfter("18:30", 0), "18:30");
  assertEquals(clockAfter("8:05", 29), "08:05");
  assertEquals(clockAfter("23:59", 31), "00:00 (+1 day)");
  assertEquals(clockAfter("12:00", 60 * 3600), "00:00 (+3 days)");
});

Deno.test("costs, cautions and clock refuse what cannot be", () => {
  const line = { item: "cloth", operation: "laying up" };
  assertThrows(
    () => addUpCosts([{ ...line, cost: { low: 2, likely: 1, high: 3 } }]),
    InputError,
    "likely cost of cloth is 1, must not be below 2",
  );
  assertThrows(
    () => addUpCosts([{ ...line, cost: { low: 1, likely: 2, high: 1 } }]),
    InputError,
    "high cost of cloth",
  );
  assertThrows(
    () => addUpCosts([{ ...line, operation: "" }]),
    InputError,
    "must be a word or more",
  );
  assertThrows(() => whatItAdds(undefined as never, addUpCosts([line])), InputError, "is missing");
  assertThrows(() => cautionsFor([]), InputError, "operations is a list of 0");
  assertThrows(() => cautionsFor(["flying" as never]), InputError, "must be one of: mixing resin");
  assertThrows(() => clockAfter("24:00", 0), InputError, "must be a time of day such as 18:30");
  assertThrows(() => clockAfter("18:00", -1), InputError, "time since the start is -1 s");
  assertThrows(
    () =>
      paintMass({
        area: 1,
        coats: 0,
        wetThickness: 1,
        solidsByVolume: 1,
        dryDensity: 1,
        lossFraction: 0,
      }),
    InputError,
    "coats is 0",
  );
});
