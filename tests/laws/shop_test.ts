import fc from "fast-check";
import { assert } from "@std/assert";
import { assertClose } from "../close.ts";
import {
  bagPressure,
  cureRateFactor,
  cutCore,
  cutFromRoll,
  equivalentTime,
  infusionCheck,
  leakTimeConstant,
  planBatches,
  planNights,
  planResin,
  potLife,
  pressureAfterLeak,
  standardAtmosphere,
  tryLayups,
} from "../../lib/shop/mod.ts";

const SEEDED = { seed: 20261125, numRuns: 300 };

function between(min: number, max: number): fc.Arbitrary<number> {
  return fc.double({ min, max, noNaN: true });
}

Deno.test("resin planned is in cloth, core, coats and losses, to the last digits", () => {
  const cloth = fc.record({
    name: fc.constant("cloth"),
    area: between(0.1, 20),
    arealWeight: between(0.05, 1),
    fibreMassFraction: between(0.2, 0.8),
  });
  const core = fc.record({
    name: fc.constant("core"),
    area: between(0.1, 10),
    faces: fc.constantFrom(1, 2),
    resinUptake: between(0, 0.6),
  });
  const coat = fc.record({
    name: fc.constant("coat"),
    area: between(0.1, 10),
    arealMass: between(0, 0.5),
    stays: fc.boolean(),
  });
  fc.assert(
    fc.property(
      fc.array(cloth, { minLength: 1, maxLength: 6 }),
      fc.array(core, { maxLength: 3 }),
      fc.array(coat, { maxLength: 3 }),
      between(0, 0.6),
      between(5, 100),
      (cloths, cores, coats, lossFraction, phr) => {
        const plan = planResin({
          cloths,
          cores,
          coats,
          lossFraction,
          phr,
          densities: { resinDensity: 1150, hardenerDensity: 980 },
        });
        const close = { relative: 1e-12 };
        assertClose(plan.lines.reduce((sum, { mass }) => sum + mass, 0), plan.total, close);
        assertClose(plan.mix.resinMass + plan.mix.hardenerMass, plan.total, close);
        const gone = plan.lines
          .filter(({ where }) => where === "loss" || where === "thrown away")
          .reduce((sum, { mass }) => sum + mass, 0);
        assertClose(plan.inPart + gone, plan.total, close);
      },
    ),
    SEEDED,
  );
});

const tasks = fc.record({
  totalMass: between(0.1, 6),
  resinPerArea: between(0.2, 1),
  layingRate: between(0.001, 0.005),
  rateSpread: between(0, 0.5),
  mixingTime: between(60, 400),
  sheet: fc.record({
    potLife: between(2000, 6000),
    mass: fc.constant(0.1),
    temperature: fc.constant(298),
    massExponent: between(0, 0.6),
  }),
  temperature: between(285, 305),
  usableShare: between(0.5, 1),
  largestBatch: between(0.1, 1),
});

Deno.test("pots add up to the resin and come in order", () => {
  fc.assert(
    fc.property(tasks, (task) => {
      const plan = planBatches(task);
      const { batches } = plan;
      assertClose(batches.reduce((sum, { mass }) => sum + mass, 0), task.totalMass, {
        relative: 1e-12,
      });
      batches.forEach((batch, i) => {
        assert(batch.mass > 0 && batch.mass <= task.largestBatch * (1 + 1e-9));
        assert(batch.openAt >= batch.readyAt - 1e-6);
        if (i > 0) assert(batch.mixAt >= batches[i - 1]!.mixAt);
      });
      if (plan.verdict === "holds") {
        assert(batches.every(({ emptyAt, useBefore }) => emptyAt <= useBefore + 1e-6));
      }
    }),
    SEEDED,
  );
});

Deno.test("where the plan holds, no crew within the spread runs dry or loses a pot", () => {
  fc.assert(
    fc.property(tasks, fc.integer({ min: 0, max: 1e6 }), (task, seed) => {
      const plan = planBatches(task);
      fc.pre(plan.verdict === "holds");
      const { rateSpread: spread } = task;
      const trials = tryLayups(plan, { spread, mixBy: "mark", randomRuns: 6, seed });
      assert(trials.failed === 0, JSON.stringify(trials));
    }),
    SEEDED,
  );
});

