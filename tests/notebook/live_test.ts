import { assert, assertEquals, assertThrows } from "@std/assert";
import { join, toFileUrl } from "@std/path";
import { type Browser, chromium, type Page } from "playwright-core";
import { InputError } from "../../lib/check/mod.ts";
import {
  consoleDisplay,
  exercise,
  jupyterDisplay,
  liveFigure,
  prediction,
  verdicts,
} from "../../lib/notebook/mod.ts";
import { enlivened } from "../../lib/notebook/page/live_script.ts";
import { notebookPage } from "../../lib/notebook/page/notebook_page.ts";
import { readCatalogue } from "../../lib/records/mod.ts";
import { cellOf, installed, notebookOf, withFolder } from "./_fixtures.ts";

const { reinforcements, fibres, resins, cores } = await readCatalogue();
const fibre = fibres.get("E-glass")!;
const resin = resins.get("epoxy laminating slow")!;
const resinRatio = {
  settings: { fibreDensity: fibre.density, resinDensity: resin.density },
} as const;
const sandwichSpan = {
  settings: {
    reinforcement: reinforcements.get("glass twill 200")!,
    fibre,
    resin,
    core: cores.get("PVC foam 80")!,
    width: 0.3,
  },
} as const;

Deno.test("the resin of 4 cloths of 200 g/m² on half a square metre at 45 %, by hand", () => {
  // 400 g of cloth and 45/55 of that in resin: 327.3 g.
  const text = liveFigure("resin-ratio", resinRatio)[consoleDisplay]();
  assert(text.startsWith("327 g of resin in the part"), text);
});

Deno.test("half the span bends an eighth by bending and half by shear", () => {
  const at = (span: number): [number, number] => {
    const text = liveFigure("sandwich-span", { ...sandwichSpan, values: { span, load: 300 } })
      [consoleDisplay]();
    const [, total, share] = text.match(/bends ([\d.]+) mm, (\d+) %/)!;
    return [Number(total), Number(share) / 100];
  };
  const [long, short] = [at(800), at(400)];
  // Both figures are rounded as they are shown.
  const bending = (1 - long[1]) * long[0] / 8 + long[1] * long[0] / 2;
  assert(Math.abs(short[0] - bending) < 0.03 * short[0], `${short[0]} against ${bending}`);
});

Deno.test("a live figure stands still where nothing runs: sentence and picture are there", () => {
  const html = String(liveFigure("resin-ratio", resinRatio)[jupyterDisplay]()["text/html"]);
  assert(html.includes("<svg") && html.includes("327 g of resin"));
  assert(!html.includes("<script"));
});

Deno.test("what cannot be meant is refused by name", () => {
  assertThrows(() => liveFigure("volcano", resinRatio), InputError, "resin-ratio, sandwich-span");
  assertThrows(
    () => liveFigure("resin-ratio", { ...resinRatio, values: { content: 90 } }),
    InputError,
    "must be between 25 and 70",
  );
  assertThrows(
    () => liveFigure("resin-ratio", { ...resinRatio, values: { colour: 1 } }),
    InputError,
    "colour",
  );
  assertThrows(() => liveFigure("resin-ratio", { settings: {} }), InputError, "density");
  assertThrows(() => liveFigure("repeated-readings", { settings: {} }), InputError, "readings");
});

Deno.test("three readings: their scatter, and the mean known √3 times as well", () => {
  // 400, 401 and 398 mm: mean 399.667, s = √((1/9 + 16/9 + 25/9)/2) = 1.5275, s/√3 = 0.8819.
  const text = liveFigure("repeated-readings", {
    settings: { what: "width", readings: [0.4, 0.401, 0.398] },
  })[consoleDisplay]();
  assertEquals(
    text,
    "One reading of the width is good to ± 1.5 mm, the mean of 3, 399.7 mm, to ± 0.9 mm.",
  );
});

Deno.test("a bend beyond a tenth of the span is said to be too far for the calculation", () => {
  const told = (core: number): string =>
    liveFigure("sandwich-span", { ...sandwichSpan, values: { span: 1000, core, load: 300 } })
      [consoleDisplay]();
  assert(told(3).includes("too far"), told(3));
  assert(!told(30).includes("too far"), told(30));
});

/** A page with both figures, and one complaint list for all that happens on it. */
const foretold = prediction({
  question: "And half of them?",
  answer: 0.2,
  dimension: "mass",
  mistakes: [{ factor: 2, because: "that is all of them." }],
  solution: "400 g / 2",
});

