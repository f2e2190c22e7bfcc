import { assert, assertEquals } from "@std/assert";
import { join } from "@std/path";
import { ROOT } from "../../lib/notebook/cli/project.ts";
import { withFolder } from "./_fixtures.ts";

const PART = join(ROOT, "tests/notebook/fixtures/unsymmetric-part");

/** Runs one of the project's notebooks on the part, with lines of its first cell changed. */
async function run(
  name: string,
  changes: Readonly<Record<string, string>> = {},
): Promise<{ readonly code: number; readonly out: string; readonly page: string }> {
  let notebook = await Deno.readTextFile(join(ROOT, "notebooks", `${name}.ipynb`));
  for (const [line, other] of Object.entries(changes)) {
    const [from, to] = [line, other].map((text) => JSON.stringify(text).slice(1, -1));
    assert(notebook.includes(from!), `${name} has no line ${line}`);
    notebook = notebook.replace(from!, to!);
  }
  const result = { code: -1, out: "", page: "" };
  await withFolder(async (folder) => {
    await Deno.writeTextFile(join(folder, `${name}.ipynb`), notebook);
    const program = join(ROOT, "lib/notebook/cli/notebooks.ts");
    const out = join(folder, "out");
    const { code, stdout } = await new Deno.Command(Deno.execPath(), {
      args: ["run", "-q", "-A", program, "--from", folder, "--out", out, "--part", PART],
      env: { NO_COLOR: "1" },
      stdin: "null",
    }).output();
    result.code = code;
    result.out = new TextDecoder().decode(stdout);
    result.page = await Deno.readTextFile(join(out, `${name}.html`)).catch(() => "");
  });
  return result;
}

Deno.test("an unsymmetric stack is told to come out bent, and its flattest order is named", async () => {
  const { code, out, page } = await run("5-order-of-plies");
  assertEquals(code, 0, out);
  assert(/Laid as \[mat\/0\/30\], a sheet of "flap" .* roughly \d+ mm out of flat/.test(out), out);
  assert(
    /the same plies laid as \[mat\/30\/0\] come out roughly \d+ mm out of flat/.test(out),
    out,
  );
  assert(
    page.includes("[0_carbon/45_glass/core/90_glass]"),
    "the cover's code stands in the table",
  );
  assert(page.includes("the linear theory overestimates it"), "the page says what is doubtful");
  // Each of the two codes was read back to its schedule's stack.
  assertEquals(page.match(/<td[^>]*>the same<\/td>/g)?.length, 2);
});

Deno.test("what breaks first is found on an unsymmetric stack, by the fibre fraction weighed", async () => {
  const { code, out, page } = await run("6-what-breaks-first");
  assertEquals(code, 0, out);
  // By hand: 16 × 12 in of 1.3 kg/m² of cloth are 161.0 g of fibre, 12.2 oz less that 184.8 g of
  // resin; at 2560 and 1150 kg/m³ that is 0.281 of fibre by volume.
  assert(
    /"flap" as weighed \(flap A, 28\.1 % fibre by volume\) would use \d+ % of its strength/.test(
      out,
    ),
    out,
  );
  assert(page.includes("There is no coupons.csv."));
});

Deno.test("inches and pounds go in and come out, on a sandwich that was not weighed", async () => {
  const { code, out, page } = await run("6-what-breaks-first", {
    'let units: "metric" | "US" = "metric";': 'let units: "metric" | "US" = "US";',
    'let chosen = "";': 'let chosen = "cover";',
    'let heel = "900 N";': 'let heel = "40 lbf";',
    'let span = "400 mm";': 'let span = "16 in";',
    'let pull = "3 kN/m";': 'let pull = "17 lbf/in";',
  });
  assertEquals(code, 0, out);
  assert(
    /heel of 40 lbf on 2\.4 in in the middle of a strip 16 in long .* a pull of 17 lbf\/in, "cover" as scheduled uses/
      .test(out),
    out,
  );
  assert(page.includes("lbf·in/in") && page.includes("ksi"), "stresses and moments in US units");
});
