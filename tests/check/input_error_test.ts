import { type Fault, InputError } from "@laminate/notebooks/check";
import { assertEquals } from "@std/assert";

const cell = (line: number, value: string): Fault => ({
  file: "load_tests.csv",
  line,
  argument: "branch",
  value,
  wanted: "must be one of: loading, unloading",
});

Deno.test("faults that differ only in their line are one line of the message", () => {
  const faults = [cell(2, "up"), cell(3, "down"), cell(4, "up"), cell(5, "up")];
  const error = new InputError("read the part", faults);
  assertEquals(
    error.message,
    "Cannot read the part: 4 faults\n" +
      '  load_tests.csv lines 2, 4, 5: branch is "up", must be one of: loading, unloading\n' +
      '  load_tests.csv line 3: branch is "down", must be one of: loading, unloading',
  );
  assertEquals(error.faults, faults);
});

Deno.test("a fault in many lines names the first five", () => {
  const error = new InputError("x", Array.from({ length: 200 }, (_, i) => cell(i + 2, "up")));
  assertEquals(
    error.message.split("\n")[1],
    "  load_tests.csv lines 2, 3, 4, 5, 6 and 195 more: " +
      'branch is "up", must be one of: loading, unloading',
  );
});

Deno.test("a message has at most 40 faults, and says how many more there are", () => {
  const faults = Array.from({ length: 100 }, (_, i) => cell(i + 2, `word ${i}`));
  const lines = new InputError("x", faults).message.split("\n");
  assertEquals(lines.length, 42);
  assertEquals(lines[0], "Cannot x: 100 faults");
  assertEquals(lines[41], "  and 60 more");
});

Deno.test("faults without a place are not drawn together", () => {
  const fault: Fault = { argument: "span", value: 0, unit: "m", wanted: "must be above 0" };
  assertEquals(
    new InputError("x", [fault, fault]).message,
    "Cannot x: 2 faults\n  span is 0 m, must be above 0\n  span is 0 m, must be above 0",
  );
});
