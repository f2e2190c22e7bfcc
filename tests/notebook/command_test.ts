import { assert, assertEquals } from "@std/assert";
import { join } from "@std/path";
import { ROOT } from "../../lib/notebook/cli/project.ts";
import { command, good, names, PART, PROGRAM, read, SHOW, writePart } from "./_command.ts";
import { isAlive, notebookOf, until, withFolder, writeNotebooks } from "./_fixtures.ts";

Deno.test("a run prints progress, answer and place, and writes a page and an index", async () => {
  await withFolder(async (folder) => {
    await writeNotebooks(folder, { good: good() });
    const before = await Deno.readTextFile(join(folder, "good.ipynb"));
    const { code, out } = await command(folder);
    assertEquals(code, 0);
    assert(/^good: 1 2 3 of 3 done in [\d.]+ s$/m.test(out), out);
    assert(out.includes("Title of good\n  Part data/a is light.\n"), out);
    assert(out.includes(join(folder, "out", "good.html")), out);
    assertEquals(names(join(folder, "out")), ["good.html", "index.html"]);
    assert((await read(folder, "good")).includes("<strong>Part data/a is light.</strong>"));
    const index = await read(folder, "index");
    assert(index.includes('<a href="good.html">Title of good</a>'), index);
    assert(index.includes("Part data/a is light."), index);
    assertEquals(await Deno.readTextFile(join(folder, "good.ipynb")), before, "left as it was");
  });
});

Deno.test("another part folder gives another answer, named as the notebook would", async () => {
  await withFolder(async (folder) => {
    await writeNotebooks(folder, { good: good() });
    await writePart(join(folder, 'b "quoted" $& \\part'));
    const { code, out } = await command(folder, "--part", 'b "quoted" $& \\part');
    assertEquals(code, 0, out);
    assert(out.includes('Part b "quoted" $& \\part is light.'), out);
    const data = await command(folder, "--part", join(ROOT, "data/sole-panels"));
    assert(data.out.includes("Part ../../data/sole-panels is light."), data.out);
    assert((await read(folder, "good")).includes("Part folder: <code>data/sole-panels</code>"));
    const outside = await Deno.makeTempDir();
    await writePart(outside);
    assert((await command(folder, "--part", outside)).out.includes(`Part ${outside} is light.`));
    await Deno.remove(outside, { recursive: true });
  });
});

Deno.test("a failed cell: exit 1, with notebook, cell and error; its old page is gone", async () => {
  const cases: readonly [string, string | readonly [string, string], RegExp][] = [
    ["error", 'const k = 1;\nthrow new RangeError("no such core");', /RangeError: no such core/],
    ["ends", "Deno.exit(3);", /the kernel ended in it, exit code 3/],
    ["import", 'import "npm:laminate-no-such-package@1.0.0";', /laminate-no-such-package/],
    ["syntax", "const a: = 3;", /line 1: SyntaxError: Unexpected token/],
    ["nan", "const span = 0;\n0 / span;", /ends in a value and shows nothing: NaN/],
    [
      "late",
      'setTimeout(() => { throw new Error("timer") });\nawait new Promise((r) => setTimeout(r, 30));',
      /timer/,
    ],
    ["calm", ["1 + 1;", "raises-exception"], /tagged raises-exception and raised none/],
  ];
  await withFolder(async (folder) => {
    await writeNotebooks(folder, {
      ...Object.fromEntries(
        cases.map(([name, cell]) => [name, notebookOf("# Title", PART, SHOW, cell, "1;")]),
      ),
      good: good(),
    });
    await Deno.mkdir(join(folder, "out"));
    await Deno.writeTextFile(join(folder, "out", "error.html"), "an answer of yesterday");
    const { code, out } = await command(folder);
    assertEquals(code, 1);
    for (const [name, cell, message] of cases) {
      const first = (typeof cell === "string" ? cell : cell[0]).split("\n")[0];
      const line = out.split("\n").find((text) => text.startsWith(`  ${name}, code cell 3`));
      assert(line?.startsWith(`  ${name}, code cell 3 (${first}): `), `${name}: ${out}`);
      const report = out.slice(out.indexOf(line!)).split("\n\n")[0]!;
      assert(message.test(report), `${name}: ${report}`);
    }
    assertEquals(names(join(folder, "out")), ["good.html", "index.html"]);
    const index = await read(folder, "index");
    assert(index.includes("No answer: code cell 3 (const k = 1;): RangeError"), index);
    assert(out.includes("  NO ANSWER: code cell 3"), out);
    assert(out.includes("Part data/a is light."), "the others still answer");
  });
});

Deno.test("a cell beyond the time limit fails its notebook", async () => {
  await withFolder(async (folder) => {
    await writeNotebooks(folder, { limit: notebookOf("# Title", "1;", "while (true) {}") });
    const { code, out } = await command(folder, "--time-limit", "1.5");
    assertEquals(code, 1);
    assert(
      out.includes("  limit, code cell 2 (while (true) {}): it did not end within 1.5 s"),
      out,
    );
  });
});

