import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { type Exercise, exercise, judgeAnswer, jupyterDisplay } from "../../lib/notebook/mod.ts";

const SPAN: Exercise = {
  question: "The beam bends 8 mm at 400 mm span. How far at 200 mm, by bending alone?",
  answer: 0.001,
  dimension: "length",
  mistakes: [
    { factor: 4, because: "that would be half: bending goes with the cube of the span." },
    { factor: 2, because: "that is a quarter: bending goes with the cube of the span." },
  ],
  solution: "8 mm × (1/2)³ = 1 mm",
};

Deno.test("a right number counts in any unit, within the tolerance", () => {
  for (const text of ["1 mm", "0.001 m", "1,0 mm", "0.04 in", "1.02 mm"]) {
    assertEquals(judgeAnswer(SPAN, text).verdict, "right", text);
  }
  assertEquals(judgeAnswer(SPAN, "1.04 mm").verdict, "not right");
});

Deno.test("the question's own mistakes come before the slips that any question knows", () => {
  assertEquals(judgeAnswer(SPAN, "4 mm").text, `Not yet: ${SPAN.mistakes![0]!.because}`);
  assertEquals(judgeAnswer(SPAN, "2 mm").text, `Not yet: ${SPAN.mistakes![1]!.because}`);
});

Deno.test("slips of units, decimal point, sides and inches are told apart from a wrong number", () => {
  const cases = [
    ["1 m", "mm for m"],
    ["0.001 mm", "m for mm"],
    ["10 mm", "decimal point"],
    [
      "0.1 mm",
      "decimal point",
    ],
    ["25.4 mm", "inches"],
    ["0.5 mm", "half"],
  ] as const;
  for (const [text, hint] of cases) {
    const { verdict, text: said } = judgeAnswer(SPAN, text);
    assertEquals(verdict, "usual mistake", text);
    assert(said.includes(hint), `${text}: ${said}`);
  }
  const { verdict, text } = judgeAnswer(SPAN, "3 mm");
  assertEquals([verdict, text.includes("too large")], ["not right", true]);
});

Deno.test("a number without its unit, or of another kind, is asked for again", () => {
  for (const text of ["1", "one", "1 kg", "", "NaN mm"]) {
    assertEquals(judgeAnswer(SPAN, text).verdict, "cannot be read", text);
  }
});

Deno.test("the right number is told only to those who found it", () => {
  for (const text of ["3 mm", "4 mm", "1 kg"]) {
    assert(!judgeAnswer(SPAN, text).text.includes("1 mm"), text);
  }
});

Deno.test("an exercise shows its question, and its text stays text", () => {
  const hostile = { ...SPAN, question: `<script>alert(1)</script>"` };
  const html = String(exercise(hostile)[jupyterDisplay]()["text/html"]);
  assert(!html.includes("<script>"));
  assert(html.includes("&lt;script&gt;"));
});

Deno.test("an exercise that cannot be meant is refused", () => {
  assertThrows(() => judgeAnswer({ ...SPAN, answer: 0 }, "1 mm"), InputError, "must not be 0");
  assertThrows(() => judgeAnswer({ ...SPAN, answer: NaN }, "1 mm"), InputError, "answer");
  assertThrows(() => judgeAnswer({ ...SPAN, tolerance: 2 }, "1 mm"), InputError, "tolerance");
  assertThrows(() => exercise({ ...SPAN, question: " " }), InputError, "question");
});
