import { assert, assertEquals, assertThrows } from "@std/assert";
import { DOMParser } from "linkedom";
import { InputError } from "../../lib/check/mod.ts";
import {
  barsFigure,
  choiceMapFigure,
  envelopeFigure,
  type Finding,
  frontFigure,
  intervalsFigure,
  linesFigure,
  loadTestFigure,
  modeMapFigure,
  nestingFigure,
  polarFigure,
  residualsFigure,
  sheetsFigure,
  timelineFigure,
} from "../../lib/charts/mod.ts";

const TEXT: Finding = { title: "A finding", description: "What is shown." };
const MM = { symbol: "mm", perSI: 1000 };
const N = { symbol: "N", perSI: 1 };

/** One of each figure; a bad number goes to a coordinate, a text to a label. */
function figures(value = 1, label = "panel"): readonly (() => SVGSVGElement)[] {
  const point = { load: 10, deflection: 1e-3 * value, branch: "loading" as const };
  return [
    () =>
      intervalsFigure({
        rows: [{ label, value, low: 0.9, high: 1.1, remark: label }],
        bands: [{ label: "usual", low: 0.8, high: 1.2 }],
        reference: { value: 1, label: "as predicted" },
        x: { name: "ratio" },
      }, TEXT),
    () =>
      linesFigure({
        lines: [{ label, points: [{ x: 0, y: 0 }, { x: 1, y: value }] }],
        x: { name: "radius", unit: MM },
        y: { name: "mass" },
        xMarks: [{ value: 0.5, label }],
        yMarks: [{ value: 0.5, label }],
        spots: [{ x: 0.5, y: 0.5, label }],
      }, TEXT),
    () =>
      loadTestFigure({
        readings: [
          { ...point, load: 0, deflection: 0 },
          point,
          { ...point, branch: "unloading", doubtful: true },
        ],
        fitted: { intercept: 0, slope: 1e-4 },
        predicted: { slope: 1e-4, low: 0.9e-4, high: 1.1e-4 },
        loadUnit: N,
        deflectionUnit: MM,
      }, { ...TEXT, title: label }),
    () =>
      residualsFigure({
        residuals: [{ load: 1, residual: 1e-5 * value }, {
          load: 2,
          residual: -1e-5,
          doubtful: true,
        }],
        resolution: 1e-5,
        loadUnit: N,
        deflectionUnit: MM,
      }, { ...TEXT, title: label }),
    () =>
      choiceMapFigure({
        series: [{ label, choices: [{ mass: 1, deflection: 1e-3 * value, label }] }],
        chosen: { mass: 1, deflection: 1e-3, label },
        limit: 2e-3,
        massUnit: { symbol: "kg/m²", perSI: 1 },
        deflectionUnit: MM,
      }, TEXT),
    () =>
      barsFigure({
        bars: [{ label, value, remark: label, interval: { low: 0.5, high: 1.5 }, stands: true }],
        x: { name: "utilisation" },
        limit: { value: 1, label },
      }, TEXT),
    () =>
      polarFigure({
        curves: [
          { label, values: [value, 1, 2, 1, 2, 1, 2, 1] },
          { label: "round", values: Array(8).fill(1) },
        ],
        radius: { name: "modulus", unit: MM },
      }, TEXT),
    () =>
      envelopeFigure({
        curves: [{
          label,
          points: [[1, value], [-1, 1], [-1, -1], [1, -1]].map(([x, y]) => ({ x: x!, y: y! })),
        }],
        x: { name: "Nx" },
        y: { name: "Ny" },
        load: { x: 0.5, y: 0.5, label },
      }, TEXT),
    () =>
      frontFigure({
        designs: [{ x: 1, y: value }, { x: 2, y: 2 }],
        front: [{ x: 1, y: value }],
        chosen: { x: 1, y: 1, label },
        limit: { value: 2, label },
        x: { name: "mass" },
        y: { name: "deflection" },
      }, TEXT),
    () =>
      modeMapFigure({
        cells: [[1, 1], [1, 2], [2, 1], [2, value + 1]].map(([x, y], i) => ({
          x: x!,
          y: y!,
          mode: i > 1 ? label : "face",
        })),
        x: { name: "face" },
        y: { name: "core" },
        chosen: { x: 1, y: 1, label },
      }, TEXT),
    () =>
      sheetsFigure({
        sheets: [
          { label, remark: label, kappaX: value, kappaY: -0.1, kappaXY: 0.2 },
          { label: "flat", kappaX: 0, kappaY: 0, kappaXY: 0 },
        ],
        lengthX: 0.5,
        lengthY: 0.4,
      }, TEXT),
    () =>
      nestingFigure({
        pieces: [{ label, fromStart: value, fromEdge: 0, length: 0.5, width: 0.5 }],
        stockLength: 2,
        stockWidth: 1,
        unit: MM,
      }, TEXT),
    () =>
      timelineFigure({
        rows: [{ label, spans: [{ what: label, from: 0, to: 60 * value }], remark: label }],
        x: "time",
        showTime: (seconds) => `${seconds / 60} min`,
      }, TEXT),
  ];
}

