import { assert, assertEquals } from "@std/assert";
import { DOMParser } from "linkedom";
import { answer, caution, type Displayed, figure, jupyterDisplay } from "../../lib/notebook/mod.ts";
import { cleanHtml } from "../../lib/notebook/page/clean.ts";
import { indexPage } from "../../lib/notebook/page/index_page.ts";
import { answerOf, notebookPage, titleOf } from "../../lib/notebook/page/notebook_page.ts";
import { framedTables } from "../../lib/notebook/page/tables.ts";
import { markdownRenderer } from "../../lib/notebook/page/render_markdown.ts";
import type { Cell, Notebook, Output } from "../../lib/notebook/runner/notebook_file.ts";
import { cellOf, notebookOf } from "./_fixtures.ts";
import { contrast } from "../contrast.ts";

const shows = (...data: readonly Record<string, unknown>[]): Output[] =>
  data.map((one) => ({ output_type: "display_data", data: one, metadata: {} }));
const bundle = (shown: Displayed): Record<string, unknown> => ({ ...shown[jupyterDisplay]() });
const withOutputs = (source: string, outputs: Output[], tags: readonly string[] = []): Cell => ({
  ...cellOf(source, 1 + Math.abs(source.length), tags),
  outputs,
});
const notebook = (...cells: readonly Cell[]): Notebook => ({ ...notebookOf(), cells });
const dom = (html: string): Document =>
  new DOMParser().parseFromString(html, "text/html") as unknown as Document;

/** Smuggling as it is tried in the wild, each in HTML, SVG or MathML. */
const SMUGGLED = [
  "<script>alert(1)</script>",
  "<SCRIPT>alert(1)</SCRIPT>",
  '<img src="x" onerror="alert(1)">',
  '<img src="https://example.org/x.png">',
  '<svg onload="alert(1)"><circle r="1"/></svg>',
  "<svg/onload=alert(1)>",
  '<svg><a href="javascript:alert(1)"><text>x</text></a></svg>',
  '<svg><style>body{display:none}</style><use href="https://example.org/x.svg#a"/></svg>',
  '<svg><path style="fill:url(https://example.org/a)" d="M0 0"/></svg>',
  "<svg><foreignObject><body onload=alert(1)></foreignObject></svg>",
  "<style>*{background:url(https://example.org)}</style>",
  '<div style="background:url(https://example.org)">x</div>',
  '<a href="javascript:alert(1)">x</a>',
  '<a href="  java\tscript:alert(1)">x</a>',
  '<a href="//example.org">x</a>',
  '<iframe src="https://example.org"></iframe>',
  '<form action="https://example.org"><input name="a"><button>go</button></form>',
  '<base href="https://example.org"><link rel="stylesheet" href="https://example.org/a.css">',
  '<meta http-equiv="refresh" content="0;url=https://example.org">',
  '<math><mi xlink:href="javascript:alert(1)">x</mi></math>',
  '<math><maction actiontype="statusline#https://example.org">x</maction></math>',
  "<!--><script>alert(1)</script>-->",
  '<p title="</p><script>alert(1)</script>">x</p>',
];

