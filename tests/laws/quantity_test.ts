import fc from "fast-check";
import {
  type Dimension,
  fromSI,
  readQuantity,
  showNumber,
  showQuantity,
  siUnits,
  toSI,
  units,
} from "../../lib/quantity/mod.ts";
import { assertClose } from "../close.ts";
import { assert, assertEquals } from "@std/assert";

const seeded = { seed: 20261125, numRuns: 300 };
const kinds = Object.keys(siUnits) as Dimension[];
const size = fc.double({ min: 1e-6, max: 1e9, noNaN: true });

Deno.test("there and back through any unit", () => {
  fc.assert(
    fc.property(fc.constantFrom(...units), size, (unit, value) => {
      // The offset of a temperature costs the digits of a small value: 460 × 2⁻⁵² ≈ 1e-13.
      const absolute = unit.offset === undefined ? 0 : 2e-13;
      assertClose(fromSI(toSI(value, unit.symbol), unit.symbol), value, {
        relative: 1e-15,
        absolute,
      });
    }),
    seeded,
  );
});

Deno.test("units without a zero of their own scale: twice the figure is twice the quantity", () => {
  const plain = units.filter((unit) => unit.offset === undefined);
  fc.assert(
    fc.property(fc.constantFrom(...plain), size, (unit, value) => {
      assertEquals(toSI(2 * value, unit.symbol), 2 * toSI(value, unit.symbol));
    }),
    seeded,
  );
});

Deno.test("every spelling of a unit reads as the unit", () => {
  for (const unit of units) {
    const kind = kinds.find((kind) => siUnits[kind] === unit.si)!;
    const dimension = unit.offset === undefined ? kind : "temperature";
    for (const spelling of [unit.symbol, ...unit.aliases]) {
      assertEquals(
        readQuantity(`2.5 ${spelling}`, dimension),
        toSI(2.5, unit.symbol, dimension),
        spelling,
      );
    }
  }
});

Deno.test("what is shown reads back, in both systems", () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...kinds),
      fc.constantFrom("metric" as const, "US" as const),
      fc.double({ min: 1e-3, max: 1e7, noNaN: true }),
      fc.boolean(),
      (dimension, system, magnitude, negative) => {
        const si = negative && dimension !== "temperature" ? -magnitude : magnitude;
        const text = showQuantity(si, dimension, { system, digits: 14 });
        // Fourteen digits are shown but never more than nine decimals without an exponent;
        // for a temperature they count from the zero of its scale.
        const absolute = dimension === "temperature" ? 1e-9 : 0;
        assertClose(readQuantity(text, dimension), si, { relative: 1e-13, absolute }, text);
      },
    ),
    seeded,
  );
});

Deno.test("value and uncertainty end at the same place and are within half of it", () => {
  fc.assert(
    fc.property(
      fc.double({ min: -1e6, max: 1e6, noNaN: true }),
      fc.double({ min: 1e-4, max: 1e3, noNaN: true }),
      (value, u) => {
        const [shown = "", shownU = ""] = showNumber(value, { u }).replace("−", "-").split(" ± ");
        const decimals = (text: string): number => text.split(".")[1]?.length ?? 0;
        assertEquals(decimals(shown), decimals(shownU));
        assert(Math.abs(Number(shownU) - u) <= 0.17 * u, "two digits from 1, one from 3");
        const place = Math.max(
          10 ** -decimals(shownU),
          u < 10 ? 0 : 10 ** Math.floor(Math.log10(u)),
        );
        assert(Math.abs(Number(shown) - value) <= 0.5000001 * place + 1e-9);
      },
    ),
    seeded,
  );
});
