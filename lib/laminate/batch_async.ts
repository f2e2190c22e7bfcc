import { checksFor } from "../check/mod.ts";
import type { BatchOptions, BatchResult, LaminateBatch } from "./batch.ts";
import { CHUNK } from "./_batch_chunks.ts";
import { runKernel } from "./_batch_kernel.ts";
import { finishBatch, makeOutput, prepareBatch, type PreparedBatch } from "./_batch.ts";
import { type Report, runOnWorkers, startWorkers } from "./_batch_workers.ts";

const check = checksFor("analyse the batch");

/** How to watch and stop the analysis of a batch. */
export interface BatchRunOptions extends BatchOptions {
  /** Called as laminates are done, with their number and the number of all. */
  readonly onProgress?: (done: number, count: number) => void;
  /** Stops the analysis within some milliseconds once it is aborted. */
  readonly signal?: AbortSignal;
}

/** As `BatchRunOptions`, and how many threads to use. */
export interface BatchAsyncOptions extends BatchRunOptions {
  /**
   * Workers to start for this batch; 1 for none. If not given, one for each processor where the
   * batch is worth a second of work, and otherwise none [1].
   */
  readonly threads?: number;
}

/** Workers kept up for several batches. */
export interface BatchWorkers {
  /** Threads that work at once: 1 is the caller's own, where no workers could be started [1]. */
  readonly threads: number;
  /**
   * Analyses a batch on the workers; batches asked for meanwhile wait their turn.
   *
   * @param batch The laminates and their loads.
   * @param options What to keep, how to watch and to stop.
   * @returns One entry a laminate.
   */
  readonly analyse: (batch: LaminateBatch, options?: BatchRunOptions) => Promise<BatchResult>;
  /** Ends the workers. */
  readonly close: () => void;
}

/**
 * Plies worth a worker: a second of work. A worker costs 20 to 50 ms to start, but half a second
 * in a notebook's kernel.
 */
const WORTH_WORKERS = 16e6;

/** More must be a slip. */
const MOST_THREADS = 64;

/**
 * Analyses many laminates as `analyseBatch` does, but shows progress, can be stopped, and uses
 * several threads where the batch is worth it.
 *
 * Formula: as `analyseBatch`; each laminate is computed by itself, so that the threads make no
 * difference to any digit
 *
 * Range: as `analyseBatch`; workers read arrays on a `SharedArrayBuffer` where they are (see
 * `makeBatchArrays`) and copy others first. Where workers or shared memory are not to be had (a page without
 * cross-origin isolation, a program not allowed to read its own modules) it runs on one thread.
 *
 * Source: as `analyseBatch`.
 *
 * @param batch The laminates and their loads; not to be changed before the end.
 * @param options What to keep, how to watch and to stop, how many threads.
 * @returns One entry a laminate.
 * @throws {InputError} As `analyseBatch`, or if the number of threads is not a whole number from 1 to 64.
 * When the signal is aborted the promise is rejected with the signal's reason.
 *
 * @example
 * ```ts
 * import { analyseBatchAsync, batchOf } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals, assertEquals } from "@std/assert";
 *
 * const lamina = {
 *   name: "glass", E1: 38e9, E2: 9e9, G12: 3.6e9, nu12: 0, G13: 3.6e9, G23: 3e9,
 *   density: 1850, alpha1: 7e-6, alpha2: 28e-6,
 *   strengths: { Xt: 900e6, Xc: 600e6, Yt: 40e6, Yc: 140e6, S: 60e6 },
 * };
 * const batch = batchOf([[{ lamina, thickness: 0.001, angleDeg: 0 }]], { Nx: 30e3 });
 * let last = 0;
 * const { utilisation } = await analyseBatchAsync(batch, { onProgress: (done) => last = done });
 * assertAlmostEquals(utilisation[0]!, 30 / 900, 1e-12);
 * assertEquals(last, 1);
 * ```
 */
