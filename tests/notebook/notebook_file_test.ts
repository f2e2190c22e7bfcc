import { assert, assertEquals, assertThrows } from "@std/assert";
import fc from "fast-check";
import { parseNotebook, writeNotebook } from "../../lib/notebook/runner/notebook_file.ts";
import { outputsOf } from "../../lib/notebook/runner/outputs.ts";
import { partOf, withPart } from "../../lib/notebook/runner/parameters.ts";
import { endsInValue } from "../../lib/notebook/runner/cell_value.ts";
import type { Message } from "../../lib/notebook/runner/wire.ts";
import { notebookOf } from "./_fixtures.ts";

const message = (type: string, content: Record<string, unknown>): Message => ({
  header: { msg_id: "1", msg_type: type, session: "", username: "", date: "", version: "5.3" },
  parent_header: {},
  metadata: {},
  content,
});

Deno.test("a notebook that is read and written gives the same bytes, whatever its keys' order", () => {
  const notebook = notebookOf("# Title\n\ntext", 'console.log("a");\n1;');
  const text = writeNotebook(parseNotebook(writeNotebook(notebook), "a"));
  const shuffled = JSON.parse(
    text,
    (_, value) =>
      typeof value === "object" && value !== null && !Array.isArray(value)
        ? Object.fromEntries(Object.entries(value).reverse())
        : value,
  );
  assertEquals(writeNotebook(parseNotebook(JSON.stringify(shuffled), "a")), text);
  assert(text.startsWith('{\n "cells": [\n  {\n   "cell_type"') && text.endsWith("}\n"), text);
});

Deno.test("any source and output comes back as it was: lines, quotes and odd line ends", () => {
  fc.assert(
    fc.property(
      fc.string({ unit: fc.constantFrom("a", "\n", "\r", '"', "\\", "é", "\u2028") }),
      (s) => {
        const [cell] = notebookOf("x").cells;
        const outputs = [{ output_type: "stream" as const, name: "stdout", text: s }];
        const notebook = { ...notebookOf("x"), cells: [{ ...cell!, source: s, outputs }] };
        const [back] = parseNotebook(writeNotebook(notebook), "a").cells;
        assertEquals(back?.source, s);
        assertEquals(back?.outputs, outputs);
      },
    ),
    { seed: 20261125, numRuns: 300 },
  );
});

Deno.test("what is no notebook of format 4.5 with ids is refused, with its name", () => {
  const cell = { cell_type: "code", id: "a", metadata: {}, source: "", outputs: [] };
  const of = (change: object): string =>
    JSON.stringify({ cells: [cell], metadata: {}, nbformat: 4, nbformat_minor: 5, ...change });
  for (
    const [text, why] of [
      ["{", "JSON"],
      ["null", "not of format 4"],
      [of({ nbformat: 3 }), "not of format 4"],
      [of({ nbformat_minor: 4 }), "older than 4.5"],
      [of({ cells: [{ ...cell, id: undefined }] }), "cell 1 lacks an id"],
      [of({ cells: [{ ...cell, source: 3 }] }), "cell 1 lacks an id, a type or its source"],
      [of({ cells: [cell, cell] }), "two cells share an id"],
    ] as const
  ) {
    assertThrows(() => parseNotebook(text, "bad.ipynb"), Error, "bad.ipynb is not a notebook");
    assertThrows(() => parseNotebook(text, "bad.ipynb"), Error, why);
  }
});

Deno.test("streams join until another output stands between them", () => {
  const out = (text: string): Message => message("stream", { name: "stdout", text });
  const found = outputsOf([
    out("a\n"),
    out("b\n"),
    message("stream", { name: "stderr", text: "c\n" }),
    message("execute_result", { data: { "text/plain": "1" }, metadata: {}, execution_count: 3 }),
    out("d\n"),
    message("comm_open", {}),
  ]);
  assertEquals(found, [
    { output_type: "stream", name: "stdout", text: "a\nb\n" },
    { output_type: "stream", name: "stderr", text: "c\n" },
    {
      output_type: "execute_result",
      data: { "text/plain": "1" },
      metadata: {},
      execution_count: 3,
    },
    { output_type: "stream", name: "stdout", text: "d\n" },
  ]);
});

Deno.test("a display is updated in its place, and cleared outputs are gone", () => {
  const display = (type: string, text: string): Message =>
    message(type, { data: { "text/plain": text }, metadata: {}, transient: { display_id: "d" } });
  assertEquals(
    outputsOf([display("display_data", "a"), display("update_display_data", "b")]),
    [{ output_type: "display_data", data: { "text/plain": "b" }, metadata: {} }],
  );
  const out = message("stream", { name: "stdout", text: "x" });
  assertEquals(outputsOf([out, message("clear_output", { wait: false })]), []);
  assertEquals(outputsOf([out, message("clear_output", { wait: true })]).length, 1);
  assertEquals(
    outputsOf([out, message("clear_output", { wait: true }), display("display_data", "a")]).length,
    1,
  );
});

Deno.test("an error is kept without the machine's paths in its trace", () => {
  const error = message("error", {
    ename: "TypeError",
    evalue: "no",
    traceback: ["TypeError: no", "    at file:///home/somebody/x.ts:1:2"],
  });
  assertEquals(outputsOf([error]), [
    { output_type: "error", ename: "TypeError", evalue: "no", traceback: ["TypeError: no"] },
  ]);
});

Deno.test("the part is read from and put into the parameters cell, and nowhere else", () => {
  const notebook = notebookOf('let part = "b";', [
    'let part = "data/a"; // ours\nlet n = 3;',
    "parameters",
  ]);
  assertEquals(partOf(notebook), "data/a");
  const other = withPart(notebook, 'c "d" $& \\');
  assertEquals(partOf(other), 'c "d" $& \\');
  assertEquals(other.cells[0], notebook.cells[0]);
  assertEquals(other.cells[1]?.source, 'let part = "c \\"d\\" $& \\\\"; // ours\nlet n = 3;');
  assertEquals(partOf(notebookOf('let part = "b";')), undefined);
  assertThrows(
    () => withPart(notebookOf(['const part = "b";', "parameters"]), "c"),
    Error,
    "let part",
  );
});

Deno.test("which cells end in a value that ought to show", () => {
  for (
    const source of [
      "NaN;",
      "const a = 3;\na / 0;",
      "table(\n  rows,\n  {\n    caption: 1,\n  },\n);",
      "markdown`\n# Title\ntext`;",
      "await read(part);",
      "x; // remark\n// another",
      "new Thing();",
      "-value;",
      "[1, 2];",
      "forEachOf(x);",
      "letters.length;",
    ]
  ) assert(endsInValue(source), source);
  for (
    const source of [
      "",
      "const a = 3;",
      "const a = [\n  1,\n];",
      'import { a } from "b";',
      "if (a) {\n  b();\n}",
      "for (const a of b) {\n  c(a);\n}",
      "void main();",
      "a = 3;",
      "a.b += 3;",
      "function f() {\n  return 1;\n}",
      "// only a remark",
      'throw new Error("x");',
      "{\n  a();\n}",
    ]
  ) assert(!endsInValue(source), source);
});
