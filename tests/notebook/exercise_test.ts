import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import {
  consoleDisplay,
  type Exercise,
  exercise,
  folded,
  judgeAnswer,
  jupyterDisplay,
  prediction,
  table,
  verdicts,
} from "../../lib/notebook/mod.ts";

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

Deno.test("slips of units are those of the kind that was asked for", () => {
  const said = (dimension: Exercise["dimension"], answer: number, text: string): string =>
    judgeAnswer({ ...SPAN, mistakes: [], dimension, answer }, text).text;
  assert(said("ratio", 0.47, "47").includes("write the % sign"));
  assert(said("bending compliance", 2.59e-6, "2.59 mm/N").includes("mm/kN for mm/N"));
  assert(said("mass", 0.4, "400 kg").includes("g for kg"));
  // 1 µm/N is 1e-6 m/N.
  assert(said("bending compliance", 2.59e-6, "2.59 µm/N").startsWith("Right"));
});

Deno.test("a plain number may be said as times, and is asked for as a plain number", () => {
  const times: Exercise = { ...SPAN, mistakes: [], dimension: "count", answer: 3.73 };
  for (const text of ["3.7", "3.7 times", "3.7×", "3,7 x"]) {
    assertEquals(judgeAnswer(times, text).verdict, "right", text);
  }
  assertEquals(judgeAnswer(times, "many").text, "A plain number, please, such as 4.");
});

Deno.test("a hint is given with a number that is none of the usual mistakes", () => {
  const { text } = judgeAnswer({ ...SPAN, hint: "How often does the span go into it?" }, "3 mm");
  assertEquals(text, "Not yet: that is too large. How often does the span go into it?");
});

Deno.test("a prediction is noted without a verdict, and judged beside what was written", () => {
  const [right, wrong, none] = [
    prediction(SPAN, "1 mm"),
    prediction(SPAN, "4 mm"),
    prediction(SPAN),
  ];
  assert(right[consoleDisplay]().endsWith("Noted: 1 mm. The verdict comes later."));
  assert(!right[consoleDisplay]().includes("Right"));
  assert(prediction(SPAN, "1 kg")[consoleDisplay]().includes("with its unit, please"));
  assertEquals(verdicts([right, wrong, none])[consoleDisplay]().split("\n"), [
    "Predicted and true",
    `1. You wrote 1 mm. Right: 1 mm. ${SPAN.solution}`,
    `2. You wrote 4 mm. Not yet: ${SPAN.mistakes![0]!.because}`,
    "3. No prediction yet.",
  ]);
  const hostile = prediction(SPAN, `<img src=x onerror="alert(1)">`);
  for (const shown of [hostile, verdicts([hostile])]) {
    assert(!String(shown[jupyterDisplay]()["text/html"]).includes("<img"));
  }
  assertThrows(() => verdicts([]), InputError, "predictions");
  assertThrows(() => verdicts([{} as never]), InputError, "answer");
  assertThrows(() => prediction({ ...SPAN, solution: "" }), InputError, "solution");
});

Deno.test("a folded part keeps its text, and refuses what does not show itself", () => {
  const shown = folded("For <later>", table([{ a: 1 }], { caption: "T", columns: [{ key: "a" }] }));
  const html = String(shown[jupyterDisplay]()["text/html"]);
  assert(html.startsWith('<details class="folded"><summary>For &lt;later&gt;</summary>'), html);
  assert(html.includes("<table"));
  assertThrows(() => folded("For later", {} as never), InputError, "must show itself");
});