Deno.test("each figure is an SVG that stands alone, with its finding and its text alternative", () => {
  for (const draw of figures()) {
    const svg = draw();
    assertEquals(svg.tagName, "svg");
    assertEquals(svg.getAttribute("xmlns"), "http://www.w3.org/2000/svg");
    assertEquals(svg.getAttribute("role"), "img");
    assert(svg.querySelector("title")?.textContent);
    assertEquals(svg.querySelector("desc")?.textContent, "What is shown.");
    assert(!svg.outerHTML.includes("NaN"), "a NaN reached the picture");
  }
});

Deno.test("the same data give the same bytes, however many figures were drawn before", () => {
  const first = figures().map((draw) => draw().outerHTML);
  const second = figures().map((draw) => draw().outerHTML);
  assertEquals(second, first);
});

Deno.test("text from data stays text", () => {
  const hostile = `<script>alert(1)</script>"&'`;
  for (const draw of figures(1, hostile)) {
    const markup = draw().outerHTML;
    assert(!markup.includes("<script"), "markup came through");
    const read = new DOMParser().parseFromString(markup, "image/svg+xml");
    assertEquals(read.querySelectorAll("script").length, 0);
    assert(read.documentElement.textContent.includes("<script>alert(1)</script>"));
  }
});

Deno.test("a coordinate that is no number is refused, not left out", () => {
  for (const bad of [NaN, Infinity]) {
    for (const draw of figures(bad)) {
      assertThrows(draw, InputError, "must be a finite number");
    }
  }
});

Deno.test("a figure without a finding, a description or data is refused", () => {
  const data = { rows: [{ label: "a", value: 1, low: 0, high: 2 }], x: { name: "ratio" } };
  assertThrows(() => intervalsFigure(data, { ...TEXT, title: " " }), InputError, "finding");
  assertThrows(() => intervalsFigure(data, { ...TEXT, description: "" }), InputError, "shows");
  assertThrows(() => intervalsFigure({ ...data, rows: [] }, TEXT), InputError, "rows");
});

Deno.test("more lines than dashes can tell apart are refused", () => {
  const line = { label: "a", points: [{ x: 0, y: 0 }, { x: 1, y: 1 }] };
  assertThrows(
    () =>
      linesFigure({
        lines: [line, line, line, line, line],
        x: { name: "x" },
        y: { name: "y" },
      }, TEXT),
    InputError,
    "4 or fewer",
  );
});

Deno.test("a long finding is set in lines and the figure grows for them", () => {
  const height = (title: string): number =>
    Number(
      intervalsFigure({
        rows: [{ label: "a", value: 1, low: 0, high: 2 }],
        x: { name: "ratio" },
      }, { ...TEXT, title }).getAttribute("height"),
    );
  assert(height("word ".repeat(60)) > height("word"));
});
