import { assert } from "@std/assert";
import { polarFigure } from "../../lib/charts/mod.ts";

Deno.test("names of curves that are far apart in the same direction do not cover each other", () => {
  const clover = (size: number): readonly number[] =>
    Array.from({ length: 72 }, (_, i) => size * (1 + Math.cos(4 * i * 5 * Math.PI / 180)));
  const labels = ["the innermost", "the one between", "the outermost"];
  const svg = polarFigure({
    curves: labels.map((label, i) => ({ label, values: clover(i + 1) })),
    radius: { name: "modulus" },
  }, { title: "Three clovers", description: "Each larger than the one before." });
  const places = labels.map((label) => {
    const text = [...svg.querySelectorAll("text")].find((text) => text.textContent === label)!;
    const [x, y] = text.getAttribute("transform")!.match(/-?[\d.]+/g)!.map(Number);
    return { x: x!, y: y!, wide: 7 * label.length };
  });
  places.forEach((a, i) =>
    places.slice(i + 1).forEach((b) => {
      const besides = a.x < b.x ? a.x + a.wide < b.x : b.x + b.wide < a.x;
      assert(Math.abs(a.y - b.y) > 13 || besides, `${JSON.stringify(a)} ${JSON.stringify(b)}`);
    })
  );
});
