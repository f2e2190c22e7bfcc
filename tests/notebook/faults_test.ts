import { assert, assertEquals } from "@std/assert";
import { join } from "@std/path";
import { ROOT } from "../../lib/notebook/cli/project.ts";
import { notebookPage } from "../../lib/notebook/page/notebook_page.ts";
import { parseNotebook } from "../../lib/notebook/runner/notebook_file.ts";
import { notebookOf, until, withFolder, writeNotebooks } from "./_fixtures.ts";

const PROGRAM = join(ROOT, "lib/notebook/cli/notebooks.ts");
const SHOW = 'import { answer } from "@laminate/notebooks/notebook";';
const OLD_PAGE = "an answer of yesterday";

const commandLine = (folder: string, ...args: readonly string[]): string[] => [
  ...["run", "--quiet", "-A", PROGRAM, "--from", folder, "--out", join(folder, "out")],
  ...args,
];

const names = (folder: string): string[] =>
  [...Deno.readDirSync(folder)].map(({ name }) => name).sort();

interface Running {
  readonly child: Deno.ChildProcess;
  /** All that it has printed so far. */
  readonly printed: () => string;
  /** Its exit code, once it has ended. */
  readonly code: Promise<number>;
}

/** Starts a program and listens to it. */
function start(program: string, args: readonly string[]): Running {
  const child = new Deno.Command(program, {
    args: [...args],
    env: { NO_COLOR: "1" },
    stdin: "null",
    stdout: "piped",
    stderr: "piped",
  }).spawn();
  let text = "";
  const listen = async (stream: ReadableStream<Uint8Array>): Promise<void> => {
    const decoder = new TextDecoder();
    for await (const piece of stream) text += decoder.decode(piece, { stream: true });
  };
  const heard = Promise.all([listen(child.stdout), listen(child.stderr)]);
  const code = child.status.then(async (status) => (await heard, status.code));
  return { child, printed: () => text, code };
}

/** The processes that a process has started. */
async function childrenOf(pid: number): Promise<number[]> {
  const found: number[] = [];
  for await (const { name } of Deno.readDir("/proc")) {
    if (!/^\d+$/.test(name)) continue;
    const status = await Deno.readTextFile(`/proc/${name}/status`).catch(() => "");
    if (Number(status.match(/^PPid:\s+(\d+)$/m)?.[1]) === pid) found.push(Number(name));
  }
  return found;
}

Deno.test("a kernel that is killed outright fails its notebook, and the next one runs", async () => {
  await withFolder(async (folder) => {
    await writeNotebooks(folder, {
      "1-killed": notebookOf("# Killed", "1;", "while (true) {}"),
      "2-next": notebookOf("# Next", SHOW, 'answer("It runs.");'),
    });
    await Deno.mkdir(join(folder, "out"));
    await Deno.writeTextFile(join(folder, "out", "1-killed.html"), OLD_PAGE);
    const run = start(Deno.execPath(), commandLine(folder));
    assert(await until(() => run.printed().includes("1-killed: 1 2 of 2"), 60_000), run.printed());
    const [kernel] = await childrenOf(run.child.pid);
    Deno.kill(kernel!, "SIGKILL");
    assertEquals(await run.code, 1);
    const text = run.printed();
    assert(
      text.includes(
        "1-killed, code cell 2 (while (true) {}): the kernel ended in it, exit code 137: " +
          "it was killed, as a machine short of memory does",
      ),
      text,
    );
    assert(text.includes("It runs."), text);
    assertEquals(names(join(folder, "out")), ["2-next.html", "index.html"]);
  });
});

