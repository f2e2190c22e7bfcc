import { assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { utilisationByLayer } from "../../lib/laminate/mod.ts";

Deno.test("utilisation of a layer is that of its worse face", () => {
  const faces = [
    { layer: 1, face: "bottom", ratio: 4, mode: "1c" },
    { layer: 1, face: "top", ratio: 5, mode: "2t" },
    { layer: 3, face: "bottom", ratio: null, mode: null },
    { layer: 3, face: "top", ratio: null, mode: null },
    { layer: 4, face: "bottom", ratio: null, mode: null },
    { layer: 4, face: "top", ratio: 0.5, mode: "12" },
    { layer: 5, face: "bottom", ratio: 0, mode: "2t" },
    { layer: 5, face: "top", ratio: 0.1, mode: "2t" },
  ] as const;
  assertEquals(utilisationByLayer(faces), [
    { layer: 1, utilisation: 0.25, face: "bottom", mode: "1c" },
    { layer: 3, utilisation: 0, face: null, mode: null },
    { layer: 4, utilisation: 2, face: "top", mode: "12" },
    { layer: 5, utilisation: null, face: "bottom", mode: "2t" },
  ]);
  assertThrows(() => utilisationByLayer([]), InputError, "faces");
  assertThrows(
    () => utilisationByLayer([{ layer: 1, face: "top", ratio: NaN, mode: "1t" }]),
    InputError,
    "ratio of layer 1",
  );
});
