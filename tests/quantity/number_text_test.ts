import { InputError } from "../../lib/check/mod.ts";
import { readNumber } from "../../lib/quantity/mod.ts";
import { assertEquals, assertThrows } from "@std/assert";

Deno.test("numbers as people write them", () => {
  const cases: readonly [string, number][] = [
    ["12.5", 12.5],
    [" .25 ", 0.25],
    ["5.", 5],
    ["+3", 3],
    ["−3", -3],
    ["-0", 0],
    ["5.4e-6", 5.4e-6],
    ["1/4", 0.25],
    ["1 1/2", 1.5],
    ["1-1/2", 1.5],
    ["-1 1/2", -1.5],
    ["1½", 1.5],
    ["½", 0.5],
    ["-⅜", -0.375],
    ["3⁄8", 0.375],
    ["5/4", 1.25],
  ];
  for (const [text, value] of cases) assertEquals(readNumber(text), value, text);
});

Deno.test("a comma or grouped thousands where they can mean one thing", () => {
  const cases: readonly [string, number][] = [
    ["1,5", 1.5],
    [",5", 0.5],
    ["1,50", 1.5],
    ["0,500", 0.5],
    ["1234,567", 1234.567],
    ["1,5e3", 1500],
    ["1.234,5", 1234.5],
    ["1.234.567", 1234567],
    ["1.234.567,8", 1234567.8],
    ["1,234.5", 1234.5],
    ["1,234,567", 1234567],
    ["-1,234,567.25", -1234567.25],
  ];
  for (const [text, value] of cases) assertEquals(readNumber(text), value, text);
});

Deno.test("a comma that could be either is refused with both readings", () => {
  assertThrows(() => readNumber("1,500"), InputError, "could be 1500 or 1.5:");
  assertThrows(() => readNumber("12,345"), InputError, "could be 12345 or 12.345:");
});

Deno.test("what is no number is refused, by kind", () => {
  const cases: readonly [unknown, string][] = [
    ["", "must be a number such as"],
    ["twelve", "must be a number such as"],
    ["1.2.3", "must be a number such as"],
    ["1,2,3", "must be a number such as"],
    ["01,234,567", "must be a number such as"],
    ["1 500", "must be a number such as"],
    ["0x10", "must be a number such as"],
    ["=1+2", "must be a number such as"],
    ["5 N", "must be a number such as"],
    ["NaN", "must be a finite number"],
    ["-Infinity", "must be a finite number"],
    ["1e400", "beyond the range of numbers"],
    ["1/0", "must not divide by 0"],
    ["1 3/2", "must have a fraction below 1"],
    [12, "must be text"],
    [undefined, "must be text"],
  ];
  for (const [text, message] of cases) {
    assertThrows(() => readNumber(text as string), InputError, message, String(text));
  }
});
