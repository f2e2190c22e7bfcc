/**
 * Calls a function again and again and watches what comes out.
 *
 * @module
 */
import { cpuUsage } from "node:process";
import fc, { type Arbitrary, type WeightedArbitrary } from "fast-check";
import { InputError } from "../../lib/check/mod.ts";
import type { DocFunction, Symbols } from "./_doc.ts";
import { edited, frozen, isRecord, MILD, SPOILING } from "./_edits.ts";
import { inputsFor } from "./_hostile.ts";
import type { Args, Sound } from "./_light.ts";

/** Longest that one call may compute; our own heaviest takes one [s]. */
const PATIENCE = 3;

const SLOW = "slow";
/** Most offences of one function that are told. */
const MOST = 6;

/** Tells another thread what is being called, so that a call that hangs is known. */
export interface Watch {
  /** Before a call. */
  beat(text: () => string): void;
  /** When all is done. */
  end(): void;
}

/** Starts the thread that looks for a call that hangs. */
export function startWatch(): Watch {
  const shared = new SharedArrayBuffer(4096);
  const beat = new Int32Array(shared, 0, 2);
  const text = new Uint8Array(shared, 8);
  const encoder = new TextEncoder();
  const worker = new Worker(new URL("./_watch.ts", import.meta.url), { type: "module" });
  worker.postMessage(shared);
  return {
    beat(tell): void {
      const bytes = encoder.encode(tell()).slice(0, text.length);
      text.set(bytes);
      Atomics.store(beat, 1, bytes.length);
      Atomics.add(beat, 0, 1);
    },
    end: () => worker.terminate(),
  };
}

/** What an attack found. */
export interface Findings {
  /** What was called. */
  readonly name: string;
  /** How often it was called. */
  readonly calls: number;
  /** How often it gave a result. */
  readonly results: number;
  /** How often it refused, as it should. */
  readonly refusals: number;
  /** Longest call, and all calls together [s]. */
  readonly slowest: number;
  readonly seconds: number;
  /** What it did that it must not do, one call of each kind. */
  readonly offences: readonly string[];
}

/** How to call a function. */
export interface Attack {
  /** The function itself. */
  // deno-lint-ignore no-explicit-any
  readonly call: (...args: any[]) => unknown;
  /** Argument lists known to be sound. */
  readonly sound: Sound;
  /** Every documented name. */
  readonly symbols: Symbols;
  /** How often. */
  readonly runs: number;
  /** Who looks for calls that hang. */
  readonly watch: Watch;
  /** Whether the watch is told the arguments too, which takes time. */
  readonly loud: boolean;
  /** Told the number of calls after each. */
  readonly progress?: ((calls: number) => void) | undefined;
}

/** Calls a function with sound inputs and with spoilt ones. */
export async function attack(
  { name, params }: DocFunction,
  { call, sound, symbols, runs, watch, loud, progress }: Attack,
): Promise<Findings> {
  const count = { calls: 0, results: 0, refusals: 0, slowest: 0, seconds: 0 };
  const offences = new Map<string, string>();
  const byType = fc.tuple(
    ...params.map(({ tsType, comment }) => inputsFor(tsType, { comment, symbols })),
  );
  const edits = fc.tuple(MILD, fc.oneof(fc.constant([]), SPOILING));
  const property = fc.asyncProperty(
    argsFrom(sound, byType),
    edits,
    async (args, [mild, spoiling]) => {
      // Of slow calls one is enough.
      if (offences.has(SLOW)) return;
      const own = new Set<unknown>();
      const plain = frozen(edited(args, [...mild, ...spoiling]));
      const given = plain.map((arg) => ownCalls(arg, own));
      const told = (): string => `${name}(${fc.stringify(plain).slice(1, -1).slice(0, 4000)})`;
      watch.beat(() => loud ? told() : `${name}, call ${count.calls}`);
      const started = performance.now();
      const { offence, result } = await outcome(() => call(...given), { given, own });
      const seconds = (performance.now() - started) / 1000;
      count.calls++;
      count.results += Number(result);
      count.refusals += Number(!result && offence === undefined);
      count.slowest = Math.max(count.slowest, seconds);
      count.seconds += seconds;
      // Once more by the processor's clock: the other runs on while others have the machine.
      if (seconds > PATIENCE && await computingOf(() => call(...given)) > PATIENCE) {
        offences.set(SLOW, `${told()}: took ${seconds.toFixed(1)} s`);
      }
      const kind = offence?.replace(/\d+/g, "");
      if (kind !== undefined && offences.size < MOST && !offences.has(kind)) {
        offences.set(kind, `${told()}: ${offence}`);
      }
      progress?.(count.calls);
    },
  );
  await fc.assert(property, { seed: 20261125, numRuns: runs });
  return { name, ...count, offences: [...offences.values()] };
}

