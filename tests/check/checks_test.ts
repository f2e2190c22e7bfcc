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

Deno.test("a value of a shape is given back; a part that is not is named, by its label where it has one", () => {
  const shape = {
    name: "text",
    "remark?": "words",
    show: "function",
    bars: [{ label: "words", value: "positive" }],
    limit: [null, "number"],
    moduli: { each: "nonNegative" },
  } as const;
  const sound = {
    ...{ name: "sole", show: () => "", limit: null, moduli: { E: 0 } },
    bars: [{ label: "ply 1", value: 1 }],
  };
  assertEquals(check.shape("figure", sound, shape), sound);
  for (
    const [change, said] of [
      [{ name: " " }, 'name of figure is " ", must be a word or more'],
      [{ remark: 3 }, "remark of figure is 3, must be a text"],
      [{ show: "x" }, 'show of figure is "x", must be a function'],
      [{ bars: undefined }, "bars of figure is missing, must be a list"],
      [{ bars: [null] }, "entry 1 of bars of figure is null, must be an object"],
      [{ bars: [{ label: "ply 2", value: 0 }] }, "value of ply 2 is 0, must be above 0"],
      [{ limit: NaN }, "limit of figure is NaN, must be a finite number"],
      [{ moduli: { G: -1 } }, "G of moduli of figure is -1, must be 0 or above"],
      [{ moduli: [] }, "moduli of figure is a list of 0, must be an object"],
    ] as const
  ) {
    assertThrows(
      () => check.shape<object>("figure", { ...sound, ...change }, shape),
      InputError,
      `Cannot weigh the part: ${said}`,
    );
  }
});
