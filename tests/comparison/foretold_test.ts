import { assertEquals } from "@std/assert";
import { beamEvidence, learnFromBeams } from "../../lib/comparison/mod.ts";
import { readPart } from "../../lib/records/mod.ts";

const { loadTests, weighings } = await readPart("data/sole-panels");
const evidenceOf = (name: string) =>
  beamEvidence(
    loadTests!.filter(({ specimen }) => specimen === name),
    weighings!.find(({ part }) => part === name),
  );

Deno.test("a part is foretold by the others: alone by none, of two each by the other", () => {
  const foretold = (names: readonly string[], checks = true): boolean[] =>
    learnFromBeams(names.map(evidenceOf), { checks }).parts.map((part) => part.foretold !== null);
  assertEquals(foretold(["beam 1"]), [false]);
  assertEquals(foretold(["beam 1", "beam 2"]), [true, true]);
  assertEquals(foretold(["beam 1", "beam 2"], false), [false, false]);
});
