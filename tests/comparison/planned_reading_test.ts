import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import {
  bendingReadings,
  coreDensityReading,
  coreShearModulusInput,
  directReading,
  explainGap,
  FIBRE_FRACTION,
  fibreModulusInput,
  type Gap,
  PART_THICKNESS,
  type PlannedReading,
  predictBending,
  readingsThatTell,
} from "../../lib/comparison/mod.ts";
import { readPart } from "../../lib/records/mod.ts";
import { beamLoadCases } from "../../lib/sandwich/mod.ts";
import { assertClose } from "../close.ts";

/** One linear measurement of two inputs that act alike in it: m = x + y = 12 ± 0.5. */
const GAP: Gap = {
  measured: [{ value: 12, u: 0.5 }],
  inputs: { x: { value: 10, u: 2, reading: "" }, y: { value: 0, u: 1, reading: "" } },
  predict: ({ x, y }) => [x! + y!],
};

Deno.test("a direct reading of one input: expected values and evidence by hand", () => {
  // If x was wrong: x = 12 ± √(0.25 + 1); the flat prior is 30 times as wide as u, 60, which draws
  // x back by 1.25/3600 of its way. If y was: x keeps its 10 ± 2, and y of 30 ± takes all.
  const [power] = readingsThatTell(GAP, ["x", "y"], [directReading("x", 0.3)]);
  const draw = 1.25 / (3600 + 1.25);
  assertClose(power!.ifFirst.value, 12 - 2 * draw, { relative: 1e-9 });
  assertClose(power!.ifFirst.u, Math.hypot(Math.sqrt(1.25 * (1 - draw)), 0.3), { relative: 1e-9 });
  // With y ± 30 the sum speaks of x by 4/(900 + 0.25 + 4) of the way.
  const share = 4 / (900 + 0.25 + 4);
  assertClose(power!.ifSecond.value, 10 + 2 * share, { relative: 1e-9 });
  assertClose(power!.ifSecond.u, Math.hypot(2 * Math.sqrt(1 - share), 0.3), { relative: 1e-9 });
  const apart = 2 - 2 * draw - 2 * share;
  const spread = Math.sqrt((1.25 * (1 - draw) + 4 * (1 - share)) / 2 + 0.09);
  assertClose(power!.evidence, apart / spread, { relative: 1e-8 });
  assertEquals(power!.verdict, "does not tell");
});

Deno.test("a reading that both explanations expect alike does not tell, however fine it is", () => {
  const same: PlannedReading = { reading: "sum", u: 1e-3, predict: ({ x, y }) => x! + y! };
  const [power] = readingsThatTell(GAP, ["x", "y"], [same]);
  assert(power!.evidence < 0.01);
});

Deno.test("the order of the two explanations does not matter, the order of readings is by evidence", () => {
  const difference: PlannedReading = {
    reading: "difference",
    u: 0.01,
    predict: ({ x, y }) => x! - y!,
  };
  const readings = [directReading("y", 0.1), difference];
  const one = readingsThatTell(GAP, ["x", "y"], readings);
  const other = readingsThatTell(GAP, ["y", "x"], readings);
  assertEquals(one.map(({ reading }) => reading), other.map(({ reading }) => reading));
  assertClose(one.map(({ evidence }) => evidence), other.map(({ evidence }) => evidence), {
    relative: 1e-9,
  });
  assert(one[0]!.evidence >= one[1]!.evidence);
});

const part = await readPart("data/sole-panels");
const layup = part.layups.get("sole")!;
const core = layup.layers.find((layer) => layer.kind === "core")!.core;
const fibre = layup.layers.find((layer) => layer.kind === "reinforcement")!.fibre;
const known = {
  thickness: { value: 0.0107, u: 5e-5 },
  fibreFraction: { value: 0.45, u: 0.01 },
};
const beamAt = (span: number) => ({
  layup,
  width: { value: 0.075, u: 2e-4 },
  known,
  tests: [{
    test: `${1000 * span} mm`,
    loadCase: beamLoadCases.threePoint,
    span: { value: span, u: 5e-4 },
  }],
});

/** A beam whose core or faces are softer than predicted, tested at one middle span only. */
function gapOf(input: string, factor: number): Gap {
  const { predict, inputs } = predictBending(beamAt(0.2));
  const values = Object.fromEntries(
    Object.entries(inputs).map(([name, { value }]) => [name, value]),
  );
  const measured = predict({ ...values, [input]: factor * values[input]! })
    .map((value) => ({ value, u: 0.005 * value }));
  return { measured, inputs, predict };
}

Deno.test("one span leaves face and core; a second span, or the sheet's weight, would tell", () => {
  const [face, shear] = [fibreModulusInput(fibre), coreShearModulusInput(core)];
  const gap = gapOf(shear, 0.6);
  const { explanations, significant } = explainGap(gap);
  assert(significant);
  const named = explanations.slice(0, 3).map(({ input }) => input);
  assert(named.includes(shear), named.join());
  const powers = readingsThatTell(gap, [face, shear], [
    ...bendingReadings(beamAt(0.2)),
    ...bendingReadings(beamAt(0.8)),
    ...bendingReadings(beamAt(0.06)),
    directReading(PART_THICKNESS, 2e-5, "callipers"),
    directReading(FIBRE_FRACTION, 5e-3, "weigh it again"),
    coreDensityReading(core),
  ]);
  const verdictOf = (reading: string) => powers.find((power) => power.reading === reading)?.verdict;
  assertEquals(verdictOf("800 mm"), "tells");
  assertEquals(verdictOf("60 mm"), "tells");
  assertEquals(verdictOf("200 mm"), "does not tell");
  assertEquals(verdictOf("callipers"), "does not tell");
  assertEquals(verdictOf(`weigh the sheet of ${core.name}`), "tells");
  // A core of 0.6 of its modulus would weigh 0.6^(1/1.17) as much, and does not if the face is soft.
  const weight = powers.find(({ reading }) => reading.startsWith("weigh the sheet"))!;
  assertClose(weight.ifSecond.value, 80 * 0.6 ** (1 / 1.17), { relative: 0.03 });
  assertClose(weight.ifFirst.value, 80, { relative: 0.03 });
});

Deno.test("the span of a planned test counts with its reading", () => {
  const [loose] = bendingReadings({
    ...beamAt(0.15),
    tests: [{ ...beamAt(0.15).tests[0]!, span: { value: 0.15, u: 2e-3 } }],
  });
  const [tight] = bendingReadings(beamAt(0.15));
  assert(loose!.u > 1.5 * tight!.u);
});

Deno.test("what cannot be planned is refused by name", () => {
  const refused = (
    between: readonly [string, string],
    readings: readonly PlannedReading[],
    message: string,
  ) => assertThrows(() => readingsThatTell(GAP, between, readings), InputError, message);
  refused(["x", "z"], [directReading("x", 1)], 'explanation is "z"');
  refused(["x", "x"], [directReading("x", 1)], "must differ from the first");
  refused(["x", "y"], [], "readings");
  refused(["x", "y"], [{ reading: "rough", u: 0, predict: () => 1 }], "uncertainty of rough");
  refused(["x", "y"], [directReading("w", 1)], "must be one of the gap");
  assertThrows(() => directReading("x", -1), InputError, "uncertainty is -1");
  assertThrows(() => coreDensityReading(core, { exponent: 0 }), InputError, "exponent is 0");
  assertThrows(() => bendingReadings(beamAt(0.2), 0), InputError, "share of the slope");
});
