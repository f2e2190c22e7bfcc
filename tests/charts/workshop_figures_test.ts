import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import {
  type NestedPiece,
  nestingFigure,
  timelineFigure,
  type TimelineSpan,
} from "../../lib/charts/mod.ts";

const TEXT = { title: "A finding", description: "What is shown." };
const PIECE: NestedPiece = { label: "7", fromStart: 0, fromEdge: 0, length: 1, width: 0.5 };
const nest = (pieces: readonly NestedPiece[], stockLength = 2): SVGSVGElement =>
  nestingFigure({
    pieces,
    stockLength,
    stockWidth: 1,
    unit: { symbol: "mm", perSI: 1000 },
  }, TEXT);
const line = (spans: readonly TimelineSpan[]): SVGSVGElement =>
  timelineFigure({
    rows: [{ label: "pot 1", spans }],
    x: "clock",
    showTime: (seconds) => `t${seconds}`,
  }, TEXT);

Deno.test("a nesting is to scale: a square piece is drawn square", () => {
  const [blank] = nest([{ ...PIECE, length: 0.5 }]).querySelectorAll("rect");
  const side = (name: string): number => Number(blank!.getAttribute(name));
  // Rectangles are inset by nothing, so that the sides agree to the rounding of the picture.
  assert(Math.abs(side("width") / side("height") - 1) < 0.01, blank!.outerHTML);
});

Deno.test("each piece has its label, and sheets lie side by side", () => {
  const svg = nest([PIECE, { ...PIECE, label: "8", sheet: 2 }]);
  const labels = [...svg.querySelectorAll("text")].map(({ textContent }) => textContent);
  assert(labels.includes("7") && labels.includes("8"));
  // Two blanks and two sheets.
  assertEquals(svg.querySelectorAll("rect").length, 4);
  assert(svg.outerHTML.includes("along the sheets [mm]"));
});

Deno.test("a piece that does not fit its roll is refused", () => {
  assertThrows(() => nest([{ ...PIECE, fromStart: 1.2 }]), InputError, "end of 7");
  assertThrows(() => nest([{ ...PIECE, fromEdge: 0.6 }]), InputError, "edge of 7");
  assertThrows(() => nest([{ ...PIECE, sheet: 0 }]), InputError, "sheet of 7");
  assertThrows(() => nest([PIECE], 0), InputError, "length of the stock");
  assertThrows(() => nest([]), InputError, "pieces");
});

Deno.test("a timetable has one key entry a kind and round times at its axis", () => {
  const texts = [
    ...line([
      { what: "mix", from: 0, to: 240 },
      { what: "lay", from: 240, to: 2400 },
      { what: "mix", from: 2400, to: 2700 },
    ]).querySelectorAll("text"),
  ].map(({ textContent }) => textContent);
  assertEquals(texts.filter((text) => text === "mix").length, 1);
  // 45 minutes in at most eight steps of those that a clock shows well: ten minutes.
  assertEquals(texts.filter((text) => /^t\d+$/.test(text)), [
    "t0",
    "t600",
    "t1200",
    "t1800",
    "t2400",
  ]);
});

Deno.test("a stretch that ends before it begins, and a fourth kind, are refused", () => {
  assertThrows(() => line([{ what: "mix", from: 5, to: 5 }]), InputError, "after its beginning");
  assertThrows(() => line([]), InputError, "spans of pot 1");
  const spans = ["a", "b", "c", "d"].map((what, i) => ({ what, from: i, to: i + 1 }));
  assertThrows(() => line(spans), InputError, "3 or fewer");
});