Deno.test("a disk that fills up: no half page, the notebook as it was, the reason and the file", async () => {
  await withFolder(async (folder) => {
    const long = `answer("${"It is written at length. ".repeat(2000)}");`;
    await writeNotebooks(folder, { good: notebookOf("# Title", SHOW, long) });
    await Deno.mkdir(join(folder, "out"));
    await Deno.writeTextFile(join(folder, "out", "good.html"), OLD_PAGE);
    await Deno.writeTextFile(join(folder, "out", "index.html"), OLD_PAGE);
    const before = await Deno.readTextFile(join(folder, "good.ipynb"));
    // No file may grow beyond 8 kB; the write fails as it does where no room is left.
    const limited = 'trap "" XFSZ; ulimit -f 16; exec "$0" "$@"';
    const args = ["-c", limited, Deno.execPath(), ...commandLine(folder, "--store")];
    const run = start("sh", args);
    assertEquals(await run.code, 1, run.printed());
    const text = run.printed();
    assert(text.includes(`cannot write ${join(folder, "out", "good.html")}: `), text);
    assert(text.includes(`NO INDEX: cannot write ${join(folder, "out", "index.html")}: `), text);
    assert(!text.includes("All answers"), text);
    assertEquals(await Deno.readTextFile(join(folder, "good.ipynb")), before);
    // The page would have read like today's answer; the index is yesterday's, whole.
    assertEquals(names(join(folder, "out")), ["index.html"]);
    assertEquals(await Deno.readTextFile(join(folder, "out", "index.html")), OLD_PAGE);
  });
});

Deno.test("two runs at once: both succeed, pages and notebooks are whole", async () => {
  await withFolder(async (folder) => {
    await writeNotebooks(folder, { good: notebookOf("# Title", SHOW, 'answer("It is light.");') });
    const runs = [1, 2].map(() => start(Deno.execPath(), commandLine(folder, "--store")));
    for (const run of runs) assertEquals(await run.code, 0, run.printed());
    assertEquals(names(join(folder, "out")), ["good.html", "index.html"]);
    assertEquals(names(folder), ["good.ipynb", "out"]);
    const stored = await Deno.readTextFile(join(folder, "good.ipynb"));
    assertEquals(
      await Deno.readTextFile(join(folder, "out", "good.html")),
      notebookPage(parseNotebook(stored, "good.ipynb"), "good"),
    );
  });
});

Deno.test("a part folder that is taken away meanwhile is told by name, and leaves no page", async () => {
  await withFolder(async (folder) => {
    const part = join(folder, "hatch");
    await Deno.mkdir(part);
    await writeNotebooks(folder, {
      part: notebookOf(
        "# Title",
        ['let part = "hatch";', "parameters"],
        'import { readPart } from "@laminate/notebooks/records";\n' +
          "while (await Deno.stat(part).then(() => true, () => false));",
        "await readPart(part);",
      ),
    });
    const run = start(Deno.execPath(), commandLine(folder));
    assert(await until(() => run.printed().includes("part: 1 2"), 60_000), run.printed());
    await Deno.remove(part);
    assertEquals(await run.code, 1);
    const text = run.printed();
    assert(text.includes('folder is "hatch", must be a folder that exists'), text);
    assertEquals(names(join(folder, "out")), ["index.html"]);
  });
});

Deno.test("a program that is killed while it writes a table leaves the old one or the new one", async () => {
  await withFolder(async (folder) => {
    const path = join(folder, "weighings.csv");
    const [old, fresh] = ["old,", "new,"].map((cell) => cell.repeat(2_000_000));
    const writer = join(folder, "write.ts");
    await Deno.writeTextFile(
      writer,
      'import { replaceFile } from "@laminate/notebooks/records";\n' +
        'for (let i = 1;; i++) {\n  console.log("round", i);\n' +
        "  await replaceFile(Deno.args[0]!, " +
        '(i % 2 === 0 ? "old," : "new,").repeat(2_000_000));\n}\n',
    );
    for (const delay of [0, 7, 19]) {
      await Deno.writeTextFile(path, old!);
      const run = start(Deno.execPath(), ["run", "--quiet", "--no-check", "-A", writer, path]);
      assert(await until(() => run.printed().includes("round 2"), 60_000), run.printed());
      await new Promise((resolve) => setTimeout(resolve, delay));
      run.child.kill("SIGKILL");
      await run.code;
      const left = await Deno.readTextFile(path);
      assert(left === old || left === fresh, `${left.length} characters`);
    }
  });
});
