import { InputError } from "@laminate/notebooks/check";
import { partFromFiles, type PartRecord } from "@laminate/notebooks/records";
import { assertEquals, assertThrows } from "@std/assert";
import { assertClose } from "../close.ts";
import { catalogue, folder } from "./_folder.ts";

const read = (coupons?: string): PartRecord =>
  partFromFiles({
    name: "demo",
    files: folder({ "coupons.csv": coupons }),
    catalogue,
  });

Deno.test("coupons are read into SI, in inches and pounds too", () => {
  const { coupons, notes } = read(
    "coupon,layup,test,width_in,thickness_mm,breaking_load_lbf,note\n" +
      "T1,tray,tension,0.5,0.7,600,\nC1,tray,compression,0.5,0.72,300,split\n",
  );
  assertEquals(notes, []);
  assertEquals(coupons!.map(({ coupon, test, layup, note }) => [coupon, test, layup.name, note]), [
    ["T1", "tension", "tray", undefined],
    ["C1", "compression", "tray", "split"],
  ]);
  const [{ width, thickness, breakingLoad }] = coupons as [NonNullable<typeof coupons>[number]];
  // 1 lbf is 4.4482216152605 N by definition (NIST SP 811).
  assertClose([width, thickness, breakingLoad], [0.0127, 0.0007, 600 * 4.4482216152605], {
    relative: 1e-14,
  });
});

Deno.test("that no coupons were broken is not worth a note", () => {
  const part = read();
  assertEquals(part.coupons, undefined);
  assertEquals(part.notes, []);
});

Deno.test("a coupon told twice, of no lay-up, of another test or without a load is named", () => {
  const error = assertThrows(
    () =>
      read(
        "coupon,layup,test,width_mm,thickness_mm,breaking_load_N\n" +
          "T1,tray,tension,15,0.7,2500\nT1,tray,tension,15,0.7,2500\n" +
          "T2,trey,tension,15,0.7,2500\nT3,tray,torsion,15,0.7,2500\nT4,tray,tension,15,0.7,0\n",
      ),
    InputError,
  );
  assertEquals(
    error.faults.map(({ file, line, argument }) => `${file} ${line} ${argument}`),
    [
      "coupons.csv 3 coupon",
      "coupons.csv 4 layup",
      "coupons.csv 5 test",
      "coupons.csv 6 breaking_load_N",
    ],
  );
});
