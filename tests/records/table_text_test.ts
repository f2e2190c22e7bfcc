import { InputError } from "@laminate/notebooks/check";
import { tableText } from "@laminate/notebooks/records";
import { assertEquals, assertThrows } from "@std/assert";

const cell = (text: string): string =>
  tableText({ headings: ["a", "b"], rows: [["x", text]] }).slice("a,b\nx,".length, -1);

Deno.test("a text that a spreadsheet would run gets an apostrophe; a number does not", () => {
  for (
    const [text, written] of [
      ["=1+2", "'=1+2"],
      ["+1", "'+1"],
      ["-1", "'-1"],
      ["@SUM(A1)", "'@SUM(A1)"],
      ["＝1", "'＝1"],
      [" =1", "' =1"],
      ["\t1", "'\t1"],
      ["\r1", '"\'\r1"'],
      ["'=1", "''=1"],
      ["1-2", "1-2"],
      ["'tis", "'tis"],
      ["=cmd|' /C calc'!A1", "'=cmd|' /C calc'!A1"],
      ['=HYPERLINK("x","y")', `"'=HYPERLINK(""x"",""y"")"`],
    ] as const
  ) assertEquals(cell(text), written);
  assertEquals(tableText({ headings: ["a"], rows: [[-1.5], [1e-7], [-0]] }), "a\n-1.5\n1e-7\n0\n");
});

Deno.test("cells are quoted where they must be", () => {
  assertEquals(cell("a, b"), '"a, b"');
  assertEquals(cell('12" board'), '"12"" board"');
  assertEquals(cell("one\ntwo"), '"one\ntwo"');
  assertEquals(cell(" a "), '" a "');
  assertEquals(tableText({ headings: ["a", "b"], rows: [["#3", undefined]] }), 'a,b\n"#3",\n');
  assertEquals(tableText({ headings: ["a"], rows: [[""], [undefined]] }), 'a\n""\n""\n');
});

Deno.test("line ends and the byte order mark are as told", () => {
  const table = { headings: ["a"], rows: [[1]] };
  assertEquals(tableText(table, { lineEnd: "CRLF", byteOrderMark: true }), "\ufeffa\r\n1\r\n");
});

Deno.test("what cannot be written is refused, all at once", () => {
  const error = assertThrows(
    () => tableText({ headings: ["a", "b"], rows: [[1, NaN], [1], [Infinity, 2]] }),
    InputError,
    "Cannot write the table: 3 faults",
  );
  assertEquals(error.faults.map(({ argument }) => argument), [
    "b in row 1",
    "number of cells in row 2",
    "a in row 3",
  ]);
  assertThrows(() => tableText({ headings: [], rows: [] }), InputError, "headings");
  for (const damaged of ["\ud83d", "a\0", "a\ufffd"]) {
    assertThrows(
      () => tableText({ headings: ["a"], rows: [[damaged]] }),
      InputError,
      "must be whole text",
    );
  }
  assertThrows(
    () => tableText({ headings: ["a"], rows: undefined as never }),
    InputError,
    "rows is missing",
  );
});
