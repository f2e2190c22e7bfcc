import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { couponTension, type PulledCoupon } from "../../lib/laminate/mod.ts";
import { assertClose } from "../close.ts";

/** Glass cloth of 18 GPa that softens beyond a strain of 0.003, read with a toe below 0.001. */
const STRAIN = [0, 0.0004, 0.0008, 0.001, 0.0015, 0.002, 0.0025, 0.003, 0.006, 0.012];
const stress = (e: number): number =>
  18e9 * (e < 0.001 ? e * e / 0.001 : Math.min(e, 0.003) + 0.6 * Math.max(0, e - 0.003));
const COUPON: PulledCoupon = {
  width: { value: 0.025, u: 5e-5 },
  thickness: { value: 0.002, u: 2e-5 },
  force: STRAIN.map((e) => stress(e) * 0.025 * 0.002),
  strain: STRAIN,
  strainAcross: STRAIN.map((e) => -0.15 * e),
};

Deno.test("the modulus is that of the window, toe and softening left out", () => {
  const { modulus, nu, greatestStress, fit, notes } = couponTension(COUPON);
  assertClose(modulus.value, 18e9, { relative: 1e-12 });
  assertClose(nu!.value, 0.15, { relative: 1e-12 });
  assertClose(greatestStress, 18e9 * (0.003 + 0.6 * 0.009), { relative: 1e-12 });
  assertEquals([fit.count, notes], [5, []]);
  // Width and thickness, 0.2 and 1 %, by hand.
  assertClose(modulus.u / modulus.value, Math.hypot(0.002, 0.01), { relative: 1e-6 });
});

Deno.test("another window gives its own modulus", () => {
  const { modulus } = couponTension(COUPON, { from: 0.003, to: 0.012 });
  assertClose(modulus.value, 0.6 * 18e9, { relative: 1e-12 });
});

Deno.test("a Poisson ratio of the wrong sign is remarked", () => {
  const { notes } = couponTension({ ...COUPON, strainAcross: STRAIN.map((e) => 0.15 * e) });
  assert(notes[0]!.includes("wider"));
});

Deno.test("what cannot be meant is refused by name", () => {
  const refused = (change: object, message: string) =>
    assertThrows(() => couponTension({ ...COUPON, ...change }), InputError, message);
  refused({ width: { value: 0, u: 0 } }, "width is 0 m");
  refused({ strain: STRAIN.slice(1) }, "number of strains is 9");
  refused({ force: "much" }, "force");
  refused({ strain: STRAIN.with(2, NaN) }, "strain of reading 3 is NaN");
  assertThrows(() => couponTension(COUPON, { from: 0.1, to: 0.2 }), InputError, "readings inside");
  assertThrows(() => couponTension(COUPON, { from: 0.2, to: 0.1 }), InputError, "upper strain");
});