Deno.test("where the plan fails, a crew within the spread does run dry or loses a pot", () => {
  let tried = 0;
  fc.assert(
    fc.property(tasks, (task) => {
      const plan = planBatches(task);
      if (plan.verdict === "holds") return;
      tried++;
      const options = { spread: task.rateSpread, mixBy: "mark", randomRuns: 0, seed: 1 } as const;
      assert(tryLayups(plan, options).failed > 0);
    }),
    { ...SEEDED, numRuns: 600 },
  );
  assert(tried > 10, `only ${tried} plans failed: the law was hardly tried`);
});

const pieces = fc.array(
  fc.record({
    name: fc.constant("piece"),
    shape: fc.record({ length: between(0.05, 3), width: between(0.05, 2) }),
    angleDeg: fc.constantFrom(0, 45, -45, 90, 30),
    trim: between(0, 0.05),
    count: fc.integer({ min: 1, max: 4 }),
  }),
  { minLength: 1, maxLength: 8 },
);

Deno.test("blanks lie on the roll and do not overlap", () => {
  fc.assert(
    fc.property(pieces, fc.boolean(), between(0.4, 1.6), (drawn, balanced, rollWidth) => {
      const list = cutFromRoll({
        name: "cloth",
        rollWidth,
        arealWeight: 0.2,
        balanced,
        joinOverlap: 0.05,
        pieces: drawn,
      });
      const slack = 1e-9;
      for (const [i, a] of list.pieces.entries()) {
        assert(a.fromEdge >= 0 && a.fromEdge + a.width <= rollWidth * (1 + slack) + slack);
        assert(a.fromStart >= 0 && a.fromStart + a.length <= list.rollLength + slack);
        for (const b of list.pieces.slice(i + 1)) {
          const apart = a.fromEdge + a.width <= b.fromEdge + slack ||
            b.fromEdge + b.width <= a.fromEdge + slack ||
            a.fromStart + a.length <= b.fromStart + slack ||
            b.fromStart + b.length <= a.fromStart + slack;
          assert(apart, "two blanks overlap");
        }
      }
      assert(list.waste >= 0 && list.waste < 1);
      assertClose(list.pieceArea, (1 - list.waste) * rollWidth * list.rollLength, {
        relative: 1e-9,
      });
    }),
    SEEDED,
  );
});

Deno.test("core tiles lie on their sheets, do not overlap and cover the pieces", () => {
  fc.assert(
    fc.property(pieces, fc.boolean(), (drawn, turnable) => {
      const sheet = { sheetLength: 1.2, sheetWidth: 0.8 };
      const list = cutCore({
        ...{ name: "foam", thickness: 0.006, density: 80, turnable, ...sheet },
        pieces: drawn.map(({ name, shape, count }) => ({ name, ...shape, count, rampLength: 0 })),
      });
      const tiled = list.tiles.reduce((sum, { length, width }) => sum + length * width, 0);
      assertClose(tiled, list.footArea, { relative: 1e-12 });
      assertClose(list.volume, list.footArea * 0.006, { relative: 1e-12 });
      const slack = 1e-9;
      for (const [i, a] of list.tiles.entries()) {
        assert(a.fromStart + a.length <= sheet.sheetLength * (1 + slack) + slack);
        assert(a.fromEdge + a.width <= sheet.sheetWidth * (1 + slack) + slack);
        for (const b of list.tiles.slice(i + 1)) {
          const apart = a.sheet !== b.sheet || a.fromEdge + a.width <= b.fromEdge + slack ||
            b.fromEdge + b.width <= a.fromEdge + slack ||
            a.fromStart + a.length <= b.fromStart + slack ||
            b.fromStart + b.length <= a.fromStart + slack;
          assert(apart, "two tiles overlap");
        }
      }
    }),
    SEEDED,
  );
});

