/**
 * Calls the public functions of rooms very often, also with inputs that cannot be meant, and prints
 * what came of it: `deno task fuzz [room …]`.
 *
 * @module
 */
import { parseArgs } from "@std/cli/parse-args";
import type { Findings } from "./_attack.ts";
import { attackRoom, FUNCTIONS } from "./_room.ts";

const HELP = `deno task fuzz [room …]

Calls every public function of the rooms, of all if none is named, and counts.

  --calls=N  calls of a room, shared evenly among its functions (100000)
  --each     a line for each function too
  --only=F   of the rooms named only this function, as often as it would be called
  --hunt     name the arguments of a call that hangs, which takes time
`;

const TERMINAL = Deno.stderr.isTerminal();
/** Between two words on how far it is [ms]; a terminal's line is written over. */
const PAUSE = TERMINAL ? 500 : 15_000;

let told = -Infinity;

/** Says how far it is, not too often. */
function say(line: string): void {
  if (performance.now() - told < PAUSE) return;
  told = performance.now();
  write(TERMINAL ? `\r\x1b[K${line}` : `${line}\n`);
}

function write(text: string): void {
  Deno.stderr.writeSync(new TextEncoder().encode(text));
}

function row([first, ...rest]: readonly (string | number)[], last = ""): string {
  const cells = rest.map((cell) => `${cell}`.padStart(10)).join("");
  return `${`${first}`.padEnd(28)}${cells}  ${last}`.trimEnd();
}

const HEADING = row(
  ["room", "functions", "calls", "results", "refusals", "offences", "seconds", "slowest"],
);

function line(name: string, found: readonly Findings[]): string {
  const sum = (of: (each: Findings) => number): number =>
    found.reduce((total, each) => total + of(each), 0);
  const slowest = found.toSorted((a, b) => b.slowest - a.slowest)[0];
  return row([
    ...[name, found.length, sum(({ calls }) => calls), sum(({ results }) => results)],
    ...[sum(({ refusals }) => refusals), sum(({ offences }) => offences.length)],
    ...[sum(({ seconds }) => seconds).toFixed(0), slowest?.slowest.toFixed(2) ?? ""],
  ], slowest?.name);
}

/** What a room's functions did that they must not do. */
function offencesOf(found: readonly Findings[]): readonly string[] {
  return found.flatMap(({ name, results, offences }) => [
    ...offences,
    ...(results === 0 ? [`${name} never gave a result`] : []),
  ]);
}

async function main(): Promise<number> {
  const { _: named, calls, each, hunt, help, only } = parseArgs(Deno.args, {
    string: ["calls", "only"],
    boolean: ["each", "hunt", "help"],
    default: { calls: "100000" },
  });
  const rooms: readonly string[] = named.length === 0 ? [...FUNCTIONS.keys()] : named.map(String);
  const known = rooms.every((room) => FUNCTIONS.has(room));
  if (help || !known || !(Number(calls) > 0)) {
    console.log(`${HELP}\nRooms: ${[...FUNCTIONS.keys()].join(", ")}`);
    return help ? 0 : 1;
  }
  console.log(HEADING);
  const all: Findings[] = [];
  for (const room of rooms) {
    say(`${room}: gathering sound calls`);
    const runs = Math.ceil(Number(calls) / FUNCTIONS.get(room)!.length);
    const found = await attackRoom(room, {
      ...{ runs, only, loud: hunt },
      progress: (now, name) => say(`${room}: ${now} of ${calls} calls, ${name}`),
    });
    if (TERMINAL) write("\r\x1b[K");
    if (each) { for (const one of found) console.log(line(`  ${one.name}`, [one])); }
    console.log(line(room, found));
    for (const offence of offencesOf(found)) console.log(`  ${offence}`);
    all.push(...found);
  }
  if (rooms.length > 1) console.log(line("all", all));
  return offencesOf(all).length === 0 ? 0 : 1;
}

Deno.exit(await main());
