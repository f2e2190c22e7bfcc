import { checksFor } from "../check/mod.ts";
import { checkWatching } from "./_watching.ts";

const check = checksFor("compute in workers");

/** A function by where it stands, so that a worker can load it. */
export interface FunctionPlace {
  /** Module that exports it. */
  readonly module: URL;
  /** Its name. */
  readonly name: string;
}

/** How the work is shared and told. */
export interface WorkerOptions {
  /** Number of workers; 2 if not given. */
  readonly workers?: number;
  /** Inputs handed over at once; 16 if not given. */
  readonly batch?: number;
  /** Called after each batch with how many are done, of how many. */
  readonly progress?: (done: number, total: number) => void;
  /** Ends the workers when aborted; what is done so far is returned. */
  readonly signal?: AbortSignal;
}

/** One answer: a result, or why there is none. */
export type WorkerAnswer<R> =
  | {
    /** It could be computed. */
    readonly ok: true;
    /** The result. */
    readonly result: R;
  }
  | {
    /** It could not be computed. */
    readonly ok: false;
    /** Why. */
    readonly message: string;
  };

/** A batch on its way to a worker. */
interface Batch {
  readonly module: string;
  readonly name: string;
  readonly from: number;
  readonly inputs: readonly unknown[];
}

/**
 * Computes a slow function of many inputs in several workers, for panels by polynomials and the
 * like. Not worth it below some tenth of a second of work a worker: each takes 20 ms to start, in
 * a notebook's kernel half a second.
 *
 * Formula: each worker takes the next batch when it is done
 *
 * Range: inputs and results that can be copied between threads (no functions).
 *
 * Source: definition.
 *
 * @param place Module and name of the function: one input in, one result out.
 * @param inputs The inputs.
 * @param options Workers, batch, progress, stop.
 * @returns Answers in the order of the inputs; none where it was stopped before.
 * @throws {InputError} If a count is not a whole number above 0 or the module is no URL.
 *
 * @example
 * ```ts
 * import { computeInWorkers } from "@laminate/notebooks/study";
 * import { assertEquals } from "@std/assert";
 *
 * const text = "export const double = (x: number) => 2 * x;";
 * const module = new URL(`data:text/typescript,${encodeURIComponent(text)}`);
 * const answers = await computeInWorkers<number, number>({ module, name: "double" }, [1, 2, 3]);
 * assertEquals(answers.map((answer) => answer?.ok && answer.result), [2, 4, 6]);
 * ```
 */
export async function computeInWorkers<T, R>(
  place: FunctionPlace,
  inputs: readonly T[],
  options: WorkerOptions = {},
): Promise<readonly (WorkerAnswer<R> | undefined)[]> {
  check.object("place", place);
  if (!(place.module instanceof URL)) check.refuse("module", place.module, "must be a URL");
  check.list("inputs", inputs, 0);
  const { workers = 2, batch = 16, progress, signal } = check.object("options", options);
  check.count("workers", workers, 1);
  check.within("workers", workers, { min: 1, max: 64 });
  check.count("batch", batch, 1);
  checkWatching(check, { progress, signal });
  const answers: (WorkerAnswer<R> | undefined)[] = inputs.map(() => undefined);
  let [next, done] = [0, 0];
  const take = (): Batch | undefined => {
    if (next >= inputs.length || signal?.aborted === true) return undefined;
    const from = next;
    next = Math.min(next + batch, inputs.length);
    return { module: place.module.href, name: place.name, from, inputs: inputs.slice(from, next) };
  };
  const keep = (from: number, found: readonly WorkerAnswer<R>[]): void => {
    found.forEach((answer, i) => answers[from + i] = answer);
    done += found.length;
    progress?.(done, inputs.length);
  };
  const count = Math.min(workers, Math.ceil(inputs.length / batch));
  await Promise.all(Array.from({ length: count }, () => runWorker(take, keep, signal)));
  return Object.freeze(answers);
}

/** Feeds one worker until nothing is left; always ends it. */
function runWorker<R>(
  take: () => Batch | undefined,
  keep: (from: number, found: readonly WorkerAnswer<R>[]) => void,
  signal: AbortSignal | undefined,
): Promise<void> {
  const worker = new Worker(new URL("./_worker.ts", import.meta.url), { type: "module" });
  return new Promise<void>((resolve, reject) => {
    const end = (): void => {
      worker.terminate();
      signal?.removeEventListener("abort", end);
      resolve();
    };
    signal?.addEventListener("abort", end);
    const feed = (): void => {
      const batch = take();
      if (batch === undefined) return end();
      worker.onmessage = ({ data }: MessageEvent): void => {
        keep(batch.from, data as readonly WorkerAnswer<R>[]);
        feed();
      };
      worker.postMessage(batch);
    };
    worker.onerror = (event): void => {
      event.preventDefault();
      worker.terminate();
      signal?.removeEventListener("abort", end);
      reject(new Error(`a worker broke down: ${event.message}`));
    };
    feed();
  });
}
