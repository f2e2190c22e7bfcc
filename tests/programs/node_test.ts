import { assert, assertEquals } from "@std/assert";
import { join } from "@std/path";
import { ROOT } from "../house/_source.ts";

/** The program of the README, between its fences. */
async function readmeProgram(): Promise<string> {
  const readme = await Deno.readTextFile(join(ROOT, "README.md"));
  return readme.match(/```js\n([^]*?)```/)![1]!;
}

async function run(command: string, args: readonly string[], cwd: string): Promise<string> {
  const { success, stdout, stderr } = await new Deno.Command(command, { args: [...args], cwd })
    .output();
  assert(success, new TextDecoder().decode(stderr));
  return new TextDecoder().decode(stdout).trim();
}

function has(command: string): boolean {
  try {
    return new Deno.Command(command, { args: ["--version"] }).outputSync().success;
  } catch {
    console.log(`skipped: ${command} is not installed`);
    return false;
  }
}

Deno.test({
  name: "packed for npm, the README's program runs in Node without any other package",
  ignore: !has("node") || !has("tar"),
  async fn(): Promise<void> {
    const folder = await Deno.makeTempDir();
    try {
      const tarball = join(folder, "packed.tgz");
      await run(
        Deno.execPath(),
        ["pack", "--quiet", "--allow-dirty", "--output", tarball],
        ROOT,
      );
      const home = join(folder, "node_modules/@laminate/notebooks");
      await Deno.mkdir(home, { recursive: true });
      await run("tar", ["-xzf", tarball, "--strip-components=1", "-C", home], folder);
      await Deno.writeTextFile(join(folder, "beam.mjs"), await readmeProgram());
      // By hand: D = 0.075 [19e9 (0.0108³ − 0.01³)/12 + 71e6 · 0.01³/12], S = 27e6 · 0.075 · 0.0104²/0.01.
      const D = 0.075 * (19e9 * (0.0108 ** 3 - 0.01 ** 3) + 71e6 * 0.01 ** 3) / 12;
      const S = 27e6 * 0.075 * 0.0104 ** 2 / 0.01;
      const slope = 0.5 ** 3 / (48 * D) + 0.5 / (4 * S);
      assertEquals(
        await run("node", ["beam.mjs"], folder),
        `${(1e6 * slope).toFixed(1)} mm/kN`,
      );
    } finally {
      await Deno.remove(folder, { recursive: true });
    }
  },
});