Deno.test("stored outputs: --store writes them, --check finds what is stale, runs are equal", async () => {
  await withFolder(async (folder) => {
    await writeNotebooks(folder, { good: good() });
    const path = join(folder, "good.ipynb");
    const stale = await command(folder, "--check");
    assertEquals(stale.code, 1);
    assert(stale.out.includes("good: stored outputs differ from fresh ones"), stale.out);
    assertEquals(names(folder), ["good.ipynb"], "--check writes nothing");
    assertEquals((await command(folder, "--store")).code, 0);
    const [notebook, page] = [await Deno.readTextFile(path), await read(folder, "good")];
    assertEquals((await command(folder, "--check")).code, 0);
    assertEquals((await command(folder, "--store")).code, 0);
    assertEquals(await Deno.readTextFile(path), notebook);
    assertEquals(await read(folder, "good"), page);
    assertEquals(names(folder), ["good.ipynb", "out"], "nothing half-written is left");
    await Deno.writeTextFile(path, notebook.replace("<strong>Part", "<strong>Thing"));
    assertEquals((await command(folder, "--check")).code, 1);
  });
});

Deno.test("a failed notebook keeps the outputs that were stored", async () => {
  await withFolder(async (folder) => {
    await writeNotebooks(folder, { bad: notebookOf("# Title", 'throw new Error("no");') });
    const before = await Deno.readTextFile(join(folder, "bad.ipynb"));
    assertEquals((await command(folder, "--store")).code, 1);
    assertEquals(await Deno.readTextFile(join(folder, "bad.ipynb")), before);
  });
});

Deno.test("a command that cannot be meant: exit 2 and a sentence, nothing run", async () => {
  await withFolder(async (folder) => {
    await writeNotebooks(folder, { good: good() });
    const outside = await Deno.makeTempDir();
    await writeNotebooks(outside, { good: good() });
    for (
      const [args, sentence] of [
        [["--fast"], /Unknown option '--fast'/],
        [["nope"], /no notebook nope; there are: good/],
        [["--part", "nowhere"], /--part: there is no folder .*nowhere/],
        [["--store", "--check"], /exclude each other/],
        [["--store", "--part", "."], /leave --part out/],
        [["--time-limit", "0"], /--time-limit is 0, must be seconds above 0/],
        [["--from", "nowhere"], /there is no folder .*nowhere/],
        [["--from", outside], /--from: .* must lie inside the project/],
        [["--units", "imperial"], /--units is imperial, must be metric or US/],
        [["--units", "US", "--store"], /leave --units out/],
        [["--settings"], /--settings writes into a part folder: name it with --part/],
      ] as const
    ) {
      const { code, err } = await command(folder, ...args);
      assertEquals(code, 2, err);
      assert(sentence.test(err), err);
    }
    await Deno.remove(outside, { recursive: true });
    assertEquals(names(folder), ["good.ipynb"]);
  });
});

Deno.test("by name, only that notebook runs, and a path or an ending is no hindrance", async () => {
  await withFolder(async (folder) => {
    await writeNotebooks(folder, { good: good(), other: notebookOf("# Other", "1;") });
    assertEquals((await command(folder, "notebooks/good.ipynb")).code, 0);
    assertEquals(names(join(folder, "out")), ["good.html", "index.html"]);
  });
});

Deno.test("notebooks run in the order of their numbers: 2 before 10", async () => {
  await withFolder(async (folder) => {
    const plain = notebookOf("# Title", "1;");
    await writeNotebooks(folder, { "10-last": plain, "2-second": plain, "1-first": plain });
    const { out } = await command(folder);
    assertEquals(out.match(/^\S+(?=: 1 of 1 done)/gm), ["1-first", "2-second", "10-last"]);
  });
});

for (const [signal, code] of [["SIGINT", 130], ["SIGTERM", 143]] as const) {
  Deno.test(`${signal} in a running cell: no kernel is left, no page, exit ${code}`, async () => {
    await withFolder(async (folder) => {
      await writeNotebooks(folder, {
        slow: notebookOf("# Slow", "console.log(1);", "while (true) {}"),
      });
      const child = new Deno.Command(Deno.execPath(), {
        args: ["run", "--quiet", "-A", PROGRAM, "--from", folder, "--out", join(folder, "out")],
        env: { NO_COLOR: "1" },
        stdin: "null",
        stdout: "piped",
        stderr: "null",
      }).spawn();
      const out = child.stdout.pipeThrough(new TextDecoderStream()).getReader();
      let text = "";
      while (!text.includes("2 of 2")) {
        const { value, done } = await out.read();
        assert(!done, text);
        text += value;
      }
      const kernels = await childrenOf(child.pid);
      assertEquals(kernels.length, 1);
      child.kill(signal);
      assertEquals((await child.status).code, code);
      await out.cancel();
      assert(await until(async () => !await isAlive(kernels[0]!)), "the kernel must be gone");
      assertEquals(names(folder), ["slow.ipynb"]);
    });
  });
}

async function childrenOf(pid: number): Promise<number[]> {
  const found: number[] = [];
  for await (const { name } of Deno.readDir("/proc")) {
    if (!/^\d+$/.test(name)) continue;
    const status = await Deno.readTextFile(`/proc/${name}/status`).catch(() => "");
    if (Number(status.match(/^PPid:\s+(\d+)$/m)?.[1]) === pid) found.push(Number(name));
  }
  return found;
}
