import { checksFor } from "../check/mod.ts";
import { checkWatching } from "./_watching.ts";

const check = checksFor("sweep the choices");

/** What can be chosen: a list for each name. */
export type Choices = Readonly<Record<string, readonly unknown[]>>;

/** One choice of each list. */
export type Chosen<C extends Choices> = { readonly [K in keyof C]: C[K][number] };

/** One point of a sweep. */
export interface SweepPoint<C extends Choices, R> {
  /** What was chosen. */
  readonly choice: Chosen<C>;
  /** What came of it. */
  readonly result: R;
}

/** What a sweep left out and why. */
export interface SweepFault<C extends Choices> {
  /** What was chosen. */
  readonly choice: Chosen<C>;
  /** Why it could not be computed. */
  readonly error: Error;
}

/** A finished sweep. */
export interface Sweep<C extends Choices, R> {
  /** The points, the last list's choices changing fastest. */
  readonly points: readonly SweepPoint<C, R>[];
  /** Choices that could not be computed, with the reason; nothing is left out silently. */
  readonly faults: readonly SweepFault<C>[];
  /** Whether it was stopped before its end. */
  readonly stopped: boolean;
}

/** How a sweep reports and is stopped. */
export interface SweepOptions {
  /** Called now and then with how many are done, of how many. */
  readonly progress?: (done: number, total: number) => void;
  /** Stops the sweep when aborted; what is done so far is returned. */
  readonly signal?: AbortSignal;
}

/** Points between two pauses in which progress is told and a stop is heard. */
const BETWEEN_PAUSES = 64;

/** Most points that a sweep takes on. */
const MOST = 5_000_000;

/**
 * Tries every combination of choices.
 *
 * Formula: all of the first list with all of the second, and on
 *
 * Range: up to 5 million points. It pauses every 64 points, so that a page stays alive.
 *
 * Source: definition.
 *
 * @param choices For each name the values to try.
 * @param evaluate What to compute of one choice; an error leaves that choice out, named.
 * @param options Progress and stop.
 * @returns The points, what was left out, whether it was stopped.
 * @throws {InputError} If a list is empty, there are too many points, or `evaluate` is no function.
 *
 * @example
 * ```ts
 * import { sweep } from "@laminate/notebooks/study";
 * import { assertEquals } from "@std/assert";
 *
 * const choices = { plies: [1, 2], core: [0.01, 0.02] };
 * const { points } = await sweep(choices, ({ plies, core }) => plies * core);
 * assertEquals(points.map(({ result }) => result), [0.01, 0.02, 0.02, 0.04]);
 * ```
 */
export async function sweep<const C extends Choices, R>(
  choices: C,
  evaluate: (choice: Chosen<C>) => R,
  options: SweepOptions = {},
): Promise<Sweep<C, R>> {
  const { total, at } = combinations(choices);
  if (typeof evaluate !== "function") {
    check.refuse("evaluate", evaluate, "must be a function of one choice");
  }
  const { progress, signal } = check.object("options", options);
  checkWatching(check, { progress, signal });
  const points: SweepPoint<C, R>[] = [];
  const faults: SweepFault<C>[] = [];
  for (let i = 0; i < total; i++) {
    if (i % BETWEEN_PAUSES === 0) {
      progress?.(i, total);
      await pause();
      if (signal?.aborted === true) return Object.freeze({ points, faults, stopped: true });
    }
    const choice = at(i);
    try {
      const result = evaluate(choice);
      if (typeof result === "number" && !Number.isFinite(result)) {
        throw new RangeError(`the result is ${result}, must be a finite number`);
      }
      points.push({ choice, result });
    } catch (error) {
      faults.push({ choice, error: error instanceof Error ? error : new Error(String(error)) });
    }
  }
  progress?.(total, total);
  return Object.freeze({ points, faults, stopped: false });
}

/**
 * All combinations of choices, each by its number.
 *
 * Formula: the last list's choices change fastest
 *
 * Source: definition.
 *
 * @param choices For each name the values to try.
 * @returns How many there are, and the one at a number from 0.
 * @throws {InputError} If there is no list, one is empty, or there are more than 5 million.
 *
 * @example
 * ```ts
 * import { combinations } from "@laminate/notebooks/study";
 * import { assertEquals } from "@std/assert";
 *
 * const { total, at } = combinations({ plies: [1, 2], core: ["foam", "balsa"] });
 * assertEquals([total, at(2)], [4, { plies: 2, core: "foam" }]);
 * ```
 */
export function combinations<const C extends Choices>(
  choices: C,
): {
  /** How many combinations. */
  readonly total: number;
  /** The combination at a number from 0. */
  at(index: number): Chosen<C>;
} {
  check.object("choices", choices);
  const names = Object.keys(choices);
  check.list("choices", names);
  for (const name of names) {
    check.list(name, choices[name] as readonly unknown[])
      .forEach((value, i) => checkNumbers(`${name}, value ${i + 1}`, value));
  }
  const total = names.reduce((product, name) => product * choices[name]!.length, 1);
  check.within("number of combinations", total, { min: 1, max: MOST });
  return {
    total,
    at(index: number): Chosen<C> {
      const choice: Record<string, unknown> = {};
      let rest = index;
      for (const name of names.toReversed()) {
        const list = choices[name]!;
        choice[name] = list[rest % list.length];
        rest = Math.floor(rest / list.length);
      }
      return Object.fromEntries(names.map((name) => [name, choice[name]])) as Chosen<C>;
    },
  };
}

/** Refuses a number that is not finite, in a list or an object too. */
function checkNumbers(name: string, value: unknown, depth = 0): void {
  if (typeof value === "number") check.finite(name, value);
  if (typeof value !== "object" || value === null || depth > 4) return;
  for (const [key, entry] of Object.entries(value)) {
    checkNumbers(`${name}, ${key}`, entry, depth + 1);
  }
}

/** Lets other tasks run. A message, because a timer waits a millisecond and more. */
function pause(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = (): void => {
      port1.close();
      port2.close();
      resolve();
    };
    port2.postMessage(null);
  });
}