Deno.test("nothing smuggled into an output, a caption or Markdown runs, fetches or restyles", () => {
  for (const html of SMUGGLED) {
    for (const clean of [cleanHtml(html), markdownRenderer().render(`text\n\n${html}\n`)]) {
      const body = dom(`<html><body>${clean}</body></html>`).body;
      for (const element of body.querySelectorAll("*")) {
        const name = element.tagName.toLowerCase();
        assert(
          !/^(script|style|iframe|form|input|button|base|link|meta|foreignobject|maction)$/.test(
            name,
          ),
          clean,
        );
        for (const { name, value } of Array.from(element.attributes)) {
          assert(!/^on/i.test(name), clean);
          assert(!/javascript:|url\(/i.test(value) || name === "title", clean);
          if (/href|src/.test(name)) {
            assert(
              !/^\s*(https?:)?\/\//.test(value) ||
                element.tagName === "A" && value !== "//example.org",
              clean,
            );
          }
        }
      }
    }
  }
});

Deno.test("pictures, formulas and tables survive the cleaning", () => {
  const kept = [
    '<svg viewBox="0 0 9 9" role="img" aria-label="a"><clipPath id="c"><rect x="1" width="3"></rect></clipPath><path clip-path="url(#c)" d="M0,0L9,9" stroke-dasharray="2"></path></svg>',
    '<math display="block"><mfrac><mi>P</mi><mi>w</mi></mfrac></math>',
    '<table><caption>T</caption><thead><tr><th scope="col">a</th></tr></thead></table>',
    '<a href="https://example.org/page">x</a>',
    '<svg style="background:#fff"><text font-size="13">x</text></svg>',
  ];
  for (const html of kept) assertEquals(cleanHtml(html), html);
});

Deno.test("Markdown: headings with ids, maths, prices, tables, links from notebook to notebook", () => {
  const renderer = markdownRenderer();
  const html = renderer.render(
    "# A & B\n\n## Same\n\n## Same\n\n$k = P/w$ for $5 and $6, $$d = t_c + t_f$$\n\n" +
      "$$\\frac{1}{2}$$\n\n[next](load_test.ipynb#part) `$code$`\n\n| a | b |\n| - | -: |\n| 1 | 2 |\n",
  );
  assertEquals(renderer.headings.map(({ id }) => id), ["s-a-b", "s-same", "s-same--2"]);
  assertEquals(html.match(/<math/g)?.length, 3);
  assertEquals(html.match(/<math[^>]*display="block"/g)?.length, 2);
  assert(html.includes("for $5 and $6"), html);
  assert(html.includes('href="load_test.html#part"'), html);
  assert(html.includes("<code>$code$</code>"), html);
  assert(html.includes("<td>1</td>"), html);
});

Deno.test("a formula that cannot be set stands as it was written", () => {
  assert(markdownRenderer().render("$\\frac{1$ x").includes("\\frac{1"));
});

Deno.test("a page opens with title, answer and part, and shows each output in its richest form", () => {
  const page = notebookPage(
    notebook(
      cellOf("# The title\n\nWhy.", 1),
      withOutputs('let part = "data/<a>";', [], ["parameters"]),
      withOutputs("answer", shows(bundle(answer("It holds <60 %.")))),
      cellOf("## One", 2),
      withOutputs(
        "forms",
        shows(
          { "text/html": "<p>html</p>", "text/plain": "no 1" },
          { "text/markdown": "**md**", "text/plain": "no 2" },
          { "image/svg+xml": '<svg><g id="a"/></svg>', "text/plain": "no 3" },
          { "image/png": "QUJD", "text/plain": "words" },
          { "text/plain": "a < b" },
        ),
      ),
      cellOf("## Two", 3),
      withOutputs("secret = 1", shows({ "text/plain": "shown" }), ["hide-input"]),
      withOutputs("gone = 1", shows({ "text/plain": "nowhere" }), ["remove-cell"]),
      withOutputs("box", shows(bundle(caution({ points: ["Stand clear."] })))),
    ),
    "demo",
  );
  const { body } = dom(page);
  assertEquals(body.querySelectorAll("h1").length, 1);
  assertEquals(body.querySelector("header h1")?.textContent, "The title");
  assertEquals(body.querySelectorAll(".answer").length, 1);
  assertEquals(body.querySelector("header .answer")?.textContent, "It holds <60 %.");
  assert(body.querySelector("header")?.textContent.includes("data/<a>"));
  const links = [...body.querySelectorAll("nav a")].map((a) => a.getAttribute("href"));
  assertEquals(links, ["#s-one", "#s-two", "#caution"]);
  for (const href of links) assert(body.querySelector(href!) !== null, href!);
  const main = body.querySelector("main")!.textContent;
  for (const word of ["html", "md", "a < b", "shown", "Stand clear."]) {
    assert(main.includes(word), word);
  }
  for (const word of ["no 1", "no 2", "no 3", "secret", "gone", "nowhere"]) {
    assert(!main.includes(word), word);
  }
  assertEquals(body.querySelector("img")?.getAttribute("src"), "data:image/png;base64,QUJD");
  assertEquals([...body.querySelectorAll("summary")].map((s) => s.textContent), [
    "First cell: what you may set",
    "Code 2",
    "Code 3",
    "Code 5",
  ]);
});

Deno.test("code with nothing between folds up together, the settings by themselves", () => {
  const page = notebookPage(
    notebook(
      cellOf("let part = 1", 1, ["parameters"]),
      cellOf("a = 1", 2),
      cellOf("hidden = 1", 3, ["hide-input"]),
      cellOf("b = 2", 4),
      withOutputs("c = 3", shows({ "text/plain": "shown" })),
      cellOf("d = 4", 6),
    ),
    "demo",
  );
  const folds = [...dom(page).body.querySelectorAll("details")];
  assertEquals(folds.map((fold) => fold.querySelector("summary")!.textContent), [
    "First cell: what you may set",
    "Code 2 to 5",
    "Code 6",
  ]);
  assertEquals([...folds[1]!.querySelectorAll("pre")].map((pre) => pre.textContent), [
    "a = 1",
    "b = 2",
    "c = 3",
  ]);
});

Deno.test("a figure's finding stands above it too, as text that a phone can wrap", () => {
  const svg =
    '<svg role="img" aria-label="a"><title>It &lt;holds&gt;</title><path d="M0 0"/></svg>';
  const figure = shows({ "text/html": `<figure>\n${svg}</figure>` });
  const page = notebookPage(notebook(withOutputs("x", figure)), "demo");
  const finding = dom(page).body.querySelector("figure > p.finding");
  assertEquals(finding?.textContent, "It <holds>");
  assertEquals(finding?.getAttribute("aria-hidden"), "true");
});

Deno.test("a wide table knows its columns in each cell, for a phone; every table has its own box", () => {
  const table = (columns: number): string =>
    `<table><caption>C &amp; ${columns}</caption><thead><tr>${
      "<th>h&lt;</th>".repeat(columns)
    }</tr></thead>` +
    `<tbody><tr><th>r</th>${"<td>1</td>".repeat(columns - 1)}</tr></tbody></table>`;
  const { body } = dom(
    `<html><body>${framedTables(`<p>x</p>${table(4)}${table(3)}`)}</body></html>`,
  );
  const [wide, narrow] = body.querySelectorAll(".scroll");
  assertEquals(wide?.getAttribute("aria-label"), "C & 4");
  assertEquals([...wide!.querySelectorAll("td")].map((td) => td.getAttribute("data-label")), [
    "h<",
    "h<",
    "h<",
  ]);
  assertEquals(wide!.querySelectorAll('[role="columnheader"]').length, 4);
  assertEquals(wide!.querySelectorAll('[role="rowheader"]').length, 1);
  assertEquals(narrow!.querySelectorAll("[data-label], [role=cell]").length, 0);
  assert(narrow!.querySelector("table") !== null);
});

Deno.test("two pictures on a page share no id", () => {
  const one = bundle(figure('<svg><clipPath id="a"/><g clip-path="url(#a)"/></svg>', { alt: "1" }));
  const other = { "image/svg+xml": '<svg><clipPath id="a"/><path d="M0 0"/></svg>' };
  const page = notebookPage(notebook(withOutputs("x", shows(one, other))), "demo");
  const ids = [...page.matchAll(/ id="([^"]+)"/g)].map((m) => m[1]);
  assertEquals(ids.length, 2);
  assertEquals(new Set(ids).size, 2);
});

Deno.test("a page fetches nothing, and says so in its policy", () => {
  const page = notebookPage(notebook(cellOf("# T", 1)), "demo");
  assert(
    page.includes(`content="default-src 'none'; img-src data:; style-src 'unsafe-inline'`),
    page,
  );
  assert(!/<script|src="http|url\(|@import/.test(page));
});

Deno.test("a notebook without heading or answer has its file's name and no answer", () => {
  const plain = notebook(withOutputs("1;", shows({ "text/plain": "1" })));
  assertEquals(titleOf(plain, "load_test"), "load test");
  assertEquals(answerOf(plain), undefined);
  assert(notebookPage(plain, "load_test").includes("<h1>load test</h1>"));
});

Deno.test("the index lists answers, and failures without a link; names are escaped", () => {
  const html = indexPage([
    { name: "a b", title: "A <b>", answer: { sentence: "It holds.", folded: false } },
    { name: "lesson", title: "Lesson", answer: { sentence: "It bends.", folded: true } },
    { name: "bad", title: "Bad", failure: "code cell 3 (<x>): no" },
  ], { part: "data/<p>" });
  const { body } = dom(html);
  assertEquals(
    [...body.querySelectorAll("a")].map((a) => [a.getAttribute("href"), a.textContent]),
    [
      ["a%20b.html", "A <b>"],
      ["lesson.html", "Lesson"],
    ],
  );
  assert(body.textContent.includes("No answer: code cell 3 (<x>): no"));
  assert(body.textContent.includes("data/<p>"));
  assert(body.textContent.includes("It holds."));
  assert(!body.textContent.includes("It bends."), "a lesson's answer is not told beforehand");
});

Deno.test("text keeps the contrast of WCAG 2.2 AA (4.5 to 1) by day and by night", () => {
  const page = notebookPage(notebook(cellOf("# T", 1)), "demo");
  const palettes = [...page.matchAll(/:root \{[^}]*?(--paper[^}]*)\}/g)].map(([, text]) =>
    Object.fromEntries([...text!.matchAll(/--([\w-]+): (#\w{6})/g)].map(([, k, v]) => [k, v!]))
  );
  assertEquals(palettes.length, 2);
  const pairs = [
    ["ink", "paper"],
    ["ink", "card"],
    ["ink", "mark-ground"],
    ["ink", "warn-ground"],
    ["soft", "paper"],
    ["soft", "card"],
    ["mark", "paper"],
    ["warn", "warn-ground"],
  ] as const;
  for (const palette of palettes) {
    for (const [text, ground] of pairs) {
      const found = contrast(palette[text]!, palette[ground]!);
      assert(found >= 4.5, `${text} on ${ground}: ${found.toFixed(2)}`);
    }
  }
});
