import { assertEquals } from "@std/assert";
import { settingsOf, withValues } from "../../lib/notebook/runner/first_cell.ts";

const SOURCE = `let part = "../data/a";
let units: "metric" | "US" = "metric";
/** A span; "let no = 1" in a comment of a line is none. */
let span = "400 mm"; // as measured
let share = -0.5e-2, rest = 3;
let save = false;
let paper: "" | "A4" = "";
let kind = "a" as "a" | "b";
let bar = { height: "20 mm", plies: 2, deep: { er: [1, 2] } };
let night = {
  // logged
  times: ["0 h", "4 h"],
  words: "x" as const,
};
let links = [{ name: "wire", breaks: "17 kN" }];
let computed = 2 * 3;
let criterion: Criterion = "Tsai-Wu";
const fixed = 1;
`;

Deno.test("a first cell says what may be set: values, fields, lists of plain values, words", () => {
  const found = settingsOf(SOURCE).map(({ name, value, words }) => [name, value, words]);
  assertEquals(found, [
    ["part", "../data/a", undefined],
    ["units", "metric", ["metric", "US"]],
    ["span", "400 mm", undefined],
    ["share", -0.005, undefined],
    ["save", false, undefined],
    ["paper", "", ["", "A4"]],
    ["kind", "a", ["a", "b"]],
    ["bar.height", "20 mm", undefined],
    ["bar.plies", 2, undefined],
    ["bar.deep.er", [1, 2], undefined],
    ["night.times", ["0 h", "4 h"], undefined],
    ["night.words", "x", undefined],
    ["links", undefined, undefined],
    ["computed", undefined, undefined],
    ["criterion", "Tsai-Wu", undefined],
  ]);
});

Deno.test("values are put in as literals, each in its place, and all else stays", () => {
  const set = withValues(
    SOURCE,
    new Map<string, string | number | boolean | readonly string[]>([
      ["span", "16 in"],
      ["share", 0.25],
      ["save", true],
      ["bar.plies", 3],
      ["night.times", ["0 h", "12 h", "20 h"]],
      ["toString", "no such name"],
    ]),
  );
  const expected = SOURCE.replace('"400 mm"', '"16 in"').replace("-0.5e-2", "0.25")
    .replace("save = false", "save = true").replace("plies: 2", "plies: 3")
    .replace('["0 h", "4 h"]', '["0 h", "12 h", "20 h"]');
  assertEquals(set, expected);
});

Deno.test("whatever a value holds, it stays a text of the first cell", () => {
  const hostile = [
    '"; throw new Error("out"); "',
    "${Deno.exit(3)}",
    "`${globalThis}`",
    "\\",
    '\\"; Deno.exit(3); //',
    "a\nlet part = 3;",
    "\u2028\u2029\u0000",
    "$& $1 $` $'",
    "</script><script>alert(1)</script>",
    "*/ Deno.exit() /*",
  ];
  for (const text of hostile) {
    const set = withValues(SOURCE, new Map([["span", text], ["bar.height", text]]));
    const names = settingsOf(set).map(({ name }) => name);
    assertEquals(names, settingsOf(SOURCE).map(({ name }) => name));
    const found = new Map(settingsOf(set).map(({ name, value }) => [name, value]));
    assertEquals([found.get("span"), found.get("bar.height")], [text, text]);
    // The language itself reads the literal as the same text, and nothing beside it runs.
    const line = set.split("let span = ")[1]!.split("; // as measured")[0]!;
    assertEquals(new Function(`return (${line});`)(), text);
  }
});
