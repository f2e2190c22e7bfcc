import { assert, assertEquals } from "@std/assert";
import { join } from "@std/path";
import { bundlerInPlace } from "../../lib/notebook/page/bundler.ts";
import { ROOT } from "../house/_source.ts";
import { installed } from "../notebook/_fixtures.ts";
import { hasChromium, withPage } from "./_chromium.ts";

const README = await Deno.readTextFile(join(ROOT, "README.md"));

/** What stands between fences in the README, by the name in its first line. */
function listing(name: string): string {
  const fenced = [...README.matchAll(/```\w+\n([^]*?)```/g)].map(([, text]) => text!);
  const found = fenced.find((text) => text.split("\n")[0]!.includes(name));
  assert(found !== undefined, `the README has no ${name}`);
  return found;
}

async function run(command: string, args: readonly string[], cwd: string): Promise<string> {
  const { success, stdout, stderr } = await new Deno.Command(command, { args: [...args], cwd })
    .output();
  assert(success, new TextDecoder().decode(stderr));
  return new TextDecoder().decode(stdout).trim();
}

/** A folder with the library packed for npm and installed, without any other package. */
async function withPackage(use: (folder: string) => Promise<void>): Promise<void> {
  const folder = await Deno.makeTempDir();
  try {
    const tarball = join(folder, "packed.tgz");
    await run(Deno.execPath(), ["pack", "--quiet", "--allow-dirty", "--output", tarball], ROOT);
    const home = join(folder, "node_modules/@laminate/notebooks");
    await Deno.mkdir(home, { recursive: true });
    await run("tar", ["-xzf", tarball, "--strip-components=1", "-C", home], folder);
    const dependencies = { "@laminate/notebooks": `file:${tarball}` };
    await Deno.writeTextFile(join(folder, "package.json"), JSON.stringify({ dependencies }));
    await use(folder);
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}

/** Deflection on load at mid-span of the README's beam, by hand [m/N]. */
function compliance(span: number): number {
  // D = 0.075 [19e9 (0.0108³ − 0.01³)/12 + 71e6 · 0.01³/12], S = 27e6 · 0.075 · 0.0104²/0.01.
  const D = 0.075 * (19e9 * (0.0108 ** 3 - 0.01 ** 3) + 71e6 * 0.01 ** 3) / 12;
  const S = 27e6 * 0.075 * 0.0104 ** 2 / 0.01;
  return span ** 3 / (48 * D) + span / (4 * S);
}

Deno.test({
  name: "packed for npm, the README's program runs in Node without any other package",
  ignore: !installed("node", "tar"),
  fn: () =>
    withPackage(async (folder) => {
      await Deno.writeTextFile(join(folder, "beam.mjs"), listing("beam.mjs"));
      assertEquals(
        await run("node", ["beam.mjs"], folder),
        `${(1e6 * compliance(0.5)).toFixed(1)} mm/kN`,
      );
    }),
});

Deno.test({
  name: "made into one script as the README says, its page computes in Chromium, from disk",
  ignore: !hasChromium || !installed("tar"),
  fn: () =>
    withPackage(async (folder) => {
      for (const name of ["page.mjs", "page.html"]) {
        await Deno.writeTextFile(join(folder, name), listing(name));
      }
      const [, command] = README.match(/`deno (bundle [^`]*page\.mjs)`/)!;
      await bundlerInPlace();
      await run(Deno.execPath(), command!.split(/\s+/), folder);
      await withPage(async (open, complaints) => {
        const page = await open(join(folder, "page.html"));
        const shown = (): Promise<string | null> => page.locator("output").textContent();
        assertEquals(await shown(), `${(1e5 * compliance(0.5)).toFixed(2)} mm`);
        await page.getByLabel("Span").fill("0.8");
        assertEquals(await shown(), `${(1e5 * compliance(0.8)).toFixed(2)} mm`);
        assertEquals(complaints, []);
      });
    }),
});