async function withPage(use: (page: Page, complaints: string[]) => Promise<void>): Promise<void> {
  await withFolder(async (folder) => {
    const shows = [
      liveFigure("resin-ratio", resinRatio),
      liveFigure("sandwich-span", { ...sandwichSpan, values: { span: 400, load: 100 } }),
      foretold,
      verdicts([foretold]),
      exercise({
        question: "What do four cloths of 200 g/m² weigh on half a square metre?",
        answer: 0.4,
        dimension: "mass",
        solution: "4 × 200 g/m² × 0.5 m²",
      }),
    ];
    const cells = shows.map((shown, i) => ({
      ...cellOf("show", i + 1),
      outputs: [{
        output_type: "execute_result" as const,
        data: { ...shown[jupyterDisplay]() },
        metadata: {},
        execution_count: 1,
      }],
    }));
    const html = await enlivened(
      notebookPage({ ...notebookOf(), cells }, "live"),
      (reason) => {
        throw new Error(reason);
      },
    );
    const file = join(folder, "live.html");
    await Deno.writeTextFile(file, html);
    const browser: Browser = await chromium.launch({
      executablePath: "/usr/bin/chromium",
      args: ["--no-sandbox"],
    });
    try {
      const page = await browser.newPage({ viewport: { width: 390, height: 800 } });
      const complaints: string[] = [];
      page.on("console", (message) => void complaints.push(message.text()));
      page.on("pageerror", (error) => void complaints.push(error.message));
      await page.goto(toFileUrl(file).href);
      await use(page, complaints);
    } finally {
      await browser.close();
    }
  });
}

Deno.test({
  name: "sliders move sentence and picture by keyboard, from a file on disk, without a complaint",
  ignore: !installed("chromium"),
  fn: () =>
    withPage(async (page, complaints) => {
      const sentence = page.locator(".live-answer").first();
      const picture = page.locator("figure svg").first();
      const before = [await sentence.textContent(), await picture.innerHTML()];
      await page.keyboard.press("Tab");
      await page.getByLabel("Resin content by mass").focus();
      for (let i = 0; i < 5; i++) await page.keyboard.press("ArrowRight");
      // 400 g of cloth at 50 %: 400 g of resin.
      assert((await sentence.textContent())!.startsWith("400 g of resin"));
      assert(await picture.innerHTML() !== before[1], "the picture must move");
      assertEquals(
        await page.getByLabel("Resin content by mass").getAttribute("aria-valuetext"),
        "50 %",
      );
      const fits = await page.evaluate(() =>
        document.documentElement.scrollWidth <= document.documentElement.clientWidth
      );
      assert(fits, "the page is wider than a phone");
      assertEquals(complaints, []);
    }),
});

Deno.test({
  name: "an exercise on a page judges a number with its unit, by keyboard",
  ignore: !installed("chromium"),
  fn: () =>
    withPage(async (page, complaints) => {
      const answered = async (text: string): Promise<string | null> => {
        await page.getByLabel("Your answer").fill(text);
        await page.keyboard.press("Enter");
        return await page.locator(".judgement").last().textContent();
      };
      assert((await answered("400"))!.includes("with its unit"));
      assert((await answered("400 kg"))!.includes("g for kg"));
      assert((await answered("14.1 oz"))!.startsWith("Right: 400 g"));
      assertEquals(complaints, []);
    }),
});

Deno.test({
  name: "a prediction is noted without a verdict, which comes when asked for",
  ignore: !installed("chromium"),
  fn: () =>
    withPage(async (page, complaints) => {
      const box = page.getByLabel("Your prediction");
      await box.fill("400");
      await page.keyboard.press("Enter");
      const said = page.locator(".prediction .judgement");
      assert((await said.textContent())!.includes("with its unit, please"));
      await box.fill("400 g");
      await page.keyboard.press("Enter");
      assertEquals(await said.textContent(), "Noted: 400 g. The verdict comes later.");
      await page.getByRole("button", { name: "Compare with what is true" }).press("Enter");
      assertEquals(
        await page.locator(".verdicts li").allTextContents(),
        ["You wrote 400 g. Not yet: that is all of them."],
      );
      assertEquals(complaints, []);
    }),
});

Deno.test({
  name: "the learner's own readings stand beside the prediction, in any unit",
  ignore: !installed("chromium"),
  fn: () =>
    withPage(async (page, complaints) => {
      const read = async (label: string, text: string): Promise<void> => {
        await page.getByLabel(label).fill(text);
        await page.keyboard.press("Tab");
      };
      const [resin, span] = [page.locator(".live").first(), page.locator(".live").nth(1)];
      await read("Your cloth, dry", "400 g");
      await read("Your part without core", "1.6 lb");
      // 1.6 lb are 725.7 g: 44.9 % are not cloth.
      assert(
        (await resin.locator(".live-answer").textContent())!.endsWith(
          "Yours has 45 % resin by mass.",
        ),
      );
      assert((await resin.locator("svg").textContent())!.includes("yours"));
      await read("Yours bends", "3");
      assert((await span.locator(".sliders").textContent())!.includes("with its unit, please"));
      const [, bends] = (await span.locator(".live-answer").textContent())!.match(
        /bends ([\d.]+) mm/,
      )!;
      await read("Yours bends", `${2 * Number(bends)} mm`);
      const told = (await span.locator(".live-answer").textContent())!;
      const [, more] = told.match(/Yours bends [\d.]+ mm, (\d+) % more than predicted/)!;
      // The prediction is shown to a tenth of a millimetre.
      assert(Math.abs(Number(more) - 100) < 10, told);
      assertEquals(complaints, []);
    }),
});

Deno.test({
  name: "a page with live figures lets its own program run, and no other",
  ignore: !installed("chromium"),
  fn: () =>
    withPage(async (page) => {
      const ran = await page.evaluate(() => {
        const script = document.createElement("script");
        script.textContent = "globalThis.smuggled = true";
        document.body.append(script);
        return "smuggled" in globalThis;
      });
      assertEquals(ran, false);
    }),
});
