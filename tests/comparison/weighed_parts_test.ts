import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { layupModel, layupStack, variedLayup, weighedRecord } from "../../lib/comparison/mod.ts";
import { readPart, type WeighingRecord } from "../../lib/records/mod.ts";
import { assertClose } from "../close.ts";

const part = await readPart("data/sole-panels");
const sole = part.layups.get("sole")!;
const weighing = (name: string): WeighingRecord =>
  part.weighings!.find(({ part }) => part === name)!;

Deno.test("panel 1's resin by hand: 1108 g less core 414 g less 4 cloths of 96 g", () => {
  const { weighed, resinContent } = weighedRecord(weighing("panel 1"));
  assertClose(weighed.fibreMass.value, 4 * 0.2 * 1.2 * 0.4, { relative: 1e-12 });
  assertClose(weighed.laminateResin.value, 1.108 - 0.414 - 0.384, { relative: 1e-12 });
  assertClose(resinContent!.value, 0.31 / (0.31 + 0.384), { relative: 1e-12 });
});

Deno.test("a sealed core takes no resin from the plies, an open one does", () => {
  const record = weighing("panel 1");
  const open = weighedRecord({ ...record, coreSealed: false });
  const sealed = weighedRecord(record);
  const uptake = 2 * 0.15 * 1.2 * 0.4;
  assertClose(open.weighed.laminateResin.value, sealed.weighed.laminateResin.value - uptake, {
    relative: 1e-12,
  });
  assert(open.weighed.laminateResin.u > sealed.weighed.laminateResin.u);
});

Deno.test("cloth weighed dry replaces the roll's figure and its tolerance", () => {
  const record = weighing("panel 1");
  const dry = weighedRecord({ ...record, dryClothMass: { value: 0.39, u: 0.001 } });
  assertClose(dry.weighed.fibreMass.value, 0.39, { relative: 1e-12 });
  assert(dry.weighed.resinRatio.u < weighedRecord(record).weighed.resinRatio.u / 3);
});

Deno.test("the planted mistake is caught, with the slip that would explain it", () => {
  const { weighed, effect, notes } = weighedRecord(weighing("panel 7"));
  assertEquals(weighed.verdict, "mistake");
  assertEquals(effect, null);
  assert(notes.some((note) => note.includes("ounces and written as grams")));
});

Deno.test("the light core of beam 3 is remarked, the others' cores are not", () => {
  for (const name of ["beam 1", "beam 2", "beam 3", "beam 4"]) {
    const light = weighedRecord(weighing(name)).notes.some((note) => note.startsWith("Light core"));
    assertEquals(light, name === "beam 3", name);
  }
});

Deno.test("more resin: thicker and heavier plies of the same cloth, the sandwich hardly stiffer", () => {
  const { effect } = weighedRecord(weighing("panel 2"));
  const { fibreVolumeFraction, targetFibreVolumeFraction } =
    weighedRecord(weighing("panel 2")).weighed;
  // The same fibre fills Vf of the thickness: thickness goes as 1/Vf.
  assertClose(effect!.plyThicknessRatio, targetFibreVolumeFraction / fibreVolumeFraction!.value, {
    relative: 1e-12,
  });
  assert(effect!.plyMassRatio > 1.2 && effect!.stiffnessRatio < 1.2);
});

Deno.test("a lay-up with two cores cannot be told by weighing", () => {
  const record = weighing("panel 1");
  const layers = [...sole.layers, sole.layers[2]!, sole.layers[0]!];
  assertThrows(
    () => weighedRecord({ ...record, layup: { name: "double", layers } }),
    InputError,
    "must be one at most",
  );
});

Deno.test("the schedule's stack: cloth thickness by hand, order kept", () => {
  const stack = layupStack(sole);
  assertEquals(stack.length, 5);
  assertClose(stack[0]!.thickness, 0.2 / (2560 * 0.4), { relative: 1e-12 });
  assertClose(stack[2]!.thickness, 0.01, { relative: 1e-12 });
  assertEquals(stack[2]!.lamina.name, "PVC foam 80");
});

Deno.test("a measured thickness leaves the core what the plies do not take", () => {
  const stack = layupStack(sole, {
    fibreFraction: { value: 0.5, u: 0.01 },
    thickness: { value: 0.0108, u: 5e-5 },
  });
  const total = stack.reduce((sum, { thickness }) => sum + thickness, 0);
  assertClose(total, 0.0108, { relative: 1e-12 });
  assertThrows(
    () => layupStack(sole, { thickness: { value: 0.0005, u: 0 } }),
    InputError,
    "thickness left for the core",
  );
});

Deno.test("every input of the model moves the stack, and has a source and a reading", () => {
  const { inputs, stack } = layupModel(sole);
  const middles = Object.fromEntries(
    Object.entries(inputs).map(([name, { value }]) => [name, value]),
  );
  const reference = JSON.stringify(stack(middles));
  for (const [name, { value, u, source, reading }] of Object.entries(inputs)) {
    assert(u > 0, `${name} has no uncertainty`);
    assert(source !== "" && reading !== "", name);
    assert(JSON.stringify(stack({ ...middles, [name]: 1.01 * value })) !== reference, name);
  }
});

Deno.test("a varied lay-up keeps its materials and counts its layers", () => {
  const varied = variedLayup(sole, { pliesPerFace: 3, coreThickness: 0.02, fibreFraction: 0.45 });
  assertEquals(varied.layers.map(({ layer }) => layer), [1, 2, 3, 4, 5, 6, 7]);
  assertEquals(varied.layers.map(({ kind }) => kind).indexOf("core"), 3);
  const stack = layupStack(varied);
  assertClose(stack[3]!.thickness, 0.02, { relative: 1e-12 });
  assertClose(stack[0]!.thickness, 0.2 / (2560 * 0.45), { relative: 1e-12 });
  assertEquals(layupStack(variedLayup(sole, {})), layupStack(sole));
});

Deno.test("choices that cannot be meant are refused by name", () => {
  const refused = (choice: object, message: string): InputError =>
    assertThrows(() => variedLayup(sole, choice), InputError, message);
  refused({ pliesPerFace: 0 }, "plies per face is 0");
  refused({ pliesPerFace: 1e9 }, "plies per face is 1000000000");
  refused({ coreThickness: -1 }, "core thickness is -1 m");
  refused({ fibreFraction: 40 }, "fibre fraction is 40");
  assertThrows(
    () => layupModel(sole, { fibreFraction: null } as never),
    InputError,
    "fibreFraction of what is known of the part is null",
  );
  const solid = { name: "solid", layers: sole.layers.slice(0, 2) };
  assertThrows(() => variedLayup(solid, {}), InputError, "one core with plies on both sides");
});
