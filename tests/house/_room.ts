/**
 * Attacks every public function of a room, each as often as the others.
 *
 * @module
 */
import { attack, type Findings, startWatch } from "./_attack.ts";
import { type DocFunction, documented, functionsAmong, type Symbols } from "./_doc.ts";
import { type Calls, callsInExamples, callsInNotebooks } from "./_examples.ts";
import { soundCalls } from "./_light.ts";

/** Functions that reach outside: other tests try them. */
const OUTSIDE = ["openBatchWorkers", "replaceFile"];

const documentedRooms = documented();
const symbols: Symbols = new Map(
  [...documentedRooms.values()].flat().map((symbol) => [symbol.name, symbol]),
);

/** The functions to attack, room by room; a room of types only is left out. */
export const FUNCTIONS: ReadonlyMap<string, readonly DocFunction[]> = new Map(
  [...documentedRooms]
    .map(([room, exported]) =>
      [room, functionsAmong(exported).filter(({ name }) => !OUTSIDE.includes(name))] as const
    )
    .filter(([, functions]) => functions.length > 0),
);

let inNotebooks: Promise<Calls> | undefined;

/** How a room is attacked. */
export interface RoomAttack {
  /** How often each function is called. */
  readonly runs: number;
  /** Only this function. */
  readonly only?: string | undefined;
  /** Whether the watch is told the arguments too, which takes time. */
  readonly loud?: boolean;
  /** Told the number of calls so far, and what is being called. */
  readonly progress?: (calls: number, name: string) => void;
}

/** Attacks a room's functions one after another. */
export async function attackRoom(
  room: string,
  { runs, only, loud = false, progress }: RoomAttack,
): Promise<readonly Findings[]> {
  const functions = FUNCTIONS.get(room) ?? [];
  const tried = functions.filter(({ name }) => only === undefined || name === only);
  const module = await import(`../../lib/${room}/mod.ts`);
  const known = await callsInExamples(functions);
  const more = await (inNotebooks ??= callsInNotebooks());
  const watch = startWatch();
  const found: Findings[] = [];
  let before = 0;
  for (const each of tried) {
    const { name } = each;
    const calls = [...known.get(name) ?? [], ...more.get(name) ?? []];
    const findings = await attack(each, {
      call: module[name],
      sound: soundCalls(name, calls),
      ...{ symbols, runs, watch, loud },
      progress: progress && ((now) => progress(before + now, name)),
    });
    before += findings.calls;
    found.push(findings);
  }
  watch.end();
  return found;
}
