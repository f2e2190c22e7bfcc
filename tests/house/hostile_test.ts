import { assertEquals } from "@std/assert";
import { attack, type Findings, startWatch } from "./_attack.ts";
import { documented, functionsAmong, type Symbols } from "./_doc.ts";
import { type Calls, callsInExamples, callsInNotebooks, quickOf } from "./_examples.ts";

/** How often each function is called at least. */
const RUNS = Number(Deno.env.get("HOSTILE_RUNS") ?? 150);
/** How many calls each room gets at least; `deno task fuzz` asks for many. */
const CALLS = Number(Deno.env.get("HOSTILE_CALLS") ?? 0);
/** Told function by function. */
const LOUD = Deno.env.has("HOSTILE_REPORT");

/** Functions that reach outside: other tests try them. */
const OUTSIDE = ["openBatchWorkers", "replaceFile"];

const rooms = documented();
const symbols: Symbols = new Map(
  [...rooms.values()].flat().map((symbol) => [symbol.name, symbol]),
);

let inNotebooks: Promise<Calls> | undefined;

for (const [room, exported] of rooms) {
  const functions = functionsAmong(exported).filter(({ name }) => !OUTSIDE.includes(name));
  if (functions.length === 0) continue;
  const runs = Math.max(RUNS, Math.ceil(CALLS / functions.length));
  Deno.test(`${room}: no input brings out NaN, Infinity or anything but an InputError`, async () => {
    const module = await import(`../../lib/${room}/mod.ts`);
    const known = await callsInExamples(functions);
    const more = await (inNotebooks ??= callsInNotebooks());
    const found: Findings[] = [];
    const watch = startWatch();
    for (const each of functions) {
      found.push(
        await attack(each, {
          call: module[each.name],
          known: quickOf([...known.get(each.name) ?? [], ...more.get(each.name) ?? []]),
          symbols,
          runs,
          watch,
          loud: LOUD,
        }),
      );
    }
    watch.end();
    tell(room, found);
    assertEquals(found.flatMap(({ offences }) => offences), []);
    assertEquals(found.filter(({ results }) => results === 0).map(({ name }) => name), []);
  });
}

/** How far the attack went. */
function tell(room: string, found: readonly Findings[]): void {
  const calls = found.reduce((sum, each) => sum + each.calls, 0);
  const results = found.reduce((sum, each) => sum + each.results, 0);
  if (LOUD) {
    for (const each of found) {
      const share = (100 * each.results / each.calls).toFixed(0);
      console.log(
        `  ${each.name}: ${share} % of ${each.calls}, slowest ${each.slowest.toFixed(3)} s, ` +
          `in all ${each.seconds.toFixed(1)} s`,
      );
    }
  }
  if (LOUD || CALLS > 0) {
    const share = (100 * results / calls).toFixed(0);
    console.log(`${room}: ${calls} calls of ${found.length} functions, ${share} % gave a result`);
  }
}
