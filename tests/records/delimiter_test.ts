import { InputError } from "@laminate/notebooks/check";
import { findDelimiter } from "@laminate/notebooks/records";
import { assertEquals, assertThrows } from "@std/assert";

const rows = (count: number, row: string): string => `${row}\n`.repeat(count);

Deno.test("the delimiter is one on which four rows of five agree with the headings", () => {
  // Headings and 7 of 9 rows have one semicolon: 8 of 10 lines agree.
  assertEquals(findDelimiter(`a;b,c\n${rows(7, "1;2,3")}${rows(2, "1,2")}`), ";");
  // Headings and 6 of 9 rows: 7 of 10.
  assertEquals(findDelimiter(`a;b,c\n${rows(6, "1;2,3")}${rows(3, "1,2")}`), ",");
});

Deno.test("where none agrees it is the one that the headings have most", () => {
  assertEquals(findDelimiter("a,b,c;d\n1\n2\n3\n"), ",");
  assertEquals(findDelimiter("a\n1,5\n2,5\n"), undefined);
  assertEquals(findDelimiter(""), undefined);
});

Deno.test("comments, blank rows and quoted cells have no say", () => {
  assertEquals(findDelimiter(`# a;b\n# c;d\n\nx,y\n1,2\n`), ",");
  assertEquals(findDelimiter('x,y\n"a;b",1\n"c;d",2\n"e\nf;g",3\n'), ",");
});

Deno.test("a long table is judged by its first rows", () => {
  assertEquals(findDelimiter(`x;y\n${rows(60, "1;2")}${rows(100_000, "1,2,3")}`), ";");
  assertEquals(findDelimiter(`x;y\n1;"${"long ".repeat(20_000)}"\n`), ";");
});

Deno.test("what is no text is refused", () => {
  assertThrows(() => findDelimiter(5 as never), InputError, "must be text");
});
