import { checksFor, InputError } from "@laminate/notebooks/check";
import { assertEquals, assertThrows } from "@std/assert";

const check = checksFor("weigh the part");

Deno.test("an object is given back, and what is none is refused", () => {
  const part = { mass: 1 };
  assertEquals(check.object("part", part), part);
  for (
    const [none, said] of [[undefined, "missing"], [null, "null"], ["x", '"x"'], [[1], "a list"]]
  ) {
    assertThrows(
      () => check.object("part", none),
      InputError,
      `Cannot weigh the part: part is ${said}`,
    );
  }
});

Deno.test("words are given back, and what says nothing is refused", () => {
  assertEquals(check.text("name", "sole"), "sole");
  for (const none of ["", " ", 3, undefined]) {
    assertThrows(() => check.text("name", none as string), InputError, "must be a word or more");
  }
});

Deno.test("figures leave together unless one of them is no number", () => {
  const figures = { name: "sole", mass: 1, skins: [{ mass: 0.5 }, { mass: 0.4 }], note: undefined };
  assertEquals(check.results(figures), figures);
  assertThrows(
    () => check.results({ ...figures, skins: [{ mass: 0.5 }, { mass: NaN }] }),
    InputError,
    "mass is NaN, beyond the range of numbers",
  );
  assertThrows(() => check.results({ widths: [1, Infinity] }), InputError, "widths is Infinity");
  assertThrows(
    () => check.results({ shear: Float64Array.of(1, -Infinity) }),
    InputError,
    "-Infinity, beyond",
  );
});
