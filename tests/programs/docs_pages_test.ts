import { assert, assertEquals } from "@std/assert";
import { join } from "@std/path";
import { ROOT } from "../house/_source.ts";
import { hasChromium, withPage } from "./_chromium.ts";

const { name: PACKAGE, exports } = JSON.parse(
  await Deno.readTextFile(join(ROOT, "deno.json")),
);
const ROOMS = Object.keys(exports).filter((key) => key !== ".").map((key) => key.replace("./", ""));

async function docsTask(folder: string): Promise<{ code: number; out: string; text: string }> {
  const { code, stdout, stderr } = await new Deno.Command(Deno.execPath(), {
    args: ["task", "--quiet", "docs", folder],
    cwd: ROOT,
    env: { NO_COLOR: "1" },
  }).output();
  const decoder = new TextDecoder();
  return { code, out: decoder.decode(stdout), text: decoder.decode(stderr) };
}

async function written(docs: string, folder: string): Promise<void> {
  const front = await Deno.readTextFile(join(docs, "index.html"));
  for (const room of ROOMS) {
    assert(front.includes(`<a href="./${room}/index.html">${room}</a>`), room);
    const page = await Deno.readTextFile(join(docs, room, "index.html"));
    assert(page.includes(`from &quot;${PACKAGE}/${room}&quot;`), room);
    assert(page.includes("Start with <a "), room);
    assert([...Deno.readDirSync(join(docs, room, "~"))].length > 1, room);
  }
  const there = [...Deno.readDirSync(folder)].map(({ name }) => name).toSorted();
  assertEquals(there, ["docs", "index.html"]);
}

async function refused(docs: string, folder: string): Promise<void> {
  for (const old of [docs, folder]) assertEquals((await docsTask(old)).code, 2);
  assertEquals(await Deno.readTextFile(join(folder, "index.html")), "answers");
}

async function opened(docs: string): Promise<void> {
  await withPage(async (open, complaints) => {
    for (const room of ROOMS) {
      const page = await open(join(docs, room, "index.html"));
      assertEquals(await page.title(), `${room} - ${PACKAGE} documentation`);
    }
    // As deno doc leaves it, the search goes astray from the pages of rooms.
    for (const from of ["index.html", "laminate/index.html", "laminate/~/Stack.html"]) {
      const page = await open(join(docs, from));
      await page.fill("#searchbar", "deflectBeam");
      await page.click("#searchResults a");
      await page.waitForURL("**/sandwich/~/deflectBeam.html");
      assert((await page.locator("body").textContent())!.includes("flexuralRigidity"), from);
    }
    assertEquals(complaints, []);
  });
}

Deno.test("the docs task writes pages for each exported room, from its comments", async (t) => {
  const folder = await Deno.makeTempDir();
  try {
    await Deno.writeTextFile(join(folder, "index.html"), "answers");
    const docs = join(folder, "docs");
    const { code, out, text } = await docsTask(docs);
    assertEquals([code, text], [0, ""]);
    assert(out.startsWith(`Documentation of ${ROOMS.length} rooms`), out);
    await t.step(
      "a section for each room, and nothing else is touched",
      () => written(docs, folder),
    );
    await t.step(
      "a folder that is there is refused, since it would go",
      () => refused(docs, folder),
    );
    await t.step({
      name: "they open from disk without a complaint, and their search leads to a function",
      ignore: !hasChromium,
      fn: () => opened(docs),
    });
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
});
