import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import {
  chordSlope,
  creepAtHold,
  machineCompliance,
  readBendingTest,
  rigiditiesFromTests,
  straightness,
  withoutMachine,
} from "../../lib/comparison/mod.ts";
import { randomGenerator } from "../../lib/numeric/mod.ts";
import { beamLoadCases } from "../../lib/sandwich/mod.ts";
import { assertClose } from "../close.ts";

const LOADS = [0, 10, 20, 30, 40, 50, 60, 70, 80, 90];
const up = LOADS.map(() => "loading" as const);

/** A test of 1e-4 m/N with the scatter of a gauge, and whatever is added to it. */
function readings(seed: number, added: (load: number, i: number) => number): number[] {
  const random = randomGenerator(seed);
  return LOADS.map((load, i) => 3e-5 + 1e-4 * load + added(load, i) + 6e-6 * random.normal());
}
const read = (seed: number, added: (load: number, i: number) => number) =>
  readBendingTest({ load: LOADS, deflection: readings(seed, added), branch: up, resolution: 1e-5 });

Deno.test("two slips of one sign are both found: neither hides the other", () => {
  for (let seed = 1; seed <= 40; seed++) {
    const at = 1 + seed % 7;
    const { doubtful, fit } = read(seed, (_, i) => i === at || i === at + 1 ? 2e-4 : 0);
    assertEquals(doubtful.map(({ index }) => index).toSorted(), [at, at + 1]);
    assertClose(fit.slope.value, 1e-4, { relative: 0.01 });
  }
});

Deno.test("a gauge that slipped and stayed off is told, and the slope is not spoiled", () => {
  let held = 0;
  for (let seed = 1; seed <= 40; seed++) {
    const at = 3 + seed % 4;
    const { slip, doubtful, fit, notes, residuals } = read(seed, (_, i) => i >= at ? 2e-4 : 0);
    assertEquals([slip?.index, doubtful], [at, []]);
    assertClose(slip!.size, 2e-4, { absolute: 4 * slip!.u });
    assert(notes[0]!.includes(`before reading ${at + 1}`));
    assert(Math.max(...residuals.map(Math.abs)) < 4e-5, "counted from the gauge's new zero");
    if (fit.slope.low < 1e-4 && 1e-4 < fit.slope.high) held++;
  }
  // 95 % of 40: Poisson with mean 2 for those that do not hold stays within 7.
  assert(held >= 33, `the interval held the slope in ${held} of 40`);
});

Deno.test("where the core yields, the curve leaves the line at its load", () => {
  let held = 0;
  for (let seed = 1; seed <= 60; seed++) {
    const { straightness: { departure, toe } = {}, fit, used } = {
      ...read(seed, (load) => 4e-5 * Math.max(0, load - 62)),
    } as
      & { straightness?: Partial<NonNullable<ReturnType<typeof read>["straightness"]>> }
      & Pick<
        ReturnType<typeof read>,
        "fit" | "used"
      >;
    assert(departure !== null && departure !== undefined && toe === null);
    assert(used.at(-1)! <= 6, "no reading beyond the bend is used");
    assertClose(fit.slope.value, 1e-4, { relative: 0.02 });
    if (departure.load.low < 62 && 62 < departure.load.high) held++;
  }
  assert(held >= 51, `the interval held the bend in ${held} of 60`);
});

Deno.test("the bend of an exact record, between two readings and at one", () => {
  for (const bend of [50, 53]) {
    const deflection = LOADS.map((load) => 1e-4 * load + 5e-5 * Math.max(0, load - bend));
    const { departure, straight, toe } = straightness({ load: LOADS, deflection });
    assertClose(departure!.load.value, bend, { relative: 1e-9 });
    assertClose(departure!.deflection, 1e-4 * bend, { relative: 1e-9 });
    assertClose(departure!.slopeChange.value, 5e-5, { relative: 1e-9 });
    assertEquals([straight.length, toe], [6, null]);
  }
});

Deno.test("a gauge's steps leave the place of a bend as uncertain as their even spread makes it", () => {
  // Exact but for steps of 1 µm, whose standard deviation is 1 µm/√12. Lines through 0 to 60 N and
  // 70 to 100 N meet at 65 N: there 1/7 + 35²/2800 and 1/4 + 20²/500 of that variance, over the change
  // of slope; t(0.975, 11 − 4) = 2.364624251.
  const load = Array.from({ length: 11 }, (_, i) => 10 * i);
  const deflection = load.map((P) => 1e-4 * P + 0.5e-4 * Math.max(0, P - 65));
  const { departure } = straightness({ load, deflection }, { resolution: 1e-6 });
  const u = 1e-6 / Math.sqrt(12) * Math.sqrt(1 / 7 + 0.4375 + 0.25 + 0.8) / 0.5e-4;
  const { value, low, high } = departure!.load;
  assertClose(value, 65, { relative: 1e-9 });
  assertClose([high - value, value - low], [2.364624251 * u, 2.364624251 * u], { relative: 1e-6 });
});

