import { assert, assertEquals } from "@std/assert";
import { join, toFileUrl } from "@std/path";
import { type Browser, chromium } from "playwright-core";
import { notebookPage } from "../../lib/notebook/page/notebook_page.ts";
import { runFolder } from "../../lib/notebook/cli/run_folder.ts";
import { notebookNames } from "../../lib/notebook/runner/files.ts";
import type { Output } from "../../lib/notebook/runner/notebook_file.ts";
import { weakTexts } from "./_weak_texts.ts";
import { cellOf, installed, notebookFolders, notebookOf, withFolder } from "./_fixtures.ts";

const hasChromium = installed("chromium");

async function withBrowser(use: (browser: Browser) => Promise<void>): Promise<void> {
  const browser = await chromium.launch({
    executablePath: "/usr/bin/chromium",
    // Root, as in CI, has no sandbox; the pages are our own.
    args: ["--no-sandbox"],
  });
  try {
    await use(browser);
  } finally {
    await browser.close();
  }
}

/** What a page complains of, and which elements stand out of it, at one width. */
async function faults(browser: Browser, url: string, width: number): Promise<string[]> {
  const page = await browser.newPage({ viewport: { width, height: 900 } });
  const found: string[] = [];
  page.on("console", (message) => void found.push(`console: ${message.text()}`));
  page.on("pageerror", (error) => void found.push(`error: ${error.message}`));
  page.on("requestfailed", (request) => void found.push(`request: ${request.url()}`));
  page.on("dialog", (dialog) => {
    found.push(`dialog: ${dialog.message()}`);
    void dialog.dismiss();
  });
  await page.goto(url);
  found.push(...await page.evaluate(standingOut));
  // What is folded away has to fit too.
  await page.evaluate(() => document.querySelectorAll("details").forEach((d) => d.open = true));
  found.push(...await page.evaluate(standingOut));
  await page.close();
  return found;
}

/** Runs in the page: elements beyond the right edge that are not in a box which scrolls. */
function standingOut(): string[] {
  const width = document.documentElement.clientWidth;
  const found: string[] = document.documentElement.scrollWidth > width
    ? [`the page is ${document.documentElement.scrollWidth} px wide in ${width}`]
    : [];
  for (const element of document.querySelectorAll("body *")) {
    const box = element.getBoundingClientRect();
    if (box.width === 0 || box.right <= width + 1) continue;
    let parent = element.parentElement;
    while (parent !== null && !/auto|scroll/.test(getComputedStyle(parent).overflowX)) {
      parent = parent.parentElement;
    }
    if (parent === null && element.closest("svg, math") === null) {
      found.push(`${element.tagName} "${element.textContent?.slice(0, 40)}" ends at ${box.right}`);
    }
  }
  return found;
}

/** Makes the pages of all notebooks, one folder of pages for each folder of notebooks. */
async function makePages(to: string): Promise<string[]> {
  const urls: string[] = [];
  for (const [i, folder] of notebookFolders().entries()) {
    const names = await notebookNames(folder);
    const out = join(to, String(i));
    await runFolder({ folder, names, out, stored: "leave", timeLimit: 60_000, print: () => {} });
    urls.push(...["index", ...names].map((name) => toFileUrl(join(out, `${name}.html`)).href));
  }
  return urls;
}