export async function analyseBatchAsync(
  batch: LaminateBatch,
  options: BatchAsyncOptions = {},
): Promise<BatchResult> {
  check.object("options", options);
  const { threads = defaultThreads(batch) } = options;
  const workers = await openBatchWorkers(threads);
  try {
    return await workers.analyse(batch, options);
  } finally {
    workers.close();
  }
}

/**
 * Starts workers for several batches, which saves starting them for each.
 *
 * Formula: none
 *
 * Range: no more threads than processors are of use. Where workers or shared memory are not to be
 * had, `threads` is 1 and batches run on the thread of the caller.
 *
 * Source: none.
 *
 * @param threads Workers to start; 1 for none, the thread of the caller [1].
 * @returns The workers; close them at the end, or the program does not end.
 * @throws {InputError} If the number of threads is not a whole number from 1 to 64.
 *
 * @example
 * ```ts
 * import { batchOf, openBatchWorkers } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const lamina = {
 *   name: "glass", E1: 38e9, E2: 9e9, G12: 3.6e9, nu12: 0, G13: 3.6e9, G23: 3e9,
 *   density: 1850, alpha1: 7e-6, alpha2: 28e-6,
 * };
 * const workers = await openBatchWorkers(1);
 * const stack = [{ lamina, thickness: 0.001, angleDeg: 0 }];
 * const { strains } = await workers.analyse(batchOf([stack], { Nx: 38e3 }));
 * workers.close();
 * assertAlmostEquals(strains[0]!, 0.001, 1e-15);
 * ```
 */
export async function openBatchWorkers(threads: number): Promise<BatchWorkers> {
  check.count("number of threads", threads, 1);
  check.within("number of threads", threads, { min: 1, max: MOST_THREADS });
  const workers = threads === 1 ? [] : await startWorkers(threads);
  let turn: Promise<unknown> = Promise.resolve();
  return {
    threads: Math.max(1, workers.length),
    analyse: (batch, options = {}) => {
      const result = turn.then(() => analyseOn(workers, batch, options));
      // The next batch waits for this one, but does not fail with it.
      turn = result.catch(() => {});
      return result;
    },
    close: () => workers.forEach((worker) => worker.terminate()),
  };
}

async function analyseOn(
  workers: readonly Worker[],
  batch: LaminateBatch,
  options: BatchRunOptions,
): Promise<BatchResult> {
  const prepared = prepareBatch(batch, options);
  const { signal, onProgress } = options;
  if (onProgress !== undefined && typeof onProgress !== "function") {
    check.refuse("onProgress", onProgress, "must be a function");
  }
  if (signal !== undefined && !(signal instanceof AbortSignal)) {
    check.refuse("signal", signal, "must be an AbortSignal");
  }
  signal?.throwIfAborted();
  let done = 0;
  const report = (more: number): void => {
    done += more;
    onProgress?.(done, prepared.count);
    signal?.throwIfAborted();
  };
  const output = workers.length === 0
    ? await runHere(prepared, report)
    : await runOnWorkers(workers, prepared, report);
  return finishBatch(output);
}

/** Chunk after chunk on this thread, which between them is free to hear of an abort. */
async function runHere(prepared: PreparedBatch, report: Report): Promise<BatchResult> {
  const output = makeOutput(prepared);
  // Larger chunks than the workers', since each pause costs a millisecond or two.
  const step = 4 * CHUNK;
  for (let start = 0; start < prepared.count; start += step) {
    const end = Math.min(start + step, prepared.count);
    runKernel(prepared.input, output, { start, end });
    await new Promise((resolve) => setTimeout(resolve, 0));
    report(end - start);
  }
  return output;
}

function defaultThreads(batch: LaminateBatch): number {
  const plies = batch?.thickness?.length ?? 0;
  return plies < WORTH_WORKERS ? 1 : globalThis.navigator?.hardwareConcurrency ?? 1;
}
