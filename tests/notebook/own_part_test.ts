import { assert, assertEquals } from "@std/assert";
import { join } from "@std/path";
import type { Notebook } from "../../lib/notebook/runner/notebook_file.ts";
import { command, good, names, PART, read, SHOW, writePart } from "./_command.ts";
import { notebookOf, withFolder, writeNotebooks } from "./_fixtures.ts";

Deno.test("a notebook that reads no part runs as it is among all, and is refused by name", async () => {
  await withFolder(async (folder) => {
    await writeNotebooks(folder, { plain: notebookOf("# Title", "1 + 1;"), good: good() });
    await writePart(join(folder, "own"));
    const all = await command(folder, "--part", "own");
    assertEquals(all.code, 0, all.out);
    assertEquals(names(join(folder, "out")), ["good.html", "index.html", "plain.html"]);
    const named = await command(folder, "--part", "own", "plain");
    assertEquals(named.code, 1);
    assert(named.out.includes("it reads no part folder: leave --part out for it"), named.out);
  });
});

Deno.test("what the part folder lacks is left out, and a spreadsheet in its place is named", async () => {
  const lacking = notebookOf(
    "# About putty",
    PART,
    'import { leaveOutUnless } from "@laminate/notebooks/notebook";\nleaveOutUnless(false, "putty.csv");',
  );
  await withFolder(async (folder) => {
    await writeNotebooks(folder, { putty: lacking, good: good() });
    const own = join(folder, "own");
    await writePart(own);
    const { code, out } = await command(folder, "--part", "own");
    assertEquals(code, 0, out);
    assert(/^putty: 1 2 of 2 left out: putty\.csv is missing$/m.test(out), out);
    assert(out.includes("About putty\n  left out: putty.csv is missing\n"), out);
    assert((await read(folder, "index")).includes("Left out: putty.csv is missing"));
    assertEquals(names(join(folder, "out")), ["good.html", "index.html"]);
    await Deno.writeTextFile(join(own, "putty.xlsx"), "PK");
    const sheet = await command(folder, "--part", "own");
    assertEquals(sheet.code, 0, sheet.out);
    assert(
      sheet.out.includes(
        "left out: putty.csv is missing; found putty.xlsx, which is not read: save it as CSV, putty.csv",
      ),
      sheet.out,
    );
  });
});

Deno.test("a part that cannot be read is said once, bare, with all its faults; old pages are gone", async () => {
  await withFolder(async (folder) => {
    const lesson = notebookOf("# Lesson", "1 + 1;");
    await writeNotebooks(folder, { good: good(), other: good(), lesson });
    const fillets = "corner,angle_deg,length_mm,radius_mm\nbow,90,-1,10\nstern,90,1,0\n";
    await writePart(join(folder, "own"));
    assertEquals((await command(folder, "--part", "own")).code, 0);
    await writePart(join(folder, "own"), { "fillets.csv": fillets });
    const { code, out } = await command(folder, "--part", "own");
    assertEquals(code, 1, out);
    const message = "Cannot read the part own: 2 faults\n" +
      '  fillets.csv line 2: length_mm is "-1", must be above 0\n' +
      '  fillets.csv line 3: radius_mm is "0", must be above 0\n';
    assertEquals(out.split(message).length, 2, out);
    assert(!/InputError|code cell|NO ANSWER/.test(out), out);
    assert(/^good: not run\nlesson: 1 of 1 done/m.test(out), out);
    assertEquals(names(join(folder, "out")), ["index.html", "lesson.html"]);
    const index = await read(folder, "index");
    assertEquals(index.split("fillets.csv line 2").length, 2, index);

    await Deno.remove(join(folder, "own", "layup.csv"));
    await Deno.remove(join(folder, "own", "fillets.csv"));
    await Deno.writeTextFile(join(folder, "own", "layup.ods"), "PK");
    const sheet = await command(folder, "--part", "own");
    assertEquals(sheet.code, 1);
    assert(sheet.out.includes("found layup.ods, which is not read: save it as CSV"), sheet.out);
  });
});

Deno.test("a wrong input of a cell is said without its place in the program, with its first fault", async () => {
  const wrong = notebookOf(
    "# Title",
    'import { InputError } from "@laminate/notebooks/check";\nthrow new InputError("weigh it", [' +
      '{ argument: "mass", value: 0, wanted: "must be above 0" }, ' +
      '{ argument: "area", value: 1, wanted: "must be below 0" }]);',
  );
  await withFolder(async (folder) => {
    await writeNotebooks(folder, { wrong });
    const { code, out } = await command(folder);
    assertEquals(code, 1);
    assert(out.includes("  wrong, Cannot weigh it: 2 faults\n      mass is 0"), out);
    assert(
      out.includes("NO ANSWER: Cannot weigh it: 2 faults, the first: mass is 0, must be above 0"),
      out,
    );
  });
});