Deno.test({
  name:
    "each page opens from disk without a complaint, fits 390 and 1280 px, reads by day and night, prints on 1 to 4 of A4",
  ignore: !hasChromium,
  fn: () =>
    withFolder(async (folder) => {
      const urls = await makePages(folder);
      await withBrowser(async (browser) => {
        for (const url of urls) {
          for (const width of [390, 1280]) assertEquals(await faults(browser, url, width), [], url);
          const page = await browser.newPage({ viewport: { width: 680, height: 1000 } });
          await page.goto(url);
          for (const colorScheme of ["light", "dark"] as const) {
            await page.emulateMedia({ colorScheme });
            assertEquals(await page.evaluate(weakTexts), [], `${url}, ${colorScheme}`);
          }
          // A4 less its margins is 180 mm, 680 px: nothing may be cut off on paper.
          await page.emulateMedia({ media: "print" });
          assertEquals(await page.evaluate(standingOut), [], `${url} on paper`);
          const pdf = new TextDecoder("latin1").decode(
            await page.pdf({ preferCSSPageSize: true, tagged: false }),
          );
          const [, width, height] = pdf.match(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/) ?? [];
          // A4 is 210 mm by 297 mm, 595.28 by 841.89 points.
          assert(
            Math.abs(Number(width) - 595.28) < 1 && Math.abs(Number(height) - 841.89) < 1,
            pdf.slice(0, 400),
          );
          const sheets = [...pdf.matchAll(/\/Type \/Page\b/g)].length;
          assert(sheets >= 1 && sheets <= 4, `${url} prints on ${sheets} sheets`);
          await page.close();
        }
      });
    }),
});

Deno.test({
  name: "a weak text is found: on the page, on a mark of a figure, and not where a halo helps",
  ignore: !hasChromium,
  fn: () =>
    withBrowser(async (browser) => {
      const page = await browser.newPage();
      await page.setContent(`<body style="background:#fff">
        <p style="color:#777">grey</p><p style="color:#767676">darker</p>
        <h1 style="color:#949494;font-size:24px">large</h1>
        <svg width="300" height="60" fill="#000"><rect width="300" height="60" fill="#444"/>
        <text x="10" y="20">on dark</text><text x="10" y="50" fill="#fff">light</text>
        <text x="150" y="50" stroke="#fff" stroke-width="4" paint-order="stroke">halo</text></svg>`);
      const found = await page.evaluate(weakTexts);
      // Grey of the published kind: #767676 is the first on white with 4.54, #777777 has 4.48.
      assertEquals(found.map((text) => text.split(":")[0]), ['"grey"', '"on dark"']);
      assertEquals(found[0], '"grey": 4.48 to 1');
    }),
});

Deno.test({
  name: "a page turns dark with the reader's machine, and light again on paper",
  ignore: !hasChromium,
  fn: () =>
    withFolder(async (folder) => {
      const file = join(folder, "page.html");
      await Deno.writeTextFile(file, notebookPage(notebookOf("# Title\n\ntext"), "page"));
      await withBrowser(async (browser) => {
        const page = await browser.newPage();
        await page.goto(toFileUrl(file).href);
        const ink = (): Promise<string> =>
          page.evaluate(() => getComputedStyle(document.body).color);
        await page.emulateMedia({ colorScheme: "light" });
        const light = await ink();
        await page.emulateMedia({ colorScheme: "dark" });
        const dark = await ink();
        await page.emulateMedia({ colorScheme: "dark", media: "print" });
        assert(light !== dark, light);
        assertEquals(await ink(), light);
      });
    }),
});

Deno.test({
  name: "a wide table, a long word and a long formula stay in their boxes on a phone",
  ignore: !hasChromium,
  fn: () =>
    withFolder(async (folder) => {
      const wide = Array.from({ length: 14 }, (_, i) => `column number ${i}`);
      const html = `<table><thead><tr>${wide.map((w) => `<th>${w}</th>`).join("")}</tr></thead>` +
        `<tbody><tr>${wide.map((_, i) => `<td>${i}0000000</td>`).join("")}</tr></tbody></table>`;
      const long = "x".repeat(300);
      const output: Output = {
        output_type: "display_data",
        data: { "text/html": html },
        metadata: {},
      };
      const cells = [
        cellOf(`# ${long}\n\n${long} \`${long}\`\n\n$$${"a + ".repeat(80)}b$$\n\n- ${long}\n`, 1),
        { ...cellOf(`const a = "${long}";`, 2), outputs: [output] },
        {
          ...cellOf("1;", 3),
          outputs: [{ output_type: "stream" as const, name: "stdout", text: long }],
        },
      ];
      const file = join(folder, "page.html");
      await Deno.writeTextFile(file, notebookPage({ ...notebookOf(), cells }, "page"));
      await withBrowser(async (browser) => {
        assertEquals(await faults(browser, toFileUrl(file).href, 390), []);
      });
    }),
});
