import { layersOfCode } from "../../lib/laminate/mod.ts";
import { assertEquals } from "@std/assert";

/**
 * The conventions of ASTM D6507 and of MIL-HDBK-17-1F section 1.6 with their usual examples,
 * from memory: codes beside the angles that they stand for, first ply first.
 */
const examples: readonly (readonly [code: string, anglesDeg: readonly number[]])[] = [
  ["[0/45/90/-45]s", [0, 45, 90, -45, -45, 90, 45, 0]],
  ["[0/±45/90]s", [0, 45, -45, 90, 90, -45, 45, 0]],
  ["[0₂/90]T", [0, 0, 90]],
  ["[45/0/-60₂/30]", [45, 0, -60, -60, 30]],
  ["[0/90]₂s", [0, 90, 0, 90, 90, 0, 90, 0]],
  ["[0/45/9\u03050\u0305]s", [0, 45, 90, 45, 0]],
  ["[∓45]s", [-45, 45, 45, -45]],
];

Deno.test("ASTM D6507: codes stand for these plies (from memory)", () => {
  for (const [code, anglesDeg] of examples) {
    assertEquals(layersOfCode(code).map((layer) => layer.angleDeg), anglesDeg, code);
  }
});

Deno.test("ASTM D6507: a cloth in round brackets is one ply, materials are subscripts (from memory)", () => {
  assertEquals(layersOfCode("[(0/90)/(±45)]s").length, 4);
  assertEquals(layersOfCode("[0_C/90_G]s").map((layer) => layer.material), ["C", "G", "G", "C"]);
});
