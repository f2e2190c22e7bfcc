import { assertEquals, assertThrows } from "@std/assert";
import { assertClose } from "../close.ts";
import { InputError } from "../../lib/check/mod.ts";
import { filletSection, gaugeFillet, type GaugeReading } from "../../lib/filler/mod.ts";

const reading: GaugeReading = {
  chord: { value: 0.03, u: 0.0002 },
  sagitta: { value: 0.005, u: 0.00005 },
  limit: 0.0254,
};

Deno.test("radius from chord and sagitta, with its uncertainty", () => {
  // 0.03²/0.04 + 0.0025 = 0.025. ∂r/∂c = c/4s = 1.5, ∂r/∂s = 1/2 − c²/8s² = −4:
  // u² = (3e-4)² + (2e-4)² = 13e-8.
  const { radius } = gaugeFillet(reading);
  assertClose(radius.value, 0.025, { relative: 1e-14 });
  assertClose(radius.u, Math.sqrt(13e-8), { relative: 1e-10 });
  assertClose(radius.sensitivity.chord, 1.5, { relative: 1e-10 });
  assertClose(radius.sensitivity.sagitta, -4, { relative: 1e-10 });
});

Deno.test("a measured fillet has a verdict of three states", () => {
  // U = 0.721 mm: limits of 25.8, 25.4 and 24.2 mm about the 25 mm measured.
  const verdict = (limit: number): string => gaugeFillet({ ...reading, limit }).verdict;
  assertEquals([verdict(0.0258), verdict(0.0254), verdict(0.0242)], [
    "holds",
    "not known",
    "fails",
  ]);
});

Deno.test("the arc of a made fillet gives its radius back", () => {
  const { chord, radius } = filletSection(0.02, 100);
  const half = chord / 2;
  const sagitta = radius - Math.sqrt(radius ** 2 - half ** 2);
  const found = gaugeFillet({
    chord: { value: chord, u: 0 },
    sagitta: { value: sagitta, u: 0 },
    limit: 0.021,
  });
  assertClose(found.radius.value, 0.02, { relative: 1e-13 });
  assertEquals(found.verdict, "holds");
});

Deno.test("a chord too long for the arc of its corner is noted", () => {
  // r = 25 mm in a corner of 150° has an arc 12.9 mm wide.
  const notes = gaugeFillet({ ...reading, limit: 0.05, cornerDeg: 150 }).notes;
  assertEquals(notes.at(-1)?.includes("stood on the panels"), true);
  const fits = gaugeFillet({ ...reading, limit: 0.05, cornerDeg: 90 }).notes;
  assertEquals(fits.some((note) => note.includes("stood on the panels")), false);
});

Deno.test("a sagitta of up to half of the chord is read: there it is half a circle", () => {
  const at = (sagitta: number): number =>
    gaugeFillet({ ...reading, sagitta: { value: sagitta, u: 0 } }).radius.value;
  assertClose(at(0.015), 0.015, { relative: 1e-14 });
  // 0.03²/(8 × 0.012) + 0.006
  assertClose(at(0.012), 0.015375, { relative: 1e-14 });
  assertThrows(() => at(0.01501), InputError, "must not be above half of the chord");
});

Deno.test("a gauge reading refuses what cannot be", () => {
  assertThrows(
    () => gaugeFillet({ ...reading, sagitta: { value: 0.02, u: 0 } }),
    InputError,
    "must not be above half of the chord",
  );
  assertThrows(() => gaugeFillet({ ...reading, limit: 0 }), InputError, "limit is 0 m");
  assertThrows(
    () => gaugeFillet({ ...reading, chord: undefined as never }),
    InputError,
    "chord is missing",
  );
  assertThrows(
    () => gaugeFillet({ ...reading, chord: { value: 0.03, u: -1 } }),
    InputError,
    "must be 0 or above",
  );
});
