import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { couponVerdicts } from "../../lib/comparison/mod.ts";
import type { CouponRecord } from "../../lib/records/mod.ts";
import { assertClose } from "../close.ts";
import { layupOf } from "./_layups.ts";

const layup = layupOf("glass twill 200", "glass twill 200");
const coupon = (breakingLoad: number, change: Partial<CouponRecord> = {}): CouponRecord => ({
  coupon: `T${breakingLoad}`,
  layup,
  test: "tension",
  width: 0.015,
  thickness: 0.4e-3,
  breakingLoad,
  ...change,
});
/**
 * Breaking force of two plies, by hand: half of 0.4 kg/m² of E-glass of 2560 kg/m³ runs along,
 * 1700 MPa with the estimate's knock-down of 0.8 for a twill [N/m]. The catalogue's figures.
 */
const FORCE = 0.5 * 0.4 / 2560 * 1700e6 * 0.8;

Deno.test("coupons are set beside the estimate for their own thickness", () => {
  const loads = [1500, 1550, 1600];
  const [verdict] = couponVerdicts(loads.map((load) => coupon(load)));
  const { estimated, measured, ratio, fibreFraction } = verdict!;
  assertClose(estimated, FORCE / 0.4e-3, { relative: 1e-12 });
  assertClose(fibreFraction, 0.4 / 2560 / 0.4e-3, { relative: 1e-12 });
  // Mean 1550 N, s 50 N; k for 3 coupons, 90 % with 95 % confidence: 6.155 (MIL-HDBK-17-1F,
  // table 8.5.10, from memory, to three decimals).
  const strength = (1550 - 6.155 * 50) / (0.015 * 0.4e-3);
  assertClose(measured!.mean, 1550 / (0.015 * 0.4e-3), { relative: 1e-12 });
  assertClose(measured!.strength, strength, { relative: 2e-5 });
  assertClose(ratio!, strength / estimated, { relative: 2e-5 });
});

Deno.test("each lay-up and kind of test has a verdict of its own", () => {
  const other = { ...layup, name: "other" };
  const verdicts = couponVerdicts([
    coupon(1500),
    coupon(900, { test: "compression" }),
    coupon(1510),
    coupon(1490),
    coupon(1400, { layup: other }),
  ]);
  assertEquals(
    verdicts.map((verdict) => [verdict.layup.name, verdict.test, verdict.coupons.length]),
    [["demo", "tension", 3], ["demo", "compression", 1], ["other", "tension", 1]],
  );
  // Compression of the same plies: 1100 MPa with 0.75.
  assertClose(verdicts[1]!.estimated, 0.5 * 0.4 / 2560 * 1100e6 * 0.75 / 0.4e-3, {
    relative: 1e-12,
  });
});

Deno.test("too few coupons, or too much scatter, tell nothing, and the verdict says why", () => {
  const [few] = couponVerdicts([coupon(1500), coupon(1600)]);
  assertEquals([few!.measured, few!.ratio], [null, null]);
  assert(few!.notes[0]!.includes("3 or more"), few!.notes[0]);
  const [wild] = couponVerdicts([coupon(500), coupon(1500), coupon(2500)]);
  assertEquals(wild!.ratio, null);
  assert(wild!.notes[0]!.includes("scatter"), wild!.notes[0]);
});

Deno.test("coupons that cannot be meant are refused", () => {
  const sandwich = layupOf("glass twill 200", "PVC foam 80,,10", "glass twill 200");
  assertThrows(() => couponVerdicts([coupon(1, { layup: sandwich })]), InputError, "no core");
  assertThrows(() => couponVerdicts([coupon(0)]), InputError, "breaking load");
  assertThrows(() => couponVerdicts([coupon(1, { width: NaN })]), InputError, "width");
  assertThrows(() => couponVerdicts([coupon(1, { test: "bending" as never })]), InputError, "test");
  assertThrows(() => couponVerdicts([]), InputError, "coupons");
});
