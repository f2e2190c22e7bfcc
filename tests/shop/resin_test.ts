import { assertEquals, assertThrows } from "@std/assert";
import { assertClose } from "../close.ts";
import { InputError } from "../../lib/check/mod.ts";
import {
  exothermCheck,
  massExponent,
  planResin,
  potLife,
  type ResinTask,
} from "../../lib/shop/mod.ts";

const task: ResinTask = {
  cloths: [
    { name: "twill 200", area: 6, arealWeight: 0.2, fibreMassFraction: 0.5 },
    { name: "twill 290", area: 1.5, arealWeight: 0.29, fibreMassFraction: 0.6 },
  ],
  cores: [{ name: "foam", area: 1.4, faces: 2, resinUptake: 0.15 }],
  coats: [
    { name: "mould face", area: 1.5, arealMass: 0.1, stays: true },
    { name: "peel ply", area: 1.7, arealMass: 0.05, stays: false },
  ],
  lossFraction: 0.12,
  phr: 30,
  densities: { resinDensity: 1150, hardenerDensity: 966 },
};

Deno.test("resin goes into cloth, core and coats, and some is lost: nothing else", () => {
  const plan = planResin(task);
  // By hand: 1.2, 0.29, 0.42, 0.15, 0.085; in the part 2.06; total 2.145/0.88
  assertClose(plan.lines.map(({ mass }) => mass).slice(0, 5), [1.2, 0.29, 0.42, 0.15, 0.085], {
    relative: 1e-14,
  });
  assertClose(plan.inPart, 2.06, { relative: 1e-14 });
  assertClose(plan.total, 2.4375, { relative: 1e-14 });
  const sum = plan.lines.reduce((all, { mass }) => all + mass, 0);
  assertClose(sum, plan.total, { relative: 1e-12 });
  assertClose(plan.mix.totalMass, plan.total, { relative: 1e-14 });
  assertClose(plan.mix.hardenerMass, 0.5625, { relative: 1e-14 });
  assertClose(plan.misread.deviation, -0.16, { relative: 1e-14 });
  assertEquals(plan.lines.map(({ where }) => where), [
    "cloth",
    "cloth",
    "core",
    "coat",
    "thrown away",
    "loss",
  ]);
});

const sheet = { potLife: 1800, mass: 0.1, temperature: 298.15 };

Deno.test("pot life falls with warmth and mass, and no pot outlasts a thin layer", () => {
  // Python's mpmath: 1800 e^(…)(0.3/0.1)^(−1/3), energy of the rule of ten degrees.
  const pot = { mass: 0.3, temperature: 293.15 };
  assertClose(potLife(sheet, pot), 1795.9411911665526, { relative: 1e-12 });
  const small = { mass: 1e-6, temperature: 298.15 };
  assertClose(potLife({ ...sheet, thinLayerTime: 3600 }, small), 3600, { relative: 1e-14 });
  // Without that figure a small pot lasts as long as the sheet's own and no longer: 30 min at its
  // temperature, where the power of the mass alone would say 83 549 s.
  assertClose(potLife(sheet, small), 1800, { relative: 1e-14 });
  // Warmth shortens a thin layer's time as it does a pot's: half of it for the ten degrees of the rule.
  const rule = { potLife: 1800, mass: 0.1, temperature: 298, thinLayerTime: 3000 };
  assertClose(potLife(rule, { mass: 1e-3, temperature: 308 }), 1500, { relative: 1e-12 });
  assertClose(potLife({ ...sheet, massExponent: 0 }, { mass: 5, temperature: 298.15 }), 1800, {
    relative: 1e-14,
  });
  const exponent = massExponent({ mass: 0.1, potLife: 1800 }, { mass: 0.8, potLife: 600 });
  assertClose(exponent, Math.log(3) / Math.log(8), { relative: 1e-14 });
});

Deno.test("a large or slow pot is warned of", () => {
  const pot = (mass: number, emptyAfter: number): readonly [string, number] => {
    const found = exothermCheck(sheet, { mass, temperature: 298.15, emptyAfter });
    return [found.risk, found.notes.length];
  };
  assertEquals(pot(0.1, 600), ["low", 0]);
  assertEquals(pot(0.1, 1500), ["watch", 2]);
  assertEquals(pot(0.1, 1900), ["high", 2]);
  assertEquals(pot(0.4, 300), ["watch", 2]);
  assertEquals(pot(0.6, 900), ["high", 3]);
});

Deno.test("resin refuses what cannot be", () => {
  assertThrows(
    () => planResin({ ...task, cloths: [], cores: [], coats: [] }),
    InputError,
    "nothing takes any",
  );
  assertThrows(() => planResin({ ...task, lossFraction: 1 }), InputError, "must be below 1");
  assertThrows(
    () => planResin({ ...task, cores: [{ ...task.cores[0]!, faces: 3 }] }),
    InputError,
    'faces of foam is "3", must be one of: 1, 2',
  );
  assertThrows(
    () => planResin({ ...task, cloths: [{ ...task.cloths[0]!, fibreMassFraction: 50 }] }),
    InputError,
    "must be between 0 and 1 (a percentage is divided by 100)",
  );
  assertThrows(() => planResin({ ...task, cloths: undefined as never }), InputError, "cloths is");
  assertThrows(
    () => potLife(sheet, { mass: 0, temperature: 298 }),
    InputError,
    "mass in the pot is 0 kg",
  );
  assertThrows(
    () => massExponent({ mass: 0.1, potLife: 1 }, { mass: 0.2, potLife: 2 }),
    InputError,
    "must not be above 1 s",
  );
});
