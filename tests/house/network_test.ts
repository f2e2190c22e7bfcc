import { assert, assertEquals } from "@std/assert";
import { join, toFileUrl } from "@std/path";
import { ROOMS, ROOT } from "./_source.ts";

const CONFIG = join(ROOT, "deno.json");

async function deno(
  args: readonly string[],
  env: Readonly<Record<string, string>> = {},
): Promise<{ readonly code: number; readonly text: string }> {
  const { code, stdout, stderr } = await new Deno.Command(Deno.execPath(), {
    args: [...args],
    cwd: ROOT,
    env: { NO_COLOR: "1", ...env },
    stdin: "null",
  }).output();
  const decoder = new TextDecoder();
  return { code, text: decoder.decode(stdout) + decoder.decode(stderr) };
}

async function inFolder(use: (folder: string) => Promise<void>): Promise<void> {
  const folder = await Deno.makeTempDir({ prefix: "laminate-network-" });
  try {
    await use(folder);
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}

Deno.test("every room is imported without any permission, from what is installed", async () => {
  await inFolder(async (folder) => {
    const program = join(folder, "import.ts");
    const rooms = [...ROOMS.map((room) => `${room}/mod.ts`), "mod.ts"];
    const lines = rooms.map((room) => `import "${toFileUrl(join(ROOT, "lib", room)).href}";`);
    await Deno.writeTextFile(program, `${lines.join("\n")}\nconsole.log("imported");\n`);
    const bare = ["--no-prompt", "--cached-only", "--no-check", "--config", CONFIG];
    const { code, text } = await deno(["run", ...bare, program]);
    assertEquals([code, text], [0, "imported\n"]);
  });
});

Deno.test("each task says which permissions it needs, and asks for no new version of Deno", async () => {
  const { tasks } = JSON.parse(await Deno.readTextFile(CONFIG)) as {
    readonly tasks: Readonly<Record<string, { readonly command: string }>>;
  };
  for (const [name, { command }] of Object.entries(tasks)) {
    for (const step of command.split("&&").map((part) => part.trim())) {
      if (!/\bdeno (run|test|bench)\b/.test(step)) continue;
      // Tests drive browsers and programs of every kind.
      const all = name === "coverage";
      assertEquals(/--allow-all| -A\b/.test(step), all, `${name}: ${step}`);
      assert(/--allow-/.test(step), `${name} names no permission: ${step}`);
      if (/--allow-net/.test(step)) assert(/--allow-net=127\.0\.0\.1 /.test(step), step);
      if (/\bdeno run\b/.test(step)) {
        assert(step.startsWith("DENO_NO_UPDATE_CHECK=1 "), `${name} would look for Deno: ${step}`);
      }
    }
  }
});

/** Stands in for the way out: whoever wants to leave the machine has to ask here. */
async function askedToLeave(
  use: (env: Record<string, string>) => Promise<void>,
): Promise<string[]> {
  const listener = Deno.listen({ hostname: "127.0.0.1", port: 0 });
  const asked: string[] = [];
  const listening = (async (): Promise<void> => {
    for await (const connection of listener) {
      const bytes = new Uint8Array(200);
      const length = await connection.read(bytes).catch(() => 0);
      const line = new TextDecoder().decode(bytes.subarray(0, length ?? 0)).split("\r\n")[0]!;
      // Who wants to leave says where to; a knock without a word is another program's on this
      // machine, looking whether its own port is open.
      if (line !== "") asked.push(line);
      connection.close();
    }
  })();
  const way = `http://127.0.0.1:${listener.addr.port}`;
  try {
    await use({ HTTP_PROXY: way, HTTPS_PROXY: way, http_proxy: way, https_proxy: way });
  } finally {
    listener.close();
    await listening;
  }
  return asked;
}

/** Makes Deno's folder as the task `packages` leaves it: nothing that a later command found out. */
async function justInstalled(folder: string): Promise<void> {
  const installed = await deno(["install", "--quiet", "--no-lock"]);
  assertEquals(installed.code, 0, installed.text);
  const { npmCache } = JSON.parse((await deno(["info", "--json"])).text);
  await Deno.mkdir(folder);
  // Links would lead Deno out of the folder.
  await new Deno.Command("cp", { args: ["-R", npmCache, join(folder, "npm")] }).output();
}

Deno.test("once installed, the tasks reach nothing outside the machine", async () => {
  await inFolder(async (folder) => {
    const home = join(folder, "deno");
    await justInstalled(home);
    const asked = await askedToLeave(async (way) => {
      const env = { ...way, DENO_DIR: home, JUPYTER_DATA_DIR: folder };
      const out = join(folder, "out");
      // One with a live figure, whose program is bundled, and one that reads a part.
      const notebooks = ["notebooks", "--out", out, "1-after-weighing", "20-lesson-just-wet"];
      for (const task of [["docs", join(out, "docs")], notebooks, ["kernel"]]) {
        const { code, text } = await deno(["task", "--quiet", ...task], env);
        assertEquals(code, 0, text);
        assert(!text.includes("stand still"), text);
      }
      const lesson = await Deno.readTextFile(join(out, "20-lesson-just-wet.html"));
      assert(lesson.includes("<script>"), "the lesson's figure stands still");
      assert((await Deno.stat(join(out, "docs/index.html"))).isFile, "the notebooks took the docs");
    });
    assertEquals(asked, []);
    // The stand-in does hear who wants to leave.
    const control = await askedToLeave(async (env) => {
      await deno(["eval", 'await fetch("https://example.org").catch(() => {});'], env);
    });
    assert(control.length > 0);
  });
});