Deno.test("equivalent time adds up over a log, and its shortcuts err to their known side", () => {
  const temperature = between(280, 340);
  fc.assert(
    fc.property(temperature, temperature, between(3e4, 9e4), (from, to, energy) => {
      const rate = { activationEnergy: energy, referenceTemperature: 298.15 };
      const whole = equivalentTime({ times: [0, 3600], temperatures: [from, to] }, rate);
      const split = equivalentTime(
        { times: [0, 1200, 3600], temperatures: [from, from + (to - from) / 3, to] },
        rate,
      );
      assertClose(split.exact, whole.exact, { relative: 1e-12 });
      // The rate is convex below Ea/2R (1800 K and more): trapezoid above, mean below.
      assert(whole.trapezoid >= whole.exact * (1 - 1e-12));
      assert(whole.atMeanTemperature <= whole.exact * (1 + 1e-12));
      const held = equivalentTime({ times: [0, 3600], temperatures: [from, from] }, rate);
      assertClose(held.exact, 3600 * cureRateFactor(from, rate), { relative: 1e-12 });
    }),
    SEEDED,
  );
});

Deno.test("air thins with altitude as hydrostatics asks, and the day's gauge adds up", () => {
  fc.assert(
    fc.property(between(-4000, 19_000), between(0, 1), (altitude, share) => {
      const { pressure, density } = standardAtmosphere(altitude);
      const step = 1;
      const slope = (standardAtmosphere(altitude + step).pressure -
        standardAtmosphere(altitude - step).pressure) / (2 * step);
      assertClose(slope, -density * 9.80665, { relative: 1e-6 });
      const bag = bagPressure({ gauge: -share * pressure, outside: pressure });
      assertClose(bag.absolute + bag.compaction, pressure, { relative: 1e-14 });
    }),
    SEEDED,
  );
});

Deno.test("a leak's time constant and its pressure go there and back", () => {
  fc.assert(
    fc.property(between(1e3, 9e4), between(0.01, 5), between(10, 1e5), (start, turns, time) => {
      const bag = { start, outside: 1e5, timeConstant: time / turns };
      const second = pressureAfterLeak(bag, time);
      assert(second > start && second < 1e5);
      const found = leakTimeConstant({ first: start, second, time, outside: 1e5 });
      assertClose(found, bag.timeConstant, { relative: 1e-10 });
    }),
    SEEDED,
  );
});

Deno.test("pot life falls with mass and warmth; infusion just fills at its reach", () => {
  fc.assert(
    fc.property(between(0.05, 1), between(285, 305), between(0.05, 1), (mass, warm, viscosity) => {
      const sheet = { potLife: 1800, mass: 0.1, temperature: 298 };
      const life = potLife(sheet, { mass, temperature: warm });
      const more = potLife(sheet, { mass: mass * 1.1, temperature: warm });
      // Below the sheet's own mass its figure is the most that is promised.
      assert(mass > 0.1 ? more < life : more <= life);
      assert(potLife(sheet, { mass, temperature: warm + 1 }) < life);
      const part = {
        viscosity,
        permeability: 3e-10,
        porosity: 0.5,
        pressure: 7e4,
        flowLength: 1,
        gelTime: 4000,
      };
      const { reach } = infusionCheck(part);
      assertClose(infusionCheck({ ...part, flowLength: reach }).fillTime, 4000, {
        relative: 1e-12,
      });
    }),
    SEEDED,
  );
});

Deno.test("nights: nothing begins before what it waits for, and the critical path is as long", () => {
  const operations = fc.array(
    fc.record({ back: fc.array(fc.nat(5), { maxLength: 3 }), wait: between(0, 2e5) }),
    { minLength: 1, maxLength: 9 },
  ).map((drawn) =>
    drawn.map(({ back, wait }, i) => ({
      name: `work ${i}`,
      after: [...new Set(back.map((step) => i - 1 - step).filter((at) => at >= 0))]
        .map((at) => `work ${at}`),
      handsOn: 600,
      wait,
    }))
  );
  fc.assert(
    fc.property(operations, (drawn) => {
      const plan = planNights(drawn, { length: 4 * 3600, gap: 20 * 3600 });
      const byName = new Map(plan.operations.map((entry) => [entry.name, entry]));
      for (const { after, session } of plan.operations) {
        for (const name of after) {
          const before = byName.get(name)!;
          assert(session >= before.session + before.nights);
        }
      }
      const nights = plan.criticalPath.reduce((sum, name) => sum + byName.get(name)!.nights, 0);
      assert(nights === plan.nights, `${nights} nights on the path, ${plan.nights} in all`);
    }),
    SEEDED,
  );
});
