/**
 * Runs every benchmark and prints each as a ratio to the baseline of its group, with the machine
 * named: `deno task bench`. A ratio is of mean times in one run.
 *
 * @module
 */
interface Bench {
  readonly name: string;
  readonly group: string | null;
  readonly baseline: boolean;
  readonly results: readonly [{ readonly ok?: { readonly avg: number } }];
}

const FOLDER = new URL(".", import.meta.url);

/** What computes here: a ratio means little without it. */
async function machine(): Promise<string> {
  const cpu = await Deno.readTextFile("/proc/cpuinfo").catch(() => "");
  const model = cpu.match(/^model name\s*:\s*(.+)$/m)?.[1] ?? Deno.build.arch;
  return `${model}, ${navigator.hardwareConcurrency} cores, ${Deno.build.os}, Deno ${Deno.version.deno}`;
}

async function run(file: string): Promise<readonly Bench[]> {
  const { stdout, stderr, success } = await new Deno.Command(Deno.execPath(), {
    args: ["bench", "--json", "--no-check", "--allow-read", "--allow-run=python3", file],
    stdin: "null",
    env: { NO_COLOR: "1" },
  }).output();
  if (!success) throw new Error(`${file}: ${new TextDecoder().decode(stderr)}`);
  return JSON.parse(new TextDecoder().decode(stdout)).benches;
}

function milliseconds(nanoseconds: number): string {
  const value = nanoseconds / 1e6;
  return `${value < 1 ? value.toPrecision(2) : value.toFixed(value < 10 ? 1 : 0)} ms`;
}

function print(benches: readonly Bench[]): void {
  for (const group of new Set(benches.map((bench) => bench.group))) {
    const members = benches.filter((bench) => bench.group === group);
    const baseline = members.find((bench) => bench.baseline);
    const base = baseline?.results[0].ok?.avg;
    if (group !== null) console.log(`  ${group}`);
    for (const { name, results: [{ ok }] } of members) {
      const time = ok === undefined ? "failed" : milliseconds(ok.avg).padStart(10);
      const ratio = ok === undefined || base === undefined ? "" : `${(ok.avg / base).toFixed(2)} ×`;
      console.log(`    ${time}  ${ratio.padStart(9)}  ${name}`);
    }
  }
}

console.log(await machine());
const files: string[] = [];
for await (const { name } of Deno.readDir(FOLDER)) if (name.endsWith("_bench.ts")) files.push(name);
for (const name of files.toSorted()) {
  console.log(`\n${name}`);
  print(await run(new URL(name, FOLDER).pathname));
}