Deno.test("a toe and a departure in one curve are both told", () => {
  const load = Array.from({ length: 20 }, (_, i) => 5 * i);
  const deflection = load.map((P) =>
    1e-4 * P + 1.5e-4 * Math.min(P, 20) + 5e-5 * Math.max(0, P - 75)
  );
  const { toe, departure, straight } = straightness({ load, deflection });
  assertClose(toe!.load.value, 20, { relative: 1e-9 });
  assertClose(departure!.load.value, 75, { relative: 1e-9 });
  assertEquals([straight[0], straight.at(-1)], [4, 15]);
});

Deno.test("a straight test has no bend in more than one of a hundred", () => {
  let alarms = 0;
  for (let seed = 1; seed <= 300; seed++) {
    const { toe, departure } = straightness({
      load: LOADS,
      deflection: readings(seed, () => 0),
    });
    if (toe !== null || departure !== null) alarms++;
  }
  // Poisson with mean 3 stays within 9.
  assert(alarms <= 9, `${alarms} alarms in 300`);
});

Deno.test("the remark says what slip of the pen would explain a reading", () => {
  const remark = (added: (load: number, i: number) => number): string => read(3, added).notes[0]!;
  assert(
    remark((load, i) => i === 4 ? 9 * (3e-5 + 1e-4 * load) : 0).includes("ten times too large"),
  );
  assert(remark((_, i) => i === 4 ? -1e-3 : 0).includes("one turn of a dial of 1 mm"));
  assert(remark((_, i) => i === 0 ? -2e-4 : 0).includes("seated itself"));
  assert(remark((_, i) => i === 4 ? 3.3e-4 : 0).includes("Read the gauge again"));
});

Deno.test("a chord's uncertainty and limits, by hand", () => {
  const curve = { load: [0, 10, 30, 50], deflection: [0, 1e-3, 2e-3, 3e-3] };
  const limits = { from: 0, to: 2e-3, uLoad: 0.1, uDeflection: 1e-5 };
  const { slope } = chordSlope(curve, limits);
  assertClose(slope.value, 15000, { relative: 1e-14 });
  assertClose(slope.u, Math.SQRT2 * Math.hypot(0.1, 0.15) / 2e-3, { relative: 1e-13 });
  const two = chordSlope({ load: [0, 30], deflection: [0, 2e-3] }, limits);
  assertClose(two.slope.value, 15000, { relative: 1e-14 });
  assertThrows(
    () => chordSlope({ load: [0], deflection: [0] }, limits),
    InputError,
    "must be two or more",
  );
  const refused = (change: object, message: string) =>
    assertThrows(() => chordSlope(curve, { ...limits, ...change }), InputError, message);
  refused({ to: 4e-3 }, "upper limit is 0.004 m");
  refused({ to: -1 }, "must be above the lower limit");
  assertThrows(
    () => chordSlope({ ...curve, deflection: [0, 2e-3, 1e-3, 3e-3] }, limits),
    InputError,
    "deflection of reading 3",
  );
});

Deno.test("the machine is what the bar leaves, with the bar's thickness cubed in its uncertainty", () => {
  const exactly = (value: number) => ({ value, u: 0 });
  const bar = {
    loadCase: beamLoadCases.threePoint,
    compliance: { value: 1.2e-6, u: 0 },
    span: exactly(0.5),
    width: exactly(0.04),
    thickness: { value: 0.025, u: 5e-5 },
    E: exactly(205e9),
    nu: 0.3,
  };
  const machine = machineCompliance(bar);
  // By hand: bending L³/4Ebh³, shear 1.2 L/(4 G b h) with G = E/2.6.
  const bending = 0.5 ** 3 / (4 * 205e9 * 0.04 * 0.025 ** 3);
  const shear = 1.2 * 0.5 * 2.6 / (4 * 205e9 * 0.04 * 0.025);
  assertClose(machine.barCompliance, bending + shear, { relative: 1e-12 });
  assertClose(machine.value, 1.2e-6 - bending - shear, { relative: 1e-12 });
  assertClose(machine.u, (3 * bending + shear) * 5e-5 / 0.025, { relative: 1e-6 });
  const none = machineCompliance({ ...bar, compliance: { value: bending, u: 1e-8 } });
  assert(none.notes.some((note) => note.includes("cannot be told from zero")));
  const odd = machineCompliance({ ...bar, compliance: { value: bending / 2, u: 1e-9 } });
  assert(odd.notes.some((note) => note.includes("bends less than it should")));
  const own = withoutMachine({ value: 1e-5, u: 3e-8 }, { value: 3e-6, u: 4e-8 });
  assertClose([own.value, own.u, own.machineShare], [7e-6, 5e-8, 0.3], { relative: 1e-12 });
  assertEquals(own.notes.length, 1);
  assertThrows(
    () => withoutMachine({ value: 1e-6, u: 0 }, { value: 3e-6, u: 0 }),
    InputError,
    "what the machine leaves",
  );
  assertThrows(
    () => withoutMachine({ value: 1e-4, u: 0 }, { value: -1e308, u: 0 }),
    InputError,
    "machine's share is -Infinity",
  );
});

