import { assert } from "@std/assert";
import { BLUE, ORANGE } from "../../lib/charts/_figure.ts";
import { PAGE_STYLE } from "../../lib/notebook/page/page_style.ts";
import { contrast } from "../contrast.ts";

/** Grounds of a figure that stands alone, and of the pages' cards. */
const GROUNDS = [
  "#ffffff",
  "#1b1b1f",
  ...[...PAGE_STYLE.matchAll(/--card: (#\w{6})/g)].map(([, colour]) => colour!),
];

Deno.test("both hues stand out from every ground as WCAG 2.2 asks of graphics (3 to 1)", () => {
  assert(GROUNDS.length === 4, String(GROUNDS));
  for (const ground of GROUNDS) {
    for (const hue of [BLUE, ORANGE]) {
      const found = contrast(hue, ground);
      assert(found >= 3, `${hue} on ${ground}: ${found.toFixed(2)}`);
    }
  }
});
