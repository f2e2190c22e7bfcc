import { assert, assertEquals, assertThrows } from "@std/assert";
import { DOMParser } from "linkedom";
import { InputError } from "../../lib/check/mod.ts";
import { controlChartFigure, crossingStripsFigure, type Finding } from "../../lib/charts/mod.ts";

const TEXT: Finding = { title: "A finding", description: "What is shown." };

const chart = (value = 0.45, label = "panel 1"): SVGSVGElement =>
  controlChartFigure({
    points: [
      { label, value, interval: { low: value - 0.02, high: value + 0.02 } },
      { label: "panel 2", value: 0.58, remark: label },
      { label: "panel 3", value: 0.36 },
    ],
    phases: [
      { label: "hand", from: 0, to: 1, usual: { low: 0.4, high: 0.5 } },
      { label, from: 2, to: 2, centre: 0.36, limits: { low: 0.3, high: 0.4 } },
    ],
    y: { name: "resin content", unit: { symbol: "%", perSI: 100 } },
  }, TEXT);

const strips = (value = 5, label = "long span"): SVGSVGElement =>
  crossingStripsFigure({
    strips: [
      { label, edges: [0, 5, 10].map((x) => ({ x, low: 9 - x, high: 11 - x })) },
      { label: "short span", edges: [0, 10].map((x) => ({ x, low: 4, high: 6 })) },
    ],
    region: [{ x: 4, y: 4 }, { x: 6, y: 4 }, { x: 5, y: 6 }],
    regionLabel: label,
    spots: [{ x: value, y: 5, label, reach: { x: 1, y: 2 } }],
    x: { name: "faces", unit: { symbol: "GPa", perSI: 1 }, from: 0, to: 10 },
    y: { name: "core", from: 0, to: 10 },
  }, TEXT);

Deno.test("each figure is an SVG that stands alone, the same each time, without a NaN", () => {
  for (const draw of [chart, strips]) {
    const svg = draw();
    assertEquals(svg.tagName, "svg");
    assertEquals(svg.querySelector("desc")?.textContent, "What is shown.");
    assertEquals(draw().outerHTML, svg.outerHTML);
    assert(!svg.outerHTML.includes("NaN"), "a NaN reached the picture");
  }
});

Deno.test("text from data stays text", () => {
  const hostile = `<script>alert(1)</script>"&'`;
  for (const markup of [chart(0.45, hostile).outerHTML, strips(5, hostile).outerHTML]) {
    assert(!markup.includes("<script"));
    const read = new DOMParser().parseFromString(markup, "image/svg+xml");
    assert(read.documentElement.textContent.includes("<script>alert(1)</script>"));
  }
});

Deno.test("a part that stands out is a square with its remark, the others are round", () => {
  const texts = [...chart().querySelectorAll("text")].map(({ textContent }) => textContent);
  assert(texts.filter((text) => text === "limit").length === 2 && texts.includes("mean"));
  assert(["hand", "panel 3", "usual"].every((text) => texts.includes(text)));
});

Deno.test("what cannot be drawn is refused by name", () => {
  for (const draw of [() => chart(NaN), () => strips(NaN)]) {
    assertThrows(draw, InputError, "must be a finite number");
  }
  const refused = (f: () => unknown, message: string) => assertThrows(f, InputError, message);
  const y = { name: "resin content" };
  refused(() => controlChartFigure({ points: [], phases: [], y }, TEXT), "points");
  refused(
    () => controlChartFigure({ points: [{ label: "a", value: 1 }], phases: 5, y } as never, TEXT),
    "phases",
  );
  refused(
    () =>
      controlChartFigure({
        points: [{ label: "a", value: 1 }],
        phases: [{ label: "hand", from: 0, to: 3 }],
        y,
      }, TEXT),
    "end of hand",
  );
  const strip = { label: "a", edges: [{ x: 0, low: 0, high: 1 }, { x: 1, low: 0, high: 1 }] };
  const axis = { name: "x", from: 0, to: 1 };
  refused(
    () => crossingStripsFigure({ strips: [strip, strip, strip, strip], x: axis, y: axis }, TEXT),
    "3 or fewer",
  );
  refused(() => crossingStripsFigure({ strips: [], x: axis, y: axis }, TEXT), "strips");
});