/** Two sound calls to one made by type; of a hundred one as heavy as they come. */
function argsFrom({ usual, heavy }: Sound, byType: Arbitrary<Args>): Arbitrary<Args> {
  const oneOf = (calls: readonly Args[], weight: number): WeightedArbitrary<Args>[] =>
    calls.length === 0 ? [] : [{ weight, arbitrary: fc.constantFrom(...calls) }];
  return fc.oneof(...oneOf(usual, 66), ...oneOf(heavy, 1), { weight: 33, arbitrary: byType });
}

/** How long a call computes [s]. */
async function computingOf(call: () => unknown): Promise<number> {
  const before = cpuUsage();
  try {
    await call();
  } catch {
    // A refusal takes its time too.
  }
  return cpuUsage(before).user / 1e6;
}

/** What came of a call. */
interface Outcome {
  readonly result: boolean;
  /** What it did that it must not do. */
  readonly offence?: string | undefined;
}

/** What belongs to the caller. */
interface Callers {
  /** The arguments. */
  readonly given: readonly unknown[];
  /** What the caller's own functions have returned. */
  readonly own: Set<unknown>;
}

/** An error of a function that the caller gave: to pass it on is right. */
class CallersError extends Error {}

/** An argument in which the caller's functions note what they return and mark what they throw. */
function ownCalls(value: unknown, own: Set<unknown>): unknown {
  if (typeof value === "function") {
    return (...args: unknown[]): unknown => {
      try {
        const result = value(...args);
        objectsIn(result, own);
        return result;
      } catch (error) {
        throw error instanceof InputError ? error : new CallersError(String(error));
      }
    };
  }
  if (!isRecord(value)) return value;
  const entries = Object.entries(value);
  return entries.some(([, entry]) => typeof entry === "function")
    ? Object.fromEntries(entries.map(([key, entry]) => [key, ownCalls(entry, own)]))
    : value;
}

async function outcome(call: () => unknown, { given, own }: Callers): Promise<Outcome> {
  try {
    const result = call();
    const value = result instanceof Promise ? await result : result;
    if (firstNonFinite(value, new Set()) === undefined) return { result: true };
    // An object of the caller's own that comes back as it went in is no result.
    return { result: true, offence: firstNonFinite(value, objectsIn(given, own)) };
  } catch (error) {
    if (error instanceof CallersError) return { result: false };
    if (!(error instanceof InputError)) {
      const said = error instanceof Error ? `${error.name}: ${error.message}` : error;
      return { result: false, offence: `threw ${said}` };
    }
    return error.faults.every(({ argument }) => argument !== "")
      ? { result: false }
      : { result: false, offence: `an InputError without an argument: ${error.message}` };
  }
}

/** The first number in a result that is not finite, told by its path; `own` is passed over. */
function firstNonFinite(
  value: unknown,
  own: ReadonlySet<unknown>,
  path: readonly string[] = ["result"],
): string | undefined {
  if (typeof value === "number") {
    return Number.isFinite(value) ? undefined : `${path.join(".")} is ${value}`;
  }
  if (typeof value !== "object" || value === null || path.length > 9 || own.has(value)) return;
  // An error tells the value that it refuses.
  if (value instanceof Error) return;
  for (const [key, entry] of entriesOf(value)) {
    const found = firstNonFinite(entry, own, [...path, String(key)]);
    if (found !== undefined) return found;
  }
}

function entriesOf(value: object): Iterable<readonly [unknown, unknown]> {
  if (value instanceof Map) return value.entries();
  return ArrayBuffer.isView(value)
    ? Array.from(value as unknown as ArrayLike<number>).entries()
    : Object.entries(value);
}

/** A value and all that it holds. */
function objectsIn(value: unknown, found: Set<unknown> = new Set()): Set<unknown> {
  if (typeof value !== "object" || value === null || found.has(value)) return found;
  found.add(value);
  for (const [, entry] of entriesOf(value)) objectsIn(entry, found);
  return found;
}
