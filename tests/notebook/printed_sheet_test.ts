import { assert, assertEquals, assertThrows } from "@std/assert";
import { join, toFileUrl } from "@std/path";
import { chromium } from "playwright-core";
import { InputError } from "../../lib/check/mod.ts";
import {
  checklist,
  consoleDisplay,
  type Displayed,
  displayed,
  jupyterDisplay,
  note,
  type Paper,
  printedSheet,
  table,
} from "../../lib/notebook/mod.ts";
import { notebookPage } from "../../lib/notebook/page/notebook_page.ts";
import { cellOf, installed, notebookOf, withFolder } from "./_fixtures.ts";

const html = (shown: Displayed): string => String(shown[jupyterDisplay]()["text/html"]);
const rows = table([{ pot: "1", resin: "213 g" }], {
  caption: "Mix",
  columns: [{ key: "pot", heading: "Pot" }, { key: "resin", heading: "Resin" }],
});

Deno.test("a sheet holds its parts in order, as text and as HTML, and escapes its title", () => {
  const sheet = printedSheet({
    title: "Sole <1> & 2",
    paper: "A4",
    parts: [note("first"), rows, displayed({ "text/plain": "plain < text" })],
  });
  assertEquals(
    sheet[consoleDisplay](),
    "Sheet: Sole <1> & 2\n\nNote: first\n\nMix\nPot  Resin\n1    213 g\n\nplain < text",
  );
  const shown = html(sheet);
  assert(shown.startsWith('<section class="sheet sheet-a4">'), shown);
  assert(shown.includes("<h2>Sole &lt;1&gt; &amp; 2</h2>"), shown);
  assert(shown.includes("<p>plain &lt; text</p>"), shown);
  assert(shown.indexOf("first") < shown.indexOf("<table"), shown);
});

Deno.test("a check list has a box before each point and escapes it", () => {
  const list = checklist({ title: "Bag", points: ["peel ply", "a <b> & `code`"] });
  assertEquals(list[consoleDisplay](), "Bag\n  ☐ peel ply\n  ☐ a <b> & `code`");
  assertEquals(html(list).match(/<li>☐ /g)?.length, 2);
  assert(html(list).includes("a &lt;b&gt; &amp; <code>code</code>"), html(list));
});

Deno.test("a sheet refuses no parts, other paper, a blank title and what does not show itself", () => {
  const sheet = { title: "Sole", paper: "A4", parts: [rows] } as const;
  const refused = (change: object, words: string): void => {
    assertThrows(() => printedSheet({ ...sheet, ...change }), InputError, words);
  };
  refused({ parts: [] }, "parts");
  refused({ paper: "A3" }, "paper");
  refused({ title: " " }, "title");
  refused({ parts: ["text"] }, "part 1");
  refused({ parts: [{}] }, "must show itself");
  assertThrows(() => printedSheet(undefined as never), InputError, "sheet");
  assertThrows(() => checklist({ title: "Bag", points: [] }), InputError, "point");
  assertThrows(() => checklist({ title: "Bag", points: [""] }), InputError, "point 1");
});

Deno.test({
  name:
    "printing a page with a sheet prints the sheet alone, on its paper, in letters of 12 points",
  ignore: !installed("chromium"),
  fn: () =>
    withFolder(async (folder) => {
      const browser = await chromium.launch({
        executablePath: "/usr/bin/chromium",
        args: ["--no-sandbox"],
      });
      try {
        const papers: readonly (readonly [Paper, number, number])[] = [
          ["A4", 595.28, 841.89],
          ["Letter", 612, 792],
        ];
        for (const [paper, width, height] of papers) {
          const sheet = printedSheet({ title: "Sole", paper, parts: [rows] });
          const notebook = notebookOf("# Title\n\nwords before");
          const output = {
            output_type: "display_data" as const,
            data: { ...sheet[jupyterDisplay]() },
            metadata: {},
          };
          const cells = [...notebook.cells, { ...cellOf("sheet", 1), outputs: [output] }];
          const file = join(folder, `${paper}.html`);
          await Deno.writeTextFile(file, notebookPage({ ...notebook, cells }, "sheet"));
          const page = await browser.newPage();
          await page.goto(toFileUrl(file).href);
          const seen = (): Promise<string> => page.evaluate(() => document.body.innerText);
          assert((await seen()).includes("words before"));
          await page.emulateMedia({ media: "print" });
          const printed = await seen();
          assert(/213\sg/.test(printed), printed);
          assert(!/words before|Title|safety sheet|All answers/.test(printed), printed);
          const letters = await page.evaluate(() =>
            getComputedStyle(document.querySelector(".sheet td")!).fontSize
          );
          // 12 points of 1/72 inch, 96 CSS pixels to the inch.
          assertEquals(letters, "16px");
          const pdf = new TextDecoder("latin1").decode(
            await page.pdf({ preferCSSPageSize: true, tagged: false }),
          );
          const boxes = [...pdf.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)];
          assertEquals(boxes.length, 1, "one page");
          assert(Math.abs(Number(boxes[0]![1]) - width) < 1, boxes[0]![0]);
          assert(Math.abs(Number(boxes[0]![2]) - height) < 1, boxes[0]![0]);
          await page.close();
        }
      } finally {
        await browser.close();
      }
    }),
});