Deno.test("tests that share a machine and a scale: common errors count once, by hand", () => {
  const loadCase = beamLoadCases.threePoint;
  const [D, S] = [728, 45375];
  const exact = (span: number) => span ** 3 / (48 * D) + span / (4 * S);
  const [a, b, c, d] = [0.8 ** 3 / 48, 0.2, 0.2 ** 3 / 48, 0.05];
  const det = a * d - b * c;
  const machine = { value: 2e-7, u: 1e-8 };
  const found = rigiditiesFromTests(
    [0.8, 0.2].map((span) => ({ loadCase, span, compliance: exact(span) + machine.value })),
    { machine },
  );
  assertClose([found.flexuralRigidity, found.shearStiffness], [D, S], { relative: 1e-10 });
  // One shift of both compliances moves 1/D by (d − b)/det and 1/S by (a − c)/det of it.
  assertClose(found.uFlexuralRigidity, Math.abs(d - b) / det * 1e-8 * D * D, { relative: 1e-9 });
  assertClose(found.uShearStiffness, (a - c) / det * 1e-8 * S * S, { relative: 1e-9 });
  assertClose(found.correlation, -1, { relative: 1e-12 });
  // A scale that is 1 % off moves both stiffnesses by 1 % together.
  const scaled = rigiditiesFromTests(
    [0.8, 0.2].map((span) => ({ loadCase, span, compliance: exact(span) })),
    { uScale: 0.01 },
  );
  assertClose([scaled.uFlexuralRigidity / D, scaled.uShearStiffness / S], [0.01, 0.01], {
    relative: 1e-10,
  });
  assertClose(scaled.correlation, 1, { relative: 1e-12 });
  assertThrows(
    () =>
      rigiditiesFromTests([0.8, 0.2].map((span) => ({ loadCase, span, compliance: 1e-7 })), {
        machine,
      }),
    InputError,
    "what the machine leaves of test 1",
  );
});

Deno.test("creep: growth by decade, a forecast, and what speeds up", () => {
  const time = [20, 40, 60, 120, 240, 600, 1200, 3600];
  const random = randomGenerator(5);
  const held = (curve: number) => ({
    time,
    deflection: time.map((t) =>
      4e-3 + 8e-5 * Math.log10(t) + curve * Math.log10(t) ** 2 + 2e-6 * random.normal()
    ),
  });
  const steady = creepAtHold(held(0));
  assertEquals([steady.verdict, steady.notes], ["steady", []]);
  assert(steady.perDecade.low < 8e-5 && 8e-5 < steady.perDecade.high);
  const later = steady.at(36000);
  assert(later.low < 4e-3 + 8e-5 * Math.log10(36000));
  assert(later.high > 4e-3 + 8e-5 * Math.log10(36000));
  const fast = creepAtHold(held(5e-5));
  assertEquals(fast.verdict, "speeding up");
  assert(fast.notes[0]!.includes("take the load off"));
  const flat = creepAtHold({ time, deflection: time.map(() => 4e-3 + 2e-6 * random.normal()) });
  assertEquals(flat.verdict, "cannot be told");
  assertThrows(() => steady.at(36001), InputError, "must be 36000 s or less");
  const refused = (change: object, message: string) =>
    assertThrows(() => creepAtHold({ ...held(0), ...change }), InputError, message);
  refused({ time: time.map((t) => t + 600) }, "last time");
  refused({ time: time.with(3, 30) }, "time of reading 4");
  refused({ time: time.with(0, 0) }, "time of reading 1 is 0 s");
  refused({ deflection: [1, 2] }, "number of deflections");
  const fromNothing = { deflection: [5e-324, ...held(0).deflection.slice(1)] };
  refused(fromNothing, "share of the first reading is Infinity");
});

Deno.test("what cannot be searched is refused by name", () => {
  const deflection = readings(1, () => 0);
  assertThrows(
    () => straightness({ load: LOADS.slice(3), deflection: deflection.slice(3) }),
    InputError,
    "number of readings is 7",
  );
  assertThrows(
    () => straightness({ load: LOADS.with(4, 5), deflection }),
    InputError,
    "load of reading 5",
  );
  assertThrows(
    () => straightness({ load: LOADS, deflection }, { chance: 2 }),
    InputError,
    "chance is 2",
  );
});
