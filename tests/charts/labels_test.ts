import { assert, assertEquals } from "@std/assert";
import {
  barsFigure,
  type Finding,
  frontFigure,
  intervalsFigure,
  linesFigure,
  modeMapFigure,
} from "../../lib/charts/mod.ts";

const TEXT: Finding = { title: "A finding", description: "What is shown." };

const texts = (svg: SVGSVGElement): string[] =>
  [...svg.querySelectorAll("text")].map(({ textContent }) => textContent ?? "");

/** Where a text starts across the figure [px]. */
function startOf(svg: SVGSVGElement, words: string): number {
  const text = [...svg.querySelectorAll("text")].find(({ textContent }) => textContent === words)!;
  const [, x] = text.getAttribute("transform")!.match(/translate\(([\d.]+),/)!;
  const [, dx = "0"] = text.parentElement!.getAttribute("transform")?.match(/\(([\d.-]+),/) ?? [];
  return Number(x) + Number(dx);
}

Deno.test("lines of a finding are even: no word stands alone in the last", () => {
  const finding = "First to go is layer 5 (bag side), compression along the fibres, used to 88 %";
  const svg = barsFigure({ bars: [{ label: "a", value: 1 }], x: { name: "x" } }, {
    ...TEXT,
    title: finding,
  });
  const lines = [...svg.querySelectorAll(".finding")].map(({ textContent }) => textContent!);
  assertEquals(lines.join(" "), finding);
  assertEquals(lines.length, 2);
  assert(Math.abs(lines[0]!.length - lines[1]!.length) < 15, lines.join("|"));
});

Deno.test("words beside a bar or a point do not run over the line to compare with", () => {
  const bars = (value: number): SVGSVGElement =>
    barsFigure({
      bars: [{ label: "width", value, remark: "not enough" }, { label: "span", value: 2 }],
      x: { name: "evidence" },
      limit: { value: 1, label: "worth a look" },
    }, TEXT);
  const line = bars(0.9).querySelector("g[stroke-dasharray] line")!;
  const dashed = Number(line.getAttribute("x1"));
  assert(startOf(bars(0.9), "not enough") >= dashed, "just short of the line: behind it");
  assert(startOf(bars(0.2), "not enough") < dashed, "far from the line: beside its bar");
  const row = (high: number): SVGSVGElement =>
    intervalsFigure({
      rows: [
        { label: "a", value: high, low: high, high, remark: "softer" },
        { label: "b", value: 2, low: 0, high: 2 },
      ],
      reference: { value: 1, label: "as predicted" },
      x: { name: "ratio" },
    }, TEXT);
  assertEquals(startOf(row(0.95), "softer"), startOf(row(1), "softer"));
  assert(startOf(row(0.2), "softer") < startOf(row(1), "softer"));
});

Deno.test("a row stands out because it is said to, or else for its remark", () => {
  const squares = (stands?: boolean): number => {
    const svg = intervalsFigure({
      rows: [{
        ...{ label: "a", value: 1, low: 0, high: 2, remark: "measured" },
        ...(stands === undefined ? {} : { stands }),
      }],
      x: { name: "ratio" },
    }, TEXT);
    return svg.querySelectorAll('[fill="#c9641a"]').length;
  };
  assertEquals([squares(), squares(true), squares(false)], [1, 1, 0]);
});

Deno.test("designs ruled out are crosses with a key, and a named point of the front has its name", () => {
  const front = [{ x: 1, y: 3, label: "one ply" }, { x: 2, y: 1 }];
  const svg = frontFigure({
    designs: front,
    front,
    ruledOut: { designs: [{ x: 1.5, y: 0.5 }], label: "too weak" },
    x: { name: "mass" },
    y: { name: "deflection" },
  }, TEXT);
  assert(texts(svg).includes("× too weak") && texts(svg).includes("one ply"));
});

Deno.test("a mode has the same ground in maps that name the same modes", () => {
  const grounds = (here: readonly string[], modes?: readonly string[]): string[] => {
    const svg = modeMapFigure({
      cells: [0, 1].flatMap((x) => [0, 1].map((y) => ({ x, y, mode: here[x]! }))),
      x: { name: "face" },
      y: { name: "core" },
      ...(modes === undefined ? {} : { modes }),
    }, TEXT);
    return [...svg.querySelectorAll("g[fill-opacity], rect[fill-opacity]")].map((rect) =>
      `${rect.getAttribute("fill")} ${rect.getAttribute("fill-opacity")}`
    );
  };
  const all = ["core shear", "face compression", "wrinkling"];
  const of = (here: readonly string[]): string => grounds(here, all).at(-1)!;
  assertEquals(of(["core shear", "wrinkling"]), of(["face compression", "wrinkling"]));
  assert(grounds(["a", "b"])[0] !== grounds(["a", "b"]).at(-1));
});

Deno.test("names of points near to each other stand on different heights, each with a stem", () => {
  const svg = linesFigure({
    lines: [{ label: "corner", points: [{ x: 0, y: 0 }, { x: 28, y: 120 }] }],
    spots: [
      { x: 12, y: 11, label: "sole to hull side" },
      { x: 10, y: 15, label: "bearer to hull" },
      { x: 26, y: 100, label: "far" },
    ],
    x: { name: "radius" },
    y: { name: "mass" },
  }, TEXT);
  const heightOf = (words: string): number => {
    const text = [...svg.querySelectorAll("text")].find(({ textContent }) =>
      textContent === words
    )!;
    return Number(text.parentElement!.getAttribute("transform")!.match(/,(-?[\d.]+)\)/)![1]);
  };
  assertEquals(heightOf("far"), -14);
  assert(Math.abs(heightOf("bearer to hull") - heightOf("sole to hull side")) >= 18);
});
