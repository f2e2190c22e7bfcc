import { InputError } from "../../lib/check/mod.ts";
import { strengthFromCoupons } from "../../lib/laminate/mod.ts";
import { assertClose } from "../close.ts";
import { assertEquals, assertThrows } from "@std/assert";

Deno.test("a strength lies the tabulated number of deviations below the mean", () => {
  // Mean 402, squares of the gaps 64 + 36 + 0 + 169 + 225 = 494, s² = 494/4 = 123.5. The factor for
  // 5 coupons, 90 % and 95 %: 3.407 (NIST/SEMATECH e-Handbook; MIL-HDBK-17, from memory).
  const { strength, mean, sd, factor, knockDown, notes } = strengthFromCoupons([
    ...[410e6, 396e6, 402e6, 415e6, 387e6],
  ]);
  assertClose(mean, 402e6, { relative: 1e-15 });
  assertClose(sd, Math.sqrt(123.5) * 1e6, { relative: 1e-14 });
  assertClose(factor, 3.407, { absolute: 0.0005 });
  assertClose(strength, 402e6 - factor * sd, { relative: 1e-14 });
  assertClose(knockDown, strength / 402e6, { relative: 1e-14 });
  assertEquals(notes.length, 2); // few coupons, and the scatter of parts
});

Deno.test("ten coupons promise more than five, and A-basis less than B-basis", () => {
  const ten = [410, 396, 402, 415, 387, 410, 396, 402, 415, 387].map((MPa) => MPa * 1e6);
  const B = strengthFromCoupons(ten);
  // 2.355 and 3.981 for 10 readings (MIL-HDBK-17, from memory).
  assertClose(B.factor, 2.355, { absolute: 0.0005 });
  assertClose(strengthFromCoupons(ten, { content: 0.99 }).factor, 3.981, { absolute: 0.0005 });
  assertEquals(B.notes.length, 1);
});

Deno.test("each kind of bad input is refused", () => {
  assertThrows(() => strengthFromCoupons([4e8, 4e8]), InputError, "must be a list of 3 or more");
  assertThrows(() => strengthFromCoupons([4e8, -1, 4e8]), InputError, "coupon 2 is -1 Pa");
  assertThrows(
    () => strengthFromCoupons([4e8, 1e8, 6e8]),
    InputError,
    "must be above 0: test more",
  );
  assertThrows(
    () => strengthFromCoupons([4e8, 4.1e8, 3.9e8], { confidence: 1 }),
    InputError,
    "confidence is 1",
  );
  assertThrows(() => strengthFromCoupons("400" as never), InputError, "list of coupons");
});