Deno.test("what a cell itself refuses is said as a sentence, without frames that have no names", async () => {
  const refused = notebookOf("# Title", 'throw new Error("there is no lay-up soel: sole, tray");');
  await withFolder(async (folder) => {
    await writeNotebooks(folder, { refused });
    const { code, out } = await command(folder);
    assertEquals(code, 1);
    assert(/refused, code cell 1 \(.*\): there is no lay-up soel: sole, tray\n\n/.test(out), out);
    assert(!out.includes("<anonymous>"), out);
  });
});

const SET: readonly [string, string] = [
  'let part = "data/a";\nlet units: "metric" | "US" = "metric";\nlet span = "400 mm";\n' +
  'let name = "sole";\nlet given: string[] = [];',
  "parameters",
];
const setNotebook = (): Notebook =>
  notebookOf("# Title", SET, SHOW, "answer(`${name}: ${span} in ${units}`);");

Deno.test("settings.csv and --units set the first cell, the page says so, and hostile values stay text", async () => {
  const hostile = '"; Deno.exit(3); <script>alert(1)</script> ${1} $& `x` \\';
  await withFolder(async (folder) => {
    await writeNotebooks(folder, { set: setNotebook() });
    const before = await Deno.readTextFile(join(folder, "set.ipynb"));
    const row = `set,name,"${hostile.replaceAll('"', '""')}"\n`;
    await writePart(join(folder, "own"), {
      "settings.csv": `notebook,name,value\n,units,US\nset,span,16 in\n${row}`,
    });
    const { code, out } = await command(folder, "--part", "own");
    assertEquals(code, 0, out);
    assert(out.includes(`  ${hostile}: 16 in in US\n`), out);
    const page = await read(folder, "set");
    const said =
      "Settings from settings.csv: units = US, span = 16 in, name = &quot;; Deno.exit(3);";
    assert(page.includes(said), page.slice(0, 3000));
    assert(!page.includes("<script>alert"), "no script of a cell");
    assert(page.includes("let span = &quot;16 in&quot;;"), "the first cell shows what counts");
    const given = "let given: string[] = [&quot;units&quot;, &quot;span&quot;, &quot;name&quot;];";
    assert(page.includes(given), "and what of it is the builder's own");
    assertEquals(await Deno.readTextFile(join(folder, "set.ipynb")), before, "left as it was");

    const metric = await command(folder, "--part", "own", "--units", "metric");
    assert(metric.out.includes(": 16 in in metric\n"), metric.out);
    const own = await command(folder, "--units", "US");
    assert(own.out.includes("sole: 400 mm in US\n"), own.out);
    assert((await read(folder, "set")).includes("Settings from the command: units = US<"));
  });
});

Deno.test("a wrong settings.csv: no answer, each row named; --settings writes one that can be kept", async () => {
  await withFolder(async (folder) => {
    await writeNotebooks(folder, { set: setNotebook() });
    const own = join(folder, "own");
    await writePart(own, { "settings.csv": "notebook,name,value\nset,spam,1\nset,span,1 kg\n" });
    const { code, out } = await command(folder, "--part", "own");
    assertEquals(code, 1);
    assert(out.includes('settings.csv line 2: name is "spam", must be one that set has:'), out);
    assert(out.includes('settings.csv line 3: value of span is "1 kg", must be a length'), out);
    assertEquals(names(join(folder, "out")), ["index.html"]);
    const there = await command(folder, "--part", "own", "--settings");
    assertEquals(there.code, 2);
    assert(there.err.includes("settings.csv is there already"), there.err);
    await Deno.remove(join(own, "settings.csv"));
    assertEquals((await command(folder, "--part", "own", "--settings")).code, 0);
    assertEquals(
      await Deno.readTextFile(join(own, "settings.csv")),
      "\ufeffnotebook,name,value\n,units,metric\n,span,400 mm\n,name,sole\n",
    );
    const kept = await command(folder, "--part", "own");
    assert(kept.out.includes("sole: 400 mm in metric\n"), kept.out);
    assert(!(await read(folder, "set")).includes("Settings from"));
  });
});
