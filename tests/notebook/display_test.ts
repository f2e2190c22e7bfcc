import fc from "fast-check";
import { assert, assertEquals, assertThrows } from "@std/assert";
import { DOMParser } from "linkedom";
import { InputError } from "../../lib/check/mod.ts";
import {
  answer,
  ANSWER_MIME,
  caution,
  consoleDisplay,
  type Displayed,
  figure,
  inputs,
  jupyterDisplay,
  markdown,
  note,
  table,
  tryNext,
  working,
} from "../../lib/notebook/mod.ts";
import { markdownRenderer } from "../../lib/notebook/page/render_markdown.ts";

const SEED = { seed: 20261125, numRuns: 200 };
const html = (shown: Displayed): string => String(shown[jupyterDisplay]()["text/html"]);
const text = (shown: Displayed): string => shown[consoleDisplay]();
const dom = (shown: Displayed): Document =>
  new DOMParser().parseFromString(
    `<html><body>${html(shown)}</body></html>`,
    "text/html",
  ) as unknown as Document;

/** Text as somebody may type it: with markup, quotes and entities, without back-ticks. */
const typed = fc.array(
  fc.oneof(
    fc.constantFrom("<b>", "</p>", "&amp;", '"', "'", "<script>alert(1)</script>", "$x$", "**b**"),
    fc.string().map((s) => s.replace(/[`\p{C}]/gu, "").replace(/\s/g, " ")),
  ),
  { minLength: 1, maxLength: 6 },
).map((parts) => parts.join("")).filter((s) => s.trim() !== "");

const step = {
  meaning: "slope",
  formula: "k = P / w",
  result: { value: 50, unit: "N/mm" },
  source: "definition",
};

Deno.test("every display value shows as text too, and prints the same text in a console", () => {
  const all = [
    answer("It holds."),
    note("One row left out."),
    caution({ points: ["Stand clear."] }),
    tryNext(["Change `part`."]),
    markdown`Part ${"a"}`,
    table([{ a: 1 }], { caption: "T", columns: [{ key: "a" }] }),
    inputs([{ name: "Span", value: 1, unit: "m", source: "typed in" }]),
    figure("<svg></svg>", { alt: "nothing" }),
    working({ title: "slope", steps: [step] }),
  ];
  for (const shown of all) {
    assertEquals(text(shown), shown[jupyterDisplay]()["text/plain"]);
    assertEquals(Deno.inspect(shown), text(shown));
    assert(Object.isFrozen(shown));
  }
});

Deno.test("what is typed stands as it was typed, wherever it is put: it is never markup", () => {
  fc.assert(
    fc.property(typed, (value) => {
      const shown: readonly [Displayed, string, string][] = [
        [answer(value), "strong", value],
        [note(value), "p", value],
        [caution({ title: value, points: [value] }), "strong", `Caution: ${value}`],
        [caution({ title: value, points: [value] }), "li", value],
        [tryNext([value]), "li", value],
        [
          table([{ a: value }], { caption: value, columns: [{ key: "a", heading: value }] }),
          "td,tbody th",
          value,
        ],
        [
          table([{ a: value }], { caption: value, columns: [{ key: "a", heading: value }] }),
          "thead th",
          value,
        ],
        [
          table([{ a: value }], { caption: value, columns: [{ key: "a", heading: value }] }),
          "caption",
          value,
        ],
        [inputs([{ name: value, value: value, source: value }]), "tbody th", value],
        [figure("<svg><g></g></svg>", { alt: value, caption: value }), "figcaption", value],
        [working({ title: value, steps: [step] }), "strong", `Working: ${value}`],
        [
          working({ title: "t", steps: [{ ...step, source: value }] }),
          "small",
          `Formula: ${value}`,
        ],
      ];
      for (const [one, selector, wanted] of shown) {
        assertEquals(dom(one).querySelector(selector)?.textContent, wanted);
        assertEquals(dom(one).querySelector("script, b"), null);
      }
      const alt = dom(figure("<svg><g></g></svg>", { alt: value })).querySelector("svg");
      assertEquals(alt?.getAttribute("aria-label"), value);
    }),
    SEED,
  );
});

Deno.test("a value in Markdown is no markup, no maths, no link and no HTML", () => {
  fc.assert(
    fc.property(typed, (value) => {
      const shown = markdown`before ${value} after`;
      const rendered = markdownRenderer().render(String(shown[jupyterDisplay]()["text/markdown"]));
      const body = new DOMParser().parseFromString(
        `<html><body>${rendered}</body></html>`,
        "text/html",
      );
      const words = (s: string): string => s.replace(/\s+/g, " ").trim();
      assertEquals(words(body.body.textContent), words(`before ${value} after`));
      assertEquals(body.body.querySelectorAll("p *").length, 0);
    }),
    SEED,
  );
});

Deno.test("Markdown's own text keeps markup, and a backslash needs no doubling", () => {
  const shown = markdown`**bold** $\frac{1}{2}$ ${"*plain*"}`;
  const rendered = markdownRenderer().render(String(shown[jupyterDisplay]()["text/markdown"]));
  assert(rendered.includes("<strong>bold</strong>") && rendered.includes("<mfrac>"), rendered);
  assert(rendered.includes("*plain*"), rendered);
});

Deno.test("an answer carries its sentence where a program finds it", () => {
  const bundle = answer("It bends 3 mm < 5 mm.")[jupyterDisplay]();
  assertEquals(bundle[ANSWER_MIME], { sentence: "It bends 3 mm < 5 mm." });
});

Deno.test("a table: units in the head, numbers to the right, four digits, a dash for nothing", () => {
  const rows = [
    { part: "a", mass: 1.23456, left: 3, note: undefined },
    { part: "b", mass: -0.00001234, left: 4, note: null },
    { part: "c", mass: 123456.7, left: 0, note: "x" },
  ];
  const shown = table(rows, {
    caption: "Parts",
    columns: [
      { key: "part" },
      { key: "mass", heading: "Mass", unit: "kg" },
      { key: "left", align: "left", format: (value, row) => `${value} of ${row.part}` },
      { key: "note" },
    ],
  });
  assertEquals(
    text(shown).split("\n"),
    [
      "Parts",
      "part    Mass [kg]  left    note",
      "a           1.235  3 of a  –",
      "b     −1.234×10⁻⁵  4 of b  –",
      "c          123457  0 of c  x",
    ].map((line) => line.replace("b     −", "b     −")),
  );
  const cells = [...dom(shown).querySelectorAll("tbody tr")].map((row) =>
    [...row.children].map((cell) => [cell.tagName, cell.className])
  );
  assertEquals(cells[0], [["TH", ""], ["TD", "number"], ["TD", ""], ["TD", ""]]);
});

Deno.test("in a table no line ends between a number, its uncertainty and its unit", () => {
  const cell = (text: string): string =>
    html(table([{ text }], { caption: "Stiffness", columns: [{ key: "text" }] }))
      .match(/<th scope="row"[^>]*>(.*?)<\/th>/)?.[1] ?? "";
  assertEquals(cell("93 ± 4 mm/kN"), "93\u00a0±\u00a04\u00a0mm/kN");
  assertEquals(cell("(44.0 ± 2.2) %"), "(44.0\u00a0±\u00a02.2)\u00a0%");
  assertEquals(cell("beam 1, (a) 2 by 3"), "beam 1, (a) 2\u00a0by 3");
});

Deno.test("a table without rows says so", () => {
  const shown = table([] as { a: number }[], { caption: "T", columns: [{ key: "a" }] });
  assertEquals(text(shown), "T\na\n(no rows)");
  assert(html(shown).includes("no rows"));
});

Deno.test("numbers are shown with a true minus sign and never as NaN", () => {
  const shown = (value: number, unit?: string): string =>
    text(inputs([{ name: "n", value, source: "s", ...(unit === undefined ? {} : { unit }) }]))
      .split("\n")[2]!.replace(/^n\s+/, "").replace(/\s+s$/, "");
  assertEquals(shown(-12.34567, "mm"), "−12.35\u00a0mm");
  assertEquals(shown(0), "0");
  assertEquals(shown(-0), "0");
  assertEquals(shown(48.2, "%"), "48.2\u202f%");
  assertEquals(shown(7.25e10, "Pa"), "7.25×10¹⁰\u00a0Pa");
  assertEquals(shown(1234.56), "1235");
  assertEquals(shown(0.5, "1"), "0.5");
});

Deno.test("a figure has a role and words, and brings no counted ids", () => {
  const plot = (n: number): string =>
    `<svg class="plot"><clipPath id="plot-clip-${n}"><rect/></clipPath>` +
    `<g clip-path="url(#plot-clip-${n})"><use href="#plot-clip-${n}"/></g></svg>`;
  const one = html(figure(plot(1), { alt: "a" }));
  assertEquals(one, html(figure(plot(7), { alt: "a" })), "the same picture, the same bytes");
  assert(!one.includes("plot-clip"), one);
  const id = one.match(/<clipPath id="([^"]+)"/)?.[1];
  assert(id !== undefined && one.includes(`url(#${id})`) && one.includes(`href="#${id}"`), one);
  const other = html(figure(plot(1).replace("<rect/>", "<path/>"), { alt: "a" }));
  assert(!other.includes(id), "another picture, another id");
  assert(
    /^<figure[^>]*>\n<svg xmlns="http:\/\/www.w3.org\/2000\/svg" role="img" aria-label="a"/.test(
      one,
    ),
  );
});

Deno.test("a figure's own label serves as its words", () => {
  const shown = figure({ outerHTML: '<svg role="img" aria-label="k &lt; 3 &amp; w"></svg>' });
  assertEquals(text(shown), "Figure: k < 3 & w");
  assertEquals(dom(shown).querySelector("svg")?.getAttribute("aria-label"), "k < 3 & w");
});

Deno.test("a figure that could run, or shows NaN, or is no picture, is refused", () => {
  for (
    const element of [
      '<svg onload="alert(1)"></svg>',
      "<svg/onload=alert(1)></svg>",
      "<svg><script>alert(1)</script></svg>",
      '<svg><a href="javascript:alert(1)"><text>x</text></a></svg>',
      '<svg><image xlink:href="https://example.org/x.png"/></svg>',
      '<svg><foreignObject><iframe src="x"></iframe></foreignObject></svg>',
      '<svg><path d="M0,NaNL3,4"/></svg>',
      "<div>no picture</div>",
      "<svg>",
      "",
    ]
  ) {
    assertThrows(() => figure(element, { alt: "a" }), InputError, "Cannot show the figure");
  }
  assertThrows(() => figure("<svg></svg>"), InputError, "alternative text is missing");
});

Deno.test("the working shows symbols, numbers, units and sources", () => {
  const shown = working({
    title: "stiffness",
    steps: [{
      meaning: "Load for each millimetre",
      formula: "k = \\frac{P}{w}",
      withNumbers: "k = \\frac{100}{2}",
      values: [
        { symbol: "P", meaning: "load", value: 100, unit: "N", source: "tests.csv" },
        { symbol: "w", meaning: "deflection", value: "2.00 ± 0.01 mm" },
      ],
      result: { symbol: "k", value: 50, unit: "N/mm" },
      source: "a book, p. 3",
    }],
  });
  const all = dom(shown).body.textContent;
  for (
    const piece of [
      "100\u00a0N, load (tests.csv)",
      "2.00 ± 0.01 mm, deflection",
      "50\u00a0N/mm",
      "a book, p. 3",
    ]
  ) {
    assert(all.includes(piece) && text(shown).includes(piece), piece);
  }
  assertEquals(dom(shown).querySelectorAll("math").length, 5);
});

Deno.test("each kind of wrong argument is refused by name", () => {
  // deno-lint-ignore no-explicit-any -- a notebook is not type-checked when it runs
  const any = (value: unknown): any => value;
  const refused: readonly [() => unknown, string][] = [
    [() => answer(""), "Cannot show the answer: sentence"],
    [() => answer(any(3)), "sentence is 3"],
    [() => answer("two\nlines"), "must stand on one line"],
    [() => note(any(undefined)), "text is missing"],
    [() => caution({ points: [] }), "must be a list of 1 or more"],
    [() => caution({ points: ["a", " "] }), "point 2"],
    [() => caution(any(undefined)), "caution is missing, must be an object"],
    [() => tryNext(any("text")), "must be a list"],
    [() => markdown(any("text")), "Cannot show the Markdown: template"],
    [() => markdown`a ${NaN}`, "value 1 is NaN"],
    [() => markdown`a ${1} ${any(undefined)}`, "value 2 is missing, must be a text or a number"],
    [() => table(any(3), any({ caption: "c", columns: [{ key: "a" }] })), "rows"],
    [() => table([{ a: NaN }], { caption: "c", columns: [{ key: "a" }] }), "a in row 1 is NaN"],
    [() => table([any(null)], any({ caption: "c", columns: [{ key: "a" }] })), "row 1"],
    [() => table([{ a: 1 }], any(null)), "options"],
    [() => table([{ a: 1 }], { caption: "c", columns: [] }), "columns"],
    [() => inputs([{ name: "Span", value: Infinity, source: "s" }]), "Span is Infinity"],
    [() => inputs([{ name: "Span", value: 1, source: "" }]), "source of Span"],
    [() => inputs([{ name: "Span", value: 1, source: "s" }], any(null)), "options is null"],
    [() => working({ title: "t", steps: [] }), "steps"],
    [() => working({ title: "t", steps: [{ ...step, formula: "\\frac{1" }] }), "must be TeX"],
    [() => working({ title: "t", steps: [{ ...step, result: { value: NaN } }] }), "result is NaN"],
    [() => working({ title: "t", steps: [any("s")] }), "step"],
  ];
  for (const [act, words] of refused) assertThrows(act, InputError, words);
});
