import { assert, assertEquals } from "@std/assert";
import { join, toFileUrl } from "@std/path";
import { DOMParser } from "linkedom";
import { chromium } from "playwright-core";
import { runFolder } from "../../lib/notebook/cli/run_folder.ts";
import { NOTEBOOKS, ROOT } from "../../lib/notebook/cli/project.ts";
import { parseNotebook } from "../../lib/notebook/runner/notebook_file.ts";
import { partOf } from "../../lib/notebook/runner/parameters.ts";
import { installed, withFolder } from "./_fixtures.ts";

const hasChromium = installed("chromium");

/** Names of the demonstration part, and what a mean hand might write instead. */
const NAMES: Readonly<Record<string, string>> = {
  "panel 1": "<script>document.title='hit'</script>",
  "panel 2": '"><img src=x onerror="document.title=\'hit\'">',
  "panel 3": "$\\href{javascript:alert(1)}{x}$",
  "panel 4": "**bold** _it_ `code`",
  "panel 5": "[a](javascript:alert(1))",
  "panel 6": "=1+1",
  "panel 7": "</strong><b>fat</b>",
  "panel 8": "<!-- gone -->",
  "beam 1": "@SUM(A1)<svg onload=alert(1)>",
  "fillet putty": "<iframe src=https://example.org>",
  "hatch coaming": "&lt;script&gt;",
  "stay eye": "|---|<style>*{display:none}</style>",
};
const NOTE = "<script>alert(1)</script> $x$ **bold** | a\n# heading";

/** A copy of the demonstration part in which names and notes are hostile. */
async function hostilePart(folder: string): Promise<string> {
  const [from, to] = [join(ROOT, "data/sole-panels"), join(folder, "part")];
  await Deno.mkdir(to);
  for await (const { name } of Deno.readDir(from)) {
    if (!name.endsWith(".csv")) continue;
    const [head, ...rows] = (await Deno.readTextFile(join(from, name))).trimEnd().split("\n");
    const columns = head!.split(",");
    const lines = rows.map((row) =>
      row.split(",").map((cell, i) => {
        const text = columns[i] === "note" ? NOTE : NAMES[cell];
        // A formula is refused unless an apostrophe says that it is a text.
        const guarded = text?.replace(/^(?=[=@])/, "'").replaceAll('"', '""');
        return guarded === undefined ? cell : `"${guarded}"`;
      }).join(",")
    );
    await Deno.writeTextFile(join(to, name), [head, ...lines, ""].join("\n"));
  }
  return to;
}

/** The notebooks that read a part, copied so that their outputs can be looked at. */
async function notebooksOfParts(folder: string): Promise<string[]> {
  const names: string[] = [];
  for await (const { name } of Deno.readDir(NOTEBOOKS)) {
    if (!name.endsWith(".ipynb")) continue;
    const text = await Deno.readTextFile(join(NOTEBOOKS, name));
    if (partOf(parseNotebook(text, name)) === undefined) continue;
    await Deno.writeTextFile(join(folder, name), text);
    names.push(name.replace(".ipynb", ""));
  }
  return names.sort();
}

/** Elements and attributes of an output's HTML that could run, fetch or restyle. */
function alive(html: string): string[] {
  const { body } = new DOMParser().parseFromString(
    `<html><body>${html}</body></html>`,
    "text/html",
  );
  const found: string[] = [];
  for (const element of body.querySelectorAll("*")) {
    const tag = element.tagName.toLowerCase();
    if (/^(script|iframe|img|object|embed|form|b)$/.test(tag)) found.push(element.outerHTML);
    for (const { name, value } of Array.from(element.attributes)) {
      if (/^on/i.test(name) || /^\s*javascript:/i.test(value)) found.push(`${tag} ${name}`);
    }
  }
  return found;
}

Deno.test({
  name: "a cell of CSV that holds markup, script, maths or a formula stays text, on every page",
  ignore: !hasChromium,
  fn: () =>
    withFolder(async (folder) => {
      const part = await hostilePart(folder);
      const names = await notebooksOfParts(folder);
      assert(names.length >= 4, names.join());
      const out = join(folder, "pages");
      const run = (some: readonly string[]): ReturnType<typeof runFolder> =>
        runFolder({
          ...{ folder, names: some, part, out, stored: "store", timeLimit: 60_000 },
          print: () => {},
        });
      const results = await Promise.all([
        run(names.filter((_, i) => i % 2 === 0)),
        run(names.filter((_, i) => i % 2 === 1)),
      ]);
      const failures = results.flatMap(({ entries }) => entries)
        .flatMap(({ name, failure }) => failure === undefined ? [] : [`${name}: ${failure}`]);
      assertEquals(failures, []);
      for (const name of names) {
        const text = await Deno.readTextFile(join(folder, `${name}.ipynb`));
        for (const { outputs = [] } of parseNotebook(text, name).cells) {
          for (const output of outputs) {
            const html = "data" in output ? output.data["text/html"] : undefined;
            if (html !== undefined) assertEquals(alive([html].flat().join("")), [], name);
          }
        }
      }
      const browser = await chromium.launch({
        executablePath: "/usr/bin/chromium",
        args: ["--no-sandbox"],
      });
      try {
        const seen = new Set<string>();
        for (const name of ["index", ...names]) {
          const page = await browser.newPage();
          const found: string[] = [];
          page.on("dialog", (dialog) => (found.push("dialog"), void dialog.dismiss()));
          page.on("request", (request) => {
            if (!/^(file|data):/.test(request.url())) found.push(request.url());
          });
          page.on("pageerror", (error) => void found.push(error.message));
          await page.goto(toFileUrl(join(out, `${name}.html`)).href);
          assert(await page.title() !== "hit", name);
          const text = await page.evaluate(() => document.body.textContent ?? "");
          for (const hostile of Object.values(NAMES)) if (text.includes(hostile)) seen.add(hostile);
          found.push(
            ...await page.evaluate(() =>
              [...document.querySelectorAll("iframe, img, [onerror], [onload], main b")].map((e) =>
                e.outerHTML
              )
            ),
          );
          assertEquals(found, [], name);
          await page.close();
        }
        assertEquals(Object.values(NAMES).filter((hostile) => !seen.has(hostile)), []);
      } finally {
        await browser.close();
      }
    }),
});
