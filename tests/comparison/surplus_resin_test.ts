import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import {
  meanResinContent,
  surplusResin,
  unweighedRemarks,
  weighedRecord,
} from "../../lib/comparison/mod.ts";
import { readPart } from "../../lib/records/mod.ts";
import { assertClose } from "../close.ts";

const { weighings } = await readPart("data/sole-panels");
const parts = (...names: readonly string[]) =>
  names.map((name) => weighedRecord(weighings!.find(({ part }) => part === name)!));

Deno.test("resin that ten soles could have done without: 0.39 kg, 0.07 kg of it uncertain", () => {
  const soles = parts(
    ...["panel 1", "panel 2", "panel 3", "panel 4", "panel 5", "panel 8"],
    ...["beam 1", "beam 2", "beam 3", "beam 4"],
  );
  const { value, u } = surplusResin(soles);
  // By hand from the records, S = m − m_core − m_f − ρ_m (m_f/ρ_f)(1 − V)/V with V = 0.375 by hand,
  // 0.485 bagged: 393.220 g. Roll of cloth ± 5.77 g/m² shifts all not weighed dry by 61.793 g, glass
  // ± 17.3 kg/m³ by 10.053 g, resin ± 20.2 kg/m³ by 26.109 g; scale and sides leave 5.513 g.
  assertClose(value, 0.39322022, { relative: 1e-7 });
  assertClose(u, 0.06805555, { relative: 1e-6 });
});

Deno.test("a dry part counts against the sum, and what is common adds up", () => {
  const [dry] = parts("panel 6");
  assert(dry!.weighed.surplusResin.value < 0);
  const { value, u } = surplusResin([dry!, dry!, dry!]);
  assertClose(value, 3 * dry!.weighed.surplusResin.value, { relative: 1e-14 });
  const own = dry!.weighed.surplusResin.budget
    .filter(({ name }) => !/density|areal/.test(name))
    .reduce((sum, { contribution }) => sum + contribution ** 2, 0);
  // Three times the common part, √3 times the part's own.
  assertClose(u ** 2, 9 * (dry!.weighed.surplusResin.u ** 2 - own) + 3 * own, { relative: 1e-9 });
});

Deno.test("an open core's uptake is common to its kind", () => {
  const hatches = parts("hatch 1", "hatch 2");
  const { u } = surplusResin(hatches);
  const separate = Math.hypot(...hatches.map(({ weighed }) => weighed.surplusResin.u));
  assert(u > 1.35 * separate);
});

Deno.test("a mean of three scattered parts is known to 5 %, what they share counted", () => {
  const mean = meanResinContent(parts("panel 1", "panel 2", "panel 3"));
  // By hand 310/694, 534/918, 299/681: mean 48.915 %, deviation 8.024 %/√3. Heavier cloth by
  // 5.77 g/m² takes 11.085 g of fibre for resin in panels 1 and 2, 1.5973 % and 1.2075 % of their
  // laminate; panel 3 was weighed dry.
  assertClose(mean.value, (310 / 694 + 534 / 918 + 299 / 681) / 3, { relative: 1e-12 });
  assertClose(mean.uScatter, 0.04632776, { relative: 1e-6 });
  assertClose(mean.uCommon, (0.015973 + 0.012075) / 3, { relative: 1e-4 });
  assertClose(mean.u, Math.hypot(mean.uScatter, mean.uCommon), { relative: 1e-14 });
});

Deno.test("the mean of one part is the part's own figure", () => {
  const [one] = parts("panel 1");
  const { value, u } = meanResinContent([one!]);
  assertClose([value, u], [one!.resinContent!.value, one!.resinContent!.u], { relative: 1e-9 });
  assertThrows(() => meanResinContent([]), InputError, "parts");
  assertThrows(() => meanResinContent([{} as never]), InputError, "parts");
});

Deno.test("what is no weighed part has no surplus", () => {
  const [weighed] = parts("panel 1");
  const unlaid = {
    ...weighed,
    record: { ...weighed!.record, layup: { name: "sole", layers: null } },
  };
  for (const average of [surplusResin, meanResinContent]) {
    assertThrows(
      () => average([unlaid as never]),
      InputError,
      "layers of the lay-up is null",
    );
  }
  assertThrows(() => surplusResin([]), InputError, "parts");
  assertThrows(() => surplusResin([null as never]), InputError, "parts");
  assertThrows(() => surplusResin("panel 1" as never), InputError, "parts");
});

Deno.test("a name that misses its weighing by a letter is found, another number is not", () => {
  const weighed = ["beam 1", "beam 2", "panel A"];
  assertEquals(unweighedRemarks(["beam 1", "beam 2"], weighed), []);
  assertEquals(unweighedRemarks(["Beam-1", "Beam-1", "beam 2"], weighed), [
    '"Beam-1" has no row in weighings.csv: the scheduled fibre fraction is used. ' +
    'The nearest name there is "beam 1".',
  ]);
  // "beam 3" is one letter from "beam 1", but another beam; "panl A" has lost one, "pot A" five.
  const far = '" has no row in weighings.csv: the scheduled fibre fraction is used.';
  assertEquals(unweighedRemarks(["beam 3"], weighed), [`"beam 3${far}`]);
  assertEquals(unweighedRemarks(["pot A"], weighed), [`"pot A${far}`]);
  assert(unweighedRemarks(["panl A"], weighed)[0]!.endsWith('"panel A".'));
  // A name that has its own tests is not offered.
  assertEquals(unweighedRemarks(["beam1", "beam 1"], weighed), [`"beam1${far}`]);
  assertThrows(() => unweighedRemarks([1 as never], weighed), InputError, "specimens");
  assertThrows(() => unweighedRemarks(["a"], {} as never), InputError, "weighed parts");
});
