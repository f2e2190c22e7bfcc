/**
 * The gate: all that must hold before a change is kept, in one command. Every step runs, whatever
 * the others say; the last line counts tests and steps.
 *
 * @module
 */
import { join } from "node:path";
import { checkCells } from "../lib/notebook/cells/check_cells.ts";
import { unformatted } from "../lib/notebook/cells/format_cells.ts";
import { CONFIG, NOTEBOOKS, ROOT } from "../lib/notebook/cli/project.ts";
import { notebookFile, notebookNames } from "../lib/notebook/runner/files.ts";
import { parseNotebook } from "../lib/notebook/runner/notebook_file.ts";
import {
  addCounts,
  type Counts,
  countTests,
  NONE,
  skippedTests,
  summaryLine,
} from "./gate_counts.ts";

/** Folders whose notebooks are formatted, checked and kept fresh. */
const FOLDERS = [NOTEBOOKS, join(ROOT, "tests/notebook/fixtures")];

/** Tests that start programs or open ports of their own; all others may only read. */
const WITH_PROGRAMS = ["tests/house", "tests/notebook", "tests/programs"];

/** What a step came to. */
interface Step {
  readonly passed: boolean;
  /** What to show if it failed. */
  readonly report?: string;
  /** The tests that ran in it. */
  readonly tests?: Counts;
}

type Steps = readonly (readonly [string, () => Promise<Step>])[];

const STEPS: Steps = [
  ["format", format],
  ["lint", () => deno("lint", "--quiet")],
  ["types", () => deno("check", "--quiet", "lib", "tests")],
  ["notebook cells: types and lint", cells],
  ["documentation of what is exported", docs],
  [
    "tests",
    () => tests(["--parallel", "--allow-read", `--ignore=${WITH_PROGRAMS.join()}`, "tests"]),
  ],
  ["house rules", () => tests(["--allow-all", "tests/house"])],
  ["against other programs", () => tests(["--allow-all", "tests/programs"])],
  ["notebook runner and pages", () => tests(["--allow-all", "tests/notebook"])],
  ["examples in the documentation", () => tests(["--parallel", "--doc", "--allow-read", "lib"])],
  ["stored notebook outputs are fresh", stored],
];

/**
 * Formats a notebook. Left out of `deno fmt` by the settings, since its `--check` in 2.9.6 calls
 * every notebook unformatted, with an empty difference; here a formatted copy is compared.
 */
const BY_HAND = "deno fmt --no-config --line-width=100";

async function format(): Promise<Step> {
  const files = (await notebooks()).map(({ file }) => file);
  // What is left out on the command line takes the place of what the settings leave out.
  const { exclude } = JSON.parse(await Deno.readTextFile(CONFIG)).fmt as { exclude: string[] };
  const plain = await deno("fmt", "--check", `--ignore=${[...files, ...exclude].join()}`);
  const found = await unformatted(files, CONFIG);
  const report = [
    plain.report ?? "",
    ...found.map((file) => `not formatted: ${file} (${BY_HAND} ${file})`),
  ].join("\n");
  return { passed: plain.passed && found.length === 0, report };
}

async function cells(): Promise<Step> {
  const named = await Promise.all((await notebooks()).map(async ({ name, file }) => ({
    name,
    notebook: parseNotebook(await Deno.readTextFile(file), `${name}.ipynb`),
  })));
  const findings = await checkCells(named, { config: CONFIG });
  const report = findings.map(({ place, message }) => `${place}: ${message}`).join("\n");
  return { passed: findings.length === 0, report };
}

async function docs(): Promise<Step> {
  const { exports } = JSON.parse(await Deno.readTextFile(CONFIG));
  return await deno("doc", "--lint", ...await there(Object.values(exports as object)));
}

async function stored(): Promise<Step> {
  const steps = [];
  for (const folder of FOLDERS) {
    if ((await notebookNames(folder).catch(() => [])).length === 0) continue;
    const program = join(ROOT, "lib/notebook/cli/notebooks.ts");
    steps.push(
      await deno("run", "--quiet", "--allow-all", program, "--check", "--from", folder),
    );
  }
  const report = steps.map((step) => step.report ?? "").join("\n");
  return { passed: steps.every(({ passed }) => passed), report };
}

/** Runs tests and counts them in deno's own report. */
async function tests(args: readonly string[]): Promise<Step> {
  const folder = await Deno.makeTempDir({ prefix: "laminate-gate-" });
  try {
    const file = join(folder, "junit.xml");
    const step = await deno("test", "--quiet", `--junit-path=${file}`, ...args);
    const report = await Deno.readTextFile(file).catch(() => "");
    const skipped = skippedTests(report).map((name) => `skipped: ${name}`);
    return {
      passed: step.passed,
      report: [step.report, ...skipped].join("\n"),
      tests: countTests(report),
    };
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}

/** Longest time for one step [ms]: a test that never ends must not hold up the others. */
const STEP_LIMIT = 20 * 60_000;

async function deno(...args: string[]): Promise<Step> {
  const limit = AbortSignal.timeout(STEP_LIMIT);
  const { success, stdout, stderr } = await new Deno.Command(Deno.execPath(), {
    args,
    cwd: ROOT,
    env: { NO_COLOR: "1" },
    stdin: "null",
    signal: limit,
  }).output();
  const decoder = new TextDecoder();
  const late = limit.aborted ? "it did not end in time; the last test above did not end" : "";
  const report = [decoder.decode(stdout), decoder.decode(stderr), late].join("\n").trim();
  return { passed: success, report };
}

/** What to read of a long report of tests: the errors, or where it stopped. */
function gist(report: string): string {
  const errors = report.indexOf("\n ERRORS \n");
  return errors >= 0 ? report.slice(errors) : report.split("\n").slice(-60).join("\n");
}

async function notebooks(): Promise<{ name: string; file: string }[]> {
  const lists = await Promise.all(
    FOLDERS.map(async (folder) =>
      (await notebookNames(folder).catch(() => []))
        .map((name) => ({ name, file: notebookFile(folder, name) }))
    ),
  );
  return lists.flat();
}

/** Those paths that exist. */
async function there(paths: readonly string[]): Promise<string[]> {
  const found: string[] = [];
  for (const path of paths) {
    if (await Deno.stat(join(ROOT, path)).then(() => true, () => false)) found.push(path);
  }
  return found;
}

async function main(): Promise<number> {
  let counts = NONE;
  for (const [name, run] of STEPS) {
    const started = performance.now();
    console.log(`\n== ${name}`);
    const { passed, report = "", tests = NONE } = await run();
    const seconds = ((performance.now() - started) / 1000).toFixed(1);
    if (!passed) console.log(tests === NONE ? report : gist(report));
    const found = tests === NONE ? "" : `: ${summaryLine(tests)}`;
    console.log(`${passed ? "ok" : "FAILED"}, ${name}${found} (${seconds} s)`);
    for (const [line] of report.matchAll(/^skipped: .*$/gm)) console.log(line);
    counts = addCounts(
      addCounts(counts, tests),
      passed ? { ...NONE, passed: 1 } : { ...NONE, failed: 1 },
    );
  }
  console.log(`\n${summaryLine(counts)}`);
  return counts.failed === 0 ? 0 : 1;
}

if (import.meta.main) Deno.exit(await main());
