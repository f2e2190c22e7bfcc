import { assert, assertEquals } from "@std/assert";
import { NOTEBOOKS } from "../../lib/notebook/cli/project.ts";
import { type CellRun, type Kernel, startKernel } from "../../lib/notebook/runner/kernel.ts";
import { outputsOf } from "../../lib/notebook/runner/outputs.ts";
import type { Output } from "../../lib/notebook/runner/notebook_file.ts";
import { isAlive, until } from "./_fixtures.ts";

async function withKernel(use: (kernel: Kernel) => Promise<void>): Promise<void> {
  await Deno.mkdir(NOTEBOOKS, { recursive: true });
  const kernel = await startKernel({ folder: NOTEBOOKS });
  try {
    await use(kernel);
  } finally {
    await kernel.stop();
  }
  assert(!await isAlive(kernel.pid), "the kernel must be gone after stop");
}

const texts = ({ messages }: CellRun): string[] =>
  outputsOf(messages).map((output: Output) =>
    output.output_type === "stream"
      ? output.text
      : output.output_type === "error"
      ? output.ename
      : String(output.data["text/plain"])
  );

Deno.test("cells share their names, count from one, and import the library by its name", async () => {
  await withKernel(async (kernel) => {
    const first = await kernel.execute("const a = 20; a + 1", 10_000);
    assertEquals(texts(first), ["21"]);
    const [output] = outputsOf(first.messages);
    assertEquals(output?.output_type === "execute_result" && output.execution_count, 1);
    const use = await kernel.execute(
      'import { InputError } from "@laminate/notebooks/check"; InputError.name + a',
      10_000,
    );
    assertEquals(texts(use), ['"InputError20"']);
  });
});

Deno.test("outputs that the kernel sends after idle are kept: 200 cells, none lost", async () => {
  await withKernel(async (kernel) => {
    for (let i = 0; i < 200; i++) {
      assertEquals(
        texts(await kernel.execute(`console.log("line ${i}"); ${i}`, 10_000)).sort(),
        [
          String(i),
          `line ${i}\n`,
        ].sort(),
      );
    }
  });
});

Deno.test("pieces of one stream become one output, across 300 lines", async () => {
  await withKernel(async (kernel) => {
    const run = await kernel.execute("for (let i = 0; i < 300; i++) console.log(i)", 10_000);
    assertEquals(texts(run), [Array.from({ length: 300 }, (_, i) => `${i}\n`).join("")]);
  });
});

Deno.test("a cell's error comes with name, message and trace, and the kernel goes on", async () => {
  await withKernel(async (kernel) => {
    const { end } = await kernel.execute('throw new TypeError("no such cloth")', 10_000);
    assert(end.how === "error");
    assertEquals([end.name, end.text], ["TypeError", "no such cloth"]);
    assertEquals(texts(await kernel.execute("1 + 1", 10_000)), ["2"]);
  });
});

Deno.test("an error in a timer, or one that nobody awaits, fails its cell and wedges nothing", async () => {
  await withKernel(async (kernel) => {
    for (
      const code of [
        'setTimeout(() => { throw new Error("late") }); await new Promise((r) => setTimeout(r, 30));',
        'void Promise.reject(new Error("late"));',
      ]
    ) {
      const { end } = await kernel.execute(code, 10_000);
      assert(end.how === "error" && end.trace.includes("late"), JSON.stringify(end));
    }
    assertEquals(texts(await kernel.execute("1 + 1", 10_000)), ["2"]);
  });
});

Deno.test("NaN, Infinity and a BigInt show nothing: the reason for the runner's own check", async () => {
  await withKernel(async (kernel) => {
    for (const code of ["NaN", "Infinity", "-0", "10n"]) {
      assertEquals(texts(await kernel.execute(code, 10_000)), []);
    }
  });
});

Deno.test("a notebook may not start programs, write files or open connections", async () => {
  await withKernel(async (kernel) => {
    for (
      const code of [
        'await new Deno.Command("true").output()',
        'await Deno.writeTextFile("planted", "")',
        "await Deno.connect({ port: 1 })",
      ]
    ) {
      const { end } = await kernel.execute(code, 10_000);
      assertEquals(end.how === "error" && end.name, "NotCapable", code);
    }
  });
});

Deno.test("the time limit ends a cell that computes for ever and one that waits for ever", async () => {
  for (const code of ["while (true) {}", "await new Promise(() => {})"]) {
    await withKernel(async (kernel) => {
      assertEquals((await kernel.execute(code, 300)).end, { how: "time limit" });
    });
  }
});

Deno.test("a kernel that ends in a cell is reported with its exit code", async () => {
  await withKernel(async (kernel) => {
    const { end } = await kernel.execute("Deno.exit(7)", 10_000);
    assertEquals(end.how === "kernel ended" && end.code, 7);
  });
});

Deno.test("a kernel whose runner was killed outright ends by itself", async () => {
  const code = `import { startKernel } from ${
    JSON.stringify(import.meta.resolve("../../lib/notebook/runner/kernel.ts"))
  };
    const kernel = await startKernel({ folder: ${JSON.stringify(NOTEBOOKS)} });
    console.log(kernel.pid);
    await new Promise((resolve) => setTimeout(resolve, 60_000));`;
  const runner = new Deno.Command(Deno.execPath(), {
    args: ["eval", code],
    stdout: "piped",
    stderr: "null",
  }).spawn();
  const reader = runner.stdout.pipeThrough(new TextDecoderStream()).getReader();
  const pid = Number((await reader.read()).value);
  assert(await isAlive(pid));
  runner.kill("SIGKILL");
  await runner.status;
  await reader.cancel();
  assert(await until(async () => !await isAlive(pid)), "the kernel must end with its runner");
});
