import { InputError } from "@laminate/notebooks/check";
import { readCatalogue, readPart, replaceFile, tableText } from "@laminate/notebooks/records";
import { assert, assertEquals } from "@std/assert";
import { join } from "@std/path";
import { catalogue, materials, tables } from "../records/_folder.ts";

async function inFolder(
  files: Readonly<Record<string, string>>,
  test: (folder: string) => Promise<void>,
): Promise<void> {
  const folder = await Deno.makeTempDir({ prefix: "laminate-records-" });
  try {
    await Deno.mkdir(join(folder, "bow hatch", "materials"), { recursive: true });
    for (const [name, text] of Object.entries(files)) {
      await Deno.writeTextFile(join(folder, "bow hatch", name), text);
    }
    await test(join(folder, "bow hatch"));
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}

const refusal = async (promise: Promise<unknown>): Promise<string> => {
  const reason = await promise.then(() => undefined, (error) => error);
  assert(reason instanceof InputError, String(reason));
  return reason.message;
};

const own = { ...tables, "materials/resins.csv": materials["resins.csv"]!.replace("1150", "1200") };

Deno.test("a part folder is read by path, by URL and from within", async () => {
  await inFolder(own, async (folder) => {
    const part = await readPart(folder, { catalogue });
    assertEquals(part.name, "bow hatch");
    assertEquals(part.weighings?.length, 2);
    assertEquals(part.catalogue.resins.get("sticky")?.density, 1200);
    assertEquals(part.notes, ["materials/resins.csv line 2: sticky takes the catalogue's place"]);
    const url = new URL(`file://${folder.replaceAll(" ", "%20")}/`);
    assertEquals((await readPart(url, { catalogue })).name, "bow hatch");
    const before = Deno.cwd();
    try {
      Deno.chdir(folder);
      assertEquals((await readPart(".", { catalogue })).name, "bow hatch");
      assertEquals((await readPart("../bow hatch/", { catalogue })).name, "bow hatch");
      assertEquals((await readPart("materials/..", { catalogue })).name, "bow hatch");
    } finally {
      Deno.chdir(before);
    }
  });
});

Deno.test("a folder that is not there, a file in its place, and no path are said", async () => {
  await inFolder(tables, async (folder) => {
    assertEquals(
      await refusal(readPart(join(folder, "stern"))),
      `Cannot read the part: folder is ${JSON.stringify(shortened(join(folder, "stern")))}, ` +
        "must be a folder that exists",
    );
    assert((await refusal(readPart(join(folder, "layup.csv")))).includes("not a file"));
    assert((await refusal(readPart("  "))).includes("must be a path"));
    assert((await refusal(readPart(undefined as unknown as string))).includes("must be a path"));
    const none = await refusal(readCatalogue(folder));
    assert(none.includes("fibres.csv is missing, must be in the folder"), none);
  });
});

const shortened = (text: string): string => text.length > 60 ? `${text.slice(0, 60)}…` : text;

Deno.test("a folder without layup.csv says which tables it has", async () => {
  await inFolder({ "putty.csv": tables["putty.csv"]! }, async (folder) => {
    assertEquals(
      await refusal(readPart(folder, { catalogue })),
      "Cannot read the part bow hatch: layup.csv is missing, must be in the folder; " +
        "it has: putty.csv",
    );
  });
});

Deno.test("a file is replaced whole, and nothing is left beside it", async () => {
  await inFolder({}, async (folder) => {
    const path = join(folder, "weighings.csv");
    const table = { headings: ["part", "note"], rows: [["P1", "=1+2"]] };
    await replaceFile(path, tableText(table));
    await replaceFile(path, tableText(table, { lineEnd: "CRLF", byteOrderMark: true }));
    assertEquals(await Deno.readTextFile(path), "\ufeffpart,note\r\nP1,'=1+2\r\n");
    // As many runs at once as there may be: one of them wins, none is torn.
    const texts = Array.from({ length: 8 }, (_, i) => `${i}`.repeat(200_000));
    await Promise.all(texts.map((text) => replaceFile(path, text)));
    assert(texts.includes(await Deno.readTextFile(path)));
    assertEquals([...Deno.readDirSync(folder)].map(({ name }) => name).sort(), [
      "materials",
      "weighings.csv",
    ]);
  });
});

Deno.test("where a file cannot be written, the old one stays and the reason is said", async () => {
  await inFolder({ "layup.csv": "old" }, async (folder) => {
    const inside = await refusal(replaceFile(join(folder, "layup.csv", "note.txt"), "new"));
    assert(inside.includes("path is"), inside);
    assert((await refusal(replaceFile(join(folder, "none", "a"), "new"))).includes("exists"));
    assert((await refusal(replaceFile("", "new"))).includes("must be a path"));
    assert((await refusal(replaceFile(join(folder, "materials"), "new"))).includes("not a folder"));
    assertEquals(await Deno.readTextFile(join(folder, "layup.csv")), "old");
    assertEquals([...Deno.readDirSync(folder)].length, 2);
  });
});

Deno.test("a full disk leaves the old file, and nothing beside it", async () => {
  const full = "/dev/full";
  if (!(await Deno.stat(full).then(() => true, () => false))) return;
  await inFolder({ "layup.csv": "old" }, async (folder) => {
    const path = join(folder, "layup.csv");
    const { open } = Deno;
    // Writes into the file beside go to a device that is always full.
    Deno.open = (_, options) => open(full, { ...options, createNew: false });
    try {
      const reason = await replaceFile(path, "new").then(() => undefined, (error) => error);
      assert(reason instanceof Error && reason.message.includes("is unchanged"), String(reason));
    } finally {
      Deno.open = open;
    }
    assertEquals(await Deno.readTextFile(path), "old");
    assertEquals([...Deno.readDirSync(folder)].length, 2);
  });
});

Deno.test("a folder that changes while it is read is refused", async () => {
  await inFolder(tables, async (folder) => {
    const { readFile } = Deno;
    Deno.readFile = async (path, options) => {
      const bytes = await readFile(path, options);
      if (String(path).endsWith("putty.csv")) {
        await Deno.writeTextFile(join(folder, "layup.csv"), `${tables["layup.csv"]}# more\n`);
      }
      return bytes;
    };
    try {
      const message = await refusal(readPart(folder, { catalogue }));
      assert(message.includes("was just changed, try again"), message);
    } finally {
      Deno.readFile = readFile;
    }
  });
});
