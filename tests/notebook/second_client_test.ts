import { assert, assertEquals } from "@std/assert";
import { join } from "@std/path";
import { kernelspec } from "../../lib/notebook/cli/install_kernel.ts";
import { NOTEBOOKS } from "../../lib/notebook/cli/project.ts";
import { notebookFile, notebookNames } from "../../lib/notebook/runner/files.ts";
import {
  KERNELSPEC,
  type Notebook,
  type Output,
  parseNotebook,
  writeNotebook,
} from "../../lib/notebook/runner/notebook_file.ts";
import { runNotebook } from "../../lib/notebook/runner/run_notebook.ts";
import { installed, notebookFolders, withFolder } from "./_fixtures.ts";

/**
 * Whether a kept output is one of ours. A second client stops listening when the kernel says idle,
 * so that it may lose late outputs and the end of a stream, but what it keeps has to be equal.
 */
function isOurs(kept: Output, ours: readonly Output[]): boolean {
  return ours.some((own) => {
    if (kept.output_type === "stream") {
      return own.output_type === "stream" && own.name === kept.name && own.text.includes(kept.text);
    }
    if (kept.output_type === "error") {
      return own.output_type === "error" && own.ename === kept.ename && own.evalue === kept.evalue;
    }
    return "data" in own && own.output_type === kept.output_type &&
      JSON.stringify(sortedKeys(own.data)) === JSON.stringify(sortedKeys(kept.data));
  });
}

const sortedKeys = (data: Readonly<Record<string, unknown>>): unknown[] =>
  Object.entries(data).sort(([a], [b]) => a < b ? -1 : 1);

async function convert(folder: string, name: string, to: string): Promise<Notebook> {
  const spec = join(to, "kernels", KERNELSPEC.name);
  await Deno.mkdir(spec, { recursive: true });
  await Deno.writeTextFile(join(spec, "kernel.json"), kernelspec([Deno.execPath()]));
  const { success, stderr } = await new Deno.Command("jupyter-nbconvert", {
    args: ["--to", "notebook", "--execute", "--output-dir", to, notebookFile(folder, name)],
    env: { JUPYTER_PATH: to, NO_COLOR: "1" },
    stdin: "null",
  }).output();
  assert(success, new TextDecoder().decode(stderr));
  return parseNotebook(await Deno.readTextFile(notebookFile(to, name)), name);
}

const hasJupyter = installed("jupyter-nbconvert");

for (const folder of notebookFolders()) {
  for (const name of await notebookNames(folder)) {
    Deno.test({
      name: `nbconvert runs ${name} without an error, and every output that it keeps equals ours`,
      ignore: !hasJupyter,
      fn: () =>
        withFolder(async (to) => {
          const source = parseNotebook(
            await Deno.readTextFile(notebookFile(folder, name)),
            name,
          );
          const ours = await runNotebook(source, { folder, timeLimit: 60_000 });
          assertEquals(ours.failure, undefined);
          const all = ours.notebook.cells.reduce((n, c) => n + (c.outputs?.length ?? 0), 0);
          let kept = 0;
          // Of 60 outputs up to 8 were lost, once 5 of 10 on a busy machine: then it runs again. That
          // most are kept shows that it did run.
          for (let run = 0; run < 3 && !(kept > all / 2); run++) {
            const theirs = await convert(folder, name, to);
            kept = 0;
            for (const [i, cell] of theirs.cells.entries()) {
              const own = ours.notebook.cells[i]!;
              assertEquals([cell.id, cell.source], [own.id, own.source]);
              for (const output of cell.outputs ?? []) {
                kept++;
                assert(
                  isOurs(output, own.outputs ?? []),
                  `cell ${cell.id}:\n${JSON.stringify(output)}\n${JSON.stringify(own.outputs)}`,
                );
              }
            }
          }
          assert(kept > all / 2, `it kept ${kept} of ${all} outputs`);
        }),
    });
  }
}

Deno.test({
  name: "what we write is valid by Jupyter's own schema of the notebook format",
  ignore: !installed("jupyter-nbconvert"),
  fn: () =>
    withFolder(async (to) => {
      const folder = join(NOTEBOOKS, "../tests/notebook/fixtures");
      const tour = parseNotebook(await Deno.readTextFile(notebookFile(folder, "tour")), "tour");
      await Deno.writeTextFile(join(to, "tour.ipynb"), writeNotebook(tour));
      const code =
        "import nbformat, sys; nbformat.validate(nbformat.read(sys.argv[1], as_version=4))";
      const { success, stderr } = await new Deno.Command("/usr/bin/python3", {
        args: ["-W", "error", "-c", code, join(to, "tour.ipynb")],
      }).output();
      assert(success, new TextDecoder().decode(stderr));
    }),
});
